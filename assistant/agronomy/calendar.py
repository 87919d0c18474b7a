"""The days of one nursery: tasks counted from sowing, field tasks back from transplanting.

The days of the bed come from its practice. The main field follows PhilRice, Field Operations
Manual, 2007: plough 21 days before transplanting, harrow 7 and 14 days later, level 1-2 days
before, soil soaked 1-2 days before ploughing.
"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

from assistant.agronomy import constants as c
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.lot.soaking import Sprouting
from assistant.agronomy.practices import MAT, Anchor, DayPoint, Practice, TaskRule, Window
from assistant.agronomy.tasks import Task as Task
from assistant.agronomy.tasks import TaskCode as TaskCode

ORDER = {code: place for place, code in enumerate(TaskCode)}


class DayChoice(StrEnum):
    """What to make of a transplanting day somebody asks for."""

    GOOD = "good"
    EARLY = "early"
    LATE = "late"
    IMPOSSIBLE = "impossible"


def day_after(start: dt.date, days: float) -> dt.date:
    """The date a whole number of days after `start` (before it, where negative)."""
    return start + dt.timedelta(days=int(days))


@dataclass(frozen=True)
class Anchors:
    """What the days hang on: the sowing, and what really happened or was chosen since.

    Args:
        sow: day 0
        uncover: the day of uncovering where it was moved, else None (day 5 of a mat)
        transplant: the chosen transplanting day, else None (taken as day 18 of a mat)
        practice: how the seedlings are raised
        sprouting: the days that this seed takes to sprout, where not those of the practice

    Raises:
        AgronomyError: an uncovering after the practice's last day for it or not before the bed
            is drained, a transplanting day outside its limits. Ask `choose_transplant` first.
    """

    sow: dt.date
    uncover: dt.date | None = None
    transplant: dt.date | None = None
    practice: Practice = MAT
    sprouting: Sprouting | None = None

    def __post_init__(self) -> None:
        latest, window = self.practice.days.uncover_latest.value, self.practice.window
        if not 0 < self.day_of(self.uncover_date) <= latest:
            raise AgronomyError(
                f"uncover: expected day 1 to {latest:g} after sowing, got {self._told()}"
            )
        choice = judge_transplant(self.sow, self.transplant_date, self.practice)
        if choice is DayChoice.IMPOSSIBLE:
            raise AgronomyError(
                f"transplant: expected day {window.earliest.value:g} to "
                f"{window.latest.value:g} after sowing, got {self._told()}"
            )
        if self.uncover_date >= self.drain_date:
            raise AgronomyError(
                f"uncover: expected before the bed is drained, got {self._told()}"
            )

    @cached_property
    def uncover_date(self) -> dt.date:
        """The day the bed is uncovered and flooded."""
        return self.uncover or day_after(self.sow, self.practice.days.uncover.value)

    @cached_property
    def transplant_date(self) -> dt.date:
        """The transplanting day, chosen or assumed."""
        return self.transplant or day_after(self.sow, self.practice.window.assumed.value)

    @cached_property
    def drain_date(self) -> dt.date:
        """The day the bed is drained, so that mats can be lifted."""
        return day_after(self.transplant_date, -self.practice.days.drain_before.value)

    def day_of(self, on: dt.date) -> int:
        """Days from sowing to `on`."""
        return (on - self.sow).days

    def date_of(self, point: DayPoint) -> dt.date:
        """The date of a point of the practice."""
        anchors = {
            Anchor.SOW: self.sow,
            Anchor.UNCOVER: self.uncover_date,
            Anchor.DRAIN: self.drain_date,
            Anchor.TRANSPLANT: self.transplant_date,
        }
        return day_after(anchors[point.anchor], point.days.value)

    def _told(self) -> str:
        return (
            f"sow {self.sow}, uncover {self.uncover}, transplant {self.transplant} "
            f"({self.practice.code})"
        )


def sow_for_transplant(transplant: dt.date, practice: Practice = MAT) -> dt.date:
    """The sowing day that puts transplanting on a wished day."""
    return day_after(transplant, -practice.window.assumed.value)


def judge_transplant(sow: dt.date, transplant: dt.date, practice: Practice = MAT) -> DayChoice:
    """Where a wished transplanting day falls against the window of a sowing."""
    day, window = (transplant - sow).days, practice.window
    if not window.earliest.value <= day <= window.latest.value:
        return DayChoice.IMPOSSIBLE
    if day < window.first.value:
        return DayChoice.EARLY
    return DayChoice.LATE if day > window.last.value else DayChoice.GOOD


def fits(
    sow: dt.date,
    uncover: dt.date | None,
    transplant: dt.date | None,
    practice: Practice = MAT,
) -> bool:
    """Whether three dates can belong to one nursery."""
    try:
        Anchors(sow, uncover, transplant, practice)
    except AgronomyError:
        return False
    return True


def calendar(anchors: Anchors) -> tuple[Task, ...]:
    """All tasks of one nursery in the order of their dates."""
    tasks = (*_bed_tasks(anchors), *_window_tasks(anchors), *_field_tasks(anchors))
    wanted = (task for task in tasks if task.until is None or task.until >= task.date)
    return tuple(sorted(wanted, key=lambda task: (task.date, ORDER[task.code])))


def _task(
    anchors: Anchors,
    code: TaskCode,
    start: dt.date,
    until: dt.date | None = None,
    every_d: int = 1,
) -> Task:
    return Task(code, anchors.day_of(start), start, until, every_d)


def _bed_tasks(anchors: Anchors) -> tuple[Task, ...]:
    """Tasks of the bed, by the practice's own days."""
    return tuple(
        _task(
            anchors,
            rule.code,
            _start(anchors, rule),
            None if rule.end is None else anchors.date_of(rule.end),
            rule.every_d,
        )
        for rule in anchors.practice.days.tasks
    )


