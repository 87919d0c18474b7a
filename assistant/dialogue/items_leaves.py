"""What a count of open leaves says: how ready the seedlings are, and which days are best."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.growth.leaves import LeafAdvice, leaf_advice, most_leaves_on
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, Counted
from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import chosen, holds, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.outlook import outlook
from assistant.dialogue.values import (
    AnswerItem,
    CallForHelp,
    Change,
    Happened,
    Item,
    Known,
    SaveNursery,
    Session,
    Turn,
)
from assistant.wording import messages_answers as a
from assistant.wording import messages_talk as m
from assistant.wording.day import about, hill_now
from assistant.wording.message import Message, Say

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
    if not nursery.sown and day <= 0:
        early = (about(a.SOW_ON, nursery, known.today), about(a.AGE, nursery, known.today))
        return Turn(held, (said(*early),), told)
    if not 0 < count <= MOST_LEAVES:
        return Turn(held, (said(m.LEAVES_ODD(count=count, day=day)),))
    if count > most_leaves_on(day) and not _is_told_again(known):
        again = begin(talks.RECOUNT, held=holds(held), nursery=nursery.id)
        return opened(again, known, m.LEAVES_ODD(count=count, day=day))
    event = Counted(on=known.today, by=By.FARMER, leaves=count)
    moved = after(_felt(nursery, known), event)
    advice = leaf_advice(count, day, _felt(nursery, known).seasonal)
    message = about(_LEAF_SAYS[advice], moved, known.today, count=count)
    changes: tuple[Change, ...] = (*told, Happened(nursery.id, event), SaveNursery(moved))
    if advice is LeafAdvice.SLOW:
        changes += (CallForHelp("leaves", f"{count:g}", nursery.id),)
    asked = begin(talks.LEAVES, held=holds(held), nursery=nursery.id, leaves=count)
    says = (
        message,
        *_hill(nursery, moved, known),
        *outlook(moved, count, known.today, known.warmth),
    )
    best = _window_left(moved, known.today)
    if best is not None:  # the question names the days that the leaves allow
        asked = replace(asked, answers={**asked.answers, **_best(*best)})
    return opened(asked, known, *says, changes=changes)


def _is_told_again(known: Known) -> bool:
    """Whether the count was asked back already, and stands."""
    return known.session is not None and known.session.conversation == talks.RECOUNT.name


def _hill(before: Nursery, moved: Nursery, known: Known) -> tuple[Say, ...]:
    """How many go to a hill, where the leaves say otherwise than the days did."""
    now = hill_now(moved, known.today)
    if now == hill_now(before, known.today):
        return ()
    return (m.LEAVES_HILL(n=now),)


def _felt(nursery: Nursery, known: Known) -> Nursery:
    """The nursery by the temperature that an officer told of late."""
    if known.warmth is None:
        return nursery
    return nursery.warmed(nursery.climate, known.warmth.mean_c, known.warmth.day)


def _best(first: date, last: date) -> dict[str, str]:
    """The days that are called best, as a session keeps them."""
    return {"best_first": first.isoformat(), "best_last": last.isoformat()}


def _window_left(nursery: Nursery, today: date) -> tuple[date, date] | None:
    """The days that are best from today on; None where they are over."""
    window = nursery.paced.window
    first, last = (
        nursery.sow_date + timedelta(days=int(end.value)) for end in (window.first, window.last)
    )
    return (max(first, today), last) if today <= last else None


_LEAF_SAYS: Mapping[LeafAdvice, Message] = {
    LeafAdvice.WAIT: m.LEAVES_FEW,
    LeafAdvice.READY: m.LEAVES_READY,
    LeafAdvice.SOON: m.LEAVES_SOON,
    LeafAdvice.SLOW: m.LEAVES_SLOW,
}
