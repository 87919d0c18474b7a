"""Answers to what is asked at both ends of a season: the seed test, and the result."""

import re
from collections.abc import Mapping
from itertools import chain

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.rows import Fact
from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import ended, holds, lasting, opened, said
from assistant.dialogue.endings_result import result_of
from assistant.dialogue.endings_seed import SEED_ENDINGS, begun, later, new_seed
from assistant.dialogue.engine import answer, arrive, ask, begin
from assistant.dialogue.lists import choice_names
from assistant.dialogue.results import time_to_test
from assistant.dialogue.told_of_bed import result_in
from assistant.dialogue.values import AnswerItem, Item, Known, Session, Turn
from assistant.reading import (
    Outcome,
    read_choice,
    read_confirm,
    read_germination,
    says_only_answers,
)
from assistant.wording import messages_result as r
from assistant.wording import messages_seed as seed
from assistant.wording import messages_tasks as t
from assistant.wording.day_practice import fitting
from assistant.wording.message import Message

_NUMBER = re.compile(r"\d+")
_A_COUNT = 2  # numbers: so many of so many
_SUFFICED = {"left": r.MATS_LEFT, "enough": r.JUST_ENOUGH, "short": r.TOO_FEW}


def _place(
    text: str, labels: Mapping[str, Message], item: Item, known: Known, digits: bool
) -> int | None:
    """Which of the choices of a prompt a reply takes; its digits only where they may answer."""
    if not digits and text.strip().isdigit():
        return None
    nursery = _nursery(item, known)
    fit = {code: fitting(label, nursery) for code, label in labels.items()}
    names = [choice_names(code, label, known) for code, label in fit.items()]
    reading = read_choice(text, names, known.lexicon)
    sure = reading.outcome is Outcome.UNDERSTOOD and (
        text.strip().isdigit() or says_only_answers(text, known.lexicon, chain(*names))
    )
    return reading.value if sure else None


def _nursery(item: Item, known: Known) -> Nursery:
    nursery = known.nursery(item.nursery_id)
    if nursery is None:
        raise LookupError(f"the item {item} is of a nursery that is not open")
    return nursery


def _beside(held: Session | None) -> Session | None:
    """A passing talk, so that `ended` takes the interrupted one up again."""
    return begin(talks.WHICH, held=held) if held else None


def answer_test(
    text: str, known: Known, item: Item, digits: bool, held: Session | None
) -> Turn | None:
    """Begun, how, or not yet, to "test your seed"."""
    place = _place(text, {"begun": seed.BEGUN, "explain": seed.HOW}, item, known, digits)
    said_so = read_confirm(text, known.lexicon, digits=False).value if place is None else None
    nursery = _nursery(item, known)
    if place == 0 or said_so == "done":
        changes, says = begun(nursery, known)
        changes = (AnswerItem(item, "begun"), *changes)
        return ended(_beside(held), known, said(*says), changes=changes)
    if place == 1:
        fresh = begin(talks.SEED_TEST, held=holds(held), nursery=nursery.id)
        asked = arrive(fresh, known, talks.TABLES).session.to("explained")
        return opened(asked, known, changes=(AnswerItem(item, "explained"),))
    if said_so == "not_yet":
        text_back = said(later(nursery, known))
        return ended(_beside(held), known, text_back, changes=(AnswerItem(item, "not_yet"),))
    return None


def answer_held(
    text: str, known: Known, item: Item, digits: bool, held: Session | None
) -> Turn | None:
    """Whether other seed is there, to who must not sow what they have."""
    labels = {"begun": seed.TEST_BEGUN, "new": seed.NEW_SEED, "later": t.NOT_YET}
    place = _place(text, labels, item, known, digits)
    said_so = read_confirm(text, known.lexicon, digits=False).value if place is None else None
    nursery = _nursery(item, known)
    if place == 0:
        changes, says = begun(nursery, known)
        return ended(
            _beside(held), known, said(*says), changes=(AnswerItem(item, "begun"), *changes)
        )
    if place == 1:
        changes, texts = new_seed(nursery, known)
        return ended(_beside(held), known, *texts, changes=(AnswerItem(item, "new"), *changes))
    if place == 2 or said_so == "not_yet":
        wait = said(seed.HELD(label=nursery.called), *time_to_test(nursery, known.today))
        return ended(_beside(held), known, wait, changes=(AnswerItem(item, "not_yet"),))
    return None


def answer_count(
    text: str, known: Known, item: Item, digits: bool, held: Session | None
) -> Turn | None:
    """The count of a seed test, to the text that asks for it."""
    if not digits and text.strip().isdigit():
        return None
    if read_germination(text, known.lexicon).outcome is Outcome.AGAIN:
        return None
    fresh = begin(talks.SEED_TEST, held=holds(held), nursery=item.nursery_id)
    at_count = arrive(fresh, known, talks.TABLES).session.to("count")
    step = answer(at_count, text, known, talks.TABLES)
    if step.ending:
        return SEED_ENDINGS[step.ending](step.session, known)
    return Turn(step.session, (ask(step.session, known, talks.TABLES, *step.said),))


def counted_unasked(text: str, known: Known) -> Turn | None:
    """A count that comes before it is asked for, as "83 of 100": of the only test that runs,
    of other seed for the only plan that is held, else of the only bed that is not sown."""
    unsown = [n for n in known.nurseries if not n.sown]
    tests = [n for n in unsown if n.held or Fact.TEST_RUNS in n.facts] or unsown
    if len(tests) != 1 or len(_NUMBER.findall(text)) < _A_COUNT:
        return None
    if read_germination(text, known.lexicon).outcome is not Outcome.UNDERSTOOD:
        return None
    asked = Item(tests[0].id, TaskCode.SEED_COUNT, known.today)
    return answer_count(text, known, asked, False, lasting(known.session))


def answer_result(
    text: str, known: Known, item: Item, digits: bool, held: Session | None
) -> Turn | None:
    """Whether the mats sufficed; the rest of the result is asked next."""
    place = _place(text, _SUFFICED, item, known, digits)
    answer_code = result_in(text, known) if place is None else tuple(_SUFFICED)[place]
    if answer_code is None:
        return None
    nursery = _nursery(item, known)
    changes = (AnswerItem(item, answer_code),)
    return result_of(nursery, holds(held), known, answer_code, changes)
