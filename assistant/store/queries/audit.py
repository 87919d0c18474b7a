"""The trail of what officers did: written once, read by the lead and in a story."""

from collections.abc import Collection, Mapping, Sequence
from datetime import datetime

from sqlalchemy import insert, select
from sqlalchemy.orm import Session

from assistant.people import ending
from assistant.store.tables import FarmerRow, NurseryRow, OfficerRow, VillageRow
from assistant.store.tables_officers import AuditRow
from assistant.store.values import TrailEntry


class Audit:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add(
        self,
        act: str,
        at: datetime,
        *,
        officer_id: int | None = None,
        farmer_id: int | None = None,
        nursery_id: int | None = None,
        village_id: int | None = None,
        detail: str = "",
    ) -> None:
        """Keeps that something was done; without an officer it was the command line."""
        self._session.add(
            AuditRow(
                act=act,
                at=at,
                officer_id=officer_id,
                farmer_id=farmer_id,
                nursery_id=nursery_id,
                village_id=village_id,
                detail=detail,
            )
        )
        self._session.flush()

    def add_many(
        self, act: str, at: datetime, lines: Sequence[Mapping[str, object]], detail: str
    ) -> None:
        """Keeps that the same was done to many; each line names on whom, and by whom."""
        rows = [{**line, "act": act, "at": at, "detail": detail} for line in lines]
        if rows:
            self._session.execute(insert(AuditRow), rows)

    def latest(
        self,
        limit: int,
        *,
        before_id: int | None = None,
        officer_id: int | None = None,
        nursery_id: int | None = None,
        village_id: int | None = None,
        acts: Collection[str] = (),
        without: Collection[str] = (),
    ) -> tuple[TrailEntry, ...]:
        """What was done last, the latest first, of those that match all that is given and are
        none of `without`."""
        terms = {
            AuditRow.officer_id: officer_id,
            AuditRow.nursery_id: nursery_id,
            AuditRow.village_id: village_id,
        }
        wanted = (
            select(AuditRow, OfficerRow.name, FarmerRow, NurseryRow.label, VillageRow.name)
            .outerjoin(OfficerRow, OfficerRow.id == AuditRow.officer_id)
            .outerjoin(FarmerRow, FarmerRow.id == AuditRow.farmer_id)
            .outerjoin(NurseryRow, NurseryRow.id == AuditRow.nursery_id)
            .outerjoin(VillageRow, VillageRow.id == AuditRow.village_id)
            .where(*(column == given for column, given in terms.items() if given is not None))
            .order_by(AuditRow.id.desc())
            .limit(limit)
        )
        if before_id is not None:
            wanted = wanted.where(AuditRow.id < before_id)
        if acts:
            wanted = wanted.where(AuditRow.act.in_(acts))
        if without:
            wanted = wanted.where(AuditRow.act.not_in(without))
        return tuple(_done(*found) for found in self._session.execute(wanted))


def _done(
    row: AuditRow,
    officer: str | None,
    farmer: FarmerRow | None,
    label: str | None,
    village: str | None,
) -> TrailEntry:
    return TrailEntry(
        id=row.id,
        at=row.at,
        officer=officer,
        act=row.act,
        farmer_id=row.farmer_id,
        farmer=(farmer.name or ending(farmer.phone)) if farmer else None,
        nursery_id=row.nursery_id,
        label=label,
        village=village,
        detail=row.detail,
    )
