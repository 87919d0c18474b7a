"""What the store hands out for the officers' page. Times are aware and in UTC."""

from dataclasses import dataclass
from datetime import date, datetime
from typing import NamedTuple

from assistant.agronomy.life.clock import Clock, Count, Paced
from assistant.agronomy.lot.programme_variety import for_ages
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import Practice
from assistant.agronomy.quantities import is_hopeless
from assistant.agronomy.tasks import TaskCode
from assistant.channel import Channel
from assistant.dialogue.values import Standing
from assistant.people import Farmer
from assistant.store.values import TextState


@dataclass(frozen=True)
class UnderWarning:
    """A bed in a village where a warning stands, with what its phone answered."""

    farmer: Farmer
    nursery: Nursery
    standing: Standing


@dataclass(frozen=True)
class HandedOn:
    """A call that one officer gave to another: their names, the taker's id, and when."""

    by: str
    to: str
    to_id: int
    at: datetime


@dataclass(frozen=True)
class OwnGroup:
    """Farmers whom an officer keeps under a name, and how many they are."""

    id: int
    officer_id: int
    name: str
    count: int


_NOTHING_FELT = (None,) * 5


class WatchedBed(NamedTuple):
    """What a list of nurseries to see tells of one, and no more: there may be thousands."""

    id: int
    label: str
    name: str | None
    practice: Practice
    sow_date: date
    uncovered: bool
    urea_on: date | None
    age_first: int | None
    age_last: int | None
    climate: tuple[float, ...] | None
    felt_c: float | None
    felt_on: date | None
    leaves: float | None
    leaves_on: date | None

    @property
    def called(self) -> str:
        """What it is called in texts (see `Nursery.called`)."""
        return self.name or self.label

    def day(self, on: date) -> int:
        """Days from its sowing to `on`."""
        return (on - self.sow_date).days

    @property
    def pace(self) -> tuple[object, ...]:
        """What its days hang on, counted from its sowing: beds with the same share them."""
        warmth = self.climate, self.felt_c, self.felt_on, self.leaves, self.leaves_on
        sown = None if warmth == _NOTHING_FELT else self.sow_date
        return self.practice.code, self.age_first, self.age_last, sown, *warmth

    @property
    def paced(self) -> Practice:
        """Its practice on the days that it has here (see `Nursery.paced`)."""
        leaves, on = self.leaves, self.leaves_on
        count = None if leaves is None or on is None else Count(leaves, self.day(on))
        raised = for_ages(self.practice, self.age_first, self.age_last)
        clock = Clock(self.sow_date, self.climate, self.felt_c, self.felt_on)
        return Paced(raised, clock, count).now


@dataclass(frozen=True)
class HeardMessage:
    """A message that came in, codes blanked, and the screen that answered it."""

    at: datetime
    text: str
    channel: Channel
    answer: str | None
    failed: bool
    private: bool = False  # without its words


@dataclass(frozen=True)
class Sent:
    """A text that went out or will, and what became of it."""

    at: datetime
    text: str
    state: TextState
    due_at: datetime
    reached_at: datetime | None
    detail: str
    private: bool = False  # without its words


@dataclass(frozen=True)
class VisitMade:
    """An officer has seen a nursery."""

    id: int
    officer_id: int
    nursery_id: int
    visited_on: date
    officer: str
    note: str
    at: datetime


@dataclass(frozen=True)
class OwnWords:
    """What an officer wrote to a farmer, and what became of the text."""

    call_id: int | None
    message_id: str
    officer: str
    words: str
    at: datetime
    state: TextState


@dataclass(frozen=True)
class Written:
    """What an officer wrote, to whom, and the text that carries it."""

    officer_id: int
    farmer_id: int
    farmer: str | None
    phone: str
    message_id: str
    words: str
    at: datetime
    state: TextState
    due_at: datetime
    reached_at: datetime | None
    detail: str
    private: bool


@dataclass(frozen=True)
class PastCall:
    """A call for help, handled or not."""

    id: int
    farmer: Farmer
    nursery_id: int | None
    about: str
    words: str
    at: datetime
    handled_at: datetime | None
    handled_by: str | None


@dataclass(frozen=True)
class VillageHandover:
    """A village passed to another officer."""

    at: datetime
    village: str
    giver: str | None
    taker: str
    by: str
    note: str


@dataclass(frozen=True)
class ListedBed:
    """One open nursery in a list of farmers: only what the list shows."""

    id: int
    farmer_id: int
    label: str
    name: str | None
    sow_date: date

    @property
    def called(self) -> str:
        """What it is called."""
        return self.name or self.label


@dataclass(frozen=True)
class CalendarDay:
    """One task of a village on one day as the last calendar file had it; id 0: in none yet.

    `names` tells one list of nurseries from another and is empty where nobody is left;
    `sequence` counts how often it changed since.
    """

    village_id: int
    task: TaskCode
    day: date
    names: str
    changed_at: datetime
    sequence: int = 0
    id: int = 0


class Stroke(NamedTuple):
    """What tells the stage of a nursery, and no more: thousands are counted at once."""

    id: int
    village_id: int | None
    practice: str
    sow_date: date
    sown: bool
    uncover_date: date | None
    uncovered: bool
    transplant_date: date | None
    transplanted_on: date | None
    test_begun: date | None
    test_counted: bool
    closed: bool
    germination: float
    germination_known: bool
    climate: list[float] | None
    felt_c: float | None
    felt_on: date | None
    leaves: float | None
    leaves_on: date | None

    @property
    def held(self) -> bool:
        """Whether its seed must not be sown (see `Nursery.held`)."""
        hopeless = self.germination_known and is_hopeless(self.germination)
        return hopeless and not self.sown
