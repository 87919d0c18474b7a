"""How the service itself runs: pulses of its parts, the line, nurseries that are set aside."""

from collections.abc import Collection, Mapping
from datetime import datetime, timedelta

from sqlalchemy import ColumnElement, bindparam, delete, func, insert, select, update
from sqlalchemy.orm import Session

from assistant.reminders.values import State
from assistant.store import rows
from assistant.store.core import change, table_of
from assistant.store.inserts import insert_missing, put
from assistant.store.tables import FarmerRow, NurseryRow, OutboxRow, ReminderRow
from assistant.store.tables_running import LineRow, PulseRow, SetAsideRow, SettingRow
from assistant.store.values import Lane, TextState
from assistant.store.values_running import Line, SetAside

LINE = "main"

LOOKED_AT = 5000  # texts, for the last receipt
PUT_OFF_AT_MOST = timedelta(minutes=10)  # by a line that takes nothing now
_COULD_LEAVE = func.coalesce(OutboxRow.waits_since, OutboxRow.due_at)


def _waits(now: datetime) -> tuple[ColumnElement[bool], ...]:
    """Texts that could have left by now, those among them that a line put off; not those that
    are held until morning."""
    return (
        OutboxRow.state.in_((TextState.WAITING, TextState.CLAIMED)),
        OutboxRow.due_at <= now + PUT_OFF_AT_MOST,
        _COULD_LEAVE <= now,
        OutboxRow.not_after > now,
    )


# Asked at every round, and as plain columns: mapped objects take three times as long.
_P, _L = table_of(PulseRow), table_of(LineRow)
_PULSE = select(_P.c.at).where(_P.c.part == bindparam("named"))
_LINE = select(_L).where(_L.c.name == bindparam("named"))
_STANDS = update(_L).where(_L.c.name == bindparam("named"))


