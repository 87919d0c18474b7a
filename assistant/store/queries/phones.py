"""Numbers that changed hands: whose they were, and until when."""

from datetime import datetime

from sqlalchemy import delete, func, select, update
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.queries.enrolled import IS_ENROLLED
from assistant.store.tables import CallRow, FarmerRow, NurseryRow, UnreadRow
from assistant.store.tables_desk import GroupMemberRow, MarkRow
from assistant.store.tables_officers import OfficerTextRow
from assistant.store.tables_people import EnrolmentRow, PastPhoneRow
from assistant.store.tables_seasons import SeasonRow
from assistant.store.values_people import PastPhone


class Phones:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add_past(self, farmer_id: int, phone: str, until: datetime) -> None:
        """This number was that farmer's until now."""
        self._session.add(PastPhoneRow(farmer_id=farmer_id, phone=phone, until=until))
        self._session.flush()

    def past_of(self, farmer_id: int) -> tuple[PastPhone, ...]:
        """The numbers that a farmer had before, the latest first."""
        wanted = (
            select(PastPhoneRow)
            .where(PastPhoneRow.farmer_id == farmer_id)
            .order_by(PastPhoneRow.until.desc())
        )
        return tuple(rows.value(PastPhone, row) for row in self._session.scalars(wanted))

    def had_by_others_until(
        self, phone: str, before: datetime | None = None
    ) -> datetime | None:
        """Until when somebody else had this number; what passed over it before is theirs.

        `before`: only such times that are earlier than this one.
        """
        wanted = select(func.max(PastPhoneRow.until)).where(PastPhoneRow.phone == phone)
        if before is not None:
            wanted = wanted.where(PastPhoneRow.until < before)
        return self._session.scalar(wanted)

    def on_roll(self) -> tuple[str, ...]:
        """The numbers of all who are on the roll."""
        return tuple(self._session.scalars(select(FarmerRow.phone).where(IS_ENROLLED)))

    def move_story(self, from_farmer: int, to_farmer: int) -> None:
        """What was said and told of one entry goes to the other: they are one person. The trail
        stays as it was."""
        for row in (CallRow, UnreadRow, OfficerTextRow, MarkRow, PastPhoneRow, SeasonRow):
            moved = update(row).where(row.farmer_id == from_farmer)
            self._session.execute(moved.values(farmer_id=to_farmer))
        there = select(GroupMemberRow.group_id).where(GroupMemberRow.farmer_id == to_farmer)
        theirs = GroupMemberRow.farmer_id == from_farmer
        moved = update(GroupMemberRow).where(theirs, GroupMemberRow.group_id.not_in(there))
        self._session.execute(moved.values(farmer_id=to_farmer))
        for its in (EnrolmentRow, GroupMemberRow):
            self._session.execute(delete(its).where(its.farmer_id == from_farmer))

    def move_beds(self, from_farmer: int, to_farmer: int) -> int:
        """The open nurseries go to another farmer; how many those were."""
        moved = (
            update(NurseryRow)
            .where(NurseryRow.farmer_id == from_farmer, NurseryRow.closed.is_(False))
            .values(farmer_id=to_farmer)
            .returning(NurseryRow.id)
        )
        return len(self._session.execute(moved).all())
