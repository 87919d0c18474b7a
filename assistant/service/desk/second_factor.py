"""A second factor: a code of six digits that an app shows for half a minute (RFC 6238).

The app's secret is made from a salt in the database and the deployment's own key, which is in
no database; a code is taken once.
"""

import hmac
import secrets
from base64 import b32encode
from datetime import datetime

import pyotp

from assistant.service import tries
from assistant.service.audit import TrailAct, note
from assistant.service.desk.sessions import Member
from assistant.service.house import House
from assistant.store import Account, Work

STEP_S = 30
SLIPS = (0, -1, 1)  # steps that a phone's clock may be off


def new_salt() -> str:
    """What a secret is begun with."""
    return secrets.token_hex(16)


def secret_of(house: House, salt: str) -> str:
    """The secret as apps take it, 32 letters of base 32."""
    made = hmac.digest(house.key_for("second factor"), salt.encode(), "sha256")
    return b32encode(made[:20]).decode()


def address_of(house: House, salt: str, phone: str) -> str:
    """The otpauth address that an app reads from a square code."""
    totp = pyotp.TOTP(secret_of(house, salt))
    return totp.provisioning_uri(name=phone, issuer_name=house.programme or "Nursery")


def step_of(house: House, salt: str, code: str, now: datetime) -> int | None:
    """The step of time whose code this is; None where it is none of now."""
    totp, typed = pyotp.TOTP(secret_of(house, salt)), "".join(code.split())
    here = int(now.timestamp()) // STEP_S
    for slip in SLIPS:
        if hmac.compare_digest(totp.generate_otp(here + slip), typed):
            return here + slip
    return None


def take(work: Work, house: House, account: Account, code: str, now: datetime) -> bool:
    """Whether a code of this account's app is right and was not taken before."""
    if account.totp_salt is None:
        return False
    step = step_of(house, account.totp_salt, code, now)
    return step is not None and work.accounts.take_totp(account.id, step)


def add(house: House, member: Member, salt: str, code: str, now: datetime) -> bool:
    """Adds the factor, where the app shows the right code; False otherwise."""
    officer_id = member.sight.officer.id
    step = step_of(house, salt, code, now)
    if step is None:
        return False
    with house.store.work() as work:
        work.accounts.set_totp(officer_id, salt, step)
        work.accounts.end_sessions(officer_id, but=member.key)
        note(work, officer_id, TrailAct.FACTOR_ADDED, now)
    return True


def take_away(house: House, officer_phone: str, by: int | None, now: datetime) -> str | None:
    """Takes the factor of an officer away who lost the phone; their name, None where there is
    no such account. Their sessions end."""
    with house.store.work() as work:
        account = work.accounts.of_phone(officer_phone)
        if account is None:
            return None
        work.accounts.set_totp(account.id, None, None)
        work.accounts.end_sessions(account.id)
        tries.forget(work, (tries.SECOND_FACTOR, account.phone))
        note(work, by, TrailAct.FACTOR_TAKEN, now, detail=f"{account.name}, {account.phone}")
    return account.name
