"""Reminders: planned rows, unique by nursery, task and day."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import date, datetime
from typing import Any, NamedTuple

from sqlalchemy import (
    BindParameter,
    Boolean,
    Integer,
    Select,
    String,
    and_,
    bindparam,
    case,
    exists,
    false,
    func,
    insert,
    literal,
    literal_column,
    or_,
    select,
    text,
    update,
)
from sqlalchemy.orm import Session

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.dangers.rows import DANGERS
from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.reminders.values import Reminder, State
from assistant.store import rows
from assistant.store.columns import UtcMoment
from assistant.store.core import changed_beside, table_of
from assistant.store.inserts import insert_missing
from assistant.store.tables import (
    FarmerRow,
    NurseryRow,
    OutboxRow,
    ReminderRow,
    VillageRow,
    WarningRow,
)

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
            table = table_of(ReminderRow)
            self._session.execute(insert(table), fresh)

    def plan_alike(self, like: int, nursery_ids: Sequence[int]) -> None:
        """Gives nurseries that have no reminders those of another, whose days lie as theirs:
        copied by the database, which is much faster than telling it each of them."""
        table = table_of(ReminderRow)
        copied = [name for name in table.c.keys() if name not in ("id", "nursery_id")]
        for start in range(0, len(nursery_ids), _AT_ONCE):
            some = nursery_ids[start : start + _AT_ONCE]
            rows_of = (
                select(NurseryRow.id, *(table.c[name] for name in copied))
                .join(table, table.c.nursery_id == like)
                .where(NurseryRow.id.in_(some))
            )
            self._session.execute(insert(table).from_select(["nursery_id", *copied], rows_of))

    def plan_beside(self, story: Iterable[Reminder], reminders: Sequence[Reminder]) -> None:
        """What `plan` does for one nursery, of which all reminders were just read."""
        kept = {(each.task, each.day): each for each in story}
        fresh, moved = [], []
        for reminder in reminders:
            before = kept.get((reminder.task, reminder.day))
            if before is None:
                fresh.append(_columns(reminder))
            elif _moves(before, reminder):
                moved.append((before, reminder))
        insert_missing(self._session, ReminderRow, fresh, _UNIQUE)
        self._move(moved)

    def _plan_again(self, reminders: Sequence[Reminder]) -> None:
        ids = sorted({each.nursery_id for each in reminders})
        found = self._reminders(_REPLANNED, {"nursery_ids": ids})
        kept = {(each.nursery_id, each.task, each.day): each for each in found}
        both = ((kept.get((each.nursery_id, each.task, each.day)), each) for each in reminders)
        self._move([(before, each) for before, each in both if before is not None])

    def _move(self, moved: Sequence[tuple[Reminder, Reminder]]) -> None:
        """Gives kept reminders the times of others; what was withdrawn is as if new."""
        given = [
            {
                "of": before.id,
                "opens": each.due_at,
                "closes": each.not_after,
                "times": 0 if before.state is State.WITHDRAWN else before.asked,
                "by": None if before.state is State.WITHDRAWN else before.message_id,
            }
            for before, each in moved
        ]
        if given:
            self._session.execute(_MOVE, given)
            changed_beside(self._session, ReminderRow, [each["of"] for each in given])

    def move_hours(
        self, zone: str, programme_zone: str, hours: Mapping[date, tuple[datetime, datetime]]
    ) -> None:
        """What is planned in the villages of a zone gets other moments of its day: when it is
        due, and until when it may leave."""
        here = func.coalesce(VillageRow.zone, programme_zone) == zone
        beds = (
            select(NurseryRow.id)
            .join(FarmerRow, FarmerRow.id == NurseryRow.farmer_id)
            .outerjoin(VillageRow, VillageRow.id == FarmerRow.village_id)
            .where(here, NurseryRow.closed.is_(False))
        )
        due, until = (
            case(
                {day: literal(pair[at], UtcMoment()) for day, pair in hours.items()},
                value=ReminderRow.day,
            )
            for at in (0, 1)
        )
        self._session.execute(
            update(ReminderRow)
            .where(
                ReminderRow.state == State.PLANNED,
                ReminderRow.day.in_(list(hours)),
                ReminderRow.nursery_id.in_(beds),
            )
            .values(due_at=due, not_after=until)
            .execution_options(synchronize_session=False)
        )

    def planned_days(self, since: date) -> tuple[date, ...]:
        """The days from one on for which something is planned."""
        wanted = select(ReminderRow.day).where(
            ReminderRow.state == State.PLANNED, ReminderRow.day >= since
        )
        return tuple(self._session.scalars(wanted.distinct()))

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

        `in_the_dry`: tasks that are left out where a warning stands that they wait for.
        """
        asked = self._session.scalars(
            self._asked.once, {"tasks": list(tasks), "now": now, "due_until": due_until}
        )
        waits_for = sorted(DANGERS.codes(lambda row: row.waits))
        given = {"now": now, "in_the_dry": list(in_the_dry), "waits_for": waits_for}
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
        self, wanted: Select[Any], ids: Sequence[int], given: dict[str, object]
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
        return self._reminders(_OF_NURSERY, {"nursery_id": nursery_id})

    def of_message(self, message_id: str) -> tuple[Reminder, ...]:
        """The reminders that a text asked for."""
        return self._reminders(_OF_MESSAGE, {"message_id": message_id})

    def to_answer(
        self, nursery_ids: Iterable[int], tasks: Iterable[TaskCode], since: date, today: date
    ) -> tuple[Reminder, ...]:
        """What was asked for these nurseries, from a day on, and has no answer, or none in
        time; and what is planned for today and not yet asked. By time."""
        given = {
            "nursery_ids": list(nursery_ids),
            "tasks": list(tasks),
            "since": since,
            "today": today,
        }
        return self._reminders(_TO_ANSWER, given)

    def sent_open(self, nursery_ids: Iterable[int]) -> tuple[Reminder, ...]:
        """What was asked for these nurseries and is not answered, the oldest first."""
        return self._reminders(_SENT_OPEN, {"nursery_ids": list(nursery_ids)})

    def by_item(self, nursery_id: int, task: TaskCode, day: date) -> Reminder | None:
        given = {"nursery_id": nursery_id, "task": task, "day": day}
        return next(iter(self._reminders(_BY_ITEM, given)), None)

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
        self._session.execute(_THESE, {"ids": moved} | given)
        changed_beside(self._session, ReminderRow, moved)

    def settle(
        self, which: tuple[int, TaskCode, date], state: State, answer: str, at: datetime
    ) -> Reminder | None:
        """What the farmer said of a task of a nursery and a day, and how it stands for that;
        the latest counts. None where there is no such reminder."""
        nursery_id, task, day = which
        key = {"of": nursery_id, "what": task, "when": day}
        given = {"state": state, "answer": answer, "answered_at": at}
        row = self._session.execute(_SETTLE, key | given).first()
        if row is None:
            return None
        changed_beside(self._session, ReminderRow, [row.id])
        return rows.reminder(row)

    def put_back(
        self, reminder_id: int, state: State, answer: str | None, at: datetime | None
    ) -> None:
        """State and answer as they were before an officer changed and undid them."""
        self._session.execute(
            update(ReminderRow)
            .where(ReminderRow.id == reminder_id)
            .values(state=state, answer=answer, answered_at=at)
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

    def _reminders(
        self, wanted: Select[Any], given: dict[str, object] | None = None
    ) -> tuple[Reminder, ...]:
        return tuple(map(rows.reminder, self._session.execute(wanted, given)))


def _moves(before: Reminder, after: Reminder) -> bool:
    """Whether a kept reminder is planned again, or for other times."""
    if before.state is State.PLANNED:
        return (before.due_at, before.not_after) != (after.due_at, after.not_after)
    return before.state is State.WITHDRAWN


def _wanted(state: State) -> Select[Any]:
    """Reminders of open nurseries of farmers who want daily texts, by phone."""
    return (
        select(_R)
        .select_from(ReminderRow)
        .join(NurseryRow, NurseryRow.id == ReminderRow.nursery_id)
        .join(FarmerRow, FarmerRow.id == NurseryRow.farmer_id)
        .where(ReminderRow.state == state, NurseryRow.closed.is_(False))
        .where(FarmerRow.stopped_at.is_(None), FarmerRow.consent_at.is_not(None))
        .where(FarmerRow.paused_at.is_(None))
        .order_by(FarmerRow.phone, ReminderRow.due_at, ReminderRow.id)
    )


def _to_ask_again() -> Select[Any]:
    held = exists().where(
        WarningRow.village_id == FarmerRow.village_id,
        WarningRow.cleared_at.is_(None),
        WarningRow.ends_at > _NOW,
        WarningRow.danger.in_(bindparam("waits_for", expanding=True)),
    )
    return (
        _wanted(State.SENT)
        .join(OutboxRow, OutboxRow.message_id == ReminderRow.message_id)
        .where(ReminderRow.id.in_(_IDS))
        .where(OutboxRow.accepted_at < _NOW)
        .where(or_(ReminderRow.task.not_in(_among("in_the_dry")), ~held))
    )


def _moment(name: str) -> BindParameter[datetime]:
    return bindparam(name, type_=UtcMoment)


def _among(name: str) -> BindParameter[TaskCode]:
    return bindparam(name, type_=ReminderRow.task.type, expanding=True)


_R = table_of(ReminderRow)
_BY_TIME = select(_R).order_by(_R.c.due_at, _R.c.id)
_OF_NURSERY = _BY_TIME.where(_R.c.nursery_id == bindparam("nursery_id"))
_OF_MESSAGE = _BY_TIME.where(_R.c.message_id == bindparam("message_id"))
_THEIRS = _R.c.nursery_id.in_(bindparam("nursery_ids", expanding=True))
_SENT_OPEN = _BY_TIME.where(_THEIRS, _R.c.state == State.SENT)
_REPLANNED = _BY_TIME.where(_THEIRS, _R.c.state.in_([State.PLANNED, State.WITHDRAWN]))
_BY_ITEM = _OF_NURSERY.where(
    _R.c.task == bindparam("task", type_=_R.c.task.type), _R.c.day == bindparam("day")
)
_TO_ANSWER = _BY_TIME.where(
    _THEIRS,
    _R.c.task.in_(bindparam("tasks", type_=_R.c.task.type, expanding=True)),
    or_(
        and_(
            _R.c.state.in_([State.SENT, State.UNANSWERED]),
            _R.c.day >= bindparam("since", type_=_R.c.day.type),
        ),
        and_(
            _R.c.state == State.PLANNED,
            _R.c.day == bindparam("today", type_=_R.c.day.type),
        ),
    ),
)
_THESE = update(_R).where(_R.c.id.in_(bindparam("ids", expanding=True)))
_SETTLE = (
    update(_R)
    .where(_R.c.nursery_id == bindparam("of"), _R.c.day == bindparam("when"))
    .where(_R.c.task == bindparam("what", type_=_R.c.task.type))
    .returning(_R)
)
_MOVE = (
    update(_R)
    .where(_R.c.id == bindparam("of"))
    .values(
        due_at=bindparam("opens"),
        not_after=bindparam("closes"),
        rests=False,
        state=State.PLANNED,
        asked=bindparam("times"),
        message_id=bindparam("by"),
    )
)
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
    due_at = literal_column("reminder.due_at", UtcMoment())
    asked = select(literal_column("reminder.id", Integer)).select_from(text(reminders))
    asked = asked.where(_SENT, _AWAKE, task.in_(_TASKS))
    return _Asked(
        before=asked.where(due_at < _moment("due_before")),
        once=asked.where(
            literal_column("reminder.asked", Integer) == 1,
            due_at <= _moment("due_until"),
            literal_column("reminder.not_after", UtcMoment()) > _NOW,
        ),
    )


# SQLite, which keeps no statistics here, would go through all that was ever sent.
_ASKED = {
    "sqlite": _asked("reminder INDEXED BY ix_reminder_asked"),
    "postgresql": _asked("reminder"),
}


def _columns(reminder: Reminder) -> dict[str, object]:
    return {name: value for name, value in vars(reminder).items() if name != "id"}
