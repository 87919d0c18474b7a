"""The work by hand, told step by step: NEXT, "how", "how do I make the bed", "what is a mat".

By SMS a step offers no digit, so that 1 and 2 still answer the day's task; a screen, which has
nothing else to answer, does.
"""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, datetime, timedelta

from assistant.agronomy.nursery import Nursery
from assistant.agronomy.tasks import TaskCode
from assistant.channel import Channel
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, ended, lasting, no_nursery, said
from assistant.dialogue.engine import begin
from assistant.dialogue.facts import chosen_nursery
from assistant.dialogue.items import split_label
from assistant.dialogue.results import plan_pages, plan_texts
from assistant.dialogue.values import Focus, Known, Session, Text, Turn
from assistant.wording import messages_care as care
from assistant.wording import messages_steps as steps
from assistant.wording import messages_talk as m
from assistant.wording.message import Say
from assistant.wording.steps import chapter_of, making_code, open_chapter, step, what_it_is

PLAN = "plan"  # in place of a task: the pages of a plan, not the steps of a day
# Who dials again sooner lost the line while reading; later they want to know of the day.
LINE_IS_MISSED = timedelta(minutes=10)


def next_step(text: str, known: Known) -> Turn:
    """The step after the one that was told last; the first of the day where none was."""
    nursery, session = _meant(text, known), _telling(known)
    if nursery is None:
        return no_nursery(known.session, known)
    if session is not None and _tells_of(session, nursery, known):
        return _again(session, nursery, known, on=1)
    if _is_new(nursery, known.today):
        return _page(nursery, 0, known)
    return _from_start(nursery, open_chapter(nursery, known.today), known)


def how(text: str, known: Known) -> Turn | None:
    """The step that was told last once more, or the first of the day; None where another
    question is open, or nothing is to be done by hand."""
    session, nursery = _telling(known), _meant(text, known)
    if nursery is None or (session is None and known.session is not None):
        return None
    if session is not None and _tells_of(session, nursery, known):
        return _again(session, nursery, known, on=0)
    code = open_chapter(nursery, known.today)
    return _from_start(nursery, code, known) if code else None


def making(text: str, known: Known) -> Turn:
    """How the bed is made, whatever the day: first what it is."""
    nursery = _meant(text, known)
    if nursery is None:
        return no_nursery(known.session, known)
    what = what_it_is(nursery, known.today)
    return _shown((what,), nursery, making_code(nursery.practice), -1, known)


def _site(session: Session, known: Known) -> Turn:
    """Choosing and guarding the site, then all that is got ready for the bed."""
    nursery = _meant("", known)
    if nursery is None:
        return ended(session, known, said(care.SITE()))
    return _shown((care.SITE(),), nursery, TaskCode.COLLECT, -1, known)


def _next_on_screen(session: Session, known: Known) -> Turn:
    return next_step("", known)


def _meant(text: str, known: Known) -> Nursery | None:
    """The nursery that the text names, else the one that steps are told of, else the first
    that has any."""
    if not known.nurseries:
        return None
    _, named = split_label(text, known)
    if len(named) == 1:
        return named[0]
    session = _telling(known)
    told = chosen_nursery(session, known) if session else None
    newest = known.nurseries[-1]
    just_made = newest.made_on == known.today and _is_new(newest, known.today)
    if (session is None or "place" not in session.answers) and just_made:
        return newest
    with_steps = (each for each in known.nurseries if open_chapter(each, known.today))
    return told or next(with_steps, known.nurseries[0])


def _telling(known: Known) -> Session | None:
    """The talk of steps, where it is the one that is open."""
    session = known.session
    return session if session and session.conversation == talks.STEPS.name else None


def _tells_of(session: Session, nursery: Nursery, known: Known) -> bool:
    """Whether the talk of steps has told something of that nursery."""
    return "place" in session.answers and chosen_nursery(session, known) == nursery


