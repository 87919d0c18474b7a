"""Which village a message is counted for: the farmer's at that time, and it stays so when the
farmer moves or the phone changes hands."""

from collections.abc import Collection

from sqlalchemy import bindparam, select, update
from sqlalchemy.orm import Session

from assistant.store import memo
from assistant.store.core import table_of
from assistant.store.tables import FarmerRow, IncomingRow, OutboxRow

AT_ONCE = 5_000  # phones in one question; SQLite takes 32,766 values

_FARMER = table_of(FarmerRow)
_VILLAGE_ID = select(_FARMER.c.village_id).where(_FARMER.c.phone == bindparam("of"))


def village_of(session: Session, phone: str) -> int | None:
    """The village of the farmer with this phone; None for officers and strangers."""
    read = memo.people(session)
    if (memo.FARMER, phone) in read:
        farmer = read[memo.FARMER, phone]
        return farmer.village_id if farmer else None
    village_id: int | None = session.scalar(_VILLAGE_ID, {"of": phone})
    return village_id


def villages_of(session: Session, phones: Collection[str]) -> dict[str, int | None]:
    """The same for many phones; those of nobody are left out."""
    ordered = sorted(phones)
    found: dict[str, int | None] = {}
    for start in range(0, len(ordered), AT_ONCE):
        some = ordered[start : start + AT_ONCE]
        wanted = select(FarmerRow.phone, FarmerRow.village_id).where(FarmerRow.phone.in_(some))
        found |= {phone: village_id for phone, village_id in session.execute(wanted)}
    return found


def count_for(session: Session, phone: str, village_id: int | None) -> None:
    """Counts what passed before somebody named a village, as in signing up, for it too."""
    for table in (IncomingRow, OutboxRow):
        session.execute(
            update(table)
            .where(table.phone == phone, table.village_id.is_(None))
            .values(village_id=village_id)
            .execution_options(synchronize_session=False)
        )
