"""People's own data: agreeing, being forgotten, and how long what is kept.

A sender can be forged. So a wish to be forgotten is asked back at the phone itself, carried out
a week later, taken back by START, told to the officer, and waits while somebody there is in
danger.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from hashlib import sha256

from assistant.dialogue.values import Kind
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.texts import Letter, post
from assistant.store import Erasure, ForgottenPerson, Lane, Work
from assistant.wording import messages_privacy as privacy
from assistant.wording import messages_talk as m
from assistant.wording.message import Say

ASKED_LASTS = timedelta(days=3)
CARRIED_OUT_AFTER = timedelta(days=7)


@dataclass(frozen=True)
class Keeping:
    """Rows of one kind: what they are for, and how long they are kept."""

    kind: str
    why: str
    days: int


# Design choices, no source: a season and its results lie within a year; what nobody needs after
# the talk goes with it.
KEEPING = (
    Keeping("screens", "a page goes on where the call was cut", 2),
    Keeping("talks of strangers", "a sign-up goes on where it was left", 30),
    Keeping("words not understood", "a person reads them, and lists of words are mended", 180),
    Keeping("words that came", "the officer sees what was said, for a season", 400),
    Keeping("words that were sent", "the same", 400),
    Keeping("words of officers", "the same", 400),
    Keeping("lists that were sent in", "what is left out is mended and sent in again", 7),
    Keeping("what undoes a deed", "a slip is taken back within a minute", 1),
)


def thin_out(house: House, now: datetime) -> Iterator[int]:
    """Takes away what was kept long enough, a part at a time; how many rows each time."""
    for keeping in KEEPING:
        before = now - timedelta(days=keeping.days)
        while True:
            with house.store.work() as work:
                done = work.privacy.thin_out(keeping.kind, before)
            if not done:
                break
            yield done


# --- agreeing --------------------------------------------------------------------------------


def keep_agreement(
    work: Work, house: House, farmer_id: int, channel: str, language: str, now: datetime
) -> None:
    """Keeps when, how and to which words somebody agreed."""
    work.privacy.agreed(farmer_id, now, channel, language, version_of(house, language))


def version_of(house: House, language: str) -> str:
    """A digest of the words of consent as they are said in a language."""
    translations = house.catalogue(language).translations
    said = translations.gettext(m.ASK_CONSENT.text)
    return sha256(said.encode()).hexdigest()[:12]


# --- being forgotten -------------------------------------------------------------------------


def ask_back(work: Work, house: House, phone: str, language: str, now: datetime) -> None:
    """Somebody wants what is kept of them deleted: asked once more, at the phone itself."""
    kept = work.privacy.erasure(phone)
    if kept is not None and kept.due_at is not None:
        return
    work.privacy.keep_erasure(Erasure(phone, now, None, None))
    _tell(work, house, phone, language, privacy.ERASE_SURE(), now)


def confirms(work: Work, house: House, phone: str, text: str, now: datetime) -> bool:
    """Whether this text is the word by which the wish is confirmed; then it is kept, and
    told."""
    if text.strip(" .!\n").casefold() not in privacy.DELETE_WORDS:
        return False
    wish = work.privacy.erasure(phone)
    if wish is None or wish.due_at is not None or now - wish.asked_at > ASKED_LASTS:
        return False
    farmer = work.people.farmer(phone)
    _settle(work, house, phone, farmer.language if farmer else None, None, now)
    return True


def _settle(
    work: Work, house: House, phone: str, language: str | None, by: int | None, now: datetime
) -> None:
    due = now + CARRIED_OUT_AFTER
    work.privacy.keep_erasure(Erasure(phone, now, due, by))
    farmer = work.people.farmer(phone)
    about = Subject(farmer.id, village_id=farmer.village_id) if farmer else Subject()
    note(work, by, TrailAct.ERASURE_ASKED, now, about)
    _tell(work, house, phone, language, privacy.ERASE_DUE(date=due.date()), now)


def keep_after_all(work: Work, phone: str) -> None:
    """Who starts again wants to be known."""
    if work.privacy.erasure(phone) is not None:
        work.privacy.end_erasure(phone)


def erase_due(house: House, now: datetime) -> int:
    """Carries out what is due; how many. Who is in danger is not forgotten meanwhile."""
    with house.store.look() as work:
        due = work.privacy.due(now)
    done = 0
    for wish in due:
        with house.store.work() as work:
            work.lock(wish.phone)
            done += _erase(work, wish, now)
    return done


def _erase(work: Work, wish: Erasure, now: datetime) -> bool:
    farmer = work.people.farmer(wish.phone)
    if farmer is None:
        work.privacy.forget_phone(wish.phone)
        work.privacy.end_erasure(wish.phone)
        return True
    if work.alarms.any_open(farmer.id):
        return False
    if farmer.village_id and work.warnings.standing(farmer.village_id, now):
        return False
    work.outbox.withdraw(now, phone=wish.phone)
    work.privacy.forget(ForgottenPerson(farmer.id, wish.phone, farmer.name), now)
    work.privacy.end_erasure(wish.phone)
    note(work, wish.officer_id, TrailAct.ERASED, now, Subject(farmer.id))
    return True


def erase_by_page(house: House, sight: Sight, farmer_id: int, now: datetime) -> bool | None:
    """A lead was asked to delete what is kept of a farmer: in a week, as by text. None for who
    is not in sight; False where that was asked already."""
    if not sight.officer.is_lead:
        return None
    with house.store.work() as work:
        farmer = work.people.farmer_by_id(farmer_id)
        if farmer is None or not farmer.phone:
            return None
        wish = work.privacy.erasure(farmer.phone)
        if wish is not None and wish.due_at is not None:
            return False
        _settle(work, house, farmer.phone, farmer.language, sight.officer.id, now)
    return True


def erase_by_command(house: House, phone: str, now: datetime) -> bool:
    """The same at the command line; False for who is not known, or asked already."""
    with house.store.work() as work:
        farmer, wish = work.people.farmer(phone), work.privacy.erasure(phone)
        if farmer is None or (wish is not None and wish.due_at is not None):
            return False
        _settle(work, house, phone, farmer.language, None, now)
    return True


def kept_of(house: House, phone: str, now: datetime, by: int | None = None) -> str | None:
    """Everything that is kept of a phone's farmer, as JSON; None for who is not known. That it
    was taken leaves a line."""
    with house.store.work() as work:
        farmer = work.people.farmer(phone)
        if farmer is None:
            return None
        found = work.privacy.kept_of(farmer.id, phone)
        note(
            work,
            by,
            TrailAct.PERSON_TAKEN,
            now,
            Subject(farmer.id, village_id=farmer.village_id),
        )
    return json.dumps(found, indent=1, ensure_ascii=False, default=str)


def take_by_page(house: House, sight: Sight, farmer_id: int, now: datetime) -> str | None:
    """The same for a lead, by the farmer's page; None for who is not in sight."""
    if not sight.officer.is_lead:
        return None
    with house.store.look() as work:
        farmer = work.people.farmer_by_id(farmer_id)
    return kept_of(house, farmer.phone, now, sight.officer.id) if farmer else None


def erased_on(house: House, phone: str) -> date | None:
    """The day on which somebody is forgotten who has asked for it."""
    with house.store.look() as work:
        wish = work.privacy.erasure(phone)
    return wish.due_at.date() if wish and wish.due_at else None


def _tell(
    work: Work, house: House, phone: str, language: str | None, says: Say, now: datetime
) -> None:
    letter = Letter(
        phone=phone,
        language=language,
        says=(says,),
        kind=Kind.REPLY,
        not_after=now + timedelta(days=1),
        lane=Lane.DANGER,  # as STOP's confirmation: nothing holds it
    )
    post(work, house, letter, now)
