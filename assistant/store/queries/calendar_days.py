"""Days that were handed out in calendar files: what stood in the last one."""

from collections.abc import Iterable
from datetime import date

from sqlalchemy import select
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.inserts import insert_missing
from assistant.store.tables_calendar import CalendarDayRow
from assistant.store.values_officers import CalendarDay

_UNIQUE = [CalendarDayRow.village_id, CalendarDayRow.day, CalendarDayRow.task]


class CalendarDays:
    def __init__(self, session: Session) -> None:
        self._session = session

    def of(self, village_id: int, since: date) -> tuple[CalendarDay, ...]:
        """What was handed out for a village from a day on, by id."""
        wanted = (
            select(CalendarDayRow)
            .where(CalendarDayRow.village_id == village_id, CalendarDayRow.day >= since)
            .order_by(CalendarDayRow.id)
        )
        return tuple(rows.value(CalendarDay, row) for row in self._session.scalars(wanted))

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
                row.names, row.sequence, row.changed_at = (
                    day.names,
                    day.sequence,
                    day.changed_at,
                )
        self._session.flush()
