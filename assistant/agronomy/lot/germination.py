"""What a germination test says, how sure it is, and whether an official test holds together.

The interval is Wilson's, at 95 %: it stays honest for the small tests made at home.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from assistant.agronomy import constants as c
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.sourced import tables

# The 97.5 % point of the normal distribution: known, and by definition no matter of source.
Z_95 = 1.959963984540054
OFFICIAL_SEEDS = 400  # United States Federal Seed Act Regulations, 7 CFR 201.54
LOT_SEEDS, OFFICIAL_LOTS = 100, 4
ALL_PERCENT = 100


class Range(NamedTuple):
    """A range of fractions."""

    low: float
    high: float


@dataclass(frozen=True)
class GerminationTest:
    """Seeds laid out and seeds sprouted, over all lots.

    Raises:
        AgronomyError: no seeds, or more sprouted than laid out.
    """

    sprouted: int
    sown: int

    def __post_init__(self) -> None:
        if self.sown < 1 or not 0 <= self.sprouted <= self.sown:
            raise AgronomyError(f"expected 0 to {self.sown} sprouted of at least 1, got {self}")

    @property
    def germination(self) -> float:
        """The share that sprouted [fraction 0-1]."""
        return self.sprouted / self.sown

    @property
    def likely(self) -> Range:
        """Where the lot's true germination lies, 19 times in 20 (Wilson)."""
        share, n, z2 = self.germination, self.sown, Z_95**2
        middle = (share + z2 / (2 * n)) / (1 + z2 / n)
        spread = Z_95 / (1 + z2 / n) * math.sqrt(share * (1 - share) / n + z2 / (4 * n * n))
        return Range(max(middle - spread, 0.0), min(middle + spread, 1.0))

    @property
    def is_official_size(self) -> bool:
        """Whether it has the seeds of an official test; less is a home test."""
        return self.sown >= OFFICIAL_SEEDS


def tolerated_range(mean_percent: float) -> int:
    """The largest range between four lots of 100 at a mean [percentage points].

    Raises:
        AgronomyError: a mean outside 0 to 100.
    """
    if not 0 <= mean_percent <= ALL_PERCENT:
        raise AgronomyError(f"mean_percent: expected 0 to 100, got {mean_percent!r}")
    mean = math.floor(mean_percent + 0.5)
    mirrored = min(max(mean, ALL_PERCENT + 1 - mean), ALL_PERCENT - 1)
    rows = tables.REPLICATE_RANGE.numbers() + tables.REPLICATE_RANGE_LOW.numbers()
    return next(int(points) for low, high, points in rows if low <= mirrored <= high)


def lots_agree(counts: Sequence[int]) -> bool:
    """Whether four lots of 100 seeds agree as the published table asks; if not, test again.

    Raises:
        AgronomyError: not four counts of 0 to 100, the only case the table knows.
    """
    if len(counts) != OFFICIAL_LOTS or not all(0 <= count <= LOT_SEEDS for count in counts):
        raise AgronomyError(f"expected four counts of 0 to 100, got {list(counts)}")
    return max(counts) - min(counts) <= tolerated_range(sum(counts) / len(counts))


def mixed_germination(lots: Sequence[tuple[float, float]]) -> float:
    """Germination of lots mixed in one bed, from (seeds or kg of like grain, germination).

    Raises:
        AgronomyError: no seed at all.
    """
    total = sum(amount for amount, _ in lots)
    if total <= 0:
        raise AgronomyError(f"lots: expected some seed, got {list(lots)}")
    return sum(amount * germination for amount, germination in lots) / total


class Good(NamedTuple):
    """From what share on seed is called good [fraction], and the country whose least that is;
    no country where none is known for it."""

    share: float = c.GOOD_GERMINATION.value
    country: str | None = None


def good_seed(region: str | None) -> Good:
    """What a programme's region (ISO 3166) calls good seed; the usual mark where no figure of
    its country was found."""
    least = minimum_germination(region)
    return Good() if least is None else Good(least, (region or "")[:2].upper())


def minimum_germination(region: str | None) -> float | None:
    """The least germination [fraction] a country asks for, or None where none was found."""
    country = (region or "").partition("-")[0].upper()
    rows = tables.MINIMUM_GERMINATION.rows + tables.MINIMUM_GERMINATION_MEMORY.rows
    found = {str(where): float(least) for where, least in rows}
    return found[country] / ALL_PERCENT if country in found else None
