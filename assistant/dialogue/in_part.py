"""Work of which a part is done: half of the bed is sown, drained or uncovered. The part is
kept, and the rest is asked: the same day where it is for that day, else on the one told.
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import date

from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, PartDone
from assistant.agronomy.life.rows import TASKS, Doing
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.tasks import TaskCode
from assistant.dialogue.told_of_bed import day_to_come, ideas_in
from assistant.dialogue.values import (
    Change,
    Focus,
    Happened,
    Item,
    Known,
    SaveNursery,
    Session,
    Text,
    Turn,
)
from assistant.hearing import Idea
from assistant.reading import read_deeds
from assistant.wording.messages_tasks import UNDER_WAY

Settle = Callable[[Item, Known, Session | None], Turn]
_WHOLE = frozenset({Doing.SOAKS, Doing.PLANTS})  # seed has no half; a field has its own talk
_NO_PART = frozenset({Idea.NO_SEED, Idea.LACKED, Idea.BARE})  # "half is up"


def tells_of_rest(text: str, known: Known) -> bool:
    """Whether a part is told and a rest of it: a day in such a text is the day of the rest."""
    return {Idea.HALF, Idea.REST} <= ideas_in(text, known)


def part_begun(bed: Nursery, code: TaskCode, on: date) -> tuple[Nursery, tuple[Change, ...]]:
    """The bed once a part of a task is done on a day, and that it happened."""
    event = PartDone(on=on, by=By.FARMER, task=code)
    return after(bed, event), (Happened(bed.id, event),)


def in_part(
    text: str,
    item: Item,
    not_yet: bool,
    known: Known,
    held: Session | None,
    put_off: Settle,
) -> Turn | None:
    """The turn for a part of an open task; None where none is told.

    Args:
        not_yet: whether the text says, all in all, that it is not done
        put_off: settles what is not done today
    """
    if not _tells_part(text, item, not_yet, known):
        return None
    bed = next(each for each in known.nurseries if each.id == item.nursery_id)
    begun, changes = part_begun(bed, item.task, known.today)
    rest_today = Idea.REST in ideas_in(text, known) and day_to_come(text, known) is None
    if rest_today:
        says = UNDER_WAY(label=bed.called)
        changes = changes if begun is bed else (*changes, SaveNursery(begun))
        return Turn(held, (Text((says,), Focus(items=(item,))),), changes=changes)
    others = tuple(begun if each.id == bed.id else each for each in known.nurseries)
    turn = put_off(item, replace(known, nurseries=others), held)
    return replace(turn, changes=(*changes, *turn.changes))


def _tells_part(text: str, item: Item, not_yet: bool, known: Known) -> bool:
    row, ideas = TASKS[item.task], ideas_in(text, known)
    told = read_deeds(text, known.lexicon)
    if row.doing in _WHOLE or "?" in text or Idea.HALF not in ideas or ideas & _NO_PART:
        return False
    own = bool(told & row.deeds) or (not told and item.day == known.today)
    return own and (not_yet or Idea.REST in ideas)
