"""What the store hands out on alarms. Times are aware and in UTC."""

from dataclasses import dataclass
from datetime import datetime

from assistant.store.values import Call

PRIVATE = "die"
"""What a call is about that only the person who was told first and the leads may see."""


@dataclass(frozen=True)
class Alarm:
    """A cry for help that stands, and how far it has come.

    `village_id` is the writer's when they cried; `sure` is false while they are asked whether
    somebody is hurt, `said` what they answered ("hurt", "nobody"); `next_at` when the next
    person is told; `turn` counts the ways through all persons, from 1.
    """

    call: Call
    village_id: int | None
    sure: bool
    said: str | None
    next_at: datetime | None
    turn: int


@dataclass(frozen=True)
class AlarmTold:
    """An officer who was told of an alarm."""

    call_id: int
    officer_id: int
    officer: str
    turn: int
    message_id: str
    at: datetime


@dataclass(frozen=True)
class AlarmCourse:
    """What a page shows of an alarm beside its call; `told` in the order of telling."""

    call_id: int
    sure: bool
    said: str | None
    next_at: datetime | None
    note: str
    told: tuple[AlarmTold, ...] = ()
