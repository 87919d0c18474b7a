"""Outgoing texts: written with what caused them, then claimed, sent, recorded, receipted."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import fields, replace
from datetime import datetime, timedelta
from types import SimpleNamespace
from typing import Any

from sqlalchemy import (
    BindParameter,
    ColumnElement,
    Integer,
    Select,
    and_,
    bindparam,
    case,
    false,
    func,
    insert,
    literal,
    not_,
    or_,
    select,
    true,
    update,
)
from sqlalchemy.orm import Session
from sqlalchemy.sql.dml import ReturningUpdate

from assistant.channel import Fate, Receipt, RouteStands
from assistant.dialogue.values import Kind
from assistant.store import rows
from assistant.store.codec import focus_json
from assistant.store.columns import UtcMoment
from assistant.store.core import add, table_of
from assistant.store.errors import StoreError
from assistant.store.fates import settle, taken
from assistant.store.queries.brakes import Stops
from assistant.store.queries.counted import village_of, villages_of
from assistant.store.tables import FarmerRow, OutboxRow
from assistant.store.values import Lane, OutboxText, TextState

_T = table_of(OutboxRow)
_NOW, _UNTIL = bindparam("now", type_=UtcMoment), bindparam("until", type_=UtcMoment)
_UNBELIEVED = bindparam("unbelieved", type_=UtcMoment)
_NO_STOPS = Stops()
# A lease that ends so much later than any that begins now was given while a clock was wrong.
CLOCKS_APART = timedelta(seconds=30)
LONGEST_LEASE = timedelta(hours=1)
_KEPT = [field.name for field in fields(OutboxText) if field.name not in ("id", "focus")]


class Outbox:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add(self, text: OutboxText) -> OutboxText:
        """Keeps a new text; its id comes back with it."""
        village_id = village_of(self._session, text.phone)
        columns = _columns(text) | {"village_id": village_id}
        return replace(text, id=add(self._session, _ADD, columns))

    def add_all(self, texts: Iterable[OutboxText]) -> None:
        """Keeps many new texts at once."""
        kept = list(texts)
        villages = villages_of(self._session, {text.phone for text in kept})
        new = [_columns(text) | {"village_id": villages.get(text.phone)} for text in kept]
        if new:
            self._session.execute(_ADD, new)

    def get(self, message_id: str) -> OutboxText | None:
        row = self._session.execute(_BY_ID, {"of": message_id}).first()
        return rows.outbox_text(row) if row else None

    def of_phone(self, phone: str) -> tuple[OutboxText, ...]:
        """Every text to a phone, in the order they were written."""
        found = self._session.execute(_OF_PHONE, {"of": phone})
        return tuple(map(rows.outbox_text, found))

    def waiting(
        self,
        kinds: Collection[Kind],
        *,
        phone: str | None = None,
        village_id: int | None = None,
    ) -> tuple[OutboxText, ...]:
        """Texts of these kinds not sent yet, to a phone or to the farmers of a village.

        Raises:
            StoreError: neither phone nor village was given.
        """
        if phone is None and village_id is None:
            raise StoreError("expected a phone or a village, got none: name one")
        wanted = _WAITING_HERE if phone is None else _WAITING
        of = village_id if phone is None else phone
        found = self._session.execute(wanted, {"of": of, "kinds": list(kinds)})
        return tuple(map(rows.outbox_text, found))

    def claim(
        self,
        now: datetime,
        limit: int,
        lease: timedelta,
        stops: Stops = _NO_STOPS,
        routes: Sequence[RouteStands] = (),
    ) -> tuple[OutboxText, ...]:
        """Takes up to `limit` texts that may go now, by lane, then the oldest first.

        No other dispatcher gets them until the lease runs out. A text whose dispatcher never
        came back is among them again, also where its lease is too long to have been given by
        a clock that is right; one that is past its time is not (see `expire`). Left where they
        are: what is stopped, and what would go by a route of which all lines rest.
        """
        given = {"now": now, "until": now + lease, "most": limit} | _unbelieved(now, lease)
        passing = (*(_passing(stops) if stops else ()), *_by_open_routes(routes))
        return self._changed(_claiming(*passing) if passing else _CLAIMING, given)

    def any_due(self, now: datetime, lease: timedelta) -> bool:
        """Whether a text might be claimed now: a look that is in nobody's way."""
        given = {"now": now} | _unbelieved(now, lease)
        return self._session.execute(_DUE, given).first() is not None

    def give_back(self, message_ids: Iterable[str]) -> int:
        """Frees texts that were claimed and not offered to anybody; how many those were."""
        claimed = _T.c.state == TextState.CLAIMED
        held = and_(claimed, _T.c.message_id.in_(list(message_ids)))
        return len(self._change(held, state=TextState.WAITING, lease_until=None))

    def expire(self, now: datetime) -> tuple[OutboxText, ...]:
        """Gives up the texts whose time ran out before they were sent.

        One whose dispatcher never came back is among them: whether it went out is not known,
        and a receipt can still say so.
        """
        return self._changed(_EXPIRING, {"now": now} | _unbelieved(now, LONGEST_LEASE))

    def withdraw(
        self,
        now: datetime,
        *,
        phone: str | None = None,
        kinds: Collection[Kind] | None = None,
        warning_id: int | None = None,
        nursery_id: int | None = None,
    ) -> int:
        """Takes back the waiting texts that match all that is given; how many those were.

        Raises:
            StoreError: neither phone, warning nor nursery was given.
        """
        wanted = {
            _T.c.phone: phone,
            _T.c.warning_id: warning_id,
            _T.c.nursery_id: nursery_id,
        }
        terms = [column == given for column, given in wanted.items() if given is not None]
        if not terms:
            raise StoreError("expected a phone, a warning or a nursery, got none: name one")
        if kinds is not None:
            terms.append(_T.c.kind.in_(kinds))
        waiting = and_(_T.c.state == TextState.WAITING, *terms)
        return len(self._change(waiting, state=TextState.WITHDRAWN, ended_at=now))

    def take_back(self, message_ids: Iterable[str], now: datetime) -> int:
        """Takes back those of these texts that wait; how many those were."""
        waits = _T.c.state == TextState.WAITING
        waiting = and_(waits, _T.c.message_id.in_(list(message_ids)))
        return len(self._change(waiting, state=TextState.WITHDRAWN, ended_at=now))

    def hasten(self, message_id: str, now: datetime) -> bool:
        """Lets a waiting text leave now, by night too; False where it waits no more."""
        waits = and_(_T.c.message_id == message_id, _T.c.state == TextState.WAITING)
        return bool(self._change(waits, due_at=now, urgent=True, lane=Lane.DANGER))

    def record(
        self,
        message_id: str,
        fate: Fate,
        at: datetime,
        *,
        detail: str = "",
        encoding: str = "",
        segments: int = 0,
        retry_at: datetime | None = None,
    ) -> OutboxText | None:
        """What the operator said of a text, at the hand-over or by receipt, in any order.

        TRY_LATER makes it due again at `retry_at` (at once, where none is given).

        Returns:
            The text as it now stands, or None for an id that is not ours.
        """
        row = self._session.scalar(
            select(OutboxRow)
            .where(OutboxRow.message_id == message_id)
            .with_for_update()
            .execution_options(populate_existing=True)
        )
        if row is None:
            return None
        if settle(row, fate, at, retry_at or at) and detail:
            row.detail = detail
        if encoding:
            row.encoding, row.segments = encoding, segments
        self._session.flush()
        return rows.outbox_text(row)

    def settle(self, receipts: Sequence[Receipt]) -> dict[str, tuple[TextState, OutboxText]]:
        """What receipts say of many texts, in their order: what `record` does for each.

        Returns:
            By id, those of ours: the state each had, and the text as it now stands.
        """
        ids = sorted({receipt.message_id for receipt in receipts})
        found = {
            row.message_id: SimpleNamespace(**row._mapping)
            for row in self._session.execute(_HELD, {"ids": ids})
        }
        before = {message_id: row.state for message_id, row in found.items()}
        told = {name: {**vars(row)} for name, row in found.items()}
        for receipt in receipts:
            row = found.get(receipt.message_id)
            if row and settle(row, receipt.fate, receipt.at, receipt.at) and receipt.detail:
                row.detail = receipt.detail
        self._write(row for name, row in found.items() if vars(row) != told[name])
        return {name: (before[name], rows.outbox_text(row)) for name, row in found.items()}

    def _write(self, changed: Iterable[SimpleNamespace]) -> None:
        given = [
            {"of": row.id} | {f"to_{name}": getattr(row, name) for name in _MOVED}
            for row in changed
        ]
        if given:
            self._session.execute(_MOVE, given)

    def replies(self, phone: str, since: datetime) -> tuple[OutboxText, ...]:
        """The answers to a phone that were written after a time, the latest last."""
        found = self._session.execute(_REPLIES, {"of": phone, "since": since})
        return tuple(map(rows.outbox_text, found))

    def notices(self, phone: str, since: datetime) -> tuple[OutboxText, ...]:
        """The notices to a phone that were written after a time and are not urgent."""
        wanted = select(OutboxRow).where(OutboxRow.phone == phone, OutboxRow.created_at > since)
        wanted = wanted.where(OutboxRow.kind == Kind.NOTICE, OutboxRow.urgent.is_(False))
        return tuple(map(rows.outbox_text, self._session.scalars(wanted)))

    def accepted(self, message_ids: Collection[str], at: datetime) -> None:
        """The operator took these texts, at the hand-over and with no word more: what `record`
        does for one, in one statement for all."""
        if message_ids:
            self._session.execute(_TAKEN, {"ids": list(message_ids), "at": at})

    def numbered(self, phone: str, limit: int = 8) -> tuple[OutboxText, ...]:
        """The texts whose digits a phone may be answering, the latest first.

        By the time of delivery where a receipt told it, else of the hand-over, also of one
        that was not answered. A text that never went out offers nothing.
        """
        found = self._session.execute(_NUMBERED, {"of": phone, "most": limit})
        return tuple(map(rows.outbox_text, found))

    def _change(self, which: ColumnElement[bool], **columns: object) -> tuple[OutboxText, ...]:
        return self._changed(_changing(which, **columns))

    def _changed(
        self, change: ReturningUpdate[Any], given: dict[str, object] | None = None
    ) -> tuple[OutboxText, ...]:
        """Changes rows in one statement and gives them as they now are, in sending order."""
        changed = self._session.execute(change, given)
        ordered = sorted(changed, key=lambda row: (row.lane, row.due_at, row.id))
        return tuple(map(rows.outbox_text, ordered))


