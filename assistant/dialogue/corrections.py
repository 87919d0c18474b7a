"""Answers that come early or anew: several in one text, or an earlier one put right."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

from assistant.dialogue import conversations as talks
from assistant.dialogue.engine import LedTo, find, follow, renew
from assistant.dialogue.questions import ANY, Question, Reads
from assistant.dialogue.readers import Heard, hear
from assistant.dialogue.values import Known, Session
from assistant.reading import Ask, Outcome, Reading, read_several
from assistant.wording import messages_talk as m

NUMBERS = frozenset(
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
        Reads.SPACING,
        Reads.HILL,
        Reads.GRAINS,
        Reads.GAPS,
        Reads.RIPENS,
        Reads.TINS,
    }
)
DATES = frozenset({Reads.SOWING, Reads.DATE, Reads.DATE_OR_NO})


def also_answered(step: LedTo, known: Known, text: str) -> LedTo:
    """Takes the other answers that came in the same text, "0.4 ha 85% 10 June"."""
    session = step.session
    if session.conversation != talks.PLAN.name or session.waiting or len(text.split()) < 2:
        return step
    sure = _sure_kinds(text, known)
    return _take(step, sure, known) if len(sure) > 1 else step


def early(text: str, session: Session, known: Known) -> LedTo | None:
    """One answer that came before its question, such as the day while the field was asked: it
    is kept and said to be, and the open question stands.

    Words alone are not enough: "tomorrow" may be when the seed will be tested.
    """
    if session.conversation != talks.PLAN.name or session.waiting:
        return None
    if text.strip().isdigit() or not any(sign.isdigit() for sign in text):
        return None
    sure = _sure_kinds(text, known)
    asked = {q.reads for q in talks.PLAN.questions.values() if q.keeps in session.answers}
    open_question = find(session, talks.TABLES)
    if len(sure) != 1 or open_question is None or set(sure) & (asked | {open_question.reads}):
        return None
    (reading,) = sure.values()
    return _take(LedTo(session, (m.NOTED_EARLY(reading=reading.words),)), sure, known)


def told_first(text: str, session: Session, known: Known) -> LedTo | None:
    """What somebody's first text already said of field, seed and day: nothing typed is asked
    twice."""
    sure = _sure_kinds(text, known)
    if not sure:
        return None
    noted = m.NOTED_EARLY(reading=", ".join(reading.words for reading in sure.values()))
    return _take(LedTo(session, (noted,)), sure, known)


def _sure_kinds(text: str, known: Known) -> Mapping[Reads, Reading[Any]]:
    """What a text surely says of field, seed and day."""
    asks = {Ask.AREA: Reads.AREA, Ask.GERMINATION: Reads.GERMINATION, Ask.DATE: Reads.SOWING}
    several = read_several(text, tuple(asks), known.land_words, known.today, known.region)
    return {asks[a]: r for a, r in several.items() if r.outcome is Outcome.UNDERSTOOD}


def _take(step: LedTo, sure: Mapping[Reads, Reading[Any]], known: Known) -> LedTo:
    """Keeps the sure readings for their questions, and goes on from the open one."""
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
        return LedTo(session, step.said)
    value = answers[question_now.keeps]
    words = str(answers.get(f"{question_now.keeps}_words", ""))
    return follow(session, question_now, value, words, known, talks.TABLES)


def corrected(text: str, session: Session, known: Known) -> LedTo | None:
    """An earlier answer of the same talk given anew: "no, 2 acres"."""
    table = talks.TABLES[session.conversation]
    for name in reversed(session.path):
        question = table.questions[name]
        if question.reads not in NUMBERS | DATES:
            continue
        if _is_bare(text, question) and not _counts_after_all(text, session):
            continue
        heard = hear(text, question, replace(session, waiting=None), known)
        if heard.sure and heard.words:
            return _anew(session, question, heard, known)
    return None


_LEAST_COUNT = 10  # of 100 seeds; less may be a digit of the list


def _counts_after_all(text: str, session: Session) -> bool:
    """ "83" where it was asked what to do with untested seed: it is tested by now."""
    typed = text.strip()
    return session.step == "untested" and typed.isdigit() and int(typed) >= _LEAST_COUNT


def _is_bare(text: str, question: Question) -> bool:
    """Whether a number stands alone, as "15" or "half": it was meant for what is asked now."""
    words = text.split()
    said_in_words = len(words) == 1 and not any(sign.isdigit() for sign in text)
    return text.strip().isdigit() or (said_in_words and question.reads is Reads.GERMINATION)


def _anew(session: Session, question: Question, heard: Heard, known: Known) -> LedTo:
    """Takes the new answer. Where it could lead elsewhere than the old one, it is followed."""
    noted = m.CORRECTED(reading=heard.words)
    if set(question.goes) == {ANY}:
        answers = {
            **session.answers,
            question.keeps: heard.value,
            f"{question.keeps}_words": heard.words,
            f"{question.keeps}_heard": heard.value,
        }
        return LedTo(replace(session, answers=answers, waiting=None), said=(noted,))
    path = session.path[: session.path.index(question.step)]
    back_there = replace(session, step=question.step, path=path, waiting=None)
    step = renew(back_there, question, heard, known, talks.TABLES)
    return replace(step, said=(noted,))
