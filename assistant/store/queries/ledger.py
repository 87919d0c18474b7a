"""The ledger of messages: counted by village and time, why some were lost, the latest of all.

A text is counted on the day it was due to leave, which moves with each new try. The counts read
indexes only (`village_id, due_at, state, segments`; `village_id, at, channel, step`).
"""

from collections.abc import Collection, Iterator
from dataclasses import replace
from datetime import datetime
from typing import Any, NamedTuple, TypeVar

from sqlalchemy import (
    ColumnElement,
    Executable,
    Select,
    and_,
    bindparam,
    case,
    func,
    literal,
    or_,
    select,
)
from sqlalchemy.orm import Session

from assistant.channel import Channel, Step
from assistant.store import rows
from assistant.store.columns import UtcMoment
from assistant.store.core import table_of
from assistant.store.queries.day_counts import DayCounts
from assistant.store.queries.spans import TimeSpan as TimeSpan
from assistant.store.queries.spans import in_villages, one_of
from assistant.store.tables import FarmerRow, IncomingRow, OutboxRow, UnreadRow, VillageRow
from assistant.store.values import TextState, UnreadText
from assistant.store.values_books import HeardCounts, HeardLine, LostTexts, SentLine, TextCounts

_LOST = (TextState.FAILED, TextState.EXPIRED)


Place = tuple[datetime, int | str]
"""Where a page of a list ends: the time and the id of its last line."""
Key = tuple[Any, Any]  # the columns of a place
L = TypeVar("L", SentLine, HeardLine)


class Ledger:
    def __init__(self, session: Session) -> None:
        self._session = session
        self.days = DayCounts(session)

    # --- counted -----------------------------------------------------------------------------

    def sent(self, span: TimeSpan) -> tuple[TextCounts, ...]:
        """Outgoing texts by village; villages without any are left out."""
        return tuple(TextCounts(*row) for row in self._counted(_SENT_BY, span))

    def heard(self, span: TimeSpan) -> tuple[HeardCounts, ...]:
        """Incoming messages by village; a USSD session counts once."""
        return tuple(HeardCounts(*row) for row in self._counted(_HEARD_BY, span))

    def _counted(self, by: "_By", span: TimeSpan) -> Iterator[Any]:
        within = {"start": span.start, "end": span.end}
        yield from self._session.execute(by.village, within | {"villages": span.villages})
        if span.everybody:
            yield from self._session.execute(by.nobody, within)

    def lost(self, span: TimeSpan) -> tuple[LostTexts, ...]:
        """What failed or came too late, by village and the operator's words."""
        taken = OutboxRow.accepted_at.is_not(None)
        what = (OutboxRow.village_id, OutboxRow.state, taken, OutboxRow.detail)
        wanted = (
            select(*what, func.count(), func.sum(OutboxRow.segments))
            .where(OutboxRow.state.in_(_LOST))
            .where(OutboxRow.due_at >= span.start, OutboxRow.due_at < span.end)
            .where(in_villages(OutboxRow.village_id, span))
            .group_by(*what)
        )
        return tuple(LostTexts(*row) for row in self._session.execute(wanted))

    def since(self) -> datetime | None:
        """When the first text was written."""
        since: datetime | None = self._session.scalar(_SINCE)
        return since

    # --- one by one --------------------------------------------------------------------------

    def latest_sent(
        self,
        span: TimeSpan,
        limit: int,
        *,
        states: Collection[TextState] = (),
        before: Place | None = None,
    ) -> tuple[SentLine, ...]:
        """Outgoing texts, the latest first; `before`: only those after this place."""
        key = (OutboxRow.due_at, OutboxRow.id)
        picked = _latest(key, span, OutboxRow.village_id, before).limit(limit)
        if states:
            picked = picked.where(one_of(OutboxRow.state, states))
        found = self._session.execute(_lines(OutboxRow, _SENT_LINE, key, picked))
        return tuple(_line(SentLine, _SENT_LINE, row) for row in found)

    def latest_heard(
        self, span: TimeSpan, limit: int, *, before: Place | None = None
    ) -> tuple[HeardLine, ...]:
        """Incoming texts, keys and missed calls, the latest first; `before` as above."""
        key = (IncomingRow.at, IncomingRow.gateway_id)
        said = or_(IncomingRow.channel != Channel.USSD, IncomingRow.step == Step.ANSWER)
        picked = _latest(key, span, IncomingRow.village_id, before).where(said).limit(limit)
        found = self._session.execute(_lines(IncomingRow, _HEARD_LINE, key, picked))
        return tuple(_line(HeardLine, _HEARD_LINE, row) for row in found)

    # --- what could not be read --------------------------------------------------------------

    def unread_by_language(self, scope: Collection[int] | None = None) -> dict[str, int]:
        """How many replies could not be read, by language, most first: of farmers of these
        villages; None is everybody."""
        count = func.count()
        wanted = select(UnreadRow.language, count).group_by(UnreadRow.language)
        if scope is not None:
            wanted = wanted.join(FarmerRow, FarmerRow.id == UnreadRow.farmer_id)
            wanted = wanted.where(FarmerRow.village_id.in_(scope))
        ordered = wanted.order_by(count.desc(), UnreadRow.language)
        return {language: number for language, number in self._session.execute(ordered)}

    def unread(
        self,
        limit: int,
        *,
        language: str | None = None,
        before: int | None = None,
        scope: Collection[int] | None = None,
    ) -> tuple[UnreadText, ...]:
        """Replies that could not be read, the latest first; `scope` as above."""
        row = UnreadRow
        wanted = select(row, FarmerRow).outerjoin(FarmerRow, FarmerRow.id == row.farmer_id)
        if scope is not None:
            wanted = wanted.where(FarmerRow.village_id.in_(scope))
        if language is not None:
            wanted = wanted.where(row.language == language)
        if before is not None:
            wanted = wanted.where(row.id < before)
        found = self._session.execute(wanted.order_by(row.id.desc()).limit(limit))
        return tuple(
            rows.value(UnreadText, each, farmer=rows.farmer(farmer) if farmer else None)
            for each, farmer in found
        )


