"""Reminders: planned rows, unique by nursery, task and day."""

from collections.abc import Collection, Iterable, Sequence
from datetime import date, datetime
from typing import NamedTuple, cast

from sqlalchemy import (
    BindParameter,
    Boolean,
    Integer,
    Select,
    String,
    Table,
    bindparam,
    exists,
    false,
    insert,
    literal_column,
    or_,
    select,
    text,
    update,
)
from sqlalchemy.orm import Session

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.reminders.values import Reminder, State
from assistant.store import rows
from assistant.store.columns import Moment
from assistant.store.inserts import insert_missing
from assistant.store.tables import FarmerRow, NurseryRow, OutboxRow, ReminderRow, WarningRow

_AT_ONCE = 500  # ids in one statement
_UNIQUE = [ReminderRow.nursery_id, ReminderRow.task, ReminderRow.day]


class Reminders:
    def __init__(self, session: Session) -> None:
        self._session = session

    def plan(self, reminders: Sequence[Reminder]) -> int:
        """Keeps those that are not there yet, and says how many those were.

        One that was withdrawn is planned again; one still planned takes the new times. What
        was asked already is left as it is.
        """
        ordered = sorted(reminders, key=lambda each: (each.nursery_id, each.task, each.day))
        fresh = [_columns(reminder) for reminder in ordered]
        added = insert_missing(self._session, ReminderRow, fresh, _UNIQUE)
        if added < len(ordered):
            self._plan_again(ordered)
        return added

    def plan_new(self, reminders: Iterable[Reminder]) -> None:
        """Keeps the reminders of nurseries that have none yet, many at once."""
        fresh = [_columns(reminder) for reminder in reminders]
        if fresh:
            table = cast(Table, ReminderRow.__table__)
            self._session.execute(insert(table), fresh)

    def plan_alike(self, like: int, nursery_ids: Sequence[int]) -> None:
        """Gives nurseries that have no reminders those of another, whose days lie as theirs:
        copied by the database, which is much faster than telling it each of them."""
        table = cast(Table, ReminderRow.__table__)
        copied = [name for name in table.c.keys() if name not in ("id", "nursery_id")]
        for start in range(0, len(nursery_ids), _AT_ONCE):
            some = nursery_ids[start : start + _AT_ONCE]
            rows_of = (
                select(NurseryRow.id, *(table.c[name] for name in copied))
                .join(table, table.c.nursery_id == like)
                .where(NurseryRow.id.in_(some))
            )
            self._session.execute(insert(table).from_select(["nursery_id", *copied], rows_of))

    def _plan_again(self, reminders: Sequence[Reminder]) -> None:
        found = self._session.scalars(
            select(ReminderRow).where(
                ReminderRow.nursery_id.in_({each.nursery_id for each in reminders}),
                ReminderRow.state.in_([State.PLANNED, State.WITHDRAWN]),
            )
        )
        kept = {(row.nursery_id, row.task, row.day): row for row in found}
        for reminder in reminders:
            row = kept.get((reminder.nursery_id, reminder.task, reminder.day))
            if row is None:
                continue
            row.due_at, row.not_after = reminder.due_at, reminder.not_after
            row.rests = False
            if row.state is State.WITHDRAWN:
                row.state, row.asked, row.message_id = State.PLANNED, 0, None

    def withdraw_planned(
        self,
        nursery_id: int,
        keep: Collection[tuple[TaskCode, date]] = (),
        *,
        sent_too: bool = False,
    ) -> int:
        """Withdraws a nursery's planned reminders but for those kept; how many those were.

        `sent_too`: also those that were asked and not answered.
        """
        states = [State.PLANNED, State.SENT] if sent_too else [State.PLANNED]
        found = self._session.scalars(
            select(ReminderRow).where(
                ReminderRow.nursery_id == nursery_id, ReminderRow.state.in_(states)
            )
        )
        dropped = [row for row in found if (row.task, row.day) not in keep]
        for row in dropped:
            row.state = State.WITHDRAWN
        self._session.flush()
        return len(dropped)

    def due(self, now: datetime, nursery_id: int | None = None) -> tuple[Reminder, ...]:
        """Planned reminders whose time has come, by phone, of farmers who want texts: all, or
        those of one nursery."""
        if nursery_id is None:
            return self._reminders(_DUE, {"now": now})
        return self._reminders(_DUE_OF_ONE, {"now": now, "nursery_id": nursery_id})

    def phones_due(self, now: datetime) -> tuple[str, ...]:
        """The phones that `due` has something for, to be locked and served one by one."""
        return tuple(self._session.scalars(_PHONES_DUE, {"now": now}))

    def to_ask_again(
        self,
        tasks: Iterable[TaskCode],
        now: datetime,
        due_until: datetime,
        in_the_dry: Iterable[TaskCode] = (),
    ) -> tuple[Reminder, ...]:
        """Reminders of these tasks that were asked once, due until a time, by a text that has
        gone out, and can still be answered; of farmers who want texts, by phone.

        `in_the_dry`: tasks that are left out where a rain warning stands.
        """
        asked = self._session.scalars(
            self._asked.once, {"tasks": list(tasks), "now": now, "due_until": due_until}
        )
        given = {"now": now, "in_the_dry": list(in_the_dry)}
        return self._those(_TO_ASK_AGAIN, list(asked), given)

    def unanswered(
        self, tasks: Iterable[TaskCode], due_before: datetime
    ) -> tuple[Reminder, ...]:
        """Reminders of these tasks, due before a time, that were asked and not answered; of
        farmers who want texts. Those of the others are laid to rest."""
        given = {"tasks": list(tasks), "due_before": due_before}
        asked = list(self._session.scalars(self._asked.before, given))
        found = self._those(_UNANSWERED, asked, {})
        self._rest(set(asked) - {each.id for each in found})
        return found

    @property
    def _asked(self) -> "_Asked":
        return _ASKED[self._session.get_bind().dialect.name]

    def _those(
        self, wanted: Select[ReminderRow], ids: Sequence[int], given: dict[str, object]
    ) -> tuple[Reminder, ...]:
        """Those of the reminders that are wanted, some hundreds of ids in a statement: the
        databases then never read a whole table for a few of them."""
        found: list[Reminder] = []
        for start in range(0, len(ids), _AT_ONCE):
            some = given | {"ids": ids[start : start + _AT_ONCE]}
            found += self._reminders(wanted, some)
        return tuple(found)

    def _rest(self, ids: Collection[int]) -> None:
        """Lays those to rest whose farmers want no texts. The farmers are locked, so that
        nobody who wants them again meanwhile is passed over."""
        ordered = sorted(ids)
        for start in range(0, len(ordered), _AT_ONCE):
            some = {"ids": ordered[start : start + _AT_ONCE]}
            unwanted = list(self._session.scalars(_UNWANTED, some))
            if unwanted:
                these = update(ReminderRow).where(ReminderRow.id.in_(unwanted))
                self._session.execute(these.values(rests=True))

    def of_nursery(self, nursery_id: int) -> tuple[Reminder, ...]:
        """All reminders of a nursery by time."""
        return self._reminders(_by_time().where(ReminderRow.nursery_id == nursery_id))

    def of_message(self, message_id: str) -> tuple[Reminder, ...]:
        """The reminders that a text asked for."""
        return self._reminders(_by_time().where(ReminderRow.message_id == message_id))

    def unsettled(
        self, nursery_ids: Iterable[int], tasks: Iterable[TaskCode], since: date
    ) -> tuple[Reminder, ...]:
        """What was asked for these nurseries, from a day on, and has no answer, or none in
        time; by time."""
        return self._reminders(
            _by_time().where(
                ReminderRow.nursery_id.in_(list(nursery_ids)),
                ReminderRow.state.in_([State.SENT, State.UNANSWERED]),
                ReminderRow.task.in_(list(tasks)),
                ReminderRow.day >= since,
            )
        )

    def planned_on(
        self, nursery_ids: Iterable[int], tasks: Iterable[TaskCode], day: date
    ) -> tuple[Reminder, ...]:
        """What is planned for these nurseries on a day and not yet asked; by time."""
        return self._reminders(
            _by_time().where(
                ReminderRow.nursery_id.in_(list(nursery_ids)),
                ReminderRow.state == State.PLANNED,
                ReminderRow.task.in_(list(tasks)),
                ReminderRow.day == day,
            )
        )

    def sent_open(self, nursery_ids: Iterable[int]) -> tuple[Reminder, ...]:
        """What was asked for these nurseries and is not answered, the oldest first."""
        return self._reminders(
            _by_time().where(
                ReminderRow.nursery_id.in_(list(nursery_ids)), ReminderRow.state == State.SENT
            )
        )

    def by_item(self, nursery_id: int, task: TaskCode, day: date) -> Reminder | None:
        row = self._row(nursery_id, task, day)
        return rows.reminder(row) if row else None

    def set_state(
        self,
        ids: Iterable[int],
        state: State,
        message_id: str | None = None,
        asked: int | None = None,
    ) -> None:
        """Moves reminders on; what is not given stays."""
        moved = list(ids)
        if not moved:
            return
        columns = {"state": state, "message_id": message_id, "asked": asked}
        given = {name: value for name, value in columns.items() if value is not None}
        self._session.execute(
            update(ReminderRow).where(ReminderRow.id.in_(moved)).values(**given)
        )

    def keep_answer(self, reminder_id: int, answer: str, at: datetime) -> None:
        """What the farmer said of a task; the latest answer counts."""
        self._session.execute(
            update(ReminderRow)
            .where(ReminderRow.id == reminder_id)
            .values(answer=answer, answered_at=at)
        )

    def open_for_officer(
        self, village_ids: Collection[int]
    ) -> tuple[tuple[Farmer, Nursery, Reminder], ...]:
        """What was asked in these villages and never answered, the latest first."""
        found = self._session.execute(
            select(FarmerRow, NurseryRow, ReminderRow)
            .join(NurseryRow, NurseryRow.farmer_id == FarmerRow.id)
            .join(ReminderRow, ReminderRow.nursery_id == NurseryRow.id)
            .where(FarmerRow.village_id.in_(village_ids), NurseryRow.closed.is_(False))
            .where(ReminderRow.state == State.UNANSWERED)
            .order_by(ReminderRow.day.desc(), ReminderRow.due_at.desc(), ReminderRow.id)
        )
        return tuple(
            (rows.farmer(farmer), nursery, rows.reminder(reminder))
            for (farmer, _, reminder), nursery in rows.sound(found)
        )

    def _row(self, nursery_id: int, task: TaskCode, day: date) -> ReminderRow | None:
        return self._session.scalar(
            _by_time().where(
                ReminderRow.nursery_id == nursery_id,
                ReminderRow.task == task,
                ReminderRow.day == day,
            )
        )

    def _reminders(
        self, wanted: Select[ReminderRow], given: dict[str, object] | None = None
    ) -> tuple[Reminder, ...]:
        return tuple(map(rows.reminder, self._session.scalars(wanted, given)))


