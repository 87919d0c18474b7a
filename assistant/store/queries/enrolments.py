"""Enrolments: who put a farmer on the roll, what was asked and answered."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from typing import Any, TypeVar

from sqlalchemy import bindparam, delete, exists, insert, select, text, update
from sqlalchemy.orm import Session

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.store import rows
from assistant.store.columns import UtcMoment
from assistant.store.core import table_of
from assistant.store.queries.enrolled import IS_ENROLLED
from assistant.store.queries.nurseries import columns_of
from assistant.store.tables import (
    Base,
    CallRow,
    FarmerRow,
    NurseryRow,
    TalkRow,
    UssdTalkRow,
)
from assistant.store.tables_alarms import AlarmRow
from assistant.store.tables_people import EnrolmentRow
from assistant.store.values_people import Enrolment, NewFarmer, RollFarmer

_AT_ONCE = 500  # values in one question; both databases take far more
_BEDS = "beds"  # the one key of `wishes`, a table of JSON

T = TypeVar("T")


class Enrolments:
    def __init__(self, session: Session) -> None:
        self._session = session

    # --- one farmer --------------------------------------------------------------------------

    def get(self, farmer_id: int) -> Enrolment | None:
        row = self._session.get(EnrolmentRow, farmer_id)
        return _enrolment(row) if row else None

    def of(self, farmer_ids: Collection[int]) -> dict[int, Enrolment]:
        """The enrolments of these farmers, by farmer."""
        wanted = select(EnrolmentRow).where(EnrolmentRow.farmer_id.in_(farmer_ids))
        return {row.farmer_id: _enrolment(row) for row in self._session.scalars(wanted)}

    def save(self, enrolment: Enrolment) -> None:
        """Keeps an enrolment in place of the farmer's last."""
        self._session.merge(EnrolmentRow(**_columns(enrolment)))
        self._session.flush()

    def forget_person(self, farmer_id: int) -> None:
        """Takes away what was kept of somebody who never agreed: name, language, village, the
        nurseries that an office planned, the words of calls, but for a cry for help that nobody
        has seen to. The number stays."""
        beds = select(NurseryRow.id).where(NurseryRow.farmer_id == farmer_id)
        ids = list(self._session.scalars(beds))
        self._unlink(ids)
        self._session.execute(delete(NurseryRow).where(NurseryRow.id.in_(ids)))
        stands = exists().where(AlarmRow.call_id == CallRow.id, CallRow.handled_at.is_(None))
        calls = update(CallRow).where(CallRow.farmer_id == farmer_id, ~stands)
        self._session.execute(calls.values(words=""))
        bare = update(FarmerRow).where(FarmerRow.id == farmer_id)
        self._session.execute(bare.values(name=None, language=None, village_id=None))
        self._session.expire_all()

    def unanswered(self, officer_id: int, way: str, at: datetime) -> tuple[Farmer, ...]:
        """Whom an officer put on the roll at a moment and who has neither agreed nor answered,
        by phone."""
        wanted = (
            select(FarmerRow)
            .join(EnrolmentRow, EnrolmentRow.farmer_id == FarmerRow.id)
            .where(EnrolmentRow.officer_id == officer_id, EnrolmentRow.way == way)
            .where(EnrolmentRow.at == at, EnrolmentRow.answer.is_(None))
            .where(FarmerRow.consent_at.is_(None), FarmerRow.stopped_at.is_(None))
            .order_by(FarmerRow.phone)
        )
        return tuple(map(rows.farmer, self._session.scalars(wanted)))

    def drop(self, farmer_id: int) -> None:
        """Nobody put this farmer on the roll after all."""
        self._session.execute(delete(EnrolmentRow).where(EnrolmentRow.farmer_id == farmer_id))

    def _unlink(self, nursery_ids: Sequence[int]) -> None:
        """What points to nurseries that go: it is kept without them where it can be."""
        for table in reversed(Base.metadata.sorted_tables):
            for column in table.columns:
                if not any(
                    key.column is NurseryRow.__table__.c.id for key in column.foreign_keys
                ):
                    continue
                which = column.in_(nursery_ids)
                if column.nullable:
                    change = update(table).where(which).values({column.name: None})
                    self._session.execute(change)
                else:
                    self._session.execute(delete(table).where(which))

    def end_talks(self, *phones: str) -> None:
        """Half-finished talks of these numbers, by SMS and by USSD, are over."""
        for some in _portions(phones):
            for row in (TalkRow, UssdTalkRow):
                self._session.execute(delete(row).where(row.phone.in_(some)))

    # --- the clock ---------------------------------------------------------------------------

    def to_ask_again(self, asked_until: datetime) -> tuple[str, ...]:
        """The phones of farmers who were asked once, until a time, and have not answered."""
        return tuple(self._session.scalars(_TO_ASK_AGAIN, {"asked_until": asked_until}))

    # --- a whole list ------------------------------------------------------------------------

    def hold_roll(self) -> None:
        """Makes other lists, and turns that change the roll, wait until this transaction ends.
        On SQLite every transaction that writes has the database to itself already."""
        if self._session.get_bind().dialect.name == "postgresql":
            held = "LOCK TABLE farmer, nursery, enrolment IN SHARE ROW EXCLUSIVE MODE"
            self._session.execute(text(held))

    def listed(self, phones: Collection[str]) -> dict[str, RollFarmer]:
        """Those of these numbers that are on the roll."""
        found: dict[str, RollFarmer] = {}
        for some in _portions(phones):
            wanted = (
                select(FarmerRow, EnrolmentRow)
                .outerjoin(EnrolmentRow, EnrolmentRow.farmer_id == FarmerRow.id)
                .where(FarmerRow.phone.in_(some), IS_ENROLLED)
            )
            for farmer, row in self._session.execute(wanted):
                found[farmer.phone] = RollFarmer(
                    rows.farmer(farmer), _enrolment(row) if row else None
                )
        return found

    def beds_of(self, farmer_ids: Collection[int]) -> dict[int, list[Nursery]]:
        """The nurseries of these farmers, closed ones too, in the order they were made."""
        found: dict[int, list[Nursery]] = {}
        for some in _portions(farmer_ids):
            wanted = (
                select(NurseryRow).where(NurseryRow.farmer_id.in_(some)).order_by(NurseryRow.id)
            )
            for (row,), nursery in rows.sound(self._session.execute(wanted), at=0):
                found.setdefault(row.farmer_id, []).append(nursery)
        return found

    def add_farmers(self, new: Sequence[NewFarmer]) -> dict[str, Farmer]:
        """Keeps many new farmers, none of whom has agreed yet; each by number. Who once cried
        for help from one of these numbers is meant too."""
        made = self._enrol_known(new)
        for some in _portions(each for each in new if each.phone not in made):
            columns = [
                {
                    "phone": each.phone,
                    "name": each.name,
                    "village_id": each.village_id,
                    "language": each.language,
                }
                for each in some
            ]
            kept = self._session.scalars(insert(FarmerRow).returning(FarmerRow), columns)
            made |= {row.phone: rows.farmer(row) for row in kept}
        return made

    def _enrol_known(self, new: Sequence[NewFarmer]) -> dict[str, Farmer]:
        by_phone = {each.phone: each for each in new}
        made: dict[str, Farmer] = {}
        for some in _portions(by_phone):
            kept = select(FarmerRow).where(FarmerRow.phone.in_(some), ~IS_ENROLLED)
            for row in self._session.scalars(kept).all():
                each = by_phone[row.phone]
                row.name, row.village_id, row.language = (
                    each.name,
                    each.village_id,
                    each.language,
                )
                made[row.phone] = rows.farmer(row)
        self._session.flush()
        return made

    def add_all(self, enrolments: Iterable[Enrolment]) -> None:
        """Keeps many enrolments, of farmers who have none yet."""
        for some in _portions(enrolments):
            self._session.execute(insert(EnrolmentRow), [_columns(each) for each in some])

    def add_beds(self, beds: Iterable[Nursery], now: datetime) -> tuple[Nursery, ...]:
        """Keeps many new nurseries; they come back with their ids."""
        kept: list[Nursery] = []
        for some in _portions(beds):
            made = self._session.scalars(
                insert(NurseryRow).returning(NurseryRow),
                [columns_of(bed) | {"changed_at": now} for bed in some],
            )
            kept += map(rows.nursery, made)
        return tuple(kept)

    def mend_farmers(self, changes: Mapping[int, Mapping[str, object]]) -> None:
        """Sets some columns of farmers, by id; the others are left as they are now."""
        alike: dict[tuple[str, ...], list[dict[str, object]]] = {}
        for farmer_id, columns in changes.items():
            same = alike.setdefault(tuple(sorted(columns)), [])
            same.append({**columns, "id": farmer_id})
        for rows_alike in alike.values():
            self._session.execute(update(FarmerRow), rows_alike)


def _portions(many: Iterable[T]) -> Iterator[list[T]]:
    """A long row of values in parts that one statement can take."""
    part: list[T] = []
    for each in many:
        part.append(each)
        if len(part) == _AT_ONCE:
            yield part
            part = []
    if part:
        yield part


def _enrolment(row: EnrolmentRow) -> Enrolment:
    kept = row.wishes.get(_BEDS, ())
    return rows.value(Enrolment, row, wishes=tuple(dict(each) for each in kept))


def _columns(enrolment: Enrolment) -> dict[str, Any]:
    wishes = {_BEDS: [dict(each) for each in enrolment.wishes]}
    return {**vars(enrolment), "wishes": wishes}


# Asked at every round: to build such a statement takes longer than to run it.
_F, _E = table_of(FarmerRow), table_of(EnrolmentRow)
_TO_ASK_AGAIN = (
    select(_F.c.phone)
    .join(_E, _E.c.farmer_id == _F.c.id)
    .where(_E.c.answer.is_(None), _E.c.asked == 1)
    .where(_E.c.asked_at <= bindparam("asked_until", type_=UtcMoment))
    .where(_F.c.consent_at.is_(None), _F.c.stopped_at.is_(None))
    .order_by(_F.c.phone)
)
