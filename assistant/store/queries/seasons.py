"""Seasons that are over, and the nurseries of a season as columns: a lead sees thousands."""

from collections.abc import Collection
from dataclasses import asdict
from datetime import date

from sqlalchemy import ColumnElement, bindparam, false, func, select
from sqlalchemy.orm import Session

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.store import rows
from assistant.store.core import table_of
from assistant.store.tables import FarmerRow, NurseryRow, ReminderRow, VillageRow
from assistant.store.tables_seasons import SeasonRow
from assistant.store.values_results import NurseryEnd

_OF_NURSERY = (
    "field_area_m2", "germination", "spacing_row_cm", "spacing_hill_cm", "seedlings_per_hill",
    "grain_weight_g", "pail_litres", "establishment", "gap_filling", "sow_date", "sown",
    "sow_assumed", "uncover_date", "uncovered", "transplant_date", "transplanted_on", "closed",
    "no_result", "resown",
)  # fmt: skip

# Asked at every round: to build such a statement takes longer than to run it.
_S = table_of(SeasonRow)
_UNASKED = (
    select(_S.c.nursery_id)
    .where(
        _S.c.ended_on >= bindparam("ended_from"),
        _S.c.ended_on <= bindparam("ended_until"),
        _S.c.yield_asked.is_(None),
        _S.c.yield_kg.is_(None),
    )
    .order_by(_S.c.id)
)


class Seasons:
    def __init__(self, session: Session) -> None:
        self._session = session

    def save(self, outcome: SeasonOutcome) -> None:
        """Keeps a nursery's result; told anew it replaces what was told before."""
        wanted = select(SeasonRow).where(SeasonRow.nursery_id == outcome.nursery_id)
        row = self._session.scalar(wanted) or SeasonRow()
        for name, told in asdict(outcome).items():
            if name != "practice":  # which stands with the nursery
                setattr(row, name, told)
        self._session.add(row)
        self._session.flush()

    def unasked(self, ended_from: date, ended_until: date) -> tuple[int, ...]:
        """The nurseries whose result was told between these days, the yield neither told nor
        asked for."""
        given = {"ended_from": ended_from, "ended_until": ended_until}
        return tuple(self._session.scalars(_UNASKED, given))

    def of_nursery(self, nursery_id: int) -> SeasonOutcome | None:
        """How the season of a nursery ended; None while nobody told."""
        found = self._outcomes(SeasonRow.nursery_id == nursery_id)
        return found[0] if found else None

    def of_farmer(self, farmer_id: int) -> tuple[SeasonOutcome, ...]:
        """A farmer's seasons, the oldest first."""
        return self._outcomes(SeasonRow.farmer_id == farmer_id)

    def in_villages(self, village_ids: Collection[int]) -> tuple[SeasonOutcome, ...]:
        """The seasons of all farmers of these villages, the oldest first."""
        return self._outcomes(FarmerRow.village_id.in_(village_ids))

    def _outcomes(self, which: ColumnElement[bool]) -> tuple[SeasonOutcome, ...]:
        wanted = (
            select(SeasonRow, NurseryRow.practice)
            .join(FarmerRow, FarmerRow.id == SeasonRow.farmer_id)
            .join(NurseryRow, NurseryRow.id == SeasonRow.nursery_id)
            .where(which)
            .order_by(SeasonRow.ended_on, SeasonRow.id)
        )
        return tuple(
            rows.value(SeasonOutcome, row, practice=practice)
            for row, practice in self._session.execute(wanted)
        )

    def ends(
        self, scope: Collection[int] | None, sown_from: date, sown_before: date
    ) -> tuple[NurseryEnd, ...]:
        """The nurseries of a season, open and closed, by village, farmer and label.

        Args:
            scope: ids of villages; None is everybody, also farmers of no village
            sown_from, sown_before: the season, by the day of sowing
        """
        planned = (
            select(func.min(ReminderRow.day))
            .where(ReminderRow.nursery_id == NurseryRow.id, ReminderRow.task == TaskCode.SOW)
            .correlate(NurseryRow)
            .scalar_subquery()
        )
        n, f, s = NurseryRow, FarmerRow, SeasonRow
        wanted = (
            select(
                *(n.id, n.label, n.name, n.practice, f.id, f.name, f.phone, f.village_id),
                *(getattr(n, name) for name in _OF_NURSERY),
                planned,
                *(s.ended_on, s.planted_area_m2, s.mats, s.mats_left),
                *(s.resown, s.establishment, s.seed_share, s.yield_kg),
            )
            .join(f, f.id == n.farmer_id)
            .outerjoin(s, s.nursery_id == n.id)
            .outerjoin(VillageRow, VillageRow.id == f.village_id)
            .where(n.sow_date >= sown_from, n.sow_date < sown_before)
            .order_by(VillageRow.name, func.coalesce(f.name, ""), f.phone, n.id)
        )
        if scope is not None:
            wanted = wanted.where(f.village_id.in_(scope) if scope else false())
        return tuple(NurseryEnd(*row) for row in self._session.execute(wanted))

    def sowings(self, until: date) -> tuple[date, date] | None:
        """The first and the last day, until a day, on which nurseries were sown or to be."""
        day = NurseryRow.sow_date
        wanted = select(func.min(day), func.max(day)).where(day <= until)
        first, last = self._session.execute(wanted).one()
        return (first, last) if first is not None else None
