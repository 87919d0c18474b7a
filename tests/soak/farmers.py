"""What farmers do with the texts that they have: answer at some hour, stop, cry, or nothing."""

import heapq
import random
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from itertools import count

from assistant.channel import Channel, Incoming, Outgoing
from assistant.dialogue.values import Kind

# Of a hundred texts of a day: the number of what is said, at any hour until evening.
ANSWERS = (("1", 55), ("2", 8), ("done", 7), ("not yet", 4), ("hello?", 1), ("", 25))
CRIES = ("snake bit my son", "the water is over my beds")
STOPS_A_DAY, STARTS_A_DAY, CRIES_A_DAY, IS_TWICE = 0.003, 0.2, 0.002, 0.03


@dataclass
class Farmers:
    """The people of a soak.

    stopped: since when those who stopped have done so
    wrote:   ids of all that was written
    """

    rng: random.Random
    phones: list[str]
    stopped: dict[str, datetime] = field(default_factory=dict)
    wrote: set[str] = field(default_factory=set)
    _to_write: list[tuple[datetime, int, str, str]] = field(default_factory=list)
    _places: Iterator[int] = field(default_factory=count)

    def read(self, came: list[Outgoing], now: datetime) -> None:
        """Texts arrived: some are answered, within hours."""
        words, weights = zip(*ANSWERS, strict=True)
        for text in came:
            if text.kind not in (Kind.PROMPT, Kind.SECOND) or text.phone in self.stopped:
                continue
            (said,) = self.rng.choices(words, weights)
            if said:
                self._later(text.phone, said, now + timedelta(hours=self.rng.uniform(0, 12)))

    def a_day(self, now: datetime) -> None:
        """Who stops, begins again or cries in the next hours."""
        for phone in self.phones:
            if phone in self.stopped:
                words = "START" if self.rng.random() < STARTS_A_DAY else ""
            elif self.rng.random() < CRIES_A_DAY:
                words = self.rng.choice(CRIES)
            else:
                words = "STOP" if self.rng.random() < STOPS_A_DAY else ""
            if words:
                self._later(phone, words, now + timedelta(hours=self.rng.uniform(0, 20)))

    def _later(self, phone: str, words: str, at: datetime) -> None:
        heapq.heappush(self._to_write, (at, next(self._places), phone, words))

    def texts(self, now: datetime) -> Iterator[Incoming]:
        """What is written by now; some of it the operator brings twice."""
        while self._to_write and self._to_write[0][0] <= now:
            _, place, phone, words = heapq.heappop(self._to_write)
            if words == "STOP":
                self.stopped[phone] = now
            elif words == "START":
                self.stopped.pop(phone, None)
            elif phone in self.stopped:
                continue
            text = Incoming(f"in-{place}", phone, words, Channel.SMS, now)
            self.wrote.add(text.gateway_id)
            yield text
            if self.rng.random() < IS_TWICE:
                yield text
