"""The roll: farmers in pages, found by name or number, with their open nurseries."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import ColumnElement, and_, bindparam, exists, false, func, or_, select
from sqlalchemy.orm import InstrumentedAttribute, Session

from assistant.people import Farmer
from assistant.store import rows
from assistant.store.queries.enrolled import IS_ENROLLED
from assistant.store.tables import FarmerRow, NurseryRow, VillageRow
from assistant.store.tables_people import EnrolmentRow
from assistant.store.values_officers import ListedBed

SHORTEST_NUMBER = 3  # digits; fewer would find half the roll


@dataclass(frozen=True)
class SearchedFarmer:
    """Of a farmer what a search looks at."""

    id: int
    name: str | None
    phone: str
    village_id: int | None


class RollQueries:
    def __init__(self, session: Session) -> None:
        self._session = session

    def farmers(
        self,
        scope: Collection[int] | None,
        search: str,
        limit: int,
        skip: int = 0,
        held_to: "HeldTo | None" = None,
    ) -> tuple[Farmer, ...]:
        """Farmers by village, name and number; `search` is a part of a name or number."""
        wanted = (
            select(FarmerRow)
            .outerjoin(VillageRow, VillageRow.id == FarmerRow.village_id)
            .where(*_terms(scope, search, held_to))
            .order_by(
                VillageRow.name, FarmerRow.name.is_(None), FarmerRow.name, FarmerRow.phone
            )
            .limit(limit)
            .offset(skip)
        )
        return tuple(map(rows.farmer, self._session.scalars(wanted)))

    def count(
        self,
        scope: Collection[int] | None,
        search: str = "",
        held_to: "HeldTo | None" = None,
    ) -> int:
        """How many farmers those would be without a limit."""
        terms = _terms(scope, search, held_to)
        wanted = select(func.count()).select_from(FarmerRow).where(*terms)
        return self._session.scalar(wanted) or 0

    def known(self, scope: Collection[int] | None) -> tuple[SearchedFarmer, ...]:
        """Everybody on the roll of some villages (None: of all), as lean rows."""
        columns = FarmerRow.id, FarmerRow.name, FarmerRow.phone, FarmerRow.village_id
        wanted = select(*columns).where(*_terms(scope, "")).order_by(FarmerRow.name)
        return tuple(SearchedFarmer(*row) for row in self._session.execute(wanted))

    def counts_by_village(self) -> dict[int | None, int]:
        """How many farmers each village has."""
        counted = select(FarmerRow.village_id, func.count()).where(IS_ENROLLED)
        wanted = counted.group_by(FarmerRow.village_id)
        return {village_id: count for village_id, count in self._session.execute(wanted)}

    def beds_by_village(self) -> dict[int | None, int]:
        """How many open nurseries each village has."""
        wanted = (
            select(FarmerRow.village_id, func.count())
            .join(NurseryRow, NurseryRow.farmer_id == FarmerRow.id)
            .where(NurseryRow.closed.is_(False))
            .group_by(FarmerRow.village_id)
        )
        return {village_id: count for village_id, count in self._session.execute(wanted)}

    def beds(self, farmer_ids: Collection[int]) -> tuple[ListedBed, ...]:
        """The open nurseries of these farmers, by label."""
        wanted = (
            select(
                NurseryRow.id,
                NurseryRow.farmer_id,
                NurseryRow.label,
                NurseryRow.name,
                NurseryRow.sow_date,
            )
            .where(NurseryRow.farmer_id.in_(farmer_ids), NurseryRow.closed.is_(False))
            .order_by(NurseryRow.farmer_id, func.length(NurseryRow.label), NurseryRow.label)
        )
        return tuple(_bed(*found) for found in self._session.execute(wanted))


def _bed(id: int, farmer_id: int, label: str, name: str | None, sow_date: date) -> ListedBed:
    return ListedBed(id, farmer_id, label, name, sow_date)


@dataclass(frozen=True)
class HeldTo:
    """Only farmers who stand in one way: "agreed", "asked", "silent", "no" (or may not want to
    be asked again) or "stopped"; any other word holds to nothing.

    officer_id:    whose refusals count for "no", where no village is kept of them any more
    silent_before: a second asking from before it was never answered
    people:        ids of farmers, only those
    beds:          ids of nurseries, only farmers who have one of each group
    """

    standing: str
    officer_id: int
    silent_before: datetime
    people: Collection[int] | None = None
    beds: tuple[Collection[int], ...] = ()


def _standing(held_to: HeldTo) -> list[ColumnElement[bool]]:
    agreed = FarmerRow.consent_at.is_not(None)
    wants = FarmerRow.stopped_at.is_(None)
    waits = [~agreed, wants, _enrolled(EnrolmentRow.answer.is_(None))]
    late = (EnrolmentRow.asked > 1, EnrolmentRow.asked_at < held_to.silent_before)
    terms: dict[str, list[ColumnElement[bool]]] = {
        "agreed": [agreed, wants],
        "asked": waits,
        "silent": [*waits, _enrolled(*late)],
        "no": [~agreed, _enrolled(EnrolmentRow.answer.in_(("no", "unsure")))],
        "stopped": [~wants],
    }
    found = terms.get(held_to.standing, [])
    if held_to.people is not None:
        found.append(_one_of(FarmerRow.id, held_to.people))
    for beds in held_to.beds:
        owners = select(NurseryRow.farmer_id).where(_one_of(NurseryRow.id, beds))
        found.append(FarmerRow.id.in_(owners))
    return found


def _one_of(column: InstrumentedAttribute[int], ids: Collection[int]) -> ColumnElement[bool]:
    """Written into the statement: there may be more than a database takes as parameters."""
    return column.in_(bindparam(None, sorted(ids), expanding=True, literal_execute=True))


def _enrolled(*terms: ColumnElement[bool]) -> ColumnElement[bool]:
    return exists().where(EnrolmentRow.farmer_id == FarmerRow.id, *terms)


def _terms(
    scope: Collection[int] | None, search: str, held_to: HeldTo | None = None
) -> list[ColumnElement[bool]]:
    terms: list[ColumnElement[bool]] = [IS_ENROLLED]
    if held_to:
        terms += _standing(held_to)
    if scope is not None:
        here: ColumnElement[bool] = FarmerRow.village_id.in_(scope) if scope else false()
        if held_to and held_to.standing == "no":
            theirs = _enrolled(EnrolmentRow.officer_id == held_to.officer_id)
            here = or_(here, and_(FarmerRow.village_id.is_(None), theirs))
        terms.append(here)
    if search:
        found = [FarmerRow.name.icontains(search, autoescape=True)]
        digits = "".join(ch for ch in search if ch.isdecimal()).lstrip("0")
        if len(digits) >= SHORTEST_NUMBER:
            found.append(FarmerRow.phone.contains(digits, autoescape=True))
        terms.append(or_(*found))
    return terms
