"""How many shoots stand, what that is worth, and what a filling or a new sowing needs.

Counted in a square of sticks and held against the seeds that germinate: 77 in a square where 50
are to be planted, since a third of them is lost, some before they come up and some in lifting
and parting. Where four in five stand the field can be planted; from half of that on one
seedling a hill still plants it (1 to 2 a hill is published), so there filling ends and sowing
again begins.
"""

import math
from dataclasses import dataclass
from enum import StrEnum

from assistant.agronomy import constants_work as w
from assistant.agronomy.lot.germination import Z_95, Range
from assistant.agronomy.quantities import Quantities
from assistant.agronomy.rounding import whole_down, whole_up
from assistant.agronomy.seed import CM2_PER_M2


class StandAdvice(StrEnum):
    """What a count of shoots means on a given day."""

    ENOUGH = "enough"
    WAIT = "wait"  # too few, but more may come
    FILL = "fill"  # half or more: add mats, or plant one a hill
    AGAIN = "again"  # less than half, and no more will come


@dataclass(frozen=True)
class Filling:
    """What makes up for the shoots that are missing: dry seed [kg] on so many more mats.

    `bed_m2` is the bed for it, mats or not.
    """

    seed_kg: float
    mats: int
    bed_m2: float = 0.0


def needed_shoots(quantities: Quantities) -> float:
    """Shoots in one counting square where all that germinates comes up [shoots]."""
    planted = quantities.seedlings / (quantities.nursery_area_m2 * CM2_PER_M2)
    return planted / quantities.establishment * w.SQUARE_CM.value**2


def stand_share(shoots: float, quantities: Quantities) -> float:
    """The part of the shoots there should be that stands, from a mean count [fraction]."""
    return shoots / needed_shoots(quantities)


def planted_share(shoots: float, quantities: Quantities) -> float:
    """The part of the field that so many shoots plant at the usual number a hill [fraction]."""
    return min(stand_share(shoots, quantities) / w.EMERGENCE_ENOUGH.value, 1.0)


def likely_share(shoots: int, squares: int, quantities: Quantities) -> Range:
    """Where the true part lies, 19 times in 20, from all shoots in so many squares.

    Shoots fall into a square by chance (Poisson, score interval): three squares tell more than
    one. What differs from mat to mat is not in it.
    """
    half, z2 = Z_95 * math.sqrt(shoots + Z_95**2 / 4), Z_95**2
    ends = (shoots + z2 / 2 - half, shoots + z2 / 2 + half)
    low, high = (stand_share(max(end, 0.0) / squares, quantities) for end in ends)
    return Range(low, high)


def is_sure(shoots: int, squares: int, quantities: Quantities) -> bool:
    """Whether the whole range of a count asks for the same; if not, count more squares."""
    likely = likely_share(shoots, squares, quantities)
    marks = (w.EMERGENCE_FILL.value, w.EMERGENCE_ENOUGH.value)
    return all((likely.low >= mark) == (likely.high >= mark) for mark in marks)


def stand_advice(shoots: float, quantities: Quantities, day: int) -> StandAdvice:
    """What to make of a mean count of shoots on a day from sowing."""
    share = stand_share(shoots, quantities)
    if share >= w.EMERGENCE_ENOUGH.value:
        return StandAdvice.ENOUGH
    if day < w.EMERGENCE_WAIT_D.value:
        return StandAdvice.WAIT
    return StandAdvice.FILL if share >= w.EMERGENCE_FILL.value else StandAdvice.AGAIN


def hill_of_thin_stand(usual: int, share: float) -> int:
    """Seedlings a hill by which a thin stand plants the whole field, from the part of it that
    the stand plants: at least one."""
    return max(whole_down(usual * min(share, 1.0)), 1)


def filling(shoots: float, quantities: Quantities) -> Filling:
    """The seed and the mats for what is missing, at the same density."""
    missing = 1 - planted_share(shoots, quantities)
    mats = max(whole_up(quantities.mats * missing), 1) if quantities.mats else 0
    bed_m2 = quantities.nursery_area_m2 * missing
    return Filling(quantities.seed_kg * missing, mats, bed_m2)
