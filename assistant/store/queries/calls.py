"""What needs a person: calls for help, and replies that could not be read."""

from collections.abc import Collection
from datetime import datetime

from sqlalchemy import and_, func, insert, or_, select, update
from sqlalchemy.orm import Session

from assistant.people import Officer
from assistant.store import rows
from assistant.store.core import table_of
from assistant.store.queries.handed import is_handed
from assistant.store.queries.seen_calls import call_of, in_sight
from assistant.store.tables import CallRow, FarmerRow, NurseryRow, OutboxRow, UnreadRow
from assistant.store.tables_alarms import AlarmRow
from assistant.store.tables_officers import OfficerTextRow
from assistant.store.values import Call, TextState, Unheard, UnreadText

_HERE_YET = (TextState.WAITING, TextState.CLAIMED)
_LOST = (TextState.FAILED, TextState.EXPIRED, TextState.WITHDRAWN)


_UNREAD = insert(table_of(UnreadRow))


class CallQueries:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add(
        self, farmer_id: int, nursery_id: int | None, about: str, words: str, at: datetime
    ) -> int:
        """A new call for help; its id."""
        row = CallRow(
            farmer_id=farmer_id, nursery_id=nursery_id, about=about, words=words, at=at
        )
        self._session.add(row)
        self._session.flush()
        return row.id

    def open(
        self, village_ids: Collection[int] | None = None, officer: Officer | None = None
    ) -> tuple[Call, ...]:
        """Calls that nobody has handled, the oldest first; None is every village. `officer`:
        as far as they may see them, and those they were told of."""
        wanted = (
            select(CallRow, FarmerRow, NurseryRow)
            .join(FarmerRow, FarmerRow.id == CallRow.farmer_id)
            .outerjoin(NurseryRow, NurseryRow.id == CallRow.nursery_id)
            .where(CallRow.handled_at.is_(None), *in_sight(village_ids, officer))
            .order_by(CallRow.at, CallRow.id)
        )
        return tuple(call_of(*found) for found in self._session.execute(wanted))

    def closed(
        self,
        since: datetime,
        village_ids: Collection[int] | None = None,
        officer: Officer | None = None,
        *,
        by: int | None = None,
        most: int = 200,
    ) -> tuple[tuple[Call, datetime], ...]:
        """Calls that were seen to since a time, and when, the latest first; `by`: by this
        officer alone; village_ids and officer as for `open`."""
        wanted = (
            select(CallRow, FarmerRow, NurseryRow)
            .join(FarmerRow, FarmerRow.id == CallRow.farmer_id)
            .outerjoin(NurseryRow, NurseryRow.id == CallRow.nursery_id)
            .where(CallRow.handled_at >= since, *in_sight(village_ids, officer))
            .order_by(CallRow.handled_at.desc(), CallRow.id.desc())
            .limit(most)
        )
        if by is not None:
            wanted = wanted.where(CallRow.handled_by == by)
        return tuple(
            (call_of(call, farmer, nursery), call.handled_at)
            for call, farmer, nursery in self._session.execute(wanted)
            if call.handled_at is not None
        )

    def answered(self, since: datetime) -> tuple[tuple[int | None, datetime, datetime], ...]:
        """Of the calls that came since then and were seen to: by whom, when they came, and when
        somebody saw to them."""
        found = self._session.execute(
            select(CallRow.handled_by, CallRow.at, CallRow.handled_at).where(
                CallRow.at >= since, CallRow.handled_at.is_not(None)
            )
        )
        return tuple((by, at, seen) for by, at, seen in found if seen is not None)

    def open_by_village(self) -> dict[int, tuple[int, datetime]]:
        """How many calls are open in each village, and since when the oldest; without those
        that were given to somebody."""
        found = self._session.execute(
            select(FarmerRow.village_id, func.count(), func.min(CallRow.at))
            .join(FarmerRow, FarmerRow.id == CallRow.farmer_id)
            .where(CallRow.handled_at.is_(None), FarmerRow.village_id.is_not(None))
            .where(~is_handed())
            .group_by(FarmerRow.village_id)
        )
        return {at: (count, oldest) for at, count, oldest in found if at is not None}

    def handle(self, call_id: int, at: datetime, officer_id: int | None = None) -> None:
        """Somebody has seen to it; the first time counts. Nobody more is told of it."""
        self._session.execute(
            update(CallRow)
            .where(CallRow.id == call_id, CallRow.handled_at.is_(None))
            .values(handled_at=at, handled_by=officer_id)
        )
        ended = update(AlarmRow).where(AlarmRow.call_id == call_id)
        self._session.execute(ended.values(next_at=None))

    def reopen(self, call_id: int, next_at: datetime | None = None) -> None:
        """Nobody has seen to it after all; `next_at`: when the next person is told of an
        alarm."""
        opened = update(CallRow).where(CallRow.id == call_id)
        self._session.execute(opened.values(handled_at=None, handled_by=None))
        if next_at is not None:
            alarm = update(AlarmRow).where(AlarmRow.call_id == call_id)
            self._session.execute(alarm.values(next_at=next_at))

    def seen_after_all(self, call_id: int, at: datetime) -> None:
        """Somebody has seen to it once more, after the answer to it was lost."""
        self._session.execute(
            update(CallRow).where(CallRow.id == call_id).values(handled_at=at)
        )

    def unheard(
        self,
        since: datetime,
        village_ids: Collection[int] | None = None,
        officer: Officer | None = None,
    ) -> tuple[Unheard, ...]:
        """Calls answered since a time whose last answer waits here yet, or was lost after
        anybody saw to the call, the oldest first; village_ids and officer as for `open`."""
        last = (
            select(func.max(OfficerTextRow.id))
            .where(OfficerTextRow.call_id == CallRow.id)
            .correlate(CallRow)
            .scalar_subquery()
        )
        lost = and_(OutboxRow.state.in_(_LOST), OutboxRow.ended_at >= CallRow.handled_at)
        wanted = (
            select(CallRow, FarmerRow, NurseryRow, OutboxRow)
            .join(FarmerRow, FarmerRow.id == CallRow.farmer_id)
            .outerjoin(NurseryRow, NurseryRow.id == CallRow.nursery_id)
            .join(OfficerTextRow, OfficerTextRow.id == last)
            .join(OutboxRow, OutboxRow.message_id == OfficerTextRow.message_id)
            .where(CallRow.handled_at >= since)
            .where(or_(OutboxRow.state.in_(_HERE_YET), lost), *in_sight(village_ids, officer))
            .order_by(CallRow.at, CallRow.id)
        )
        return tuple(
            rows.value(Unheard, text, call=call_of(call, farmer, nursery))
            for call, farmer, nursery, text in self._session.execute(wanted)
        )

    def unread(
        self,
        language: str,
        asked: str,
        text: str,
        at: datetime,
        phone: str | None = None,
        farmer_id: int | None = None,
    ) -> None:
        """Keeps a reply that could not be read, with whose it was."""
        row = {"language": language, "asked": asked, "text": text, "at": at}
        whose = {"phone": phone, "farmer_id": farmer_id, "lately": True}
        self._session.execute(_UNREAD, row | whose)

    def read_again(self, phone: str) -> None:
        """A reply of this phone was read: those before it are no longer the last."""
        lately = update(UnreadRow).where(UnreadRow.phone == phone, UnreadRow.lately)
        self._session.execute(lately.values(lately=False))

    def forget_unread(self, phone: str) -> None:
        """What could not be read of a phone stays, to mend word lists; not whose it was."""
        theirs = update(UnreadRow).where(UnreadRow.phone == phone)
        self._session.execute(theirs.values(phone=None, farmer_id=None, lately=False))

    def unread_list(self) -> tuple[UnreadText, ...]:
        """Replies that could not be read, the oldest first, without the farmers."""
        wanted = select(UnreadRow).order_by(UnreadRow.at, UnreadRow.id)
        return tuple(
            rows.value(UnreadText, row, farmer=None) for row in self._session.scalars(wanted)
        )
