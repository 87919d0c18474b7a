"""The days of one nursery: tasks counted from sowing, field tasks back from transplanting.

The main field follows PhilRice, Field Operations Manual, 2007: plough 21 days before
transplanting, harrow 7 and 14 days later, level 1-2 days before, soil soaked 1-2 days before
ploughing.
"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from dateutil.relativedelta import relativedelta

from assistant.agronomy import constants as c
from assistant.agronomy.constant import Constant
from assistant.agronomy.errors import AgronomyError


class TaskCode(StrEnum):
    """One thing to do; the order here is the order of work within a day."""

    SEED_TEST = "seed_test"
    COLLECT = "collect"
    FIELD_FLOOD = "field_flood"
    FIELD_PLOUGH = "field_plough"
    MIX = "mix"
    SOAK = "soak"
    DRAIN_SEED = "drain_seed"
    SOW = "sow"
    RAIN_WATCH = "rain_watch"
    WATER = "water"
    FIELD_PUDDLE = "field_puddle"
    UNCOVER_FLOOD = "uncover_flood"
    KEEP_WATER = "keep_water"
    COLOUR_CHECK = "colour_check"
    LEAF_COUNT = "leaf_count"
    CHOOSE_DAY = "choose_day"
    FIELD_LEVEL = "field_level"
    DRAIN_BED = "drain_bed"
    TRANSPLANT = "transplant"
    OVERDUE = "overdue"


_ORDER = {code: place for place, code in enumerate(TaskCode)}
_DRAIN_BEFORE = int(c.DRAIN_BEFORE_TRANSPLANT_D.value)


class DayChoice(StrEnum):
    """What to make of a transplanting day somebody asks for."""

    GOOD = "good"
    EARLY = "early"
    LATE = "late"
    IMPOSSIBLE = "impossible"


def day_after(start: dt.date, days: float) -> dt.date:
    """The date a whole number of days after `start` (before it, where negative)."""
    return start + relativedelta(days=int(days))


@dataclass(frozen=True)
class Anchors:
    """What the days hang on: the sowing, and what really happened or was chosen since.

    Args:
        sow: day 0
        uncover: the day of uncovering where it was moved, else None (day 5)
        transplant: the chosen transplanting day, else None (taken as day 18)

    Raises:
        AgronomyError: an uncovering after day 14 or not before the bed is drained, a
            transplanting day before 8 or after 45. Ask `choose_transplant` first.
    """

    sow: dt.date
    uncover: dt.date | None = None
    transplant: dt.date | None = None

    def __post_init__(self) -> None:
        if not 0 < self.day_of(self.uncover_date) <= c.UNCOVER_LATEST_DAY.value:
            raise AgronomyError(f"uncover: expected day 1 to 14 after sowing, got {self}")
        if judge_transplant(self.sow, self.transplant_date) is DayChoice.IMPOSSIBLE:
            raise AgronomyError(f"transplant: expected day 8 to 45 after sowing, got {self}")
        if self.uncover_date >= self.drain_date:
            raise AgronomyError(f"uncover: expected before the bed is drained, got {self}")

    @property
    def uncover_date(self) -> dt.date:
        """The day the bed is uncovered and flooded."""
        return self.uncover or day_after(self.sow, c.UNCOVER_DAY.value)

    @property
    def transplant_date(self) -> dt.date:
        """The transplanting day, chosen or assumed."""
        return self.transplant or day_after(self.sow, c.TRANSPLANT_ASSUMED_DAY.value)

    @property
    def drain_date(self) -> dt.date:
        """The day the bed is drained, so that mats can be lifted."""
        return day_after(self.transplant_date, -_DRAIN_BEFORE)

    def day_of(self, on: dt.date) -> int:
        """Days from sowing to `on`."""
        return (on - self.sow).days


@dataclass(frozen=True)
class Task:
    """One task: its day from sowing, its date, and its last date where it lasts."""

    code: TaskCode
    day: int
    date: dt.date
    until: dt.date | None = None


def sow_for_transplant(transplant: dt.date) -> dt.date:
    """The sowing day that puts transplanting on a wished day."""
    return day_after(transplant, -c.TRANSPLANT_ASSUMED_DAY.value)


def judge_transplant(sow: dt.date, transplant: dt.date) -> DayChoice:
    """Where a wished transplanting day falls against the window of a sowing."""
    day = (transplant - sow).days
    if not c.TRANSPLANT_EARLIEST_DAY.value <= day <= c.TRANSPLANT_LATEST_DAY.value:
        return DayChoice.IMPOSSIBLE
    if day < c.TRANSPLANT_FIRST_DAY.value:
        return DayChoice.EARLY
    return DayChoice.LATE if day > c.TRANSPLANT_LAST_DAY.value else DayChoice.GOOD


def fits(sow: dt.date, uncover: dt.date | None, transplant: dt.date | None) -> bool:
    """Whether three dates can belong to one nursery."""
    try:
        Anchors(sow, uncover, transplant)
    except AgronomyError:
        return False
    return True


def calendar(anchors: Anchors) -> tuple[Task, ...]:
    """All tasks of one nursery in the order of their dates."""
    spans = _bed_spans(anchors) | _field_spans(anchors)
    tasks = (
        Task(code, anchors.day_of(start), start, until)
        for code, (start, until) in spans.items()
        if until is None or until >= start
    )
    return tuple(sorted(tasks, key=lambda task: (task.date, _ORDER[task.code])))


_Spans = dict[TaskCode, tuple[dt.date, dt.date | None]]


def _bed_spans(anchors: Anchors) -> _Spans:
    """Tasks of the bed. Late uncovering stretches the watering; a day chosen outside the
    window stretches the window, but never moves `overdue`, which is about the age of leaves."""

    def day(constant: Constant) -> dt.date:
        return day_after(anchors.sow, constant.value)

    uncover, drain, planting = anchors.uncover_date, anchors.drain_date, anchors.transplant_date
    first, last = day(c.TRANSPLANT_FIRST_DAY), day(c.TRANSPLANT_LAST_DAY)
    return {
        TaskCode.SEED_TEST: (day(c.SEED_TEST_DAY), None),
        TaskCode.COLLECT: (day(c.COLLECT_DAY), None),
        TaskCode.MIX: (day(c.MIX_DAY), None),
        TaskCode.SOAK: (day(c.SOAK_DAY), None),
        TaskCode.DRAIN_SEED: (day(c.DRAIN_SEED_DAY), None),
        TaskCode.SOW: (anchors.sow, None),
        TaskCode.WATER: (anchors.sow, day_after(uncover, -1)),
        TaskCode.RAIN_WATCH: (anchors.sow, day(c.RAIN_WATCH_LAST_DAY)),
        TaskCode.UNCOVER_FLOOD: (uncover, None),
        TaskCode.KEEP_WATER: (day_after(uncover, 1), day_after(drain, -1)),
        TaskCode.COLOUR_CHECK: (day(c.COLOUR_CHECK_DAY), None),
        TaskCode.LEAF_COUNT: (day(c.LEAF_COUNT_DAY), None),
        TaskCode.CHOOSE_DAY: (day(c.LEAF_COUNT_DAY), None),
        TaskCode.DRAIN_BED: (drain, None),
        TaskCode.TRANSPLANT: (min(first, planting), max(last, planting)),
        TaskCode.OVERDUE: (day_after(last, 1), None),
    }


def _field_spans(anchors: Anchors) -> _Spans:
    """Tasks of the main field, back from transplanting."""
    planting = anchors.transplant_date
    plough = day_after(planting, -c.PLOUGH_BEFORE_D.value)
    harrow = day_after(plough, c.HARROW_EVERY_D.value)
    return {
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
