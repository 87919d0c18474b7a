"""What an officer must look at: silence, signs, old seedlings, young beds under a warning."""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import fields, replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from sqlalchemy import Select, false, func, select
from sqlalchemy.orm import Session

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.dangers.rows import RAIN
from assistant.dialogue.values import Standing
from assistant.people import Farmer
from assistant.reminders.values import Reminder, State
from assistant.store import rows
from assistant.store.queries.nurseries import sown_between
from assistant.store.tables import (
    FarmerRow,
    NurseryRow,
    ReminderRow,
    WarningPhoneRow,
    WarningRow,
)
from assistant.store.tables_officers import VisitRow
from assistant.store.values_officers import UnderWarning, WatchedBed

Scope = Collection[int] | None
"""Ids of villages; None is everybody, also farmers of no village."""

Watched = tuple[Farmer, WatchedBed, Reminder]

# Plain columns, read by their places: a lead's list has thousands of lines.
_OF_FARMER = tuple(getattr(FarmerRow, each.name) for each in fields(Farmer))
_OF_BED = tuple(getattr(NurseryRow, name) for name in WatchedBed._fields)
_OF_REMINDER = tuple(getattr(ReminderRow, each.name) for each in fields(Reminder))
_BED_AT, _REMINDER_AT = len(_OF_FARMER), len(_OF_FARMER) + len(_OF_BED)
_PRACTICE_AT = WatchedBed._fields.index("practice")
_CLIMATE_AT = WatchedBed._fields.index("climate")


