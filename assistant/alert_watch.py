"""The loop that looks for official alerts, a part that may be left out."""

import logging
from collections.abc import Callable, Sequence
from datetime import date, timedelta
from threading import Event, Thread

from assistant.alert_terms import Rules
from assistant.alerts.sources import AlertSource
from assistant.channel import Clock
from assistant.places import VillagePlace
from assistant.service.alerts.again import judge_again
from assistant.service.alerts.watch import forget_old, look_at
from assistant.service.house import House
from assistant.service.in_force import InForce
from assistant.service.placing import where_villages_lie

log = logging.getLogger(__name__)

MOST_PAUSE_S = 30.0  # between looks whether it is time to look
LAST_LOOK_S = 5.0


class AlertWatch:
    """Looks for official alerts, in a thread of its own: a slow server holds up no text.

    Args:
        every_s: how often a source is looked at, whatever the number of processes
        wake: called when texts may wait in the outbox
        more: opens the sources that a page added
    """

    def __init__(
        self,
        house: House,
        sources: Sequence[AlertSource],
        *,
        every_s: float,
        wake: Callable[[], None],
        clock: Clock,
        more: Callable[[House], Sequence[AlertSource]] | None = None,
    ) -> None:
        self._kept, self._sources, self._wake, self._clock = (
            InForce(house),
            sources,
            wake,
            clock,
        )
        self._every_s, self._more = every_s, more
        self._forgot_on: date | None = None
        self._added: tuple[tuple[str, ...], Sequence[AlertSource]] | None = None
        self._judged_by: tuple[dict[int, VillagePlace], Rules] | None = None
        self._stopping = Event()
        self._thread = Thread(target=self._run, name="alerts", daemon=True)

    def start(self) -> None:
        """Begins, where there is a source, or may be one."""
        if self._sources or self._more is not None:
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
        for source in self._all():
            try:
                taken = look_at(
                    self._kept.house, source, self._clock(), timedelta(seconds=self._every_s)
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

    def _guarded(self, work: Callable[[], object]) -> None:
        try:
            work()
        except Exception:
            log.exception("alerts that came before were not looked at; the next round tries")

    def _forget(self) -> None:
        """Once a day: what led to nothing long ago."""
        today = self._clock().date()
        if self._forgot_on != today:
            forget_old(self._kept.house, self._clock())
            self._forgot_on = today

    def _again(self) -> None:
        """At the start, and when a village was placed or a threshold moved: what came before
        and is still new."""
        house = self._kept.house
        judged_by = (where_villages_lie(house), house.alert_rules)
        if self._judged_by != judged_by:
            if judge_again(house, self._clock()):
                self._wake()
            self._judged_by = judged_by

    def _all(self) -> Sequence[AlertSource]:
        """The sources of the machine, and those of the page; these keep what they have seen."""
        if self._more is None:
            return self._sources
        wanted = self._kept.house.alerts_from
        if self._added is None or self._added[0] != wanted:
            self._added = (wanted, self._more(self._kept.house))
        return (*self._sources, *self._added[1])
