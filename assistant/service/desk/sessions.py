"""Sessions of the page: a browser carries a token, the database its hash and who it is of.

So signing out ends a session for good, an officer sees where they are signed in, and a copy of
the database opens nothing.
"""

import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta
from hashlib import sha256

from assistant.service.audit import TrailAct, note
from assistant.service.house import House
from assistant.service.sight import Sight, sight_of
from assistant.store import OpenSession, Work

LASTS = timedelta(hours=12)  # a day's work; ASVS 3.3.2 asks for no more
PROOF_LASTS = timedelta(minutes=10)
SEEN_EVERY = timedelta(minutes=10)
LONGEST_BROWSER = 60


@dataclass(frozen=True)
class Member:
    """An officer who is signed in, and what they may see.

    `token` is what the browser carries, `key` its hash; `proved_at` when the password was last
    typed; `must_change`: it was given for one sign-in; `must_add_factor`: a lead without one.
    """

    token: str
    key: str
    sight: Sight
    proved_at: datetime
    must_change: bool
    has_factor: bool
    must_add_factor: bool

    def proved(self, now: datetime) -> bool:
        """Whether it was just now that they showed who they are."""
        return timedelta(0) <= now - self.proved_at <= PROOF_LASTS


def hashed(token: str) -> str:
    """A token as it is kept. It is long and random, so that no slow hash is needed."""
    return sha256(token.encode()).hexdigest()


def begin(work: Work, officer_id: int, browser: str, now: datetime) -> str:
    """A new session; the token for its browser."""
    token = secrets.token_urlsafe(32)
    work.accounts.end_sessions_before(now - LASTS)
    work.accounts.begin_session(
        OpenSession(hashed(token), officer_id, now, now, now, browser[:LONGEST_BROWSER])
    )
    return token


def member(house: House, token: str, now: datetime) -> Member | None:
    """Who a session is of; None where it has ended."""
    key = hashed(token)
    with house.store.look() as work:
        kept = work.accounts.session(key)
        if kept is None or not timedelta(0) <= now - kept.begun_at <= LASTS:
            return None
        account = work.accounts.get(kept.officer_id)
        officer = work.people.officer_by_id(kept.officer_id)
        if account is None or officer is None:
            return None
        found = Member(
            token,
            key,
            sight_of(work, officer),
            kept.proved_at,
            account.one_time_until is not None,
            account.totp_salt is not None,
            house.second_factor and account.is_lead and account.totp_salt is None,
        )
    if now - kept.seen_at > SEEN_EVERY:
        with house.store.work() as work:
            work.accounts.mark_session(key, seen_at=now)
    return found


def open_sessions(house: House, member: Member, now: datetime) -> tuple[OpenSession, ...]:
    """Where an officer is signed in, the latest first."""
    with house.store.look() as work:
        return work.accounts.sessions(member.sight.officer.id, now - LASTS)


def sign_out(house: House, member: Member, now: datetime) -> None:
    """Ends this session."""
    officer_id = member.sight.officer.id
    with house.store.work() as work:
        work.accounts.end_session(officer_id, member.key)
        note(work, officer_id, TrailAct.SIGNED_OUT, now)


def sign_out_elsewhere(house: House, member: Member, key: str | None, now: datetime) -> int:
    """Ends another session of theirs, or without a key all others; how many. Browsers that
    are known are forgotten then: one of them may be in other hands."""
    officer_id = member.sight.officer.id
    with house.store.work() as work:
        if key is None:
            count = work.accounts.end_sessions(officer_id, but=member.key)
            work.accounts.forget_browsers(officer_id)
        else:
            count = int(work.accounts.end_session(officer_id, key))
        note(work, officer_id, TrailAct.SESSIONS_ENDED, now, detail=str(count))
    return count