def _start(anchors: Anchors, rule: TaskRule) -> dt.date:
    """The first day of a task. Seed that sprouts late is soaked and drained earlier, and what
    comes before the soaking with it; colour is not looked at while shoots are still pale, and
    leaves are not counted under the cover."""
    late = anchors.sprouting
    if rule.code is TaskCode.COLOUR_CHECK:
        return _colour(anchors, anchors.date_of(rule.start))
    if rule.code in _OF_LEAVES and _uncovered_late(anchors):
        return max(anchors.date_of(rule.start), day_after(anchors.uncover_date, 1))
    if late and rule.code is TaskCode.SOAK:
        return day_after(anchors.sow, -sum(late))
    if late and rule.code is TaskCode.DRAIN_SEED:
        return day_after(anchors.sow, -late.incubate_d)
    if late and rule.start.anchor is Anchor.SOW and rule.start.days.value < 0:
        soaked = -anchors.practice.soak_day
        return day_after(anchors.date_of(rule.start), min(soaked - sum(late), 0))
    return anchors.date_of(rule.start)


_OF_LEAVES = (TaskCode.LEAF_COUNT, TaskCode.CHOOSE_DAY)


def _uncovered_late(anchors: Anchors) -> bool:
    days = anchors.practice.days.uncover.value
    return anchors.uncover_date > day_after(anchors.sow, days)


def _colour(anchors: Anchors, planned: dt.date) -> dt.date:
    """Shoots that were uncovered later than planned are pale for some days, which is no
    hunger; where all goes as planned the practice's own day holds."""
    if not _uncovered_late(anchors):
        return planned
    return max(planned, day_after(anchors.uncover_date, c.PALE_AFTER_UNCOVERING_D.value))


def _window_tasks(anchors: Anchors) -> tuple[Task, Task]:
    """Transplanting and overdue. A day chosen outside the window stretches the window, but
    never moves `overdue`, which is about the age of leaves."""
    window: Window = anchors.practice.window
    first, last = (day_after(anchors.sow, end.value) for end in (window.first, window.last))
    planting = anchors.transplant_date
    return (
        _task(anchors, TaskCode.TRANSPLANT, min(first, planting), max(last, planting)),
        _task(anchors, TaskCode.OVERDUE, day_after(last, 1)),
    )


def _field_tasks(anchors: Anchors) -> tuple[Task, ...]:
    """Tasks of the main field, back from transplanting."""
    planting = anchors.transplant_date
    plough = day_after(planting, -c.PLOUGH_BEFORE_D.value)
    harrow = day_after(plough, c.HARROW_EVERY_D.value)
    spans = {
        TaskCode.FIELD_FLOOD: (
            day_after(plough, -c.FLOOD_BEFORE_PLOUGH_D.value),
            day_after(plough, -1),
        ),
        TaskCode.FIELD_PLOUGH: (plough, None),
        TaskCode.FIELD_PUDDLE: (harrow, day_after(harrow, c.HARROW_EVERY_D.value)),
        TaskCode.FIELD_LEVEL: (
            day_after(planting, -c.LEVEL_FIRST_BEFORE_D.value),
            day_after(planting, -c.LEVEL_LAST_BEFORE_D.value),
        ),
    }
    return tuple(_task(anchors, code, *span) for code, span in spans.items())
