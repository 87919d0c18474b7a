"""Words that leave on a day and at an hour that an officer chose."""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from assistant.reminders.plan import local

LATEST_D = 14  # days ahead
HOURS = tuple(range(5, 21))  # of the day


@dataclass(frozen=True)
class ChosenHour:
    """A day and an hour, in the time of whoever gets the words."""

    day: date
    hour: int

    def moment(self, zone: str) -> datetime:
        """The same as a moment."""
        return local(self.day, time(self.hour), zone)

    def is_ahead(self, zone: str, now: datetime) -> bool:
        """Whether it is to come, and not further ahead than words are kept."""
        at = self.moment(zone)
        return now < at <= now + timedelta(days=LATEST_D + 1)
