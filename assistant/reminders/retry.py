"""When to offer a text to the gateway again: a decision, not an action."""

from datetime import datetime, timedelta

FIRST_WAIT = timedelta(seconds=30)
LONGEST_WAIT = timedelta(minutes=15)


def next_try(attempts: int, now: datetime, not_after: datetime) -> datetime | None:
    """The time of the next attempt, doubling the wait; None when the text would be too late.

    Args:
        attempts: how often the text was offered so far, at least 1.
    """
    wait = min(FIRST_WAIT * 2 ** min(attempts - 1, 20), LONGEST_WAIT)
    return now + wait if now + wait < not_after else None
