"""A wish that is but a word of a longer question: its long answer would be to another one."""

from collections.abc import Mapping
from types import MappingProxyType

from assistant.dialogue.matched import OFFERED, Match
from assistant.dialogue.values import Known
from assistant.hearing import Topic
from assistant.reading import Outcome, Wish, read_wish

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
    words = len(text.split())
    long = words > (_WORDS_OF_A_WISH if found.likely else _WORDS_OF_A_QUESTION)
    return long and found.asks and reading.value in _TELLING


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
