"""Farmers whom an officer keeps under a name."""

from collections.abc import Collection
from datetime import datetime

from sqlalchemy import delete, func, select
from sqlalchemy.orm import Session

from assistant.people import Farmer
from assistant.store import rows
from assistant.store.inserts import insert_missing
from assistant.store.tables import FarmerRow
from assistant.store.tables_desk import GroupMemberRow, OwnGroupRow
from assistant.store.values_officers import OwnGroup

_KEY = (GroupMemberRow.group_id, GroupMemberRow.farmer_id)


class OwnGroups:
    def __init__(self, session: Session) -> None:
        self._session = session

    def of(self, officer_id: int) -> tuple[OwnGroup, ...]:
        """The groups of an officer, by name."""
        wanted = (
            select(OwnGroupRow, func.count(GroupMemberRow.farmer_id))
            .outerjoin(GroupMemberRow, GroupMemberRow.group_id == OwnGroupRow.id)
            .where(OwnGroupRow.officer_id == officer_id)
            .group_by(OwnGroupRow.id)
            .order_by(OwnGroupRow.name, OwnGroupRow.id)
        )
        return tuple(
            OwnGroup(row.id, row.officer_id, row.name, count)
            for row, count in self._session.execute(wanted)
        )

    def get(self, group_id: int) -> OwnGroup | None:
        """One group, whosever it is."""
        row = self._session.get(OwnGroupRow, group_id)
        if row is None:
            return None
        count = self._session.scalar(
            select(func.count()).where(GroupMemberRow.group_id == group_id)
        )
        return OwnGroup(row.id, row.officer_id, row.name, count or 0)

    def add(self, officer_id: int, name: str, now: datetime) -> int:
        """A new group without anybody; its id."""
        row = OwnGroupRow(officer_id=officer_id, name=name, made_at=now)
        self._session.add(row)
        self._session.flush()
        return row.id

    def put(self, group_id: int, farmer_ids: Collection[int]) -> None:
        """Puts farmers into a group; those that are there stay."""
        new = [{"group_id": group_id, "farmer_id": each} for each in farmer_ids]
        if new:
            insert_missing(self._session, GroupMemberRow, new, _KEY)

    def take_out(self, group_id: int, farmer_ids: Collection[int]) -> int:
        """Takes farmers out of a group; how many were in it."""
        gone = (
            delete(GroupMemberRow)
            .where(GroupMemberRow.group_id == group_id)
            .where(GroupMemberRow.farmer_id.in_(farmer_ids))
            .returning(GroupMemberRow.farmer_id)
        )
        return len(self._session.execute(gone).all())

    def drop(self, group_id: int) -> None:
        """Deletes a group; its farmers stay."""
        for row, column in (
            (GroupMemberRow, GroupMemberRow.group_id),
            (OwnGroupRow, OwnGroupRow.id),
        ):
            self._session.execute(delete(row).where(column == group_id))

    def members(self, group_id: int) -> tuple[Farmer, ...]:
        """The farmers of a group, by name."""
        wanted = (
            select(FarmerRow)
            .join(GroupMemberRow, GroupMemberRow.farmer_id == FarmerRow.id)
            .where(GroupMemberRow.group_id == group_id)
            .order_by(FarmerRow.name.is_(None), FarmerRow.name, FarmerRow.phone)
        )
        return tuple(map(rows.farmer, self._session.scalars(wanted)))
