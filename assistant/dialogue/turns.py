"""One turn: a text and what is known, to the answers and the changes.

In this order, and the first that understands the text has it:
1. an officer's texts with a code; then STOP and START, which hold at any time;
2. the warning that an officer is about to send;
3. the answers to a rain warning that is not answered yet, and what was open stands again;
4. sign-up, where the phone is not enrolled;
5. what the last numbered text that reached the phone was about, a prompt or the question;
6. the other open things, without bare digits; then wishes; then corrections.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date
from typing import Any

from assistant.dialogue import conversations as talks
from assistant.dialogue import endings as e
from assistant.dialogue.endings_result import RESULT_ENDINGS
from assistant.dialogue.endings_seed import SEED_ENDINGS
from assistant.dialogue.endings_stand import STAND_ENDINGS
from assistant.dialogue.endings_tips import TIPS_ENDINGS
from assistant.dialogue.endings_trouble import TROUBLE_ENDINGS
from assistant.dialogue.engine import Step, answer, ask, begin, find, follow, renew
from assistant.dialogue.items import answer_items, ask_of, which_done
from assistant.dialogue.lists import entries
from assistant.dialogue.officer import officer_turn
from assistant.dialogue.questions import ANY, Question, Reads
from assistant.dialogue.readers import Heard, hear
from assistant.dialogue.values import (
    AnswerWarning,
    Focus,
    Item,
    Known,
    NoteUnread,
    Session,
    Standing,
    Text,
    Turn,
)
from assistant.dialogue.wishes import WISHES
from assistant.reading import (
    Ask,
    Outcome,
    Reading,
    Wish,
    language_named,
    read_choice,
    read_several,
    read_wish,
)
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from assistant.wording.day import Ask as TaskAsk
from assistant.wording.day import DayWork, offer, work_says
from assistant.wording.render import render

ENDINGS: Mapping[str, e.Ending] = {
    **e.ENDINGS,
    **SEED_ENDINGS,
    **RESULT_ENDINGS,
    **TROUBLE_ENDINGS,
    **STAND_ENDINGS,
    **TIPS_ENDINGS,
    "!which_done": which_done,
}
_NUMBERS = frozenset(
    {
        Reads.AREA,
        Reads.GERMINATION,
        Reads.TESTED,
        Reads.LITRES,
        Reads.LEAVES,
        Reads.CAN,
        Reads.SHOOTS,
        Reads.MATS,
        Reads.PLANTED,
    }
)
_DATES = frozenset({Reads.SOWING, Reads.DATE})
_FIRST = talks.SIGNUP.name  # no other talk before somebody has agreed
LONGEST = 500  # characters of a text that are read; no answer to a question is longer

Stage = Callable[[str, Known], Turn | None]


def turn(text: str, known: Known) -> Turn:
    """What to answer to a text, and what changes."""
    text = " ".join(text[:LONGEST].split())
    known = replace(known, session=e.alive(known.session, known))
    stages: tuple[Stage, ...] = (
        _officer_text,
        _stop_or_start,
        _officer_talk,
        _warning,
        _sign_up,
        _in_focus,
        _elsewhere,
    )
    for stage in stages:
        found = stage(text, known)
        if found is not None:
            return found
    return _not_read(text, known)


def open_line(known: Known) -> Turn:
    """The first screen of a USSD session: what is open, else the menu."""
    known = replace(known, session=e.alive(known.session, known))
    if known.farmer is None or known.farmer.consent_at is None:
        return _resume_or(begin(talks.SIGNUP), known)
    if known.farmer.stopped_at is not None:
        return Turn(known.session, (e.said(m.YOU_ARE_STOPPED()),))
    if known.warning is not None and known.warning.answer is None:
        return Turn(known.session, (warning_screen(known, known.warning),))
    lasting = e.lasting(known.session)
    if lasting is None and not known.nurseries:
        return e.start_plan(None, known)
    if lasting is None and known.items:
        return _open_items(known)
    return _resume_or(begin(talks.MENU), replace(known, session=lasting))


def _open_items(known: Known) -> Turn:
    """The tasks that wait for an answer: one with its sentence, several as a list."""
    if len(known.items) > 1 and sum(ask_of(item) is TaskAsk.DONE for item in known.items) > 1:
        return e.opened(begin(talks.WHICH), known)
    item = known.items[-1]
    nursery = known.nursery(item.nursery_id)
    if nursery is None:
        return e.menu(None, known)
    work = DayWork(nursery, (item.task,), known.today, rain=known.raining)
    says = (*work_says(work), *offer([(nursery, item.task)]))
    return Turn(None, (Text(says, Focus(items=(item,))),))


def _resume_or(fresh: Session, known: Known) -> Turn:
    session = known.session
    if session is None or find(session, talks.TABLES) is None:
        return e.opened(fresh, known)
    return Turn(session, (ask(session, known, talks.TABLES),))


# --- 1. an officer's texts, stop and start ---------------------------------------------------


def _officer_text(text: str, known: Known) -> Turn | None:
    return officer_turn(text, known, known.desk) if known.desk else None


def _wish(text: str, known: Known) -> Wish | None:
    """A wish that is sure."""
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    return reading.value if reading.outcome is Outcome.UNDERSTOOD else None


def _stop_or_start(text: str, known: Known) -> Turn | None:
    stopped = known.farmer is not None and known.farmer.stopped_at is not None
    wish = _wish(text, known)
    if wish is Wish.STOP and not stopped:
        return WISHES[wish](text, known)
    if wish is Wish.START and (stopped or known.farmer is None):
        return WISHES[wish](text, known)
    if stopped and not _warns(known):
        return Turn(known.session, (e.said(m.YOU_ARE_STOPPED()),))
    return None


def _warns(known: Known) -> bool:
    """Whether this is an officer who is asked whether a warning shall go."""
    session = known.session
    return session is not None and session.conversation == talks.RAIN_WARNING.name


# --- 2. officers -----------------------------------------------------------------------------


def _officer_talk(text: str, known: Known) -> Turn | None:
    """The warning to be confirmed; an officer who is no farmer gets the help for officers."""
    if known.desk is None:
        return None
    session = known.session
    if session is not None and _warns(known):
        farms = known.farmer is not None and known.farmer.stopped_at is None
        passes = farms and _wish(text, known) not in (None, Wish.HELP, Wish.BACK)
        return None if passes else _answer_question(text, known, session)
    if known.farmer is None and session is None:
        return Turn(None, (e.said(o.OFFICER_HELP()),))
    return None


# --- 3. rain warnings ------------------------------------------------------------------------


def _warning(text: str, known: Known) -> Turn | None:
    warning = known.warning
    if warning is None or known.farmer is None:
        return None
    said_so = _said_of_warning(text, known, warning)
    if said_so is None:
        return None
    answer_code, message = (("covered", m.WARNING_COVERED), ("help", m.WARNING_HELP))[said_so]
    change = AnswerWarning(warning.id, answer_code)
    passing = begin(talks.MENU, held=e.lasting(known.session))
    return e.ended(passing, known, e.said(message()), changes=(change,))


def _said_of_warning(text: str, known: Known, warning: Standing) -> int | None:
    """0 for covered, 1 for help, to a warning that reached the phone; its digits answer until
    they did so once, its words as long as it stands."""
    if all(focus.warning_id != warning.id for focus in known.focuses):
        return None
    names = [[render(m.W_COVERED(), known.catalogue)], [render(m.W_HELP(), known.catalogue)]]
    if warning.answer is not None and text.casefold() not in (n[0].casefold() for n in names):
        return None
    if _wish(text, known) is Wish.HELP:
        return 1
    return read_choice(text, names, known.lexicon).value


def warning_screen(known: Known, warning: Standing) -> Text:
    """An unanswered warning, asked on a screen."""
    choices = (
        m.NUMBERED(digit=1, label=m.W_COVERED()),
        m.NUMBERED(digit=2, label=m.W_HELP()),
    )
    return Text((m.WARNING_STANDS(), *choices), Focus(warning_id=warning.id))


# --- 4. sign-up ------------------------------------------------------------------------------


def _sign_up(text: str, known: Known) -> Turn | None:
    if known.farmer is not None and known.farmer.consent_at is not None:
        return None
    session = known.session
    if session is None or find(session, talks.TABLES) is None or session.conversation != _FIRST:
        return e.opened(begin(talks.SIGNUP), known)
    return _answer_question(text, known, session)


# --- 5. and 6. what is open ------------------------------------------------------------------


def _open_focus(known: Known) -> Focus | None:
    """The last numbered text that reached the phone and is still open."""
    step = f"{known.session.conversation}.{known.session.step}" if known.session else None
    for focus in known.focuses:
        if focus.question is not None and focus.question == step:
            return focus
        if any(item in known.items for item in focus.items):
            return focus
    return None


def _beside(known: Known) -> Session | None:
    """The talk that stands while a task is answered."""
    return e.lasting(known.session)


def _in_focus(text: str, known: Known) -> Turn | None:
    focus = _open_focus(known)
    if focus is not None and focus.items:
        items = tuple(item for item in focus.items if item in known.items)
        return answer_items(text, known, items, True, _beside(known))
    if known.session is not None and find(known.session, talks.TABLES) is not None:
        return _answer_open(text, known, known.session)
    return None


def _elsewhere(text: str, known: Known) -> Turn | None:
    """Things that are open beside the one in focus, then wishes."""
    focus = _open_focus(known)
    if focus is not None and focus.items and known.session is not None:
        found = _answer_open(text, known, known.session)
        if found is not None:
            return found
    extra = _extra_word(text, known)
    if extra is not None:
        return extra
    wish = _wish(text, known)
    if wish is not None:
        return WISHES[wish](text, known)
    found = answer_items(text, known, known.items, False, _beside(known))
    if found is not None:
        return found
    return _almost_a_wish(text, known)


def _answer_open(text: str, known: Known, session: Session) -> Turn | None:
    """The open question's answer, unless the text is a wish and no answer."""
    question = find(session, talks.TABLES)
    if question is None:
        return None
    if _wish_first(text, question, session, known):
        return None
    step = answer(session, text, known, talks.TABLES)
    if step.read:
        return _stepped(step, known, text)
    if _wish(text, known) is not None or _extra_word(text, known) is not None:
        return None
    if known.items and answer_items(text, known, known.items, False, session) is not None:
        return None
    stopping = _almost_stop(text, known)
    if stopping is not None:
        return stopping
    corrected = _corrected(text, session, known) if _says_nothing(step, question) else None
    return corrected or _ask_again(step, known, question, text)


