"""An operator in memory, with moods: what the phones show, and the receipts to come."""

import random
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from enum import StrEnum

from assistant.channel import Fate, Handover, Outgoing, Receipt


class Mood(StrEnum):
    """How the line is."""

    WELL = "well"
    GONE = "gone"
    BUSY = "busy"
    BREAKS_OFF = "breaks off"  # the service is killed between the hand-over and its record


class KilledError(Exception):
    """The process of the service is no more."""


_SAID = {
    Mood.GONE: Handover(Fate.TRY_LATER, "nobody answers", answered=False),
    Mood.BUSY: Handover(Fate.TRY_LATER, "503", rest=timedelta(minutes=5)),
}
FAILS, IS_LATE, IS_LOST, IS_TWICE = 0.01, 0.1, 0.02, 0.05  # shares of receipts


@dataclass
class Network:
    """Drops repeats of an id, as the wire asks; counts them.

    shown:    what each phone has, in its order: ids of ours
    came:     since these were taken last: texts that phones have now
    """

    rng: random.Random
    mood: Mood = Mood.WELL
    at_once: int = 500
    shown: dict[str, list[str]] = field(default_factory=dict)
    came: list[Outgoing] = field(default_factory=list)
    repeats: int = 0
    _known: set[str] = field(default_factory=set)
    _told: list[tuple[datetime, Receipt]] = field(default_factory=list)

    def time(self) -> None:
        """It tells none."""

    def in_lists(self, outgoing: Outgoing, now: datetime) -> bool:
        """Any."""
        return True

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """One text."""
        (answer,) = self.send_all([outgoing], now)
        assert answer is not None
        return answer

    def send_all(self, texts: Sequence[Outgoing], now: datetime) -> list[Handover | None]:
        """All of them, or none."""
        said = _SAID.get(self.mood)
        if said is not None:
            return (
                [said] * len(texts) if not said.answered else [said, *[None] * (len(texts) - 1)]
            )
        for each in texts:
            self._take(each, now)
        if self.mood is Mood.BREAKS_OFF:
            self.mood = Mood.WELL
            raise KilledError
        return [Handover(Fate.ACCEPTED)] * len(texts)

    def _take(self, text: Outgoing, now: datetime) -> None:
        if text.message_id in self._known:
            self.repeats += 1
            return
        self._known.add(text.message_id)
        chance = self.rng.random
        arrives = chance() >= FAILS
        if arrives:
            self.shown.setdefault(text.phone, []).append(text.message_id)
            self.came.append(text)
        if chance() < IS_LOST:
            return
        late = timedelta(hours=self.rng.uniform(1, 9)) if chance() < IS_LATE else timedelta(0)
        fate = Fate.DELIVERED if arrives else Fate.FAILED
        receipt = Receipt(text.message_id, fate, now, "" if arrives else "no such subscriber")
        self._told += [(now + late, receipt)] * (2 if chance() < IS_TWICE else 1)

    def receipts(self, now: datetime) -> list[Receipt]:
        """Those that come now, in any order."""
        due = [receipt for at, receipt in self._told if at <= now]
        self._told = [each for each in self._told if each[0] > now]
        self.rng.shuffle(due)
        return due
