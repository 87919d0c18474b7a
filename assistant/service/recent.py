"""What took long to find is kept for some minutes by the process that found it.

For figures of days that are over, or of whole seasons, of which nobody minds whether the last
minutes are in them. What is little is found anew each time, so that a small programme always
sees what it has just done.
"""

from collections import OrderedDict
from collections.abc import Callable, Hashable
from datetime import datetime, timedelta
from threading import Lock
from typing import Any, TypeVar

KEPT_FOR = timedelta(minutes=10)
MOST = 100  # of different things

T = TypeVar("T")


class Recent:
    """Holds what was found, the longest kept first."""

    def __init__(self) -> None:
        self._found: OrderedDict[Hashable, tuple[datetime, Any]] = OrderedDict()
        self._lock = Lock()

    def find(
        self,
        key: Hashable,
        now: datetime,
        find: Callable[[], T],
        is_large: Callable[[T], bool],
    ) -> tuple[datetime, T]:
        """What was found under a key in the last minutes, or what is found now, and when that
        was; only what is large is kept."""
        with self._lock:
            kept = self._found.get(key)
        if kept is not None and kept[0] <= now < kept[0] + KEPT_FOR:
            return kept
        value = find()
        if is_large(value):
            self._keep(key, now, value)
        return now, value

    def _keep(self, key: Hashable, now: datetime, value: object) -> None:
        with self._lock:
            self._found.pop(key, None)
            self._found[key] = now, value
            while len(self._found) > MOST:
                self._found.popitem(last=False)
