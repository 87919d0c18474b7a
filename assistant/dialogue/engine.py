"""Moves a session through its table: (session, text, known) in, a step out.

The engine knows no conversation by name. What a question asks, reads and leads to stands in
its row; what happens at the end stands in `endings`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from assistant.dialogue.facts import worded
from assistant.dialogue.lists import entries, numbered
from assistant.dialogue.questions import Conversation, Question, Reads
from assistant.dialogue.readers import Heard, hear
from assistant.dialogue.values import Focus, Kept, Known, Session, Text
from assistant.dialogue.ways import way_on
from assistant.reading import Outcome, read_choice, read_confirm
from assistant.wording import messages_talk as m
from assistant.wording.message import Say

Tables = Mapping[str, Conversation]


@dataclass(frozen=True)
class LedTo:
    """Where a reply led: a session with an open question, or an ending ("!open").

    `read` is False where nothing was understood, `said` what to say before the question.
    """

    session: Session
    said: tuple[Say, ...] = ()
    ending: str = ""
    read: bool = True


def find(session: Session, tables: Tables) -> Question | None:
    """The open question of a session; None where its table has changed since."""
    table = tables.get(session.conversation)
    if table is None or table.version != session.version:
        return None
    return table.questions.get(session.step)


def begin(table: Conversation, held: Session | None = None, **answers: Kept) -> Session:
    """A new session at the table's first question."""
    return Session(table.name, table.version, table.first, answers=answers, held=held)


def answer(session: Session, text: str, known: Known, tables: Tables) -> LedTo:
    """What a reply to the open question leads to."""
    question = find(session, tables)
    if question is None:
        raise LookupError(f"no question {session.conversation}.{session.step} to answer")
    if session.waiting:
        settled = _settle_waiting(session, question, text, known)
        if settled is None:
            refusal = m.AGAIN_CHOICE() if session.waiting["n"] else m.AGAIN_YES_NO()
            return _again(session, Heard(Outcome.AGAIN, refusal=refusal))
        if not settled.sure and settled.refusal is None:
            return LedTo(replace(session, waiting=None))
        heard = settled
    else:
        heard = hear(text, question, session, known)
    return _next(session, question, heard, known, tables)


def _next(
    session: Session, question: Question, heard: Heard, known: Known, tables: Tables
) -> LedTo:
    if heard.outcome is Outcome.CONFIRM:
        waiting = {"value1": heard.value, "words1": heard.words, "n": 0}
        return LedTo(replace(session, waiting=waiting))
    if heard.outcome is Outcome.AGAIN:
        return _again(session, heard)
    return renew(session, question, heard, known, tables)


def renew(
    session: Session, question: Question, heard: Heard, known: Known, tables: Tables
) -> LedTo:
    """Takes a new answer to a question and goes its way; what hung on an old one goes."""
    gone = {question.keeps, *question.drops}
    left = {name: kept for name, kept in session.answers.items() if name not in gone}
    fresh = replace(session, answers=left)
    return follow(fresh, question, heard.value, heard.words, known, tables)


def follow(
    session: Session, question: Question, value: Kept, words: str, known: Known, tables: Tables
) -> LedTo:
    """Takes a value as the answer and goes on, over questions that are answered already."""
    target, keep = way_on(question, value, session, known)
    answers = (
        {**session.answers, f"{question.keeps}_heard": value}
        if question.keeps
        else {**session.answers}
    )
    if keep:
        answers |= {question.keeps: value, f"{question.keeps}_words": words}
    moved = replace(session, answers=answers, waiting=None, tries=0)
    if target.startswith("!"):
        return LedTo(moved, ending=target)
    return arrive(_move(moved, target, tables), known, tables)


def _move(session: Session, target: str, tables: Tables) -> Session:
    """To another question; going to an earlier one takes its answer back."""
    if target not in session.path and target != session.step:
        return replace(session, step=target, path=(*session.path, session.step))
    path = (*session.path, session.step)
    kept = tables[session.conversation].questions[target].keeps
    answers = {name: value for name, value in session.answers.items() if name != kept}
    return replace(session, step=target, path=path[: path.index(target)], answers=answers)


