"""Spans of time in some villages: what messages are counted for."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, false, true


@dataclass(frozen=True)
class TimeSpan:
    """A span of time in some villages.

    villages: ids      everybody: those are all, and what belongs to none is meant too
    """

    start: datetime
    end: datetime
    villages: tuple[int, ...]
    everybody: bool = False


def in_villages(column: Any, span: TimeSpan) -> ColumnElement[bool]:
    """The villages of a span; one by itself lets an index give its own order."""
    if span.everybody:
        return true()
    return one_of(column, span.villages)


def one_of(column: Any, values: Collection[Any]) -> ColumnElement[bool]:
    if len(values) == 1:
        found: ColumnElement[bool] = column == next(iter(values))
        return found
    return column.in_(values) if values else false()
