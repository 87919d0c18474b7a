"""Rounding to what a person can measure: the only place where quantities lose digits.

Directions are chosen so that an error is on the safe side: seed, bed, sheet and spray water up;
urea down, so that the spray is never stronger than meant; what is only told, to the nearest.
What agrees with what is in `told`.
"""

import math
from collections.abc import Callable
from enum import StrEnum
from typing import NamedTuple


class Measure(StrEnum):
    """What is measured, and so how finely."""

    SEED_KG = "seed_kg"  # a kitchen scale below 1 kg, a hand scale above
    SPROUTED_KG = "sprouted_kg"  # the same seed once sprouted
    SEED_G = "seed_g"  # the share of one mat, on a kitchen scale
    AREA_M2 = "area_m2"  # bed and sheet, paced or taped
    WATER_L = "water_l"  # told in pails
    SPRAY_L = "spray_l"  # water for the urea, in a marked can
    UREA_G = "urea_g"  # a kitchen scale or a marked spoon
    MIX_L = "mix_l"  # a tin or a bowl
    MIX_M3 = "mix_m3"  # a heap
    WEIGHT_KG = "weight_kg"  # what will be lifted
    COUNT = "count"  # hills and seedlings
    PAILS = "pails"  # half pails can be told by eye


# Far below anything a pail or a frame can tell, far above the noise of float arithmetic.
_NOISE = 1e-9


def whole_up(count: float) -> int:
    """The next whole number, not misled by float noise (100.00000000000001 is 100)."""
    return math.ceil(count * (1 - _NOISE))


def whole_down(count: float) -> int:
    """The last whole number, not misled by float noise (99.99999999999999 is 100)."""
    return math.floor(count * (1 + _NOISE))


def nearest(count: float) -> int:
    """The nearest whole number, halves up."""
    return math.floor(count + 0.5)


class _Rule(NamedTuple):
    """Which way, and the step from each size on, smallest first."""

    way: Callable[[float], int]
    steps: tuple[tuple[float, float], ...]


# (from this size, in steps of): up or down a step is at most a tenth of the value, to nearest
# a fifth, so that no told amount is further than a tenth from the computed one.
_RULES = {
    Measure.SEED_KG: _Rule(
        whole_up,
        (
            (0, 0.0001),
            (0.01, 0.0005),
            (0.02, 0.001),
            (0.1, 0.005),
            (0.2, 0.01),
            (1, 0.05),
            (1.5, 0.1),
            (10, 0.5),
            (50, 1),
        ),
    ),
    Measure.SPROUTED_KG: _Rule(
        nearest,
        (
            (0, 0.0001),
            (0.01, 0.0005),
            (0.02, 0.001),
            (0.1, 0.005),
            (0.2, 0.01),
            (1, 0.1),
            (20, 1),
        ),
    ),
    Measure.SEED_G: _Rule(nearest, ((0, 0.1), (5, 0.5), (10, 1), (100, 5), (200, 10))),
    Measure.AREA_M2: _Rule(
        whole_up, ((0, 0.001), (0.1, 0.01), (1, 0.1), (5, 0.5), (20, 1), (200, 5))
    ),
    Measure.WATER_L: _Rule(
        nearest,
        ((0, 0.01), (0.5, 0.05), (1, 0.1), (5, 0.5), (10, 1), (50, 5), (200, 10), (1000, 50)),
    ),
    Measure.SPRAY_L: _Rule(
        whole_up, ((0, 0.01), (0.5, 0.05), (1, 0.1), (5, 0.5), (10, 1), (100, 5))
    ),
    Measure.UREA_G: _Rule(
        whole_down, ((0, 0.01), (1, 0.1), (5, 0.5), (20, 1), (50, 5), (200, 10), (1000, 50))
    ),
    Measure.MIX_L: _Rule(whole_up, ((0, 0.01), (0.5, 0.05), (1, 0.1), (5, 0.5), (10, 1))),
    Measure.MIX_M3: _Rule(nearest, ((0, 0.001), (0.1, 0.01), (1, 0.1), (20, 1))),
    Measure.WEIGHT_KG: _Rule(nearest, ((0, 0.1), (5, 0.5), (10, 1), (50, 5))),
    Measure.COUNT: _Rule(nearest, ((0, 1), (100, 10), (1000, 100), (10_000, 1000))),
    Measure.PAILS: _Rule(nearest, ((0, 0.5), (20, 1))),
}


def measured(value: float, measure: Measure) -> float:
    """A quantity as a person would measure it, never down to nothing."""
    rule = _RULES[measure]
    step = next(step for start, step in reversed(rule.steps) if value >= start)
    # Ten digits: enough for any amount, too few to show float noise.
    return round(max(rule.way(value / step), 1) * step, 10)
