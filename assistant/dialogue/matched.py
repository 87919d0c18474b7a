"""Which question a text asks, where the exact rules and the learned table are put together.

The table never answers by itself where it is not sure: what it half knows is offered ("1 when
do I uncover 2 ... 3 Something else"), and who chooses the last is passed on to a person.
"""

from collections.abc import Sequence, Set
from dataclasses import dataclass, replace

from assistant.dialogue import conversations as talks
from assistant.dialogue import endings as e
from assistant.dialogue.engine import ask, begin
from assistant.dialogue.values import Inquiry, Kept, Known, Turn
from assistant.hearing import Question, Topic, understand
from assistant.hearing.asking import ASKING
from assistant.hearing.assured import assurance
from assistant.hearing.matching import Likeness
from assistant.wording import messages_talk as m
from assistant.wording.render import render

# Odds as in `hearing/assured.py`; what each of them costs stands in QUESTIONS.md.
SURE, LIKELY = 0.5, -1.0  # answered from the first on, offered from the second
AGREED = -0.3  # answered from here on where an exact rule hears the same
LIKELY_ASKED = -1.8  # offered from here on where a word of asking is in it
ASKED = 0.3  # from here on it is no cry
# Shares of the table alone.
ENDING_ENOUGH, WHO_ENOUGH = 0.6, 0.75  # "how do I stop these", "who writes every day?"
TEXTS_ENOUGH = 0.4  # what asks about the texts, where only the weights hear a refusal
OFFERED, LIKE_ENOUGH, THIRD_ENOUGH = 3, 0.02, 0.04
LETTERS = 100  # of the questions that are offered together, so that they fit a segment
FAR = 0.3  # a share that is so much higher leaves no doubt
SOMETHING_ELSE = "other"
_FEW_WORDS = 4


@dataclass(frozen=True)
class Match:
    """What a text asks: a question that is answered, or those that it may be.

    asks: by a word of asking or a question mark
    likely: whether it is worth offering those whatever else the text may be
    sure: whether the text asks rather than cries; less is needed than for an answer
    """

    question: Question | None
    perhaps: tuple[Topic, ...]
    asks: bool
    likely: bool = False
    sure: bool = False


def match(
    text: str, question: Question | None, known: Known, languages: Sequence[str]
) -> Match:
    """The rules' question, the table's and the acts, put together.

    Args:
        question: what an exact rule says it is, if any
        languages: those that are listened in
    """
    ideas = known.ears.questions.ideas(text, languages)
    asks = "?" in text or bool(ideas & ASKING) or (question is not None and question.asks)
    if known.ears.match is None:
        return Match(question, (), asks)
    found = known.ears.match.likest(text, ideas)
    rule = question.topic if question else None
    topic = next(each.topic for each in found if each.topic is not None)
    odds = assurance(
        found, topic, understand(text, known.ears, known.catalogue.language).weights
    )
    if rule is Topic.DIRTY_PAIL and question:
        # How long to soak in diesel is no answer, and its answer is a caution.
        return Match(question, (), asks, sure=True)
    if odds >= (AGREED if rule is topic else SURE) and not _is_of_money(ideas, topic):
        return Match(Question(topic, asks), (), asks, sure=True)
    likely = odds >= (LIKELY_ASKED if asks else LIKELY)
    return Match(None, _perhaps(found, rule), asks, likely, odds >= ASKED)


_OF_MUCH = frozenset({Topic.SEED_MUCH, Topic.SHEET_MUCH, Topic.MIX_MUCH, Topic.MATS_MANY})


def _is_of_money(ideas: Set[str], topic: Topic) -> bool:
    """Whether a price is named where an amount would be answered: "how much is a sheet"."""
    return "price" in ideas and topic in _OF_MUCH