def _again(session: Session, nursery: Nursery, known: Known, *, on: int) -> Turn:
    """What was told last, or so many places on."""
    task, place = str(session.answers["task"]), _place(session) + on
    if task == PLAN:
        return _page(nursery, place, known)
    return _tell(nursery, TaskCode(task), place, known)


# --- a new plan ------------------------------------------------------------------------------


def with_next(made: Turn, known: Known) -> Turn:
    """A plan just made; a screen, where nobody types NEXT, has a key for its pages."""
    if known.channel is not Channel.USSD:
        return made
    choice = m.NUMBERED(digit=1, label=steps.NEXT_STEP())
    keys = Text((choice,), Focus(question="steps.step"))
    session = begin(talks.STEPS, told_at=known.now.isoformat())
    return replace(made, session=session, texts=(*made.texts, keys))


def read_on(known: Known) -> Turn | None:
    """The screen that was read when the line was lost a moment ago; None if there was none."""
    session, nursery = _telling(known), _meant("", known)
    told_at = session.answers.get("told_at") if session else None
    if session is None or nursery is None or told_at is None:
        return None
    if known.now - datetime.fromisoformat(str(told_at)) > LINE_IS_MISSED:
        return None
    if "place" not in session.answers:
        shown = with_next(Turn(None, plan_texts(nursery, known)), known)
    elif _tells_of(session, nursery, known):
        shown = _again(session, nursery, known, on=0)
    else:
        return None
    once = tuple(
        replace(text, keep=False) for text in shown.texts
    )  # a text of it is sent already
    return replace(shown, texts=once)


def _is_new(nursery: Nursery, today: date) -> bool:
    """Whether no work that has steps has come up since the plan was made: then NEXT tells
    the plan before them."""
    began = (task.date for task in nursery.tasks if chapter_of(task.code, nursery.practice))
    return not nursery.held and not any(nursery.made_on < day <= today for day in began)


def _page(nursery: Nursery, place: int, known: Known) -> Turn:
    """A page of the plan; after the last the steps of the day."""
    pages = plan_pages(nursery, known)
    if place >= len(pages):
        return _from_start(nursery, open_chapter(nursery, known.today), known)
    if known.channel is not Channel.USSD:
        return _shown(pages[place].says, nursery, PLAN, place, known)
    shown = _shown((), nursery, PLAN, place, known)  # the key is no part of what is kept
    return replace(shown, texts=(pages[place], *shown.texts))


def _place(session: Session) -> int:
    return int(str(session.answers["place"]))


def _from_start(nursery: Nursery, code: TaskCode | None, known: Known) -> Turn:
    if code is None:
        return _over(nursery, known)
    return _tell(nursery, code, 0, known)


def _tell(nursery: Nursery, code: TaskCode, place: int, known: Known) -> Turn:
    told = step(nursery, code, place, known.today)
    if told is None:
        return _over(nursery, known)
    is_last = step(nursery, code, place + 1, known.today) is None
    return _shown((told,), nursery, code, place, known, is_last=is_last)


def _shown(
    says: tuple[Say, ...],
    nursery: Nursery,
    code: str,
    place: int,
    known: Known,
    *,
    is_last: bool = False,
) -> Turn:
    """A step with the way to the next; the talk that it interrupted waits."""
    telling = _telling(known)
    held = telling.held if telling else lasting(known.session)
    told_at = {"told_at": known.now.isoformat()} if known.channel is Channel.USSD else {}
    session = begin(
        talks.STEPS, held=held, nursery=nursery.id, task=str(code), place=place, **told_at
    )
    if is_last:
        return Turn(session, (Text(says),))
    if known.channel is Channel.USSD:
        choice = m.NUMBERED(digit=1, label=steps.NEXT_STEP())
        return Turn(session, (Text((*says, choice), Focus(question="steps.step")),))
    return Turn(session, (Text((*says, steps.NEXT_HINT())),))


def _over(nursery: Nursery, known: Known) -> Turn:
    return ended(known.session, known, said(steps.LAST_STEP(label=nursery.called)))


STEPS_ENDINGS: Mapping[str, Ending] = {"!next": _next_on_screen, "!site": _site}
