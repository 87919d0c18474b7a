"""What a person may wish for at any point of any talk."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import partial

from assistant.dialogue import conversations as talks
from assistant.dialogue import endings as e
from assistant.dialogue.endings_lost import LOST_ENDINGS
from assistant.dialogue.endings_steps import how, making, next_step
from assistant.dialogue.endings_trouble import TROUBLE_ENDINGS
from assistant.dialogue.engine import arrive, ask, back, begin, find
from assistant.dialogue.facts import worded
from assistant.dialogue.items import split_label
from assistant.dialogue.values import Known, Session, SetLanguage, SetPace, StartTexts, Turn
from assistant.reading import Wish, is_name, language_named
from assistant.wording import messages_talk as m
from assistant.wording.render import render


def _start(text: str, known: Known) -> Turn:
    """Begins again: texts for who had stopped, the talk from its start for who had not."""
    if known.farmer is None or known.farmer.consent_at is None:
        return e.opened(begin(talks.SIGNUP), known)
    if known.farmer.stopped_at is not None or known.farmer.paused_at is not None:
        changes = (StartTexts(),)
        if known.nurseries or known.session:
            passing = begin(talks.MENU, held=e.lasting(known.session))
            return e.ended(passing, known, e.said(m.STARTED_AGAIN()), changes=changes)
        return e.opened(begin(talks.PLAN), known, m.STARTED_AGAIN(), changes=changes)
    if not known.nurseries:
        begun = known.session
        if begun is not None and begun.conversation == talks.PLAN.name and begun.answers:
            return e.ended(begin(talks.MENU, held=begun), known)  # nothing typed is lost
        return e.start_plan(None, known)
    if render(m.WORD_NEW(), known.catalogue).casefold() in text.casefold().split():
        return e.start_plan(known.session, known)  # "new nursery"
    return e.menu(None, known)


def _trouble(text: str, known: Known) -> Turn:
    """What is wrong; where the words name it, what is done against it and no list."""
    turn = e.trouble_named(text, known)
    if turn.session is None or turn.session.conversation != talks.TROUBLE.name:
        return turn
    step = arrive(turn.session, known, talks.TABLES)
    ending = _TROUBLES.get(step.ending)
    if ending is None:
        return turn
    told = ending(step.session, known)
    return replace(told, changes=(*turn.changes, *told.changes))


_TROUBLES: Mapping[str, e.Ending] = {**TROUBLE_ENDINGS, **LOST_ENDINGS}


def _help(text: str, known: Known) -> Turn:
    question = find(known.session, talks.TABLES) if known.session else None
    if known.session is None or question is None:
        return Turn(known.session, (e.said(m.HELP()),))
    session = replace(known.session, waiting=None)
    help_says = worded(question.help, session, known)
    return Turn(session, (ask(session, known, talks.TABLES, help_says),))


def _how(text: str, known: Known) -> Turn:
    """How the work of the day is done by hand; of an open question, what it asks."""
    return how(text, known) or _help(text, known)


def _back(text: str, known: Known) -> Turn:
    if known.session is None:
        return e.menu(None, known)
    session = back(known.session, known, talks.TABLES)
    if session is not None:
        return Turn(session, (ask(session, known, talks.TABLES),))
    if known.session.held is not None:
        return e.ended(known.session, known)
    if known.farmer is None or known.farmer.consent_at is None:
        # Before the first question of the sign-up there is nothing, and no menu yet.
        return Turn(known.session, (ask(known.session, known, talks.TABLES),))
    return e.menu(None, known)


def _language_in(text: str) -> str | None:
    """The one language that a short text names: "english please"."""
    words = text.split()
    found = {name for word in words if (name := language_named(word.strip(".,!"))) is not None}
    return found.pop() if len(found) == 1 and len(words) <= _FEW_WORDS else None


_FEW_WORDS = 4


def _language(text: str, known: Known) -> Turn:
    named = language_named(text) or _language_in(text)
    if named in known.languages:
        turn = e.ended(
            begin(talks.LANGUAGE, held=e.lasting(known.session)),
            known,
            e.said(m.LANGUAGE_SET()),
            changes=(SetLanguage(str(named)),),
        )
        return replace(turn, language=named)
    return e.language(known.session, known)


def _passing(ending: Callable[..., Turn]) -> Callable[[str, Known], Turn]:
    """An answer given in passing: the open question stands again after it."""

    def wish(text: str, known: Known) -> Turn:
        held = e.lasting(known.session)
        session = begin(talks.MENU, held=held) if held else None
        return ending(session, known)

    return wish


def _quantities(text: str, known: Known) -> Turn:
    """The quantities of the nursery that the text names, as in "quantities B"; else of all."""
    _, meant = split_label(text, known)

    def ending(session: Session | None, known: Known) -> Turn:
        return e.quantities(session, known, meant)

    return _passing(ending)(text, known)


def _when(text: str, known: Known) -> Turn:
    """The days of the nursery that the text names; else of all."""
    _, meant = split_label(text, known)

    def ending(session: Session | None, known: Known) -> Turn:
        return e.when(session, known, meant)

    return _passing(ending)(text, known)


def _thanks(session: Session | None, known: Known) -> Turn:
    """Nothing more to say where a question is open: it is asked again."""
    texts = () if session is not None and session.held else (e.said(m.ALL_RIGHT()),)
    return e.ended(session, known, *texts)


def _dates(text: str, known: Known) -> Turn:
    """Changes the nursery that the text names, as in "change date B"."""
    _, meant = split_label(text, known)
    if len(known.nurseries) > 1 and len(meant) == 1:
        return e.dates(known.session, known, meant[0])
    return e.dates(known.session, known)


def _menu(text: str, known: Known) -> Turn:
    """The menu; a mere greeting goes on where a talk was left instead."""
    words = (" ".join(phrase) for phrase in known.lexicon.wishes[Wish.MENU].words)
    held = e.lasting(known.session)
    if held is None or is_name(text, words):
        return e.menu(known.session, known)
    return e.ended(begin(talks.MENU, held=held), known)


def _pace(only_work: bool, text: str, known: Known) -> Turn:
    """Fewer texts, or all of them again; who has not agreed to any is asked as before."""
    if known.farmer is None or known.farmer.consent_at is None:
        return e.menu(known.session, known)
    passing = begin(talks.MENU, held=e.lasting(known.session))
    says = m.ONLY_WORK() if only_work else m.EVERY_DAY()
    return e.ended(passing, known, e.said(says), changes=(SetPace(only_work),))


def _opening(ending: Callable[..., Turn]) -> Callable[[str, Known], Turn]:
    def wish(text: str, known: Known) -> Turn:
        return ending(known.session, known)

    return wish


WISHES: Mapping[Wish, Callable[[str, Known], Turn]] = {
    Wish.MENU: _menu,
    Wish.HELP: _help,
    Wish.STOP: _opening(e.stop),
    Wish.START: _start,
    Wish.LANGUAGE: _language,
    Wish.BACK: _back,
    Wish.CHANGE_DATE: _dates,
    Wish.DATES: _when,
    Wish.PROBLEM: _trouble,
    Wish.RAIN: _passing(e.rain),
    Wish.TODAY: _passing(e.today),
    Wish.QUANTITIES: _quantities,
    Wish.OFFICER: e.wants_person,
    Wish.THANKS: _passing(_thanks),
    Wish.NEXT: next_step,
    Wish.HOW: _how,
    Wish.MAKING: making,
    Wish.WORK_DAYS: partial(_pace, True),
    Wish.EVERY_DAY: partial(_pace, False),
}
