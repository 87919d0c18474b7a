"""Limits beside those of the whole programme: by village, by officer, and on what the calls of
one phone and of places without an officer may cost those who read them.

None of them keeps a danger from anybody: what is urgent is told at once, whatever was before.
"""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from assistant.dialogue.values import Kind
from assistant.people import Officer
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.stopped_here import STOPPED
from assistant.service.texts import REPLY_LASTS, Letter, post, worded
from assistant.service.told import URGENT
from assistant.store import PastCall, TextState, Work
from assistant.wording import messages_officer as o

HOUR, DAY = timedelta(hours=1), timedelta(days=1)
# Common practice, no source: an officer who was told three times in an hour looks.
MOST_AN_HOUR, MOST_A_DAY = 3, 8
# What an officer must know of in any case, and of which there is one at a time.
ALWAYS_TOLD = frozenset({"erase", "refused"}) | URGENT


class Ring(StrEnum):
    """What becomes of a call for help, beside its place on the list."""

    TOLD = "told"
    LAST = "last"  # told, and that further ones stand on the list only
    KEPT = "kept"


def rings(calls: Iterable[PastCall], about: str, now: datetime) -> Ring:
    """Whether the officer is texted of one more call of a farmer who made these."""
    if about in ALWAYS_TOLD:
        return Ring.TOLD
    counted = [each.at for each in calls if each.about not in ALWAYS_TOLD | {STOPPED}]
    hour, day = (sum(at > now - span for at in counted) + 1 for span in (HOUR, DAY))
    if hour > MOST_AN_HOUR or day > MOST_A_DAY:
        return Ring.KEPT
    return Ring.LAST if hour == MOST_AN_HOUR or day == MOST_A_DAY else Ring.TOLD


def in_digest(work: Work, house: House, lead: Officer, due: datetime, now: datetime) -> bool:
    """Whether a lead, who had a notice within the hour, is told of this call by one text for
    all that come until the hour is over."""
    lately = work.outbox.notices(lead.phone, now - HOUR)
    if not lately:
        return False
    words = worded(house, (o.MORE_CALLS(),), lead.language)
    if any(each.text == words and each.state is TextState.WAITING for each in lately):
        return True
    due = max(due, min(each.created_at for each in lately) + HOUR)
    letter = Letter(
        phone=lead.phone,
        language=lead.language,
        says=(o.MORE_CALLS(),),
        kind=Kind.NOTICE,
        due_at=due,
        not_after=due + REPLY_LASTS,
    )
    post(work, house, letter, now)
    return True


def midnight(house: House, now: datetime) -> datetime:
    """When the programme's day began."""
    zone = ZoneInfo(house.zone)
    return datetime.combine(now.astimezone(zone).date(), time(), zone)


@dataclass(frozen=True)
class TooMany:
    """What an officer may write to, in phones: of a day, or of a `month`."""

    phones: int
    month: bool


def too_many(
    work: Work, house: House, sight: Sight, phones: int, now: datetime
) -> TooMany | None:
    """The limit that letters to many and invitations of an officer would go beyond with so
    many phones more; None where there is none. A lead has none."""
    if sight.officer.is_lead:
        return None
    day = midnight(house, now)
    for most, since, month in (
        (house.officer_day_texts, day, False),
        (house.officer_month_texts, day.replace(day=1), True),
    ):
        if most and work.brakes.written_by(sight.officer.id, since) + phones > most:
            return TooMany(most, month)
    return None


@dataclass(frozen=True)
class Spent:
    """A village that has had what it may have in a day, or in a `month`, in segments."""

    village_id: int
    count: int
    month: bool


def spent_villages(
    work: Work, house: House, message_ids: Collection[str], now: datetime
) -> Iterator[Spent]:
    """Counts texts that the operator took for their villages; those that have had their day or
    month with them. Nothing is counted where villages have no limit."""
    limits = _village_limits(house, midnight(house, now).date())
    if not limits or not message_ids:
        return
    today = midnight(house, now).date()
    here = work.brakes.spend_villages(message_ids, today)
    for first, most, month in limits:
        for village_id, count in work.brakes.spent_villages(here, first, today).items():
            if count >= most:
                yield Spent(village_id, count, month)


def _village_limits(house: House, today: date) -> list[tuple[date, int, bool]]:
    """First day of the period, segments, whether it is the month."""
    found = [(today, house.village_segments, False)] if house.village_segments else []
    if house.village_month_money and house.tariff:
        most = int(house.village_month_money / house.tariff.per_segment)
        found.append((today.replace(day=1), most, True))
    return found
