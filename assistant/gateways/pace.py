"""So many texts a second, each in its turn, by one process or by several."""

import math
import threading
import time
from collections.abc import Callable
from datetime import datetime, timedelta

CLOCKS_APART = timedelta(seconds=30)  # of machines that share a line
BLOCK_S = 0.25  # turns that a process takes at once where several share them

Turns = Callable[[float, float], float]
"""Takes turns of so many seconds [s] for this process alone: how long until they begin; where
that is longer than the second figure none are taken."""


class Pace:
    """Turns at an even distance. Shared by threads; with `turns` by processes too, who then
    take some at once. Turns that nobody used are gone.

    Args:
        clock: runs on by itself [s]
    """

    def __init__(
        self,
        a_second: float,
        clock: Callable[[], float] = time.monotonic,
        turns: Turns | None = None,
    ) -> None:
        self._gap_s, self._clock, self._turns = 1 / a_second, clock, turns
        self._block_s = max(math.floor(a_second * BLOCK_S), 1) * self._gap_s
        self._next_s = 0.0
        self._ours_until_s = math.inf if turns is None else 0.0
        self._lock = threading.Lock()

    def take(self, most_s: float) -> float:
        """Takes a turn: how long to wait for it [s]; where that is above `most_s`, no turn is
        taken and it is how long until one comes."""
        with self._lock:
            now = self._clock()
            at = max(self._next_s, now)
            if at + self._gap_s > self._ours_until_s + self._gap_s / 2:
                assert self._turns is not None
                wait = self._turns(self._block_s, most_s)
                if wait > most_s:
                    return wait
                at = now + wait
                self._ours_until_s = at + self._block_s
            if at - now <= most_s:
                self._next_s = at + self._gap_s
            return at - now


def begin_of_turns(
    taken_until: datetime, now: datetime, span_s: float, most_s: float
) -> tuple[datetime, datetime]:
    """When turns of so many seconds begin after those that others took, and until when all are
    taken then; they are left where they begin later than `most_s` from now. Turns that are
    taken for longer than anybody may were so while a clock was wrong."""
    at_most = now + timedelta(seconds=most_s + span_s) + CLOCKS_APART
    begin = max(taken_until, now) if taken_until <= at_most else now
    if begin - now > timedelta(seconds=most_s):
        return begin, taken_until
    return begin, begin + timedelta(seconds=span_s)