def _says_nothing(step: Step, question: Question) -> bool:
    """Whether a reply is no answer to the question at all, not even a wrong one: "31 June" is a
    day that is not in the calendar, and no pail of 31 litres."""
    return all(say.message is question.again for say in step.said)


def _wish_first(text: str, question: Question, session: Session, known: Known) -> bool:
    """Whether a wish goes before the question's own reader: always, but for numbers and days,
    which the reader knows better ("today" is a day where a day is asked for)."""
    wish = _wish(text, known)
    if wish is None:
        return False
    if wish is Wish.BACK:
        return True
    if question.reads is Reads.WORDS:
        return len(text.split()) == 1
    if question.reads is Reads.LANGUAGE and wish is Wish.LANGUAGE:
        return False
    if question.reads in _NUMBERS | _DATES and not session.waiting:
        return not hear(text, question, session, known).sure
    return not text.isdigit() and not _names_choice(text, question, session, known)


def _names_choice(text: str, question: Question, session: Session, known: Known) -> bool:
    """Whether a text is one of the choices in its words: "insects", where they are listed."""
    said = text.strip(" .!").casefold()
    choices = entries(question, session, known)
    names = (name for each in choices for name in (*each.names, each.shown(known)))
    return said in {str(each.value) for each in choices} | {name.casefold() for name in names}


