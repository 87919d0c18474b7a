"""Which of several lines rest, and how those that did are tried again: with one text, then with
as many as went since."""

from datetime import datetime, timedelta
from threading import Lock

from assistant.channel import Fate, Handover

SILENT_REST = timedelta(seconds=2)
LONGEST_REST = timedelta(minutes=10)
WHOLE_AFTER = 64  # texts that went since a line was down; then it is offered whole lists


class Rests:
    """The pauses of lines, by name. Safe to share between threads."""

    def __init__(self) -> None:
        self._rests: dict[str, tuple[datetime, datetime]] = {}
        self._whys: dict[str, str] = {}
        self._went: dict[str, int] = {}
        self._lock = Lock()

    def until(self, name: str, now: datetime) -> datetime | None:
        """Until when a line rests; a pause that begins later was kept by a clock then wrong."""
        begin, until = self._rests.get(name, (now, now))
        return until if begin <= now < until else None

    def why(self, name: str) -> str:
        """What the line said when it was last down."""
        return self._whys.get(name) or f"{name} rests"

    def is_up(self, name: str) -> bool:
        """Whether a line has answered since it was last down."""
        return name not in self._rests

    def may_try(self, name: str, now: datetime) -> bool:
        """Whether a line may be offered a text: one that was down is offered one at a time, and
        rests for the others until it has answered."""
        with self._lock:
            if self.until(name, now) is not None:
                return False
            if name in self._rests:
                self._rests[name] = now, now + SILENT_REST
            return True

    def most(self, name: str, of: int) -> int:
        """How many texts of a list a line is offered at once."""
        return min(of, max(1, self._went.get(name, of)))

    def fared(self, name: str, handover: Handover, now: datetime) -> bool:
        """Keeps how a line answered; whether that changed how it stands."""
        with self._lock:
            was_down = self._rests.pop(name, None) is not None
            if is_down(handover):
                rest = handover.rest if handover.answered else SILENT_REST
                self._rests[name] = now, now + min(rest or SILENT_REST, LONGEST_REST)
                self._whys[name], self._went[name] = handover.detail, 0
                return True
            if name in self._went and handover.fate is Fate.ACCEPTED:
                self._went[name] += 1
                if self._went[name] >= WHOLE_AFTER:
                    del self._went[name]
            return was_down


def is_down(handover: Handover) -> bool:
    """Whether an answer is about the line: another text would fare no better."""
    return handover.rest is not None or not handover.answered
