"""What is due on a day: the one place that decides which task still makes sense, and when it is
said. Texts, screens, diaries, pictures and pages ask here."""

from collections.abc import Callable, Iterator, Mapping
from datetime import date, timedelta
from itertools import islice

from assistant.agronomy.calendar import Task, TaskCode
from assistant.agronomy.life.nursery import Nursery
from assistant.agronomy.life.rows import TASKS, Said

ONE_DAY = timedelta(days=1)
OVERDUE_EVERY_D = 3
OVERDUE_TIMES = 3


def wanted(code: TaskCode, nursery: Nursery) -> bool:
    """Whether a task still makes sense after what has happened."""
    return not is_over(code, nursery) and not _waits(code, nursery)


def is_over(code: TaskCode, nursery: Nursery) -> bool:
    """Whether what has happened has ended a task for good."""
    return bool(TASKS[code].ends_with & nursery.facts)


def _waits(code: TaskCode, nursery: Nursery) -> bool:
    """Whether a task is not to be done for now: of seed that must not be sown, of a bed that
    may be gone, or of one that is and is not sown again."""
    row = TASKS[code]
    held = nursery.held and not row.while_held
    in_doubt = nursery.in_doubt and not row.while_in_doubt
    return held or in_doubt or nursery.is_gone


def is_daily(code: TaskCode) -> bool:
    """Whether a task is done every day, or every so many days, of its time."""
    return TASKS[code].said is Said.DAILY


def days_of(task: Task, nursery: Nursery) -> Iterator[date]:
    """The days on which a task is said."""
    return _DAYS[TASKS[task.code].said](task, nursery)


def first_of(task: Task, nursery: Nursery) -> Iterator[date]:
    """The days on which a task is said to who wants to hear of each work once: what is the
    same every day and asks nothing, on its first day."""
    asks_or_falls = TASKS[task.code].is_asked or not is_daily(task.code)
    return islice(days_of(task, nursery), None if asks_or_falls else 1)


def due(nursery: Nursery, on: date) -> tuple[TaskCode, ...]:
    """What is to be done on a day, in the order of work: all that falls on it and still makes
    sense, said before or not."""
    return tuple(
        task.code
        for task in nursery.tasks
        if _first(task, nursery) <= on <= _last(task) and wanted(task.code, nursery)
    )


def coming(nursery: Nursery, after: date) -> Task | None:
    """The next task after a day; None where nothing is left."""
    left = (t for t in nursery.tasks if t.date > after and wanted(t.code, nursery))
    return next(left, None)


def is_last_asking(nursery: Nursery, day: date) -> bool:
    """Whether the season's result is asked for the last time on a day."""
    last = [t.until or t.date for t in nursery.tasks if t.code is TaskCode.SEASON_RESULT]
    return bool(last) and day >= last[0]


def _first(task: Task, nursery: Nursery) -> date:
    if TASKS[task.code].said is not Said.OVERDUE:
        return task.date
    # Who chose a later day is not told to hurry before it.
    return max(task.date, nursery.anchors.transplant_date + ONE_DAY)


def _last(task: Task) -> date:
    lasts = TASKS[task.code].said in (Said.OVERDUE, Said.TWICE)
    return date.max if lasts else task.until or task.date


def _once(task: Task, nursery: Nursery) -> Iterator[date]:
    yield task.date


def _daily(task: Task, nursery: Nursery) -> Iterator[date]:
    return _each(task.date, task.until or task.date, task.every_d)


def _twice(task: Task, nursery: Nursery) -> Iterator[date]:
    yield from (task.date, task.date + ONE_DAY)


def _both_ends(task: Task, nursery: Nursery) -> Iterator[date]:
    yield from dict.fromkeys((task.date, task.until or task.date))


def _window(task: Task, nursery: Nursery) -> Iterator[date]:
    yield task.date
    again = max(nursery.anchors.transplant_date, task.date + ONE_DAY)
    yield from _each(again, task.until or task.date)


def _overdue(task: Task, nursery: Nursery) -> Iterator[date]:
    first = _first(task, nursery)
    for place in range(OVERDUE_TIMES):
        yield first + place * OVERDUE_EVERY_D * ONE_DAY
    over = nursery.latest + ONE_DAY  # not to be planted any more: said once
    if over > first + (OVERDUE_TIMES - 1) * OVERDUE_EVERY_D * ONE_DAY:
        yield over


_DAYS: Mapping[Said, Callable[[Task, Nursery], Iterator[date]]] = {
    Said.ONCE: _once,
    Said.DAILY: _daily,
    Said.BOTH_ENDS: _both_ends,
    Said.WINDOW: _window,
    Said.OVERDUE: _overdue,
    Said.TWICE: _twice,
}


def _each(first: date, last: date, every_d: int = 1) -> Iterator[date]:
    day = first
    while day <= last:
        yield day
        day += every_d * ONE_DAY