def arrive(session: Session, known: Known, tables: Tables) -> LedTo:
    """Opens a question, or passes over it where its answer is known or it has no choice."""
    question = find(session, tables)
    if question is None:
        return LedTo(session)
    if question.keeps and question.keeps in session.answers:
        value = session.answers[question.keeps]
        words = str(session.answers.get(f"{question.keeps}_words", value))
        return follow(session, question, value, words, known, tables)
    if _no_choice(question, known):
        only = known.nurseries[0].id if known.nurseries else None
        value = only if question.reads is Reads.NURSERY else None
        return follow(session, question, value, "", known, tables)
    return LedTo(session)


def _no_choice(question: Question, known: Known) -> bool:
    """Whether there is nothing to choose from, so that the question is never asked."""
    if question.reads is Reads.NURSERY:
        return len(known.nurseries) <= 1
    if question.reads is Reads.PRACTICE:
        return len(known.practices) <= 1
    return question.reads is Reads.VILLAGE and not known.villages


def back(session: Session, known: Known, tables: Tables) -> Session | None:
    """One question back, its answer forgotten; None at the first one.

    Of several that ask for the same, the first is asked again: the others, such as "do not sow
    this seed", were about an answer that is no more.
    """
    if session.waiting:
        return replace(session, waiting=None)
    questions = tables[session.conversation].questions
    path = session.path
    while path and _no_choice(questions[path[-1]], known):
        path = path[:-1]
    if not path:
        return None
    kept = questions[path[-1]].keeps
    step = next(
        name for name in path if name == path[-1] or (kept and questions[name].keeps == kept)
    )
    answers = {name: value for name, value in session.answers.items() if name != kept}
    before = path[: path.index(step)]
    return replace(session, step=step, path=before, answers=answers, tries=0)


def _settle_waiting(
    session: Session, question: Question, text: str, known: Known
) -> Heard | None:
    """An answer to "you mean ...?" or to the list of likely meanings.

    A plain "no" gives an unsure Heard without a refusal; None is for what was not read at all.
    """
    waiting = session.waiting or {}
    count = int(str(waiting["n"]))
    names = [[str(waiting[f"words{place}"])] for place in range(1, count + 1)]
    if count:
        reading = read_choice(text, names, known.lexicon)
        if reading.value is not None:
            place = reading.value + 1
            return Heard(
                Outcome.UNDERSTOOD, waiting[f"value{place}"], str(waiting[f"words{place}"])
            )
    else:
        said = read_confirm(text, known.lexicon).value
        if said == "yes":
            return Heard(Outcome.UNDERSTOOD, waiting["value1"], str(waiting["words1"]))
        if said == "no":
            return Heard(Outcome.AGAIN)
    heard = hear(text, question, session, known)
    return None if heard.outcome is Outcome.AGAIN and not heard.options else heard


def _again(session: Session, heard: Heard) -> LedTo:
    waiting = session.waiting
    if heard.options:
        waiting = {"n": len(heard.options)}
        for place, (value, words) in enumerate(heard.options, start=1):
            waiting |= {f"value{place}": value, f"words{place}": words}
        return LedTo(replace(session, waiting=waiting, tries=session.tries + 1))
    said = (heard.refusal,) if heard.refusal else ()
    return LedTo(replace(session, tries=session.tries + 1), said, read=False)


def ask(session: Session, known: Known, tables: Tables, *before: Say) -> Text:
    """The open question as a text, with its choices and what its digits answer."""
    question = find(session, tables)
    if question is None:
        raise LookupError(f"no question {session.conversation}.{session.step} to ask")
    focus = Focus(question=f"{session.conversation}.{session.step}")
    if session.waiting:
        return Text((*before, *_waiting_says(session.waiting)), focus)
    choices = numbered(entries(question, session, known))
    several = len(known.practices) > 1
    asks = (question.asks_choosing if several else None) or question.asks
    put = worded(asks, session, known)
    first = tuple(say for say in before if say != put)  # once, where it is its own hint
    return Text((*first, put, *choices), focus)


def _waiting_says(waiting: Mapping[str, Kept]) -> tuple[Say, ...]:
    count = int(str(waiting["n"]))
    if not count:
        return (
            m.CONFIRM_READING(reading=str(waiting["words1"])),
            m.NUMBERED(digit=1, label=m.YES()),
            m.NUMBERED(digit=2, label=m.NO()),
        )
    options = tuple(
        m.NUMBERED(digit=place, label=str(waiting[f"words{place}"]))
        for place in range(1, count + 1)
    )
    return (m.WHICH_READING(), *options)
