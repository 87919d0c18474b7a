"""The story of a nursery, a farmer and a village: messages, visits, own words, hand-overs."""

from collections.abc import Collection
from datetime import date, datetime

from sqlalchemy import ColumnElement, delete, select, update
from sqlalchemy.orm import InstrumentedAttribute, Session, aliased

from assistant.channel import Channel, Step
from assistant.people import Officer
from assistant.store import rows
from assistant.store.queries.seen_calls import in_sight
from assistant.store.tables import (
    CallRow,
    FarmerRow,
    IncomingRow,
    OfficerRow,
    OfficerVillageRow,
    OutboxRow,
    VillageRow,
)
from assistant.store.tables_officers import HandoverRow, OfficerTextRow, VisitRow
from assistant.store.values_officers import (
    HeardMessage,
    OwnWords,
    PastCall,
    Sent,
    VillageHandover,
    VisitMade,
    Written,
)


class Story:
    def __init__(self, session: Session) -> None:
        self._session = session

    # --- messages ----------------------------------------------------------------------------

    def heard(
        self,
        phone: str,
        limit: int,
        since: datetime | None = None,
        until: datetime | None = None,
    ) -> tuple[HeardMessage, ...]:
        """The last messages of a phone, the latest first; USSD keys with their screens.

        `since`, `until`: only while the number was one person's.
        """
        said = (IncomingRow.channel != Channel.USSD) | (IncomingRow.step == Step.ANSWER)
        wanted = (
            select(IncomingRow)
            .where(IncomingRow.phone == phone, said, *_between(IncomingRow.at, since, until))
            .order_by(IncomingRow.at.desc())
            .limit(limit)
        )
        return tuple(
            rows.value(
                HeardMessage,
                row,
                text="" if row.private else row.text,
                answer=None if row.private else row.answer_text,
            )
            for row in self._session.scalars(wanted)
        )

    def sent(
        self,
        phone: str,
        limit: int,
        since: datetime | None = None,
        until: datetime | None = None,
    ) -> tuple[Sent, ...]:
        """The last texts to a phone, the latest first; as for `heard`."""
        wanted = (
            select(OutboxRow)
            .where(OutboxRow.phone == phone, *_between(OutboxRow.created_at, since, until))
            .order_by(OutboxRow.id.desc())
            .limit(limit)
        )
        return tuple(
            rows.value(
                Sent,
                row,
                text="" if row.private else row.text,
                at=row.accepted_at or row.created_at,
                reached_at=row.delivered_at,
            )
            for row in self._session.scalars(wanted)
        )

    def add_own_words(
        self,
        officer_id: int,
        farmer_id: int,
        message_id: str,
        words: str,
        at: datetime,
        *,
        nursery_id: int | None = None,
        call_id: int | None = None,
    ) -> None:
        """Keeps what an officer wrote, beside the text that carries it."""
        self._session.add(
            OfficerTextRow(
                officer_id=officer_id,
                farmer_id=farmer_id,
                nursery_id=nursery_id,
                call_id=call_id,
                message_id=message_id,
                words=words,
                at=at,
            )
        )
        self._session.flush()

    def own_words(
        self, *, farmer_id: int | None = None, call_ids: Collection[int] = ()
    ) -> tuple[OwnWords, ...]:
        """What officers wrote to a farmer, or to these calls, the oldest first."""
        wanted = (
            select(OfficerTextRow, OfficerRow.name, OutboxRow.state)
            .join(OfficerRow, OfficerRow.id == OfficerTextRow.officer_id)
            .join(OutboxRow, OutboxRow.message_id == OfficerTextRow.message_id)
            .order_by(OfficerTextRow.id)
        )
        if farmer_id is not None:
            wanted = wanted.where(OfficerTextRow.farmer_id == farmer_id)
        else:
            wanted = wanted.where(OfficerTextRow.call_id.in_(call_ids))
        return tuple(
            rows.value(OwnWords, row, officer=name, state=state)
            for row, name, state in self._session.execute(wanted)
        )

    def written_by(self, officer_id: int, since: datetime, limit: int) -> tuple[Written, ...]:
        """What an officer wrote since a time, the latest first."""
        row = OfficerTextRow
        return self._written(row.officer_id == officer_id, row.at >= since, limit=limit)

    def written(self, message_id: str) -> Written | None:
        """Who wrote a text, and to whom; None where no officer did."""
        found = self._written(OfficerTextRow.message_id == message_id, limit=1)
        return found[0] if found else None

    def _written(self, *which: ColumnElement[bool], limit: int) -> tuple[Written, ...]:
        wanted = (
            select(OfficerTextRow, FarmerRow.name, FarmerRow.phone, OutboxRow)
            .join(FarmerRow, FarmerRow.id == OfficerTextRow.farmer_id)
            .join(OutboxRow, OutboxRow.message_id == OfficerTextRow.message_id)
            .where(*which)
            .order_by(OfficerTextRow.id.desc())
            .limit(limit)
        )
        return tuple(
            rows.value(
                Written,
                row,
                farmer=name,
                phone=phone,
                state=text.state,
                due_at=text.due_at,
                reached_at=text.delivered_at,
                detail=text.detail,
                private=text.private,
            )
            for row, name, phone, text in self._session.execute(wanted)
        )

    # --- visits and calls --------------------------------------------------------------------

    def add_visit(
        self, nursery_id: int, officer_id: int, visited_on: date, note: str, at: datetime
    ) -> int:
        """An officer has seen a nursery; the id of the visit."""
        row = VisitRow(
            nursery_id=nursery_id,
            officer_id=officer_id,
            visited_on=visited_on,
            note=note,
            at=at,
        )
        self._session.add(row)
        self._session.flush()
        return row.id

    def visit(self, visit_id: int) -> VisitMade | None:
        """One visit."""
        return next(iter(self._visits(VisitRow.id == visit_id)), None)

    def mend_visit(self, visit_id: int, visited_on: date, note: str) -> None:
        """Sets the day and the words of a visit."""
        which = update(VisitRow).where(VisitRow.id == visit_id)
        self._session.execute(which.values(visited_on=visited_on, note=note))

    def drop_visits(self, ids: Collection[int]) -> None:
        """Takes visits away that were noted by mistake."""
        self._session.execute(delete(VisitRow).where(VisitRow.id.in_(ids)))

    def visits(self, nursery_ids: Collection[int]) -> tuple[VisitMade, ...]:
        """The visits to these nurseries, the latest first."""
        return self._visits(VisitRow.nursery_id.in_(nursery_ids))

    def _visits(self, which: ColumnElement[bool]) -> tuple[VisitMade, ...]:
        wanted = (
            select(VisitRow, OfficerRow.name)
            .join(OfficerRow, OfficerRow.id == VisitRow.officer_id)
            .where(which)
            .order_by(VisitRow.visited_on.desc(), VisitRow.id.desc())
        )
        return tuple(
            rows.value(VisitMade, row, officer=name)
            for row, name in self._session.execute(wanted)
        )

    def call(
        self,
        call_id: int,
        village_ids: Collection[int] | None = None,
        officer: Officer | None = None,
    ) -> PastCall | None:
        """One call for help, handled or not, of some villages (None: of any); `officer`: as far
        as they may see it, or were told of it."""
        found = self._calls(CallRow.id == call_id, *in_sight(village_ids, officer))
        return found[0] if found else None

    def calls_of(self, farmer_id: int, officer: Officer | None = None) -> tuple[PastCall, ...]:
        """All calls of a farmer that an officer may see, the latest first; no officer: all."""
        return self._calls(CallRow.farmer_id == farmer_id, *in_sight(None, officer))

    def _calls(self, *which: ColumnElement[bool]) -> tuple[PastCall, ...]:
        wanted = (
            select(CallRow, FarmerRow, OfficerRow.name)
            .join(FarmerRow, FarmerRow.id == CallRow.farmer_id)
            .outerjoin(OfficerRow, OfficerRow.id == CallRow.handled_by)
            .where(*which)
            .order_by(CallRow.at.desc(), CallRow.id.desc())
        )
        return tuple(
            rows.value(PastCall, row, farmer=rows.farmer(farmer), handled_by=name)
            for row, farmer, name in self._session.execute(wanted)
        )

    # --- villages that change hands ----------------------------------------------------------

    def hand_over(
        self,
        village_id: int,
        giver_id: int | None,
        taker_id: int,
        by_id: int,
        note: str,
        at: datetime,
    ) -> None:
        """Passes a village on. Where no giver is named the taker serves it too."""
        if giver_id is not None:
            self._session.execute(
                delete(OfficerVillageRow).where(
                    OfficerVillageRow.village_id == village_id,
                    OfficerVillageRow.officer_id == giver_id,
                )
            )
        if self._session.get(OfficerVillageRow, (taker_id, village_id)) is None:
            self._session.add(OfficerVillageRow(officer_id=taker_id, village_id=village_id))
        self._session.add(
            HandoverRow(
                village_id=village_id,
                from_officer_id=giver_id,
                to_officer_id=taker_id,
                by_officer_id=by_id,
                note=note,
                at=at,
            )
        )
        self._session.flush()

    def handovers(self, village_id: int) -> tuple[VillageHandover, ...]:
        """When a village changed hands, the latest first."""
        giver, taker, by = (aliased(OfficerRow) for _ in range(3))
        wanted = (
            select(HandoverRow, VillageRow.name, giver.name, taker.name, by.name)
            .join(VillageRow, VillageRow.id == HandoverRow.village_id)
            .outerjoin(giver, giver.id == HandoverRow.from_officer_id)
            .join(taker, taker.id == HandoverRow.to_officer_id)
            .join(by, by.id == HandoverRow.by_officer_id)
            .where(HandoverRow.village_id == village_id)
            .order_by(HandoverRow.id.desc())
        )
        return tuple(
            rows.value(VillageHandover, row, village=village, giver=gave, taker=took, by=did)
            for row, village, gave, took, did in self._session.execute(wanted)
        )


def _between(
    at: InstrumentedAttribute[datetime], since: datetime | None, until: datetime | None
) -> list[ColumnElement[bool]]:
    found: list[ColumnElement[bool]] = [] if since is None else [at >= since]
    return found if until is None else [*found, at < until]
