"""Which beds a danger would harm; by their sowing days as lean rows, since a storm may be over
thousands of them."""

from collections.abc import Collection
from datetime import date
from typing import Any

from sqlalchemy import and_, func, select
from sqlalchemy.orm import Session

from assistant.agronomy.nursery import Nursery
from assistant.store import rows
from assistant.store.queries.nurseries import not_held, sown_between
from assistant.store.tables import FarmerRow, NurseryRow
from assistant.store.values_warnings import BedInDanger


class Danger:
    def __init__(self, session: Session) -> None:
        self._session = session

    def beds(
        self, village_id: int, sown_from: date, sown_until: date
    ) -> tuple[BedInDanger, ...]:
        """Open beds of a village whose sowing day is one of these days, by phone; also those
        of farmers who may not be texted."""
        columns = (
            FarmerRow.id,
            FarmerRow.phone,
            FarmerRow.name,
            FarmerRow.language,
            FarmerRow.stopped_at,
            FarmerRow.consent_at,
            NurseryRow.label,
            NurseryRow.name,
            NurseryRow.sow_date,
            NurseryRow.sown,
            NurseryRow.more_on,
        )
        wanted = (
            select(*columns)
            .join(NurseryRow, NurseryRow.farmer_id == FarmerRow.id)
            .where(FarmerRow.village_id == village_id, NurseryRow.closed.is_(False))
            .where(sown_between(sown_from, sown_until), not_held())
            .order_by(FarmerRow.phone, NurseryRow.id)
        )
        return tuple(_bed(row, sown_until) for row in self._session.execute(wanted))

    def nurseries(
        self, village_id: int, sown_from: date, sown_until: date
    ) -> tuple[tuple[BedInDanger, Nursery], ...]:
        """The same with their nurseries, which are not planted yet."""
        wanted = (
            select(FarmerRow, NurseryRow)
            .join(NurseryRow, NurseryRow.farmer_id == FarmerRow.id)
            .where(FarmerRow.village_id == village_id, NurseryRow.closed.is_(False))
            .where(NurseryRow.transplanted_on.is_(None))
            .where(sown_between(sown_from, sown_until), not_held())
            .order_by(FarmerRow.phone, NurseryRow.id)
        )
        found = rows.sound(self._session.execute(wanted))
        return tuple((_of(farmer, nursery), nursery) for (farmer, _), nursery in found)

    def counts(
        self, village_ids: Collection[int], sown_from: date, sown_until: date
    ) -> dict[int, int]:
        """How many such beds there are in each of these villages that has any."""
        wanted = (
            select(FarmerRow.village_id, func.count())
            .join(NurseryRow, NurseryRow.farmer_id == FarmerRow.id)
            .where(and_(FarmerRow.village_id.in_(village_ids), NurseryRow.closed.is_(False)))
            .where(sown_between(sown_from, sown_until), not_held())
            .group_by(FarmerRow.village_id)
        )
        found = self._session.execute(wanted)
        return {village_id: count for village_id, count in found if village_id is not None}


def _of(farmer: FarmerRow, nursery: Nursery) -> BedInDanger:
    return BedInDanger(
        farmer_id=farmer.id,
        phone=farmer.phone,
        farmer=farmer.name,
        language=farmer.language,
        may_be_texted=farmer.stopped_at is None and farmer.consent_at is not None,
        called=nursery.called,
        sow_date=nursery.sow_date,
        sown=nursery.sown,
    )


def _bed(row: Any, sown_until: date) -> BedInDanger:
    """Seed that was added to a thin bed lies open to the rain as the first did; what is to be
    added later says nothing yet."""
    farmer_id, phone, farmer, language, stopped_at, consent_at, *bed = row
    label, name, sow_date, sown, more_on = bed
    added = more_on is not None and more_on <= sown_until
    return BedInDanger(
        farmer_id=farmer_id,
        phone=phone,
        farmer=farmer,
        language=language,
        may_be_texted=stopped_at is None and consent_at is not None,
        called=name or label,
        sow_date=more_on if added else sow_date,
        sown=sown and not added,
    )
