"""What a leaf count says beyond today: the days of the next leaves, or the cost of waiting."""

from datetime import date, timedelta

from assistant.agronomy.growth.leaf_pace import forecast_by_pace, forecast_by_warmth
from assistant.agronomy.growth.leaves import LeafForecast
from assistant.agronomy.growth.overdue import loss_when_late
from assistant.agronomy.growth.warmth import Warmth, is_mean_c
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.rounding import nearest, whole_up
from assistant.wording import messages_care as care
from assistant.wording.day import hill_now
from assistant.wording.message import Say


def outlook(
    nursery: Nursery, leaves: float, today: date, warmth: Warmth | None = None
) -> tuple[Say, ...]:
    """When the last leaf of the window opens, where it is early; what waiting costs, where it
    is late."""
    day, window = nursery.day(today), nursery.paced.window
    if day > window.last.value and leaves >= window.leaves_first.value:
        return (cost_of_waiting(nursery, today),)
    if day <= 0 or leaves >= window.leaves_first.value:
        return ()
    target = whole_up(window.leaves_last.value)
    month = None if warmth else _of_the_month(nursery, today)
    seen = _forecast(target, leaves, day, warmth or month)
    likely, early, late = (nursery.sow_date + timedelta(days=d) for d in seen)
    if month is not None:
        told = care.NEXT_LEAF_MONTH(
            n=target, date=likely, early=early, late=late, degrees=month.mean_c
        )
        return (told,)
    if warmth is None:
        return (care.NEXT_LEAF(n=target, date=likely, early=early, late=late),)
    told = care.NEXT_LEAF_AT(
        n=target, date=likely, early=early, late=late, degrees=warmth.mean_c, day=warmth.day
    )
    return (told,)


def cost_of_waiting(nursery: Nursery, today: date) -> Say:
    """What old seedlings ask for, and what trials lost by waiting."""
    n = hill_now(nursery, today)
    lost = loss_when_late(nursery.day(today), nursery.paced).high
    percent = max(nearest(lost * 100), 1)
    return care.LATE_LOSS(n=n, share=field_share(nursery, n), percent=percent)


def field_share(nursery: Nursery, hill: int) -> int:
    """What the seedlings of a bed plant of its field, with so many a hill [percent]."""
    raised = nursery.hill_seedlings or nursery.inputs.seedlings_per_hill
    seedlings = raised * (1 + nursery.inputs.gap_filling) * nursery.standing
    return min(nearest(100 * seedlings / hill), 100)


def _of_the_month(nursery: Nursery, today: date) -> Warmth | None:
    """The mean of the month where the office entered it, and leaves grow at it."""
    mean_c = nursery.clock.mean_c(today)
    return Warmth(today, mean_c) if mean_c is not None and is_mean_c(mean_c) else None


def _forecast(target: float, leaves: float, day: int, warmth: Warmth | None) -> LeafForecast:
    if warmth is None:
        return forecast_by_pace(target, leaves, day)
    return forecast_by_warmth(target, leaves, day, warmth.mean_c)