class Watch:
    def __init__(self, session: Session) -> None:
        self._session = session

    def unanswered(
        self, scope: Scope, tasks: Iterable[TaskCode], since: date
    ) -> tuple[Watched, ...]:
        """Tasks of these kinds, of a day and later, that nobody answered, by their day."""
        return self._watched(self._unanswered(scope, tasks, since))

    def silent(self, scope: Scope, tasks: Iterable[TaskCode], since: date) -> tuple[int, ...]:
        """The ids of nurseries that have such tasks."""
        wanted = self._unanswered(scope, tasks, since).with_only_columns(
            NurseryRow.id, maintain_column_froms=True
        )
        return tuple(self._session.scalars(wanted.order_by(None).distinct()))

    def answered(
        self, scope: Scope, task: TaskCode, answer: str, since: date
    ) -> tuple[Watched, ...]:
        """Tasks of one kind, of a day and later, that got this answer, by their day."""
        wanted = self._reminders(scope, since).where(
            ReminderRow.task == task, ReminderRow.answer == answer
        )
        return self._watched(wanted)

    def old(
        self, scope: Scope, sown_from: date, sown_until: date
    ) -> tuple[tuple[Farmer, WatchedBed], ...]:
        """Beds sown between two days and not known to be planted out, the oldest first."""
        wanted = (
            _open_nurseries(scope)
            .where(NurseryRow.sow_date.between(sown_from, sown_until))
            .where(NurseryRow.transplanted_on.is_(None))
            .order_by(NurseryRow.sow_date, NurseryRow.id)
        )
        return tuple((farmer, bed) for farmer, bed, _ in self._beds(wanted))

    def urea_advised(self, scope: Scope, since: date) -> tuple[tuple[Farmer, WatchedBed], ...]:
        """Beds for which urea was advised on a day or later, by that day."""
        wanted = (
            _open_nurseries(scope)
            .where(NurseryRow.urea_on >= since)
            .order_by(NurseryRow.urea_on, NurseryRow.id)
        )
        return tuple((farmer, bed) for farmer, bed, _ in self._beds(wanted))

    def under_warning(
        self,
        scope: Scope,
        now: datetime,
        sown_from: date,
        sown_until: date,
        dangers: Collection[str] = (RAIN,),
    ) -> tuple[UnderWarning, ...]:
        """Beds sown between two days in villages where a warning of one of these dangers
        stands, by the latest one of each."""
        stands = (
            WarningRow.cleared_at.is_(None),
            WarningRow.ends_at > now,
            WarningRow.danger.in_(dangers),
        )
        warned = select(WarningRow.village_id).where(*stands).distinct()
        here = set(self._session.scalars(warned))
        here &= here if scope is None else set(scope)
        if not here:  # on most days, and the beds need not be looked through
            return ()
        wanted = (
            select(FarmerRow, NurseryRow, WarningRow, WarningPhoneRow.answer)
            .join(NurseryRow, NurseryRow.farmer_id == FarmerRow.id)
            .join(WarningRow, WarningRow.village_id == FarmerRow.village_id)
            .outerjoin(
                WarningPhoneRow,
                (WarningPhoneRow.warning_id == WarningRow.id)
                & (WarningPhoneRow.phone == FarmerRow.phone),
            )
            .where(NurseryRow.closed.is_(False), *_within(here))
            .where(sown_between(sown_from, sown_until), *stands)
            .order_by(WarningRow.issued_at, WarningRow.id)
        )
        latest = {
            (nursery.id, warning.danger): UnderWarning(
                rows.farmer(farmer), nursery, rows.standing(warning, answer)
            )
            for (farmer, _, warning, answer), nursery in rows.sound(
                self._session.execute(wanted)
            )
        }
        return tuple(latest.values())

    def standing(self, village_ids: Collection[int], now: datetime) -> tuple[Standing, ...]:
        """The latest warning of each village that is neither cleared nor over."""
        wanted = (
            select(WarningRow)
            .where(WarningRow.village_id.in_(village_ids))
            .where(WarningRow.cleared_at.is_(None), WarningRow.ends_at > now)
            .order_by(WarningRow.issued_at, WarningRow.id)
        )
        latest = {row.village_id: rows.standing(row) for row in self._session.scalars(wanted)}
        return tuple(latest.values())

    def last_visits(self, nursery_ids: Collection[int]) -> dict[int, date]:
        """The day of the latest visit to each of these nurseries that was ever visited."""
        if not nursery_ids:
            return {}
        wanted = (
            select(VisitRow.nursery_id, func.max(VisitRow.visited_on))
            .where(VisitRow.nursery_id.in_(nursery_ids))
            .group_by(VisitRow.nursery_id)
        )
        return {nursery_id: day for nursery_id, day in self._session.execute(wanted)}

    def _unanswered(
        self, scope: Scope, tasks: Iterable[TaskCode], since: date
    ) -> "Select[FarmerRow, NurseryRow, ReminderRow]":
        earliest = datetime.combine(since, time(), UTC) - timedelta(days=1)  # any zone's day
        return self._reminders(scope, since).where(
            ReminderRow.state == State.UNANSWERED,
            ReminderRow.task.in_(list(tasks)),
            ReminderRow.due_at >= earliest,  # what the index is ordered by
        )

    def _reminders(
        self, scope: Scope, since: date
    ) -> "Select[FarmerRow, NurseryRow, ReminderRow]":
        return (
            _open_nurseries(scope)
            .add_columns(ReminderRow)
            .join(ReminderRow, ReminderRow.nursery_id == NurseryRow.id)
            .where(ReminderRow.day >= since)
            .order_by(ReminderRow.day, ReminderRow.id)
        )

    def _watched(
        self, wanted: "Select[FarmerRow, NurseryRow, ReminderRow]"
    ) -> tuple[Watched, ...]:
        found = self._beds(wanted, _OF_REMINDER)
        return tuple((farmer, bed, Reminder(*rest)) for farmer, bed, rest in found)

    def _beds(
        self, wanted: "Select[*tuple[Any, ...]]", more: tuple[Any, ...] = ()
    ) -> Iterator[tuple[Farmer, WatchedBed, Sequence[Any]]]:
        """The farmers and beds of a statement, with more columns of it. A bed whose practice
        is gone is passed over, and the session notes it."""
        lean = wanted.with_only_columns(
            *_OF_FARMER, *_OF_BED, *more, maintain_column_froms=True
        )
        known = self._session.info[rows.PRACTICES]
        for row in self._session.connection().execute(lean).all():  # at once: thousands
            bed = list(row[_BED_AT:_REMINDER_AT])
            code, climate = bed[_PRACTICE_AT], bed[_CLIMATE_AT]
            if code not in known:
                rows.note_unreadable(
                    self._session, bed[0], rows.no_practice(bed[0], code, known)
                )
                continue
            bed[_PRACTICE_AT] = known[code]
            bed[_CLIMATE_AT] = None if climate is None else tuple(climate)
            farmer = Farmer(*row[:_BED_AT])
            if farmer.phone.startswith(rows.NO_PHONE):
                farmer = replace(farmer, phone="")
            yield farmer, WatchedBed._make(bed), row[_REMINDER_AT:]


def _open_nurseries(scope: Scope) -> "Select[FarmerRow, NurseryRow]":
    return (
        select(FarmerRow, NurseryRow)
        .join(NurseryRow, NurseryRow.farmer_id == FarmerRow.id)
        .where(NurseryRow.closed.is_(False), *_within(scope))
    )


def _within(scope: Scope) -> list[Any]:
    if scope is None:
        return []
    return [FarmerRow.village_id.in_(scope) if scope else false()]
