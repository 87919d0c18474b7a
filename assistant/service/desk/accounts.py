"""Officers' accounts: one-time passwords, signing in with limits, another password.

Hashing takes long on purpose and is done outside transactions, which on SQLite hold the whole
database.

Tries are counted apart for a browser in which the officer signed in before, so that strangers
who know the number lock out strangers only. Who is locked out elsewhere has a code sent to
their own phone (`way_back`).
"""

import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from assistant.dialogue.values import Kind
from assistant.people import LANGUAGES, read_phone
from assistant.service import tries, way_back
from assistant.service.audit import TrailAct, note
from assistant.service.desk import second_factor
from assistant.service.desk.sessions import Member, begin, hashed
from assistant.service.house import House
from assistant.service.texts import Letter, post
from assistant.store import Account, NotThereError, Work
from assistant.wording import messages_officer as o

ONE_TIME_LASTS = timedelta(days=7)
KNOWN_LASTS = timedelta(days=180)
HALFWAY_LASTS = timedelta(minutes=5)
# Long enough to matter, short enough to be typed at night; a phrase of words is welcome.
SHORTEST, LONGEST = 10, 200
_LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"  # without those that are mistaken for others
_GROUPS, _GROUP = 3, 4
_WRONG_ANYWAY = "no officer's password: {}"
# The words of this trade that everybody tries first.
_TRADE = ("rice", "nursery", "seedling", "farmer", "officer", "password")
STRONG_ENOUGH = 3  # of 4, by zxcvbn: more than a hundred million guesses


@dataclass(frozen=True)
class DoorVisit:
    """Somebody at the door: `address` they come from as the server saw it, `known` the token
    of a browser that was here before, `code` one that was sent to their phone."""

    address: str
    browser: str = ""
    known: str = ""
    code: str = ""


@dataclass(frozen=True)
class Welcome:
    """The phone and password were right: the session, and what makes the browser known."""

    token: str
    known: str


@dataclass(frozen=True)
class Halfway:
    """They were, and now the second factor is asked for."""

    officer_id: int


@dataclass(frozen=True)
class SignInRefused:
    """They were not, or the one-time password is too old."""


@dataclass(frozen=True)
class Locked:
    """Too many tries: nothing is looked at before `until`, but for who has a code."""

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
    house: House, typed_phone: str, password: str, visit: DoorVisit, now: datetime
) -> Welcome | Halfway | SignInRefused | Locked:
    """A try at the page's door."""
    phone = _read(house, typed_phone)
    with house.store.work() as work:
        account = work.accounts.of_phone(phone)
        tried = _counted(work, account, phone, visit, now)
        until = tries.locked_until(work, tried, now)
        if until is not None and way_back.fits(work, house, phone, visit.code, now):
            tried = ((tries.ONE_TIME, phone),)
            until = tries.locked_until(work, tried, now)
        if until is not None:
            return Locked(until)
        tries.count(work, tried, now)
    if not _fits(house, account, password, now) or account is None:
        _keep_refusal(house, account, tried, visit, now)
        return SignInRefused()
    with house.store.work() as work:
        _forget(work, tried, now)
        if account.totp_salt is not None:
            return Halfway(account.id)
        work.accounts.end_one_time(phone)
        return _welcome(work, account.id, visit, now)


def sign_in_further(
    house: House, officer_id: int, code: str, visit: DoorVisit, now: datetime
) -> Welcome | SignInRefused | Locked:
    """The second factor of somebody whose password was right just now."""
    with house.store.work() as work:
        account = work.accounts.get(officer_id)
        if account is None:
            return SignInRefused()
        tried = (tries.SECOND_FACTOR, account.phone)
        until = tries.locked_until(work, [tried], now)
        if until is not None:
            return Locked(until)
        tries.count(work, [tried], now)
        if not second_factor.take(work, house, account, code, now):
            note(work, officer_id, TrailAct.SIGN_IN_REFUSED, now, detail=visit.address)
            return SignInRefused()
        tries.forget(work, tried)
        work.accounts.end_one_time(account.phone)
        return _welcome(work, officer_id, visit, now)


