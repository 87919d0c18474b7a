"""Nurseries as bars on a line of days: of the season picture, and of a nursery's own page."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from assistant.agronomy.nursery import Nursery
from assistant.agronomy.stages import Stage, StageDays, course_of, shown_until
from assistant.people import Farmer, Village
from assistant.reminders.diary import DiaryTask, entries, still_to_do
from assistant.wording.message import Say
from assistant.wording.plan_practice import task_name

BACK_D, AHEAD_D = 42, 49  # days around today that a line of many bars shows at most
ROUND_D = 2  # days before and after what is drawn


@dataclass(frozen=True)
class BarPiece:
    """One stage of one bed: its first day, and the day after its last."""

    stage: Stage
    first: date
    end: date


@dataclass(frozen=True)
class Next:
    """The next thing to do, but for the work of every day."""

    what: Say
    on: date


@dataclass(frozen=True)
class Bar:
    """One nursery on the line; `drained` lies over the other pieces."""

    farmer: Farmer
    village: Village | None
    nursery: Nursery
    day: int
    stage: Stage
    pieces: tuple[BarPiece, ...]
    drained: BarPiece | None
    next: Next | None


@dataclass(frozen=True)
class Axis:
    """The days that are drawn: `first` to the day before `end`, with today in them."""

    first: date
    end: date
    today: date

    @property
    def days(self) -> int:
        """How many days."""
        return (self.end - self.first).days

    def place(self, day: date) -> int:
        """Where a day begins, in days from the left, held to what is drawn."""
        return min(max((day - self.first).days, 0), self.days)

    @property
    def weeks(self) -> tuple[date, ...]:
        """The Mondays."""
        ahead = -self.first.weekday() % 7
        return tuple(self.first + timedelta(days=day) for day in range(ahead, self.days, 7))


def bar_of(farmer: Farmer, nursery: Nursery, village: Village | None, today: date) -> Bar:
    """A nursery as it is drawn on a day."""
    course, day = course_of(nursery), nursery.day(today)
    coming = (
        entry
        for entry in entries(nursery)
        if entry.day >= today and not entry.until and still_to_do(entry, nursery)
    )
    return Bar(
        farmer=farmer,
        village=village,
        nursery=nursery,
        day=day,
        stage=course.at(day),
        pieces=tuple(_piece(nursery, span) for span in shown_until(course, day)),
        drained=_piece(nursery, course.drained) if course.drained else None,
        next=_next(nursery, next(coming, None)),
    )


def _piece(nursery: Nursery, span: StageDays) -> BarPiece:
    first, end = (nursery.sow_date + timedelta(days=day) for day in (span.first, span.end))
    return BarPiece(span.stage, first, end)


def _next(nursery: Nursery, entry: DiaryTask | None) -> Next | None:
    return Next(task_name(entry.task, nursery.practice), entry.day) if entry else None


def axis_of(bars: Sequence[Bar], today: date) -> Axis:
    """The days that hold these bars and today, some weeks to each side at most."""
    first = min(today, *(bar.pieces[0].first for bar in bars))
    end = max(today + timedelta(days=1), *(bar.pieces[-1].end for bar in bars))
    around, back, ahead = (timedelta(days=days) for days in (ROUND_D, BACK_D, AHEAD_D))
    return Axis(max(first - around, today - back), min(end + around, today + ahead), today)
