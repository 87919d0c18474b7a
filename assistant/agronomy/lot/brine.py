"""Salt water in which sound seed sinks: how much salt gives which density.

Caution for every text: rinse the seed well at once; treated seed that floats is no feed. An egg
that just floats shows about 1.06, the low end (published recipes run from 1.05 to 1.13).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from assistant.agronomy import constants_work as w
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.rounding import whole_up
from assistant.agronomy.sourced.tables import BRINE_DENSITY

KG_PER_M3 = 1_000.0
WATER_KG_PER_L = 1.0
G_PER_KG = 1_000.0


@dataclass(frozen=True)
class BrineRecipe:
    """Salt water in the person's own pail, and how often the seed goes through it.

    Stir, take off what floats, take the sound seed out after `minutes`, and rinse it `rinses`
    times in clean water at once: salt that stays on kills the sprout. Throw the salt water
    where nothing grows and no well is near.
    """

    water_l: float
    salt_g: float
    seed_kg_at_once: float
    times: int
    minutes: float
    rinses: int


def brine_recipe(
    seed_kg: float, pail_litres: float, density: float = w.BRINE_DENSITY_KG_PER_L.value
) -> BrineRecipe:
    """The recipe for so much dry seed [kg] and a pail [L], to a density [kg/L].

    Raises:
        AgronomyError: a density outside the table.
    """
    water_l = pail_litres * w.BRINE_FILL.value
    at_once = min(water_l * w.BRINE_SEED_KG_PER_L.value, seed_kg)
    return BrineRecipe(
        water_l=water_l,
        salt_g=salt_g_per_l(density) * water_l,
        seed_kg_at_once=at_once,
        times=whole_up(seed_kg / at_once),
        minutes=w.BRINE_MINUTES.value,
        rinses=int(w.BRINE_RINSES.value),
    )


def salt_g_per_l(gravity: float) -> float:
    """Salt [g] for each litre of water so that the brine has a density [kg/L].

    Raises:
        AgronomyError: a density outside the table.
    """
    turned = tuple((density, percent) for percent, density in BRINE_DENSITY.numbers())
    share = _between(turned, gravity * KG_PER_M3) / 100
    return share / (1 - share) * WATER_KG_PER_L * G_PER_KG


def _between(rows: Sequence[Sequence[float]], at: float) -> float:
    """The value at a place of a rising table, straight between its rows."""
    for (low, value), (high, next_value) in pairwise(rows):
        if low <= at <= high:
            return value + (next_value - value) * (at - low) / (high - low)
    raise AgronomyError(f"expected {rows[0][0]:g} to {rows[-1][0]:g}, got {at:g}")
