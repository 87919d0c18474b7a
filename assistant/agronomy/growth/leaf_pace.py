"""When the next leaves come: from a count alone, or from a count and a mean temperature.

A bed with three open leaves on day 12 is somewhere between its third leaf just open and its
fourth about to open, so it made 3 to 4 leaves in 12 days; later leaves are taken to come at the
same pace. That holds as long as the weather stays as it was: a fixed pace was wrong by 1.8
leaves over a whole season in pots and field (Agronomy Journal 100:490, 2008), by less over the
few leaves of a nursery.
"""

from assistant.agronomy import constants as c
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.growth.leaves import LeafForecast, days_per_leaf
from assistant.agronomy.rounding import nearest, whole_down, whole_up

HALF = 0.5


def forecast_by_pace(target: float, open_leaves: float, day: int) -> LeafForecast:
    """The day of the `target`-th open leaf, from so many open leaves on a day from sowing.

    Raises:
        AgronomyError: no leaf yet, or a day that is not after sowing.
    """
    if open_leaves <= 0 or day <= 0:
        raise AgronomyError(
            f"expected a leaf and a day after sowing, got {open_leaves!r} leaves on day {day!r}"
        )
    if open_leaves >= target:
        return LeafForecast(day, day, day)
    likely, first, last = (
        day * target / age for age in (open_leaves + HALF, open_leaves + 1, open_leaves)
    )
    return LeafForecast(max(nearest(likely), day), max(whole_down(first), day), whole_up(last))


def forecast_by_warmth(
    target: float, open_leaves: float, day: int, mean_c: float
) -> LeafForecast:
    """The day of the `target`-th open leaf, from a count on a day and the mean [C] after it.

    Here the past pace does not matter, so that a count after a cold week does not foretell
    another one. The span holds what the count leaves open (a leaf just out, or the next about
    to come) and the published range of rates, 55 to 90 degree-days a leaf.

    Raises:
        AgronomyError: a day before sowing, or a mean at which no leaf grows.
    """
    if day < 0:
        raise AgronomyError(f"expected a day from sowing on, got {day!r}")
    if open_leaves >= target:
        return LeafForecast(day, day, day)
    rate = c.PHYLLOCHRON_C_D
    slow, fast = rate.high or rate.value, rate.low or rate.value
    likely, first, last = (
        max(target - age, 0.0) * days_per_leaf(mean_c, phyllochron)
        for age, phyllochron in (
            (open_leaves + HALF, rate.value),
            (open_leaves + 1, fast),
            (open_leaves, slow),
        )
    )
    return LeafForecast(day + nearest(likely), day + whole_down(first), day + whole_up(last))
