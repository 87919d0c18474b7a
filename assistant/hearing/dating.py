"""Whether a text gives a day to the work of a nursery: "we sow on friday".

The words stand in `days/<language>.toml`, by exact rules; the day itself is read by
`reading.read_date`. Nothing here is learned or weighed, and nothing is decided: what a day
means for a plan, the dialogue asks back.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

from assistant.reading.text.fold import TEXTS_IN_HAND, Token, read_tokens
from assistant.reading.text.rules import Rule, RuleBook, bound, read_rule


class Idea(StrEnum):
    """The rows of a language's file."""

    SOW = "sow"
    PLANT = "plant"
    SOAK = "soak"
    UNCOVER = "uncover"
    MOVE = "move"  # a day is asked to be another one
    TOLD = "told"  # it has happened
    COMING = "coming"  # it is to happen
    NOW = "now"  # just now, this very day
    AGO = "ago"  # a year or a season ago
    AGAIN = "again"  # today, this time, or as it was then
    BEASTS = "beasts"  # hens scatter seed, goats uncover a bed
    HEARSAY = "hearsay"  # on television, in the news; or what nearly happened
    ELSEWHERE = "elsewhere"  # another bed, a neighbour's, weeds, another crop
    OTHER = "other"  # the day is of something else: the market, a neighbour


WORKS = (Idea.SOAK, Idea.UNCOVER, Idea.SOW, Idea.PLANT)
"""Kinds of work, the one that is told first standing first: who soaks to sow, soaks."""


@dataclass(frozen=True, eq=False)
class DayWords:
    """How one language says the ideas; `is_tonal`: its accents make other words."""

    language: str
    is_tonal: bool
    book: RuleBook[Idea]


@dataclass(frozen=True)
class Dated:
    """What a text says around a day.

    works: the kinds of work it names
    told:  it is past, by its words; `coming`: it is to come, by its words
    moves: it asks for another day
    now:   it is of this very day, by its words
    ago:   it is of a year or a season gone by, and nothing in it of today
    beasts: animals are named, which may have done what is told
    hearsay: it is of the news or a film, or nearly happened
    elsewhere: another bed, a neighbour's, weeds or another crop is named
    other: the day may be of something else
    strange: words that are none of these rules' own
    """

    works: frozenset[Idea] = frozenset()
    told: bool = False
    coming: bool = False
    moves: bool = False
    other: bool = False
    now: bool = False
    ago: bool = False
    beasts: bool = False
    elsewhere: bool = False
    hearsay: bool = False
    strange: tuple[Token, ...] = ()

    @property
    def says_past(self) -> bool:
        """Whether it speaks of what has happened, and of nothing else."""
        return self.told and not self.coming


def around_day(
    text: str, tongues: Mapping[str, DayWords], languages: Iterable[str]
) -> Dated | None:
    """What a text says around a day, in the first of the languages that knows a word of it;
    None where none does."""
    words = tuple(token for token in read_tokens(text) if token.is_word)
    for code in languages:
        if code in tongues and words:
            found = _heard(tongues[code], words)
            if found is not None:
                return found
    return None


@lru_cache(maxsize=TEXTS_IN_HAND)
def _heard(tongue: DayWords, words: tuple[Token, ...]) -> Dated | None:
    accents = tongue.is_tonal and any(word.with_accents for word in words)
    rules = tongue.book.every(words, accents)
    if not rules:
        return None
    ideas = {idea for idea, _ in rules}
    # What has happened is told by an accent in French and Portuguese ("sème", "semé").
    strict = {idea for idea, _ in tongue.book.every(words, True)}
    return Dated(
        works=frozenset(WORKS) & ideas,
        told=Idea.TOLD in strict,
        coming=Idea.COMING in ideas,
        moves=Idea.MOVE in ideas,
        other=Idea.OTHER in ideas,
        now=Idea.NOW in ideas,
        beasts=Idea.BEASTS in ideas,
        elsewhere=Idea.ELSEWHERE in ideas,
        hearsay=Idea.HEARSAY in ideas,
        ago=Idea.AGO in ideas and not ideas & {Idea.AGAIN, Idea.NOW},
        strange=tuple(w for w in words if not any(rule.covers(w) for _, rule in rules)),
    )


def day_words(language: str, is_tonal: bool, said: Mapping[str, str]) -> DayWords:
    """A language from its file.

    Raises:
        ValueError: a row that is not known, is missing or cannot be read, with its name.
    """
    if set(said) != set(Idea):
        raise ValueError(f"expected the rows {', '.join(Idea)}, got {', '.join(said)}")
    rules = [(Idea(name), _rule(name, way)) for name, way in said.items()]
    return DayWords(language, is_tonal, bound(rules))


def _rule(name: str, written: str) -> Rule:
    try:
        return read_rule(written)
    except ValueError as fault:
        raise ValueError(f"{name}: {fault}") from fault
