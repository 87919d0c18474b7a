"""Lists of farmers that an office sent in, between sending and applying."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from sqlalchemy import and_, delete, or_, select, update
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.tables_people import OfficeListRow
from assistant.store.values_people import DONE, OPEN, WORKING, OfficeList


class OfficeLists:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add(
        self,
        officer_id: int,
        name: str,
        content: bytes,
        choices: Mapping[str, Any],
        now: datetime,
    ) -> int:
        """Keeps a file as it came; its number."""
        row = OfficeListRow(
            officer_id=officer_id,
            name=name,
            content=content,
            choices=dict(choices),
            state=OPEN,
            counts={},
            made_at=now,
            changed_at=now,
        )
        self._session.add(row)
        self._session.flush()
        return row.id

    def get(self, list_id: int) -> OfficeList | None:
        row = self._session.get(OfficeListRow, list_id)
        return rows.value(OfficeList, row) if row else None

    def latest(self, officer_id: int, limit: int) -> tuple[OfficeList, ...]:
        """An officer's lists, the latest first."""
        wanted = (
            select(OfficeListRow)
            .where(OfficeListRow.officer_id == officer_id)
            .order_by(OfficeListRow.id.desc())
            .limit(limit)
        )
        return tuple(rows.value(OfficeList, row) for row in self._session.scalars(wanted))

    def choose(self, list_id: int, choices: Mapping[str, Any], now: datetime) -> None:
        """What the officer approved and decided."""
        self._change(list_id, choices=dict(choices), changed_at=now)

    def begin(self, list_id: int, now: datetime, stale_before: datetime) -> bool:
        """Claims a list for being applied; False where somebody has it already, or it is done.

        `stale_before`: a claim older than this was left by a process that ended.
        """
        free = or_(
            OfficeListRow.state == OPEN,
            and_(OfficeListRow.state == WORKING, OfficeListRow.changed_at < stale_before),
        )
        claimed = (
            update(OfficeListRow)
            .where(OfficeListRow.id == list_id, free)
            .values(state=WORKING, changed_at=now)
            .returning(OfficeListRow.id)
            .execution_options(synchronize_session=False)
        )
        return self._session.execute(claimed).first() is not None

    def give_back(self, list_id: int, now: datetime, counts: Mapping[str, Any]) -> None:
        """It was not applied after all, and may be tried again."""
        self._change(list_id, state=OPEN, changed_at=now, counts=dict(counts))

    def finish(
        self, list_id: int, now: datetime, counts: Mapping[str, Any], rejects: bytes | None
    ) -> None:
        """It is applied: the file goes, what came of it stays, with the rows to mend."""
        self._change(
            list_id,
            state=DONE,
            changed_at=now,
            counts=dict(counts),
            rejects=rejects,
            content=None,
        )

    def forget_before(self, at: datetime) -> None:
        """Lists last touched before a time go, with the people in them."""
        self._session.execute(delete(OfficeListRow).where(OfficeListRow.changed_at < at))

    def _change(self, list_id: int, **columns: object) -> None:
        changed = update(OfficeListRow).where(OfficeListRow.id == list_id).values(**columns)
        self._session.execute(changed)
