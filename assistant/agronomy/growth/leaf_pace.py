"""When the next leaves come, from a count alone: no thermometer needed.

A bed with three open leaves on day 12 is somewhere between its third leaf just open and its
fourth about to open, so it made 3 to 4 leaves in 12 days; later leaves are taken to come at the
same pace. That holds as long as the weather stays as it was: a fixed pace was wrong by 1.8
leaves over a whole season in pots and field (Agronomy Journal 100:490, 2008), by less over the
few leaves of a nursery.
"""

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.growth.leaves import LeafForecast
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
