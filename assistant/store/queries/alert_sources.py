"""Where official alerts are read, and whose turn it is to look."""

from datetime import datetime, timedelta

from sqlalchemy import or_, select, update
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.inserts import insert_missing
from assistant.store.tables_alerts import AlertSourceRow
from assistant.store.values_alerts import SourceLook

_ROW = AlertSourceRow


class AlertSources:
    def __init__(self, session: Session) -> None:
        self._session = session

    def take(self, name: str, now: datetime, every: timedelta) -> SourceLook | None:
        """The last look at a source, where it is time for another; then it is ours to do."""
        new = {"name": name, "etag": "", "modified": "", "trouble": ""}
        insert_missing(self._session, _ROW, [new], [_ROW.name])
        taken = self._session.scalars(
            update(_ROW)
            .where(_ROW.name == name)
            .where(or_(_ROW.looked_at.is_(None), _ROW.looked_at <= now - every))
            .values(looked_at=now)
            .returning(_ROW)
            .execution_options(synchronize_session=False)
        ).one_or_none()
        return rows.value(SourceLook, taken) if taken else None

    def looked(self, how: SourceLook) -> None:
        """Keeps how a look went."""
        self._session.execute(
            update(_ROW)
            .where(_ROW.name == how.name)
            .values(
                etag=how.etag, modified=how.modified, trouble=how.trouble, well_at=how.well_at
            )
        )

    def all(self) -> tuple[SourceLook, ...]:
        """All sources that were ever looked at, by name."""
        found = self._session.scalars(select(_ROW).order_by(_ROW.name))
        return tuple(rows.value(SourceLook, row) for row in found)
