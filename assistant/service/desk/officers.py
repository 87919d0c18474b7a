"""Officers and their accounts, for a lead: who there is, a way in, villages, and the end of it.

A password or code is handed back once to be shown, and kept only as a hash.
"""

from collections.abc import Collection
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum

from assistant.people import Officer, Village, read_phone
from assistant.service import tries
from assistant.service.audit import TrailAct, note
from assistant.service.codes import new_text_code
from assistant.service.desk.accounts import ONE_TIME_LASTS, new_password
from assistant.service.desk.answering import Answering, answering
from assistant.service.desk.second_factor import take_away
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import Account, Work

LONGEST_NAME = 60


@dataclass(frozen=True)
class OfficerLine:
    """One officer, the villages by name, and how they get to the page."""

    officer: Officer
    account: Account
    villages: tuple[Village, ...]
    answering: Answering = Answering()


@dataclass(frozen=True)
class Issued:
    """What is shown once; the code is None where only a password was given, and so on."""

    officer: Officer
    password: str | None = None
    code: str | None = None


class Unfit(StrEnum):
    """Why an officer was not added."""

    NAME = "name"
    PHONE = "phone"
    KNOWN = "known"
    VILLAGE = "village"


@dataclass(frozen=True)
class NewOfficer:
    """An officer as a lead types it."""

    phone: str
    name: str
    village_ids: Collection[int]
    is_lead: bool = False
    language: str = ""


def list_officers(house: House, sight: Sight, now: datetime) -> tuple[OfficerLine, ...]:
    """All whose account is open, by name, and how they answer; nobody for who is no lead."""
    if not sight.officer.is_lead:
        return ()
    with house.store.look() as work:
        found = work.people.officers()
        how = answering(work, found, now)
        lines = ((_line(work, officer), how[officer.id]) for officer in found)
        return tuple(replace(line, answering=its) for line, its in lines if line is not None)


def one_officer(house: House, sight: Sight, officer_id: int) -> OfficerLine | None:
    """One of them; None for who is not there, and for anybody but a lead."""
    with house.store.look() as work:
        return _find(work, sight, officer_id)


def _find(work: Work, sight: Sight, officer_id: int) -> OfficerLine | None:
    officer = work.people.officer_by_id(officer_id) if sight.officer.is_lead else None
    return _line(work, officer) if officer else None


def _line(work: Work, officer: Officer) -> OfficerLine | None:
    account = work.accounts.get(officer.id)
    villages = tuple(v for v in work.people.villages() if v.id in officer.village_ids)
    return OfficerLine(officer, account, villages) if account else None


# --- a way in --------------------------------------------------------------------------------


def give_password(house: House, sight: Sight, officer_id: int, now: datetime) -> Issued | None:
    """A password for one sign-in; None for who is not there, and for the lead's own account,
    which would sign the lead out."""
    if officer_id == sight.officer.id:
        return None
    password = new_password()
    hashed = house.hash_code(password)
    with house.store.work() as work:
        found = _find(work, sight, officer_id)
        if found is None:
            return None
        officer = found.officer
        work.accounts.set_password(officer.id, hashed, now + ONE_TIME_LASTS)
        tries.forget(work, (tries.PHONE, officer.phone))
        note(work, sight.officer.id, TrailAct.ONE_TIME_ISSUED, now, detail=_who(officer))
    return Issued(officer, password=password)


def give_code(house: House, sight: Sight, officer_id: int, now: datetime) -> Issued | None:
    """Another code for texts; None for who is not there."""
    code = new_text_code()
    hashed = house.hash_code(code)
    with house.store.work() as work:
        found = _find(work, sight, officer_id)
        if found is None:
            return None
        work.accounts.set_code(officer_id, hashed)
        note(work, sight.officer.id, TrailAct.CODE_ISSUED, now, detail=_who(found.officer))
    return Issued(found.officer, code=code)


