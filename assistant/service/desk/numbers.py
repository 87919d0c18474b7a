"""A farmer's number: another one, or one that has passed to somebody else.

What was kept stays with the person: the story of the old owner ends when the number passes on,
and the new one begins with the question whether they agree.
"""

from dataclasses import replace
from datetime import datetime
from enum import StrEnum

from assistant.people import Farmer, read_phone
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.consent import Enroller, enrol_one
from assistant.service.house import House
from assistant.service.replan import save_and_plan
from assistant.service.sight import Sight
from assistant.store import Work


class NotChanged(StrEnum):
    """Why a number was not changed."""

    BAD = "bad"
    TAKEN = "taken"


def change_number(
    house: House, sight: Sight, farmer_id: int, typed: str, now: datetime
) -> NotChanged | Farmer | None:
    """Gives a farmer another number, who is asked there to agree before anything else goes to
    it; None for one who is not in sight.

    The number may be mistyped, and then a stranger would get the texts.
    """
    phone = read_phone(typed, house.region[:2] if house.region else None)
    with house.store.work() as work:
        farmer = work.people.farmer_by_id(farmer_id)
        village = sight.village(farmer.village_id) if farmer else None
        if farmer is None or village is None:
            return None
        if phone is None:
            return NotChanged.BAD
        for each in sorted({phone, farmer.phone}):
            work.lock(each)
        if work.people.farmer(phone) is not None:
            return NotChanged.TAKEN
        enrolment = work.enrolments.get(farmer.id)
        _leave(work, farmer, now)
        who = Enroller(sight.officer.id, sight.officer.name)
        wishes = enrolment.wishes if enrolment else ()
        moved = replace(farmer, phone=phone)
        kept = enrol_one(work, house, who, moved, village, "page", now, wishes)
        about = Subject(farmer.id, village_id=village.id)
        note(work, sight.officer.id, TrailAct.NUMBER_CHANGED, now, about)
        return kept


def pass_on(work: Work, house: House, farmer: Farmer, now: datetime, *, beds_go: bool) -> None:
    """Takes the number off a farmer, whose story is kept; somebody else has it now.

    Args:
        beds_go: the nurseries go to the new owner, so they are not closed here.
    """
    if not beds_go:
        for bed in work.nurseries.of_farmer(farmer.id):
            save_and_plan(work, house, farmer, replace(bed, closed=True), now)
    _leave(work, farmer, now)
    ended = replace(farmer, phone="", stopped_at=farmer.stopped_at or now)
    work.people.save_farmer(ended)


Span = tuple[str, datetime | None, datetime | None]
"""A number, and from when until when it was one farmer's; None where nothing bounds it."""


def spans(work: Work, farmer: Farmer) -> tuple[Span, ...]:
    """The numbers of a farmer, with the times at which they were theirs."""
    past = tuple(
        (each.phone, work.phones.had_by_others_until(each.phone, each.until), each.until)
        for each in work.phones.past_of(farmer.id)
    )
    if not farmer.phone:
        return past
    since = work.phones.had_by_others_until(farmer.phone)
    return ((farmer.phone, since, None), *past)


def _leave(work: Work, farmer: Farmer, now: datetime) -> None:
    if not farmer.phone:
        return
    work.phones.add_past(farmer.id, farmer.phone, now)
    work.outbox.withdraw(now, phone=farmer.phone)
    work.enrolments.end_talks(farmer.phone)
