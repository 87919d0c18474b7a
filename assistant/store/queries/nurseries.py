"""Nurseries with their inputs and their story."""

from dataclasses import asdict, fields, replace
from datetime import date, datetime
from typing import Any

from sqlalchemy import ColumnElement, Select, and_, bindparam, func, insert, or_, select, update
from sqlalchemy.orm import Session

from assistant.agronomy.constants import WEAK_GERMINATION
from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.store import rows
from assistant.store.core import add, change, changed_beside, table_of
from assistant.store.errors import BadRowError, NotThereError
from assistant.store.tables import FarmerRow, NurseryRow, WarningPhoneRow

_BY_HAND = ("id", "inputs", "practice")
_BY_LABEL = (func.length(NurseryRow.label), NurseryRow.label, NurseryRow.id)
_KEPT = [field.name for field in fields(Nursery) if field.name not in _BY_HAND]


def sown_between(first: date, last: date) -> ColumnElement[bool]:
    """Sown on one of these days, all of it or the seed that was added to a thin bed."""
    return or_(
        NurseryRow.sow_date.between(first, last), NurseryRow.more_on.between(first, last)
    )


def not_held() -> ColumnElement[bool]:
    """Sown, or of seed that may be sown (see `Nursery.held`)."""
    may_be_sown = NurseryRow.germination >= WEAK_GERMINATION.value
    return or_(NurseryRow.sown, NurseryRow.germination_known.is_(False), may_be_sown)


class Nurseries:
    def __init__(self, session: Session) -> None:
        self._session = session

    def get(self, nursery_id: int) -> Nursery | None:
        row = self._session.get(NurseryRow, nursery_id)
        return rows.readable(row) if row else None

    def fresh(self, nursery_id: int) -> Nursery | None:
        """The same as it is now, where it was read before its farmer's phone was locked."""
        row = self._session.get(NurseryRow, nursery_id, populate_existing=True)
        return rows.readable(row) if row else None

    def of_farmer(self, farmer_id: int, open_only: bool = True) -> tuple[Nursery, ...]:
        """A farmer's nurseries by label: A to Z before AA."""
        wanted = _OPEN_OF if open_only else _OF_FARMER
        return self._those(wanted, {"farmer_id": farmer_id})

    def _those(self, wanted: Select[Any], given: dict[str, object]) -> tuple[Nursery, ...]:
        """Those that can be read."""
        known = self._session.info[rows.PRACTICES]
        found = []
        for row in self._session.execute(wanted, given):
            try:
                found.append(rows.nursery_of(row, known))
            except BadRowError as fault:
                rows.note_unreadable(self._session, row.id, fault)
        return tuple(found)

    def in_village(
        self, village_id: int, sown_from: date = date.min, sown_until: date = date.max
    ) -> tuple[tuple[Farmer, Nursery], ...]:
        """Open nurseries in a village, of farmers who agreed to texts and still want them, by
        phone.

        `sown_from`, `sown_until`: only those whose sowing day is one of these days, or that of
        seed that was added.
        """
        found = self._session.execute(
            select(FarmerRow, NurseryRow)
            .join(NurseryRow, NurseryRow.farmer_id == FarmerRow.id)
            .where(FarmerRow.village_id == village_id, FarmerRow.stopped_at.is_(None))
            .where(FarmerRow.consent_at.is_not(None), NurseryRow.closed.is_(False))
            .where(sown_between(sown_from, sown_until))
            .order_by(FarmerRow.phone, NurseryRow.id)
        )
        return tuple(
            (rows.farmer(farmer), nursery) for (farmer, _), nursery in rows.sound(found)
        )

    def warned(self, warning_id: int) -> tuple[tuple[Farmer, Nursery | None], ...]:
        """Who was asked about a warning and still wants texts, by phone: with each open
        nursery, or with None where there is none any more."""
        found = self._session.execute(
            select(FarmerRow, NurseryRow)
            .join(WarningPhoneRow, WarningPhoneRow.phone == FarmerRow.phone)
            .outerjoin(
                NurseryRow,
                and_(NurseryRow.farmer_id == FarmerRow.id, NurseryRow.closed.is_(False)),
            )
            .where(WarningPhoneRow.warning_id == warning_id, FarmerRow.stopped_at.is_(None))
            .where(FarmerRow.consent_at.is_not(None))
            .order_by(FarmerRow.phone, *_BY_LABEL)
        )
        return tuple(
            (rows.farmer(farmer), rows.readable(row) if row else None) for farmer, row in found
        )

    def open_since(self, sown_before: date) -> tuple[Nursery, ...]:
        """Nurseries that were sown, or were to be, before a day and are still open."""
        return self._those(_OPEN_SINCE, {"sown_before": sown_before})

    def count(self, farmer_id: int | None = None) -> int:
        """How many nurseries there are or were, in all or of one farmer."""
        wanted = select(func.count()).select_from(NurseryRow)
        if farmer_id is not None:
            wanted = wanted.where(NurseryRow.farmer_id == farmer_id)
        return self._session.scalar(wanted) or 0

    def save(self, nursery: Nursery, now: datetime) -> Nursery:
        """Keeps a nursery as given; id 0 is a new one.

        Raises:
            NotThereError: an id that is not kept.
        """
        columns = columns_of(nursery) | {"changed_at": now}
        if nursery.id == 0:
            return replace(nursery, id=add(self._session, _ADD, columns))
        if change(self._session, _CHANGE, {"of": nursery.id} | columns) == 0:
            raise NotThereError(
                f"expected a kept nursery, got id {nursery.id}: give 0 for a new one"
            )
        changed_beside(self._session, NurseryRow, [nursery.id])
        return nursery


def columns_of(nursery: Nursery) -> dict[str, object]:
    """A nursery as it is kept, but for its id."""
    kept: dict[str, object] = {name: getattr(nursery, name) for name in _KEPT}
    climate = None if nursery.climate is None else list(nursery.climate)
    by_hand = {"practice": nursery.practice.code, "climate": climate}
    return kept | asdict(nursery.inputs) | by_hand


_N = table_of(NurseryRow)
_OF_FARMER = (
    select(_N)
    .where(_N.c.farmer_id == bindparam("farmer_id"))
    .order_by(func.length(_N.c.label), _N.c.label, _N.c.id)
)
_OPEN_OF = _OF_FARMER.where(_N.c.closed.is_(False))
_ADD = insert(_N)
_CHANGE = update(_N).where(_N.c.id == bindparam("of"))
# In no order: an order by id keeps the databases from the index of the open ones.
_OPEN_SINCE = select(_N).where(_N.c.closed.is_(False), _N.c.sow_date < bindparam("sown_before"))
