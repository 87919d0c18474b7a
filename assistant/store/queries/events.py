"""What happened to nurseries, kept as it was told."""

from collections.abc import Callable, Mapping
from dataclasses import fields
from datetime import date, datetime
from typing import Any

from sqlalchemy import delete, func, insert, select
from sqlalchemy.orm import Session

from assistant.agronomy.life.events import EVENTS, KINDS, Event, Why
from assistant.agronomy.tasks import TaskCode
from assistant.store.core import table_of
from assistant.store.tables_events import EventRow

_HEAD = ("on", "by")
_READ: Mapping[str, Callable[[Any], object]] = {
    "task": TaskCode,
    "why": Why,
    "was": date.fromisoformat,
    "until": date.fromisoformat,
}


class Events:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add(self, nursery_id: int, event: Event, now: datetime) -> None:
        """Keeps an event of a nursery."""
        about = {
            each.name: _plain(getattr(event, each.name))
            for each in fields(event)
            if each.name not in _HEAD
        }
        row = {
            "nursery_id": nursery_id,
            "kind": KINDS[type(event)],
            "day": event.on,
            "by": event.by,
            "about": about,
            "at": now,
        }
        self._session.execute(_ADD, row)

    def last_id(self, nursery_id: int) -> int:
        """The id of the latest event of a nursery; 0 where there is none."""
        wanted = select(func.max(EventRow.id)).where(EventRow.nursery_id == nursery_id)
        return self._session.scalar(wanted) or 0

    def drop_after(self, nursery_id: int, event_id: int) -> None:
        """Takes away what was kept of a nursery after an event: an officer undid it."""
        later = EventRow.nursery_id == nursery_id, EventRow.id > event_id
        self._session.execute(delete(EventRow).where(*later))

    def of_nursery(self, nursery_id: int) -> tuple[Event, ...]:
        """The story of a nursery in the order in which it was told; without events that only
        another release knows."""
        wanted = select(EventRow).where(EventRow.nursery_id == nursery_id).order_by(EventRow.id)
        found = map(_event, self._session.scalars(wanted))
        return tuple(event for event in found if event is not None)


_ADD = insert(table_of(EventRow))


def _plain(value: object) -> object:
    return value.isoformat() if isinstance(value, date) else value


def _event(row: EventRow) -> Event | None:
    try:
        about = {name: _READ.get(name, _same)(kept) for name, kept in row.about.items()}
        return EVENTS[row.kind](on=row.day, by=row.by, **about)
    except (KeyError, TypeError, ValueError):
        return None


def _same(kept: object) -> object:
    return kept
