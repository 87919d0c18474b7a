"""An officer's texts: RAIN, COUNT, CLEAR, WHO, TEMP, ADD, TELL, SEEN, each with a code.

    RAIN 123456 Mtoni 14-20            today, 14:00 to 20:00 in the village
    RAIN 123456 Mtoni TOMORROW 6-12    or a day: 12/6
    COUNT 123456 Mtoni                 what the farmers answered
    CLEAR 123456 Mtoni                 the all-clear
    WHO 123456                         nurseries to be seen
    WHO 123456 Kijani                  those of one village
    TEMP 123456 Mtoni 24               the mean temperature (see `officer_temp`)
    ADD 123456 0770... Mtoni Amina     enrols a farmer (see `officer_add`)
    TELL 123456 0770... words          answers a call for help (see `officer_tell`)
    SEEN 123456 0770...                the call is done

The code is six digits, or eight right behind the word where one was sent to pass a lock.
Whether it is right is the service's to know; here it is only found, so that it can be checked
and kept out of stored texts.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from assistant.dialogue import conversations as talks
from assistant.dialogue.callers import caller
from assistant.dialogue.endings import lasting, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.officer_add import add
from assistant.dialogue.officer_tell import seen, tell
from assistant.dialogue.officer_temp import keep_temp, read_temp
from assistant.dialogue.rain_hours import span_slots, wrong_hours
from assistant.dialogue.values import (
    Desk,
    GiveAllClear,
    Known,
    Reach,
    Tally,
    Text,
    Turn,
    Visit,
)
from assistant.people import Village
from assistant.reading import Outcome, is_name, read_choice, read_date
from assistant.wording import messages_officer as o
from assistant.wording import messages_rain as r
from assistant.wording.message import Say, Slot

VERBS = ("RAIN", "COUNT", "CLEAR", "WHO", "TEMP", "ADD", "TELL", "SEEN")
_PLAIN_WORDS = frozenset({"TELL", "SEEN"})  # an officer who farms may begin with them too
_CODE = re.compile(r"(?<!\d)\d{6}(?!\d)")
_ONE_TIME = re.compile(r"\w+\W+(\d{8})(?!\d)")  # right behind the word; elsewhere it is a phone
_LOOSE_CODE = re.compile(r"\d(?:[ -]?\d){5,}")
_HOURS = re.compile(r"(\d{1,2})(?:[:.]?(\d{2}))?\s*(?:-|to)\s*(\d{1,2})(?:[:.]?(\d{2}))?\s*h?$")
MOST_VISITS = 5
LONGEST_DAY_WORDS = 3  # "12 June 2026"


def verb_of(text: str) -> str | None:
    """The officer's word that a text begins with."""
    words = text.split(maxsplit=1)
    first = words[0].strip(".,:;!").upper() if words else ""
    return first if first in VERBS else None


def code_in(text: str) -> str | None:
    """The code in an officer's text, right or wrong."""
    if verb_of(text) is None:
        return None
    one_time = _ONE_TIME.match(text.strip())
    if one_time is not None:
        return one_time[1]
    found = _CODE.search(text)
    return found[0] if found else None


def without_code(text: str) -> str:
    """The text as it may be stored."""
    if verb_of(text) is None:
        return text
    one_time = _ONE_TIME.match(text.strip())
    text = text.replace(one_time[1], "******", 1) if one_time else text
    return _CODE.sub("******", text)


def without_any_code(text: str) -> str:
    """An officer's text without anything that may be a code, also one written apart."""
    return _LOOSE_CODE.sub("******", text)


@dataclass(frozen=True)
class Span:
    """Hours of rain, aware, in the village's zone."""

    starts_at: datetime
    ends_at: datetime


def officer_turn(text: str, known: Known, desk: Desk) -> Turn | None:
    """The turn for an officer's text; None where it is not one."""
    verb = verb_of(text)
    if verb is None or (verb in _PLAIN_WORDS and not any(map(str.isdecimal, text))):
        return None
    if desk.locked_until is not None:
        return Turn(known.session, (said(_locked(desk)),))
    if not desk.code_given:
        return Turn(known.session, (said(o.NEED_CODE(village=_any_village(desk))),))
    turn = _VERBS[verb](after_code(text), known, desk)
    if desk.next_code is None:
        return turn
    return replace(turn, texts=(said(o.NEXT_CODE(code=desk.next_code)), *turn.texts))


def _locked(desk: Desk) -> Say:
    """What the phone itself is told: it can be read by its owner and by no forger."""
    return o.CODE_WAY_BACK(code=desk.one_time) if desk.one_time else o.CODE_LOCKED()


def after_code(text: str) -> str:
    """An officer's text without its word and the code: the first six digits that stand alone.
    Others may be a part of a phone number."""
    rest = text.split()[1:]
    if _ONE_TIME.match(text.strip()):
        return " ".join(rest[1:])
    return " ".join(_CODE.sub(" ", " ".join(rest), count=1).split())


def _any_village(desk: Desk) -> str:
    return desk.reaches[0].village.name if desk.reaches else "Mtoni"


def _reach(name: str, known: Known, desk: Desk) -> Reach | None:
    """The village of that name among the officer's, also nearly that; the only one where none
    is named."""
    if not name and len(desk.reaches) == 1:
        return desk.reaches[0]
    reading = read_choice(name, [[each.village.name] for each in desk.reaches], known.lexicon)
    if reading.value is None or name.isdigit():
        return None
    return desk.reaches[reading.value]


