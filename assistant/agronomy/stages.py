"""The stages of a bed by day from sowing: how it looks, and what may be done with it.

A stage lasts from its first day to the day before the next one. The day of uncovering counts as
covered until somebody says that it is uncovered ("the first five days" are days 0 to 5).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.nursery import Nursery

OLD_SHOWN_D = 5  # days after the last for transplanting that a time line shows
PLANTED_SHOWN_D = 10  # days after transplanting: gap filling, then the season's result


class Stage(StrEnum):
    """Where a bed stands in its season, in the order of time."""

    PLANNED = "planned"
    COVERED = "covered"
    GROWING = "growing"
    DRAINED = "drained"
    READY = "ready"
    OLD = "old"
    PLANTED = "planted"


@dataclass(frozen=True)
class StageDays:
    """Days of one stage, counted from sowing; `end` is the day after its last."""

    stage: Stage
    first: int
    end: int


@dataclass(frozen=True)
class StageCourse:
    """The stages of one bed in days from sowing.

    Args:
        spans: one after the other, without gaps; the last goes on for ever
        drained: the days from draining to transplanting, which lie over other stages
        sown: whether the seed is known to be in the bed, or was taken to be
        held: its seed must not be sown, so that nothing but the plan is there
    """

    spans: tuple[StageDays, ...]
    drained: StageDays | None
    sown: bool
    held: bool = False

    def at(self, day: int) -> Stage:
        """The stage on a day."""
        if (
            self.held or day < 0 or (day == 0 and not self.sown)
        ):  # the seed may still be in the pail
            return Stage.PLANNED
        if self.drained and self.drained.first <= day < self.drained.end:
            return Stage.DRAINED
        begun = [span.stage for span in self.spans if span.first <= day]
        return begun[-1] if begun else Stage.PLANNED


def course_of(nursery: Nursery) -> StageCourse:
    """The stages of a nursery, by its calendar and what happened since."""
    days = {task.code: task.day for task in nursery.tasks}
    if nursery.held:  # planned, and no more, whatever the day
        first = days.get(TaskCode.SEED_TEST, days[TaskCode.SOAK])
        return StageCourse((StageDays(Stage.PLANNED, first, 1),), None, sown=False, held=True)
    planted = nursery.transplanted_on
    cut = nursery.day(planted) if planted is not None else None
    starts = _starts(nursery, days)
    if cut is not None:
        starts = [(stage, first) for stage, first in starts if first < cut or first < 0]
        starts.append((Stage.PLANTED, cut))
    last = PLANTED_SHOWN_D if cut is not None else OLD_SHOWN_D
    ends = [first for _, first in starts[1:]] + [starts[-1][1] + last]
    spans = (
        StageDays(stage, first, end) for (stage, first), end in zip(starts, ends, strict=True)
    )
    shown = tuple(span for span in spans if span.first < span.end)
    return StageCourse(shown, _drained(nursery, days, cut), nursery.sown)


def _starts(nursery: Nursery, days: dict[TaskCode, int]) -> list[tuple[Stage, int]]:
    """The first day of each stage that the bed's practice has."""
    planned = days.get(TaskCode.SEED_TEST, days[TaskCode.SOAK])
    known = min(nursery.day(nursery.made_on), 0)  # nothing was planned before the plan
    starts = [(Stage.PLANNED, max(planned, known)), (Stage.COVERED, 0)]
    if TaskCode.UNCOVER_FLOOD in days:
        uncovering = days[TaskCode.UNCOVER_FLOOD]
        starts.append((Stage.GROWING, uncovering if nursery.uncovered else uncovering + 1))
    else:
        starts[-1] = (Stage.GROWING, 0)
    starts.append((Stage.READY, days[TaskCode.TRANSPLANT]))
    starts.append((Stage.OLD, days[TaskCode.OVERDUE]))
    return starts


def _drained(nursery: Nursery, days: dict[TaskCode, int], cut: int | None) -> StageDays | None:
    if TaskCode.DRAIN_BED not in days:
        return None
    end = nursery.day(nursery.anchors.transplant_date)
    end = end if cut is None else min(end, cut)
    first = days[TaskCode.DRAIN_BED]
    return StageDays(Stage.DRAINED, first, end) if first < end else None


def shown_until(course: StageCourse, day: int) -> Iterator[StageDays]:
    """The spans, the last one stretched to a day that lies beyond it."""
    *before, last = course.spans
    yield from before
    yield StageDays(last.stage, last.first, max(last.end, day + 1))
