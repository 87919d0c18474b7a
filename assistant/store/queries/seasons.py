"""Seasons that are over."""

from collections.abc import Collection
from dataclasses import asdict

from sqlalchemy import select
from sqlalchemy.orm import Session

from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.store import rows
from assistant.store.tables import FarmerRow
from assistant.store.tables_seasons import SeasonRow


class Seasons:
    def __init__(self, session: Session) -> None:
        self._session = session

    def save(self, outcome: SeasonOutcome) -> None:
        """Keeps a nursery's result; told anew it replaces what was told before."""
        wanted = select(SeasonRow).where(SeasonRow.nursery_id == outcome.nursery_id)
        row = self._session.scalar(wanted) or SeasonRow()
        for name, told in asdict(outcome).items():
            setattr(row, name, told)
        self._session.add(row)
        self._session.flush()

    def of_farmer(self, farmer_id: int) -> tuple[SeasonOutcome, ...]:
        """A farmer's seasons, the oldest first."""
        wanted = select(SeasonRow).where(SeasonRow.farmer_id == farmer_id)
        ordered = wanted.order_by(SeasonRow.ended_on, SeasonRow.id)
        return tuple(rows.value(SeasonOutcome, row) for row in self._session.scalars(ordered))

    def in_villages(self, village_ids: Collection[int]) -> tuple[SeasonOutcome, ...]:
        """The seasons of all farmers of these villages, the oldest first."""
        wanted = (
            select(SeasonRow)
            .join(FarmerRow, FarmerRow.id == SeasonRow.farmer_id)
            .where(FarmerRow.village_id.in_(village_ids))
            .order_by(SeasonRow.ended_on, SeasonRow.id)
        )
        return tuple(rows.value(SeasonOutcome, row) for row in self._session.scalars(wanted))
