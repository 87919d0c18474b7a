"""Open leaves: how many to expect, and what a count says about transplanting.

Leaves appear one for each phyllochron of warmth above a base temperature (CERES-Rice
coefficients), no faster above the cap. The first sheath without a blade is not counted.
"""

import math
from enum import StrEnum
from typing import NamedTuple

from assistant.agronomy import constants as c
from assistant.agronomy.errors import AgronomyError


class LeafAdvice(StrEnum):
    """What a count of open leaves means on a given day."""

    WAIT = "wait"  # not three leaves yet
    READY = "ready"  # three or four, in time
    SOON = "soon"  # three or more, and the window is over or the fourth is passed
    SLOW = "slow"  # still not three when the window is over: ask why


class LeafForecast(NamedTuple):
    """Days from sowing: the likely one, and the span of published leaf rates."""

    day: int
    earliest: int
    latest: int


def leaf_advice(open_leaves: float, day: int) -> LeafAdvice:
    """What to do with seedlings of so many open leaves on a day from sowing."""
    over = day > c.TRANSPLANT_LAST_DAY.value
    if open_leaves < c.LEAVES_FIRST.value:
        return LeafAdvice.SLOW if over else LeafAdvice.WAIT
    if over or open_leaves > c.LEAVES_LAST.value:
        return LeafAdvice.SOON
    return LeafAdvice.READY


def warmth_c_d(mean_c: float) -> float:
    """Warmth that one day of a mean temperature [C] counts for [degree-days C].

    Raises:
        AgronomyError: no leaf grows at that temperature.
    """
    warmth = min(mean_c, c.LEAF_CAP_C.value) - c.LEAF_BASE_C.value
    if warmth <= 0:
        raise AgronomyError(f"mean_c: expected above {c.LEAF_BASE_C.value:g} C, got {mean_c!r}")
    return warmth


def leaves_on(day: float, mean_c: float, phyllochron: float = c.PHYLLOCHRON_C_D.value) -> float:
    """Leaves to expect on a day from sowing, at a mean temperature [C]."""
    return day * warmth_c_d(mean_c) / phyllochron


def days_per_leaf(mean_c: float, phyllochron: float = c.PHYLLOCHRON_C_D.value) -> float:
    """Days between one leaf and the next, at a mean temperature [C]."""
    return phyllochron / warmth_c_d(mean_c)


def forecast_leaf(target: float, open_leaves: float, day: int, mean_c: float) -> LeafForecast:
    """The day of the `target`-th leaf, from a count on a day and the mean temperature [C]."""
    more = max(target - open_leaves, 0.0)
    low, likely, high = c.PHYLLOCHRON_C_D.low, c.PHYLLOCHRON_C_D.value, c.PHYLLOCHRON_C_D.high
    days = (
        math.ceil(more * days_per_leaf(mean_c, rate or likely)) for rate in (likely, low, high)
    )
    return LeafForecast(*(day + ahead for ahead in days))
