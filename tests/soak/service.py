"""The service on a clock of its own: rounds of a day, with faults by a seed."""

import random
from collections import Counter
from contextlib import suppress
from datetime import timedelta
from pathlib import Path

from assistant.service.dispatch import dispatch, take_receipts
from assistant.service.house import House
from assistant.service.line_pause import let_leave
from assistant.service.receive import receive
from assistant.service.tick import tick
from assistant.store import Store
from tests.benchmarks.crowd import MORNING, Crowd, house_at, phone
from tests.soak.farmers import Farmers
from tests.soak.network import KilledError, Mood, Network

LEASE = timedelta(seconds=20)
STEP = timedelta(minutes=30)
DAYS = (-4, -2, 0, 1, 3, 5, 8, 10)  # of the beds on the first day
ONLY_SECONDS = timedelta(seconds=30)


class Soak:
    """One service in a file, its people and its line."""

    def __init__(self, url: str, phones: int, seed: int) -> None:
        Crowd(DAYS, villages=4, farmers=phones).settle(url)
        self.rng, self._url = random.Random(seed), url
        self.line = Network(self.rng)
        self.people = Farmers(self.rng, [phone(n) for n in range(1, phones + 1)])
        self.now = MORNING - timedelta(hours=6)
        self.faults: Counter[str] = Counter()
        self.house = self._opened()

    def _opened(self) -> House:
        return house_at(Store(self._url))

    def open_anew(self) -> None:
        """Another process, which remembers nothing."""
        self.house.store.close()
        self.house = self._opened()

    # --- a day -------------------------------------------------------------------------------

    def day(self, *, quiet: bool = False) -> None:
        """Midnight to midnight; without faults where it is to be quiet."""
        until = self.now + timedelta(days=1)
        if not quiet:
            self.people.a_day(self.now)
        while self.now < until:
            self._begin_fault(quiet)
            self.round()
            self.now += STEP
            self.line.mood = Mood.WELL if quiet else self._goes_on()

    def _begin_fault(self, quiet: bool) -> None:
        if quiet or self.rng.random() > 0.15:
            return
        moods = [Mood.GONE, Mood.BUSY, Mood.BREAKS_OFF, Mood.BREAKS_OFF]
        fault = self.rng.choice([*moods, "stands still", "opened anew"])
        self.faults[fault] += 1
        if isinstance(fault, Mood):
            self.line.mood = fault
        elif fault == "stands still":
            self.now += timedelta(hours=self.rng.uniform(1, 5))
        self.open_anew()

    def _goes_on(self) -> Mood:
        """A line that is gone is so for an hour or two."""
        stays = self.line.mood is not Mood.BREAKS_OFF and self.rng.random() < 0.6
        return self.line.mood if stays else Mood.WELL

    def round(self) -> None:
        """What is due is written and leaves; receipts and people come in; answers leave."""
        tick(self.house, self.now)
        let_leave(self.house, self.now)
        self._leave()
        for text in self.people.texts(self.now):
            receive(self.house, text, self.now)
        self._leave()

    def _leave(self) -> None:
        """Looks until nothing goes; of a killed sender another takes over, after its lease."""
        for _ in range(3):
            with suppress(KilledError):
                while self._look():
                    pass
                break
            self.open_anew()
            self.now += ONLY_SECONDS
        told = self.line.receipts(self.now)
        take_receipts(self.house, told, self.now)
        came, self.line.came = self.line.came, []
        self.people.read(came, self.now)

    def _look(self) -> int:
        return dispatch(self.house, self.line, self.now, limit=500, lease=LEASE)


def resident_mib() -> float:
    """What this process holds in memory [MiB], as Linux counts it."""
    lines = Path("/proc/self/status").read_text(encoding="ascii").splitlines()
    return next(int(line.split()[1]) for line in lines if line.startswith("VmRSS")) / 1024
