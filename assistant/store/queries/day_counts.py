"""Messages counted day by day: written once for each day that is settled, added up by month."""

from collections.abc import Iterable
from datetime import date

from sqlalchemy import extract, func, insert, select
from sqlalchemy.exc import IntegrityError
from sqlalchemy.orm import Session

from assistant.store.core import table_of
from assistant.store.queries.spans import TimeSpan, in_villages
from assistant.store.tables_counts import CountedDayRow, DayCountRow
from assistant.store.values_books import HeardCounts, MonthCounts, TextCounts

_NUMBERS = ("waiting", "accepted", "delivered", "failed", "expired", "withdrawn", "segments",
            "texts", "sessions", "rings")  # fmt: skip
_DAYS = table_of(CountedDayRow)
_LAST, _COUNTED = select(func.max(_DAYS.c.day)), insert(_DAYS)
_COUNTS = insert(table_of(DayCountRow))
_SENT = 7  # of them; the others were heard


class DayCounts:
    def __init__(self, session: Session) -> None:
        self._session = session

    def last(self) -> date | None:
        """The last day that is counted; every day before it is, too."""
        last: date | None = self._session.scalar(_LAST)
        return last

    def keep(self, day: date, counts: Iterable[MonthCounts]) -> bool:
        """Keeps a day; False where another worker kept it a moment ago."""
        try:
            with self._session.begin_nested():
                self._session.execute(_COUNTED, {"day": day})
        except IntegrityError:
            return False
        rows = [_columns(each) | {"day": day} for each in counts]
        if rows:
            self._session.execute(_COUNTS, rows)
        return True

    def by_month(self, start: date, end: date, span: TimeSpan) -> tuple[MonthCounts, ...]:
        """The days from `start` on, before `end`, by village and month; `span` says which
        villages."""
        year, month = (extract(part, DayCountRow.day) for part in ("year", "month"))
        sums = (func.sum(getattr(DayCountRow, name)) for name in _NUMBERS)
        wanted = (
            select(DayCountRow.village_id, year, month, *sums)
            .where(DayCountRow.day >= start, DayCountRow.day < end)
            .where(in_villages(DayCountRow.village_id, span))
            .group_by(DayCountRow.village_id, year, month)
        )
        return tuple(
            _counted(
                village_id, date(int(year), int(month), 1), [int(each) for each in numbers]
            )
            for village_id, year, month, *numbers in self._session.execute(wanted)
        )


def _counted(village_id: int | None, month: date, numbers: list[int]) -> MonthCounts:
    sent, heard = numbers[:_SENT], numbers[_SENT:]
    return MonthCounts(month, TextCounts(village_id, *sent), HeardCounts(village_id, *heard))


def _columns(each: MonthCounts) -> dict[str, object]:
    sent = {name: getattr(each.sent, name) for name in _NUMBERS[:_SENT]}
    heard = {name: getattr(each.heard, name) for name in _NUMBERS[_SENT:]}
    return {"village_id": each.sent.village_id, **sent, **heard}
