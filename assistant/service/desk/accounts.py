"""Officers' accounts: one-time passwords, signing in with limits, sessions, another password.

Hashing takes long on purpose and is done outside transactions, which on SQLite hold the whole
database.
"""

import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from assistant.people import LANGUAGES, read_phone
from assistant.service import tries
from assistant.service.audit import Act, note
from assistant.service.house import House
from assistant.service.sight import Sight, sight_of
from assistant.store import Account, NotThereError

ONE_TIME_LASTS = timedelta(days=7)
# Long enough to matter, short enough to be typed at night; a phrase of words is welcome.
SHORTEST, LONGEST = 10, 200
_LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"  # without those that are mistaken for others
_GROUPS, _GROUP = 3, 4
_WRONG_ANYWAY = "no officer's password: {}"


@dataclass(frozen=True)
class Session:
    """What a signed-in browser carries: who it is, and which epoch of their sessions."""

    officer_id: int
    epoch: int

    def __str__(self) -> str:
        return f"{self.officer_id}.{self.epoch}"

    @staticmethod
    def read(text: str) -> "Session | None":
        """The session of a cookie; None where it is of another make."""
        officer, _, epoch = text.partition(".")
        if not (officer.isdecimal() and epoch.isdecimal()):
            return None
        return Session(int(officer), int(epoch))


@dataclass(frozen=True)
class Member:
    """An officer who is signed in, and what they may see."""

    session: Session
    sight: Sight
    must_change: bool


@dataclass(frozen=True)
class Welcome:
    """The phone and password were right."""

    session: Session


@dataclass(frozen=True)
class Refused:
    """They were not, or the one-time password is too old."""


@dataclass(frozen=True)
class Locked:
    """Too many tries: nothing is looked at before `until`."""

    until: datetime


class Unfit(StrEnum):
    """Why a new password is not taken."""

    WRONG_OLD = "wrong_old"
    SHORT = "short"
    LONG = "long"
    SAME = "same"
    EASY = "easy"
    DIFFERENT = "different"


# --- signing in ------------------------------------------------------------------------------


def sign_in(
    house: House, typed_phone: str, password: str, address: str, now: datetime
) -> Welcome | Refused | Locked:
    """A try at the page's door.

    Args:
        address: where the request came from, as the server saw it.
    """
    region = house.region[:2] if house.region else None
    phone = read_phone(typed_phone, region) or typed_phone.strip()[:40]
    tried = ((tries.PHONE, phone), (tries.ADDRESS, address))
    with house.store.work() as work:
        until = tries.locked_until(work, tried, now)
        if until is not None:
            return Locked(until)
        tries.count(work, tried, now)
        account = work.accounts.of_phone(phone)
    if not _fits(house, account, password, now) or account is None:
        _keep_refusal(house, account, tried, now)
        return Refused()
    with house.store.work() as work:
        tries.forget(work, tried[0])
        tries.forget(work, tried[1], now)
        note(work, account.id, Act.SIGNED_IN, now, detail=address)
    return Welcome(Session(account.id, account.session_epoch))


def _fits(house: House, account: Account | None, password: str, now: datetime) -> bool:
    """Whether the password opens the account. Where there is none a hash is made all the
    same, so that the time taken does not tell which numbers are officers'."""
    if account is None or account.password_hash is None:
        house.hash_code(_WRONG_ANYWAY.format(password[:LONGEST]))
        return False
    if account.one_time_until is not None and account.one_time_until < now:
        return False
    return house.check_code(password[:LONGEST], account.password_hash)


def _keep_refusal(
    house: House, account: Account | None, tried: tuple[tries.Tried, ...], now: datetime
) -> None:
    with house.store.work() as work:
        known = account.id if account else None
        locked = tries.locked_until(work, tried, now) is not None
        act = Act.SIGN_IN_LOCKED if locked else Act.SIGN_IN_REFUSED
        note(work, known, act, now, detail=", ".join(who for _, who in tried))


