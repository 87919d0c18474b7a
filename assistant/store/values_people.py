"""What the store hands out on enrolment. Times are aware and in UTC."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

from assistant.agronomy.growth.warmth import Warmth
from assistant.dialogue.values import Kept, Standing
from assistant.people import Farmer

Wish = Mapping[str, Kept]
"""What an office knew of a nursery that cannot be planned yet, by the plan talk's names."""

OPEN, WORKING, DONE = "open", "working", "done"  # how far an office's list has come


@dataclass(frozen=True)
class Enrolment:
    """A farmer whom somebody else put on the roll; no officer means the command line.

    `way` is "list", "page" or "text"; `answer` "yes", "no", "stop", "unsure" (may not want to
    be asked), or None where there is none yet.
    """

    farmer_id: int
    officer_id: int | None
    way: str
    at: datetime
    asked: int
    asked_at: datetime
    answer: str | None = None
    answered_at: datetime | None = None
    wishes: tuple[Wish, ...] = ()


@dataclass(frozen=True)
class RollFarmer:
    """A farmer of the roll as a list is held against them: with the enrolment, if there is
    one."""

    farmer: Farmer
    enrolment: Enrolment | None

    @property
    def refused(self) -> bool:
        """Whether they said no, or what may be one: they are not asked again."""
        return self.enrolment is not None and self.enrolment.answer in ("no", "unsure")


@dataclass(frozen=True)
class OfficeList:
    """A file of farmers that an office sent in, and how far its import has come."""

    id: int
    officer_id: int
    name: str
    content: bytes | None
    choices: Mapping[str, Any]
    state: str
    counts: Mapping[str, Any]
    rejects: bytes | None
    made_at: datetime
    changed_at: datetime


@dataclass(frozen=True)
class PastPhone:
    """A number that a farmer had until a time."""

    farmer_id: int
    phone: str
    until: datetime


@dataclass(frozen=True)
class NewFarmer:
    """A farmer to be kept together with many others."""

    phone: str
    name: str | None
    village_id: int
    language: str
    wishes: tuple[Wish, ...] = field(default=())


@dataclass(frozen=True)
class Talk:
    """A half-finished talk as it is kept, and when it last changed."""

    session: object
    changed_at: datetime


@dataclass(frozen=True)
class AtHand:
    """What every text of a phone needs to know.

    `warning` is the latest that stands for the farmer's village, one that this phone was asked
    about before others, with its answer;
    `warned`: this phone was asked about it. `dangers` are those that warnings stand of there.
    `warmth` is the latest mean temperature there.
    `told_first` is the name and number of the officer whom an alarm would reach first.
    `unread` counts the replies that could not be read since the last that could.
    """

    farmer: Farmer | None
    talk: Talk | None
    warning: Standing | None
    warned: bool
    dangers: frozenset[str]
    warmth: Warmth | None
    told_first: tuple[str, str] | None
    unread: int
    was_asked_if_hurt: bool
    has_seasons: bool
