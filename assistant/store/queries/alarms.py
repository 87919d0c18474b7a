"""Alarms: cries for help that are told to one person after the other."""

from collections.abc import Collection
from datetime import datetime

from sqlalchemy import and_, bindparam, select, update
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.columns import UtcMoment
from assistant.store.core import table_of
from assistant.store.queries.seen_calls import call_of
from assistant.store.tables import CallRow, FarmerRow, NurseryRow, OfficerRow
from assistant.store.tables_alarms import AlarmRow, AlarmToldRow
from assistant.store.values_alarms import Alarm, AlarmCourse, AlarmTold


class Alarms:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add(
        self, call_id: int, village_id: int | None, sure: bool, next_at: datetime | None
    ) -> None:
        """Makes a call an alarm; `next_at` is when a person is told."""
        self._session.add(
            AlarmRow(
                call_id=call_id,
                village_id=village_id,
                sure=sure,
                said=None,
                next_at=next_at,
                turn=1,
                note="",
            )
        )
        self._session.flush()

    def get(self, call_id: int) -> Alarm | None:
        """The alarm of a call that nobody has handled."""
        found = self._session.execute(_STANDING.where(CallRow.id == call_id)).first()
        return _alarm(*found) if found else None

    def standing(self, farmer_id: int, abouts: Collection[str]) -> tuple[Alarm, ...]:
        """A farmer's alarms of these kinds that nobody has handled, the latest first."""
        wanted = _STANDING.where(CallRow.farmer_id == farmer_id, CallRow.about.in_(abouts))
        found = self._session.execute(wanted.order_by(CallRow.id.desc()))
        return tuple(_alarm(*each) for each in found)

    def any_open(self, farmer_id: int) -> bool:
        """Whether a cry of this farmer has not been seen to."""
        open_call = CallRow.id == AlarmRow.call_id, CallRow.handled_at.is_(None)
        wanted = select(AlarmRow.call_id).join(CallRow, and_(*open_call))
        mine = wanted.where(CallRow.farmer_id == farmer_id).limit(1)
        return self._session.scalar(mine) is not None

    def due(self, now: datetime) -> tuple[tuple[int, str], ...]:
        """The calls of which the next person is to be told by now, each with the phone to be
        locked first."""
        return tuple(
            (call_id, phone) for call_id, phone in self._session.execute(_DUE, {"now": now})
        )

    def change(self, call_id: int, **columns: object) -> None:
        """Sets some columns of an alarm."""
        changed = update(AlarmRow).where(AlarmRow.call_id == call_id).values(**columns)
        self._session.execute(changed)

    def reword(self, call_id: int, about: str, words: str) -> None:
        """What a call is about and its words, once more was said."""
        changed = update(CallRow).where(CallRow.id == call_id)
        self._session.execute(changed.values(about=about, words=words))

    # --- who was told ------------------------------------------------------------------------

    def add_told(
        self, call_id: int, officer_id: int, turn: int, message_id: str, at: datetime
    ) -> None:
        """An officer is told of an alarm by that text."""
        self._session.add(
            AlarmToldRow(
                call_id=call_id,
                officer_id=officer_id,
                turn=turn,
                message_id=message_id,
                at=at,
            )
        )
        self._session.flush()

    def told(self, call_ids: Collection[int]) -> tuple[AlarmTold, ...]:
        """Who was told of these, in the order of telling."""
        wanted = (
            select(AlarmToldRow, OfficerRow.name)
            .join(OfficerRow, OfficerRow.id == AlarmToldRow.officer_id)
            .where(AlarmToldRow.call_id.in_(call_ids))
            .order_by(AlarmToldRow.id)
        )
        return tuple(
            rows.value(AlarmTold, row, officer=name)
            for row, name in self._session.execute(wanted)
        )

    def told_by(self, message_id: str) -> Alarm | None:
        """The alarm that stands and that an officer's notice told of."""
        wanted = _STANDING.join(AlarmToldRow, AlarmToldRow.call_id == AlarmRow.call_id)
        found = self._session.execute(wanted.where(AlarmToldRow.message_id == message_id))
        first = found.first()
        return _alarm(*first) if first else None

    def courses(self, call_ids: Collection[int]) -> dict[int, AlarmCourse]:
        """How far the alarms among these calls have come, by call."""
        told = self.told(call_ids)
        wanted = select(AlarmRow).where(AlarmRow.call_id.in_(call_ids))
        return {
            row.call_id: rows.value(
                AlarmCourse,
                row,
                told=tuple(each for each in told if each.call_id == row.call_id),
            )
            for row in self._session.scalars(wanted)
        }


def _alarm(
    row: AlarmRow, call: CallRow, farmer: FarmerRow, nursery: NurseryRow | None
) -> Alarm:
    return rows.value(Alarm, row, call=call_of(call, farmer, nursery))


_STANDING = (
    select(AlarmRow, CallRow, FarmerRow, NurseryRow)
    .join(CallRow, CallRow.id == AlarmRow.call_id)
    .join(FarmerRow, FarmerRow.id == CallRow.farmer_id)
    .outerjoin(NurseryRow, NurseryRow.id == CallRow.nursery_id)
    .where(CallRow.handled_at.is_(None))
)
# Asked at every round: to build such a statement takes longer than to run it.
_A, _C, _F = table_of(AlarmRow), table_of(CallRow), table_of(FarmerRow)
_DUE = (
    select(_A.c.call_id, _F.c.phone)
    .join(_C, _C.c.id == _A.c.call_id)
    .join(_F, _F.c.id == _C.c.farmer_id)
    .where(_A.c.next_at <= bindparam("now", type_=UtcMoment), _C.c.handled_at.is_(None))
    .order_by(_A.c.next_at, _A.c.call_id)
)
