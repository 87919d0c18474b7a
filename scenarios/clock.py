"""The clock that everything in a season reads: it moves only when the player moves it."""

from collections.abc import Callable, Iterable
from datetime import datetime, time, timedelta
from zoneinfo import ZoneInfo

ONE_DAY = timedelta(days=1)


class VirtualClock:
    """Gives the season's time (aware); never goes back."""

    def __init__(self, start: datetime) -> None:
        self._shown = start

    @property
    def now(self) -> datetime:
        """What it shows."""
        return self._shown

    def __call__(self) -> datetime:
        return self.now

    def to(self, moment: datetime) -> None:
        """Moves on to a time; one that is past leaves the clock where it is."""
        self._shown = max(self.now, moment)


class RunningClock(VirtualClock):
    """One that a person may watch: once it `runs`, a second of theirs is a second of it.

    steady_s: seconds from anywhere that nothing sets back
    """

    def __init__(self, start: datetime, steady_s: Callable[[], float]) -> None:
        super().__init__(start)
        self._steady_s = steady_s
        self._since: float | None = None

    @property
    def now(self) -> datetime:
        """What it shows."""
        if self._since is None:
            return self._shown
        return self._shown + timedelta(seconds=self._steady_s() - self._since)

    def to(self, moment: datetime) -> None:
        """Moves on to a time; one that is past leaves the clock where it is."""
        super().to(moment)
        if self._since is not None:
            self._since = self._steady_s()

    def run(self) -> None:
        """Goes with its people's time from now on."""
        self._since = self._steady_s()


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
