"""Several lines: who wrote by which, what went by which and how its parts fared, whose the
connections are."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from sqlalchemy import ColumnElement, and_, delete, func, insert, or_, select, update
from sqlalchemy.orm import Session

from assistant.channel import Fate, Receipt
from assistant.dialogue.values import Kind
from assistant.store.core import table_of
from assistant.store.inserts import insert_missing
from assistant.store.tables import OutboxRow
from assistant.store.tables_lines import HeardByRow, OwnerRow, PartRow
from assistant.store.values import TextState

CONNECTIONS = "connections"
TURNS = "turns of {}"
_ADD_PART = insert(table_of(PartRow))
RECEIPT_FIRST = timedelta(hours=1)  # how long before its hand-over a receipt may have come
UNTOLD_AFTER = timedelta(hours=1)
WAITED_MOST = timedelta(days=10)  # between the hour a text is due and its end
LONGEST_WAIT = timedelta(minutes=16)  # between two tries, and a little
# Good enough in the morning, where they are not urgent; a prompt ends with its day, an answer
# was asked for.
NEVER_AT_NIGHT = frozenset({Kind.NOTICE, Kind.LETTER, Kind.CONSENT})
CLOCKS_APART = timedelta(seconds=30)
PARTS_LAST = timedelta(days=8)  # an operator tries for three days at most; receipts come late


def _too_long(now: datetime) -> tuple[ColumnElement[bool], ...]:
    tried = and_(OutboxRow.attempts > 0, OutboxRow.kind.not_in(NEVER_AT_NIGHT))
    return (
        OutboxRow.state == TextState.WAITING,
        OutboxRow.due_at > now + LONGEST_WAIT,
        or_(OutboxRow.waits_since.is_not(None), tried),
    )


@dataclass(frozen=True)
class Settled:
    """What the receipts of all parts of a text come to."""

    message_id: str
    fate: Fate
    at: datetime
    detail: str

    @property
    def receipt(self) -> Receipt:
        """As one of the text."""
        return Receipt(self.message_id, self.fate, self.at, self.detail)


@dataclass(frozen=True)
class Fared:
    """What receipts tell of a line today: when a text last arrived; how many it took an hour
    ago or more of which none has told; those that were lost, by why."""

    arrived_at: datetime | None = None
    untold: int = 0
    lost: tuple[tuple[str, int], ...] = ()


class LineQueries:
    def __init__(self, session: Session) -> None:
        self._session = session

    # --- who wrote by which ------------------------------------------------------------------

    def heard(self, phone: str, line: str, now: datetime) -> None:
        """A phone wrote by a line."""
        row = self._session.get(HeardByRow, phone) or HeardByRow(phone=phone)
        row.line, row.at = line, now
        self._session.add(row)

    def heard_by(self, phones: Collection[str]) -> Mapping[str, str]:
        """The lines by which these phones last wrote."""
        wanted = select(HeardByRow.phone, HeardByRow.line)
        found = self._session.execute(wanted.where(HeardByRow.phone.in_(phones)))
        return {phone: line for phone, line in found}

    # --- what went by which ------------------------------------------------------------------

    def took(self, message_ids: Collection[str], line: str) -> None:
        """These texts went by a line, or were refused by it."""
        these = OutboxRow.message_id.in_(message_ids)
        self._session.execute(
            update(OutboxRow)
            .where(these)
            .values(line=line)
            .execution_options(synchronize_session=False)
        )

    def put_off(self, message_ids: Collection[str], until: datetime, why: str = "") -> None:
        """Claimed texts that no line takes now wait until then; it counts as no try. Since when
        they could have left is kept, and why they did not, where that is known."""
        self._wait(
            message_ids,
            due_at=until,
            waits_since=func.coalesce(OutboxRow.waits_since, OutboxRow.due_at),
            detail=why or OutboxRow.detail,
        )

    def stay(self, message_ids: Collection[str], why: str) -> None:
        """Claimed texts that met a line which is away or busy: they wait in their places, and
        it counts as no try."""
        self._wait(
            message_ids,
            waits_since=func.coalesce(OutboxRow.waits_since, OutboxRow.due_at),
            detail=why,
        )

    def waits_too_long(self, now: datetime) -> bool:
        """Whether a text is to wait for longer than any pause or try lasts, which a clock that
        was wrong made of it."""
        wanted = select(OutboxRow.id).where(*_too_long(now)).limit(1)
        return self._session.scalar(wanted) is not None

    def let_leave(self, now: datetime) -> int:
        """Lets those texts leave; how many they were."""
        freed = self._session.scalars(
            update(OutboxRow)
            .where(*_too_long(now))
            .values(due_at=now)
            .returning(OutboxRow.id)
            .execution_options(synchronize_session=False)
        )
        return len(freed.all())

    def doubt(self, message_ids: Collection[str], now: datetime) -> None:
        """These texts may have left, though nobody said so: phones may show them."""
        self._session.execute(
            update(OutboxRow)
            .where(OutboxRow.message_id.in_(message_ids))
            .values(doubted_at=now)
            .execution_options(synchronize_session=False)
        )

    def hold(self, message_ids: Collection[str], until: datetime) -> None:
        """Claimed texts that are not to leave before then: nothing keeps them but the hour."""
        self._wait(message_ids, due_at=until, waits_since=None)

    def _wait(self, message_ids: Collection[str], **columns: object) -> None:
        held = and_(OutboxRow.state == TextState.CLAIMED, OutboxRow.message_id.in_(message_ids))
        self._session.execute(
            update(OutboxRow)
            .where(held)
            .values(state=TextState.WAITING, lease_until=None, **columns)
            .execution_options(synchronize_session=False)
        )

    def used(self, line: str, since: datetime) -> int:
        """Segments that a line took since then."""
        wanted = select(func.coalesce(func.sum(OutboxRow.segments), 0)).where(
            OutboxRow.line == line, OutboxRow.accepted_at >= since
        )
        return int(self._session.scalar(wanted) or 0)

    def used_by_all(self, since: datetime) -> int:
        """Segments that were taken since then, by whatever line."""
        wanted = select(func.coalesce(func.sum(OutboxRow.segments), 0)).where(
            OutboxRow.accepted_at >= since
        )
        return int(self._session.scalar(wanted) or 0)

    def fared(self, line: str | None, since: datetime, now: datetime) -> Fared:
        """What receipts tell of a line since then; None: of all together."""
        taken = [OutboxRow.accepted_at >= since]
        taken += [OutboxRow.line == line] if line is not None else []
        late = OutboxRow.accepted_at <= now - UNTOLD_AFTER
        ended = func.coalesce(OutboxRow.accepted_at, OutboxRow.ended_at) >= since  # or refused
        lately = OutboxRow.due_at >= since - WAITED_MOST  # what the index is ordered by
        lost = select(OutboxRow.detail, func.count()).where(
            ended,
            lately,
            *taken[1:],
            OutboxRow.state.in_((TextState.FAILED, TextState.EXPIRED)),
        )
        found = self._session.execute(
            lost.group_by(OutboxRow.detail).order_by(func.count().desc(), OutboxRow.detail)
        )
        return Fared(
            self._session.scalar(select(func.max(OutboxRow.delivered_at)).where(*taken)),
            self._session.scalar(
                select(func.count()).where(*taken, late, OutboxRow.state == TextState.ACCEPTED)
            )
            or 0,
            tuple((detail, count) for detail, count in found),
        )

    def wished(self, message_ids: Collection[str]) -> Mapping[str, str]:
        """The lines by which alone these texts are to go, though none took them yet."""
        wanted = select(OutboxRow.message_id, OutboxRow.line).where(
            OutboxRow.message_id.in_(message_ids), OutboxRow.line.is_not(None)
        )
        return {message_id: line for message_id, line in self._session.execute(wanted) if line}

    # --- parts -------------------------------------------------------------------------------

    def keep_parts(
        self, line: str, parts: Iterable[str], message_id: str, now: datetime
    ) -> Settled | None:
        """Keeps the operator's ids of a text's segments; what it comes to, where the receipts
        were faster than the hand-over."""
        return next(iter(self.keep_all(line, {message_id: tuple(parts)}, now)), None)

    def keep_all(
        self, line: str, parts: Mapping[str, Sequence[str]], now: datetime
    ) -> tuple[Settled, ...]:
        """Keeps the operator's ids of several texts, by our own; those that faster receipts
        have settled already."""
        of = {part: message_id for message_id, ids in parts.items() for part in ids}
        early = self._early(line, of, now)
        for row in early.values():
            row.message_id = of[row.part]
        new = [
            {"line": line, "part": part, "message_id": message_id, "at": now, "detail": ""}
            for part, message_id in of.items()
            if part not in early
        ]
        self._session.flush()
        if new:
            self._session.execute(_ADD_PART, new)
        settled = (self._settled(each) for each in {of[part] for part in early})
        return tuple(each for each in settled if each is not None)

    def _early(self, line: str, of: Mapping[str, str], now: datetime) -> dict[str, PartRow]:
        """Receipts of these parts that came before their hand-over, the latest of each."""
        rows = self._session.scalars(
            select(PartRow)
            .where(PartRow.line == line, PartRow.part.in_(of))
            .where(PartRow.message_id.is_(None), PartRow.at >= now - RECEIPT_FIRST)
            .order_by(PartRow.id)
        )
        return {row.part: row for row in rows}

    def settle(
        self, line: str, part: str, fate: Fate, at: datetime, detail: str
    ) -> Settled | None:
        """What the receipt of a part makes of its text: all parts arrived, or one that never
        will; None while others are out, or where the part is not known (it is then kept, for
        a hand-over that is about to be written down)."""
        row = self._session.scalar(
            select(PartRow)
            .where(PartRow.line == line, PartRow.part == part)
            .order_by(PartRow.id.desc())  # an operator may count anew: the latest is meant
            .limit(1)
        )
        if row is None:
            row = PartRow(line=line, part=part)
        row.fate, row.at, row.detail = fate, at, detail
        self._session.add(row)
        self._session.flush()
        return self._settled(row.message_id) if row.message_id else None

    def _settled(self, message_id: str) -> Settled | None:
        rows = list(
            self._session.scalars(select(PartRow).where(PartRow.message_id == message_id))
        )
        for lost in (Fate.FAILED, Fate.EXPIRED):
            gone = next((row for row in rows if row.fate == lost), None)
            if gone is not None:
                return Settled(message_id, lost, gone.at, gone.detail)
        if rows and all(row.fate == Fate.DELIVERED for row in rows):
            return Settled(message_id, Fate.DELIVERED, max(row.at for row in rows), "")
        return None

    def forget_parts(self, now: datetime) -> int:
        """Lets go of parts that no receipt will name any more; how many those were."""
        old = PartRow.at < now - PARTS_LAST
        gone = self._session.scalars(delete(PartRow).where(old).returning(PartRow.id))
        return len(gone.all())

    # --- turns -------------------------------------------------------------------------------

    def turns_taken_until(self, line: str, now: datetime) -> datetime:
        """Until when turns of a line were taken, by whatever process. Lock the line first."""
        first = [{"name": TURNS.format(line), "owner": "", "until": now}]
        insert_missing(self._session, OwnerRow, first, [OwnerRow.name])
        row = self._session.get(OwnerRow, TURNS.format(line), populate_existing=True)
        assert row is not None
        return row.until

    def take_turns(self, line: str, until: datetime) -> None:
        """A process takes the turns of a line until then."""
        self._session.execute(
            update(OwnerRow)
            .where(OwnerRow.name == TURNS.format(line))
            .values(until=until)
            .execution_options(synchronize_session=False)
        )

    # --- whose the connections are -----------------------------------------------------------

    def own(self, owner: str, now: datetime, until: datetime) -> bool:
        """Takes the connections for a process, or keeps them; False where another has them. A
        time far ahead was kept while a clock was wrong."""
        first = [{"name": CONNECTIONS, "owner": owner, "until": until}]
        if insert_missing(self._session, OwnerRow, first, [OwnerRow.name]):
            return True
        over = or_(OwnerRow.until <= now, OwnerRow.until > until + CLOCKS_APART)
        free = or_(OwnerRow.owner == owner, over)
        changed = self._session.scalars(
            update(OwnerRow)
            .where(OwnerRow.name == CONNECTIONS, free)
            .values(owner=owner, until=until)
            .returning(OwnerRow.owner)
            .execution_options(synchronize_session=False)
        )
        return changed.first() is not None

    def disown(self, owner: str, now: datetime) -> None:
        """Gives the connections back."""
        self._session.execute(
            update(OwnerRow)
            .where(OwnerRow.name == CONNECTIONS, OwnerRow.owner == owner)
            .values(until=now)
            .execution_options(synchronize_session=False)
        )
