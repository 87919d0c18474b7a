"""What stands of a bed on the morning after a flood or storm: all of it, a part, nothing."""

from dataclasses import replace
from datetime import timedelta
from itertools import chain

from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, Found, PutOff
from assistant.agronomy.life.rows import Ask
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.tasks import TaskCode
from assistant.dialogue import conversations as talks
from assistant.dialogue.accounted import OF_ITEMS
from assistant.dialogue.endings import holds, opened
from assistant.dialogue.endings_again import sow_again
from assistant.dialogue.endings_lost import may_lose
from assistant.dialogue.endings_trouble import flood_advice
from assistant.dialogue.engine import begin
from assistant.dialogue.lists import choice_names
from assistant.dialogue.told_of_bed import ideas_in
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
from assistant.hearing import Idea
from assistant.reading import Outcome, is_accounted_for, read_choice

_GONE = frozenset({Idea.WASHED, Idea.GONE, Idea.NOTHING})


def answer_flood(
    text: str, known: Known, item: Item, digits: bool, held: Session | None
) -> Turn | None:
    """A bed that stands is cleaned; of one in part the mats are counted; a bare one is sown
    again, its cause known."""
    state = _state(text, known, digits)
    nursery = known.nursery(item.nursery_id)
    if state is None or nursery is None:
        return None
    event = Found(on=known.today, by=By.FARMER, state=state)
    nursery = after(nursery, event)
    answered: tuple[Change, ...] = (
        AnswerItem(item, state),
        Happened(nursery.id, event),
        SaveNursery(nursery),
    )
    if state == "gone":
        told = CallForHelp("flood", text, nursery.id)
        return sow_again(nursery, holds(held), known, cause="washed", changes=(*answered, told))
    if state == "part" and may_lose(nursery):
        asked = begin(talks.LOST, held=holds(held), nursery=nursery.id, by="washed")
        return opened(asked, known, changes=answered)
    passing = begin(talks.TROUBLE, held=held, nursery=nursery.id)
    turn = flood_advice(passing, known)
    return replace(turn, changes=(*answered, *_uncovered_later(nursery, known), *turn.changes))


def _uncovered_later(nursery: Nursery, known: Known) -> tuple[Change, ...]:
    """A covered bed that stands is uncovered tomorrow, where that was for today or before."""
    was = nursery.anchors.uncover_date
    if nursery.uncovered or was > known.today:
        return ()
    event = PutOff(
        on=known.today,
        by=By.FARMER,
        task=TaskCode.UNCOVER_FLOOD,
        was=was,
        until=known.today + timedelta(days=1),
    )
    return (Happened(nursery.id, event), SaveNursery(after(nursery, event)))


def _state(text: str, known: Known, digits: bool) -> str | None:
    """Which of the three a reply takes, by its digit where that may answer, or in words."""
    if text.strip().isdigit() and not digits:
        return None
    states = OF_ITEMS[Ask.FLOOD]
    names = [choice_names(code, label, known) for code, label in states.items()]
    reading = read_choice(text, names, known.lexicon)
    sure = text.strip().isdigit() or is_accounted_for(text, known.lexicon, chain(*names))
    if reading.outcome is Outcome.UNDERSTOOD and reading.value is not None and sure:
        return tuple(states)[reading.value]
    ideas = ideas_in(text, known)
    if not ideas & _GONE:
        return None
    if Idea.NOTHING in ideas:
        return "gone"
    return "part" if ideas & {Idea.HALF, Idea.MAT} else "gone"
