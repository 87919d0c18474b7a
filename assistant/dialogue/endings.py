"""What happens where a conversation ends: changes to keep, and what is said of them."""

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import replace
from datetime import date, datetime

from assistant.acts import Act
from assistant.agronomy.constants import RAIN_WATCH_LAST_DAY
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.tasks import TaskCode
from assistant.dialogue import conversations as talks
from assistant.dialogue.aid import person
from assistant.dialogue.corrections import told_first
from assistant.dialogue.engine import arrive, ask, begin, find
from assistant.dialogue.facts import chosen_nursery
from assistant.dialogue.invited import intro, spoken_or_first, welcome
from assistant.dialogue.lists import OTHER, choice_names, names_pest
from assistant.dialogue.rain_hours import sent_warning
from assistant.dialogue.readers import shortened
from assistant.dialogue.results import (
    cost_text,
    dates_text,
    quantity_texts,
    today_text,
)
from assistant.dialogue.values import (
    AddFarmer,
    CallForHelp,
    Change,
    Decline,
    Enrol,
    Kept,
    Known,
    SaveNursery,
    Session,
    SetLanguage,
    StopTexts,
    Text,
    Turn,
)
from assistant.hearing import understand
from assistant.reading import Outcome, Wish, in_danger, read_choice, read_wish
from assistant.wording import messages_aid as aid
from assistant.wording import messages_care as care
from assistant.wording import messages_people as people
from assistant.wording import messages_talk as m
from assistant.wording.day import about
from assistant.wording.message import Message, Say

Ending = Callable[[Session, Known], Turn]


def opened(
    session: Session, known: Known, *before: Say, changes: tuple[Change, ...] = ()
) -> Turn:
    """A turn that asks the open question, after passing over what is known already."""
    step = arrive(session, known, talks.TABLES)
    text = ask(step.session, known, talks.TABLES, *before)
    return Turn(step.session, (*explained(step.session), text), changes)


def explained(session: Session) -> tuple[Text, ...]:
    """What goes before a question that is newly open, as texts of their own."""
    question = find(session, talks.TABLES)
    return tuple(said(message()) for message in question.explains) if question else ()


def ended(
    session: Session | None, known: Known, *texts: Text, changes: tuple[Change, ...] = ()
) -> Turn:
    """A turn that ends a talk and takes up the one that it interrupted."""
    closed = {c.nursery.id for c in changes if isinstance(c, SaveNursery) and c.nursery.closed}
    held = alive(session.held if session else None, known, closed)
    if held is None:
        return Turn(None, texts, changes)
    before = intro(held) or (m.KEPT_SO_FAR(),)
    return Turn(held, (*texts, ask(held, known, talks.TABLES, *before)), changes)


def alive(
    session: Session | None, known: Known, closed: Collection[int] = ()
) -> Session | None:
    """The talk, or the one it interrupted, that can go on: not about what is over by now.

    A talk of another release starts over, and passes over what was answered.
    """
    while session is not None and _is_over(session, known, closed):
        session = session.held
    if session is None or find(session, talks.TABLES) is not None:
        return session
    fresh = begin(talks.TABLES[session.conversation], session.held, **session.answers)
    return arrive(fresh, known, talks.TABLES).session


def _is_over(session: Session, known: Known, closed: Collection[int]) -> bool:
    kept = session.answers.get("nursery")
    if kept is not None and (kept in closed or chosen_nursery(session, known) is None):
        return True
    if session.conversation in talks.WARNINGS:
        return datetime.fromisoformat(str(session.answers["ends_at"])) <= known.now
    if session.conversation == talks.WHICH.name:
        return not known.items
    return session.conversation not in talks.TABLES


def lasting(session: Session | None) -> Session | None:
    """The talk worth taking up again: not a menu that was only looked at, nor "which one?"."""
    while session is not None and session.conversation in _PASSING:
        session = session.held
    return session


_PASSING = frozenset(
    table.name
    for table in (
        talks.MENU,
        talks.WHICH,
        talks.LANGUAGE,
        talks.RAIN_WARNING,
        talks.DANGER_WARNING,
        talks.DAYS_WARNING,
        talks.ADDING,
        talks.TELLING,
        talks.TELLING_LATER,
        talks.STOPPING,
        talks.IF_HURT,
        talks.IF_LOST,
        talks.STOP_ALL,
        talks.STEPS,
        talks.ASKED,
    )
)


