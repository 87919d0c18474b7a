"""Misspelt words: the nearest known spelling, and only where nothing else is as near.

rapidfuzz measures the distance (optimal string alignment: a swapped pair counts once). Its
own "best match" is not enough for us: "best" is near "pest" and "are" near "acre", so short
words are let alone, the first letter must stand, and a rival as near is told.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeVar

from rapidfuzz.distance import OSA

SHORTEST = 4  # letters; a shorter word is too near to too many
SHORTEST_RIVAL = 3  # "senu" may be a slip in "sen", Monday, as well as in "setu", Saturday
LONGEST = 24  # letters; longer strings are no words of ours
# Letters of the word from which so many slips are allowed.
_SLIPS = ((10, 3), (7, 2), (SHORTEST, 1))

V = TypeVar("V")


def slips_allowed(word: str) -> int:
    """How many slips a word of this length may hold."""
    return next((slips for letters, slips in _SLIPS if len(word) >= letters), 0)


@dataclass(frozen=True)
class Affixes:
    """Beginnings and ends of words that are grammar ("nime-", "-ndo"), the longest first. Two
    words that share one are compared by what is left of them."""

    prefixes: tuple[str, ...] = ()
    suffixes: tuple[str, ...] = ()

    def stems(self, word: str, spelling: str) -> tuple[str, str]:
        """Both words without the beginning and the end of grammar that they share."""
        start = next((p for p in self.prefixes if _share(p, word, spelling)), "")
        word, spelling = word[len(start) :], spelling[len(start) :]
        end = next((s for s in self.suffixes if _share_end(s, word, spelling)), "")
        return word[: len(word) - len(end)], spelling[: len(spelling) - len(end)]


def _share(start: str, word: str, spelling: str) -> bool:
    return word.startswith(start) and spelling.startswith(start)


def _share_end(end: str, word: str, spelling: str) -> bool:
    return word.endswith(end) and spelling.endswith(end)


NO_AFFIXES = Affixes()


def nearest(
    word: str,
    spellings: Mapping[str, V],
    wary: bool = False,
    affixes: Affixes = NO_AFFIXES,
) -> tuple[V, tuple[V, ...]] | None:
    """The meaning of the nearest spelling, and the other meanings that are too near to it.

    `affixes`: beginnings and ends that count as no likeness; a word that is little else is
    taken for no other.

    Another meaning is too near when it is as near, whatever its first letter, or one slip
    farther from a word with two slips or more (`wary`: from any word). None where no spelling
    is near enough.
    """
    allowed = slips_allowed(word)
    if not allowed or len(word) > LONGEST:
        return None
    found: dict[V, int] = {}
    cutoff, letters, swapped = allowed + 1, len(word), word[1::-1]
    for spelling, meaning in spellings.items():
        # Of the hundreds of spellings these two lines leave a few to be measured.
        if len(spelling) < SHORTEST or not -cutoff <= letters - len(spelling) <= cutoff:
            continue
        if spelling[0] != word[0] and spelling[:2] != swapped:
            continue
        distance = OSA.distance(word, spelling, score_cutoff=cutoff)
        if distance <= cutoff and _alike(word, spelling, distance, affixes):
            found[meaning] = min(distance, found.get(meaning, distance))
    if not found or min(found.values()) > allowed:
        return None
    best = min(found, key=lambda meaning: found[meaning])
    farthest = found[best] + (1 if wary or found[best] > 1 else 0)
    rivals = (
        meaning
        for spelling, meaning in spellings.items()
        if meaning != best
        and len(spelling) >= SHORTEST_RIVAL
        and OSA.distance(word, spelling, score_cutoff=farthest) <= farthest
    )
    return best, tuple(dict.fromkeys(rivals))


def _alike(word: str, spelling: str, distance: int, affixes: Affixes) -> bool:
    """Whether the slips between two words are few for what is not grammar in them."""
    stem, other = affixes.stems(word, spelling)
    if (stem, other) == (word, spelling):
        return True
    return bool(stem and other) and stem[0] == other[0] and distance <= slips_allowed(other)


def is_swap_or_gap(word: str, spelling: str) -> bool:
    """Whether two words differ by order or number of letters, not by another letter."""
    return len(word) != len(spelling) or sorted(word) == sorted(spelling)


def is_slip_of(word: str, spelling: str) -> bool:
    """Whether a word, even a short one, is likely another one with a slip in it."""
    allowed = 1 if max(len(word), len(spelling)) < 7 else 2
    short = min(len(word), len(spelling)) < 2 or len(word) > LONGEST
    return not short and 0 < OSA.distance(word, spelling, score_cutoff=allowed) <= allowed


def one_key_off(word: str, spelling: str) -> bool:
    """Whether two words of three letters or more differ by one slip, wherever it is."""
    return min(len(word), len(spelling)) >= 3 and OSA.distance(word, spelling) == 1