def _by_time() -> Select[ReminderRow]:
    return select(ReminderRow).order_by(ReminderRow.due_at, ReminderRow.id)


def _wanted(state: State) -> Select[ReminderRow]:
    """Reminders of open nurseries of farmers who want daily texts, by phone."""
    return (
        select(ReminderRow)
        .join(NurseryRow, NurseryRow.id == ReminderRow.nursery_id)
        .join(FarmerRow, FarmerRow.id == NurseryRow.farmer_id)
        .where(ReminderRow.state == state, NurseryRow.closed.is_(False))
        .where(FarmerRow.stopped_at.is_(None), FarmerRow.consent_at.is_not(None))
        .where(FarmerRow.paused_at.is_(None))
        .order_by(FarmerRow.phone, ReminderRow.due_at, ReminderRow.id)
    )


def _to_ask_again() -> Select[ReminderRow]:
    rain = exists().where(
        WarningRow.village_id == FarmerRow.village_id,
        WarningRow.cleared_at.is_(None),
        WarningRow.ends_at > _NOW,
    )
    return (
        _wanted(State.SENT)
        .join(OutboxRow, OutboxRow.message_id == ReminderRow.message_id)
        .where(ReminderRow.id.in_(_IDS))
        .where(OutboxRow.accepted_at < _NOW)
        .where(or_(ReminderRow.task.not_in(_among("in_the_dry")), ~rain))
    )


