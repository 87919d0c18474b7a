"""Counts the nurseries of a season: the stage of each, and the days on which it has tasks.

Nurseries whose days lie alike since sowing are of one kind and share one reckoning, made from
one of them, so that five thousand cost little more than fifty.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from typing import NamedTuple

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.stages import Stage, StageCourse, course_of
from assistant.reminders.diary import entries, still_to_do
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.sight import Sight
from assistant.store import Stroke, Work

SEASON_D = 120  # days since sowing that belong to this season; older beds are forgotten ones


@dataclass(frozen=True, eq=False)
class SharedStages:
    """What nurseries of one kind share: stages, and tasks still to do by day from sowing."""

    course: StageCourse
    due: frozenset[tuple[TaskCode, int]]
    stages: dict[int, Stage] = field(default_factory=dict)

    def at(self, day: int) -> Stage:
        """The stage on a day, remembered."""
        if day not in self.stages:
            self.stages[day] = self.course.at(day)
        return self.stages[day]


@dataclass(frozen=True)
class CountedNursery:
    """One nursery; `today` is the date in its village, `stage` where it stands then."""

    stroke: Stroke
    kind: SharedStages
    today: date
    stage: Stage

    def has(self, task: TaskCode | None, on: date) -> bool:
        """Whether a task is due on a day."""
        return (task, (on - self.stroke.sow_date).days) in self.kind.due


def season_from(today: date) -> date:
    """The first sowing day that belongs to the season of a day."""
    return today - timedelta(days=SEASON_D)


def _today(house: House, sight: Sight, now: datetime) -> tuple[date, dict[int, date]]:
    """The day where no village is known, and that of each village in sight."""
    villages = {each.id: local_date(now, each.zone) for each in sight.villages}
    return local_date(now, house.zone), villages


def counted(
    work: Work,
    house: House,
    sight: Sight,
    now: datetime,
    village_id: int | None = None,
    practice: str | None = None,
) -> tuple[CountedNursery, ...]:
    """All nurseries of the season that an officer may see, or those of a village or practice,
    by sowing day."""
    otherwise, days = _today(house, sight, now)
    found = work.picture.strokes(sight.scope(village_id), season_from(otherwise))
    strokes = [each for each in found if practice in (None, each.practice)]
    likenesses = [_likeness(each) for each in strokes]
    kinds = _kinds(work, dict(zip(likenesses, strokes, strict=True)))
    return tuple(
        _counted(each, kinds[likeness], days.get(each.village_id or 0, otherwise))
        for each, likeness in zip(strokes, likenesses, strict=True)
    )


class CountedAlike(NamedTuple):
    """So many nurseries of one village and sowing day that stand alike, and one of them."""

    one: CountedNursery
    number: int

    @property
    def key(self) -> tuple[object, ...]:
        """Which of them they are."""
        return _key(self.one.stroke)


def counted_alike(
    work: Work,
    house: House,
    sight: Sight,
    now: datetime,
    village_id: int | None = None,
    practice: str | None = None,
) -> tuple[CountedAlike, ...]:
    """The same nurseries as of `counted`, those that stand alike together: a programme of fifty
    thousand is a few hundred of these."""
    otherwise, days = _today(house, sight, now)
    found = work.picture.alike(sight.scope(village_id), season_from(otherwise))
    kept = [(each, count) for each, count in found if practice in (None, each.practice)]
    kinds = _kinds(work, {_likeness(each): each for each, _ in kept})
    return tuple(
        CountedAlike(
            _counted(each, kinds[_likeness(each)], days.get(each.village_id or 0, otherwise)),
            count,
        )
        for each, count in kept
    )


def strokes_of(
    work: Work, house: House, sight: Sight, now: datetime, some: Collection[CountedAlike]
) -> tuple[Stroke, ...]:
    """All nurseries of some groups, by sowing day."""
    villages = {each.one.stroke.village_id for each in some}
    scope = sight.scope(villages.pop() if len(villages) == 1 else None)
    days = {each.one.stroke.sow_date for each in some}
    first = season_from(local_date(now, house.zone))
    wanted = {each.key for each in some}
    found = work.picture.strokes(scope, first, days) if days else ()
    return tuple(each for each in found if _key(each) in wanted)


def _key(stroke: Stroke) -> tuple[object, ...]:
    return stroke.village_id, stroke.sow_date, _likeness(stroke)


def _counted(stroke: Stroke, kind: SharedStages, today: date) -> CountedNursery:
    return CountedNursery(stroke, kind, today, kind.at((today - stroke.sow_date).days))


def _likeness(stroke: Stroke) -> tuple[object, ...]:
    """What the days of a nursery hang on, counted from its sowing."""
    moved = (
        stroke.uncover_date,
        stroke.transplant_date,
        stroke.transplanted_on,
        stroke.test_begun,
    )
    return (
        stroke.practice,
        stroke.sown,
        stroke.uncovered,
        stroke.test_counted,
        stroke.closed,
        stroke.held,
        _pace(stroke),
        *((day - stroke.sow_date).days if day else None for day in moved),
    )


def _pace(stroke: Stroke) -> tuple[object, ...]:
    """What moves its days but its sowing: warmth hangs on the months, so on the date too."""
    if stroke.climate is None and stroke.leaves is None:
        return ()
    felt, counted = (stroke.felt_c, stroke.felt_on), (stroke.leaves, stroke.leaves_on)
    return (stroke.sow_date, tuple(stroke.climate or ()), *felt, *counted)


def _kinds(
    work: Work, like: dict[tuple[object, ...], Stroke]
) -> dict[tuple[object, ...], SharedStages]:
    whole = work.picture.whole([stroke.id for stroke in like.values()])
    return {likeness: _kind(whole[stroke.id][1]) for likeness, stroke in like.items()}


def _kind(nursery: Nursery) -> SharedStages:
    return SharedStages(course_of(nursery), frozenset(_due(nursery)))


def _due(nursery: Nursery) -> Iterable[tuple[TaskCode, int]]:
    """Work that is still to be done, but for that of every day, which would drown the rest."""
    for entry in entries(nursery):
        if entry.until is None and still_to_do(entry, nursery):
            yield entry.task.code, nursery.day(entry.day)