def _answer_question(text: str, known: Known, session: Session) -> Turn:
    """An answer to a question that stands before everything else (sign-up, a warning)."""
    question = find(session, talks.TABLES)
    if question is None:
        return e.opened(begin(talks.SIGNUP), known)
    wish = _wish(text, known)
    if wish in (Wish.HELP, Wish.BACK) and _wish_first(text, question, session, known):
        return WISHES[wish](text, known)
    signing_up = session.conversation == talks.SIGNUP.name
    if wish is Wish.LANGUAGE and question.reads is not Reads.LANGUAGE and signing_up:
        return _language_anew(text, known, session)
    step = answer(session, text, known, talks.TABLES)
    if step.read:
        return _stepped(step, known, text)
    return _almost_stop(text, known) or _ask_again(step, known, question, text)


def _language_anew(text: str, known: Known, session: Session) -> Turn:
    """Another language in the middle of sign-up, which goes on where it was."""
    named = language_named(text)
    given = {name: v for name, v in session.answers.items() if not name.startswith("language")}
    if named not in known.languages:
        return e.opened(begin(talks.SIGNUP, None, **given), known)
    fresh = begin(talks.SIGNUP, None, **given, language=named)
    return replace(e.opened(fresh, known), language=named)


def _stepped(step: Step, known: Known, text: str) -> Turn:
    if step.ending:
        return ENDINGS[step.ending](step.session, known)
    step = _also_answered(step, known, text)
    if step.ending:
        return ENDINGS[step.ending](step.session, known)
    told = replace(known, session=step.session)
    language = step.session.answers.get("language")
    asked = ask(step.session, told, talks.TABLES, *step.said)
    moved = known.session is None or step.session.step != known.session.step
    texts = (*e.explained(step.session), asked) if moved else (asked,)
    return Turn(step.session, texts, language=str(language) if language else None)


def _also_answered(step: Step, known: Known, text: str) -> Step:
    """Takes the other answers that came in the same text, "0.4 ha 85% 10 June"."""
    session = step.session
    if session.conversation != talks.PLAN.name or session.waiting or len(text.split()) < 2:
        return step
    asks = {Ask.AREA: Reads.AREA, Ask.GERMINATION: Reads.GERMINATION, Ask.DATE: Reads.SOWING}
    several = read_several(text, tuple(asks), known.lexicon, known.today, known.region)
    sure = {asks[a]: r for a, r in several.items() if r.outcome is Outcome.UNDERSTOOD}
    if len(sure) < 2:
        return step
    return _take(step, sure, known)


