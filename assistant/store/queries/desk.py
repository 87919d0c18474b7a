"""The officers' desk: what waits that no other query finds, marks, and deeds to undo."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any

from sqlalchemy import ColumnElement, and_, delete, exists, false, func, or_, select, update
from sqlalchemy.orm import Session, aliased

from assistant.agronomy.constants import RAIN_WATCH_LAST_DAY
from assistant.agronomy.dangers.rows import RAIN
from assistant.channel import Channel
from assistant.people import Farmer
from assistant.store import rows
from assistant.store.inserts import insert_missing
from assistant.store.queries.nurseries import sown_between
from assistant.store.tables import (
    CallRow,
    FarmerRow,
    IncomingRow,
    NurseryRow,
    OutboxRow,
    UnreadRow,
    WarningPhoneRow,
    WarningRow,
)
from assistant.store.tables_desk import DeedRow, MarkRow, NoteRow
from assistant.store.tables_officers import VisitRow
from assistant.store.values import TextState

Scope = Collection[int] | None
"""Ids of villages; None is everybody, also farmers of no village."""

UNREAD, DEAD = "unread", "dead"  # kinds of marks
_IN_RAIN = ("rain", "warned", "flood", "ring_rain")  # what calls for help in the rain are about
LEAST_LOST = 2  # texts; one may be a hiccup of the operator


@dataclass(frozen=True)
class Unheeded:
    """Words of a farmer that nobody could read, the latest of them, and how many there were."""

    farmer: Farmer
    text: str
    language: str
    asked: str
    at: datetime
    count: int


@dataclass(frozen=True)
class DeadNumber:
    """A phone that texts do not reach: how many were lost since one arrived, and the words of
    the operator."""

    farmer: Farmer
    lost: int
    at: datetime
    detail: str


@dataclass(frozen=True)
class DeskDeed:
    """What an officer did from the list."""

    id: int
    officer_id: int
    at: datetime
    kind: str
    count: int
    before: Mapping[str, Any]
    undone_at: datetime | None


class DeskQueries:
    def __init__(self, session: Session) -> None:
        self._session = session

    # --- what waits --------------------------------------------------------------------------

    def unheeded(self, scope: Scope, since: datetime) -> tuple[Unheeded, ...]:
        """Whose last words could not be read and are in no open call, the latest first."""
        row = UnreadRow
        in_call = exists().where(CallRow.farmer_id == row.farmer_id, CallRow.at >= row.at)
        wanted = (
            select(FarmerRow, row)
            .join(row, row.farmer_id == FarmerRow.id)
            .where(row.at > since, row.lately, *_within(scope), ~in_call)
            .where(~_marked(UNREAD, row.at), row.text.contains(" "))
            .order_by(row.at.desc(), row.id.desc())
        )
        found: dict[int, Unheeded] = {}
        for farmer, reply in self._session.execute(wanted):
            earlier = found.get(farmer.id)
            first = earlier or Unheeded(
                rows.farmer(farmer), reply.text, reply.language, reply.asked, reply.at, 0
            )
            count = first.count + 1
            found[farmer.id] = Unheeded(
                first.farmer, first.text, first.language, first.asked, first.at, count
            )
        return tuple(found.values())

    def dead(self, scope: Scope, since: datetime) -> tuple[DeadNumber, ...]:
        """Numbers that the operator refused twice or more since a time, and where nothing
        arrived after the first of those, the latest first."""
        lost = (
            select(
                OutboxRow.phone,
                func.count().label("lost"),
                func.min(OutboxRow.id).label("first"),
                func.max(OutboxRow.id).label("last"),
                func.max(OutboxRow.due_at).label("at"),
            )
            .where(OutboxRow.state == TextState.FAILED, OutboxRow.due_at >= since)
            .group_by(OutboxRow.phone)
            .having(func.count() >= LEAST_LOST)
            .subquery()
        )
        other, last = aliased(OutboxRow), aliased(OutboxRow)
        arrived = exists().where(
            other.phone == lost.c.phone,
            other.state == TextState.DELIVERED,
            other.id > lost.c.first,
        )
        wanted = (
            select(FarmerRow, lost.c.lost, lost.c.at, last.detail)
            .join(lost, lost.c.phone == FarmerRow.phone)
            .join(last, last.id == lost.c.last)
            .where(~arrived, *_within(scope), FarmerRow.stopped_at.is_(None))
            .where(~_marked(DEAD, lost.c.at))
            .order_by(lost.c.at.desc(), FarmerRow.id)
        )
        return tuple(
            DeadNumber(rows.farmer(farmer), count, at, detail)
            for farmer, count, at, detail in self._session.execute(wanted)
        )

    def rain_help(self, scope: Scope, now: datetime, today: date) -> int:
        """How many beds there are whose phone asked for help under a warning that stands, that
        nobody has visited since and that no open call tells of."""
        called = exists().where(
            CallRow.farmer_id == FarmerRow.id,
            CallRow.handled_at.is_(None),
            CallRow.about.in_(_IN_RAIN),
        )
        visited = exists().where(
            VisitRow.nursery_id == NurseryRow.id, VisitRow.visited_on >= today
        )
        young = today - timedelta(days=int(RAIN_WATCH_LAST_DAY.value))
        wanted = (
            select(func.count(func.distinct(NurseryRow.id)))
            .join(FarmerRow, FarmerRow.id == NurseryRow.farmer_id)
            .join(WarningPhoneRow, WarningPhoneRow.phone == FarmerRow.phone)
            .join(WarningRow, WarningRow.id == WarningPhoneRow.warning_id)
            .where(WarningRow.cleared_at.is_(None), WarningRow.ends_at > now)
            .where(WarningPhoneRow.answer == "help", *_within(scope))
            .where(NurseryRow.closed.is_(False), ~called, ~visited)
            .where(or_(WarningRow.danger != RAIN, sown_between(young, today)))
        )
        return self._session.scalar(wanted) or 0

    def last_heard(self, phones: Collection[str]) -> dict[str, str]:
        """The last words that each of these phones sent, where they are not private."""
        latest = (
            select(IncomingRow.phone, func.max(IncomingRow.at).label("at"))
            .where(IncomingRow.phone.in_(phones), IncomingRow.channel == Channel.SMS)
            .group_by(IncomingRow.phone)
            .subquery()
        )
        wanted = select(IncomingRow.phone, IncomingRow.text).join(
            latest, and_(latest.c.phone == IncomingRow.phone, latest.c.at == IncomingRow.at)
        )
        found = self._session.execute(wanted.where(IncomingRow.private.is_(False)))
        return {phone: text for phone, text in found}

    def has_note(self, key: str, officer_id: int) -> bool:
        """Whether a note of an officer's phone was taken before."""
        return self._session.get(NoteRow, (key, officer_id)) is not None

    def add_note(self, key: str, officer_id: int, now: datetime) -> None:
        """Keeps that a note of an officer's phone was taken."""
        row = {"key": key, "officer_id": officer_id, "at": now}
        insert_missing(self._session, NoteRow, [row], [NoteRow.key, NoteRow.officer_id])

    # --- marks -------------------------------------------------------------------------------

    def mark(self, kind: str, farmer_id: int, officer_id: int, at: datetime) -> int:
        """Keeps that somebody has looked at what there is of a farmer; its id."""
        row = MarkRow(kind=kind, farmer_id=farmer_id, officer_id=officer_id, at=at)
        self._session.add(row)
        self._session.flush()
        return row.id

    def unmark(self, ids: Collection[int]) -> None:
        """Takes marks away."""
        self._session.execute(delete(MarkRow).where(MarkRow.id.in_(ids)))

    # --- deeds -------------------------------------------------------------------------------

    def did(
        self, officer_id: int, kind: str, count: int, before: Mapping[str, Any], now: datetime
    ) -> int:
        """Keeps what an officer did; its id. What was before their earlier deeds is forgotten:
        a minute is over, or they have gone on."""
        earlier = update(DeedRow).where(DeedRow.officer_id == officer_id)
        self._session.execute(earlier.values(before={}))
        row = DeedRow(
            officer_id=officer_id, at=now, kind=kind, count=count, before=dict(before)
        )
        self._session.add(row)
        self._session.flush()
        return row.id

    def last(self, officer_id: int, since: datetime) -> DeskDeed | None:
        """What an officer did last, where that was since a time and is not undone."""
        wanted = (
            select(DeedRow)
            .where(DeedRow.officer_id == officer_id, DeedRow.at > since)
            .order_by(DeedRow.id.desc())
            .limit(1)
        )
        row = self._session.scalar(wanted)
        return rows.value(DeskDeed, row) if row and row.undone_at is None else None

    def undo(
        self, deed_id: int, officer_id: int, since: datetime, now: datetime
    ) -> DeskDeed | None:
        """Marks a deed of an officer as undone; None where it is another's, too old or undone
        already, also a moment ago."""
        last = select(func.max(DeedRow.id)).where(DeedRow.officer_id == officer_id)
        undone = self._session.scalars(
            update(DeedRow)
            .where(DeedRow.id == deed_id, DeedRow.officer_id == officer_id)
            .where(
                DeedRow.at > since,
                DeedRow.undone_at.is_(None),
                DeedRow.id == last.scalar_subquery(),
            )
            .values(undone_at=now)
            .returning(DeedRow)
            .execution_options(synchronize_session=False, populate_existing=True)
        ).one_or_none()
        return rows.value(DeskDeed, undone) if undone else None


def _within(scope: Scope) -> list[ColumnElement[bool]]:
    if scope is None:
        return []
    return [FarmerRow.village_id.in_(scope) if scope else false()]


def _marked(kind: str, at: Any) -> ColumnElement[bool]:
    return exists().where(
        and_(MarkRow.kind == kind, MarkRow.farmer_id == FarmerRow.id, MarkRow.at >= at)
    )
