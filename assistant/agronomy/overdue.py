"""Seedlings that grew too old: what the delay costs, and how many to plant in a hill."""

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w

DAYS_PER_WEEK = 7


def seedlings_when_late(usual: int, day: int) -> int:
    """Seedlings to plant in a hill on a day from sowing: one more for each week begun late."""
    late_d = max(day - int(c.TRANSPLANT_LAST_DAY.value), 0)
    weeks = -(-late_d // DAYS_PER_WEEK)
    more = weeks * int(w.EXTRA_SEEDLINGS_PER_WEEK.value)
    return max(min(usual + more, int(w.MOST_SEEDLINGS_PER_HILL.value)), usual)
