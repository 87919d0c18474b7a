"""Whether the service lives: its parts, its line, and the oldest text that waits."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from shutil import disk_usage

from assistant.service.house import House
from assistant.store import Line, NoRoomError

TICKING, SENDING, ROOM = "ticking", "sending", "room"
LEAST_FREE = 100_000_000  # bytes; a country's day writes less
BEAT_EVERY = timedelta(seconds=10)
SILENT_AFTER = timedelta(minutes=2)  # a part that gave no sign for so long stands still
WAITS_TOO_LONG = timedelta(minutes=10)


class ServiceFault(StrEnum):
    """What is wrong with the service."""

    TICKING = "ticking"  # no process follows up what is due
    SENDING = "sending"  # no process hands texts over
    WAITING = "waiting"  # a text has waited for more than ten minutes
    HELD = "held"  # a person holds all texts
    ROOM = "room"  # the disk is full or nearly, or refuses to be written to


@dataclass(frozen=True)
class Pulse:
    """How the service stands at a moment: `ticking`, `sending` when each was last alive,
    `waiting_since` since when the oldest text waits that could have left; `room` whether more
    can be kept."""

    now: datetime
    ticking: datetime | None
    sending: datetime | None
    waiting_since: datetime | None
    line: Line
    room: bool = True

    @property
    def faults(self) -> tuple[ServiceFault, ...]:
        """What is wrong, the gravest first."""
        found = {
            ServiceFault.ROOM: not self.room,
            ServiceFault.HELD: self.line.held_at is not None,
            ServiceFault.SENDING: self._stands_still(self.sending),
            ServiceFault.TICKING: self._stands_still(self.ticking),
            ServiceFault.WAITING: self.waits > WAITS_TOO_LONG,
        }
        return tuple(fault for fault, true in found.items() if true)

    @property
    def waits(self) -> timedelta:
        """How long the oldest text has waited."""
        return self.now - (self.waiting_since or self.now)

    def _stands_still(self, seen: datetime | None) -> bool:
        return seen is None or self.now - seen > SILENT_AFTER


def pulse(house: House, now: datetime) -> Pulse:
    """How the service stands now."""
    with house.store.look() as work:
        return Pulse(
            now=now,
            ticking=work.running.pulse(TICKING),
            sending=work.running.pulse(SENDING),
            waiting_since=work.running.waiting_since(now),
            line=work.running.line(),
            room=has_room(house),
        )


def has_room(house: House) -> bool:
    """Whether the database can keep more: its disk is not all but full, where that is to be
    seen, and the last write of this process did not fail for it."""
    folder = house.store.folder
    low = folder is not None and disk_usage(folder).free < LEAST_FREE
    return not low and not house.store.lacks_room


class RoomTried:
    """Writes something small now and then, so that a disk which takes nothing shows before a
    text is refused; and that it takes again, afterwards."""

    def __init__(self, house: House) -> None:
        self._house, self._beat = house, Beat(house, ROOM)

    def __call__(self, now: datetime) -> None:
        """Tries it, unless that was done just now or the last write failed within that time."""
        try:
            if self._beat(now):
                self._house.store.lacks_room = False
        except NoRoomError:
            return


class Beat:
    """Notes that a part is alive, now and then."""

    def __init__(self, house: House, part: str) -> None:
        self._house, self._part = house, part
        self._last: datetime | None = None

    def __call__(self, now: datetime) -> bool:
        """Notes it, unless that was done just now; whether it was noted."""
        if self._last is not None and timedelta(0) <= now - self._last < BEAT_EVERY:
            return False
        with self._house.store.work() as work:
            work.running.beat(self._part, now)
        self._last = now
        return True


def hold_texts(house: House, why: str, now: datetime) -> None:
    """Holds every text back until a person lets them go."""
    with house.store.work() as work:
        work.running.hold(why, now)


def let_texts_go(house: House) -> None:
    """Lets the held texts go."""
    with house.store.work() as work:
        work.running.let_go()
