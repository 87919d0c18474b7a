"""Officers' accounts: passwords, sessions, tries at the doors; secrets of the deployment."""

from collections.abc import Collection, Iterable
from datetime import datetime

from sqlalchemy import ColumnElement, and_, delete, func, select, update
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.inserts import insert_missing
from assistant.store.tables import OfficerRow, OfficerVillageRow
from assistant.store.tables_officers import SecretRow, SignInTryRow
from assistant.store.values import Account

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
    ) -> int:
        """A new password; all open sessions end. The epoch of the sessions from now on.

        `one_time_until`: until when it opens the page, to be changed at once; None for good.
        """
        changed = (
            update(OfficerRow)
            .where(OfficerRow.id == officer_id)
            .values(
                password_hash=password_hash,
                one_time_until=one_time_until,
                session_epoch=OfficerRow.session_epoch + 1,
            )
            .returning(OfficerRow.session_epoch)
            .execution_options(synchronize_session=False)
        )
        return self._session.execute(changed).scalar_one()

    def set_language(self, officer_id: int, language: str) -> None:
        self._session.execute(
            update(OfficerRow).where(OfficerRow.id == officer_id).values(language=language)
        )

    def set_code(self, officer_id: int, code_hash: str) -> None:
        """Another code for texts."""
        self._change(officer_id, code_hash=code_hash)

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
            session_epoch=OfficerRow.session_epoch + 1,
        )

    def _change(self, officer_id: int, **columns: object) -> None:
        changed = update(OfficerRow).where(OfficerRow.id == officer_id).values(**columns)
        self._session.execute(changed.execution_options(synchronize_session=False))
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
