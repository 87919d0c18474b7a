"""The season's nurseries: few columns of all for counting, whole ones for those shown."""

from collections.abc import Collection
from datetime import date
from json import loads
from typing import Any

from sqlalchemy import Text, and_, case, cast, false, func, or_, select
from sqlalchemy.orm import Session

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.store import rows
from assistant.store.tables import FarmerRow, NurseryRow
from assistant.store.values_officers import Stroke

Scope = Collection[int] | None
"""Ids of villages; None is everybody, also farmers of no village."""

_COLUMNS = (
    NurseryRow.id,
    FarmerRow.village_id,
    NurseryRow.practice,
    NurseryRow.sow_date,
    NurseryRow.sown,
    NurseryRow.uncover_date,
    NurseryRow.uncovered,
    NurseryRow.transplant_date,
    NurseryRow.transplanted_on,
    NurseryRow.test_begun,
    NurseryRow.test_counted,
    NurseryRow.closed,
    NurseryRow.germination,
    NurseryRow.germination_known,
    NurseryRow.climate,
    NurseryRow.felt_c,
    NurseryRow.felt_on,
    NurseryRow.leaves,
    NurseryRow.leaves_on,
)
# Of a climate its letters, since not every database compares lists; the germination only where
# it may hold a nursery back.
_WEAK = case(
    (and_(NurseryRow.germination_known, NurseryRow.sown.is_(False)), NurseryRow.germination),
    else_=1.0,
)
_CLIMATE = cast(NurseryRow.climate, Text)
_OTHERWISE: dict[Any, Any] = {
    NurseryRow.germination: _WEAK,
    NurseryRow.climate: _CLIMATE,
}
_ALIKE = tuple(_OTHERWISE.get(column, column) for column in _COLUMNS[1:])


def _read_climate(kept: Any) -> list[float] | None:
    return None if kept is None else loads(kept)


class Picture:
    def __init__(self, session: Session) -> None:
        self._session = session

    def alike(self, scope: Scope, sown_from: date) -> tuple[tuple[Stroke, int], ...]:
        """The same nurseries as of `strokes`, one of all that differ in nothing that tells a
        stage, and how many those are, by sowing day."""
        wanted = (
            select(func.min(NurseryRow.id), *_ALIKE, func.count())
            .join(FarmerRow, FarmerRow.id == NurseryRow.farmer_id)
            .where(*_of_season(scope, sown_from))
            .group_by(*_ALIKE)
        )
        found = (
            (Stroke._make(row[:-1]), row[-1])
            for row in self._session.connection().execute(wanted).all()
        )
        read = ((each._replace(climate=_read_climate(each.climate)), n) for each, n in found)
        return tuple(sorted(read, key=lambda pair: (pair[0].sow_date, pair[0].id)))

    def strokes(
        self, scope: Scope, sown_from: date, on: Collection[date] | None = None
    ) -> tuple[Stroke, ...]:
        """Nurseries sown on a day or later that are open or were planted out, by sowing day;
        `on`: only those of these days."""
        wanted = (
            select(*_COLUMNS)
            .join(FarmerRow, FarmerRow.id == NurseryRow.farmer_id)
            .where(*_of_season(scope, sown_from))
            .order_by(NurseryRow.sow_date, NurseryRow.id)
        )
        if on is not None:
            wanted = wanted.where(NurseryRow.sow_date.in_(on))
        found = (
            self._session.connection().execute(wanted).all()
        )  # plain rows: there are thousands
        return tuple(map(Stroke._make, found))

    def whole(self, nursery_ids: Collection[int]) -> dict[int, tuple[Farmer, Nursery]]:
        """These nurseries with their farmers."""
        wanted = select(FarmerRow, NurseryRow).join(
            NurseryRow, NurseryRow.farmer_id == FarmerRow.id
        )
        found = self._session.execute(wanted.where(NurseryRow.id.in_(list(nursery_ids))))
        return {
            nursery.id: (rows.farmer(farmer), nursery)
            for (farmer, _), nursery in rows.sound(found)
        }

    def names(self, scope: Scope, sown_from: date) -> dict[int, str]:
        """What the same nurseries as of `strokes` are called, by id: the farmer's name, or the
        last digits of the phone, and the nursery's."""
        wanted = (
            select(
                NurseryRow.id,
                FarmerRow.name,
                FarmerRow.phone,
                func.coalesce(NurseryRow.name, NurseryRow.label),
            )
            .join(FarmerRow, FarmerRow.id == NurseryRow.farmer_id)
            .where(*_of_season(scope, sown_from))
        )
        found = self._session.connection().execute(wanted)
        return {
            id: f"{name or '…' + phone[-4:]}, {called}" for id, name, phone, called in found
        }

    def of_season(self, scope: Scope, sown_from: date) -> tuple[tuple[Farmer, Nursery], ...]:
        """The same nurseries as `strokes`, whole."""
        wanted = (
            select(FarmerRow, NurseryRow)
            .join(NurseryRow, NurseryRow.farmer_id == FarmerRow.id)
            .where(*_of_season(scope, sown_from))
            .order_by(NurseryRow.sow_date, NurseryRow.id)
        )
        return tuple(
            (rows.farmer(farmer), nursery)
            for (farmer, _), nursery in rows.sound(self._session.execute(wanted))
        )


def _of_season(scope: Scope, sown_from: date) -> list[Any]:
    there = or_(NurseryRow.closed.is_(False), NurseryRow.transplanted_on.is_not(None))
    terms: list[Any] = [NurseryRow.sow_date >= sown_from, there]
    if scope is not None:
        terms.append(FarmerRow.village_id.in_(scope) if scope else false())
    return terms
