"""What a line remembers of texts that an operator took, where the operator drops no repeats."""

import threading
from collections import OrderedDict

KEPT = 10_000


class Taken:
    """The operator's ids of the segments it took of each of the latest texts, by our own ids.

    Bounded, and gone with the process: a text whose hand-over was not written down before a
    crash goes out twice.
    """

    def __init__(self) -> None:
        self._parts: OrderedDict[str, tuple[str, ...]] = OrderedDict()
        self._lock = threading.Lock()

    def of(self, message_id: str) -> tuple[str, ...]:
        """The segments of a text that were taken; empty where none was."""
        with self._lock:
            return self._parts.get(message_id, ())

    def keep(self, message_id: str, parts: tuple[str, ...]) -> None:
        """Remembers all segments of a text that were taken so far."""
        with self._lock:
            self._parts[message_id] = parts
            self._parts.move_to_end(message_id)
            while len(self._parts) > KEPT:
                self._parts.popitem(last=False)