def said(*says: Say) -> Text:
    """One text of these sentences."""
    return Text(says)


# --- sign-up and plan ------------------------------------------------------------------------


def _enrol(session: Session, known: Known) -> Turn:
    village = session.answers.get("village")
    change = Enrol(
        language=spoken_or_first(session, known),
        village_id=int(str(village)) if village not in (None, OTHER) else None,
    )
    open_talk, texts = welcome(known)
    open_talk, texts = _from_first_text(session, open_talk, texts, known)
    calls = tuple(_calls_of_signup(session, known))
    told = (
        (said(aid.TROUBLE_PASSED(person=person(known))),) if _in_trouble(session, known) else ()
    )
    return Turn(open_talk, (*told, *texts), (change, *calls), language=change.language)


def _from_first_text(
    session: Session, talk: Session | None, texts: tuple[Text, ...], known: Known
) -> tuple[Session | None, tuple[Text, ...]]:
    """The plan goes on from what the first text said ("0.5 ha 85%")."""
    first = str(session.answers.get("first") or "")
    if not first or talk is None or talk.conversation != talks.PLAN.name or talk.answers:
        return talk, texts
    step = told_first(first, talk, known)
    if step is None or step.ending:
        return talk, texts
    asked = ask(step.session, known, talks.TABLES, m.ENROLLED(), *step.said)
    return step.session, (asked,)


def _in_trouble(session: Session, known: Known) -> bool:
    """Whether somebody's first text told of a trouble, which a person should hear."""
    first = str(session.answers.get("first") or "")
    if not first:
        return False
    heard = understand(first, known.ears, known.catalogue.language)
    wish = read_wish(first, known.lexicons, known.catalogue.language)
    wished = wish.outcome is Outcome.UNDERSTOOD and wish.value in (Wish.PROBLEM, Wish.OFFICER)
    return wished or heard.likeliest in (Act.TROUBLE, Act.DANGER)


def _calls_of_signup(session: Session, known: Known) -> Iterator[CallForHelp]:
    """Who is told of a trouble in the first text, and of a village that is not in the list."""
    if _in_trouble(session, known):
        yield CallForHelp("question", str(session.answers["first"]))
    if session.answers.get("village") == OTHER:
        yield CallForHelp("village", str(session.answers.get("village_words") or OTHER))


def _refuse(session: Session, known: Known) -> Turn:
    return Turn(None, (said(m.NO_CONSENT()),), (Decline(),))


def _add(session: Session, known: Known) -> Turn:
    """An officer enrols somebody, as it was shown back."""
    answers = session.answers
    reaches = known.desk.reaches if known.desk else ()
    ids = {each.village.name: each.village.id for each in reaches}
    if answers["village"] not in ids:  # handed over meanwhile
        return ended(session, known, said(m.KEPT_OPEN()))
    phone = str(answers["phone"])
    change = AddFarmer(
        phone=phone,
        name=str(answers["name"]) if answers["name"] != NO_NAME else None,
        village_id=ids[str(answers["village"])],
        language=str(answers["speaks_code"]),
    )
    return ended(session, known, said(people.ADDED(phone=phone)), changes=(change,))


NO_NAME = "-"


# --- the menu --------------------------------------------------------------------------------


def start_plan(session: Session | None, known: Known) -> Turn:
    """Plan one more nursery."""
    return opened(begin(talks.PLAN), known)


def no_nursery(session: Session | None, known: Known) -> Turn:
    """There is nothing to talk about yet; who is planning the first one goes on with it."""
    planning = holds(session)
    if planning is not None and planning.conversation == talks.PLAN.name:
        return ended(begin(talks.MENU, held=planning), known)
    return ended(session, known, said(m.NO_NURSERY()))


def today(session: Session | None, known: Known) -> Turn:
    """Today's work of all nurseries."""
    if not known.nurseries:
        return no_nursery(session, known)
    texts = tuple(today_text(nursery, known) for nursery in known.nurseries)
    return ended(session, known, *texts)


def quantities(
    session: Session | None, known: Known, meant: tuple[Nursery, ...] | None = None
) -> Turn:
    """The quantities again, of the nurseries meant; of all where none was named."""
    if not known.nurseries:
        return no_nursery(session, known)
    shown = known.nurseries if meant is None else meant
    texts = [
        text
        for each in shown
        for text in (
            *quantity_texts(each, known.today, known.region),
            *cost_text(each, known),
        )
    ]
    return ended(session, known, *texts)


