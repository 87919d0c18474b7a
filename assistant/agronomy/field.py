"""What a plan is computed from: the field, the seed lot and how it will be planted."""

import math
from dataclasses import dataclass
from typing import NamedTuple

from assistant.agronomy import constants as c
from assistant.agronomy.errors import AgronomyError


class InputRange(NamedTuple):
    """The range that the arithmetic accepts, both ends included; readers ask again outside."""

    low: float
    high: float


# Wider than anything published: what a person may mean is for the readers to judge.
LIMITS = {
    "field_area_m2": InputRange(1.0, 10_000_000.0),
    "germination": InputRange(0.01, 1.0),
    "spacing_row_cm": InputRange(8.0, 60.0),
    "spacing_hill_cm": InputRange(8.0, 60.0),
    "seedlings_per_hill": InputRange(1, 6),
    "grain_weight_g": InputRange(10.0, 40.0),
    "pail_litres": InputRange(1.0, 50.0),
    "establishment": InputRange(0.05, 1.0),
}


# Beside the limits above: none is a good value here, and half as much again is a slip.
MOST_GAP_FILLING = 0.5


@dataclass(frozen=True)
class FieldInputs:
    """One field and the seed for it.

    Args:
        field_area_m2: area to be planted [m2]
        germination: seeds that germinate [fraction 0-1]
        spacing_row_cm, spacing_hill_cm: between rows, and between hills in a row [cm]
        seedlings_per_hill: [seedlings]
        grain_weight_g: weight of 1000 grains [g]
        pail_litres: the person's own pail [L]
        establishment: seedlings planted out per germinated seed [fraction 0-1]
        gap_filling: seedlings raised over and above, for gaps [fraction of those planted]

    Raises:
        AgronomyError: a value outside its limits, or not a finite number.
    """

    field_area_m2: float
    germination: float
    spacing_row_cm: float = c.SPACING_CM.value
    spacing_hill_cm: float = c.SPACING_CM.value
    seedlings_per_hill: int = int(c.SEEDLINGS_PER_HILL.value)
    grain_weight_g: float = c.GRAIN_WEIGHT_G.value
    pail_litres: float = c.PAIL_LITRES.value
    establishment: float = c.ESTABLISHMENT.value
    gap_filling: float = 0.0

    def __post_init__(self) -> None:
        for name, limits in LIMITS.items():
            value = getattr(self, name)
            if not (math.isfinite(value) and limits.low <= value <= limits.high):
                raise AgronomyError(
                    f"{name}: expected {limits.low:g} to {limits.high:g}, got {value!r}; "
                    "ask the person again before computing"
                )
        if not 0 <= self.gap_filling <= MOST_GAP_FILLING:
            raise AgronomyError(
                f"gap_filling: expected 0 to {MOST_GAP_FILLING:g}, got {self.gap_filling!r}"
            )
        if self.seedlings_per_hill != int(self.seedlings_per_hill):
            raise AgronomyError(
                f"seedlings_per_hill: expected a whole number, got {self.seedlings_per_hill!r}"
            )
