"""Answers to the open question: a wish goes first where it must, an answer leads on."""

import re
from collections.abc import Mapping
from dataclasses import replace

from assistant.channel import Channel
from assistant.dialogue import conversations as talks
from assistant.dialogue import endings as e
from assistant.dialogue.accounted import WORDS, is_word
from assistant.dialogue.answers import asked
from assistant.dialogue.corrections import DATES, NUMBERS, also_answered, corrected, early
from assistant.dialogue.dated import DATED_ENDINGS
from assistant.dialogue.endings_again import AGAIN_ENDINGS
from assistant.dialogue.endings_delay import DELAY_ENDINGS
from assistant.dialogue.endings_heard import HEARD_ENDINGS
from assistant.dialogue.endings_lost import LOST_ENDINGS
from assistant.dialogue.endings_plan import PLAN_ENDINGS
from assistant.dialogue.endings_planting import PLANTING_ENDINGS
from assistant.dialogue.endings_result import RESULT_ENDINGS
from assistant.dialogue.endings_seed import SEED_ENDINGS
from assistant.dialogue.endings_soaking import SOAKING_ENDINGS
from assistant.dialogue.endings_stand import STAND_ENDINGS
from assistant.dialogue.endings_steps import STEPS_ENDINGS
from assistant.dialogue.endings_tips import TIPS_ENDINGS
from assistant.dialogue.endings_trouble import TROUBLE_ENDINGS
from assistant.dialogue.endings_when import WHEN_ENDINGS, measure_tin
from assistant.dialogue.engine import LedTo, answer, ask, begin, find
from assistant.dialogue.invited import NAMES as INVITED_TALKS
from assistant.dialogue.items import answer_items, split_label, uncovered, which_done
from assistant.dialogue.items_leaves import recounted
from assistant.dialogue.lists import choice_names, entries
from assistant.dialogue.officer_tell import TELL_ENDINGS
from assistant.dialogue.questions import Question, Reads
from assistant.dialogue.readers import hear
from assistant.dialogue.unread import not_understood, unread
from assistant.dialogue.values import Known, Session, Text, Turn
from assistant.dialogue.variety import VARIETY_ENDINGS
from assistant.dialogue.wishes import WISHES
from assistant.reading import Outcome, Wish, is_name, language_named, read_wish
from assistant.wording import messages_talk as m

ENDINGS: Mapping[str, e.Ending] = {
    **e.ENDINGS,
    **PLAN_ENDINGS,
    **PLANTING_ENDINGS,
    **SEED_ENDINGS,
    **RESULT_ENDINGS,
    **TROUBLE_ENDINGS,
    **STAND_ENDINGS,
    **DELAY_ENDINGS,
    **AGAIN_ENDINGS,
    **LOST_ENDINGS,
    **SOAKING_ENDINGS,
    **TIPS_ENDINGS,
    **STEPS_ENDINGS,
    **TELL_ENDINGS,
    **HEARD_ENDINGS,
    **DATED_ENDINGS,
    **WHEN_ENDINGS,
    **VARIETY_ENDINGS,
    "!asked": asked,
    "!which_done": which_done,
    "!uncovered": uncovered,
    "!recounted": recounted,
}
TRIES_ALONE = 3  # replies in a row that could not be read, before a person is offered


def answer_open(text: str, known: Known, session: Session) -> Turn | None:
    """The open question's answer, unless the text is a wish and no answer."""
    question = find(session, talks.TABLES)
    if question is None:
        return None
    if _wish_first(text, question, session, known):
        return None
    step = answer(session, text, known, talks.TABLES)
    if step.read:
        return _stepped(step, known, text)
    if sure_wish(text, known) is not None or extra_word(text, known) is not None:
        return None
    if known.items and answer_items(text, known, known.items, False, session) is not None:
        return None
    stopping = almost_stop(text, known)
    if stopping is not None:
        return stopping
    if session.conversation == talks.STEPS.name and _says_nothing(step, question):
        return None  # what only offers asks for nothing: something else is meant
    other = _says_nothing(step, question) or _counts_seed(text, session)
    mended = _put_right(text, session, known) if other else None
    return _stepped(mended, known, "") if mended else _ask_again(step, known, question, text)


