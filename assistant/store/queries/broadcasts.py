"""An officer's words to many: kept, sent once, and what became of the texts."""

from collections.abc import Collection, Iterable
from datetime import datetime

from sqlalchemy import and_, func, insert, or_, select, update
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.tables import FarmerRow, NurseryRow, OutboxRow
from assistant.store.tables_broadcasts import BroadcastPhoneRow, BroadcastRow
from assistant.store.values import TextState
from assistant.store.values_broadcasts import Broadcast, Group, Reader


class Broadcasts:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add(self, wanted: Broadcast) -> Broadcast:
        """Keeps what was written; nothing is sent."""
        row = BroadcastRow(
            made_by=wanted.made_by,
            words=wanted.words,
            village_ids=list(wanted.village_ids),
            stage=wanted.stage,
            practice=wanted.practice,
            made_at=wanted.made_at,
            group_id=wanted.group_id,
            due_at=wanted.due_at,
        )
        self._session.add(row)
        self._session.flush()
        return _value(row)

    def get(self, broadcast_id: int) -> Broadcast | None:
        row = self._session.get(BroadcastRow, broadcast_id, populate_existing=True)
        return _value(row) if row else None

    def latest(self, limit: int, made_by: int | None = None) -> tuple[Broadcast, ...]:
        """Those that were sent, by one officer or by all, the latest first."""
        wanted = select(BroadcastRow).where(BroadcastRow.sent_at.is_not(None))
        if made_by is not None:
            wanted = wanted.where(BroadcastRow.made_by == made_by)
        wanted = wanted.order_by(BroadcastRow.made_at.desc(), BroadcastRow.id.desc())
        return tuple(map(_value, self._session.scalars(wanted.limit(limit))))

    def send(self, broadcast_id: int, now: datetime) -> bool:
        """Marks it as sent; False where that was done before, also a moment ago."""
        sent = self._session.scalars(
            update(BroadcastRow)
            .where(BroadcastRow.id == broadcast_id, BroadcastRow.sent_at.is_(None))
            .values(sent_at=now)
            .returning(BroadcastRow.id)
            .execution_options(synchronize_session=False)
        )
        return sent.one_or_none() is not None

    def went_to(self, broadcast_id: int, texts: Iterable[tuple[str, str]]) -> None:
        """Keeps the phones that it went to, with the ids of their texts."""
        new = [
            {"broadcast_id": broadcast_id, "phone": phone, "message_id": message_id}
            for phone, message_id in texts
        ]
        if new:
            self._session.execute(insert(BroadcastPhoneRow), new)

    def states(self, broadcast_id: int) -> dict[TextState, int]:
        """How many of its texts are in each state."""
        wanted = (
            select(OutboxRow.state, func.count())
            .join(BroadcastPhoneRow, BroadcastPhoneRow.message_id == OutboxRow.message_id)
            .where(BroadcastPhoneRow.broadcast_id == broadcast_id)
            .group_by(OutboxRow.state)
        )
        return {state: count for state, count in self._session.execute(wanted)}

    def segments(self, broadcast_id: int) -> int:
        """The segments of its texts that the operator took or will be given; what was taken
        back or never left costs nothing."""
        to_go = OutboxRow.state.in_([TextState.WAITING, TextState.CLAIMED])
        wanted = (
            select(func.coalesce(func.sum(OutboxRow.segments), 0))
            .join(BroadcastPhoneRow, BroadcastPhoneRow.message_id == OutboxRow.message_id)
            .where(BroadcastPhoneRow.broadcast_id == broadcast_id)
            .where(or_(to_go, OutboxRow.accepted_at.is_not(None)))
        )
        return self._session.scalar(wanted) or 0

    def take_back(self, broadcast_id: int, now: datetime) -> int:
        """Takes back those of its texts that have not left; how many."""
        of_it = select(BroadcastPhoneRow.message_id).where(
            BroadcastPhoneRow.broadcast_id == broadcast_id
        )
        taken = self._session.scalars(
            update(OutboxRow)
            .where(OutboxRow.message_id.in_(of_it), OutboxRow.state == TextState.WAITING)
            .values(state=TextState.WITHDRAWN, ended_at=now)
            .returning(OutboxRow.id)
            .execution_options(synchronize_session=False)
        )
        return len(taken.all())

    def readers(self, village_ids: Collection[int]) -> tuple[Reader, ...]:
        """The farmers of these villages by phone, once for each open bed that is not planted
        out, once without a bed where there is none."""
        open_bed = and_(
            NurseryRow.farmer_id == FarmerRow.id,
            NurseryRow.closed.is_(False),
            NurseryRow.transplanted_on.is_(None),
        )
        wanted = (
            select(
                FarmerRow.phone,
                FarmerRow.language,
                FarmerRow.village_id,
                and_(FarmerRow.stopped_at.is_(None), FarmerRow.consent_at.is_not(None)),
                NurseryRow.practice,
                NurseryRow.sow_date,
                NurseryRow.sown,
            )
            .outerjoin(NurseryRow, open_bed)
            .where(FarmerRow.village_id.in_(village_ids))
            .order_by(FarmerRow.phone, NurseryRow.id)
        )
        return tuple(
            Reader(phone, language, village_id, bool(may), practice, sow_date, bool(sown))
            for phone, language, village_id, may, practice, sow_date, sown in (
                self._session.execute(wanted)
            )
            if village_id is not None
        )


def _value(row: BroadcastRow) -> Broadcast:
    villages = tuple(row.village_ids)
    return rows.value(Broadcast, row, village_ids=villages, stage=Group(row.stage))
