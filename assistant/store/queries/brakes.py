"""What stops texts, and what was spent."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import bindparam, func, or_, select, update
from sqlalchemy.orm import Session

from assistant.dialogue.values import Kind
from assistant.store import rows
from assistant.store.columns import UtcMoment
from assistant.store.core import table_of
from assistant.store.inserts import insert_missing
from assistant.store.tables import OutboxRow
from assistant.store.tables_brakes import BrakeRow, SpentRow, VillageSpentRow
from assistant.store.tables_broadcasts import BroadcastPhoneRow, BroadcastRow
from assistant.store.tables_people import EnrolmentRow
from assistant.store.values import Lane, TextState


@dataclass(frozen=True)
class Brake:
    """One thing that stops texts; see `BrakeRow`."""

    id: int
    what: str
    which: str
    village_id: int | None
    why: str
    officer_id: int | None
    at: datetime
    until: datetime | None
    let_go_at: datetime | None


@dataclass(frozen=True)
class Stops:
    """What may not leave now. Dangers leave all the same: a warning, an all-clear, an answer to
    a cry or to STOP; while all texts are held, those that were written since."""

    everything: bool = False
    kinds: frozenset[Kind] = frozenset()
    villages: frozenset[int] = frozenset()
    held_at: datetime | None = None

    def __bool__(self) -> bool:
        return bool(self.everything or self.kinds or self.villages or self.held_at)


# Asked before all texts that leave: to build such a statement takes longer than to run it.
_B, _S = table_of(BrakeRow), table_of(SpentRow)
_STANDING = (
    select(_B)
    .where(
        _B.c.let_go_at.is_(None),
        or_(_B.c.until.is_(None), _B.c.until > bindparam("now", type_=UtcMoment)),
    )
    .order_by(_B.c.id)
)
_SPEND = (
    update(_S)
    .where(_S.c.day == bindparam("on"))
    .values(segments=_S.c.segments + bindparam("more"))
)
_V = table_of(VillageSpentRow)
_SPEND_V = (
    update(_V)
    .where(_V.c.village_id == bindparam("at"), _V.c.day == bindparam("on"))
    .values(segments=_V.c.segments + bindparam("more"))
)


_O = table_of(OutboxRow)
_STRANGERS = select(func.count()).where(
    _O.c.village_id.is_(None),
    _O.c.due_at > bindparam("since", type_=UtcMoment),  # an answer is due when it is written
    _O.c.kind == Kind.REPLY,
    _O.c.lane != Lane.DANGER,
)


class Brakes:
    def __init__(self, session: Session) -> None:
        self._session = session

    def put_on(self, brake: Brake) -> None:
        """From now on; its id is not yet one."""
        columns = {name: value for name, value in vars(brake).items() if name != "id"}
        self._session.add(BrakeRow(**columns))
        self._session.flush()

    def let_go(self, brake_id: int, now: datetime) -> bool:
        """Lets go; whether it stood."""
        row = self._session.get(BrakeRow, brake_id)
        if row is None or row.let_go_at is not None:
            return False
        row.let_go_at = now
        self._session.flush()
        return True

    def standing(self, now: datetime) -> tuple[Brake, ...]:
        """Those that stand, the first first."""
        found = self._session.execute(_STANDING, {"now": now})
        return tuple(rows.value(Brake, row) for row in found)

    def was_reached(self, what: str, which: str) -> bool:
        """Whether a limit stopped texts in a period already, also where it was let go."""
        wanted = select(BrakeRow.id).where(BrakeRow.what == what, BrakeRow.which == which)
        return self._session.scalar(wanted.limit(1)) is not None

    def was_let_go(self, what: str, which: str) -> bool:
        """Whether a lead said of a limit in a period that it holds no more."""
        wanted = select(BrakeRow.id).where(BrakeRow.what == what, BrakeRow.which == which)
        wanted = wanted.where(BrakeRow.let_go_at.is_not(None))
        return self._session.scalar(wanted.limit(1)) is not None

    def strangers_answered(self, since: datetime) -> int:
        """Answers written since a time to phones that belong to no village, but for those of
        danger; who signs up is counted for the village from then on, and no more here."""
        return self._session.scalar(_STRANGERS, {"since": since}) or 0

    def spend(self, day: date, segments: int) -> None:
        """The operator took so much."""
        insert_missing(self._session, SpentRow, [{"day": day, "segments": 0}], [SpentRow.day])
        self._session.execute(_SPEND, {"on": day, "more": segments})

    def spent(self, first: date, last: date) -> int:
        """Segments from one day to another."""
        wanted = select(func.sum(SpentRow.segments)).where(SpentRow.day.between(first, last))
        return self._session.scalar(wanted) or 0

    def spend_villages(self, message_ids: Collection[str], day: date) -> tuple[int, ...]:
        """The operator took these texts; the villages that they went to."""
        wanted = (
            select(OutboxRow.village_id, func.sum(OutboxRow.segments))
            .where(OutboxRow.message_id.in_(message_ids), OutboxRow.village_id.is_not(None))
            .group_by(OutboxRow.village_id)
            .order_by(OutboxRow.village_id)  # two that count wait for each other in one order
        )
        found = [(place, int(n)) for place, n in self._session.execute(wanted) if place]
        for village_id, count in found:
            row = {"village_id": village_id, "day": day, "segments": 0}
            keys = [VillageSpentRow.village_id, VillageSpentRow.day]
            insert_missing(self._session, VillageSpentRow, [row], keys)
            self._session.execute(_SPEND_V, {"at": village_id, "on": day, "more": count})
        return tuple(village_id for village_id, _ in found)

    def spent_villages(
        self, village_ids: Iterable[int], first: date, last: date
    ) -> dict[int, int]:
        """Segments of villages from one day to another."""
        wanted = (
            select(VillageSpentRow.village_id, func.sum(VillageSpentRow.segments))
            .where(VillageSpentRow.village_id.in_(list(village_ids)))
            .where(VillageSpentRow.day.between(first, last))
            .group_by(VillageSpentRow.village_id)
        )
        found = self._session.execute(wanted)
        return {place: int(count) for place, count in found}

    def written_by(self, officer_id: int, since: datetime) -> int:
        """Phones to which an officer's letters to many and invitations went since a time."""
        letters = (
            select(func.count())
            .select_from(BroadcastPhoneRow)
            .join(BroadcastRow, BroadcastRow.id == BroadcastPhoneRow.broadcast_id)
            .where(BroadcastRow.made_by == officer_id, BroadcastRow.sent_at >= since)
        )
        invited = select(func.count()).where(
            EnrolmentRow.officer_id == officer_id, EnrolmentRow.at >= since
        )
        return sum(self._session.scalar(each) or 0 for each in (letters, invited))

    def dangers_waiting(self, now: datetime) -> int:
        """Texts of danger that are about to leave: no brake holds them."""
        wanted = select(func.count()).where(
            OutboxRow.state == TextState.WAITING,
            OutboxRow.lane == Lane.DANGER,
            OutboxRow.due_at <= now,
            OutboxRow.not_after > now,
        )
        return self._session.scalar(wanted) or 0