def _moment(name: str) -> BindParameter[datetime]:
    return bindparam(name, type_=Moment)


def _among(name: str) -> BindParameter[TaskCode]:
    return bindparam(name, type_=ReminderRow.task.type, expanding=True)


# Asked at every round: to build such a statement takes longer than to run it.
_NOW, _TASKS = _moment("now"), _among("tasks")
_IDS: BindParameter[int] = bindparam("ids", expanding=True)
_DUE = _wanted(State.PLANNED).where(ReminderRow.due_at <= _NOW)
_DUE_OF_ONE = _DUE.where(ReminderRow.nursery_id == bindparam("nursery_id"))
_PHONES_DUE = (
    _DUE.with_only_columns(FarmerRow.phone).order_by(None).order_by(FarmerRow.phone).distinct()
)
_TO_ASK_AGAIN = _to_ask_again()
_UNANSWERED = _wanted(State.SENT).where(ReminderRow.id.in_(_IDS))
_UNWANTED = (
    select(ReminderRow.id)
    .join(NurseryRow, NurseryRow.id == ReminderRow.nursery_id)
    .join(FarmerRow, FarmerRow.id == NurseryRow.farmer_id)
    .where(ReminderRow.id.in_(_IDS))
    .where(
        or_(
            NurseryRow.closed.is_(True),
            FarmerRow.stopped_at.is_not(None),
            FarmerRow.paused_at.is_not(None),
            FarmerRow.consent_at.is_(None),
        )
    )
    .with_for_update(of=FarmerRow, key_share=True, skip_locked=True)
)
# Written out: an index of some rows is used only where it is certain that those are meant.
_SENT = literal_column("reminder.state", String) == literal_column("'sent'", String)
_AWAKE = literal_column("reminder.rests", Boolean).is_(false())


class _Asked(NamedTuple):
    """What was asked and has no answer, by the index that holds nothing else: all of it before
    a time, and what was asked once until a time and can still be answered."""

    before: Select[int]
    once: Select[int]


def _asked(reminders: str) -> _Asked:
    """The statements, from the table as a database must be told of it."""
    task = literal_column("reminder.task", ReminderRow.task.type)
    due_at = literal_column("reminder.due_at", Moment())
    asked = select(literal_column("reminder.id", Integer)).select_from(text(reminders))
    asked = asked.where(_SENT, _AWAKE, task.in_(_TASKS))
    return _Asked(
        before=asked.where(due_at < _moment("due_before")),
        once=asked.where(
            literal_column("reminder.asked", Integer) == 1,
            due_at <= _moment("due_until"),
            literal_column("reminder.not_after", Moment()) > _NOW,
        ),
    )


# SQLite, which keeps no statistics here, would go through all that was ever sent.
_ASKED = {
    "sqlite": _asked("reminder INDEXED BY ix_reminder_asked"),
    "postgresql": _asked("reminder"),
}


def _columns(reminder: Reminder) -> dict[str, object]:
    return {name: value for name, value in vars(reminder).items() if name != "id"}
