"""The weight of 1000 grains by a count and a kitchen scale, and how near it comes."""

import math
from dataclasses import dataclass

from assistant.agronomy import constants_work as w
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.lot.germination import Range

THOUSAND = 1_000
_NEAR_ENOUGH = 0.05  # of the weight: no more than other doubts about the seed
_WHOLE_HUNDREDS = 100


@dataclass(frozen=True)
class GrainWeighing:
    """So many clean, full grains, weighed together.

    Args:
        grains: counted
        grams: what the scale showed [g]
        scale_step_g: the least that the scale shows [g]

    Raises:
        AgronomyError: no grains or no weight.
    """

    grains: int
    grams: float
    scale_step_g: float = w.SCALE_STEP_G.value

    def __post_init__(self) -> None:
        if self.grains < 1 or not (math.isfinite(self.grams) and self.grams > 0):
            raise AgronomyError(f"expected grains and their weight, got {self}; weigh again")

    @property
    def grain_weight_g(self) -> float:
        """Weight of 1000 grains [g]."""
        return self.grams / self.grains * THOUSAND

    @property
    def likely(self) -> Range:
        """Where it lies, since a scale rounds to its step [g per 1000 grains]."""
        half = self.scale_step_g / 2
        low, high = (max(self.grams + side, 0.0) for side in (-half, half))
        return Range(low / self.grains * THOUSAND, high / self.grains * THOUSAND)

    @property
    def is_near_enough(self) -> bool:
        """Whether the scale's step leaves a doubt of a twentieth at most; else count more."""
        return self.scale_step_g / 2 <= _NEAR_ENOUGH * self.grams


def grains_to_count(
    scale_step_g: float = w.SCALE_STEP_G.value, expected_g: float = 25.0
) -> int:
    """Grains, in whole hundreds, that a scale of such a step weighs near enough."""
    least_g = scale_step_g / 2 / _NEAR_ENOUGH
    return math.ceil(least_g / expected_g * THOUSAND / _WHOLE_HUNDREDS) * _WHOLE_HUNDREDS
