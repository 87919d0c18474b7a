"""Open leaves: how many to expect, and what a count says about transplanting.

Leaves appear one for each phyllochron of warmth above a base temperature (CERES-Rice
coefficients), no faster above the cap. The first sheath without a blade is not counted.
"""

import math
from enum import StrEnum
from typing import NamedTuple

from assistant.agronomy import constants as c
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.practices import MAT, Practice


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

    @property
    def sure(self) -> "Sureness":
        """How far the day can be relied on, in a word."""
        spread = self.latest - self.earliest
        return next(word for word, most in _SURE_WITHIN_D if spread <= most)


class Sureness(StrEnum):
    """How sure a day is that was told ahead."""

    NEAR = "near"  # within three days
    ROUGH = "rough"  # within a week
    VAGUE = "vague"  # count again before the day is chosen


_SURE_WITHIN_D = ((Sureness.NEAR, 3), (Sureness.ROUGH, 7), (Sureness.VAGUE, math.inf))


def leaf_advice(open_leaves: float, day: int, practice: Practice = MAT) -> LeafAdvice:
    """What to do with seedlings of so many open leaves on a day from sowing."""
    window = practice.window
    over = day > window.last.value
    if open_leaves < window.leaves_first.value:
        return LeafAdvice.SLOW if over else LeafAdvice.WAIT
    if over or open_leaves > window.leaves_last.value:
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


def most_leaves_on(day: float) -> float:
    """The most open leaves that a seedling can have on a day from sowing: the fastest published
    rate at the warmth above which none grows faster, and one that is only half out."""
    fastest = (c.LEAF_CAP_C.value - c.LEAF_BASE_C.value) / (c.PHYLLOCHRON_C_D.low or 1)
    return max(day, 0) * fastest + 1


def days_per_leaf(mean_c: float, phyllochron: float = c.PHYLLOCHRON_C_D.value) -> float:
    """Days between one leaf and the next, at a mean temperature [C]."""
    return phyllochron / warmth_c_d(mean_c)
