"""Questions that a programme's own office has added: whether a text asks one of them, and
whether an answer may be used at all.

Words are compared as they are folded, without those that say little ("the", "please"): the same
words, or each but for a slip, are the question; all of them among some others may be it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from rapidfuzz.distance import OSA

from assistant.reading.text.fold import Token, read_tokens
from assistant.reading.text.near import slips_allowed

MOST_WAYS = 12
LONGEST_WAY = 60  # characters, so that it can be offered beside others
FEWEST_WORDS = 2  # of a way, beside those that say little
MOST_BESIDE = 4  # other words of a text that may be the question
_BUT_ONE = 4  # words of a way from which on one may be missing


@dataclass(frozen=True)
class OfficeQuestion:
    """A question in use. `ways`: how it is asked, in its language; `village_id`: where it is
    answered, None everywhere."""

    id: int
    language: str
    ways: tuple[str, ...]
    answer: str
    village_id: int | None = None


@dataclass(frozen=True)
class OfficeWords:
    """Of one language: folded words that say little, words that no answer may hold (one or
    several, a word that ends in * stands for all that begin so), and measures of doses."""

    small: frozenset[str] = frozenset()
    refused: tuple[str, ...] = ()
    measures: frozenset[str] = frozenset()


NO_WORDS = OfficeWords()


class Nearness(StrEnum):
    """How near a text is to a question."""

    SAME = "same"
    PERHAPS = "perhaps"


class Unfit(StrEnum):
    """Why a question cannot be kept."""

    EMPTY = "empty"
    WAYS = "ways"  # none, too many, or one that is too short or too long
    REFUSED = "refused"  # a word of the answer
    DOSE = "dose"  # an amount of the answer that may be one
    LENGTH = "length"
    HEARD = "heard"  # a way is heard as danger, a refusal or a word to send
    PLACE = "place"  # no such language or village here


def nearness(text: str, ways: Sequence[str], words: OfficeWords) -> Nearness | None:
    """How near a text is to the nearest of these ways of asking; None where it is not."""
    said = _telling(text, words)
    found = {_near(said, _telling(way, words)) for way in ways} if said else set()
    return next((each for each in Nearness if each in found), None)


def _near(said: Sequence[str], way: Sequence[str]) -> Nearness | None:
    missing = [word for word in way if not any(_alike(word, other) for other in said)]
    beside = [word for word in said if not any(_alike(word, other) for other in way)]
    if not way or len(beside) > MOST_BESIDE:
        return None
    if not missing:
        return Nearness.PERHAPS if beside else Nearness.SAME
    one_less = len(missing) == 1 and len(way) >= _BUT_ONE
    return Nearness.PERHAPS if one_less and len(beside) <= len(way) else None


def _alike(one: str, other: str) -> bool:
    """Whether two words are the same but for a slip of the finger; a number is none."""
    if one == other:
        return True
    slips = 0 if one[0] != other[0] or one[0].isdigit() else min(1, slips_allowed(one))
    return bool(slips) and slips_allowed(other) > 0 and OSA.distance(one, other) <= slips


def _telling(text: str, words: OfficeWords) -> list[str]:
    """Its words and numbers that say something, folded."""
    return [each.text for each in _words(text) if each.text not in words.small]


def _words(text: str) -> list[Token]:
    return [each for each in read_tokens(text) if each.is_word or each.is_number]


def ways_fit(ways: Sequence[str], words: OfficeWords) -> bool:
    """Whether ways of asking can be told from other texts, and offered in a text."""
    each_fits = all(
        len(way) <= LONGEST_WAY and len(_telling(way, words)) >= FEWEST_WORDS for way in ways
    )
    return 0 < len(ways) <= MOST_WAYS and each_fits


def refused_in(answer: str, every: Iterable[OfficeWords]) -> str | None:
    """The word of an answer that is never said here (a dose, a product, a bait), by the words
    of these languages; None where there is none."""
    folded = [each.text for each in _words(answer)]
    refused = (each for words in every for each in words.refused)
    return next((each for each in refused if _holds(folded, each.split())), None)


def _holds(folded: Sequence[str], phrase: Sequence[str]) -> bool:
    starts = range(len(folded) - len(phrase) + 1)
    return any(
        all(_is(folded[at + i], wanted) for i, wanted in enumerate(phrase)) for at in starts
    )


def _is(word: str, wanted: str) -> bool:
    return word.startswith(wanted[:-1]) if wanted.endswith("*") else word == wanted


def dose_in(answer: str, every: Iterable[OfficeWords]) -> str | None:
    """An amount of an answer in a measure of doses ("20 ml"); None where there is none."""
    found = _words(answer)
    measures = {measure for words in every for measure in words.measures}
    for number, unit in zip(found, found[1:], strict=False):
        if number.is_number and unit.text in measures:
            return f"{number.text} {unit.text}"
    return None


def has_number(answer: str) -> bool:
    """Whether an answer holds a figure, at which its second reader should look twice."""
    return any(each.is_number for each in _words(answer))
