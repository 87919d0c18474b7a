"""Whom the faults meet: a village on any day at ten in the morning, farmers who come with a
nursery, strangers who write."""

from datetime import UTC, datetime, timedelta
from itertools import count
from zoneinfo import ZoneInfo

from assistant.people import Farmer
from assistant.reminders.plan import Hours, planned
from assistant.store import Store
from tests.benchmarks.crowd import a_nursery, phone

WORDS = ("HELP", "MENU", "hello")  # each is answered by one text
TEN = 10


def zone_at_ten(now: datetime) -> str:
    """A zone in which it is ten in the morning, so that today's prompts are due."""
    ahead = (TEN - now.astimezone(UTC).hour + 12) % 24 - 12
    return f"Etc/GMT{-ahead:+d}" if ahead else "Etc/GMT"


class Country:
    """People of one store."""

    def __init__(self, store: Store, zone: str) -> None:
        self.store, self.zone = store, zone
        self._numbers = count(1)
        self.farmers: list[str] = []
        self.wrote: dict[str, list[str]] = {}
        self.stopped: set[str] = set()
        with store.work() as work:
            self._village = work.people.add_village("Kijiji", zone).id
            work.people.add_officer("+999009999999", "Asha", "no code", "en", [self._village])

    def farmer_comes(self) -> str:
        """One more farmer, with a bed on day 4, of whom something is asked today."""
        number = phone(next(self._numbers))
        now = datetime.now(UTC)
        today = now.astimezone(ZoneInfo(self.zone)).date()
        with self.store.work() as work:
            new = Farmer(0, number, "en", self._village, now, None)
            farmer = work.people.save_farmer(new)
            bed = a_nursery(farmer.id, today - timedelta(days=4))
            nursery = work.nurseries.save(bed, now)
            coming = planned(nursery, self.zone, Hours(), today)
            work.reminders.plan([each for each in coming if each.day >= today])
        self.farmers.append(number)
        return number

    def stranger(self) -> str:
        """A number that nobody has."""
        return phone(next(self._numbers))

    def spoil(self) -> int:
        """A farmer comes whose bed cannot be read; its id."""
        number = self.farmer_comes()
        self.farmers.remove(number)
        with self.store.work() as work:
            farmer = work.people.farmer(number)
            assert farmer is not None
            (nursery,) = work.nurseries.of_farmer(farmer.id)
        return nursery.id
