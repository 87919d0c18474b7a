"""What a line remembers: of texts that an operator took, where the operator drops no repeats;
of what phones wrote, where it gives them no id that lasts."""

import threading
from collections import OrderedDict
from dataclasses import dataclass
from datetime import datetime, timedelta
from uuid import uuid4

KEPT = 10_000
# Nobody writes and sends the same text again on a keypad in so short a time.
AT_ONCE = timedelta(seconds=3)
AGAIN_WITHIN = timedelta(minutes=10)


class Taken:
    """The operator's ids of the segments it took of each of the latest texts, by our own ids.

    Bounded, and gone with the process: a text whose hand-over was not written down before a
    crash goes out twice.
    """

    def __init__(self) -> None:
        self._parts: OrderedDict[str, tuple[str, ...]] = OrderedDict()
        self._known: set[str] = set()
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
            self._known.update(parts)
            while len(self._parts) > KEPT:
                _, gone = self._parts.popitem(last=False)
                self._known.difference_update(gone)

    def has(self, part: str) -> bool:
        """Whether an operator's id is that of a segment of these texts."""
        with self._lock:
            return part in self._known


@dataclass
class _Heard:
    id: str
    at: datetime
    again_until: datetime | None = None


class Repeats:
    """Ids for what phones wrote. The same words of a phone at once, or once more after an
    answer that could not be given to the operator, are one message.

    Two 1 in three seconds are one: nobody has read the next question by then, and the second
    would answer it, be it consent or "somebody is hurt". Whoever did mean two is asked the
    second question as if nothing had been said. The seconds run from the first and no repeat
    puts them off, so that an answer to what was read since is never swallowed. Where our answer
    had left and was lost on the way, nothing tells the two apart: then the words count, since a
    swallowed "1" leaves its writer waiting. Gone with the process.
    """

    def __init__(self) -> None:
        self._heard: OrderedDict[tuple[object, ...], _Heard] = OrderedDict()
        self._lock = threading.Lock()

    def id_of(self, now: datetime, *over: object) -> str:
        """The id of a message that is told apart by `over`: the phone, and what it wrote."""
        with self._lock:
            found = self._heard.get(over)
            if found is not None and self._is_again(found, now):
                found.again_until = None
            else:
                found = self._heard[over] = _Heard(uuid4().hex, now)
            self._heard.move_to_end(over)
            while len(self._heard) > KEPT:
                self._heard.popitem(last=False)
            return found.id

    def unanswered(self, now: datetime, message_id: str) -> None:
        """The operator could not be told that a message was taken: it will come again."""
        with self._lock:
            for each in reversed(self._heard.values()):
                if each.id == message_id:
                    each.again_until = now + AGAIN_WITHIN
                    break

    @staticmethod
    def _is_again(found: _Heard, now: datetime) -> bool:
        promised = found.again_until is not None and now <= found.again_until
        return promised or timedelta(0) <= now - found.at <= AT_ONCE
