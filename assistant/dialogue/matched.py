"""Which question a text asks, where the exact rules and the learned table are put together.

The table never answers by itself where it is not sure: what it half knows is offered ("1 when
do I uncover 2 ... 3 Something else"), and who chooses the last is passed on to a person.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from assistant.dialogue import conversations as talks
from assistant.dialogue import endings as e
from assistant.dialogue.engine import ask, begin
from assistant.dialogue.values import Kept, Known, Turn
from assistant.hearing import Question, Topic
from assistant.hearing.asking import ASKING, OTHER
from assistant.hearing.matching import Likeness
from assistant.wording import messages_talk as m
from assistant.wording.render import render

# By `nursery acts questions`: of ways that the table had not seen 0.7 % were answered wrongly
# from SURE on; where a rule says the same, less is needed.
SURE, AGREED, APART = 0.3, -0.2, 0.2
OFFERED, LIKE_ENOUGH = 2, -0.9  # two fit a segment; a third would help 2 in 100
SOMETHING_ELSE = "other"


@dataclass(frozen=True)
class Match:
    """What a text asks: a question that is answered, or those that it may be.

    asks: by a word of asking or a question mark
    learned: the table is sure of it
    """

    question: Question | None
    perhaps: tuple[Topic, ...]
    asks: bool
    learned: bool = False


def match(
    text: str, question: Question | None, known: Known, languages: Sequence[str]
) -> Match:
    """The rules' question and the table's, put together.

    Args:
        question: what an exact rule says it is, if any
        languages: those that are listened in
    """
    ideas = known.ears.questions.ideas(text, languages)
    asks = "?" in text or bool(ideas & ASKING) or (question is not None and question.asks)
    if known.ears.match is None or OTHER in ideas:
        return Match(question, (), asks)
    found = known.ears.match.likest(text, ideas)
    topic = _sure(found, question)
    if topic is not None:
        return Match(Question(topic, asks), (), asks, learned=True)
    likely = [each.topic for each in found if each.topic and each.score >= LIKE_ENOUGH]
    if question is not None:
        likely = [question.topic, *likely]
    elif found[0].topic is None:
        likely = []  # likest to what a person must answer
    return Match(None, tuple(dict.fromkeys(likely))[:OFFERED], asks)


def _sure(found: Sequence[Likeness], question: Question | None) -> Topic | None:
    first, second = found[0], found[1]
    ours = next(each for each in found if each.topic is not None)
    if question is not None and ours.topic is question.topic and ours.score >= AGREED:
        return ours.topic
    is_apart = first.score - second.score >= APART
    return first.topic if first.score >= SURE and is_apart else None


_OF_TEXTS = frozenset({Topic.FREE, Topic.WHO, Topic.STOP_HOW, Topic.MY_NUMBER})
_OF_ENDING = frozenset({Topic.FREE, Topic.STOP_HOW})


def asks_of_texts(text: str, known: Known, is_said: bool) -> bool:
    """Whether a text that may be a refusal asks about the texts: the answer says how they are
    ended. `is_said`: a rule hears a refusal, so that the table must be sure."""
    table, language = known.ears.match, known.catalogue.language
    if table is None:
        return False
    ideas = known.ears.questions.ideas(text, (language, "en"))
    first = table.likest(text, ideas)[0]
    if is_said:
        asks = "?" in text or bool(ideas & ASKING)
        return asks and first.topic in _OF_ENDING and first.score >= SURE
    return first.topic in _OF_TEXTS and first.score >= 0


def offer_which(text: str, perhaps: Sequence[Topic], known: Known) -> Turn:
    """Which of these questions it is; the last choice is a person."""
    labels = known.ears.labels.get(known.catalogue.language, {})
    shown = [(str(topic), labels.get(topic, str(topic))) for topic in perhaps]
    shown.append((SOMETHING_ELSE, render(m.P_OTHER(), known.catalogue)))
    waiting: dict[str, Kept] = {"n": len(shown)}
    for place, (code, label) in enumerate(shown, start=1):
        waiting |= {f"value{place}": code, f"words{place}": label}
    asked = begin(talks.ASKED, held=e.lasting(known.session), words=text)
    asked = replace(asked, waiting=waiting)
    return Turn(asked, (ask(asked, known, talks.TABLES),))
