"""The clock of a bed: its days by monthly means, a figure felt of late, and counted leaves.

The days of a practice hold where it is warm. A leaf opens for every 83 degree-days above 9 C
(CERES-Rice coefficients, see `growth.leaves`), and mats are planted with 3 leaves on day 15: so
a day of a practice stands for 83 x 3 / 15 = 16.6 degree-days, a mean of 25.6 C. Where it is
cooler, days are as long as it takes to gather that warmth; they are never shorter, since
nothing was seen in print of beds that were ready sooner. Where no means of the months are
known, a mean that was felt stretches the days around it, and the others are warm ones.
"""

import math
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cached_property

from assistant.agronomy import constants as c
from assistant.agronomy.growth.leaf_pace import HALF, forecast_by_pace, forecast_by_warmth
from assistant.agronomy.lot.programme_variety import BEFORE_WINDOW
from assistant.agronomy.practices import Anchor, DayPoint, Days, Practice, TaskRule, Window
from assistant.agronomy.sourced.constant import Constant

MONTHS = 12
HEAT_OF_A_DAY = c.PHYLLOCHRON_C_D.value * c.LEAVES_FIRST.value / c.TRANSPLANT_FIRST_DAY.value
WARM_C = c.LEAF_BASE_C.value + HEAT_OF_A_DAY
"""The mean [C] for which the days of a practice stand."""

_LONGEST_D = 500  # no bed is waited for longer
_COUNT_AGAIN_D = 4  # a count sooner after the last would tell nothing new
_HOLDS = timedelta(days=int(c.WARMTH_HOLDS_D.value))


@dataclass(frozen=True)
class Count:
    """So many open leaves on a day from sowing."""

    leaves: float
    day: int


@dataclass(frozen=True)
class Clock:
    """The warmth of one bed from its sowing on.

    Args:
        sow: day 0
        months: the mean temperature [C] of each month, January first; None: not known
        felt_c, felt_on: a mean [C] that was felt around a day, which goes before the month's
    """

    sow: date
    months: tuple[float, ...] | None = None
    felt_c: float | None = None
    felt_on: date | None = None

    def mean_c(self, on: date) -> float | None:
        """The mean [C] of a day as far as anybody said it."""
        if self._felt(on):
            return self.felt_c
        return None if self.months is None else self.months[on.month - 1]

    @property
    def felt_until(self) -> date | None:
        """The last day for which a mean that was felt stands; None where there is none."""
        return None if self.felt_on is None else self.felt_on + _HOLDS

    def _felt(self, on: date) -> bool:
        return self.felt_on is not None and abs(on - self.felt_on) <= _HOLDS

    def warmth(self, day: int) -> float:
        """What a day from sowing counts for [degree-days C]. Colder ones count as the coldest
        at which a leaf comes: days grow long there, and never endless."""
        mean_c = self.mean_c(self.sow + timedelta(days=day))
        if mean_c is None:
            return HEAT_OF_A_DAY
        held = min(max(mean_c, c.LEAF_COLDEST_C.value), c.LEAF_CAP_C.value)
        return held - c.LEAF_BASE_C.value

    def stretched(self, day: float) -> int:
        """On which day from sowing a day of the practice falls: never sooner."""
        if not self.is_known:
            return int(day)
        return self._gathered(int(day) * HEAT_OF_A_DAY, 0, most=HEAT_OF_A_DAY)

    def day_of_leaf(self, target: float, count: Count) -> int:
        """The day from sowing of the `target`-th open leaf, by a count: from the warmth to come
        where it is known, else at the pace so far."""
        if count.leaves >= target:
            return count.day
        if self.months is not None:
            heat = (target - count.leaves - HALF) * c.PHYLLOCHRON_C_D.value
            return self._gathered(heat, count.day, most=c.LEAF_CAP_C.value)
        mean_c = self.mean_c(self.sow + timedelta(days=count.day))
        if mean_c is not None:
            return forecast_by_warmth(target, count.leaves, count.day, mean_c).day
        return forecast_by_pace(target, count.leaves, max(count.day, 1)).day

    @property
    def is_known(self) -> bool:
        """Whether anybody said how warm it is."""
        return self.months is not None or self.felt_on is not None

    def _gathered(self, heat: float, since: int, most: float) -> int:
        """The day on which so much warmth is gathered from a day on, no day counting for more
        than `most`."""
        day, short = since, heat
        while short > 1e-6 and day - since < _LONGEST_D:
            short -= min(self.warmth(day), most)
            day += 1
        return day


