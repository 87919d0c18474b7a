"""What a count of open leaves says: how ready the seedlings are, and which days are best."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.growth.leaves import LeafAdvice, leaf_advice
from assistant.agronomy.life.events import By, Counted
from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import chosen, holds, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.outlook import outlook, ready
from assistant.dialogue.values import (
    AnswerItem,
    CallForHelp,
    Change,
    Happened,
    Item,
    Known,
    Session,
    Turn,
)
from assistant.wording import messages_talk as m
from assistant.wording.day import about
from assistant.wording.message import Message

MOST_LEAVES = 8


def leaves(item: Item, count: float, known: Known, held: Session | None) -> Turn:
    """What a count of open leaves means, and the question for the transplanting day."""
    nursery = known.nursery(item.nursery_id)
    if nursery is None:
        raise LookupError(f"the item {item} is of a nursery that is not open")
    return _counted(nursery, count, known, held, (AnswerItem(item, f"{count:g}"),))


def recounted(session: Session, known: Known) -> Turn:
    """Leaves that were counted again, without being asked; it answers what was asked, too."""
    nursery, count = chosen(session, known), float(str(session.answers["leaves"]))
    if not 0 < count <= MOST_LEAVES:
        again = begin(talks.RECOUNT, held=session.held, nursery=nursery.id)
        return opened(again, known, m.LEAVES_ODD(count=count, day=nursery.day(known.today)))
    asked = (each for each in known.items if each.task is TaskCode.LEAF_COUNT)
    told = tuple(
        AnswerItem(each, f"{count:g}") for each in asked if each.nursery_id == nursery.id
    )
    return _counted(nursery, count, known, session.held, told)


def _counted(
    nursery: Nursery,
    count: float,
    known: Known,
    held: Session | None,
    told: tuple[AnswerItem, ...],
) -> Turn:
    day = nursery.day(known.today)
    if not 0 < count <= MOST_LEAVES:
        return Turn(held, (said(m.LEAVES_ODD(count=count, day=day)),))
    advice = leaf_advice(count, day, nursery.practice)
    message = about(_LEAF_SAYS[advice], nursery, known.today, count=count)
    counted = Counted(on=known.today, by=By.FARMER, leaves=count)
    changes: tuple[Change, ...] = (*told, Happened(nursery.id, counted))
    if advice is LeafAdvice.SLOW:
        changes += (CallForHelp("leaves", f"{count:g}", nursery.id),)
    asked = begin(talks.LEAVES, held=holds(held), nursery=nursery.id, leaves=count)
    says = (message, *outlook(nursery, count, known.today, known.warmth))
    moved = ready(nursery, count, known.today, known.warmth)
    if moved is not None:  # the question names the days that the leaves allow
        asked = replace(asked, answers={**asked.answers, **_best(moved.first, moved.last)})
    elif (window := _window_left(nursery, known.today)) is not None:
        asked = replace(asked, answers={**asked.answers, **_best(*window)})
    return opened(asked, known, *says, changes=changes)


def _best(first: date, last: date) -> dict[str, str]:
    """The days that are called best, as a session keeps them."""
    return {"best_first": first.isoformat(), "best_last": last.isoformat()}


def _window_left(nursery: Nursery, today: date) -> tuple[date, date] | None:
    """The rest of a window that has begun; None before it and after it."""
    window = nursery.practice.window
    first, last = (
        nursery.sow_date + timedelta(days=int(end.value)) for end in (window.first, window.last)
    )
    return (today, last) if first < today <= last else None


_LEAF_SAYS: Mapping[LeafAdvice, Message] = {
    LeafAdvice.WAIT: m.LEAVES_FEW,
    LeafAdvice.READY: m.LEAVES_READY,
    LeafAdvice.SOON: m.LEAVES_SOON,
    LeafAdvice.SLOW: m.LEAVES_SLOW,
}
