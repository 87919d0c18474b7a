"""What share of germinated seeds becomes seedlings planted out, learned season by season.

A belief is a Beta distribution. It begins at the practice's usual share with the spread that
field reports show (`ESTABLISHMENT_SPREAD`). A season moves it by what was seen, counted as so
many mats and never as more than `SEASON_WEIGHT_MATS`: small beds and single seasons stay near
what is usual, and a farmer's own figure grows out of several.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import reduce
from typing import NamedTuple

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.lot.germination import Range
from assistant.agronomy.season.beta import beta_point

_LIKELY = (0.025, 0.975)  # 19 times in 20


class SeasonSeen(NamedTuple):
    """What one season showed.

    `share`: seedlings planted out per germinated seed [fraction 0-1]; `mats`: the mats it was
    seen on (on a bed without mats, its area over `MAT_SIZE_M2`).
    """

    share: float
    mats: float


@dataclass(frozen=True)
class Establishment:
    """What is believed of one farmer, or of a village: a Beta distribution.

    Raises:
        AgronomyError: a side that is not above nothing.
    """

    stood: float
    lost: float

    def __post_init__(self) -> None:
        if not (self.stood > 0 and self.lost > 0):
            raise AgronomyError(f"expected both above 0, got {self}; begin with `believed`")

    @property
    def mean(self) -> float:
        """The share to plan with [fraction 0-1]."""
        return self.stood / (self.stood + self.lost)

    @property
    def weight(self) -> float:
        """How much it stands on, in mats."""
        return self.stood + self.lost

    @property
    def likely(self) -> Range:
        """Where the true share lies, 19 times in 20."""
        low, high = (beta_point(end, self.stood, self.lost) for end in _LIKELY)
        return Range(low, high)

    def after(self, seen: SeasonSeen) -> "Establishment":
        """The belief after one more season.

        Raises:
            AgronomyError: no mats, or a share that is no share.
        """
        if not (0 <= seen.share <= 1 and seen.mats > 0):
            raise AgronomyError(f"expected a share of 0 to 1 on some mats, got {seen}")
        counted = min(seen.mats, w.SEASON_WEIGHT_MATS.value)
        return Establishment(
            self.stood + counted * seen.share, self.lost + counted * (1 - seen.share)
        )


def believed(usual: float = c.ESTABLISHMENT.value) -> Establishment:
    """What is believed before any season: a usual share, spread as field reports are.

    Raises:
        AgronomyError: a usual share so near 0 or 1 that such a spread cannot be.
    """
    weight = usual * (1 - usual) / w.ESTABLISHMENT_SPREAD.value**2 - 1
    return Establishment(usual * weight, (1 - usual) * weight)


def learned(
    seasons: Iterable[SeasonSeen], usual: float = c.ESTABLISHMENT.value
) -> Establishment:
    """The belief after all seasons of a farmer, or of a village; their order is no matter.

    A village is learned from the seasons of all its farmers in the same way: each counts its
    mats, so that one large bed does not speak for everybody.
    """
    return reduce(Establishment.after, seasons, believed(usual))
