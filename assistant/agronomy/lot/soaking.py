"""How long to soak and sprout seed: a day each in warm water, longer for cool or slow."""

from typing import NamedTuple

from assistant.agronomy import constants as c
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.rounding import whole_up

HOURS = 24
COLDEST_WATER_C = (
    c.SOAK_HARMFUL_C.value + 1
)  # colder water is not soaked in: indoors it is warmer
_LONGER = 2


class Sprouting(NamedTuple):
    """Whole days in water, and then moist and covered."""

    soak_d: int
    incubate_d: int


def sprouting(water_c: float, *, slow: bool = False) -> Sprouting:
    """Days to soak and to keep moist at a water temperature [C], longer for a slow variety.

    Warm: a day each; a slow variety two days each (48 h is published for both). Cool: soaking
    by summed warmth, then two days moist.

    Raises:
        AgronomyError: water so cold that it harms the seed.
    """
    soak_d = whole_up(soak_days(water_c, slow=slow))
    longer = slow or water_c < c.SOAK_COOL_BELOW_C.value
    incubate_h = c.INCUBATE_H.value * (_LONGER if longer else 1)
    return Sprouting(soak_d, whole_up(incubate_h / HOURS))


class Seed(NamedTuple):
    """What makes seed sprout later than usual.

    `slow`: the variety; `cool`: the farmer's water, of no known warmth; `water_c`: its warmth
    by a figure [C], taken from the mean of the air.
    """

    slow: bool = False
    cool: bool = False
    water_c: float | None = None

    @property
    def sprouting(self) -> Sprouting | None:
        """The days that this asks for; None where those of the practice do.

        Without a figure cool water asks for what a slow variety does, two days each; both
        together for a third day moist, as in the cool season of Bangladesh (60-72 h).
        """
        warm = c.SOAK_COOL_BELOW_C.value
        if self.water_c is not None and self.water_c < warm:
            return sprouting(self.water_c, slow=self.slow)
        if not (self.slow or self.cool):
            return None
        days = sprouting(warm, slow=True)
        both = self.slow and self.cool
        longest = whole_up((c.INCUBATE_H.high or c.INCUBATE_H.value) / HOURS)
        return Sprouting(days.soak_d, longest) if both else days


def is_cool(mean_c: float) -> bool:
    """Whether seed needs longer in water of that warmth [C]."""
    return mean_c < c.SOAK_COOL_BELOW_C.value


def soak_days(water_c: float, *, slow: bool = False) -> float:
    """Days of soaking at a water temperature [C], for a slow variety longer.

    Summed warmth holds only for cool water: at 30 C it would ask 3.3 days, where practice is 1.

    Raises:
        AgronomyError: water so cold that it harms the seed.
    """
    if water_c <= c.SOAK_HARMFUL_C.value:
        raise AgronomyError(
            f"water_c: expected above {c.SOAK_HARMFUL_C.value:g} C, got {water_c!r}"
        )
    hours, warmth = c.SOAK_H, c.SOAK_WARMTH_C_D
    if water_c >= c.SOAK_COOL_BELOW_C.value:
        return ((hours.high if slow else None) or hours.value) / HOURS
    return ((warmth.high if slow else None) or warmth.value) / water_c
