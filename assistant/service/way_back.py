"""A code sent to an officer's own phone, for when somebody else has locked them out.

Whoever forges a sender's number cannot read what is sent to it. So a lock that a stranger can
throw is passed with such a code, by text or at the page's door; the officer's warning always
has a way through. It is too long to be guessed within its time, so that guessing at it locks
nothing.
"""

import hmac
import secrets
from datetime import datetime, timedelta

from assistant.service.house import House
from assistant.store import OneTimeCode, Work

DIGITS = 8  # six are the officer's code for texts
LASTS = timedelta(minutes=15)
NOT_AGAIN_BEFORE = timedelta(minutes=10)  # so often a forger can have one sent
MOST_GUESSES = 1000  # of a hundred million


def send_code(work: Work, house: House, phone: str, now: datetime) -> str | None:
    """A code to send to this phone; None where one was sent just now."""
    kept = work.accounts.one_time(phone)
    if kept is not None and now - kept.sent_at < NOT_AGAIN_BEFORE:
        return None
    code = f"{secrets.randbelow(10**DIGITS):0{DIGITS}d}"
    work.accounts.send_one_time(OneTimeCode(phone, _hashed(house, phone, code), now, 0))
    return code


def fits(work: Work, house: House, phone: str, code: str, now: datetime) -> bool:
    """Whether this is the code that was sent to the phone; a wrong one is counted."""
    kept = work.accounts.one_time(phone)
    if kept is None or len(code) != DIGITS or not _is_good(kept, now):
        return False
    if hmac.compare_digest(kept.code_hash, _hashed(house, phone, code)):
        return True
    work.accounts.tried_one_time(phone)
    return False


def _is_good(kept: OneTimeCode, now: datetime) -> bool:
    return now - kept.sent_at <= LASTS and kept.tries < MOST_GUESSES


def _hashed(house: House, phone: str, code: str) -> str:
    """With the deployment's key, so that a copy of the database tells nothing. No slow hash:
    guessing at the door would then keep the processor busy."""
    return hmac.digest(
        house.key_for("one-time codes"), f"{phone} {code}".encode(), "sha256"
    ).hex()