def _perhaps(found: Sequence[Likeness], rule: Topic | None) -> tuple[Topic, ...]:
    """Those that are worth offering, the likest first; none where a person must answer. Mere
    talk is no choice: it is answered, or not heard."""
    likely = [each.topic for each in found if each.topic and each.share >= LIKE_ENOUGH]
    likely = [topic for topic in likely if topic is not Topic.CHAT]
    surer = [
        each.topic for each in found if each.topic in likely and each.share >= THIRD_ENOUGH
    ]
    likely = likely[: max(OFFERED - 1, len(surer))]
    if rule is None and _is_a_persons(found):
        return ()
    if rule is not None and rule not in likely[:OFFERED]:
        likely = [*likely[: OFFERED - 1], rule]
    return tuple(dict.fromkeys(likely))[:OFFERED]


def _is_a_persons(found: Sequence[Likeness]) -> bool:
    """Whether it is like none of ours, and like one of them by far less."""
    return found[0].topic is None and found[0].share - found[1].share >= FAR


def surely_asked(text: str, known: Known) -> bool:
    """Whether a text asks one of the questions by a word of asking, whatever else it
    weighs as."""
    languages = (known.catalogue.language, "en")
    rule = known.ears.questions.heard(text, languages)
    found = match(text, rule, known, languages)
    return known.ears.match is not None and found.asks and found.sure


_OF_TEXTS = frozenset({Topic.FREE, Topic.WHO, Topic.STOP_HOW, Topic.MY_NUMBER, Topic.NO_CREDIT})
_OF_ELSE = frozenset({Topic.HOUSEHOLD, Topic.CHAT})  # a card just bought may be a refusal
_OF_ENDING = frozenset({Topic.FREE, Topic.STOP_HOW})
OF_SENDER = frozenset({Topic.WHO, Topic.MY_NUMBER})  # their answers name the word that ends it


def says_who(text: str, known: Known) -> bool:
    """ "I am his wife", and nothing else: who holds the phone, by the exact rules alone."""
    languages = (known.catalogue.language, "en")
    rule = known.ears.questions.heard(text, languages, False)
    says = rule is not None and rule.topic is Topic.HOUSEHOLD
    return says and len(text.split()) <= _FEW_WORDS


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
        enough = ENDING_ENOUGH if first.topic in _OF_ENDING else WHO_ENOUGH
        return asks and first.topic in _OF_ENDING | OF_SENDER and first.share >= enough
    # "Can my wife get these too": hers or a neighbour's phone, of which both tell.
    others = {each.topic: each.share for each in table.likest(text, ideas)}
    joins = others.get(Topic.HOUSEHOLD, 0.0) + others.get(Topic.NEIGHBOUR, 0.0) >= WHO_ENOUGH
    surely = joins or (first.topic in _OF_ELSE and first.share >= WHO_ENOUGH)
    return surely or (first.topic in _OF_TEXTS and first.share >= TEXTS_ENOUGH)


def asks_how_to_stop(text: str, known: Known) -> bool:
    """Whether a text asks, in a word of asking, how the texts are ended: no wish by itself."""
    table = known.ears.match
    ideas = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    if table is None or not ideas & ASKING:
        return False
    first = table.likest(text, ideas)[0]
    return first.topic is Topic.STOP_HOW and first.share >= ENDING_ENOUGH


def offer_which(
    text: str, perhaps: Sequence[Topic], known: Known, first: Sequence[tuple[str, str]] = ()
) -> Turn:
    """Which of these questions it is; the last choice is a person. `first`: the code and the
    words of those that stand before ours."""
    labels = known.ears.labels.get(known.catalogue.language, {})
    ours = [(str(topic), labels.get(topic, str(topic))) for topic in perhaps]
    shown = [*first, *ours][:OFFERED]
    while len(shown) > 1 and sum(len(label) for _, label in shown) > LETTERS:
        shown.pop(-2)  # the last may be the wish that is a word of it
    inquiries = tuple(Inquiry(code, offered=True) for code, _ in shown)
    shown.append((SOMETHING_ELSE, render(m.P_OTHER(), known.catalogue)))
    waiting: dict[str, Kept] = {"n": len(shown)}
    for place, (code, label) in enumerate(shown, start=1):
        waiting |= {f"value{place}": code, f"words{place}": label}
    asked = begin(talks.ASKED, held=e.lasting(known.session), words=text)
    asked = replace(asked, waiting=waiting)
    return Turn(asked, (ask(asked, known, talks.TABLES),), inquiries=inquiries)
