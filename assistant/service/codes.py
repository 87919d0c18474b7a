"""Officers' codes in texts: counted when wrong, renewed when used.

Five wrong ones in a day, and codes from that number are looked at no more; since a sender can
be forged, its owner then gets a code by text with which the same text goes through. A code
stands in clear in texts and in the logs of operators, so after a few uses the next one is sent;
the old one is good until that is used, since a text may be lost.
"""

import secrets
from dataclasses import dataclass
from datetime import datetime

from assistant.people import Officer
from assistant.service import tries, way_back
from assistant.service.audit import TrailAct, note
from assistant.service.house import House
from assistant.store import Work

CODE_DIGITS = 6


def new_text_code() -> str:
    """A fresh code for texts."""
    return f"{secrets.randbelow(10**CODE_DIGITS):0{CODE_DIGITS}d}"


@dataclass(frozen=True)
class CodeCheck:
    """Whether a code that came by text was right; `locked_until` where none is looked at, and
    then `one_time`, the code that goes through; `next_code` where there is a new one."""

    right: bool
    locked_until: datetime | None = None
    one_time: str | None = None
    next_code: str | None = None


def check_text_code(
    work: Work, house: House, officer: Officer, code: str | None, now: datetime
) -> CodeCheck:
    """Looks at the code in an officer's text, if there is one."""
    if code is None:
        return CodeCheck(False)
    tried = (tries.TEXT_CODE, officer.phone)
    until = tries.locked_until(work, [tried], now)
    if len(code) == way_back.DIGITS and way_back.fits(work, house, officer.phone, code, now):
        work.accounts.end_one_time(officer.phone)
        tries.forget(work, tried)
        note(work, officer.id, TrailAct.WAY_BACK_USED, now)
        return CodeCheck(True)
    if until is not None:
        return _locked(work, house, officer, until, now)
    if _fits(work, house, officer, code):
        tries.forget(work, tried)
        return CodeCheck(True, next_code=_renewed(work, house, officer))
    tries.count(work, [tried], now)
    until = tries.locked_until(work, [tried], now)
    if until is None:
        return CodeCheck(False)
    note(work, officer.id, TrailAct.CODE_LOCKED, now)
    return _locked(work, house, officer, until, now)


def _locked(
    work: Work, house: House, officer: Officer, until: datetime, now: datetime
) -> CodeCheck:
    return CodeCheck(False, until, way_back.send_code(work, house, officer.phone, now))


def _fits(work: Work, house: House, officer: Officer, code: str) -> bool:
    """Whether it is the code, or the next one, which then is the code."""
    kept = work.accounts.text_codes(officer.id)
    if house.check_code(code, kept.code_hash):
        return True
    if kept.next_code_hash is None or not house.check_code(code, kept.next_code_hash):
        return False
    work.accounts.set_code(officer.id, kept.next_code_hash)
    return True


def _renewed(work: Work, house: House, officer: Officer) -> str | None:
    """The next code, where this one was used often enough."""
    if not house.code_uses:
        return None
    uses = work.accounts.text_codes(officer.id).code_uses + 1
    work.accounts.used_code(officer.id, uses)
    if uses < house.code_uses:
        return None
    code = new_text_code()
    work.accounts.offer_code(officer.id, house.hash_code(code))
    return code