def _take(step: Step, sure: Mapping[Reads, Reading[Any]], known: Known) -> Step:
    answers = dict(step.session.answers)
    for question in talks.PLAN.questions.values():
        reading = sure.get(question.reads)
        if reading is None or not question.keeps or question.keeps in answers:
            continue
        value = reading.value
        kept = value.isoformat() if isinstance(value, date) else value
        answers |= {
            question.keeps: kept,
            f"{question.keeps}_words": reading.words,
            f"{question.keeps}_heard": kept,
        }
    session = replace(step.session, answers=answers)
    question_now = find(session, talks.TABLES)
    if question_now is None or question_now.keeps not in answers:
        return Step(session, step.said)
    value = answers[question_now.keeps]
    words = str(answers.get(f"{question_now.keeps}_words", ""))
    return follow(session, question_now, value, words, known, talks.TABLES)


def _corrected(text: str, session: Session, known: Known) -> Turn | None:
    """An earlier answer of the same talk given anew: "no, 2 acres"."""
    table = talks.TABLES[session.conversation]
    for name in reversed(session.path):
        question = table.questions[name]
        if question.reads not in _NUMBERS | _DATES or _is_bare(text, question):
            continue
        heard = hear(text, question, replace(session, waiting=None), known)
        if heard.sure and heard.words:
            return _anew(session, question, heard, known)
    return None


def _is_bare(text: str, question: Question) -> bool:
    """Whether a number stands alone, as "15" or "half": it was meant for what is asked now."""
    words = text.split()
    said_in_words = len(words) == 1 and not any(sign.isdigit() for sign in text)
    return text.strip().isdigit() or (said_in_words and question.reads is Reads.GERMINATION)


def _anew(session: Session, question: Question, heard: Heard, known: Known) -> Turn:
    """Takes the new answer. Where it could lead elsewhere than the old one, it is followed."""
    noted = m.CORRECTED(reading=heard.words)
    if set(question.goes) == {ANY}:
        answers = {
            **session.answers,
            question.keeps: heard.value,
            f"{question.keeps}_words": heard.words,
            f"{question.keeps}_heard": heard.value,
        }
        amended = replace(session, answers=answers, waiting=None)
        return Turn(amended, (ask(amended, known, talks.TABLES, noted),))
    path = session.path[: session.path.index(question.step)]
    back_there = replace(session, step=question.step, path=path, waiting=None)
    step = renew(back_there, question, heard, known, talks.TABLES)
    return _stepped(replace(step, said=(noted,)), known, "")


def _ask_again(step: Step, known: Known, question: Question, text: str) -> Turn:
    note = NoteUnread(question.step, text)
    asked = ask(step.session, known, talks.TABLES, *step.said)
    repeats_itself = question.reads in _NUMBERS | _DATES and not step.session.waiting
    if repeats_itself and step.said:
        # The refusal already says what to send; the whole question again would cost a segment.
        asked = Text((*step.said, *asked.says[len(step.said) + 1 :]), asked.focus)
    return Turn(step.session, (asked,), (note,))


# --- wishes and words ------------------------------------------------------------------------


def _extra_word(text: str, known: Known) -> Turn | None:
    """Words of the menu that may be sent at any time, such as NEW."""
    word = text.strip(" .!").casefold()
    words = {m.WORD_NEW: e.start_plan, m.WORD_CLOSE: e.close}
    for message, ending in words.items():
        if word == render(message(), known.catalogue).casefold():
            return ending(known.session, known)
    return None


def _almost_a_wish(text: str, known: Known) -> Turn | None:
    """A word that is nearly a wish is asked back by showing the menu."""
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    if reading.outcome is not Outcome.CONFIRM:
        return None
    return _almost_stop(text, known) or e.menu(known.session, known)


def _almost_stop(text: str, known: Known) -> Turn | None:
    """What may have been STOP is asked: it is never guessed and never passed over."""
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    if reading.outcome is not Outcome.CONFIRM or reading.value is not Wish.STOP:
        return None
    held = e.lasting(known.session)
    return e.opened(begin(talks.STOPPING, held, reading=reading.words), known)


def _not_read(text: str, known: Known) -> Turn:
    note = NoteUnread("", text)
    says = (m.DID_NOT_UNDERSTAND(),)
    if known.session is not None and find(known.session, talks.TABLES) is not None:
        asked = ask(known.session, known, talks.TABLES, *says)
        return Turn(known.session, (asked,), (note,))
    items: tuple[Item, ...] = known.items
    focus = Focus(items=items) if items else None
    return Turn(None, (Text(says, focus),), (note,))