@dataclass(frozen=True)
class Paced:
    """A practice with the days that it has in one bed, by its clock and a count of leaves."""

    practice: Practice
    clock: Clock
    count: Count | None = None

    @cached_property
    def by_clock(self) -> Practice:
        """By the warmth alone."""
        if not self.clock.is_known:
            return self.practice
        return replace(
            self.practice, window=self._window(self.practice.window), days=self._days()
        )

    @cached_property
    def now(self) -> Practice:
        """By the warmth and the leaves that were counted."""
        if self.count is None or self.count.leaves <= 0 or self.count.day <= 0:
            return self.by_clock
        window = self._counted(self.practice.window, self.by_clock.window, self.count)
        days = _asked_again(self.practice, self.by_clock, window, self.count)
        return replace(self.by_clock, window=window, days=days)

    def _window(self, window: Window) -> Window:
        """Its first and last day stretched; what lies beyond them keeps its distance."""
        first, last = (self.clock.stretched(end.value) for end in (window.first, window.last))
        return _at(window, window, first, last)

    def _counted(self, plain: Window, stretched: Window, count: Count) -> Window:
        """The window that a count makes of it, never before that of the practice."""
        first = self.clock.day_of_leaf(plain.leaves_first.value, count)
        if count.leaves >= plain.leaves_first.value:
            first = min(first, _ready(plain, stretched, count))
        days = self.by_clock.days
        uncovered = int(days.uncover.value + days.drain_before.value) + 1
        first = max(first, int(plain.first.value), uncovered)
        span = int(plain.last.value - plain.first.value)
        last = self.clock.day_of_leaf(plain.leaves_last.value, count)
        if count.leaves >= plain.leaves_last.value:
            last = min(last, int(stretched.last.value))
        last = max(last, int(plain.last.value), first + span)
        if not self.clock.is_known:  # a pace alone moves nothing past what a bed bears
            last = min(last, int(plain.latest.value))
            first = min(first, last)
            return _at(plain, plain, first, last, latest=int(plain.latest.value))
        return _at(plain, plain, first, last)

    def _days(self) -> Days:
        days = self.practice.days
        return replace(
            days,
            uncover=_on(days.uncover, self.clock.stretched(days.uncover.value)),
            uncover_latest=_on(
                days.uncover_latest, self.clock.stretched(days.uncover_latest.value)
            ),
            tasks=tuple(map(self._rule, days.tasks)),
        )

    def _rule(self, rule: TaskRule) -> TaskRule:
        end = None if rule.end is None else self._point(rule.end)
        return replace(rule, start=self._point(rule.start), end=end)

    def _point(self, point: DayPoint) -> DayPoint:
        """Days after sowing are stretched; those before it, and from other anchors, are not."""
        if point.anchor is not Anchor.SOW or point.days.value <= 0:
            return point
        return replace(point, days=_on(point.days, self.clock.stretched(point.days.value)))


def _ready(plain: Window, stretched: Window, count: Count) -> int:
    """The day from which leaves that are enough by now were enough: that of the practice, but
    where the pace so far says that the bed was slow it was not ready weeks before the count."""
    reached = math.ceil(count.day * plain.leaves_first.value / count.leaves)
    slow = reached > stretched.last.value
    return reached if slow else int(stretched.first.value)


def _on(constant: Constant, value: float) -> Constant:
    """A day as it falls here; its published range was that of the warm season."""
    if value == constant.value:
        return constant
    return replace(constant, value=float(value), low=None, high=None)


def _at(
    window: Window, plain: Window, first: int, last: int, latest: int | None = None
) -> Window:
    """A window with another first and last day; the days around them keep their distance."""
    moved, later = first - plain.first.value, last - plain.last.value
    return replace(
        window,
        first=_on(window.first, first),
        last=_on(window.last, last),
        assumed=_on(window.assumed, min(plain.assumed.value + moved, last)),
        earliest=_on(window.earliest, plain.earliest.value + max(moved, 0)),
        latest=_on(window.latest, plain.latest.value + later if latest is None else latest),
    )


def _asked_again(plain: Practice, stretched: Practice, window: Window, count: Count) -> Days:
    """Leaves are counted once more before a window that has moved, as long before as ever."""
    found = []
    for rule, before in zip(stretched.days.tasks, plain.days.tasks, strict=True):
        day = window.first.value - (plain.window.first.value - before.start.days.value)
        if rule.code in BEFORE_WINDOW and day >= count.day + _COUNT_AGAIN_D:
            rule = replace(rule, start=replace(rule.start, days=_on(rule.start.days, day)))
        found.append(rule)
    return replace(stretched.days, tasks=tuple(found))
