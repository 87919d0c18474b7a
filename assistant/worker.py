"""The loop that the clock drives: due tasks into the outbox, the outbox to the gateway."""

import logging
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from threading import Event, Thread

from assistant.channel import Clock, Gateway
from assistant.service.dispatch import dispatch
from assistant.service.house import House
from assistant.service.tick import ticking

log = logging.getLogger(__name__)


def wall_clock() -> datetime:
    """The time now."""
    return datetime.now(UTC)


class Worker:
    """Runs ticks and dispatches until it is told to stop.

    `wake` (given to those who put texts into the outbox) makes it look at once, so that an
    answer does not wait for the next round.
    """

    def __init__(
        self,
        house: House,
        gateway: Gateway,
        *,
        pause_s: float,
        batch: int,
        lease_s: float,
        clock: Clock = wall_clock,
    ) -> None:
        self._house, self._gateway, self._clock = house, gateway, clock
        self._pause_s, self._batch = pause_s, batch
        self._lease = timedelta(seconds=lease_s)
        self._woken, self._stopping = Event(), Event()
        self._thread = Thread(target=self._run, name="worker", daemon=True)

    def start(self) -> None:
        """Begins the loop in a thread of its own."""
        self._thread.start()

    def wake(self) -> None:
        """Something waits in the outbox."""
        self._woken.set()

    def stop(self) -> None:
        """Ends the loop after the round it is in."""
        self._stopping.set()
        self._woken.set()
        if self._thread.is_alive():
            self._thread.join()

    def _run(self) -> None:
        while not self._stopping.is_set():
            self._guarded(self.round)
            self._woken.wait(self._pause_s)
            self._woken.clear()

    def round(self) -> None:
        """One look at the clock: what is due, then everything that waits.

        A morning with thousands of phones takes minutes. What waits is handed over meanwhile,
        so that a warning leaves at once.
        """
        for done, _ in enumerate(ticking(self._house, self._clock()), start=1):
            if self._stopping.is_set():
                return
            if done % self._batch == 0:
                self._dispatch()
        while self._dispatch():
            if self._stopping.is_set():
                return

    def _dispatch(self) -> int:
        now = self._clock()
        halfway = now + self._lease / 2  # the slowest answer still fits into the other half
        return dispatch(
            self._house,
            self._gateway,
            now,
            limit=self._batch,
            lease=self._lease,
            in_time=lambda: self._clock() < halfway,
        )

    def _guarded(self, work: Callable[[], None]) -> None:
        """A round that fails is logged, and the next one tries again."""
        try:
            work()
        except Exception:
            log.exception("this round failed; the next one tries again")
