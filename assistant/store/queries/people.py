"""Villages, farmers and officers."""

import unicodedata
from collections.abc import Iterable, Sequence
from typing import Any

from sqlalchemy import bindparam, delete, exists, or_, select, update
from sqlalchemy.orm import Session

from assistant.people import Farmer, Officer, Village, VillageUnit
from assistant.store import memo, rows
from assistant.store.core import table_of
from assistant.store.errors import AlreadyThereError, NotThereError
from assistant.store.queries.counted import count_for
from assistant.store.tables import (
    FarmerRow,
    NurseryRow,
    OfficerRow,
    OfficerVillageRow,
    ReminderRow,
    VillageRow,
)
from assistant.store.tables_people import EnrolmentRow


def _plain(name: str) -> str:
    """A name as it is sorted: without accents and capitals."""
    letters = unicodedata.normalize("NFKD", name.casefold())
    return "".join(ch for ch in letters if not unicodedata.combining(ch))


_OPEN = OfficerRow.closed_at.is_(None)


def wants_texts(row: FarmerRow) -> bool:
    """Whether a farmer has agreed to texts, and neither stopped nor paused them."""
    return row.consent_at is not None and row.stopped_at is None and row.paused_at is None


_FARMER = table_of(FarmerRow)
_BY_PHONE = select(_FARMER).where(_FARMER.c.phone == bindparam("phone"))
_ENROLLED = select(EnrolmentRow.farmer_id).where(
    EnrolmentRow.farmer_id == bindparam("farmer_id")
)


