"""The loops that the clock drives: due tasks into the outbox, the outbox to the gateway; and
the looks for official alerts."""

import logging
from collections.abc import Callable, Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from threading import Event, Thread

from assistant.channel import Clock, Gateway, Listener, ListGateway, News, NotKeptError, Screen
from assistant.service.arrivals import take, take_incomplete
from assistant.service.away import DatabaseAwayError
from assistant.service.connections import forget_parts, give_back, note_why, own
from assistant.service.copies import copy_of_today
from assistant.service.day_counts import AT_ONCE as AT_ONCE_D
from assistant.service.day_counts import count_days
from assistant.service.days import local_date
from assistant.service.dispatch import dispatch
from assistant.service.house import House
from assistant.service.in_force import InForce
from assistant.service.line_pause import let_leave
from assistant.service.mornings import AT_ONCE
from assistant.service.privacy import erase_due, thin_out
from assistant.service.pulse import SENDING, TICKING, Beat
from assistant.service.set_aside import look_again, look_over
from assistant.service.standstill import tell_people
from assistant.service.tick import ticking
from assistant.service.time_guard import TimeGuard
from assistant.service.trail_seal import seal

log = logging.getLogger(__name__)

MOST_PAUSE_S = 30.0  # between looks whether it is time to look
LAST_LOOK_S = 5.0
SEAL_EVERY = timedelta(minutes=1)  # of the trail
A_MINUTE = timedelta(minutes=1)
ASK_EVERY_S = 5.0  # for the lines' connections


def wall_clock() -> datetime:
    """The time now."""
    return datetime.now(UTC)