def _columns(text: OutboxText) -> dict[str, object]:
    kept: dict[str, object] = {name: getattr(text, name) for name in _KEPT}
    return kept | {"focus": focus_json(text.focus)}


def _unbelieved(now: datetime, lease: timedelta) -> dict[str, object]:
    return {"unbelieved": now + 2 * lease + CLOCKS_APART}


def _free(*waiting: ColumnElement[bool]) -> ColumnElement[bool]:
    """Texts that nobody is sending: waiting (on these terms), or claimed and given up."""
    given_up = or_(_T.c.lease_until <= _NOW, _T.c.lease_until > _UNBELIEVED)
    return or_(
        and_(_T.c.state == TextState.WAITING, *waiting),
        and_(_T.c.state == TextState.CLAIMED, given_up),
    )


def _changing(which: ColumnElement[bool], **columns: object) -> ReturningUpdate[Any]:
    return update(_T).where(which).values(**columns).returning(_T)


def _passing(stops: Stops) -> tuple[ColumnElement[bool], ...]:
    """What leaves though texts are stopped: dangers, and what is not meant."""
    danger = _T.c.lane == Lane.DANGER
    if stops.held_at is not None:
        return (and_(danger, _T.c.created_at >= stops.held_at),)
    if stops.everything:
        return (danger,)
    meant = or_(_T.c.kind.in_(stops.kinds), _T.c.village_id.in_(stops.villages))
    return (or_(danger, not_(func.coalesce(meant, false()))),)