def text_code(house: House, typed_phone: str, address: str, now: datetime) -> bool:
    """Sends an officer who is locked out a code by text; False where that was asked for too
    often from there. Nobody is told whether the number is an officer's."""
    phone = _read(house, typed_phone)
    with house.store.work() as work:
        tried = (tries.ASKED_CODE, address)
        if tries.locked_until(work, [tried], now) is not None:
            return False
        tries.count(work, [tried], now)
        account = work.accounts.of_phone(phone)
        code = way_back.send_code(work, house, phone, now) if account else None
        if account is None or code is None:
            return True
        letter = Letter(
            phone=phone,
            language=account.language,
            says=(o.PAGE_CODE(code=code),),
            kind=Kind.REPLY,
            not_after=now + way_back.LASTS,
            private=True,
        )
        post(work, house, letter, now)
        note(work, account.id, TrailAct.WAY_BACK_SENT, now, detail=address)
    return True


def _read(house: House, typed_phone: str) -> str:
    region = house.region[:2] if house.region else None
    return read_phone(typed_phone, region) or typed_phone.strip()[:40]


def _counted(
    work: Work, account: Account | None, phone: str, visit: DoorVisit, now: datetime
) -> tuple[tries.Tried, ...]:
    """Where this try is counted: for a browser that is known, its own only."""
    key = hashed(visit.known)
    since = now - KNOWN_LASTS
    if visit.known and account and work.accounts.knows_browser(account.id, key, since):
        return ((tries.KNOWN_BROWSER, key),)
    return ((tries.PHONE, phone), (tries.ADDRESS, visit.address))


def _forget(work: Work, tried: tuple[tries.Tried, ...], now: datetime) -> None:
    """A right password: slips before are forgotten, at an address only this try."""
    for each in tried:
        tries.forget(work, each, now if each[0] is tries.ADDRESS else None)


def _welcome(work: Work, officer_id: int, visit: DoorVisit, now: datetime) -> Welcome:
    token, known = begin(work, officer_id, visit.browser, now), secrets.token_urlsafe(32)
    work.accounts.forget_browsers_before(now - KNOWN_LASTS)
    work.accounts.know_browser(officer_id, hashed(known), now)
    note(work, officer_id, TrailAct.SIGNED_IN, now, detail=visit.address)
    return Welcome(token, known)


def _fits(house: House, account: Account | None, password: str, now: datetime) -> bool:
    """Whether the password opens the account. Where there is none a hash is made all the
    same, so that the time taken does not tell which numbers are officers'."""
    if account is None or account.password_hash is None:
        house.hash_code(_WRONG_ANYWAY.format(password[:LONGEST]))
        return False
    if account.one_time_until is not None and account.one_time_until < now:
        return False
    typed = password[:LONGEST]
    if house.check_code(typed, account.password_hash):
        return True
    read_out = _as_given(typed) if account.one_time_until is not None else None
    return read_out is not None and house.check_code(read_out, account.password_hash)


def _as_given(typed: str) -> str | None:
    """A one-time password that was read out, typed in capitals or without its marks, as it was
    given; None for what is none or is so already."""
    letters = "".join(ch for ch in typed.casefold() if ch not in " -")
    if len(letters) != _GROUPS * _GROUP or not set(letters) <= set(_LETTERS):
        return None
    found = "-".join(letters[at : at + _GROUP] for at in range(0, len(letters), _GROUP))
    return found if found != typed else None


def _keep_refusal(
    house: House,
    account: Account | None,
    tried: tuple[tries.Tried, ...],
    visit: DoorVisit,
    now: datetime,
) -> None:
    """What was typed as the phone is not kept: it may have been the password."""
    with house.store.work() as work:
        known = account.id if account else None
        locked = tries.locked_until(work, tried, now) is not None
        act = TrailAct.SIGN_IN_LOCKED if locked else TrailAct.SIGN_IN_REFUSED
        note(work, known, act, now, detail=visit.address)