class Running:
    def __init__(self, session: Session) -> None:
        self._session = session

    # --- pulses ------------------------------------------------------------------------------

    def beat(self, part: str, now: datetime) -> None:
        """Notes that a part of the service is alive."""
        put(self._session, PulseRow, {"part": part, "at": now})

    def pulse(self, part: str) -> datetime | None:
        """When a part was last alive; None where it never was."""
        at: datetime | None = self._session.scalar(_PULSE, {"named": part})
        return at

    def still(self, part: str) -> None:
        """A part is no more: as if it had never been alive."""
        self._session.execute(delete(PulseRow).where(PulseRow.part == part))

    def waiting_since(self, now: datetime) -> datetime | None:
        """Since when the oldest text waits that could have left; None where none does."""
        return self._session.scalar(select(func.min(_COULD_LEAVE)).where(*_waits(now)))

    def waiting(self, now: datetime) -> int:
        """How many texts wait that could leave."""
        wanted = select(func.count()).select_from(OutboxRow).where(*_waits(now))
        return self._session.scalar(wanted) or 0

    def waiting_by_lane(self, now: datetime) -> Mapping[Lane, int]:
        """How many texts wait that could leave, by lane; lanes without any are left out."""
        wanted = (
            select(OutboxRow.lane, func.count()).where(*_waits(now)).group_by(OutboxRow.lane)
        )
        return {Lane(lane): count for lane, count in self._session.execute(wanted)}

    def last_receipt(self) -> datetime | None:
        """When a text was last said to have arrived, of the last few thousand."""
        latest = select(func.max(OutboxRow.id)).scalar_subquery()
        wanted = select(func.max(OutboxRow.delivered_at)).where(
            OutboxRow.id > latest - LOOKED_AT
        )
        return self._session.scalar(wanted)

    # --- settings of the pages ---------------------------------------------------------------

    def settings(self) -> dict[str, str]:
        """What pages say of settings, by name."""
        found = self._session.scalars(select(SettingRow).order_by(SettingRow.name))
        return {row.name: row.value for row in found}

    def set(self, name: str, value: str | None) -> None:
        """A page says a setting, or says it no more."""
        row = self._session.get(SettingRow, name)
        if value is None:
            if row is not None:
                self._session.delete(row)
            return
        row = row or SettingRow(name=name)
        row.value = value
        self._session.add(row)

    # --- the line ----------------------------------------------------------------------------

    def line(self, name: str = LINE) -> Line:
        """How a line stands; the main one where there is but one, or all of them together."""
        row = self._session.execute(_LINE, {"named": name}).first()
        return rows.value(Line, row) if row else Line()

    def answered(self, now: datetime, *, took: bool, name: str = LINE) -> None:
        """The operator answered, and may have taken a text: then its pause is over."""
        columns: dict[str, object] = {"answered_at": now}
        if took:
            columns |= {"took_at": now, "rests_until": None, "rests_from": None, "said": ""}
        self._stands(name, columns)

    def rest(self, now: datetime, until: datetime, said: str, name: str = LINE) -> None:
        """The line is offered nothing from now until then, for what the operator said."""
        self._stands(name, {"rests_from": now, "rests_until": until, "said": said})

    def hold(self, why: str, now: datetime) -> None:
        """Holds all texts until a person lets them go."""
        self._stands(LINE, {"held_at": self.line().held_at or now, "held_why": why})

    def let_go(self) -> None:
        """Lets the held texts go."""
        self._stands(LINE, {"held_at": None, "held_why": ""})

    def _stands(self, name: str, columns: dict[str, object]) -> None:
        if change(self._session, _STANDS, {"named": name} | columns) == 0:
            first = {"name": name, "said": "", "held_why": ""}
            self._session.execute(insert(_L), first | columns)

    # --- rows that cannot be read ------------------------------------------------------------

    def set_aside(self, unreadable: Mapping[int, str], now: datetime) -> int:
        """Keeps which nurseries cannot be read and why; how many of them are new. What the
        clock would look for of them rests, so that they cost nothing while they stay so."""
        found = [
            {"nursery_id": nursery_id, "why": why, "since": now}
            for nursery_id, why in unreadable.items()
        ]
        self._rest(list(unreadable), rests=True)
        return insert_missing(self._session, SetAsideRow, found, [SetAsideRow.nursery_id])

    def take_up(self, nursery_ids: Collection[int]) -> None:
        """Of these nurseries, which can be read or are over, those that were set aside are so
        no more; the clock looks for them again."""
        these = SetAsideRow.nursery_id.in_(list(nursery_ids))
        gone = delete(SetAsideRow).where(these).returning(SetAsideRow.nursery_id)
        mended = list(self._session.scalars(gone))
        if mended:
            self._rest(mended, rests=False)

    def _rest(self, nursery_ids: Collection[int], *, rests: bool) -> None:
        """Reminders of these that are to come or have no answer rest, or rest no more."""
        self._session.execute(
            update(ReminderRow)
            .where(ReminderRow.nursery_id.in_(nursery_ids), ReminderRow.rests.is_(not rests))
            .where(ReminderRow.state.in_((State.PLANNED, State.SENT)))
            .values(rests=rests)
            .execution_options(synchronize_session=False)
        )

    def count_aside(self) -> int:
        """How many nurseries are set aside."""
        return self._session.scalar(select(func.count()).select_from(SetAsideRow)) or 0

    def aside(self, village_ids: Collection[int] | None = None) -> tuple[SetAside, ...]:
        """The nurseries that are set aside, the oldest first, of some villages or of all."""
        wanted = (
            select(SetAsideRow, NurseryRow.label, FarmerRow)
            .join(NurseryRow, NurseryRow.id == SetAsideRow.nursery_id)
            .join(FarmerRow, FarmerRow.id == NurseryRow.farmer_id)
            .order_by(SetAsideRow.since, SetAsideRow.nursery_id)
        )
        if village_ids is not None:
            wanted = wanted.where(FarmerRow.village_id.in_(list(village_ids)))
        return tuple(
            rows.value(
                SetAside,
                row,
                label=label,
                farmer_id=farmer.id,
                farmer=farmer.name or rows.farmer(farmer).phone,
                village_id=farmer.village_id,
            )
            for row, label, farmer in self._session.execute(wanted)
        )

    def look_over(self, after: int, limit: int) -> tuple[int, ...]:
        """Reads open nurseries by id, so that those that cannot be read come to light: the ids
        of some after one, of which the unreadable stand in the transaction's `unreadable`."""
        wanted = (
            select(NurseryRow)
            .where(NurseryRow.closed.is_(False), NurseryRow.id > after)
            .order_by(NurseryRow.id)
            .limit(limit)
        )
        found = tuple(self._session.scalars(wanted))
        for row in found:
            rows.readable(row)
        return tuple(row.id for row in found)

    def look_at_aside(self, after: int, limit: int) -> tuple[int, ...]:
        """Reads nurseries that are set aside once more, by id: the ids of some after one, of
        which those that still cannot be read stand in the transaction's `unreadable`; one that
        is over need not be."""
        wanted = (
            select(NurseryRow)
            .join(SetAsideRow, SetAsideRow.nursery_id == NurseryRow.id)
            .where(NurseryRow.id > after)
            .order_by(NurseryRow.id)
            .limit(limit)
        )
        found = tuple(self._session.scalars(wanted))
        for row in found:
            if not row.closed:
                rows.readable(row)
        return tuple(row.id for row in found)
