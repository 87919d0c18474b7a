"""Asking farmers whom somebody else enrolled whether they agree, and what becomes of it.

Nothing else goes to them before they say yes. Who does not answer is asked once more, in
daylight, some days later; then the silence is the officer's to see.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from assistant.dialogue.invited import invitation
from assistant.dialogue.values import Invited, Kind
from assistant.people import Farmer, Village
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.texts import Letter, after_quiet, post, post_all
from assistant.store import Enrolment, Wish, Work

# Common practice, no source: long enough for a phone that is off over a market day, soon
# enough that the person still remembers who came by.
SECOND_AFTER = timedelta(days=3)
ASKING_LASTS = timedelta(days=2)
SILENT_AFTER = timedelta(days=3)  # after the second asking


@dataclass(frozen=True)
class Enroller:
    """Who enrols, as the farmer is told and as it is kept; no officer is the command line."""

    officer_id: int | None
    called: str


def invited(work: Work, house: House, farmer: Farmer | None) -> Invited | None:
    """What a talk may know of a farmer whom somebody else enrolled and who has not agreed."""
    if farmer is None or farmer.consent_at is not None:
        return None
    enrolment = work.enrolments.get(farmer.id)
    if enrolment is None:
        return None
    return Invited(
        officer=_called(work, house, enrolment.officer_id),
        wishes=enrolment.wishes,
        refused=enrolment.answer == "no",
        free=house.replies_free,
    )


def _called(work: Work, house: House, officer_id: int | None) -> str:
    officer = work.people.officer_by_id(officer_id) if officer_id is not None else None
    return officer.name if officer else house.programme


def letter_to(house: House, farmer: Farmer, called: str, due: datetime) -> Letter:
    """The text that asks a farmer."""
    text = invitation(called, house.replies_free)
    return Letter(
        phone=farmer.phone,
        language=farmer.language,
        says=text.says,
        kind=Kind.CONSENT,
        due_at=due,
        not_after=due + ASKING_LASTS,
        focus=text.focus,
    )


def enrol_one(
    work: Work,
    house: House,
    who: Enroller,
    farmer: Farmer,
    village: Village,
    way: str,
    now: datetime,
    wishes: tuple[Wish, ...] = (),
) -> Farmer:
    """Puts one farmer on the roll and asks them; a kept one is asked anew.

    Args:
        farmer: with id 0 where they are new; without consent.
        way: "page", "text" or "list".
    """
    work.enrolments.end_talks(farmer.phone)
    kept = work.people.save_farmer(
        replace(farmer, consent_at=None, stopped_at=None, paused_at=None)
    )
    due = after_quiet(house, village.zone, now)
    work.enrolments.save(Enrolment(kept.id, who.officer_id, way, now, 1, due, wishes=wishes))
    post(work, house, letter_to(house, kept, who.called, due), now)
    note(
        work,
        who.officer_id,
        TrailAct.ENROLLED,
        now,
        Subject(kept.id, village_id=village.id),
        way,
    )
    return kept


def ask_all(
    work: Work,
    house: House,
    who: Enroller,
    farmers: Iterable[tuple[Farmer, Village]],
    now: datetime,
) -> None:
    """Asks many at once."""
    post_all(
        work,
        house,
        (
            letter_to(house, farmer, who.called, after_quiet(house, village.zone, now))
            for farmer, village in farmers
        ),
        now,
    )


# --- the second asking -----------------------------------------------------------------------


def to_ask_again(work: Work, now: datetime) -> tuple[str, ...]:
    """The phones whose second asking is due."""
    return work.enrolments.to_ask_again(now - SECOND_AFTER)


def ask_again(work: Work, house: House, phone: str, now: datetime) -> None:
    """Asks once more, and for the last time, unless it is night there."""
    work.lock(phone)
    farmer = work.people.farmer(phone)
    enrolment = work.enrolments.get(farmer.id) if farmer else None
    if farmer is None or enrolment is None or _settled(farmer, enrolment):
        return
    village = work.people.village(farmer.village_id) if farmer.village_id else None
    if after_quiet(house, village.zone if village else house.zone, now) > now:
        return
    called = _called(work, house, enrolment.officer_id)
    post(work, house, letter_to(house, farmer, called, now), now)
    work.enrolments.save(replace(enrolment, asked=2, asked_at=now))


def _settled(farmer: Farmer, enrolment: Enrolment) -> bool:
    answered = enrolment.answer is not None or enrolment.asked != 1
    return answered or farmer.consent_at is not None or farmer.stopped_at is not None


# --- the answer ------------------------------------------------------------------------------


def note_answer(work: Work, farmer: Farmer, answer: str, now: datetime) -> None:
    """Keeps what a farmer answered who was enrolled by somebody else: "yes", "no", "stop"."""
    enrolment = work.enrolments.get(farmer.id)
    if enrolment is None or enrolment.answer == answer:
        return
    work.enrolments.save(replace(enrolment, answer=answer, answered_at=now))
    act = TrailAct.AGREED if answer == "yes" else TrailAct.REFUSED
    note(work, None, act, now, Subject(farmer.id, village_id=farmer.village_id))


def forget(work: Work, phone: str, now: datetime) -> None:
    """Keeps no more than the number and the no of somebody who said it; of a number that
    nobody enrolled, nothing but what the operator must not send twice."""
    work.outbox.withdraw(now, phone=phone)
    work.enrolments.end_talks(phone)
    work.calls.forget_unread(phone)
    farmer = work.people.farmer(phone)
    if farmer is not None:
        note_answer(work, farmer, "no", now)
        work.enrolments.forget_person(farmer.id)
    if work.people.officer(phone) is None:
        work.inbox.forget(phone)
