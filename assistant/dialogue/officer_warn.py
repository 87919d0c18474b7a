"""RAIN, COLD, HAIL and the like: an officer warns a village of a danger by text.

    RAIN 123456 Mtoni 14-20            today, 14:00 to 20:00 in the village
    COLD 123456 Mtoni TOMORROW 18-8    or a day: 12/6
    PESTS 123456 Mtoni                 of what is told by days: from now on

The words of each danger stand in `dangers.toml`, in all languages.
"""

import re
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from assistant.agronomy.dangers.rows import RAIN, DangerRow
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import lasting, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.officer_villages import no_village, reach_of
from assistant.dialogue.questions import Conversation
from assistant.dialogue.rain_hours import days_slots, is_told_by_days, wrong_hours
from assistant.dialogue.values import Kept, Known, OfficerScope, Reach, Turn
from assistant.people import Village
from assistant.reading import Outcome, read_date
from assistant.wording import messages_dangers as dangers
from assistant.wording import messages_officer as o
from assistant.wording.message import Say

_HOURS = re.compile(r"(\d{1,2})(?:[:.]?(\d{2}))?\s*(?:-|to)\s*(\d{1,2})(?:[:.]?(\d{2}))?\s*h?$")
LONGEST_DAY_WORDS = 3  # "12 June 2026"
DAY_BEGINS, DAY_ENDS = time(6), time(20)


@dataclass(frozen=True)
class Span:
    """Hours of a danger, aware, in the village's zone."""

    starts_at: datetime
    ends_at: datetime


def warn(danger: DangerRow, word: str, rest: str, known: Known, desk: OfficerScope) -> Turn:
    """Shows a warning back with its reach, or says what is missing.

    Args:
        word: as the officer wrote it
        rest: what stands behind the word and the code
    """
    hours = _HOURS.search(rest.lower())
    before = rest[: hours.start()].strip() if hours else rest
    name, day = _split_day(before, known, desk)
    reach = reach_of(name, known, desk)
    if reach is None:
        return Turn(known.session, (no_village(word, desk),))
    village = reach.village
    span = _span(hours, day, known, village) if hours else _days(danger, day, known, village)
    if span is None:
        return Turn(known.session, (said(_no_hours(danger, word, village)),))
    wrong = wrong_hours(span.starts_at, span.ends_at, village, known.now, danger.code, word)
    if wrong is not None:
        return Turn(known.session, (said(wrong),))
    if not reach.phones:
        nobody = o.NOBODY_TO_WARN if danger.code == RAIN else dangers.NOBODY_TO_WARN
        return Turn(known.session, (said(nobody(village=village.name)),))
    return _show_back(danger, reach, span, known)


def _no_hours(danger: DangerRow, word: str, village: Village) -> Say:
    if danger.code == RAIN:
        return o.NO_HOURS(village=village.name)
    return dangers.NO_HOURS(village=village.name, word=word)


def _split_day(text: str, known: Known, desk: OfficerScope) -> tuple[str, date | None]:
    """The village's name and the day, where the text ends in one and the rest is a village."""
    words = text.split()
    for count in range(1, min(len(words), LONGEST_DAY_WORDS) + 1):
        name, tail = " ".join(words[:-count]), " ".join(words[-count:])
        reading = read_date(tail, known.lexicon, known.today)
        if reading.outcome is Outcome.UNDERSTOOD and reach_of(name, known, desk):
            return name, reading.value
    return text, None


def _span(
    hours: re.Match[str], day: date | None, known: Known, village: Village
) -> Span | None:
    """The hours on a day (today unless said); an end at or before the start is the next day."""
    zone = ZoneInfo(village.zone)
    day = day or known.now.astimezone(zone).date()
    start = _at(day, hours[1], hours[2], zone)
    end = _at(day, hours[3], hours[4], zone)
    if start is None or end is None:
        return None
    return Span(start, end if end > start else end + timedelta(days=1))


def _at(day: date, hour: str, minute: str | None, zone: ZoneInfo) -> datetime | None:
    hours, minutes = int(hour), int(minute or 0)
    if hours > 24 or minutes > 59 or (hours == 24 and minutes):
        return None
    midnight = datetime.combine(day, time(), zone)
    if hours == 24:
        return midnight + timedelta(days=1)
    return midnight.replace(hour=hours, minute=minutes)


def _days(danger: DangerRow, day: date | None, known: Known, village: Village) -> Span | None:
    """As long as such a warning may stand, from now or from a day on, of what is told by days;
    None of what must be told by hours."""
    if not danger.by_days:
        return None
    zone = ZoneInfo(village.zone)
    now = known.now.astimezone(zone)
    first = day or now.date()
    last = first + timedelta(days=danger.longest_d - 1)
    begins = datetime.combine(first, DAY_BEGINS, zone)
    starts_at = max(begins, now) if first == now.date() else begins
    return Span(starts_at, datetime.combine(last, DAY_ENDS, zone))


def _show_back(danger: DangerRow, reach: Reach, span: Span, known: Known) -> Turn:
    village = reach.village
    days = days_slots(span.starts_at, span.ends_at, village)
    kept: dict[str, Kept] = {
        "village_id": village.id,
        "village": village.name,
        "starts_at": span.starts_at.isoformat(),
        "ends_at": span.ends_at.isoformat(),
        "from_time": span.starts_at.strftime("%H:%M"),
        "to_time": span.ends_at.strftime("%H:%M"),
        "sowing": span.starts_at.date().isoformat(),
        "phones": reach.phones,
        "young": reach.nurseries,
        "soon": reach.about_to_sow,
    }
    if danger.code != RAIN:
        kept |= {"danger": danger.code, "best_last": days["last"].isoformat()}
    table = _table(danger, span)
    return opened(begin(table, held=lasting(known.session), **kept), known)


def _table(danger: DangerRow, span: Span) -> Conversation:
    if danger.code == RAIN:
        return talks.RAIN_WARNING
    if is_told_by_days(span.starts_at, span.ends_at):
        return talks.DAYS_WARNING
    return talks.DANGER_WARNING
