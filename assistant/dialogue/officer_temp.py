"""An officer's TEMP: the mean temperature of a village, by which leaves are foretold.

TEMP 123456 Kijani 24              the mean of day and night, today
TEMP 123456 Kijani 22.5 YESTERDAY  or another day: 12/6
"""

import re
from datetime import date
from typing import NamedTuple
from zoneinfo import ZoneInfo

from assistant.agronomy.constants import LEAF_COLDEST_C, LEAF_HOTTEST_C
from assistant.agronomy.growth.warmth import Warmth, is_mean_c, told_since
from assistant.dialogue.endings import said
from assistant.dialogue.values import KeepWarmth, Known, Turn
from assistant.people import Village
from assistant.reading import Outcome, read_date
from assistant.wording import messages_officer as o

_DEGREES = re.compile(r"(\d{1,2}(?:[.,]\d)?)\N{DEGREE SIGN}?c?")
_DECIMAL = re.compile(r"\b\d{1,2}[.,]\d(?![\d.,/])")
_UNITS = frozenset({"c", "degrees", "degree", "deg", "\N{DEGREE SIGN}c", "\N{DEGREE SIGN}"})
_LONGEST_DAY_WORDS = 3


class TempParts(NamedTuple):
    """The parts of a text: a village's name, degrees [C], and a day where one was said."""

    name: str
    degrees: float | None
    day: date | None


def read_temp(rest: str, known: Known) -> TempParts:
    """What stands after TEMP and the code."""
    words, day = _without_day(rest.split(), known)
    numbers = [word for word in words if _DEGREES.fullmatch(word.casefold())]
    left = [w for w in words if w not in numbers and w.casefold() not in _UNITS]
    if len(numbers) != 1:
        return TempParts(" ".join(left), None, day)
    found = _DEGREES.fullmatch(numbers[0].casefold())
    degrees = float(found[1].replace(",", ".")) if found else None
    return TempParts(" ".join(left), degrees, day)


def _without_day(words: list[str], known: Known) -> tuple[list[str], date | None]:
    """The words before a day at the end, and that day; a bare number is never a day here."""
    for count in range(min(len(words), _LONGEST_DAY_WORDS), 0, -1):
        tail = " ".join(words[-count:])
        if tail.isdigit() or _DECIMAL.search(tail):
            continue  # 20,5 is no 20th of May here
        for past in (True, False):
            reading = read_date(tail, known.lexicon, known.today, past=past)
            if reading.outcome is Outcome.UNDERSTOOD:
                return words[:-count], reading.value
    return words, None


def keep_temp(village: Village, told: TempParts, known: Known) -> Turn:
    """Keeps the temperature and shows it back; asks again where it cannot be."""
    today = known.now.astimezone(ZoneInfo(village.zone)).date()
    day = told.day or today
    in_time = told_since(today) <= day <= today
    if told.degrees is None or not is_mean_c(told.degrees) or not in_time:
        asked = o.NO_TEMP(
            village=village.name, low=LEAF_COLDEST_C.value, high=LEAF_HOTTEST_C.value
        )
        return Turn(known.session, (said(asked),))
    kept = o.TEMP_NOTED(village=village.name, degrees=told.degrees, date=day)
    change = KeepWarmth(village.id, Warmth(day, told.degrees))
    return Turn(known.session, (said(kept),), (change,))