def add_officer(
    house: House, sight: Sight, new: NewOfficer, now: datetime
) -> Issued | Unfit | None:
    """A new officer with a code and a one-time password; None for anybody but a lead."""
    if not sight.officer.is_lead:
        return None
    region = house.region[:2] if house.region else None
    phone, name = read_phone(new.phone, region), " ".join(new.name.split())[:LONGEST_NAME]
    known = {village.id for village in sight.villages}
    villages = sorted(known.intersection(new.village_ids))
    if not name:
        return Unfit.NAME
    if phone is None:
        return Unfit.PHONE
    if not villages and not new.is_lead:
        return Unfit.VILLAGE
    language = new.language if new.language in house.languages else house.languages[0]
    code, password = new_text_code(), new_password()
    hashes = house.hash_code(code), house.hash_code(password)
    with house.store.work() as work:
        if work.people.officer(phone) is not None:
            return Unfit.KNOWN
        officer = work.people.add_officer(
            phone, name, hashes[0], language, villages, is_lead=new.is_lead
        )
        work.accounts.set_password(officer.id, hashes[1], now + ONE_TIME_LASTS)
        note(work, sight.officer.id, TrailAct.OFFICER_ADDED, now, detail=_who(officer))
    return Issued(officer, password, code)


def mend_officer(
    house: House, sight: Sight, officer_id: int, typed: NewOfficer, now: datetime
) -> Officer | Unfit | None:
    """Another name, number or language of an officer; None for who is not there."""
    region = house.region[:2] if house.region else None
    phone, name = read_phone(typed.phone, region), " ".join(typed.name.split())[:LONGEST_NAME]
    with house.store.work() as work:
        found = _find(work, sight, officer_id)
        if found is None:
            return None
        if not name:
            return Unfit.NAME
        if phone is None:
            return Unfit.PHONE
        old = found.officer
        language = typed.language if typed.language in house.languages else old.language
        if not work.accounts.mend(old.id, name=name, phone=phone, language=language):
            return Unfit.KNOWN
        detail = f"{_who(old)} -> {name}, {phone}"
        note(work, sight.officer.id, TrailAct.OFFICER_MENDED, now, detail=detail)
        return work.people.officer_by_id(officer_id)


# --- villages, and the end -------------------------------------------------------------------


def give_villages(
    house: House, sight: Sight, officer_id: int, village_ids: Collection[int], now: datetime
) -> Officer | None:
    """The villages that an officer serves from now on; None for who is not there."""
    chosen = [village for village in sight.villages if village.id in village_ids]
    with house.store.work() as work:
        found = _find(work, sight, officer_id)
        if found is None:
            return None
        work.accounts.serve(officer_id, [village.id for village in chosen])
        names = ", ".join(village.name for village in chosen) or "-"
        detail = f"{_who(found.officer)}: {names}"
        note(work, sight.officer.id, TrailAct.VILLAGES_GIVEN, now, detail=detail)
    return found.officer


def close_account(house: House, sight: Sight, officer_id: int, now: datetime) -> Officer | None:
    """Ends an officer's way in; None for who is not there, and for the lead's own account, so
    that one lead is always left."""
    if officer_id == sight.officer.id:
        return None
    with house.store.work() as work:
        found = _find(work, sight, officer_id)
        if found is None:
            return None
        work.accounts.close(officer_id, now)
        note(work, sight.officer.id, TrailAct.OFFICER_CLOSED, now, detail=_who(found.officer))
    return found.officer


def take_factor(house: House, sight: Sight, officer_id: int, now: datetime) -> str | None:
    """Takes the second factor away of an officer who lost the phone; None for who is not
    there, and for the lead's own account."""
    if officer_id == sight.officer.id:
        return None
    with house.store.look() as work:
        found = _find(work, sight, officer_id)
    if found is None:
        return None
    return take_away(house, found.officer.phone, sight.officer.id, now)


def _who(officer: Officer) -> str:
    return f"{officer.name}, {officer.phone}"