def _number(which: ColumnElement[bool], value: Any = 1) -> ColumnElement[int]:
    return func.coalesce(func.sum(case((which, value), else_=0)), 0)


_O, _I, _V = table_of(OutboxRow), table_of(IncomingRow), table_of(VillageRow)
_SINCE = select(_O.c.created_at).order_by(_O.c.id).limit(1)
_STATE = _O.c.state
_SENT = (
    _number(_STATE.in_([TextState.WAITING, TextState.CLAIMED])),
    _number(_STATE == TextState.ACCEPTED),
    _number(_STATE == TextState.DELIVERED),
    _number(_STATE == TextState.FAILED),
    _number(_STATE == TextState.EXPIRED),
    _number(_STATE == TextState.WITHDRAWN),
    _number(_STATE.in_([TextState.ACCEPTED, TextState.DELIVERED]), _O.c.segments),
)
_HEARD = (
    _number(_I.c.channel == Channel.SMS),
    _number(and_(_I.c.channel == Channel.USSD, _I.c.step == Step.BEGIN)),
    _number(_I.c.channel == Channel.RING),
)
_SENT_LINE = ("id", "phone", "village_id", "text", "state", "due_at", "accepted_at",
              "delivered_at", "segments", "detail", "private")  # fmt: skip
_HEARD_LINE = (
    "gateway_id",
    "phone",
    "village_id",
    "text",
    "channel",
    "at",
    "failed",
    "private",
)


class _By(NamedTuple):
    """Counts of a span, in two statements: by village, and of what is of none. Made once: each
    day is counted by them."""

    village: Executable
    nobody: Executable


def _by_village(village: Any, moment: Any, counts: tuple[ColumnElement[int], ...]) -> _By:
    """Village by village, so that each reads its own stretch of the index and nothing is
    sorted; what is of no village apart."""
    start, end = (bindparam(name, type_=UtcMoment) for name in ("start", "end"))
    within = and_(moment >= start, moment < end)
    wanted = _V.c.id.in_(bindparam("villages", expanding=True))
    kept = select(_V.c.id).where(wanted).subquery()
    villages = (
        select(kept.c.id, *counts)
        .join_from(kept, village.table, and_(village == kept.c.id, within))
        .group_by(kept.c.id)
        .order_by(kept.c.id)
    )
    nobodys = select(literal(None), *counts).where(village.is_(None), within)
    return _By(villages, nobodys.having(func.count() > 0))


_SENT_BY = _by_village(_O.c.village_id, _O.c.due_at, _SENT)
_HEARD_BY = _by_village(_I.c.village_id, _I.c.at, _HEARD)


def _latest(key: Key, span: TimeSpan, village: Any, before: Place | None) -> Select[Any]:
    """The keys of a page of a list. An index has all that is asked here, so that the words are
    read of a page only."""
    moment, number = key
    wanted = (
        select(number)
        .where(moment >= span.start, moment < span.end, in_villages(village, span))
        .order_by(moment.desc(), number.desc())
    )
    if before is None:
        return wanted
    at, last = before
    return wanted.where(moment <= at, or_(moment < at, number < last))


def _lines(table: Any, names: tuple[str, ...], key: Key, picked: Select[Any]) -> Select[Any]:
    moment, number = key
    columns = [getattr(table, name) for name in names]
    return (
        select(FarmerRow.id, FarmerRow.name, FarmerRow.village_id, *columns)
        .outerjoin_from(table, FarmerRow, FarmerRow.phone == table.phone)
        .where(number.in_(picked))
        .order_by(moment.desc(), number.desc())
    )


def _line(kind: type[L], names: tuple[str, ...], row: Any) -> L:
    farmer_id, farmer, lives_in, *kept = row
    who = {"farmer_id": farmer_id, "farmer": farmer, "lives_in": lives_in}
    line = kind(**who, **dict(zip(names, kept, strict=True)))
    return replace(line, text="") if line.private else line
