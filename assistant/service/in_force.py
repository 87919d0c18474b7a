"""The house as its pages have set it. Each process looks again after some seconds, and at once
where the change was made in it."""

import logging
import time
from collections.abc import Callable

from assistant.service.away import DatabaseAwayError
from assistant.service.house import House
from assistant.settings import SettingsError

log = logging.getLogger(__name__)

LOOK_EVERY_S = 5.0


class InForce:
    """Holds the house that the wiring made, and the one of today.

    Args:
        seconds: a clock that only counts
    """

    def __init__(self, house: House, seconds: Callable[[], float] = time.monotonic) -> None:
        self._base = self._house = house
        self._seconds = seconds
        self._looked_s = float("-inf")
        self._change = -1
        self._said: dict[str, str] | None = None

    @property
    def house(self) -> House:
        """With what the pages say now."""
        if self._base.refit is not None and self._is_old():
            self._look()
        return self._house

    def _is_old(self) -> bool:
        changed = self._change != self._base.store.changes
        return changed or self._seconds() - self._looked_s >= LOOK_EVERY_S

    def _look(self) -> None:
        self._change, self._looked_s = self._base.store.changes, self._seconds()
        try:
            with self._base.store.look() as work:
                said = work.running.settings()
        except DatabaseAwayError:
            return  # what was in force stays so; whoever asked finds out by themselves
        if self._said is None or said != self._said:
            self._house, self._said = _refitted(self._base, said), said


def in_force(house: House) -> House:
    """The house as it is now; for what does not last."""
    return InForce(house).house


def _refitted(base: House, said: dict[str, str]) -> House:
    """What cannot be used any more (a release reads otherwise, the environment changed) is left
    out whole, so that the service goes on with what is outside of the database."""
    if base.refit is None:
        return base
    try:
        return base.refit(base, said)
    except SettingsError as fault:
        log.error("settings of the page are passed over: %s", fault)
        return base
