"""The clock that everything in a season reads: it moves only when the player moves it."""

from collections.abc import Iterable
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

ONE_DAY = timedelta(days=1)


class VirtualClock:
    """Gives the season's time (aware); never goes back."""

    def __init__(self, start: datetime) -> None:
        self.now = start

    def __call__(self) -> datetime:
        return self.now

    def to(self, moment: datetime) -> None:
        """Moves on to a time; one that is past leaves the clock where it is."""
        self.now = max(self.now, moment)


def next_mark(after: datetime, marks: Iterable[time], zones: Iterable[str]) -> datetime:
    """The first time after `after` at which some zone's clock shows one of the marks."""
    hours = tuple(marks)
    coming = (
        datetime.combine(day, mark, zone)
        for zone in map(ZoneInfo, zones)
        for day in _days(after.astimezone(zone))
        for mark in hours
    )
    return min(moment for moment in coming if moment > after)


def _days(here: datetime) -> tuple[datetime, datetime]:
    return here, here + ONE_DAY
