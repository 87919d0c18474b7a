"""Misspelt words: the nearest known spelling, and only where nothing else is as near.

rapidfuzz measures the distance (optimal string alignment: a swapped pair counts once). Its
own "best match" is not enough for us: "best" is near "pest" and "whether" near "weather", so
short words are let alone, the first letter must stand, and a rival stops the match.
"""

from collections.abc import Mapping
from typing import TypeVar

from rapidfuzz.distance import OSA

SHORTEST = 4  # letters; a shorter word is too near to too many
_LONG, _VERY_LONG = 7, 10  # letters from which two, three slips are allowed
LONGEST = 24  # letters; longer strings are no words of ours

V = TypeVar("V")


def slips_allowed(word: str) -> int:
    """How many slips a word of this length may hold."""
    return (
        0
        if len(word) < SHORTEST
        else 1
        if len(word) < _LONG
        else 2
        if len(word) < _VERY_LONG
        else 3
    )


def nearest(word: str, spellings: Mapping[str, V]) -> tuple[V, tuple[V, ...]] | None:
    """The meaning of the nearest spelling, and the meanings that are no farther by more than one.

    None where no spelling is near enough.
    """
    allowed = slips_allowed(word)
    if not allowed or len(word) > LONGEST:
        return None
    found: dict[V, int] = {}
    for spelling, meaning in spellings.items():
        distance = _distance(word, spelling, allowed + 1)
        if distance <= allowed + 1:
            found[meaning] = min(distance, found.get(meaning, distance))
    best = min(found.values(), default=allowed + 1)
    if best > allowed:
        return None
    close = sorted((d, i) for i, d in enumerate(found.values()) if d <= best + 1)
    meanings = tuple(found)
    return meanings[close[0][1]], tuple(meanings[i] for _, i in close[1:])


def _distance(word: str, spelling: str, cutoff: int) -> int:
    """Slips from one to the other; too many where the first letter differs or it is short."""
    if len(spelling) < SHORTEST or abs(len(word) - len(spelling)) > cutoff:
        return cutoff + 1
    if word[0] != spelling[0] and word[:2] != spelling[1::-1]:
        return cutoff + 1
    return OSA.distance(word, spelling, score_cutoff=cutoff)