def member(house: House, session: Session) -> Member | None:
    """Who a session is of; None where it has ended."""
    with house.store.look() as work:
        account = work.accounts.get(session.officer_id)
        officer = work.people.officer_by_id(session.officer_id)
        if account is None or officer is None or account.session_epoch != session.epoch:
            return None
        must_change = account.one_time_until is not None
        return Member(session, sight_of(work, officer), must_change)


# --- passwords -------------------------------------------------------------------------------


def new_password() -> str:
    """A password for one sign-in, easy to read out and to type: 59 bits."""
    groups = ("".join(secrets.choice(_LETTERS) for _ in range(_GROUP)) for _ in range(_GROUPS))
    return "-".join(groups)


def give_one_time_password(house: House, phone: str, now: datetime) -> tuple[str, str]:
    """Gives an officer a password for one sign-in, in which it must be changed.

    Returns:
        The officer's name and the password, which is kept nowhere.

    Raises:
        NotThereError: the phone is no officer's.
    """
    password = new_password()
    password_hash = house.hash_code(password)
    with house.store.work() as work:
        account = work.accounts.of_phone(phone)
        if account is None:
            raise NotThereError(
                f"expected an officer's phone, got {phone}: add the officer first with "
                "nursery officer add"
            )
        work.accounts.set_password(account.id, password_hash, now + ONE_TIME_LASTS)
        tries.forget(work, (tries.PHONE, phone))
        note(work, account.id, Act.ONE_TIME_GIVEN, now)
    return account.name, password


def change_password(
    house: House, member: Member, old: str, new: str, again: str, now: datetime
) -> Session | Unfit:
    """Takes a password of the officer's own; every other session of theirs ends.

    Wrong old ones count as tries at the door, so that an open page left alone is no way in.
    """
    officer = member.sight.officer
    unfit = _unfit(new, again, old, (officer.phone, officer.name))
    if unfit is not None:
        return unfit
    tried = (tries.PHONE, officer.phone)
    with house.store.work() as work:
        if tries.locked_until(work, [tried], now) is not None:
            return Unfit.WRONG_OLD
        tries.count(work, [tried], now)
        account = work.accounts.get(officer.id)
    if not _fits(house, account, old, now):
        return Unfit.WRONG_OLD
    password_hash = house.hash_code(new)
    with house.store.work() as work:
        epoch = work.accounts.set_password(officer.id, password_hash, None)
        tries.forget(work, tried)
        note(work, officer.id, Act.PASSWORD_CHANGED, now)
    return Session(officer.id, epoch)


def _unfit(new: str, again: str, old: str, easy: tuple[str, ...]) -> Unfit | None:
    if new != again:
        return Unfit.DIFFERENT
    if len(new) < SHORTEST:
        return Unfit.SHORT
    if len(new) > LONGEST:
        return Unfit.LONG
    if new == old:
        return Unfit.SAME
    folded = new.casefold()
    for word in easy:
        folded = folded.replace(word.casefold(), "").replace(word.lstrip("+").casefold(), "")
    return Unfit.EASY if len(set(folded)) < SHORTEST // 2 else None


# --- the rest of an account ------------------------------------------------------------------


def set_language(house: House, member: Member, language: str, now: datetime) -> bool:
    """The language of an officer's page and texts; False for one that is not spoken here."""
    if language not in house.languages:
        return False
    with house.store.work() as work:
        work.accounts.set_language(member.sight.officer.id, language)
        note(work, member.sight.officer.id, Act.LANGUAGE_CHANGED, now, detail=language)
    return True


def languages(house: House) -> dict[str, str]:
    """The languages that are spoken here, with their own names."""
    return {code: LANGUAGES[code] for code in house.languages}


def session_secret(house: House, now: datetime) -> str:
    """The key that signs sessions, made once and kept in the database, which every web process
    of the deployment shares."""
    with house.store.work() as work:
        return work.accounts.secret("web sessions", secrets.token_hex(32), now)


def has_officers(house: House) -> bool:
    """Whether anybody could sign in."""
    with house.store.look() as work:
        return work.accounts.count() > 0
