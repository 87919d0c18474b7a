"""How long to soak seed: a day in warm water, by summed warmth in cool water."""

from assistant.agronomy import constants as c
from assistant.agronomy.errors import AgronomyError

HOURS = 24


def soak_days(water_c: float) -> float:
    """Days of soaking at a water temperature [C].

    Summed warmth holds only for cool water: at 30 C it would ask 3.3 days, where practice is 1.

    Raises:
        AgronomyError: water so cold that it harms the seed.
    """
    if water_c <= c.SOAK_HARMFUL_C.value:
        raise AgronomyError(
            f"water_c: expected above {c.SOAK_HARMFUL_C.value:g} C, got {water_c!r}"
        )
    if water_c >= c.SOAK_COOL_BELOW_C.value:
        return c.SOAK_H.value / HOURS
    return c.SOAK_WARMTH_C_D.value / water_c
