"""A farmer whom somebody else enrolled: asked once whether they agree, then welcomed.

What an office knew of the nurseries is said back: a whole plan as its texts, a part of one as
the open question of the plan, a sowing day that is past as "did you sow on ...?".
"""

from dataclasses import replace
from datetime import date

from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue import engine
from assistant.dialogue.engine import begin
from assistant.dialogue.results import plan_texts
from assistant.dialogue.values import Focus, Invited, Known, Session, Text
from assistant.people import LANGUAGES
from assistant.wording import messages_people as people
from assistant.wording import messages_talk as m
from assistant.wording.message import Say

TALKS = (talks.INVITED, talks.INVITED_FREE)
NAMES = frozenset(table.name for table in TALKS)


def invitation(officer: str, free: bool) -> Text:
    """The text that asks a farmer: who enrolled them, what it costs, yes or no.

    `free`: replies cost the farmer nothing.
    """
    table, says = (
        (talks.INVITED_FREE, people.INVITED_FREE(officer=officer))
        if free
        else (talks.INVITED, people.INVITED(officer=officer))
    )
    choices = (
        m.NUMBERED(digit=1, label=m.YES()),
        m.NUMBERED(digit=2, label=m.NO()),
    )
    return Text((says, *choices), Focus(question=f"{table.name}.{table.first}"))


def asking(invited: Invited, known: Known) -> Session:
    """The talk in which somebody is asked, with what is known of them."""
    farmer = known.farmer
    table = talks.INVITED_FREE if invited.free else talks.INVITED
    given = {
        "officer": invited.officer,
        "language": farmer.language if farmer else None,
        "village": farmer.village_id if farmer else None,
    }
    return begin(table, None, **{name: kept for name, kept in given.items() if kept})


def was_asked(known: Known) -> bool:
    """Whether the text that asks is on the phone, so that a bare "1" is an answer to it."""
    return any((focus.question or "").partition(".")[0] in NAMES for focus in known.focuses)


def is_invited(known: Known) -> bool:
    """Whether an invitation waits for yes or no, and nothing else is being asked."""
    if known.session is not None:
        return known.session.conversation in NAMES
    return known.invited is not None and was_asked(known)


def spoken_or_first(session: Session, known: Known) -> str:
    """The language that somebody agreed in."""
    kept = str(session.answers.get("language") or "")
    return kept if kept in LANGUAGES else known.catalogue.language


# --- after yes -------------------------------------------------------------------------------


def welcome(known: Known) -> tuple[Session | None, tuple[Text, ...]]:
    """What is said to who agreed, and the talk that then stands open, if there is one."""
    planned = tuple(bed for bed in known.nurseries if not _is_late(bed, known.today))
    said = [text for bed in planned for text in plan_texts(bed, known)]
    session = _left_to_ask(known)
    hello: Say = people.WELCOME_PLANNED() if planned else m.ENROLLED()
    if session is None and not planned:
        session = begin(talks.PLAN)
    if session is None:
        return None, (Text((hello,)), *said)
    step = engine.arrive(session, known, talks.TABLES)
    before = intro(step.session)
    if planned:
        asked = engine.ask(step.session, known, talks.TABLES, *before)
        return step.session, (Text((hello,)), *said, asked)
    return step.session, (engine.ask(step.session, known, talks.TABLES, hello, *before),)


def intro(session: Session) -> tuple[Say, ...]:
    """Which nursery a plan is about, where an office gave it a name."""
    name = session.answers.get("name")
    if session.conversation != talks.PLAN.name or not name:
        return ()
    return (people.ABOUT_BED(label=str(name)),)


def _left_to_ask(known: Known) -> Session | None:
    """The talks about what the office did not know, each held by the one before it."""
    session: Session | None = None
    for wish in reversed(known.invited.wishes if known.invited else ()):
        session = begin(talks.PLAN, session, **wish)
    for bed in reversed(known.nurseries):
        if _is_late(bed, known.today):
            session = replace(
                begin(talks.DATES, session, nursery=bed.id, sowing=bed.sow_date.isoformat()),
                step="sowing",
            )
    return session


def _is_late(bed: Nursery, today: date) -> bool:
    """Whether the day of sowing has gone by without a word from the farmer."""
    return not bed.sown and bed.sow_date < today
