"""Days that were handed out in calendar files: what stood in the last one."""

from collections.abc import Collection, Iterable

from sqlalchemy import select
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.inserts import insert_missing
from assistant.store.tables_calendar import CalendarDayRow
from assistant.store.values_officers import CalendarDay

_UNIQUE = [CalendarDayRow.nursery_id, CalendarDayRow.task, CalendarDayRow.place]
_AT_ONCE = 500  # ids in one question; databases hold a question to some length


class CalendarDays:
    def __init__(self, session: Session) -> None:
        self._session = session

    def of(self, nursery_ids: Collection[int]) -> tuple[CalendarDay, ...]:
        """What was handed out for these nurseries, by id."""
        return tuple(rows.value(CalendarDay, row) for row in self._rows(nursery_ids))

    def keep(self, days: Iterable[CalendarDay]) -> None:
        """Keeps days as they now stand; id 0 is one that was never handed out before."""
        given = list(days)
        fresh = [
            {name: value for name, value in vars(day).items() if name != "id"}
            for day in given
            if not day.id
        ]
        insert_missing(self._session, CalendarDayRow, fresh, _UNIQUE)
        for day in given:
            row = self._session.get(CalendarDayRow, day.id) if day.id else None
            if row is not None:
                row.day, row.gone = day.day, day.gone
                row.sequence, row.changed_at = day.sequence, day.changed_at
        self._session.flush()

    def _rows(self, nursery_ids: Collection[int]) -> Iterable[CalendarDayRow]:
        ids = sorted(nursery_ids)
        for start in range(0, len(ids), _AT_ONCE):
            some = ids[start : start + _AT_ONCE]
            wanted = select(CalendarDayRow).where(CalendarDayRow.nursery_id.in_(some))
            yield from self._session.scalars(wanted.order_by(CalendarDayRow.id))
