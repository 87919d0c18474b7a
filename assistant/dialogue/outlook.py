"""What a leaf count says beyond today: the day of the fourth leaf, or the cost of waiting."""

from datetime import date, timedelta

from assistant.agronomy.constants import (
    DELAY_LOSS,
    LEAVES_FIRST,
    LEAVES_LAST,
    TRANSPLANT_LAST_DAY,
)
from assistant.agronomy.growth.leaf_pace import forecast_by_pace
from assistant.agronomy.growth.overdue import seedlings_when_late
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.rounding import nearest
from assistant.wording import messages_care as c
from assistant.wording.message import Say


def outlook(nursery: Nursery, leaves: float, today: date) -> tuple[Say, ...]:
    """When the fourth leaf opens, where it is early; what waiting costs, where it is late."""
    day = nursery.day(today)
    if day > TRANSPLANT_LAST_DAY.value and leaves >= LEAVES_FIRST.value:
        n = seedlings_when_late(nursery.inputs.seedlings_per_hill, day)
        return (c.LATE_LOSS(n=n, percent=nearest(DELAY_LOSS.value * 100)),)
    if day <= 0 or leaves >= LEAVES_FIRST.value:
        return ()
    seen = forecast_by_pace(LEAVES_LAST.value, leaves, day)
    likely, early, late = (nursery.sow_date + timedelta(days=d) for d in seen)
    return (c.FOURTH_LEAF(date=likely, early=early, late=late),)
