"""Turns a nursery's calendar into dated reminders, each with a due time and a "not after"."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from assistant.agronomy.calendar import Task, TaskCode
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.season.followups import is_over
from assistant.reminders.values import Reminder

ONE_DAY = timedelta(days=1)
OVERDUE_EVERY_D = 3
OVERDUE_TIMES = 3
EVERY_DAY = frozenset({TaskCode.WATER, TaskCode.RAIN_WATCH, TaskCode.KEEP_WATER})
_TO_SOWING = frozenset(
    {
        TaskCode.SEED_TEST,
        TaskCode.SEED_COUNT,
        TaskCode.COLLECT,
        TaskCode.MIX,
        TaskCode.SOAK,
        TaskCode.DRAIN_SEED,
        TaskCode.SOW,
    }
)


@dataclass(frozen=True)
class Hours:
    """The local hours of a day's texts.

    Prompts leave at `prompt`; the second asking at `second`; nothing that is not urgent leaves
    from `quiet_from` until `quiet_until`.
    """

    prompt: time = time(6, 0)
    second: time = time(16, 0)
    quiet_from: time = time(20, 0)
    quiet_until: time = time(5, 30)

    def quiet(self, at: time) -> bool:
        """Whether a local time is in the quiet hours."""
        return at >= self.quiet_from or at < self.quiet_until


def local(day: date, at: time, zone: str) -> datetime:
    """A local time of a village's day, aware."""
    return datetime.combine(day, at, ZoneInfo(zone))


def days_of(task: Task, nursery: Nursery) -> Iterator[date]:
    """The days on which a task is said."""
    last = task.until or task.date
    if task.code in EVERY_DAY:
        yield from _each(task.date, last, task.every_d)
    elif task.code is TaskCode.TRANSPLANT:
        yield task.date
        if nursery.anchors.transplant_date > task.date:
            yield from _each(nursery.anchors.transplant_date, last)
        else:
            yield from _each(task.date + ONE_DAY, last)
    elif task.code is TaskCode.OVERDUE:
        # Who chose a later day is not told to hurry before it.
        first = max(task.date, nursery.anchors.transplant_date + ONE_DAY)
        for place in range(OVERDUE_TIMES):
            yield first + place * OVERDUE_EVERY_D * ONE_DAY
    elif task.code in (TaskCode.FIELD_PUDDLE, TaskCode.SEASON_RESULT):
        yield from dict.fromkeys((task.date, last))
    else:
        yield task.date


def _each(first: date, last: date, every_d: int = 1) -> Iterator[date]:
    day = first
    while day <= last:
        yield day
        day += every_d * ONE_DAY


def wanted(code: TaskCode, nursery: Nursery) -> bool:
    """Whether a task still makes sense after what has happened."""
    if is_over(code, nursery.test_counted, nursery.transplanted_on):
        return False
    if code is TaskCode.SEED_TEST and nursery.test_begun is not None:
        return False
    if code in _TO_SOWING:
        return not nursery.sown
    return not (nursery.uncovered and code is TaskCode.UNCOVER_FLOOD)


def is_last_asking(nursery: Nursery, day: date) -> bool:
    """Whether the season's result is asked for the last time on a day."""
    last = [t.until or t.date for t in nursery.tasks if t.code is TaskCode.SEASON_RESULT]
    return bool(last) and day >= last[0]


def likeness(nursery: Nursery) -> tuple[object, ...]:
    """What its reminders hang on: nurseries with the same have the same, but for their ids."""
    return (
        nursery.practice.code,
        nursery.sow_date,
        nursery.uncover_date,
        nursery.transplant_date,
        nursery.transplanted_on,
        nursery.sown,
        nursery.uncovered,
        nursery.closed,
        nursery.test_begun,
        nursery.test_counted,
        nursery.more_on,
        nursery.sprouting,
    )


def planned(nursery: Nursery, zone: str, hours: Hours, today: date) -> tuple[Reminder, ...]:
    """The reminders of a nursery from `today` on; days gone by are not prompted."""
    if nursery.closed:
        return ()
    return tuple(
        Reminder(
            nursery_id=nursery.id,
            task=task.code,
            day=day,
            due_at=local(day, hours.prompt, zone),
            not_after=local(day, hours.quiet_from, zone),
        )
        for task in nursery.tasks
        if wanted(task.code, nursery)
        for day in days_of(task, nursery)
        if day >= today
    )