class Worker:
    """Follows the clock in one thread and sends in another, until it is told to stop. What is
    slow or fails in one holds up nothing in the other.

    `wake` (given to those who put texts into the outbox) makes it send at once, so that an
    answer does not wait for the next round.

    Args:
        hands: how many texts are handed over at once
        at_once: tasks of one batch of a morning
        may_send: False while another process has the connections of the lines
        guard: looks at each moment before it is acted on; None where the clock is not the
            wall's
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
        guard: TimeGuard | None = None,
        hands: int = 1,
        at_once: int = AT_ONCE,
        may_send: Callable[[], bool] = lambda: True,
    ) -> None:
        self._at_once, self._may_send = at_once, may_send
        self._kept, self._gateway, self._clock = InForce(house), gateway, clock
        self._pause_s, self._batch = pause_s, batch
        self._lists = gateway if isinstance(gateway, ListGateway) else None
        self._lease = timedelta(seconds=lease_s)
        self._guard, self._hands = guard, hands
        self._pool = ThreadPoolExecutor(hands, "handing") if hands > 1 else None
        self._counted_on: date | None = None
        self._looked_over_on: date | None = None
        self._sealed_at: datetime | None = None
        self._minute_at: datetime | None = None
        self._aside_after = 0
        self._ticks, self._sends = Beat(house, TICKING), Beat(house, SENDING)
        self._woken, self._stopping = Event(), Event()
        self._threads = (
            Thread(target=self._keep_ticking, name="ticking", daemon=True),
            Thread(target=self._keep_sending, name="sending", daemon=True),
        )

    @property
    def _house(self) -> House:
        return self._kept.house

    def start(self) -> None:
        """Begins both loops, each in a thread of its own."""
        for thread in self._threads:
            thread.start()

    def wake(self) -> None:
        """Something waits in the outbox."""
        self._woken.set()

    def stop(self) -> None:
        """Ends the loops after the round they are in."""
        self._stopping.set()
        self._woken.set()
        for thread in self._threads:
            if thread.is_alive():
                thread.join()
        if self._pool is not None:
            self._pool.shutdown()

    def _keep_ticking(self) -> None:
        while not self._stopping.is_set():
            self._guarded(self._follow_clock)
            self._guarded(self._once_a_day)
            self._guarded(self._once_a_minute)
            self._stopping.wait(self._pause_s)

    def _keep_sending(self) -> None:
        while not self._stopping.is_set():
            self._guarded(self.send)
            self._guarded(lambda: self._sends(self._clock()))
            self._woken.wait(self._pause_s)
            self._woken.clear()

    def _follow_clock(self) -> None:
        """What is due now, if the clock may be believed; what it writes leaves meanwhile."""
        now = self._clock()
        self._ticks(now)
        if self._guard is not None and not self._guard.may_act(now):
            return
        for _ in self._served(now):
            if self._stopping.is_set():
                return
            self.wake()
            self._ticks(self._clock())
        if self._guard is not None:
            self._guard.keep(now)
        self.wake()

    def round(self) -> None:
        """One look at the clock, then everything that waits: both loops once, in one thread."""
        for _ in self._served(self._clock()):
            self._dispatch()
        self.send()
        self._count()

    def _served(self, now: datetime) -> Iterator[None]:
        """A tick that pauses when as many phones were served as leave at once."""
        done = 0
        for some in ticking(self._house, now, self._at_once):
            done += some
            if done >= self._batch:
                done = 0
                yield

    def _once_a_day(self) -> None:
        """Messages of what is settled are counted; nurseries that cannot be read are found;
        who asked for it is forgotten, and what was kept long enough."""
        self._count()
        now = self._clock()
        if self._sealed_at is None or now - self._sealed_at >= SEAL_EVERY:
            seal(self._house, now)
            self._sealed_at = now
        today = local_date(now, self._house.zone)
        if self._looked_over_on != today:
            for _ in look_over(self._house, now):
                if self._stopping.is_set():
                    return
            forget_parts(self._house, now)
            erase_due(self._house, now)
            for _ in thin_out(self._house, now):
                if self._stopping.is_set():
                    return
            self._looked_over_on = today

    def _once_a_minute(self) -> None:
        """The texts whose other pieces did not come, those that are to wait for longer than any
        pause lasts, and nurseries that were set aside and may have been mended."""
        now = self._clock()
        if self._minute_at is None or not timedelta(0) <= now - self._minute_at < A_MINUTE:
            self._minute_at = now
            if take_incomplete(self._house, now) + let_leave(self._house, now):
                self.wake()
            self._aside_after = look_again(self._house, self._aside_after)

    def _count(self) -> None:
        """Once a day the messages of what is settled by then, a part of it at each round."""
        now = self._clock()
        today = local_date(now, self._house.zone)
        if self._counted_on != today and count_days(self._house, now) < AT_ONCE_D:
            self._counted_on = today

    def send(self) -> None:
        """Hands over everything that waits."""
        while self._may_send() and self._dispatch():
            if self._stopping.is_set():
                return

    def _dispatch(self) -> int:
        now = self._clock()
        lists = self._lists.at_once if self._lists else 0
        halfway = now + self._lease / 2  # the slowest answer still fits into the other half
        return dispatch(
            self._house,
            self._gateway,
            now,
            limit=max(lists, self._batch),
            lease=self._lease,
            in_time=lambda: self._clock() < halfway,
            hands=self._hands,
            carry=self._pool.map if self._pool is not None else map,
        )

    def _guarded(self, work: Callable[[], object]) -> None:
        """A round that fails is logged, and the next one tries again."""
        try:
            work()
        except DatabaseAwayError as fault:
            log.error("this round failed; the next one tries again: %s", fault)
        except Exception:
            log.exception("this round failed; the next one tries again")


class Watchman:
    """Looks once a minute, in a thread of its own, whether texts leave, and tells people where
    not; and makes the daily copy of the database, where that is wanted.

    Args:
        gateway: by which people are told where nobody else sends
        copies: the folder of copies, and how many of them are kept
    """

    def __init__(
        self,
        house: House,
        *,
        gateway: Gateway | None = None,
        copies: tuple[Path, int] | None = None,
        clock: Clock = wall_clock,
    ) -> None:
        self._kept, self._gateway, self._copies = InForce(house), gateway, copies
        self._clock = clock
        self._stopping = Event()
        self._thread = Thread(target=self._run, name="watchman", daemon=True)

    def start(self) -> None:
        """Begins; a service that has just started is given a while."""
        self._thread.start()

    def stop(self) -> None:
        """Ends after the look it is in; a copy that takes long is left behind."""
        self._stopping.set()
        if self._thread.is_alive():
            self._thread.join(LAST_LOOK_S)

    def _run(self) -> None:
        while not self._stopping.wait(A_MINUTE.total_seconds()):
            self.round()

    def round(self) -> None:
        """One look."""
        for look in (self._tell, self._copy):
            try:
                look(self._clock())
            except DatabaseAwayError as fault:
                log.error("the next minute looks again: %s", fault)
            except Exception:
                log.exception("this look failed; the next minute tries again")

    def _tell(self, now: datetime) -> None:
        tell_people(self._kept.house, now, self._gateway)

    def _copy(self, now: datetime) -> None:
        if self._copies is not None:
            folder, kept = self._copies
            copy_of_today(self._kept.house, folder, kept, now)


class LineWatch:
    """Keeps the connections of the lines that listen, in one process of all: who has them
    sends, and takes what they bring; the others wait to take over.

    Args:
        owner: names this process
        whys: of each line by name, why it cannot send now; what changes is kept for people

    `wake` is called when texts may wait in the outbox; the worker is joined to it later.
    """

    def __init__(
        self,
        house: House,
        line: Listener,
        *,
        owner: str,
        clock: Clock = wall_clock,
        whys: Callable[[], Mapping[str, str]] = dict,
    ) -> None:
        self._kept, self._line, self._owner = InForce(house), line, owner
        self._clock, self._whys = clock, whys
        self._noted: dict[str, str] = {}
        self.wake: Callable[[], None] = lambda: None
        self._has = Event()
        self._stopping = Event()
        self._thread = Thread(target=self._run, name="lines", daemon=True)

    def start(self) -> None:
        """Begins to ask for the connections."""
        self._thread.start()

    def stop(self) -> None:
        """Closes the connections and gives them to whoever waits."""
        self._stopping.set()
        self._thread.join()
        if self._has.is_set():
            self._let_go()
            give_back(self._kept.house, self._owner, self._clock())

    def has(self) -> bool:
        """Whether this process has the connections now."""
        return self._has.is_set()

    def _run(self) -> None:
        while not self._stopping.is_set():
            try:
                self.round()
            except DatabaseAwayError as fault:
                log.error("the lines stay as they are; the next round asks again: %s", fault)
            except Exception:
                log.exception("the lines could not be opened; the next round tries again")
            self._stopping.wait(ASK_EVERY_S)

    def round(self) -> None:
        """Asks for the connections once, or keeps them."""
        mine = own(self._kept.house, self._owner, self._clock())
        if mine and not self._has.is_set():
            self._line.open(self._take, self._clock)
            self._has.set()
            self.wake()
        elif not mine and self._has.is_set():
            log.warning("another process has the lines now: this one waits")
            self._let_go()
        elif mine:
            self._note_whys()

    def _note_whys(self) -> None:
        """A line that cannot send says why, and goes on saying so while it lasts."""
        for name, why in self._whys().items():
            if why or self._noted.get(name) != why:
                note_why(self._kept.house, name, why, self._clock())
                self._noted[name] = why

    def _let_go(self) -> None:
        self._has.clear()
        self._line.close()

    def _take(self, news: News) -> Screen | None:
        """Keeps what a line brought; its operator is answered only then."""
        try:
            screen = take(self._kept.house, news, self._clock())
        except DatabaseAwayError as fault:
            raise NotKeptError(str(fault)) from fault
        self.wake()
        return screen
