"""Warnings: who was asked, what they answered, and when it ended."""

from collections.abc import Collection, Iterable
from datetime import datetime

from sqlalchemy import Select, func, select, update
from sqlalchemy.orm import Session

from assistant.agronomy.dangers.rows import RAIN
from assistant.dialogue.values import Kind, Standing
from assistant.people import Farmer
from assistant.store import rows
from assistant.store.inserts import insert_missing
from assistant.store.tables import FarmerRow, OutboxRow, WarningPhoneRow, WarningRow
from assistant.store.values import TextState, WarningAnswers
from assistant.store.values_warnings import Silent

_LEAVING = frozenset({TextState.WAITING, TextState.CLAIMED})


class WarningQueries:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add(
        self,
        village_id: int,
        officer_id: int,
        starts_at: datetime,
        ends_at: datetime,
        now: datetime,
        danger: str = RAIN,
    ) -> Standing:
        """A new warning for a village, given by an officer."""
        row = WarningRow(
            village_id=village_id,
            officer_id=officer_id,
            starts_at=starts_at,
            ends_at=ends_at,
            issued_at=now,
            danger=danger,
        )
        self._session.add(row)
        self._session.flush()
        return rows.standing(row)

    def get(self, warning_id: int) -> Standing | None:
        """A warning, whether it still stands or not."""
        row = self._session.get(WarningRow, warning_id)
        return rows.standing(row) if row else None

    def standing(
        self, village_id: int, now: datetime, danger: str | None = None
    ) -> tuple[Standing, ...]:
        """Warnings of a village that are neither cleared nor over, the latest first; of one
        danger or of all."""
        wanted = _standing(village_id, now)
        if danger is not None:
            wanted = wanted.where(WarningRow.danger == danger)
        return tuple(map(rows.standing, self._session.scalars(wanted)))

    def ask(self, warning_id: int, phones: Iterable[str]) -> int:
        """Keeps that these phones were asked; how many of them were not before."""
        asked = [{"warning_id": warning_id, "phone": phone} for phone in sorted(set(phones))]
        key = [WarningPhoneRow.warning_id, WarningPhoneRow.phone]
        return insert_missing(self._session, WarningPhoneRow, asked, key)

    def asked(self, warning_id: int) -> tuple[str, ...]:
        """The phones that were asked."""
        phone = WarningPhoneRow.phone
        wanted = select(phone).where(WarningPhoneRow.warning_id == warning_id).order_by(phone)
        return tuple(self._session.scalars(wanted))

    def answer(self, warning_id: int, phone: str, answer: str, at: datetime) -> None:
        """Keeps what a phone answered ("covered" or "help"); the latest answer counts."""
        self.ask(warning_id, [phone])
        self._session.execute(
            update(WarningPhoneRow)
            .where(WarningPhoneRow.warning_id == warning_id, WarningPhoneRow.phone == phone)
            .values(answer=answer, answered_at=at)
        )

    def waits_for(self, warning_id: int, phone: str) -> bool:
        """Whether this phone was asked and has not answered."""
        row = self._session.get(WarningPhoneRow, (warning_id, phone), populate_existing=True)
        return row is not None and row.answer is None

    def unanswer(self, warning_id: int, phone: str) -> None:
        """An answer that an officer noted and undid."""
        self._session.execute(
            update(WarningPhoneRow)
            .where(WarningPhoneRow.warning_id == warning_id, WarningPhoneRow.phone == phone)
            .values(answer=None, answered_at=None)
        )

    def clear(self, warning_id: int, now: datetime, *, recalled: bool = False) -> bool:
        """The danger is over, or there was none; False where that was said before."""
        cleared = self._session.scalars(
            update(WarningRow)
            .where(WarningRow.id == warning_id, WarningRow.cleared_at.is_(None))
            .values(cleared_at=now, recalled_at=now if recalled else None)
            .returning(WarningRow.id)
            .execution_options(synchronize_session="fetch")
        )
        return cleared.one_or_none() is not None

    def ask_again(self, warning_id: int, now: datetime) -> tuple[str, ...]:
        """Keeps that the silent are asked a second time; their phones. Not those that were, or
        whose first text has not left."""
        unsent = select(OutboxRow.phone).where(
            OutboxRow.warning_id == warning_id,
            OutboxRow.kind == Kind.WARNING,
            OutboxRow.state.in_(_LEAVING),
        )
        asked = self._session.scalars(
            update(WarningPhoneRow)
            .where(WarningPhoneRow.warning_id == warning_id)
            .where(WarningPhoneRow.answer.is_(None), WarningPhoneRow.asked_again_at.is_(None))
            .where(WarningPhoneRow.phone.not_in(unsent))
            .values(asked_again_at=now)
            .returning(WarningPhoneRow.phone)
            .execution_options(synchronize_session=False)
        )
        return tuple(asked)

    def farmers_asked(self, warning_id: int) -> tuple[Farmer, ...]:
        """Who was asked and still wants texts, by phone."""
        wanted = (
            select(FarmerRow)
            .join(WarningPhoneRow, WarningPhoneRow.phone == FarmerRow.phone)
            .where(WarningPhoneRow.warning_id == warning_id, FarmerRow.stopped_at.is_(None))
            .order_by(FarmerRow.phone)
        )
        return tuple(map(rows.farmer, self._session.scalars(wanted)))

    def silent(self, warning_ids: Collection[int]) -> tuple[Silent, ...]:
        """Who was asked and has not answered, those that surely have the text first."""
        wanted = (
            select(
                FarmerRow.id,
                FarmerRow.phone,
                FarmerRow.name,
                FarmerRow.village_id,
                WarningPhoneRow.asked_again_at,
            )
            .join(WarningPhoneRow, WarningPhoneRow.phone == FarmerRow.phone)
            .where(WarningPhoneRow.warning_id.in_(warning_ids))
            .where(WarningPhoneRow.answer.is_(None))
            .order_by(FarmerRow.name, FarmerRow.phone)
        )
        states = self._states(warning_ids)
        found = [
            Silent(
                farmer_id=farmer_id,
                phone=phone,
                farmer=name,
                village_id=village_id,
                has_it=TextState.DELIVERED in states.get(phone, ()),
                asked_again=again is not None,
                unsent=not _LEAVING.isdisjoint(states.get(phone, ())),
            )
            for farmer_id, phone, name, village_id, again in self._session.execute(wanted)
        ]
        return tuple(sorted(found, key=lambda each: not each.has_it))

    def _states(self, warning_ids: Collection[int]) -> dict[str, set[TextState]]:
        """Where the texts of these warnings stand, by phone."""
        found = self._session.execute(
            select(OutboxRow.phone, OutboxRow.state).where(
                OutboxRow.warning_id.in_(warning_ids), OutboxRow.kind == Kind.WARNING
            )
        )
        states: dict[str, set[TextState]] = {}
        for phone, state in found:
            states.setdefault(phone, set()).add(state)
        return states

    def tally(self, warning_id: int) -> WarningAnswers:
        """How many phones were asked, have the text, are covered and need help."""
        asked = WarningPhoneRow
        said = self._session.execute(
            select(asked.answer, func.count())
            .where(asked.warning_id == warning_id)
            .group_by(asked.answer)
        )
        counts = {answer: count for answer, count in said}
        return WarningAnswers(
            asked=sum(counts.values()),
            delivered=self._delivered(warning_id),
            covered=counts.get("covered", 0),
            need_help=counts.get("help", 0),
        )

    def _delivered(self, warning_id: int) -> int:
        wanted = select(func.count(OutboxRow.phone.distinct())).where(
            OutboxRow.warning_id == warning_id,
            OutboxRow.kind == Kind.WARNING,
            OutboxRow.state == TextState.DELIVERED,
        )
        return self._session.scalar(wanted) or 0


def _standing(village_id: int, now: datetime) -> Select[WarningRow]:
    return (
        select(WarningRow)
        .where(WarningRow.village_id == village_id, WarningRow.cleared_at.is_(None))
        .where(WarningRow.ends_at > now)
        .order_by(WarningRow.issued_at.desc(), WarningRow.id.desc())
    )
