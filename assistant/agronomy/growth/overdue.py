"""Seedlings that grew too old: what the delay costs, and how many to plant in a hill."""

from assistant.agronomy import constants_work as w
from assistant.agronomy.lot.germination import Range
from assistant.agronomy.practices import MAT, Practice

DAYS_PER_WEEK = 7


def days_late(day: int, practice: Practice = MAT) -> int:
    """Days past the practice's window; 0 inside it."""
    return max(day - int(practice.window.last.value), 0)


def seedlings_when_late(usual: int, day: int, practice: Practice = MAT) -> int:
    """Seedlings to plant in a hill on a day from sowing: one more for each week begun late."""
    weeks = -(-days_late(day, practice) // DAYS_PER_WEEK)
    more = weeks * int(w.EXTRA_SEEDLINGS_PER_WEEK.value)
    return max(min(usual + more, int(w.MOST_SEEDLINGS_PER_HILL.value)), usual)


def loss_when_late(day: int, practice: Practice = MAT) -> Range:
    """The part of the yield that a delay may cost, from what trials lost [fraction 0-1].

    Straight between no delay and the trials, and no more than they found: a judgement.
    """
    late, most = days_late(day, practice), w.MOST_LOSS.value
    low, high = w.LOSS_PER_DAY.low or 0.0, w.LOSS_PER_DAY.high or 0.0
    return Range(min(late * low, most), min(late * high, most))