def _put_right(text: str, session: Session, known: Known) -> LedTo | None:
    """Another answer than the one that was asked for: an earlier one anew, or a later one."""
    return corrected(text, session, known) or early(text, session, known)


def _counts_seed(text: str, session: Session) -> bool:
    """Whether "30 of 100" comes while a test runs and the plan asks for something else."""
    begun = session.conversation == talks.PLAN.name
    begun = begun and session.answers.get("germination") == "begun"
    return begun and len(_NUMBER.findall(text)) == _OF_TWO


_NUMBER, _OF_TWO = re.compile(r"\d+"), 2


def _says_nothing(step: LedTo, question: Question) -> bool:
    """Whether a reply is no answer to the question at all, not even a wrong one: "31 June" is a
    day that is not in the calendar, and no pail of 31 litres."""
    return all(say.message is question.again for say in step.said)


def _wish_first(text: str, question: Question, session: Session, known: Known) -> bool:
    """Whether a wish goes before the question's own reader: always, but for numbers and days,
    which the reader knows better ("today" is a day where a day is asked for), and what is
    wrong, where it is one of the choices ("rats ate them")."""
    wish = sure_wish(text, known)
    if wish is None:
        return False
    if wish is Wish.BACK:
        return not _is_none(text, question, known)
    if question.reads is Reads.WORDS:
        return len(text.split()) == 1
    if question.reads is Reads.LANGUAGE and wish is Wish.LANGUAGE:
        return False
    tells = wish in (Wish.PROBLEM, Wish.RAIN) and bool(question.choices)
    if tells or (question.reads in NUMBERS | DATES and not session.waiting):
        return not hear(text, question, session, known).sure
    return not text.isdigit() and not _names_choice(text, question, session, known)


def _is_none(text: str, question: Question, known: Known) -> bool:
    """Whether 0 says that there is none, as texts ask for; on a screen it leads back."""
    counted = question.reads in (Reads.SHOOTS, Reads.GAPS, Reads.MATS)
    return counted and text.strip() == "0" and known.channel is Channel.SMS


def _names_choice(text: str, question: Question, session: Session, known: Known) -> bool:
    """Whether a text is one of the choices in its words: "insects", where they are listed."""
    choices = entries(question, session, known)
    return any(
        is_name(text, (str(each.value), *each.names, each.shown(known))) for each in choices
    )


def answer_question(text: str, known: Known, session: Session) -> Turn:
    """An answer to a question that stands before everything else (sign-up, a warning)."""
    question = find(session, talks.TABLES)
    if question is None:
        return e.opened(begin(talks.SIGNUP), known)
    wish = sure_wish(text, known)
    if wish in (Wish.HELP, Wish.BACK) and _wish_first(text, question, session, known):
        return WISHES[wish](text, known)
    if wish is Wish.MENU and not text.strip().isdigit():  # "hello" is no wrong answer
        return Turn(session, (ask(session, known, talks.TABLES),))
    signing_up = session.conversation in {talks.SIGNUP.name, *INVITED_TALKS}
    if wish is Wish.LANGUAGE and question.reads is not Reads.LANGUAGE and signing_up:
        return _language_anew(text, known, session)
    step = answer(session, text, known, talks.TABLES)
    if step.read:
        return _stepped(step, known, text)
    return almost_stop(text, known) or _ask_again(step, known, question, text)


def _language_anew(text: str, known: Known, session: Session) -> Turn:
    """Another language in the middle of sign-up, which goes on where it was."""
    named = language_named(text)
    given = {name: v for name, v in session.answers.items() if not name.startswith("language")}
    if named not in known.languages:
        return e.opened(begin(talks.SIGNUP, None, **given), known)
    fresh = begin(talks.SIGNUP, None, **given, language=named)
    return replace(e.opened(fresh, known), language=named)


