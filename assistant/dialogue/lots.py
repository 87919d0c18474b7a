"""The lots behind a germination that was read: how many seeds were laid out, how many sprouted.

The reader of the language says what percentage a reply means. Its numbers are looked at here
again for the size of the test, and only a meaning that gives the same percentage is taken.
"""

import re
from collections.abc import Iterator, Sequence

from assistant.agronomy.lot.germination import LOT_SEEDS, GerminationTest

Lot = tuple[int, int]
"""Seeds sprouted, and seeds laid out."""

_NUMBER = re.compile(r"\d+")
_SAME_PERCENT = 0.011  # the reader rounds to two decimals
_MOST_SEEDS = 10_000


def lots_behind(text: str, percent: float) -> tuple[Lot, ...]:
    """The lots of a reply that was read as `percent`; one lot of 100 where it says no more."""
    for lots in _meanings([int(digits) for digits in _NUMBER.findall(text)]):
        test = whole_test(lots)
        if test and abs(test.germination * 100 - percent) <= _SAME_PERCENT:
            return lots
    return ((round(percent), LOT_SEEDS),)


def _meanings(numbers: Sequence[int]) -> Iterator[tuple[Lot, ...]]:
    """What a row of numbers may say: pairs of count and total either way, or lots of 100."""
    if len(numbers) > 1:
        firsts, seconds = numbers[::2], numbers[1::2]
        if len(firsts) == len(seconds):
            yield tuple(zip(firsts, seconds, strict=True))
            yield tuple(zip(seconds, firsts, strict=True))
        if numbers[0] == len(numbers) - 1:  # "4 lots 81 79 85 80"
            yield tuple((count, LOT_SEEDS) for count in numbers[1:])
    yield tuple((count, LOT_SEEDS) for count in numbers)


def whole_test(lots: Sequence[Lot]) -> GerminationTest | None:
    """All lots together; None where the counts cannot be."""
    fair = all(0 <= sprouted <= seeds and 0 < seeds <= _MOST_SEEDS for sprouted, seeds in lots)
    if not lots or not fair:
        return None
    return GerminationTest(sum(lot[0] for lot in lots), sum(lot[1] for lot in lots))


def kept(lots: Sequence[Lot]) -> str:
    """Lots as a session keeps them: "81/100 79/100"."""
    return " ".join(f"{sprouted}/{seeds}" for sprouted, seeds in lots)


def unkept(words: str) -> tuple[Lot, ...]:
    """Lots that a session kept."""
    pairs = (lot.split("/") for lot in words.split())
    return tuple((int(sprouted), int(seeds)) for sprouted, seeds in pairs)
