"""Makes one text of all that is due for one phone on one day."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.nursery import Nursery
from assistant.reminders.values import Reminder
from assistant.wording import messages_tasks as t
from assistant.wording.day import (
    HAZARDS,
    DayWork,
    Late,
    about,
    day_says,
    offer,
    what_of,
)
from assistant.wording.message import Say

_ORDER = {code: place for place, code in enumerate(TaskCode)}
CATCH_UP_DAYS = 3
_CAUTIONS = frozenset(HAZARDS.values())


@dataclass(frozen=True)
class Composed:
    """One phone's text: its sentences, and the reminders that it asks to be answered."""

    says: tuple[Say, ...]
    asked: tuple[Reminder, ...]


def worth_catching_up(reminder: Reminder, today: date) -> bool:
    """Whether a missed reminder is still worth saying."""
    age = (today - reminder.day).days
    return TASKS[reminder.task].catches_up and 0 < age <= CATCH_UP_DAYS


def compose(
    due: Sequence[tuple[Nursery, Sequence[Reminder]]],
    today: date,
    raining: Iterable[int] = (),
    assumed_sown: Iterable[int] = (),
    held: Iterable[int] = (),
    cautioned: Iterable[int] = (),
) -> Composed:
    """The text for one phone.

    Args:
        due: each nursery with its reminders of today and those to catch up.
        raining: ids of nurseries under a rain warning, which are never told to uncover.
        assumed_sown: ids of nurseries whose sowing nobody confirmed, to be told so today.
        cautioned: ids of those that had the caution of planting some days ago.
        held: ids of those under a warning of another danger that these tasks wait for.
    """
    wet, unsure, waiting = frozenset(raining), frozenset(assumed_sown), frozenset(held)
    had = frozenset(cautioned)
    parts: list[_Part] = []
    asked: list[tuple[Nursery, Reminder]] = []
    for nursery, reminders in due:
        work = _work(nursery, reminders, today, nursery.id in wet)
        work = replace(work, held=nursery.id in waiting, cautioned=nursery.id in had)
        head, *sentences = day_says(work)
        if nursery.id in unsure:
            sentences.append(about(t.SOW_ASSUMED, nursery, today))
        _join(parts, head, _not_warned_yet(parts, sentences))
        asked += [(nursery, _latest(reminders, code)) for code in work.asked]
    says = tuple(say for part in parts for say in (*part.heads, *part.sentences))
    offered = offer([(nursery, reminder.task) for nursery, reminder in asked], today)
    if offered and len(due) > 1 and len(asked) == 1:  # whose task "1 Done" answers
        offered = (about(t.HEAD_BEFORE, asked[0][0], today), *offered)
    return Composed((*says, *offered), tuple(reminder for _, reminder in asked))


@dataclass
class _Part:
    """The same sentences for one or more nurseries, said once under all their heads."""

    heads: list[Say]
    sentences: tuple[Say, ...]


def _not_warned_yet(parts: Sequence[_Part], sentences: Sequence[Say]) -> tuple[Say, ...]:
    """Without cautions that the text has already, for another bed; where all is the same, the
    beds share the sentences."""
    said = {say.message for part in parts for say in part.sentences if say.message in _CAUTIONS}
    whole = tuple(sentences)
    if any(part.sentences == whole for part in parts):
        return whole
    return tuple(say for say in sentences if say.message not in said)


def _join(parts: list[_Part], head: Say, sentences: tuple[Say, ...]) -> None:
    same = next((part for part in parts if part.sentences == sentences), None)
    if same is None:
        parts.append(_Part([head], sentences))
    else:
        same.heads.append(head)


def _work(nursery: Nursery, reminders: Sequence[Reminder], today: date, rain: bool) -> DayWork:
    ordered = sorted(reminders, key=lambda each: _ORDER[each.task])
    due = dict.fromkeys(each.task for each in ordered if each.day == today)
    of_today = tuple(code for code in due if not _is_overtaken(code, due, nursery, today))
    late = tuple(
        Late(each.task, each.day)
        for each in ordered
        if each.day < today and each.task not in of_today
    )
    return DayWork(nursery, of_today, today, late, rain)


def _is_overtaken(
    code: TaskCode, due: Collection[TaskCode], nursery: Nursery, today: date
) -> bool:
    """Whether a task must not be said beside another of its day: a bed that is planted today is
    not drained today, "two days before", and none is uncovered that may be gone."""
    if TaskCode.AFTER_FLOOD in due:  # first what stands, then whether it is uncovered
        return code is TaskCode.UNCOVER_FLOOD
    plants = today >= nursery.anchors.transplant_date
    return plants and code is TaskCode.DRAIN_BED and TASKS[code].replaced_by in due


def _latest(reminders: Sequence[Reminder], code: TaskCode) -> Reminder:
    return max((each for each in reminders if each.task is code), key=lambda each: each.day)


def second_asking(nursery: Nursery, reminder: Reminder) -> tuple[Say, ...]:
    """The one repetition of a prompt that was not answered."""
    what = what_of(reminder.task, nursery.practice)
    ask = t.SECOND_ASKING(label=nursery.called, what=what)
    return (ask, *offer([(nursery, reminder.task)], reminder.day))
