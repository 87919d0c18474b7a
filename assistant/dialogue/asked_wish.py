"""A wish that is but a word of a longer question: its long answer would be to another one."""

from collections.abc import Mapping
from types import MappingProxyType

from assistant.acts import Act
from assistant.dialogue.matched import OFFERED, Match
from assistant.dialogue.values import Known
from assistant.hearing import Topic, understand
from assistant.hearing.asking import ASKING, OTHER
from assistant.reading import Outcome, Wish, has_name, read_wish
from assistant.reading.text.fold import read_tokens

_TELLING: Mapping[Wish, Topic | None] = MappingProxyType(
    {
        Wish.QUANTITIES: None,
        Wish.RAIN: Topic.WATER_RAIN,
        Wish.TODAY: Topic.TODAY,
        Wish.DATES: None,
    }
)
"""Wishes that are answered by a long text, and the question that is that wish, if one is."""
_WORDS_OF_A_WISH, _WORDS_OF_A_QUESTION = 3, 6  # from then on whatever the table says


def is_more_than_a_wish(text: str, found: Match, known: Known) -> bool:
    """Whether a wish is but a word of a longer question, "kitna pani rakhe ropai ke baad": its
    long answer would be to another one, so the likeliest questions are offered."""
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    if reading.value is Wish.DATES and _asks_when_of_other_work(text, known):
        return found.asks
    if reading.value is Wish.PROBLEM:
        return found.asks and found.likely and _asks_rather_than_tells(text, known)
    words = len(text.split())
    long = words > (_WORDS_OF_A_WISH if found.likely else _WORDS_OF_A_QUESTION)
    return long and found.asks and reading.value in _TELLING


_OF_THE_PLAN = frozenset(
    {"sow", "plant", "uncover", "cover", "soak", "drain", "seed", "bed", "date", "next", "lift"}
)
_LITTLE = 0.3


def is_whole_wish(text: str, wish: Wish, known: Known) -> bool:
    """Whether a text is the words of a wish and nothing else."""
    words = tuple(each.text for each in read_tokens(text) if each.is_word)
    own, english = known.lexicon, known.lexicons["en"]
    return any(words in each.wishes[wish].words for each in (own, english))


def asks_beside_a_wish(text: str, wish: Wish | None, known: Known) -> bool:
    """Whether a word or two ask of more than the wish in them: "when weed", "birds how"."""
    if wish not in (Wish.DATES, Wish.PROBLEM) or is_whole_wish(text, wish, known):
        return False
    ideas = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    return wish is Wish.DATES or bool(ideas & ASKING)


def _asks_when_of_other_work(text: str, known: Known) -> bool:
    """Whether "when" stands beside work that the plan has no day for: watering, weeding,
    filling gaps. Its days would be read as that work's."""
    if is_whole_wish(text, Wish.DATES, known):
        return False
    ideas = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    return "when" in ideas and not ideas & _OF_THE_PLAN


def _asks_rather_than_tells(text: str, known: Known) -> bool:
    ideas = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    if OTHER in ideas or has_name(text, known.lexicon.choices.get("yellow", ())):
        return False  # "yellow" and the like: the list of troubles has it
    weights = understand(text, known.ears, known.catalogue.language).weights
    asks, tells = weights[Act.QUESTION], weights[Act.TROUBLE] + weights[Act.DANGER]
    return asks > tells and tells < _LITTLE


def is_for_a_person(found: Match, known: Known) -> bool:
    """Whether such a question is like none of ours, "how many grams on each kilo", and who
    asked has agreed."""
    farmer = known.farmer
    agreed = farmer is not None and farmer.consent_at is not None and farmer.stopped_at is None
    return agreed and not found.perhaps and known.session is None


def with_wish(perhaps: tuple[Topic, ...], text: str, known: Known) -> tuple[Topic, ...]:
    """The questions to offer, the last of them that of the wish in the text, if any."""
    reading = read_wish(text, known.lexicons, known.catalogue.language)
    topic = _TELLING.get(reading.value) if reading.value else None
    if topic is None or reading.outcome is not Outcome.UNDERSTOOD or topic in perhaps:
        return perhaps
    return (*perhaps[: OFFERED - 1], topic)
