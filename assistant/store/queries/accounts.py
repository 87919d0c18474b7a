"""Officers' accounts: passwords, sessions, tries at the doors; secrets of the deployment."""

from collections.abc import Collection, Iterable
from dataclasses import fields
from datetime import datetime

from sqlalchemy import (
    ColumnElement,
    CursorResult,
    Delete,
    and_,
    delete,
    func,
    or_,
    select,
    update,
)
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.inserts import insert_missing
from assistant.store.tables import OfficerRow, OfficerVillageRow
from assistant.store.tables_officers import (
    KnownBrowserRow,
    OneTimeCodeRow,
    SecretRow,
    SessionRow,
    SignInTryRow,
)
from assistant.store.values import Account, OneTimeCode, OpenSession, TextCodes

_OPEN = OfficerRow.closed_at.is_(None)


class Accounts:
    def __init__(self, session: Session) -> None:
        self._session = session

    def of_phone(self, phone: str) -> Account | None:
        """The open account of an officer, whether it has a password or not."""
        wanted = select(OfficerRow).where(OfficerRow.phone == phone, _OPEN)
        row = self._session.scalar(wanted)
        return rows.value(Account, row) if row else None

    def get(self, officer_id: int) -> Account | None:
        row = self._session.get(OfficerRow, officer_id)
        return rows.value(Account, row) if row and row.closed_at is None else None

    def set_password(
        self, officer_id: int, password_hash: str, one_time_until: datetime | None
    ) -> None:
        """A new password; all open sessions end, and no browser is known any more.

        `one_time_until`: until when it opens the page, to be changed at once; None for good.
        """
        self._change(officer_id, password_hash=password_hash, one_time_until=one_time_until)
        self.end_sessions(officer_id)
        self.forget_browsers(officer_id)

    def set_language(self, officer_id: int, language: str) -> None:
        self._session.execute(
            update(OfficerRow).where(OfficerRow.id == officer_id).values(language=language)
        )

    def mend(self, officer_id: int, *, name: str, phone: str, language: str) -> bool:
        """Another name, number or language; False where the number is another officer's, also
        one whose account is closed."""
        same = OfficerRow.phone == phone, OfficerRow.id != officer_id
        if self._session.scalar(select(OfficerRow.id).where(*same)) is not None:
            return False
        self._change(officer_id, name=name, phone=phone, language=language)
        return True

    def set_code(self, officer_id: int, code_hash: str) -> None:
        """Another code for texts; the one until now ends."""
        self._change(officer_id, code_hash=code_hash, next_code_hash=None, code_uses=0)

    def serve(self, officer_id: int, village_ids: Collection[int]) -> None:
        """The villages of an officer from now on: these, and no others."""
        served = OfficerVillageRow
        gone = served.officer_id == officer_id, served.village_id.not_in(village_ids)
        self._session.execute(delete(served).where(*gone))
        pairs = [{"officer_id": officer_id, "village_id": each} for each in sorted(village_ids)]
        insert_missing(self._session, served, pairs, [served.officer_id, served.village_id])

    def close(self, officer_id: int, at: datetime) -> None:
        """No way in any more: no password, no code, no village, no open session."""
        self.serve(officer_id, ())
        self._change(
            officer_id,
            closed_at=at,
            password_hash=None,
            one_time_until=None,
            code_hash="",
            is_lead=False,
            totp_salt=None,
            totp_last=None,
            next_code_hash=None,
        )
        self.end_sessions(officer_id)
        self.forget_browsers(officer_id)

    def _change(self, officer_id: int, **columns: object) -> None:
        changed = update(OfficerRow).where(OfficerRow.id == officer_id).values(**columns)
        self._session.execute(changed.execution_options(synchronize_session=False))
        self._session.expire_all()

    # --- codes for texts ---------------------------------------------------------------------

    def text_codes(self, officer_id: int) -> TextCodes:
        """The codes that an officer's texts may bear."""
        found = self._session.execute(
            select(OfficerRow.code_hash, OfficerRow.next_code_hash, OfficerRow.code_uses).where(
                OfficerRow.id == officer_id
            )
        ).one()
        return TextCodes(*found)

    def offer_code(self, officer_id: int, code_hash: str) -> None:
        """Another code, good beside the one until now until it is used."""
        self._change(officer_id, next_code_hash=code_hash)

    def used_code(self, officer_id: int, uses: int) -> None:
        """How often the code was used."""
        self._change(officer_id, code_uses=uses)

    # --- sessions, and browsers that are known -----------------------------------------------

    def begin_session(self, session: OpenSession) -> None:
        """A browser is signed in from now on."""
        row = {each.name: getattr(session, each.name) for each in fields(OpenSession)}
        self._session.add(SessionRow(**row))
        self._session.flush()

    def session(self, key: str) -> OpenSession | None:
        """The session whose cookie has this hash."""
        row = self._session.get(SessionRow, key)
        return rows.value(OpenSession, row) if row else None

    def sessions(self, officer_id: int, since: datetime) -> tuple[OpenSession, ...]:
        """Those of an officer that began after a time, the latest first."""
        wanted = select(SessionRow).where(
            SessionRow.officer_id == officer_id, SessionRow.begun_at > since
        )
        found = self._session.scalars(wanted.order_by(SessionRow.seen_at.desc()))
        return tuple(rows.value(OpenSession, row) for row in found)

    def mark_session(self, key: str, **times: datetime) -> None:
        """When it was seen, or its officer last proved who they are."""
        changed = update(SessionRow).where(SessionRow.key == key).values(**times)
        self._session.execute(changed)

    def end_session(self, officer_id: int, key: str) -> bool:
        """Ends one session of an officer; whether there was such a one."""
        mine = SessionRow.officer_id == officer_id, SessionRow.key == key
        return self._gone(delete(SessionRow).where(*mine)) > 0

    def end_sessions(self, officer_id: int, but: str = "") -> int:
        """Ends all sessions of an officer, but for one; how many there were."""
        mine = SessionRow.officer_id == officer_id, SessionRow.key != but
        return self._gone(delete(SessionRow).where(*mine))

    def end_sessions_before(self, at: datetime) -> int:
        """Forgets what ended by itself."""
        return self._gone(delete(SessionRow).where(SessionRow.begun_at < at))

    def know_browser(self, officer_id: int, key: str, at: datetime) -> None:
        """An officer signed in with this browser."""
        row: dict[str, object] = {"key": key, "officer_id": officer_id, "at": at}
        insert_missing(self._session, KnownBrowserRow, [row], [KnownBrowserRow.key])

    def knows_browser(self, officer_id: int, key: str, since: datetime) -> bool:
        """Whether an officer signed in with this browser after a time."""
        known = KnownBrowserRow
        wanted = select(known.key).where(
            known.key == key, known.officer_id == officer_id, known.at > since
        )
        return self._session.scalar(wanted) is not None

    def forget_browsers(self, officer_id: int) -> None:
        """No browser is known any more."""
        known = KnownBrowserRow
        self._session.execute(delete(known).where(known.officer_id == officer_id))

    def forget_browsers_before(self, at: datetime) -> int:
        """Forgets browsers that were first known long ago."""
        return self._gone(delete(KnownBrowserRow).where(KnownBrowserRow.at < at))

    def _gone(self, statement: Delete) -> int:
        result = self._session.execute(statement)
        return result.rowcount if isinstance(result, CursorResult) else 0

    # --- the second factor, and codes sent to a phone ----------------------------------------

    def set_totp(self, officer_id: int, salt: str | None, step: int | None) -> None:
        """Another second factor, or none; `step` is that of the code which proved it."""
        self._change(officer_id, totp_salt=salt, totp_last=step)

    def take_totp(self, officer_id: int, step: int) -> bool:
        """Takes the code of a step, unless that or a later one was taken before."""
        fresh = or_(OfficerRow.totp_last.is_(None), OfficerRow.totp_last < step)
        taken = update(OfficerRow).where(OfficerRow.id == officer_id, fresh)
        result = self._session.execute(taken.values(totp_last=step))
        return isinstance(result, CursorResult) and result.rowcount > 0

    def send_one_time(self, code: OneTimeCode) -> None:
        """Keeps the code that was sent to a phone; an earlier one ends."""
        self.end_one_time(code.phone)
        row = {each.name: getattr(code, each.name) for each in fields(OneTimeCode)}
        self._session.add(OneTimeCodeRow(**row))
        self._session.flush()

    def one_time(self, phone: str) -> OneTimeCode | None:
        """The code that was sent to a phone last."""
        row = self._session.get(OneTimeCodeRow, phone)
        return rows.value(OneTimeCode, row) if row else None

    def tried_one_time(self, phone: str) -> None:
        """Somebody sent another code instead."""
        mine = update(OneTimeCodeRow).where(OneTimeCodeRow.phone == phone)
        self._session.execute(mine.values(tries=OneTimeCodeRow.tries + 1))
        self._session.expire_all()

    def end_one_time(self, phone: str) -> None:
        """It was used, or another one takes its place."""
        self._session.execute(delete(OneTimeCodeRow).where(OneTimeCodeRow.phone == phone))
        self._session.expire_all()

    # --- tries at a door ---------------------------------------------------------------------

    def add_try(self, door: str, who: str, at: datetime) -> None:
        """Counts a try; what is right afterwards is forgotten by `forget_tries`."""
        self._session.add(SignInTryRow(door=door, who=who, at=at))
        self._session.flush()

    def tries_since(self, door: str, who: str, since: datetime) -> tuple[datetime, ...]:
        """When this one tried at this door, after a time, the latest first."""
        wanted = (
            select(SignInTryRow.at)
            .where(_at_door(door, who), SignInTryRow.at > since)
            .order_by(SignInTryRow.at.desc())
        )
        return tuple(self._session.scalars(wanted))

    def forget_tries(self, door: str, who: str, at: datetime | None = None) -> None:
        """Forgets all tries of somebody at a door, or only that of one moment."""
        gone = delete(SignInTryRow).where(_at_door(door, who))
        self._session.execute(gone if at is None else gone.where(SignInTryRow.at == at))

    def forget_tries_before(self, at: datetime) -> None:
        """What is long past counts no more."""
        self._session.execute(delete(SignInTryRow).where(SignInTryRow.at < at))

    # --- secrets -----------------------------------------------------------------------------

    def secret(self, name: str, fresh: str, now: datetime) -> str:
        """The secret of that name; `fresh` becomes it where there is none yet."""
        row: Iterable[dict[str, object]] = [{"name": name, "value": fresh, "made_at": now}]
        insert_missing(self._session, SecretRow, list(row), [SecretRow.name])
        wanted = select(SecretRow.value).where(SecretRow.name == name)
        return self._session.execute(wanted).scalar_one()

    def count(self) -> int:
        """How many officers have an open account."""
        wanted = select(func.count()).select_from(OfficerRow).where(_OPEN)
        return self._session.scalar(wanted) or 0


def _at_door(door: str, who: str) -> ColumnElement[bool]:
    return and_(SignInTryRow.door == door, SignInTryRow.who == who)
