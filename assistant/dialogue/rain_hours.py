"""The hours of a warning: how far ahead they may begin and how long they may last.

A warning holds up sowing and uncovering while it stands, so a wrong month must not stand for
weeks. Both limits are common practice, no source: a storm is seldom foreseen surely for more
than three days, and a longer one is warned of again. How long each danger may be warned of
stands in its row.
"""

from datetime import date, datetime, time, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from assistant.agronomy.dangers.rows import DANGERS, RAIN
from assistant.dialogue.values import IssueWarning, Known, Session
from assistant.people import Village
from assistant.wording import messages_dangers as dangers
from assistant.wording import messages_officer as o
from assistant.wording import messages_rain as rain
from assistant.wording.message import Say, Slot

MOST_AHEAD = timedelta(days=3)


def longest(danger: str) -> timedelta:
    """How long a warning of a danger may last."""
    return timedelta(days=DANGERS[danger].longest_d)


class HoursFault(StrEnum):
    """What is wrong with the hours of a warning."""

    BACKWARD = "backward"
    PAST = "past"
    TOO_FAR = "too_far"
    TOO_LONG = "too_long"


def hours_fault(
    starts_at: datetime, ends_at: datetime, now: datetime, danger: str = RAIN
) -> HoursFault | None:
    """What is wrong with these hours, if anything."""
    if ends_at <= starts_at:
        return HoursFault.BACKWARD
    if ends_at <= now:
        return HoursFault.PAST
    if starts_at > now + MOST_AHEAD:
        return HoursFault.TOO_FAR
    if ends_at - starts_at > longest(danger):
        return HoursFault.TOO_LONG
    return None


def span_slots(
    starts_at: datetime, ends_at: datetime, village: Village
) -> dict[str, date | time]:
    """The slots of a text that names the hours of rain, in the village's time."""
    zone = ZoneInfo(village.zone)
    start, end = starts_at.astimezone(zone), ends_at.astimezone(zone)
    return {"from_time": start.time(), "to_time": end.time(), "date": start.date()}


def days_slots(starts_at: datetime, ends_at: datetime, village: Village) -> dict[str, date]:
    """The slots of a text that names the first and the last day, in the village's time."""
    zone = ZoneInfo(village.zone)
    last = ends_at.astimezone(zone) - timedelta(minutes=1)  # midnight ends the day before
    return {"date": starts_at.astimezone(zone).date(), "last": last.date()}


def is_told_by_days(starts_at: datetime, ends_at: datetime) -> bool:
    """Whether a danger is told by its days, since its hours are many."""
    return ends_at - starts_at >= timedelta(days=1)


def wrong_hours(
    starts_at: datetime,
    ends_at: datetime,
    village: Village,
    now: datetime,
    danger: str = RAIN,
    word: str = "RAIN",
) -> Say | None:
    """What to tell of hours that no warning may have, if anything is wrong with them.

    `word`: the officer's for the danger.
    """
    fault = hours_fault(starts_at, ends_at, now, danger)
    slots = span_slots(starts_at, ends_at, village)
    if fault is HoursFault.TOO_FAR:
        ahead: dict[str, Slot] = {"date": slots["date"], "days": MOST_AHEAD.days}
        return rain.TOO_FAR(**ahead) if danger == RAIN else dangers.TOO_FAR(word=word, **ahead)
    past = o.HOURS_PAST if danger == RAIN else dangers.HOURS_PAST
    return past(**slots) if fault else None


def clock_in(moment: datetime, village: Village) -> time:
    """The time of the day that it is in a village."""
    return moment.astimezone(ZoneInfo(village.zone)).time()


def sent_warning(session: Session, known: Known) -> tuple[Say, IssueWarning | None]:
    """What to tell of a warning that was confirmed, and the warning; none where its hours have
    gone by since it was shown."""
    kept = {name: str(value) for name, value in session.answers.items()}
    change = IssueWarning(
        village_id=int(kept["village_id"]),
        starts_at=datetime.fromisoformat(kept["starts_at"]),
        ends_at=datetime.fromisoformat(kept["ends_at"]),
        danger=kept.get("danger", RAIN),
    )
    reaches = known.desk.reaches if known.desk else ()
    reach = next((each for each in reaches if each.village.id == change.village_id), None)
    if reach is None:
        names = ", ".join(each.village.name for each in reaches)  # it was handed over meanwhile
        return o.NO_SUCH_VILLAGE(villages=names, example="RAIN"), None
    span = change.starts_at, change.ends_at
    word = DANGERS[change.danger].word(known.catalogue.language)
    wrong = wrong_hours(*span, reach.village, known.now, change.danger, word)
    if wrong is not None:
        return wrong, None
    slots: dict[str, Slot] = {"phones": int(kept["phones"]), "village": kept["village"]}
    return o.WARNED(**slots), change
