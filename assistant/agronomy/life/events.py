"""What happens to a nursery: frozen values, each with its day and who said so.

The farmer's word, the officer's page and the clock make the same events; `changes.after` says
what one changes. They are kept as rows, and are the story that the nursery's page shows.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from assistant.agronomy.tasks import TaskCode


class By(StrEnum):
    """Who says that it happened."""

    FARMER = "farmer"
    OFFICER = "officer"
    CLOCK = "clock"  # nobody said anything, or a warning stood


class Why(StrEnum):
    """Why a task was put off."""

    UNSAID = "unsaid"
    RAIN = "rain"
    HANDS = "hands"
    WATER = "water"
    FIELD = "field"
    OTHER = "other"


@dataclass(frozen=True, kw_only=True)
class Event:
    """Something that happened on a day, which may lie before the day it was told."""

    on: date
    by: By


@dataclass(frozen=True, kw_only=True)
class Done(Event):
    """A task was done; what that changes stands in its row."""

    task: TaskCode


@dataclass(frozen=True, kw_only=True)
class PartDone(Event):
    """A part of a task was done, and the rest waits: half of a bed is sown."""

    task: TaskCode


@dataclass(frozen=True, kw_only=True)
class Assumed(Event):
    """Nobody said whether the seed is sown; the planned day was taken."""


@dataclass(frozen=True, kw_only=True)
class PutOff(Event):
    """A task that was due on a day (`was`) is to be done on another; what that moves stands in
    its row."""

    task: TaskCode
    was: date
    until: date
    why: Why = Why.UNSAID


@dataclass(frozen=True, kw_only=True)
class SeedTestBegun(Event):
    """A home test of the seed was laid out."""


@dataclass(frozen=True, kw_only=True)
class SeedTested(Event):
    """Seeds were counted: so many sprouted of so many."""

    sprouted: int
    seeds: int


@dataclass(frozen=True, kw_only=True)
class NewSeed(Event):
    """Other seed is there in place of the old: nobody has tested it."""


@dataclass(frozen=True, kw_only=True)
class Counted(Event):
    """Open leaves were counted."""

    leaves: float


@dataclass(frozen=True, kw_only=True)
class Looked(Event):
    """The leaves were looked at: green or yellow."""

    colour: str


@dataclass(frozen=True, kw_only=True)
class Flooded(Event):
    """Water or a storm went over the bed, as its farmer told."""


@dataclass(frozen=True, kw_only=True)
class Found(Event):
    """What stands of a bed after a flood: `state` is "stands", "part" or "gone"."""

    state: str


@dataclass(frozen=True, kw_only=True)
class Lost(Event):
    """So many mats are gone or spoiled, and by what: a code of the talk of trouble."""

    mats: int
    cause: str


@dataclass(frozen=True, kw_only=True)
class SowAgain(Event):
    """A bed that failed, by a cause, is to be sown again; with `other` seed or the same, which
    is `checked` for some days first. `sown`: that was done on the day."""

    cause: str
    other: bool = False
    checked: bool = False
    sown: bool = False


EVENTS: Mapping[str, type[Event]] = {
    "done": Done,
    "part_done": PartDone,
    "assumed": Assumed,
    "put_off": PutOff,
    "test_begun": SeedTestBegun,
    "tested": SeedTested,
    "new_seed": NewSeed,
    "counted": Counted,
    "looked": Looked,
    "flooded": Flooded,
    "found": Found,
    "lost": Lost,
    "sow_again": SowAgain,
}
KINDS: Mapping[type[Event], str] = {kind: name for name, kind in EVENTS.items()}