class People:
    def __init__(self, session: Session) -> None:
        self._session = session

    def villages(self) -> tuple[Village, ...]:
        """All villages of the programme, by name: an A with an accent stands among the As."""
        kept = memo.kept_villages(self._session, ask=True)
        if kept is not None:
            return kept.by_name
        found = self._session.scalars(select(VillageRow).order_by(VillageRow.name))
        read = tuple(sorted(map(rows.village, found), key=lambda each: _plain(each.name)))
        memo.keep_villages(self._session, read)
        return tuple(each for each in read if each.retired_at is None)

    def village(self, village_id: int) -> Village | None:
        kept = memo.kept_villages(self._session, ask=False)
        if kept is not None:
            return kept.by_id.get(village_id)
        row = self._session.get(VillageRow, village_id)
        return rows.village(row) if row else None

    def add_village(self, name: str, zone: str) -> Village:
        """A new village, in an IANA time zone.

        Raises:
            AlreadyThereError: a village of that name is kept.
        """
        if self._session.scalar(select(VillageRow).where(VillageRow.name == name)):
            raise AlreadyThereError(
                f"expected a new village, got {name!r}, which is kept already: use it as it is "
                "or give another name"
            )
        row = VillageRow(name=name, zone=zone)
        self._session.add(row)
        self._session.flush()
        return rows.village(row)

    def place_village(
        self, village_id: int, latitude: float | None, longitude: float | None
    ) -> Village:
        """Sets where a village lies [degrees north and east], or that nobody knows.

        Raises:
            NotThereError: no such village is kept.
        """
        row = self._session.get(VillageRow, village_id)
        if row is None:
            raise NotThereError(f"expected a kept village, got id {village_id}: add it first")
        row.latitude, row.longitude = latitude, longitude
        self._session.flush()
        return rows.village(row)

    def mend_village(self, village_id: int, **columns: Any) -> Village:
        """Sets some of what is kept of a village.

        Raises:
            NotThereError: no such village is kept.
        """
        row = self._session.get(VillageRow, village_id)
        if row is None:
            raise NotThereError(f"expected a kept village, got id {village_id}: add it first")
        for name, value in columns.items():
            setattr(row, name, value)
        self._session.flush()
        return rows.village(row)

    def set_units(self, village_id: int, units: Sequence[VillageUnit]) -> Village:
        """Sets what land units are in a village.

        Raises:
            NotThereError: no such village is kept.
        """
        rows_of = [[list(unit.names), unit.m2] for unit in units]
        return self.mend_village(village_id, units=rows_of)

    def village_named(self, name: str) -> Village | None:
        """A village by its name in whatever letters, also one that is retired."""
        found = self._session.scalars(select(VillageRow))
        same = (row for row in found if row.name.casefold() == name.casefold())
        row = next(same, None)
        return rows.village(row) if row else None

    def serve_too(self, village_id: int, as_in: int) -> None:
        """Who serves one village serves another too, and that one no more."""
        serving = select(OfficerVillageRow.officer_id).where(
            OfficerVillageRow.village_id == as_in
        )
        for officer_id in self._session.scalars(serving).all():
            if self._session.get(OfficerVillageRow, (officer_id, village_id)) is None:
                row = OfficerVillageRow(officer_id=officer_id, village_id=village_id)
                self._session.add(row)
        self._session.flush()
        self.serve_no_more(as_in)

    def serve_no_more(self, village_id: int) -> None:
        """Nobody serves a village any more."""
        gone = delete(OfficerVillageRow).where(OfficerVillageRow.village_id == village_id)
        self._session.execute(gone)

    def set_climate(self, village_id: int, months: Sequence[float] | None) -> Village:
        """Sets the mean temperature of each month [C], or that nobody knows.

        Raises:
            NotThereError: no such village is kept.
        """
        row = self._session.get(VillageRow, village_id)
        if row is None:
            raise NotThereError(f"expected a kept village, got id {village_id}: add it first")
        row.climate = None if months is None else list(months)
        self._session.flush()
        return rows.village(row)

    def offer_practices(self, village_id: int, codes: Sequence[str]) -> Village:
        """Sets which practices are offered in a village, by code.

        Raises:
            NotThereError: no such village is kept.
        """
        row = self._session.get(VillageRow, village_id)
        if row is None:
            raise NotThereError(f"expected a kept village, got id {village_id}: add it first")
        row.practices = list(codes)
        self._session.flush()
        return rows.village(row)

    def languages(self) -> frozenset[str]:
        """Those that somebody who may get texts, or an officer, is spoken to in."""
        farmers = select(FarmerRow.language).where(FarmerRow.stopped_at.is_(None)).distinct()
        officers = select(OfficerRow.language).where(OfficerRow.closed_at.is_(None)).distinct()
        found = (*self._session.scalars(farmers), *self._session.scalars(officers))
        return frozenset(filter(None, found))

    def farmer(self, phone: str) -> Farmer | None:
        known, key = memo.people(self._session), (memo.FARMER, phone)
        if key not in known:
            row = self._session.execute(_BY_PHONE, {"phone": phone}).first()
            known[key] = rows.farmer(row) if row else None
        farmer: Farmer | None = known[key]
        return farmer

    def on_roll(self, phone: str) -> Farmer | None:
        """The farmer with this phone, if anybody enrolled them or they stopped texts; not one
        of whom only a cry for help is kept."""
        farmer = self.farmer(phone)
        return farmer if farmer and self._is_enrolled(farmer) else None

    def _is_enrolled(self, farmer: Farmer) -> bool:
        """As IS_ENROLLED has it, of one who was read."""
        said = farmer.consent_at, farmer.stopped_at, farmer.village_id
        if any(each is not None for each in said):
            return True
        known, key = memo.people(self._session), (memo.ENROLLED, farmer.phone)
        if key not in known:
            known[key] = self._session.scalar(_ENROLLED, {"farmer_id": farmer.id}) is not None
        return bool(known[key])

    def farmer_by_id(self, farmer_id: int) -> Farmer | None:
        row = self._session.get(FarmerRow, farmer_id)
        return rows.farmer(row) if row else None

    def farmers(self, village_id: int | None = None) -> tuple[Farmer, ...]:
        """Farmers of one village, or of all, by phone."""
        wanted = select(FarmerRow).order_by(FarmerRow.phone)
        if village_id is not None:
            wanted = wanted.where(FarmerRow.village_id == village_id)
        return tuple(map(rows.farmer, self._session.scalars(wanted)))

    def save_farmer(self, farmer: Farmer) -> Farmer:
        """Keeps a farmer as given; id 0 is a new one.

        Raises:
            AlreadyThereError: a new one whose phone is kept.
            NotThereError: an id that is not kept.
        """
        row = self._new_farmer(farmer) if farmer.id == 0 else self._kept_farmer(farmer)
        first_known = row.village_id is None and farmer.village_id is not None
        wanted = row.id is None or wants_texts(row)
        row.phone, row.language = farmer.phone or f"{rows.NO_PHONE}{row.id}", farmer.language
        row.village_id = farmer.village_id
        row.consent_at, row.stopped_at = farmer.consent_at, farmer.stopped_at
        row.paused_at, row.only_work = farmer.paused_at, farmer.only_work
        row.name = farmer.name
        self._session.flush()
        if wants_texts(row) and not wanted:
            self._wake(row.id)
        if first_known:
            count_for(self._session, row.phone, row.village_id)
        kept = rows.farmer(row)
        memo.people(self._session)[memo.FARMER, row.phone] = kept
        return kept

    def _wake(self, farmer_id: int) -> None:
        """The clock looks again at what rested while a farmer wanted no texts."""
        theirs = select(NurseryRow.id).where(NurseryRow.farmer_id == farmer_id)
        self._session.execute(
            update(ReminderRow)
            .where(ReminderRow.nursery_id.in_(theirs), ReminderRow.rests.is_(True))
            .values(rests=False)
            .execution_options(synchronize_session="fetch")
        )

    def _new_farmer(self, farmer: Farmer) -> FarmerRow:
        if self.farmer(farmer.phone):
            raise AlreadyThereError(
                f"expected a new phone, got {farmer.phone}, which is kept: read it first"
            )
        row = FarmerRow()
        self._session.add(row)
        return row

    def _kept_farmer(self, farmer: Farmer) -> FarmerRow:
        row = self._session.get(FarmerRow, farmer.id)
        if row is None:
            raise NotThereError(
                f"expected a kept farmer, got id {farmer.id}: give 0 for a new one"
            )
        return row

    def officer(self, phone: str) -> Officer | None:
        """The officer with this phone, whose account is open."""
        known, key = memo.people(self._session), (memo.OFFICER, phone)
        if key not in known:
            wanted = select(OfficerRow).where(OfficerRow.phone == phone, _OPEN)
            row = self._session.scalar(wanted)
            known[key] = self._officer(row) if row else None
        officer: Officer | None = known[key]
        return officer

    def officer_by_id(self, officer_id: int) -> Officer | None:
        """An officer whose account is open."""
        row = self._session.get(OfficerRow, officer_id)
        return self._officer(row) if row and row.closed_at is None else None

    def officers(self) -> tuple[Officer, ...]:
        """All officers whose account is open, by name."""
        wanted = select(OfficerRow).where(_OPEN).order_by(OfficerRow.name)
        return tuple(map(self._officer, self._session.scalars(wanted).all()))

    def served(self) -> frozenset[int]:
        """Villages that an officer serves whose account is open and who is no lead."""
        wanted = (
            select(OfficerVillageRow.village_id)
            .join(OfficerRow, OfficerRow.id == OfficerVillageRow.officer_id)
            .where(_OPEN, OfficerRow.is_lead.is_(False))
            .distinct()
        )
        return frozenset(self._session.scalars(wanted))

    def officers_of(self, village_id: int) -> tuple[Officer, ...]:
        """The officers who serve a village, leads included, by phone."""
        serving = select(OfficerVillageRow.officer_id).where(
            OfficerVillageRow.village_id == village_id
        )
        found = self._session.scalars(
            select(OfficerRow)
            .where(or_(OfficerRow.is_lead, OfficerRow.id.in_(serving)), _OPEN)
            .order_by(OfficerRow.phone)
        )
        return tuple(map(self._officer, found.all()))

    def serving(self, village_id: int) -> tuple[Officer, ...]:
        """The officers to whom a village was given, by phone; leads only where it was."""
        serve = exists().where(
            OfficerVillageRow.officer_id == OfficerRow.id,
            OfficerVillageRow.village_id == village_id,
        )
        wanted = select(OfficerRow).where(serve, _OPEN).order_by(OfficerRow.phone)
        return tuple(map(self._officer, self._session.scalars(wanted).all()))

    def add_officer(
        self,
        phone: str,
        name: str,
        code_hash: str,
        language: str,
        village_ids: Iterable[int],
        is_lead: bool = False,
    ) -> Officer:
        """A new officer, or a known one with villages added and a new code; a closed account
        is open again.

        Raises:
            NotThereError: a village that is not kept.
        """
        kept = self._session.scalar(select(OfficerRow).where(OfficerRow.phone == phone))
        row = kept or OfficerRow(phone=phone, is_lead=False)
        row.name, row.code_hash, row.language = name, code_hash, language
        row.closed_at = None
        row.is_lead = row.is_lead or is_lead
        self._session.add(row)
        self._session.flush()
        self._serve(row, village_ids)
        return self._officer(row)

    def _serve(self, officer: OfficerRow, village_ids: Iterable[int]) -> None:
        for village_id in set(village_ids) - set(self._village_ids(officer)):
            if self._session.get(VillageRow, village_id) is None:
                raise NotThereError(
                    f"expected a kept village, got id {village_id}: add the village first"
                )
            self._session.add(OfficerVillageRow(officer_id=officer.id, village_id=village_id))
        self._session.flush()

    def _officer(self, row: OfficerRow) -> Officer:
        return rows.value(Officer, row, village_ids=self._village_ids(row))

    def _village_ids(self, officer: OfficerRow) -> tuple[int, ...]:
        serves = OfficerVillageRow
        found = self._session.scalars(
            select(serves.village_id)
            .where(serves.officer_id == officer.id)
            .order_by(serves.village_id)
        )
        return tuple(found)