def _stepped(step: LedTo, known: Known, text: str) -> Turn:
    """The turn of a step: its ending, or the question it has come to."""
    if step.ending:
        return ENDINGS[step.ending](step.session, known)
    step = also_answered(step, known, text)
    if step.ending:
        return ENDINGS[step.ending](step.session, known)
    told = replace(known, session=step.session)
    language = step.session.answers.get("language")
    asked = ask(step.session, told, talks.TABLES, *step.said)
    moved = known.session is None or step.session.step != known.session.step
    texts = (*e.explained(step.session), asked) if moved else (asked,)
    return Turn(step.session, texts, language=str(language) if language else None)


def _ask_again(step: LedTo, known: Known, question: Question, text: str) -> Turn:
    """The question once more, and the reply kept for the officer."""
    note = unread(question.step, text, known)
    if note.passed:
        told = not_understood(note, known)
        asked = ask(step.session, known, talks.TABLES, told, *step.said)
        return Turn(step.session, (asked,), (note,))
    if _is_stuck(step, known):
        asked = ask(step.session, known, talks.TABLES, m.DID_NOT_UNDERSTAND())
        return Turn(step.session, (asked,), (note,))
    asked = ask(step.session, known, talks.TABLES, *step.said)
    repeats_itself = question.reads in NUMBERS | DATES and not step.session.waiting
    if repeats_itself and step.said:
        # The refusal already says what to send; the whole question again would cost a segment.
        asked = Text((*step.said, *asked.says[len(step.said) + 1 :]), asked.focus)
    return Turn(step.session, (asked,), (note,))


def _is_stuck(step: LedTo, known: Known) -> bool:
    """Whether the same refusal would help nobody any more, and a person is offered instead.
    Before somebody has agreed there is no officer to call."""
    agreed = known.farmer is not None and known.farmer.consent_at is not None
    return agreed and step.session.tries >= TRIES_ALONE and not step.session.waiting


def sure_wish(text: str, known: Known) -> Wish | None:
    """A wish that is sure."""
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    return reading.value if reading.outcome is Outcome.UNDERSTOOD else None


def extra_word(text: str, known: Known) -> Turn | None:
    """Words of the menu that may be sent at any time, such as NEW."""
    for word, ending in zip(WORDS, (e.start_plan, e.close, measure_tin), strict=True):
        if is_word(text, word, known):
            return ending(known.session, known)
    return _of_one_nursery(text, known) or _more_word(text.strip(" .!").casefold(), known)


def _of_one_nursery(text: str, known: Known) -> Turn | None:
    """A wish about the steps of the nursery that is named, or to close it: "next B"."""
    rest, named = split_label(text, known)
    if rest == text or len(named) > 1:
        return None
    if is_word(rest, m.WORD_CLOSE, known):
        return e.close(known.session, known, named[0])
    wish = sure_wish(rest, known)
    return WISHES[wish](text, known) if wish in (Wish.NEXT, Wish.HOW, Wish.MAKING) else None


def _more_word(word: str, known: Known) -> Turn | None:
    """A choice of the second menu, sent in its words at any time: "seed test", "watering"."""
    question = talks.MORE.questions[talks.MORE.first]
    for choice in question.choices:
        names = choice_names(choice.code, choice.label, known)
        if word in (name.casefold() for name in names):
            held = e.lasting(known.session)
            passing = begin(talks.MENU, held=held)
            return ENDINGS[question.goes[choice.code]](passing, known)
    return None


def almost_stop(text: str, known: Known) -> Turn | None:
    """What may have been STOP is asked: it is never guessed and never passed over."""
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    if reading.outcome is not Outcome.CONFIRM or reading.value is not Wish.STOP:
        return None
    held = e.lasting(known.session)
    return e.opened(begin(talks.STOPPING, held, reading=reading.words), known)
