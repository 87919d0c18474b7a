"""The loops that the clock drives: due tasks into the outbox, the outbox to the gateway; and
the looks for official alerts."""

import logging
from collections.abc import Callable, Sequence
from datetime import UTC, date, datetime, timedelta
from threading import Event, Thread

from assistant.alerts import Place
from assistant.alerts.sources import AlertSource
from assistant.channel import Clock, Gateway
from assistant.service.alerts.again import judge_again
from assistant.service.alerts.codes import where_villages_lie
from assistant.service.alerts.watch import forget_old, look_at
from assistant.service.day_counts import count_days
from assistant.service.days import local_date
from assistant.service.dispatch import dispatch
from assistant.service.house import House
from assistant.service.tick import ticking

log = logging.getLogger(__name__)

MOST_PAUSE_S = 30.0  # between looks whether it is time to look
LAST_LOOK_S = 5.0


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
        self._counted_on: date | None = None
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
        self.send()
        self._count()

    def _count(self) -> None:
        """Once a day the messages of what is settled by then, a part of it at each round."""
        now = self._clock()
        today = local_date(now, self._house.zone)
        if self._counted_on != today and count_days(self._house, now) == 0:
            self._counted_on = today

    def send(self) -> None:
        """Hands over everything that waits."""
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


class AlertWatch:
    """Looks for official alerts, in a thread of its own: a slow server holds up no text.

    Args:
        every_s: how often a source is looked at, whatever the number of processes
        wake: called when texts may wait in the outbox
    """

    def __init__(
        self,
        house: House,
        sources: Sequence[AlertSource],
        *,
        every_s: float,
        wake: Callable[[], None],
        clock: Clock = wall_clock,
    ) -> None:
        self._house, self._sources, self._wake, self._clock = house, sources, wake, clock
        self._every_s = every_s
        self._forgot_on: date | None = None
        self._places: dict[int, Place] | None = None
        self._stopping = Event()
        self._thread = Thread(target=self._run, name="alerts", daemon=True)

    def start(self) -> None:
        """Begins, where there is a source."""
        if self._sources:
            self._thread.start()

    def stop(self) -> None:
        """Ends after the look it is in; one that takes too long is left behind."""
        self._stopping.set()
        if self._thread.is_alive():
            self._thread.join(LAST_LOOK_S)

    def _run(self) -> None:
        pause_s = min(self._every_s, MOST_PAUSE_S)
        while not self._stopping.is_set():
            self.round()
            self._stopping.wait(pause_s)

    def round(self) -> None:
        """One look at each source whose turn it is; one that fails does not stop the others."""
        self._guarded(self._forget)
        self._guarded(self._again)
        for source in self._sources:
            try:
                taken = look_at(
                    self._house, source, self._clock(), timedelta(seconds=self._every_s)
                )
            except Exception:
                log.exception(
                    "alerts from %s were not taken; the next look tries again", source.name
                )
                continue
            for alert in taken:
                log.info(
                    "official alert %s from %s: %s", alert.identifier, source.name, alert.became
                )
            if taken:
                self._wake()

    def _guarded(self, work: Callable[[], None]) -> None:
        try:
            work()
        except Exception:
            log.exception("alerts that came before were not looked at; the next round tries")

    def _forget(self) -> None:
        """Once a day: what led to nothing long ago."""
        today = self._clock().date()
        if self._forgot_on != today:
            forget_old(self._house, self._clock())
            self._forgot_on = today

    def _again(self) -> None:
        """At the start, and when a village was placed: what came before and is still new."""
        places = where_villages_lie(self._house)
        if self._places != places:
            if judge_again(self._house, self._clock()):
                self._wake()
            self._places = places
