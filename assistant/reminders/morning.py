"""What one phone is told on a morning, and what that does to what was due. Pure."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.nursery import Nursery
from assistant.reminders.compose import (
    CATCH_UP_DAYS,
    Composed,
    compose,
    worth_catching_up,
)
from assistant.reminders.values import Reminder

Grouped = tuple[tuple[Nursery, tuple[Reminder, ...]], ...]


@dataclass(frozen=True)
class Sorted:
    """What is due for a phone: what is said today, of which some was missed before (`late`),
    and what is too late to be said at all."""

    said: tuple[Reminder, ...]
    late: tuple[Reminder, ...]
    too_late: tuple[Reminder, ...]


def sorted_out(due: Sequence[Reminder], today: date) -> Sorted:
    """Today's reminders and those worth catching up; the others are too late."""
    missed = [each for each in due if each.day < today]
    late = tuple(each for each in missed if worth_catching_up(each, today))
    too_late = tuple(each for each in missed if not worth_catching_up(each, today))
    dropped = {each.id for each in too_late}
    return Sorted(tuple(each for each in due if each.id not in dropped), late, too_late)


def by_nursery(nurseries: Iterable[Nursery], said: Iterable[Reminder]) -> Grouped:
    """Each nursery with what is said of it today, by their ids."""
    known = {each.id: each for each in nurseries}
    ordered = sorted(said, key=lambda each: (each.nursery_id, each.due_at))
    return tuple(
        (known[nursery_id], tuple(reminders))
        for nursery_id, reminders in groupby(ordered, key=lambda each: each.nursery_id)
    )


def unconfirmed(
    nurseries: Iterable[Nursery], due: Iterable[Reminder], today: date
) -> tuple[tuple[Nursery, Reminder], ...]:
    """Sowings whose text never arrived in all the days of catching up, with their asking."""
    old = {
        each.id: each for each in nurseries if not each.sown and each.day(today) > CATCH_UP_DAYS
    }
    return tuple(
        (old[each.nursery_id], each)
        for each in due
        if each.task is TaskCode.SOW and each.nursery_id in old
    )


def taken_as_sown(nurseries: Iterable[Nursery], today: date) -> list[int]:
    """Nurseries that were taken as sown yesterday without a word from the farmer."""
    return [each.id for each in nurseries if each.sow_assumed and each.day(today) == 1]


def only_told(said: Iterable[Reminder], composed: Composed) -> list[int]:
    """The ids of tasks that were said but cannot be done today: no answer can be about them."""
    asked = {(each.nursery_id, each.task) for each in composed.asked}
    return [
        each.id
        for each in said
        if TASKS[each.task].is_asked and (each.nursery_id, each.task) not in asked
    ]


def first_of(said: Iterable[Reminder]) -> int:
    """The id of the nursery that a phone's text is kept for."""
    return min(said, key=lambda each: (each.due_at, each.id)).nursery_id


def compose_plain(
    nurseries: Sequence[Nursery],
    said: Sequence[Reminder],
    today: date,
    cautioned: Iterable[int] = (),
) -> Composed:
    """The text of a phone that no rain warning and no missing word stands behind."""
    assumed = taken_as_sown(nurseries, today)
    grouped = by_nursery(nurseries, said)
    return compose(grouped, today, (), assumed, (), cautioned)