def when(session: Session | None, known: Known, meant: tuple[Nursery, ...]) -> Turn:
    """The main days again, of the nurseries meant."""
    if not known.nurseries:
        return no_nursery(session, known)
    texts = (dates_text(each, known.today, begins=False) for each in meant)
    return ended(session, known, *texts)


def dates(session: Session | None, known: Known, meant: Nursery | None = None) -> Turn:
    """Change the day of sowing or transplanting, of the nursery that is meant."""
    if not known.nurseries:
        return no_nursery(session, known)
    named: dict[str, Kept] = {"nursery": meant.id} if meant else {}
    return opened(begin(talks.DATES, holds(session), **named), known)


def close(session: Session | None, known: Known, meant: Nursery | None = None) -> Turn:
    """Close one nursery, the one that is meant; it is asked once more."""
    if not known.nurseries:
        return no_nursery(session, known)
    named: dict[str, Kept] = {"nursery": meant.id} if meant else {}
    return opened(begin(talks.CLOSE, holds(session), **named), known)


def problem(session: Session | None, known: Known) -> Turn:
    """Something is wrong."""
    return opened(begin(talks.TROUBLE, held=holds(session)), known)


def officer(session: Session | None, known: Known) -> Turn:
    """A person is wanted."""
    return opened(begin(talks.OFFICER, held=holds(session)), known)


def trouble_named(text: str, known: Known) -> Turn:
    """A trouble in the farmer's words: its own place where they name one of the list, else the
    list; what was said with it goes to a person."""
    question = talks.TROUBLE.questions["problem"]
    names = [choice_names(each.code, each.label, known) for each in question.choices]
    named = read_choice(text, names, known.lexicon).value
    code = "animals" if names_pest(text, known) else None
    if code is None and named is not None and not text.strip().isdigit():
        code = question.choices[named].code
    if code is not None:
        return opened(begin(talks.TROUBLE, held=holds(known.session), problem=code), known)
    if len(text.split()) < FEWEST_WORDS:
        return problem(known.session, known)
    return trouble_told(text, known)


def trouble_told(text: str, known: Known) -> Turn:
    """The list of troubles; the words go to a person in any case."""
    asked = begin(talks.TROUBLE, held=holds(known.session))
    told = aid.TROUBLE_PASSED(person=person(known))
    return opened(asked, known, told, changes=(call("question", text, asked, known),))


FEWEST_WORDS = 3  # of a wish for a person that says what for, too: "officer, my seed smells"


def wants_person(text: str, known: Known) -> Turn:
    """A person is wanted: told at once where the text says what for, else asked."""
    if len(text.split()) < FEWEST_WORDS:
        return officer(known.session, known)
    passing = begin(talks.MENU, held=lasting(known.session))
    noted = said(m.CALL_NOTED(words=shortened(text)))
    return ended(passing, known, noted, changes=(call("officer", text, passing, known),))


def language(session: Session | None, known: Known) -> Turn:
    """Another language."""
    return opened(begin(talks.LANGUAGE, held=holds(session)), known)


def menu(session: Session | None, known: Known) -> Turn:
    """What can be done here."""
    return opened(begin(talks.MENU, held=holds(session)), known)


def holds(session: Session | None) -> Session | None:
    """The talk to take up again after another: a half-finished plan, also behind a menu."""
    if session is None:
        return None
    return session if session.conversation == talks.PLAN.name else session.held


def _set_language(session: Session, known: Known) -> Turn:
    code = str(session.answers["language"])
    turn = ended(session, known, said(m.LANGUAGE_SET()), changes=(SetLanguage(code),))
    return replace(turn, language=code)


def _closed(session: Session, known: Known) -> Turn:
    nursery = chosen(session, known)
    text = said(m.CLOSED(label=nursery.called))
    return ended(session, known, text, changes=(SaveNursery(replace(nursery, closed=True)),))


def stop(session: Session | None, known: Known) -> Turn:
    """No more texts; what was half-finished stays, but for a sign-up: who stops before having
    agreed has begun nothing."""
    kept = lasting(session)
    if kept is not None and kept.conversation == talks.SIGNUP.name:
        kept = None
    return Turn(kept, (said(m.STOPPED()),), (StopTexts(),))


