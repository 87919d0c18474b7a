"""Daily texts that rest, since somebody may want no more of them: warnings go on, an officer
rings, and a clear word settles it. Or fewer of them: only on days with work."""

from dataclasses import replace
from datetime import datetime

from assistant.dialogue.values import Kind
from assistant.people import Farmer
from assistant.service.house import House
from assistant.service.replan import save_and_plan
from assistant.store import Work

UNSURE = "unsure"
"""What an invitation is answered by who may not want it: it is never sent again."""

_DAILY = frozenset({Kind.PROMPT, Kind.SECOND})


def pause(work: Work, phone: str, now: datetime) -> Farmer | None:
    """Lets the daily texts of a phone rest; the farmer whom an officer is to ring, if that is
    news. Who has not agreed yet is not asked again, and nobody need ring."""
    farmer = work.people.on_roll(phone)
    if farmer is None or farmer.stopped_at is not None or farmer.paused_at is not None:
        return None
    if farmer.consent_at is None:
        _leave_alone(work, farmer, now)
        return None
    work.outbox.withdraw(now, phone=phone, kinds=_DAILY)
    return work.people.save_farmer(replace(farmer, paused_at=now))


def _leave_alone(work: Work, farmer: Farmer, now: datetime) -> None:
    work.outbox.withdraw(now, phone=farmer.phone, kinds=[Kind.CONSENT])
    enrolment = work.enrolments.get(farmer.id)
    if enrolment is not None and enrolment.answer is None:
        work.enrolments.save(replace(enrolment, answer=UNSURE, answered_at=now))


def resume(work: Work, phone: str) -> None:
    """The daily texts go on."""
    farmer = work.people.on_roll(phone)
    if farmer is not None and farmer.paused_at is not None:
        work.people.save_farmer(replace(farmer, paused_at=None))


def set_pace(work: Work, house: House, farmer: Farmer, only_work: bool, now: datetime) -> None:
    """A phone hears of its beds daily or only on days with work; texts that rested go on."""
    paced = replace(farmer, only_work=only_work, paused_at=None)
    if paced == farmer:
        return
    work.people.save_farmer(paced)
    for bed in work.nurseries.of_farmer(farmer.id):
        if not bed.closed:
            save_and_plan(work, house, paced, bed, now)
