"""What a farmer tells of the bed without being asked, by the ideas in it: mats, leaves, eaten.

How a language puts an idea stands in `reports/<language>.toml`; what is made of several ideas
and a number stands in the dialogue. Nothing here is learned or weighed.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from assistant.hearing.asking import Tongue, rules_in
from assistant.reading.text.fold import read_tokens

MOST_WORDS = 24  # a longer text tells a story; a person should read it


class Idea(StrEnum):
    """What may be told of a bed; every language's file has each."""

    LEAF = "leaf"
    MAT = "mat"
    EATEN = "eaten"
    WASHED = "washed"
    DRIED = "dried"
    GONE = "gone"
    SPARE = "spare"
    HANDS = "hands"  # those who plant
    WATER = "water"  # that the field has none, or no pump
    RAIN = "rain"
    RAIN_OVER = "rainover"  # it has stopped
    FIELD = "field"  # that it is not ready, or by what it is made ready
    NEW_SEED = "newseed"
    NO_SEED = "noseed"  # thrown away, lost, or none
    SPROUT = "sprout"
    AGAIN = "again"
    SOW = "sowword"
    BARE = "bare"  # nothing comes up
    REST = "rest"
    HALF = "half"
    CHANGE = "change"  # this instead of that
    DRY = "dry"
    PLOT = "plot"  # the field itself
    BOTH = "both"  # two beds at once
    YIELD = "yield"  # what the field gave
    BED = "bed"  # the bed itself, of any kind
    ROOF = "roof"  # of a house: a place for a bed
    NOTHING = "nothing"  # is left
    DEATH = "death"  # of who did the work
    SEEDLING = "seedling"
    GIVEN = "given"  # what was left was given away
    LACKED = "lacked"  # the seedlings ran out, a corner is bare
    JUST = "just"  # neither more nor less than needed
    LATE = "late"  # the work is behind its days, whatever it is
    NEXT_LEAF = "nextleaf"  # the words of "and the fourth is just peeping"
    GRAIN = "grain"  # the seed
    COVER = "cover"  # what a bed is covered with
    OUTLET = "outlet"  # by what water leaves, and the water
    GAP = "gap"  # in the planted field
    UNDER_WAY = "underway"  # the work has begun and is not done
    SMALL = "small"  # that the seedlings are too young, which a count of leaves shows
    MOSTLY = "mostly"  # the words of "most of them got ...", "I counted"


OF_WORK = frozenset({Idea.GRAIN, Idea.COVER, Idea.OUTLET, Idea.GAP, Idea.UNDER_WAY})
"""What stands beside a deed, and says nothing of how a bed is."""


@dataclass(frozen=True, eq=False)
class Reports:
    """How every language tells of a bed."""

    tongues: Mapping[str, Tongue] = field(default_factory=dict)

    def ideas(
        self, text: str, languages: Iterable[str], of_work: bool = False
    ) -> frozenset[Idea]:
        """The ideas in a text, of the first of these languages in which it has any.

        Args:
            of_work: also what is only said beside a deed
        """
        words = tuple(each for each in read_tokens(text) if each.is_word or each.is_number)
        if not words or len(words) > MOST_WORDS:
            return frozenset()
        for code in languages:
            spoken = self.tongues.get(code)
            if spoken is None:
                continue
            found = frozenset(Idea(idea) for idea, _ in rules_in(spoken, words))
            found = found if of_work else found - OF_WORK
            if found:
                return found
        return frozenset()

    def without(self, text: str, languages: Iterable[str], idea: Idea) -> str | None:
        """A text without the words that put an idea, in the first of these languages in which
        any does; None where none does."""
        words = tuple(each for each in read_tokens(text) if each.is_word or each.is_number)
        if len(words) > MOST_WORDS:
            return None
        for spoken in filter(None, map(self.tongues.get, languages)):
            strict = spoken.is_tonal and bool(words) and words[0].with_accents
            places = spoken.book.places(str(idea), words, strict)
            if places:
                return " ".join(
                    each.marked or each.text
                    for at, each in enumerate(words)
                    if at not in places
                )
        return None
