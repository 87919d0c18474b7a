"""Questions that the programme's own office answers, as its own words.

They are heard after the ear (whoever is hurt, in danger or wants no more texts is never told
what an office wrote) and before our own questions; what only may be one is offered.
"""

from collections.abc import Sequence

from assistant.acts import Act
from assistant.dialogue import conversations as talks
from assistant.dialogue import endings as e
from assistant.dialogue.engine import begin
from assistant.dialogue.values import Inquiry, Known, OfficeDesk, Turn
from assistant.hearing import understand
from assistant.hearing.office import NO_WORDS, Nearness, OfficeQuestion, nearness
from assistant.wording import messages_answers as a
from assistant.wording.message import Say

OFFICE = "office:"  # begins the code of such a question
MOST_OFFERED = 2
_GRAVE = (Act.DIE, Act.HARM, Act.DANGER, Act.REFUSE)
_LIKELY_GRAVE = 0.4  # the weight of those together


def office_question(text: str, known: Known, languages: Sequence[str]) -> str | None:
    """The code of the office's question that a text surely asks."""
    found = _near(text, known, languages, Nearness.SAME)
    return _code(found[0]) if found else None


def office_perhaps(
    text: str, known: Known, languages: Sequence[str]
) -> tuple[tuple[str, str], ...]:
    """The office's questions that a text may ask, each with the words that offer it."""
    found = _near(text, known, languages, Nearness.PERHAPS)
    return tuple((_code(each), each.ways[0]) for each in found[:MOST_OFFERED])


def office_answer(code: str, known: Known) -> Turn | None:
    """The office's answer, in passing: what was open stands again. None where the question was
    taken away since."""
    question = next((each for each in known.office.questions if _code(each) == code), None)
    if question is None:
        return None
    held = e.lasting(known.session)
    passing = begin(talks.MENU, held=held) if held else None
    turn = e.ended(passing, known, e.said(office_says(question.answer, known.office)))
    return Turn(turn.session, turn.texts, turn.changes, turn.language, (Inquiry(code),))


def office_says(answer: str, office: OfficeDesk) -> Say:
    """An answer as it is sent: it says whose it is."""
    if not office.programme:
        return a.AN_OFFICE_SAYS(answer=answer)
    return a.OFFICE_SAYS(programme=office.programme, answer=answer)


def _near(
    text: str, known: Known, languages: Sequence[str], wanted: Nearness
) -> list[OfficeQuestion]:
    questions = [each for each in known.office.questions if each.language in languages]
    if not questions or not _may_be_answered(text, known):
        return []
    return [
        each
        for each in questions
        if nearness(text, each.ways, known.ears.office.get(each.language, NO_WORDS)) is wanted
    ]


def _may_be_answered(text: str, known: Known) -> bool:
    """To who agreed and wants texts, and never to what weighs as a cry or a refusal, though no
    rule has heard one."""
    farmer = known.farmer
    if farmer is None or farmer.consent_at is None or farmer.stopped_at is not None:
        return False
    weights = understand(text, known.ears, known.catalogue.language).weights
    return sum(weights[act] for act in _GRAVE) < _LIKELY_GRAVE


def _code(question: OfficeQuestion) -> str:
    return f"{OFFICE}{question.id}"
