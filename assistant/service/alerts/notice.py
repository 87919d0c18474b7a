"""Tells officers by text of an official alert: they are not at the page when a storm comes."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from assistant.alerts import Threat
from assistant.dialogue.rain_hours import span_slots
from assistant.dialogue.values import Kind
from assistant.people import Officer, Village
from assistant.service.house import House
from assistant.service.texts import REPLY_LASTS, Letter, post
from assistant.store import Draft, Work
from assistant.wording import messages_officer as o
from assistant.wording.message import Message, Say, Slot

LONGEST_EVENT = 60  # characters; what the text has room for
MOST_NAMES = 2  # of villages
ONE_DAY = timedelta(days=1)


def tell_of_draft(
    work: Work, house: House, draft: Draft, threat: Threat, *, sent: bool, now: datetime
) -> None:
    """One text to each officer of the villages in danger, with the service's word for it.

    Args:
        threat: what the draft was made from; told in the officer's language if it can be
        sent: the farmers are being warned; else the officer decides.
    """
    for officer, villages in _officers(work, draft.village_ids):
        message, hours = _hours(draft, villages[0], sent=sent)
        event = _short(threat.told(officer.language).event)
        says = message(villages=_names(villages), words=event, **hours)
        _tell(work, house, officer, says, now)


def _hours(draft: Draft, village: Village, *, sent: bool) -> tuple[Message, Mapping[str, Slot]]:
    """The text for hours of one day or of several, and those hours."""
    slots: dict[str, Slot] = {**span_slots(draft.starts_at, draft.ends_at, village)}
    last = draft.ends_at.astimezone(ZoneInfo(village.zone)).date()
    if draft.ends_at - draft.starts_at < ONE_DAY:
        return (o.ALERT_SENT if sent else o.ALERT_DRAFTED), slots
    return (o.ALERT_SENT_DAYS if sent else o.ALERT_DRAFTED_DAYS), {**slots, "last": last}


def tell_of_end(
    work: Work,
    house: House,
    village_ids: Iterable[int],
    event: str,
    *,
    cleared: bool,
    now: datetime,
) -> None:
    """The service no longer warns of these villages.

    Args:
        cleared: the all-clear goes out; else the officer's warning still stands.
    """
    message = o.ALERT_CLEARED if cleared else o.ALERT_OVER
    for officer, villages in _officers(work, village_ids):
        says = message(villages=_names(villages), words=_short(event))
        _tell(work, house, officer, says, now)


def _officers(
    work: Work, village_ids: Iterable[int]
) -> Iterator[tuple[Officer, list[Village]]]:
    """Who is told of which villages; a lead only of those that nobody else serves."""
    found: dict[Officer, list[Village]] = {}
    for village_id in village_ids:
        village = work.people.village(village_id)
        serving = work.people.officers_of(village_id)
        at_hand = [each for each in serving if not each.is_lead] or serving
        if village is not None:
            for officer in at_hand:
                found.setdefault(officer, []).append(village)
    yield from found.items()


def _tell(work: Work, house: House, officer: Officer, says: Say, now: datetime) -> None:
    letter = Letter(
        phone=officer.phone,
        language=officer.language,
        says=(says,),
        kind=Kind.NOTICE,
        due_at=now,
        not_after=now + REPLY_LASTS,
        urgent=True,
    )
    post(work, house, letter, now)


def _names(villages: list[Village]) -> str:
    named = ", ".join(village.name for village in villages[:MOST_NAMES])
    more = len(villages) - MOST_NAMES
    return f"{named} +{more}" if more > 0 else named


def _short(event: str) -> str:
    line = " ".join(event.split())
    return line if len(line) <= LONGEST_EVENT else line[: LONGEST_EVENT - 3] + "..."
