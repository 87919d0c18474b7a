"""The hours of a rain warning: how far ahead they may begin and how long they may last.

A warning holds up sowing and uncovering while it stands, so a wrong month must not stand for
weeks. Both limits are common practice, no source: a storm is seldom foreseen surely for more
than three days, and a longer one is warned of again.
"""

from datetime import datetime, timedelta
from enum import StrEnum

MOST_AHEAD = timedelta(days=3)
LONGEST = timedelta(days=3)


class HoursFault(StrEnum):
    """What is wrong with the hours of a warning."""

    BACKWARD = "backward"
    PAST = "past"
    TOO_FAR = "too_far"
    TOO_LONG = "too_long"


def hours_fault(starts_at: datetime, ends_at: datetime, now: datetime) -> HoursFault | None:
    """What is wrong with these hours, if anything."""
    if ends_at <= starts_at:
        return HoursFault.BACKWARD
    if ends_at <= now:
        return HoursFault.PAST
    if starts_at > now + MOST_AHEAD:
        return HoursFault.TOO_FAR
    if ends_at - starts_at > LONGEST:
        return HoursFault.TOO_LONG
    return None