def prove(house: House, member: Member, password: str, code: str, now: datetime) -> bool:
    """Whether an officer who is signed in shows once more who they are, before what can do
    much harm. Wrong ones count as tries at the door."""
    officer = member.sight.officer
    tried = (tries.KNOWN_BROWSER, member.key)
    with house.store.work() as work:
        if tries.locked_until(work, [tried], now) is not None:
            return False
        tries.count(work, [tried], now)
        account = work.accounts.get(officer.id)
    if account is None or not _fits(house, account, password, now):
        return False
    with house.store.work() as work:
        if account.totp_salt and not second_factor.take(work, house, account, code, now):
            return False
        tries.forget(work, tried)
        work.accounts.mark_session(member.key, proved_at=now)
    return True


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
        note(work, account.id, TrailAct.ONE_TIME_GIVEN, now)
    return account.name, password


def knows_old(member: Member, now: datetime) -> bool:
    """Whether the password until now need not be typed: a one-time one that was just given."""
    return member.must_change and member.proved(now)


def change_password(
    house: House, member: Member, old: str, new: str, again: str, now: datetime
) -> Welcome | Unfit:
    """Takes a password of the officer's own; every session of theirs ends, and a new one
    begins here.

    Wrong old ones count as tries, so that an open page left alone is no way in.
    """
    officer = member.sight.officer
    unfit = _unfit(new, again, old, (officer.phone, officer.name, house.programme))
    if unfit is not None:
        return unfit
    tried = (tries.KNOWN_BROWSER, member.key)
    with house.store.work() as work:
        if tries.locked_until(work, [tried], now) is not None:
            return Unfit.WRONG_OLD
        tries.count(work, [tried], now)
        account = work.accounts.get(officer.id)
    if knows_old(member, now):  # typed at the door a moment ago, and good for that once
        if account is not None and house.check_code(new, account.password_hash or ""):
            return Unfit.SAME
    elif not _fits(house, account, old, now):
        return Unfit.WRONG_OLD
    password_hash = house.hash_code(new)
    with house.store.work() as work:
        kept = work.accounts.session(member.key)
        work.accounts.set_password(officer.id, password_hash, None)
        tries.forget(work, tried)
        note(work, officer.id, TrailAct.PASSWORD_CHANGED, now)
        return _welcome(work, officer.id, DoorVisit("-", kept.browser if kept else ""), now)


def _unfit(new: str, again: str, old: str, easy: tuple[str, ...]) -> Unfit | None:
    if new != again:
        return Unfit.DIFFERENT
    if len(new) < SHORTEST:
        return Unfit.SHORT
    if len(new) > LONGEST:
        return Unfit.LONG
    if new == old:
        return Unfit.SAME
    return Unfit.EASY if _is_easy(new, easy) else None


def _is_easy(new: str, known: tuple[str, ...]) -> bool:
    """Whether it is a known password, or made of what is known of this officer."""
    from zxcvbn import zxcvbn  # noqa: PLC0415  # its lists of words are large; few need them

    words = [part for each in known for part in (each, *each.split()) if part]
    words += [each.lstrip("+") for each in known if each.startswith("+")]
    folded = new.casefold()
    for word in words:
        folded = folded.replace(word.casefold(), "")
    if len(set(folded)) < SHORTEST // 2:
        return True
    return bool(zxcvbn(new[:72], user_inputs=[*words, *_TRADE])["score"] < STRONG_ENOUGH)


# --- the rest of an account ------------------------------------------------------------------


def set_language(house: House, member: Member, language: str, now: datetime) -> bool:
    """The language of an officer's page and texts; False for one that is not spoken here."""
    if language not in house.languages:
        return False
    with house.store.work() as work:
        work.accounts.set_language(member.sight.officer.id, language)
        note(work, member.sight.officer.id, TrailAct.LANGUAGE_CHANGED, now, detail=language)
    return True


def languages(house: House) -> dict[str, str]:
    """The languages that are spoken here, with their own names."""
    return {code: LANGUAGES[code] for code in house.languages}


def has_officers(house: House) -> bool:
    """Whether anybody could sign in."""
    with house.store.look() as work:
        return work.accounts.count() > 0