def _by_open_routes(routes: Sequence[RouteStands]) -> tuple[ColumnElement[bool], ...]:
    """What the lines that are not at rest may take: an answer goes where its reader wrote, and
    a text may be meant for one line, which is both seen only when it is offered."""
    if not any(route.rests for route in routes):
        return ()
    by_route = case(
        *((_takes(route), literal(route.rests)) for route in routes), else_=literal(False)
    )
    meant = and_(_T.c.kind == Kind.NOTICE, _T.c.line.is_not(None))
    return (or_(_T.c.kind == Kind.REPLY, meant, by_route.is_(False)),)


def _takes(route: RouteStands) -> ColumnElement[bool]:
    near = (_T.c.phone.startswith(each, autoescape=True) for each in route.prefixes)
    return and_(
        or_(*near) if route.prefixes else true(),
        _T.c.kind.in_(route.kinds) if route.kinds else true(),
    )


def _claiming(*passing: ColumnElement[bool]) -> ReturningUpdate[Any]:
    picked = (
        select(_T.c.id)
        .where(_T.c.not_after > _NOW, _free(_T.c.due_at <= _NOW), *passing)
        .order_by(_T.c.lane, _T.c.due_at, _T.c.id)
        .limit(bindparam("most", type_=Integer))
        .with_for_update(skip_locked=True)
        .cte("picked")  # a bare subquery may be run again and lock more than the limit
    )
    which = _T.c.id.in_(select(picked.c.id))
    return _changing(which, state=TextState.CLAIMED, lease_until=_UNTIL)


