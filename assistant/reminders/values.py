"""A reminder: one task of one nursery on one day, as a row to plan, move or withdraw."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from assistant.agronomy.calendar import TaskCode


class State(StrEnum):
    """Where a reminder stands. All but PLANNED and SENT are final for its day."""

    PLANNED = "planned"
    SENT = "sent"  # asked of the farmer, no answer yet
    DONE = "done"
    NOT_YET = "not_yet"
    UNANSWERED = "unanswered"  # asked (twice where that is the rule) and its time is over
    TOO_LATE = "too_late"  # its text never reached the phone in time
    WITHDRAWN = "withdrawn"  # the plan moved, the nursery closed, or the farmer stopped


@dataclass(frozen=True)
class Reminder:
    """One row, unique by (nursery, task, day). Times are UTC; `day` is the village's date.

    `asked` counts the texts that asked for it; `message_id` is the last of them. `answer` is
    what the farmer said of it, a short word: done, not_yet, green, yellow, or a count.
    """

    nursery_id: int
    task: TaskCode
    day: date
    due_at: datetime
    not_after: datetime
    state: State = State.PLANNED
    asked: int = 0
    message_id: str | None = None
    answer: str | None = None
    answered_at: datetime | None = None
    id: int = 0
