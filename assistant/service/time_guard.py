"""Whether the clock of this machine may be acted on.

A clock that is wrong for some seconds would close nurseries, give up texts and ask for tasks
that are not due, and none of it could be undone. So a jump is not acted on until the operator's
clock agrees, the clock is right again, or a person says that it is right.
"""

import logging
from collections.abc import Callable
from datetime import datetime, timedelta

from assistant.service.house import House

log = logging.getLogger(__name__)

ACTED = "acted"  # the last moment that was acted on
TRUSTED = "clock"  # when a person last said that the clock is right

SLACK = timedelta(minutes=2)  # clocks drift; a farmer's day does not mind
ASK_EVERY_S = 15.0
# Without the operator's clock a start after a shorter pause is believed: a night's outage.
LONGEST_PAUSE = timedelta(hours=20)
NOT_BELIEVED = (
    "the clock says %s, %s after the last moment that was acted on, and %s: nothing is done "
    "until they agree; set the clock, or say that it is right with nursery clock right"
)


def no_clock() -> datetime | None:
    """An operator whose answers bear no time."""
    return None


class TimeGuard:
    """Looks at each moment before it is acted on. One for each process that ticks.

    Args:
        steady_s: seconds from anywhere, that no setting of a clock changes
        operator_time: the operator's clock; None where it cannot be had
    """

    def __init__(
        self,
        house: House,
        steady_s: Callable[[], float],
        operator_time: Callable[[], datetime | None] = no_clock,
    ) -> None:
        self._house, self._steady_s, self._operator_time = house, steady_s, operator_time
        self._last: tuple[datetime, float] | None = None
        self._asked_s: float | None = None

    def may_act(self, now: datetime) -> bool:
        """Whether a moment may be acted on; if so it is kept as the last that was."""
        steady = self._steady_s()
        if not (self._follows(now, steady) or self._agreed(now, steady)):
            return False
        self._last, self._asked_s = (now, steady), None
        return True

    def keep(self, now: datetime) -> None:
        """Keeps the moment for the next start."""
        with self._house.store.work() as work:
            work.running.beat(ACTED, now)

    def _follows(self, now: datetime, steady: float) -> bool:
        """Whether as much time has passed as should have since the last moment."""
        if self._last is None:
            return False
        last, then = self._last
        return abs(now - last - timedelta(seconds=steady - then)) <= SLACK

    def _agreed(self, now: datetime, steady: float) -> bool:
        """Whether somebody else bears the moment out. Asked now and then, not each round."""
        if self._asked_s is not None and steady - self._asked_s < ASK_EVERY_S:
            return False
        self._asked_s = steady
        with self._house.store.look() as work:
            acted, trusted = work.running.pulse(ACTED), work.running.pulse(TRUSTED)
        if acted is None or (trusted is not None and abs(now - trusted) <= LONGEST_PAUSE):
            return True
        theirs = self._operator_time()
        if theirs is not None and abs(now - theirs) <= SLACK:
            return True
        if theirs is None and self._last is None and -SLACK <= now - acted <= LONGEST_PAUSE:
            return True
        said = (
            f"the operator's says {theirs:%Y-%m-%d %H:%M} UTC" if theirs else "no other tells"
        )
        log.error(NOT_BELIEVED, f"{now:%Y-%m-%d %H:%M} UTC", now - acted, said)
        return False


def clock_is_right(house: House, now: datetime) -> None:
    """A person says that the clock is right: workers act on it from now on."""
    with house.store.work() as work:
        work.running.beat(TRUSTED, now)
