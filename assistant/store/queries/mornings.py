"""A morning's phones, some hundreds at a time: claimed, read and written in a constant number
of statements. Plain columns, no mapped objects: this is asked for a country each morning."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from sqlalchemy import (
    ARRAY,
    BigInteger,
    Integer,
    String,
    Table,
    and_,
    bindparam,
    exists,
    func,
    insert,
    literal_column,
    or_,
    select,
    tuple_,
    update,
)
from sqlalchemy.orm import Session

from assistant.agronomy.dangers.rows import DANGERS
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.tasks import TaskCode
from assistant.people import Farmer
from assistant.reminders.values import Reminder, State
from assistant.store import rows
from assistant.store.codec import focus_json
from assistant.store.columns import UtcMoment
from assistant.store.errors import BadRowError
from assistant.store.locks import lock_number
from assistant.store.tables import (
    FarmerRow,
    NurseryRow,
    OutboxRow,
    ReminderRow,
    VillageRow,
    WarningRow,
)
from assistant.store.values import OutboxText

# A caution that was said so lately is not said again each day. Common practice, no source: a
# text of two segments every morning is not read any more; after a week it is new.
CAUTION_LASTS = timedelta(days=6)

Mark = tuple[datetime, int]
"""How far a look has come: when the last task that it saw was due, and of which nursery."""


@dataclass(frozen=True)
class Claim:
    """Phones that are ours until the transaction ends, and how far the look has come."""

    phones: tuple[str, ...]
    mark: Mark


@dataclass(frozen=True)
class DuePhone:
    """What is needed to write to one phone: its farmer, the zone of their village (None where
    there is none) and whether a rain warning stands there; the open nurseries by label, and
    what is planned for them and due, by nursery and time; `cautioned` are the ids of those
    whose planting was asked of late, with its caution."""

    farmer: Farmer
    zone: str | None
    waits: bool
    nurseries: tuple[Nursery, ...]
    due: tuple[Reminder, ...]
    cautioned: frozenset[int] = frozenset()


@dataclass(frozen=True)
class Moved:
    """What became of a reminder that was said in a text."""

    reminder_id: int
    message_id: str
    state: State


class Mornings:
    def __init__(self, session: Session) -> None:
        self._session = session

    def is_due(self, now: datetime) -> bool:
        """Whether anything that is planned is due: one look at an index."""
        return self._session.scalar(_FIRST_DUE, {"now": now}) is not None

    def claim(self, now: datetime, after: Mark | None, most: int) -> Claim | None:
        """Takes phones for which something is due, looked for by time and nursery; by number.

        On PostgreSQL those that another transaction has are passed over without waiting, so
        that several share a morning. On SQLite there is one writer. Tasks of who wants no
        texts are laid to rest on the way, so that the next look does not see them.

        Args:
            after: where the claim before this one ended
            most: tasks that are looked at; the phones are as many or fewer

        Returns:
            None where nothing is left to look at.
        """
        given = {"now": now, "most": most}
        if after is None:
            found = self._session.execute(_CLAIM_FIRST, given).all()
        else:
            place = {"after_at": after[0], "after_id": after[1]}
            found = self._session.execute(_CLAIM_NEXT, given | place).all()
        if not found:
            return None
        unwanted = [row.id for row in found if not row.wanted]
        if unwanted:
            self._session.execute(_REST, {"ids": unwanted})
        phones = sorted({row.phone for row in found if row.wanted})
        mark = found[-1].due_at, found[-1].nursery_id
        return Claim(self._locked(phones) if phones else (), mark)

    def _locked(self, phones: Sequence[str]) -> tuple[str, ...]:
        """Those of the phones that no turn of the dialogue holds; it is waited for by none."""
        if self._session.get_bind().dialect.name != "postgresql":
            return tuple(phones)
        by_number = {lock_number(phone): phone for phone in phones}
        got = self._session.scalars(_LOCK, {"numbers": list(by_number)})
        held = {by_number[number] for number in got}
        return tuple(phone for phone in phones if phone in held)

    def read(self, phones: Sequence[str], now: datetime) -> tuple[DuePhone, ...]:
        """All that a morning needs to know of these phones, in their order. Who wants no
        texts any more is left out, and so are nurseries that cannot be read."""
        waits_for = sorted(DANGERS.codes(lambda row: row.waits))
        given = {"phones": list(phones), "now": now, "waits_for": waits_for}
        farmers = self._session.execute(_FARMERS, given).all()
        ids = [row.id for row in farmers]
        nurseries = self._nurseries(ids)
        due = self._due(nurseries, now)
        cautioned = self.cautioned([r for some in due.values() for r in some], now)
        found = {
            row.phone: DuePhone(
                farmer=rows.farmer(row),
                zone=row.zone,
                waits=row.waits,
                nurseries=tuple(nurseries.get(row.id, ())),
                due=tuple(r for n in nurseries.get(row.id, ()) for r in due.get(n.id, ())),
                cautioned=cautioned,
            )
            for row in farmers
        }
        return tuple(found[phone] for phone in phones if phone in found)

    def _nurseries(self, farmer_ids: Sequence[int]) -> dict[int, list[Nursery]]:
        known = self._session.info[rows.PRACTICES]
        found: dict[int, list[Nursery]] = {}
        for row in self._session.execute(_NURSERIES, {"farmer_ids": farmer_ids}):
            try:
                found.setdefault(row.farmer_id, []).append(rows.nursery_of(row, known))
            except BadRowError as fault:
                rows.note_unreadable(self._session, row.id, fault)
        return found

    def _due(
        self, nurseries: Mapping[int, Sequence[Nursery]], now: datetime
    ) -> dict[int, list[Reminder]]:
        ids = [each.id for some in nurseries.values() for each in some]
        found: dict[int, list[Reminder]] = {}
        for row in self._session.execute(_DUE_OF, {"nursery_ids": ids, "now": now}):
            found.setdefault(row.nursery_id, []).append(rows.value(Reminder, row))
        return found

    def cautioned(self, due: Iterable[Reminder], now: datetime) -> frozenset[int]:
        """Of nurseries whose planting is asked now, those of which it was asked, and not only
        told, some days ago."""
        ids = sorted({each.nursery_id for each in due if each.task is TaskCode.TRANSPLANT})
        if not ids:
            return frozenset()
        given = {"nursery_ids": ids, "since": now.date() - CAUTION_LASTS}
        return frozenset(self._session.scalars(_PLANTING_ASKED, given))

    def write(self, texts: Iterable[tuple[OutboxText, int | None]]) -> None:
        """Keeps new texts, each with the village that it is counted for."""
        new = [_columns(text) | {"village_id": village_id} for text, village_id in texts]
        if new:
            self._session.execute(_PUT, new)

    def said(self, moved: Sequence[Moved]) -> None:
        """Keeps in which text tasks were said for the first time."""
        if not moved:
            return
        if self._session.get_bind().dialect.name == "postgresql":
            given = {
                "ids": [each.reminder_id for each in moved],
                "texts": [each.message_id for each in moved],
                "states": [each.state.value for each in moved],
            }
            self._session.execute(_SAID_ALL, given)
        else:
            self._session.execute(
                _SAID,
                [
                    {"of": each.reminder_id, "text": each.message_id, "now_is": each.state}
                    for each in moved
                ],
            )

    def caught_up(self, times: Mapping[int, tuple[datetime, datetime]]) -> None:
        """New times [due, not after] of tasks that were missed and are said today, by id."""
        if times:
            self._session.execute(
                _CAUGHT_UP,
                [{"of": id, "opens": due, "closes": end} for id, (due, end) in times.items()],
            )

    def too_late(self, ids: Sequence[int]) -> None:
        """Gives up tasks that were missed and are not worth saying any more."""
        if ids:
            self._session.execute(_TOO_LATE, {"ids": ids})


def _table(row: type[object]) -> Table:
    table = row.__table__  # type: ignore[attr-defined]
    assert isinstance(table, Table)
    return table


def _columns(text: OutboxText) -> dict[str, object]:
    kept = {name: value for name, value in vars(text).items() if name != "id"}
    return kept | {"focus": focus_json(text.focus)}


_REMINDER, _NURSERY, _FARMER = map(_table, (ReminderRow, NurseryRow, FarmerRow))
_VILLAGE, _WARNING, _OUTBOX = map(_table, (VillageRow, WarningRow, OutboxRow))
_NOW = bindparam("now", type_=UtcMoment)
# Written out: an index of some rows is used only where it is certain that those are meant.
_PLANNED = literal_column("reminder.state", String) == literal_column("'planned'", String)
_AWAKE = and_(_PLANNED, _REMINDER.c.rests.is_(False))
_WANTS_TEXTS = (
    _FARMER.c.stopped_at.is_(None),
    _FARMER.c.paused_at.is_(None),
    _FARMER.c.consent_at.is_not(None),
)

_FIRST_DUE = (
    select(_REMINDER.c.id)
    .where(_AWAKE, _REMINDER.c.due_at <= _NOW)
    .order_by(_REMINDER.c.due_at, _REMINDER.c.nursery_id)
    .limit(1)
)
_CLAIM_FIRST = (
    select(
        _REMINDER.c.id,
        _REMINDER.c.due_at,
        _REMINDER.c.nursery_id,
        _FARMER.c.phone,
        and_(_NURSERY.c.closed.is_(False), *_WANTS_TEXTS).label("wanted"),
    )
    .join(_NURSERY, _NURSERY.c.id == _REMINDER.c.nursery_id)
    .join(_FARMER, _FARMER.c.id == _NURSERY.c.farmer_id)
    .where(_AWAKE, _REMINDER.c.due_at <= _NOW)
    .order_by(_REMINDER.c.due_at, _REMINDER.c.nursery_id)
    .limit(bindparam("most", type_=Integer))
    .with_for_update(of=_FARMER, key_share=True, skip_locked=True)
)
_CLAIM_NEXT = _CLAIM_FIRST.where(
    tuple_(_REMINDER.c.due_at, _REMINDER.c.nursery_id)
    > tuple_(bindparam("after_at", type_=UtcMoment), bindparam("after_id", type_=BigInteger))
)
_NUMBER = func.unnest(bindparam("numbers", type_=ARRAY(BigInteger))).column_valued("number")
_LOCK = select(_NUMBER).where(func.pg_try_advisory_xact_lock(_NUMBER))
_FARMERS = (
    select(
        _FARMER,
        _VILLAGE.c.zone,
        exists()
        .where(
            _WARNING.c.village_id == _FARMER.c.village_id,
            _WARNING.c.cleared_at.is_(None),
            _WARNING.c.ends_at > _NOW,
            _WARNING.c.danger.in_(bindparam("waits_for", expanding=True)),
        )
        .label("waits"),
    )
    .outerjoin(_VILLAGE, _VILLAGE.c.id == _FARMER.c.village_id)
    .where(_FARMER.c.phone.in_(bindparam("phones", expanding=True)), *_WANTS_TEXTS)
)
_NURSERIES = (
    select(_NURSERY)
    .where(_NURSERY.c.farmer_id.in_(bindparam("farmer_ids", expanding=True)))
    .where(_NURSERY.c.closed.is_(False))
    .order_by(func.length(_NURSERY.c.label), _NURSERY.c.label, _NURSERY.c.id)
)
_DUE_OF = (
    select(_REMINDER)
    .where(_REMINDER.c.nursery_id.in_(bindparam("nursery_ids", expanding=True)))
    .where(_PLANNED, _REMINDER.c.due_at <= _NOW)
    .order_by(_REMINDER.c.due_at, _REMINDER.c.id)
)
_PLANTING_ASKED = (
    select(_REMINDER.c.nursery_id)
    .where(_REMINDER.c.nursery_id.in_(bindparam("nursery_ids", expanding=True)))
    .where(_REMINDER.c.task == TaskCode.TRANSPLANT, _REMINDER.c.asked > 0)
    .where(_REMINDER.c.day >= bindparam("since"))
    .where(or_(_REMINDER.c.state != State.NOT_YET, _REMINDER.c.answer.is_not(None)))
    .distinct()
)
_PUT = insert(_OUTBOX)
_OF = _REMINDER.c.id == bindparam("of")
_SAID = (
    update(_REMINDER)
    .where(_OF)
    .values(state=bindparam("now_is"), asked=1, message_id=bindparam("text"))
)
_TOLD = (
    func.unnest(
        bindparam("ids", type_=ARRAY(BigInteger)),
        bindparam("texts", type_=ARRAY(String)),
        bindparam("states", type_=ARRAY(String)),
    )
    .table_valued("id", "by", "state", name="told")
    .render_derived()
)
_SAID_ALL = (
    update(_REMINDER)
    .where(_REMINDER.c.id == _TOLD.c.id)
    .values(state=_TOLD.c.state, asked=1, message_id=_TOLD.c.by)
)
_CAUGHT_UP = (
    update(_REMINDER)
    .where(_OF)
    .values(due_at=bindparam("opens"), not_after=bindparam("closes"))
)
_REST = (
    update(_REMINDER)
    .where(_REMINDER.c.id.in_(bindparam("ids", expanding=True)))
    .values(rests=True)
)
_TOO_LATE = (
    update(_REMINDER)
    .where(_REMINDER.c.id.in_(bindparam("ids", expanding=True)))
    .values(state=State.TOO_LATE)
)
