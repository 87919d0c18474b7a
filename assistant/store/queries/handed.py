"""Calls for help that one officer gave to another; of several the last counts."""

from collections.abc import Collection
from datetime import datetime

from sqlalchemy import ColumnElement, delete, exists, func, or_, select
from sqlalchemy.orm import Session, aliased

from assistant.people import Officer
from assistant.store.tables import CallRow, OfficerRow
from assistant.store.tables_desk import HandedCallRow
from assistant.store.values_officers import HandedOn


class HandedCalls:
    def __init__(self, session: Session) -> None:
        self._session = session

    def hand(self, call_id: int, from_id: int, to_id: int, at: datetime) -> int:
        """An officer gives a call to another; the id of that."""
        row = HandedCallRow(call_id=call_id, from_id=from_id, to_id=to_id, at=at)
        self._session.add(row)
        self._session.flush()
        return row.id

    def take_back(self, ids: Collection[int]) -> None:
        """As if those calls had not been given."""
        self._session.execute(delete(HandedCallRow).where(HandedCallRow.id.in_(ids)))

    def of(self, call_ids: Collection[int]) -> dict[int, HandedOn]:
        """By call, who gave it to whom last."""
        giver, taker = aliased(OfficerRow), aliased(OfficerRow)
        wanted = (
            select(HandedCallRow, giver.name, taker.name)
            .join(giver, giver.id == HandedCallRow.from_id)
            .join(taker, taker.id == HandedCallRow.to_id)
            .where(HandedCallRow.call_id.in_(call_ids))
            .order_by(HandedCallRow.id)
        )
        return {
            row.call_id: HandedOn(by, to, row.to_id, row.at)
            for row, by, to in self._session.execute(wanted)
        }

    def open_by_taker(self) -> dict[int, tuple[int, datetime]]:
        """How many open calls each officer was given, and since when the oldest waits."""
        wanted = (
            select(HandedCallRow.to_id, func.count(), func.min(CallRow.at))
            .join(CallRow, CallRow.id == HandedCallRow.call_id)
            .where(CallRow.handled_at.is_(None), HandedCallRow.id == _last())
            .group_by(HandedCallRow.to_id)
        )
        return {to: (count, oldest) for to, count, oldest in self._session.execute(wanted)}


def _last() -> ColumnElement[int]:
    """The last time that the call of a row was given."""
    other = aliased(HandedCallRow)
    return (
        select(func.max(other.id))
        .where(other.call_id == HandedCallRow.call_id)
        .correlate(HandedCallRow)
        .scalar_subquery()
    )


def is_handed() -> ColumnElement[bool]:
    """Whether a call was given to anybody; the statement has calls."""
    return exists().where(HandedCallRow.call_id == CallRow.id)


def passed(officer: Officer) -> ColumnElement[bool]:
    """Whether this officer was given a call, or gave it."""
    theirs = or_(HandedCallRow.to_id == officer.id, HandedCallRow.from_id == officer.id)
    return exists().where(HandedCallRow.call_id == CallRow.id, theirs)
