"""The mean temperature of a village, as an officer enters it: it says how fast leaves come."""

from dataclasses import dataclass
from datetime import date, timedelta

from assistant.agronomy import constants as c
from assistant.agronomy.errors import AgronomyError


@dataclass(frozen=True)
class Warmth:
    """The mean [C] of day and night around a day.

    Raises:
        AgronomyError: a mean at which no leaf grows (see `is_mean_c`).
    """

    day: date
    mean_c: float

    def __post_init__(self) -> None:
        if not is_mean_c(self.mean_c):
            raise AgronomyError(
                f"mean_c: expected {c.LEAF_COLDEST_C.value:g} to {c.LEAF_HOTTEST_C.value:g} C, "
                f"got {self.mean_c!r}; ask the officer again"
            )


def is_mean_c(mean_c: float) -> bool:
    """Whether rice leaves grow at a mean temperature [C], so that it can be reckoned with."""
    return c.LEAF_COLDEST_C.value <= mean_c <= c.LEAF_HOTTEST_C.value


def told_since(today: date) -> date:
    """The first day whose mean still says something of the days to come."""
    return today - timedelta(days=int(c.WARMTH_HOLDS_D.value))
