"""Whether every word of a text is accounted for as an answer to what is open."""

from collections.abc import Iterator, Mapping

from assistant.agronomy.life.rows import TASKS, Ask
from assistant.dialogue import conversations as talks
from assistant.dialogue.engine import find
from assistant.dialogue.invited import is_invited, was_asked
from assistant.dialogue.lists import choice_names, entries
from assistant.dialogue.questions import Reads
from assistant.dialogue.told_of_bed import result_in, without_next_leaf
from assistant.dialogue.values import Known
from assistant.hearing.dating import around_day
from assistant.reading import (
    Outcome,
    begins_with_yes,
    is_accounted_for,
    is_name,
    is_of_other,
    names_day,
    read_confirm,
    read_deeds,
    read_told,
    read_wish,
)
from assistant.wording import messages_result as r
from assistant.wording import messages_talk as talk
from assistant.wording import messages_tasks as t
from assistant.wording.day_practice import fitting
from assistant.wording.message import Message
from assistant.wording.render import render

_MOST_WORDS_OF_A_WISH = 3


def is_accounted(text: str, known: Known) -> bool:
    """Whether a text is digits, words that answers are made of, names of what is offered, or a
    short wish, or gives a day to the work: then its words say what it means, and no weight is
    asked."""
    return (
        is_answer(text, known)
        or _is_short_wish(text, known)
        or any(is_word(text, word, known) for word in WORDS)
        or _gives_a_day(text, known)
        or tells_a_value(text, known)
    )


WORDS = (talk.WORD_NEW, talk.WORD_CLOSE, talk.WORD_TIN)
"""Words of the menu that are no wish of the word lists, such as CLOSE."""


def is_word(text: str, word: Message, known: Known) -> bool:
    """Whether a text is this word of ours, and nothing else."""
    return is_name(text.strip(" .!").casefold(), [render(word(), known.catalogue)])


def tells_a_value(text: str, known: Known) -> bool:
    """Whether a text tells, in a sentence, the result or the leaves that were asked for: "the
    fourth wants out" is no wish to leave, and who ran out of seedlings has lost none."""
    if is_asked_for_result(known) and result_in(text, known) is not None:
        return True
    asked = any(TASKS[item.task].asks is Ask.LEAVES for item in known.items)
    counted = without_next_leaf(text, known) if asked else None
    return counted is not None and is_answer(counted, known)


def _gives_a_day(text: str, known: Known) -> bool:
    """Whether a text is a day, the work it is for, and words that answers are made of: "put it
    on Saturday rather"."""
    around = around_day(text, known.ears.days, (known.catalogue.language,))
    if around is None or around.other or not names_day(text, known.lexicon, known.today):
        return False
    left = " ".join(token.text for token in around.strange)
    return not left or is_accounted_for(left, known.lexicon)


def is_answer(text: str, known: Known) -> bool:
    """Whether a text is digits, words that answers are made of, or names of what is offered."""
    if not any(sign.isalpha() for sign in text):
        return True
    names = (*_offered(known), *_named(known))
    return is_accounted_for(text, known.lexicon, names)


def is_choice(text: str, known: Known) -> bool:
    """Whether a text is one of the offered choices, in its words."""
    return is_name(text, _offered(known))


def tells_of_task(text: str, known: Known) -> bool:
    """Whether a text tells that an open task was done, by its own deed and nothing else."""
    deeds = read_deeds(text, known.lexicon)
    if not any(deeds & TASKS[item.task].deeds for item in known.items):
        return False
    reading = read_told(text, known.lexicon, digits=False)
    return reading.outcome is Outcome.UNDERSTOOD and reading.value == "done"


def names_task(text: str, known: Known) -> bool:
    """Whether a text names the deed of an open task among other words, and as its own."""
    deeds = read_deeds(text, known.lexicon)
    asked = any(deeds & TASKS[item.task].deeds for item in known.items)
    return asked and not is_of_other(text, known.lexicon)


def perhaps_drained(text: str, known: Known) -> bool:
    """Whether draining is what was asked, and a text names it among other words: to that, "dry"
    and "the water is gone" are likelier the deed than a cry, and are asked back."""
    asked = any("drain" in TASKS[item.task].deeds for item in known.items)
    names = asked and "drain" in read_deeds(text, known.lexicon)
    return names and not is_of_other(text, known.lexicon)


def is_asked_for_result(known: Known) -> bool:
    """Whether the result of the season was asked: the seedlings are in the field."""
    return any(TASKS[item.task].asks is Ask.RESULT for item in known.items)


def answers_no(text: str, known: Known) -> bool:
    """Whether yes or no was asked, also by an invitation, and a text is no."""
    question = find(known.session, talks.TABLES) if known.session else None
    asked = question is not None and question.reads in (Reads.YES_NO, Reads.DEED)
    if not asked and not (known.session is None and known.invited and was_asked(known)):
        return False
    reading = read_confirm(text, known.lexicon)
    return reading.outcome is Outcome.UNDERSTOOD and reading.value == "no"


def answers_yes(text: str, known: Known) -> bool:
    """Whether an invitation waits for yes or no, and a text begins with yes."""
    return is_invited(known) and begins_with_yes(text, known.lexicon)


def takes_words(known: Known) -> bool:
    """Whether what is asked for are the person's own words."""
    question = find(known.session, talks.TABLES) if known.session else None
    return question is not None and question.reads is Reads.WORDS


# The choices of the texts that ask for a colour, a flood or a result, by their codes.
OF_ITEMS: Mapping[Ask, Mapping[str, Message]] = {
    Ask.COLOUR: {"green": t.GREEN, "yellow": t.YELLOW, "pale": t.PALE},
    Ask.FLOOD: {"stands": t.STANDS, "part": t.PART_GONE, "gone": t.ALL_GONE},
    Ask.RESULT: {"left": r.MATS_LEFT, "enough": r.JUST_ENOUGH, "short": r.TOO_FEW},
}


def _offered(known: Known) -> tuple[str, ...]:
    """The choices of the open question, and of what was asked of the bed, in all words."""
    return (*_of_question(known), *_of_items(known))


def _of_items(known: Known) -> Iterator[str]:
    for item in known.items:
        bed = known.nursery(item.nursery_id)
        for code, label in OF_ITEMS.get(TASKS[item.task].asks, {}).items():
            yield from choice_names(code, fitting(label, bed) if bed else label, known)


def _of_question(known: Known) -> tuple[str, ...]:
    session = known.session
    question = find(session, talks.TABLES) if session else None
    if session is None or question is None:
        return ()
    return tuple(
        name
        for each in entries(question, session, known)
        for name in (str(each.value), *each.names, each.shown(known))
    )


def _named(known: Known) -> tuple[str, ...]:
    """Villages, and what the farmer calls the nurseries."""
    beds = (name for bed in known.nurseries for name in (bed.label, bed.called))
    return (*(village.name for village in known.villages), *beds)


def _is_short_wish(text: str, known: Known) -> bool:
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    short = len(text.split()) <= _MOST_WORDS_OF_A_WISH
    return short and reading.outcome is Outcome.UNDERSTOOD