def _is_named(name: str, village: Village) -> bool:
    """Whether a village was named by its own name, but for case, accents and blanks."""
    return not name or is_name(name, [village.name])


def _no_village(verb: str, desk: Desk) -> Text:
    names = ", ".join(each.village.name for each in desk.reaches)
    return said(o.NO_SUCH_VILLAGE(villages=names, example=verb))


# --- RAIN ------------------------------------------------------------------------------------


def _rain(rest: str, known: Known, desk: Desk) -> Turn:
    hours = _HOURS.search(rest.lower())
    before = rest[: hours.start()].strip() if hours else rest
    name, day = _split_day(before, known, desk)
    reach = _reach(name, known, desk)
    if reach is None:
        return Turn(known.session, (_no_village("RAIN", desk),))
    span = _span(hours, day, known, reach.village) if hours else None
    if span is None:
        return Turn(known.session, (said(o.NO_HOURS(village=reach.village.name)),))
    wrong = wrong_hours(span.starts_at, span.ends_at, reach.village, known.now)
    if wrong is not None:
        return Turn(known.session, (said(wrong),))
    if not reach.phones:
        return Turn(known.session, (said(o.NOBODY_TO_WARN(village=reach.village.name)),))
    return _show_back(reach, span, known)


def _split_day(text: str, known: Known, desk: Desk) -> tuple[str, date | None]:
    """The village's name and the day, where the text ends in one and the rest is a village."""
    words = text.split()
    for count in range(1, min(len(words), LONGEST_DAY_WORDS) + 1):
        name, tail = " ".join(words[:-count]), " ".join(words[-count:])
        reading = read_date(tail, known.lexicon, known.today)
        if reading.outcome is Outcome.UNDERSTOOD and _reach(name, known, desk):
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


def _show_back(reach: Reach, span: Span, known: Known) -> Turn:
    session = begin(
        talks.RAIN_WARNING,
        held=lasting(known.session),
        village_id=reach.village.id,
        village=reach.village.name,
        starts_at=span.starts_at.isoformat(),
        ends_at=span.ends_at.isoformat(),
        from_time=span.starts_at.strftime("%H:%M"),
        to_time=span.ends_at.strftime("%H:%M"),
        sowing=span.starts_at.date().isoformat(),
        phones=reach.phones,
        young=reach.nurseries,
        soon=reach.about_to_sow,
    )
    return opened(session, known)


# --- COUNT, CLEAR, WHO -----------------------------------------------------------------------


def _tally(rest: str, known: Known, desk: Desk, verb: str) -> Tally | Turn:
    reach = _reach(rest, known, desk)
    if reach is None:
        return Turn(known.session, (_no_village(verb, desk),))
    standing = [each for each in desk.tallies if each.village.id == reach.village.id]
    if not standing:
        return Turn(known.session, (said(o.NO_WARNING(village=reach.village.name)),))
    return standing[-1]


def _count(rest: str, known: Known, desk: Desk) -> Turn:
    tally = _tally(rest, known, desk, "COUNT")
    if isinstance(tally, Turn):
        return tally
    times = span_slots(tally.standing.starts_at, tally.standing.ends_at, tally.village)
    counted = o.COUNTED(
        village=tally.village.name,
        from_time=times["from_time"],
        to_time=times["to_time"],
        asked=tally.asked,
        delivered=tally.delivered,
        covered=tally.covered,
        help=tally.need_help,
    )
    return Turn(known.session, (said(counted),))


def _clear(rest: str, known: Known, desk: Desk) -> Turn:
    tally = _tally(rest, known, desk, "CLEAR")
    if isinstance(tally, Turn):
        return tally
    village = tally.village
    if not _is_named(rest, village):  # an all-clear for the wrong village can do harm
        asks = r.NEARLY(village=village.name, example="CLEAR")
        return Turn(known.session, (said(asks),))
    change = GiveAllClear(tally.standing.id)
    return Turn(known.session, (said(o.CLEARED(village=village.name)),), (change,))


def _who(rest: str, known: Known, desk: Desk) -> Turn:
    visits = desk.visits
    if rest:
        reach = _reach(rest, known, desk)
        if reach is None:
            return Turn(known.session, (_no_village("WHO", desk),))
        visits = tuple(each for each in visits if each.village == reach.village.name)
    if not visits:
        return Turn(known.session, (said(o.NOBODY_TO_SEE()),))
    lines = [_visit(each) for each in visits[:MOST_VISITS]]
    if len(visits) > MOST_VISITS:
        lines.append(o.AND_MORE(n=len(visits) - MOST_VISITS))
    return Turn(known.session, (Text(tuple(lines)),))


def _visit(visit: Visit) -> Say:
    """One to be seen; a call may be about no nursery."""
    slots: dict[str, Slot] = {
        "phone": caller(visit.name, visit.phone),
        "village": visit.village,
        "reason": visit.reason,
        "date": visit.since,
    }
    return o.SEE(label=visit.label, **slots) if visit.label else o.SEE_WHO(**slots)


def _temp(rest: str, known: Known, desk: Desk) -> Turn:
    told = read_temp(rest, known)
    reach = _reach(told.name, known, desk)
    if reach is None:
        return Turn(known.session, (_no_village("TEMP", desk),))
    return keep_temp(reach.village, told, known)


_VERBS: Mapping[str, Callable[[str, Known, Desk], Turn]] = {
    "RAIN": _rain,
    "COUNT": _count,
    "CLEAR": _clear,
    "WHO": _who,
    "TEMP": _temp,
    "ADD": add,
    "TELL": tell,
    "SEEN": seen,
}
