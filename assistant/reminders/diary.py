"""What stands in a diary for a nursery: each task once, on the day it is to be done.

Prompts repeat; a calendar on a wall or in a phone does not. Work of every day stands in it as
one entry with its first and last day.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from assistant.agronomy.calendar import Task, TaskCode
from assistant.agronomy.life.days import is_daily, wanted
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.nursery import Nursery


@dataclass(frozen=True)
class DiaryTask:
    """One task on its day; `until` where it is done every day (or each second) from then on.

    `place` tells the first day of a task from the second.
    """

    task: Task
    day: date
    place: int = 0
    until: date | None = None


def diary(nursery: Nursery, today: date) -> tuple[DiaryTask, ...]:
    """All entries of a nursery by day: what was to be done since the plan was made, and what
    still is."""
    return tuple(
        entry
        for entry in entries(nursery)
        if (entry.until or entry.day) >= nursery.made_on
        and ((entry.day <= today and not nursery.held) or still_to_do(entry, nursery))
    )


def entries(nursery: Nursery) -> tuple[DiaryTask, ...]:
    """The whole calendar by day, whatever has happened."""
    found = (entry for task in nursery.tasks for entry in _entries(task, nursery))
    return tuple(sorted(found, key=lambda entry: entry.day))


def still_to_do(entry: DiaryTask, nursery: Nursery) -> bool:
    """Whether what happened has left an entry its sense."""
    return not nursery.closed and wanted(entry.task.code, nursery)


def _entries(task: Task, nursery: Nursery) -> Iterator[DiaryTask]:
    if not TASKS[task.code].is_work or (
        task.code is TaskCode.CHOOSE_DAY and nursery.transplant_date is not None
    ):
        return
    if task.code is TaskCode.TRANSPLANT:
        yield DiaryTask(task, nursery.transplanted_on or nursery.anchors.transplant_date)
    elif task.code is TaskCode.SEED_TEST and nursery.test_begun is not None:
        yield DiaryTask(task, nursery.test_begun)
    elif is_daily(task.code):
        yield DiaryTask(task, task.date, until=task.until or task.date)
    else:
        yield DiaryTask(task, task.date)
        if task.code is TaskCode.FIELD_PUDDLE and task.until not in (None, task.date):
            yield DiaryTask(task, task.until or task.date, place=1)