def _kept(session: Session, known: Known) -> Turn:
    return ended(session, known, said(m.KEPT_OPEN()))


def chosen(session: Session, known: Known) -> Nursery:
    """The open nursery that a talk is about."""
    nursery = chosen_nursery(session, known)
    if nursery is None:
        raise LookupError(f"{session.conversation}: the nursery is closed; begin again")
    return nursery


def sown_weak(nursery: Nursery) -> CallForHelp:
    """That seed which must not be sown was sown: an officer should know which."""
    return CallForHelp("seed", f"{nursery.inputs.germination:.0%}", nursery.id)


# --- trouble ---------------------------------------------------------------------------------


def call(about_what: str, words: str, session: Session, known: Known) -> CallForHelp:
    """A call for help from a talk; about their only nursery where the talk names none."""
    nursery = chosen_nursery(session, known)
    if nursery is None and len(known.nurseries) == 1:
        nursery = known.nurseries[0]
    return CallForHelp(about_what, words, nursery.id if nursery else None)


def _call(session: Session, known: Known) -> Turn:
    words = str(session.answers["words"])
    kind = str(session.answers.get("problem") or "officer")
    if _tells_of_danger(words, known):
        kind = "danger"  # the officer hears of it at once, as of rain
    text = said(m.CALL_NOTED(words=shortened(words)))
    return ended(session, known, text, changes=(call(kind, words, session, known),))


def _tells_of_danger(words: str, known: Known) -> bool:
    """Whether words speak of a flood or a storm, also in English mixed in."""
    lexicons = {known.lexicon.language: known.lexicon}
    lexicons |= {code: each for code, each in known.lexicons.items() if code == "en"}
    return any(in_danger(words, each) for each in lexicons.values())


def rain(session: Session | None, known: Known) -> Turn:
    """What rain asks for at the nursery's stage and on its bed; people first."""
    beds = {
        stage: [each for each in known.nurseries if _in_rain(each, known.today) == stage]
        for stage in _IN_RAIN
    }
    stage = next((stage for stage in _FIRST_IN_RAIN if beds[stage]), "early")
    says = [about(_IN_RAIN[stage], each, known.today) for each in beds[stage]]
    unlike = {(say.message, str(say.slots)): say for say in says or [_IN_RAIN[stage]()]}
    return ended(session, known, *map(said, unlike.values()))


_IN_RAIN: Mapping[str, Message] = {
    "before": care.RAIN_BEFORE,
    "early": m.RAIN_ADVICE_EARLY,
    "later": m.RAIN_ADVICE_LATER,
    "drained": care.RAIN_DRAINED,
    "planted": care.RAIN_FIELD,
}
_FIRST_IN_RAIN = ("early", "before", "drained", "later", "planted")


def _in_rain(nursery: Nursery, today: date) -> str:
    """The stage, or that the bed is drained or planted: no water is brought back to it."""
    if nursery.transplanted_on is not None:
        return "planted"
    return "drained" if is_drained(nursery, today) else stage_of(nursery, today)


def is_drained(nursery: Nursery, today: date) -> bool:
    """Whether the water of the bed is to be off: from the day of draining on."""
    return any(each.code is TaskCode.DRAIN_BED and each.date <= today for each in nursery.tasks)


def stage_of(nursery: Nursery, today: date) -> str:
    """Whether weather finds a bed "before" it is sown, "early" or "later"."""
    day = nursery.youngest_day(today)
    if day < 0 or (day == 0 and not nursery.sown):
        return "before"
    return "early" if day <= RAIN_WATCH_LAST_DAY.value else "later"


# --- officer ---------------------------------------------------------------------------------


def _warn(session: Session, known: Known) -> Turn:
    says, change = sent_warning(session, known)
    return ended(session, known, said(says), changes=(change,) if change else ())


ENDINGS: Mapping[str, Ending] = {
    "!enrol": _enrol,
    "!refuse": _refuse,
    "!add": _add,
    "!plan": start_plan,
    "!today": today,
    "!quantities": quantities,
    "!dates": dates,
    "!problem": problem,
    "!officer": officer,
    "!close": close,
    "!language": language,
    "!set_language": _set_language,
    "!closed": _closed,
    "!kept": _kept,
    "!stop": stop,
    "!call": _call,
    "!rain": rain,
    "!warn": _warn,
}
