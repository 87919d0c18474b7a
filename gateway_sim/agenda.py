"""What the network still has to do, and when."""

import heapq
from collections.abc import Callable
from datetime import datetime
from itertools import count
from typing import NamedTuple

Action = Callable[[datetime], None]


class Due(NamedTuple):
    """One thing to do; `turn` keeps things of the same moment in the order they came."""

    due: datetime
    turn: int
    action: Action


class Agenda:
    """Things to do in the order they are due. Not locked: its owner holds the lock."""

    _turns = count()  # one for all agendas, so that two can be worked off as one

    def __init__(self) -> None:
        self._items: list[Due] = []

    def add(self, due: datetime, action: Action) -> Due:
        """Do this at that moment; the action is given the moment."""
        item = Due(due, next(self._turns), action)
        heapq.heappush(self._items, item)
        return item

    def cancel(self, item: Due) -> None:
        """Forget an item, if it is still to be done."""
        self._items = [kept for kept in self._items if kept.turn != item.turn]
        heapq.heapify(self._items)

    def next(self) -> Due | None:
        """The item due first."""
        return self._items[0] if self._items else None

    def take(self) -> Due:
        """Remove and return the item due first."""
        return heapq.heappop(self._items)