def _numbered() -> Select[Any]:
    delivered = _T.c.state == TextState.DELIVERED
    left_at = func.coalesce(_T.c.accepted_at, _T.c.doubted_at)
    reached_at = case((delivered, _T.c.delivered_at), else_=left_at)
    waits = _T.c.state.in_([TextState.WAITING, TextState.CLAIMED])
    in_doubt = and_(waits, _T.c.doubted_at.is_not(None))
    return (
        select(_T)
        .where(_T.c.phone == _OF, _T.c.focus.is_not(None))
        .where(or_(_T.c.state.in_([TextState.DELIVERED, TextState.ACCEPTED]), in_doubt))
        .order_by(reached_at.desc(), _T.c.id.desc())
        .limit(bindparam("most", type_=Integer))
    )


_OF: BindParameter[Any] = bindparam("of")
_BY_ID = select(_T).where(_T.c.message_id == _OF)
_OF_PHONE = select(_T).where(_T.c.phone == _OF).order_by(_T.c.id)
_IDS: BindParameter[Any] = bindparam("ids", expanding=True)
_HELD = select(_T).where(_T.c.message_id.in_(_IDS)).order_by(_T.c.id).with_for_update()
_TAKEN = (
    update(_T)
    .where(_T.c.message_id.in_(_IDS))
    .values(**taken(bindparam("at", type_=UtcMoment)))
)
# What a receipt may change.
_MOVED = ("state", "lease_until", "accepted_at", "delivered_at", "ended_at", "detail")
_MOVE = (
    update(_T).where(_T.c.id == _OF).values({name: bindparam(f"to_{name}") for name in _MOVED})
)
_ADD = insert(_T)
_WAITS = (
    select(_T)
    .where(_T.c.state == TextState.WAITING, _T.c.kind.in_(bindparam("kinds", expanding=True)))
    .order_by(_T.c.id)
)
_FARMER = table_of(FarmerRow)
_WAITING = _WAITS.where(_T.c.phone == _OF)
_WAITING_HERE = _WAITS.join(_FARMER, _FARMER.c.phone == _T.c.phone).where(
    _FARMER.c.village_id == _OF
)
_NUMBERED = _numbered()
_REPLIES = (
    select(_T)
    .where(_T.c.phone == _OF, _T.c.kind == Kind.REPLY)
    .where(_T.c.created_at > bindparam("since", type_=UtcMoment))
    .order_by(_T.c.id)
)
# Asked at every round: to build such a statement takes longer than to run it.
_CLAIMING = _claiming()
_DUE = select(_T.c.id).where(_T.c.not_after > _NOW, _free(_T.c.due_at <= _NOW)).limit(1)
_EXPIRING = _changing(
    and_(_T.c.not_after <= _NOW, _free()),
    state=TextState.EXPIRED,
    lease_until=None,
    ended_at=_NOW,
)
