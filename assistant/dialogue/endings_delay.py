"""Planting that is put off: water goes back, the new day is told, and what waiting costs."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, PutOff, Why
from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, chosen, ended, holds, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.outlook import cost_of_waiting
from assistant.dialogue.values import (
    AnswerItem,
    Change,
    Happened,
    Item,
    Known,
    SaveNursery,
    Session,
    Turn,
)
from assistant.wording import messages_delay as d
from assistant.wording.day import about
from assistant.wording.message import Say

WAITS_D = 3  # until the farmer names a day: time to let water in, and to drain for it again
ONE_DAY = timedelta(days=1)


def planting_waits(item: Item, nursery: Nursery, known: Known, held: Session | None) -> Turn:
    """The field is not planted yet: the mats get their water back at once, and why is asked,
    the first time."""
    answered: tuple[Change, ...] = (AnswerItem(item, "not_yet"),)
    beside = begin(talks.WHICH, held=held) if held else None
    if known.today >= nursery.latest:
        old = said(about(d.TOO_OLD, nursery, known.today))
        return ended(beside, known, old, changes=answered)
    until = min(known.today + WAITS_D * ONE_DAY, nursery.latest)
    why = nursery.delay_why or Why.UNSAID
    changes, moved = _put_off(nursery, item.day, until, why, known)
    says = (*_water(moved, known.today), *_cost(moved, known.today))
    if nursery.delay_why is not None:
        return ended(beside, known, said(*says), changes=answered + changes)
    asked = begin(talks.DELAY, held=holds(held), nursery=nursery.id)
    return opened(asked, known, *says, changes=answered + changes)


def _put_off(
    nursery: Nursery, was: date, until: date, why: Why, known: Known
) -> tuple[tuple[Change, ...], Nursery]:
    event = PutOff(
        on=known.today, by=By.FARMER, task=TaskCode.TRANSPLANT, was=was, until=until, why=why
    )
    moved = after(nursery, event)
    return (Happened(nursery.id, event), SaveNursery(moved)), moved


def _water(nursery: Nursery, today: date) -> tuple[Say, ...]:
    """Whether a bed that is drained gets water again, or is kept wet by hand for so short."""
    if not nursery.is_drained:
        return (d.WAITS(label=nursery.called, date=nursery.anchors.transplant_date),)
    if nursery.anchors.drain_date > today:
        return (about(d.WATER_BACK, nursery, today),)
    return (d.KEEP_WET(label=nursery.called),)


def _cost(nursery: Nursery, on: date) -> tuple[Say, ...]:
    """What seedlings ask for that are past their days."""
    late = nursery.day(on) > nursery.paced.window.last.value
    return (cost_of_waiting(nursery, on),) if late else ()


def _delayed(session: Session, known: Known) -> Turn:
    """The farmer's own day, with what it means for the seedlings, and the ways left."""
    nursery, why = chosen(session, known), Why(str(session.answers["why"]))
    day = date.fromisoformat(str(session.answers["until"]))
    if not known.today <= day <= nursery.latest:
        answers = {k: v for k, v in session.answers.items() if k != "until"}
        again = replace(session, step="until", answers=answers)
        return opened(again, known, about(d.TOO_LATE, nursery, known.today, date=day))
    was = nursery.anchors.transplant_date
    changes, moved = _put_off(nursery, was, day, why, known)
    new = about(d.SET, moved, known.today, date=day, day=moved.day(day))
    tip = (d.TIPS[why](),) if why in d.TIPS else ()
    texts = [said(new, *_water(moved, known.today)), said(*tip)]
    if cost := _cost(moved, day):
        texts.append(said(*cost, about(d.WAYS, moved, known.today)))
    told = (text for text in texts if text.says)
    return ended(session, known, *told, changes=changes)


DELAY_ENDINGS: Mapping[str, Ending] = {"!delayed": _delayed}
