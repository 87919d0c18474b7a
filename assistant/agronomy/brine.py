"""Salt water in which sound seed sinks: how much salt gives which density.

Caution for every text: rinse the seed well at once; treated seed that floats is no feed. An egg
that just floats shows about 1.06, the low end (published recipes run from 1.05 to 1.13).
"""

from collections.abc import Sequence
from itertools import pairwise

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.tables import BRINE_DENSITY

KG_PER_M3 = 1_000.0
WATER_KG_PER_L = 1.0


def specific_gravity(salt_kg: float, water_l: float) -> float:
    """Density [kg/L] of salt in water at 20 C.

    Raises:
        AgronomyError: more salt than the table reaches.
    """
    percent = 100 * salt_kg / (salt_kg + water_l * WATER_KG_PER_L)
    return _between(BRINE_DENSITY.numbers(), percent) / KG_PER_M3


def salt_g_per_l(gravity: float) -> float:
    """Salt [g] for each litre of water so that the brine has a density [kg/L].

    Raises:
        AgronomyError: a density outside the table.
    """
    turned = tuple((density, percent) for percent, density in BRINE_DENSITY.numbers())
    share = _between(turned, gravity * KG_PER_M3) / 100
    return share / (1 - share) * WATER_KG_PER_L * 1_000


def _between(rows: Sequence[Sequence[float]], at: float) -> float:
    """The value at a place of a rising table, straight between its rows."""
    for (low, value), (high, next_value) in pairwise(rows):
        if low <= at <= high:
            return value + (next_value - value) * (at - low) / (high - low)
    raise AgronomyError(f"expected {rows[0][0]:g} to {rows[-1][0]:g}, got {at:g}")
