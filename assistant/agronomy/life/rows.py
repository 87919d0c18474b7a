"""The table of tasks: one row a task, all that is true of it wherever it turns up.

When a task of the bed falls stands with its practice; everything else stands here: how it is
said, what may be answered, what becomes of it unanswered, under rain or late, and what doing it
or putting it off changes. The wiring opens the file beside this module and fills `TASKS`, once;
to ask the table before that, or for a task without a row, is an error and never a default.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.tasks import TaskCode


class Origin(StrEnum):
    """What puts a task into a calendar."""

    BED = "bed"  # a practice's own rows
    MAKING = "making"  # the ground and the pieces of a bed of mats or trays
    WINDOW = "window"  # the days of transplanting
    FIELD = "field"  # the main field, back from transplanting
    EVENT = "event"  # something that happened


class Said(StrEnum):
    """On which of its days a task is said."""

    ONCE = "once"
    DAILY = "daily"  # or every so many days, by the practice
    BOTH_ENDS = "both_ends"  # on its first day and its last
    WINDOW = "window"  # when the window opens, then from the planting day on
    OVERDUE = "overdue"  # a few times after the window
    TWICE = "twice"  # on two mornings; due until it is answered


class Ask(StrEnum):
    """What a farmer may answer to a task."""

    NOTHING = "nothing"
    DONE = "done"
    COLOUR = "colour"
    LEAVES = "leaves"
    TEST = "test"
    SEED = "seed"
    COUNT = "count"
    RESULT = "result"
    FLOOD = "flood"  # what stands of the bed


class Fact(StrEnum):
    """What has happened to a nursery, as far as it ends the sense of a task."""

    TEST_BEGUN = "test_begun"
    TEST_COUNTED = "test_counted"
    TEST_RUNS = "test_runs"
    PART_SOWN = "part_sown"
    SOWN = "sown"
    UNCOVERED = "uncovered"
    PLANTED = "planted"
    SEEN = "seen"  # somebody has told what stands of it since the last flood


class Doing(StrEnum):
    """What doing a task changes."""

    NOTHING = "nothing"
    SOAKS = "soaks"  # on another day than planned: the bed is sown as many days apart
    SOWS = "sows"
    UNCOVERS = "uncovers"
    PLANTS = "plants"


class Delay(StrEnum):
    """What putting a task off changes."""

    NOTHING = "nothing"
    SOWING = "sowing"  # the bed is sown a day later
    SOAKING = "soaking"  # sown later by as many days as the soaking is
    ADDED = "added"  # the seed that was added is sown a day later
    UNCOVERING = "uncovering"
    PLANTING = "planting"  # the chosen day moves, and draining with it


@dataclass(frozen=True)
class TaskRow:
    """One task.

    Args:
        code: which it is
        origin: what puts it into a calendar
        said: on which of its days it is said
        asks: what may be answered to it
        always: every practice has it, since texts and talks lean on its day
        is_work: it stands in a diary; else it only says another task again
        while_held: it is said of a plan that is held since its seed must not be sown
        while_in_doubt: it is said of a bed that may be gone; work on the bed itself is not
        ends_with: after any of these it has lost its sense
        deeds: what a farmer who has done it may say was done ("sow"); others answer another
            question; none: any deed does
        catches_up: worth saying some days late; else over with its day
        asked_twice: left unanswered it is asked once more the same day
        again_tomorrow: "not yet" brings it back the next morning
        waits_for_rain: not done while a rain warning stands
        silence_shown: an officer is shown that nobody answered
        replaced_by: once that is asked, this need not be answered any more
        said_by: one of these, due on the same day, says it too
        doing, delay: what doing it and putting it off changes
        cautions: the codes of the hazards it brings
    """

    code: TaskCode
    origin: Origin
    said: Said = Said.ONCE
    asks: Ask = Ask.NOTHING
    always: bool = False
    is_work: bool = True
    while_held: bool = False
    while_in_doubt: bool = False
    ends_with: frozenset[Fact] = frozenset()
    deeds: frozenset[str] = frozenset()
    catches_up: bool = False
    asked_twice: bool = False
    again_tomorrow: bool = False
    waits_for_rain: bool = False
    silence_shown: bool = False
    replaced_by: TaskCode | None = None
    said_by: frozenset[TaskCode] = frozenset()
    doing: Doing = Doing.NOTHING
    delay: Delay = Delay.NOTHING
    cautions: tuple[str, ...] = ()

    @property
    def is_asked(self) -> bool:
        """Whether anything may be answered to it."""
        return self.asks is not Ask.NOTHING


class TaskTable:
    """The rows by task. A program fills it once, when it starts."""

    def __init__(self) -> None:
        self._rows: dict[TaskCode, TaskRow] = {}

    def fill(self, rows: Iterable[TaskRow]) -> None:
        """Takes the rows of the file.

        Raises:
            AgronomyError: a task without a row or with two, or other rows than were taken
                before.
        """
        given = tuple(rows)
        found = {row.code: row for row in given}
        missing = [code for code in TaskCode if code not in found]
        if missing or len(found) < len(given):
            raise AgronomyError(
                f"tasks: expected one row a task, got {len(given)}; missing: "
                f"{', '.join(missing) or 'none'}"
            )
        if self._rows and self._rows != found:
            raise AgronomyError("tasks: the table is filled; a program has one for all its run")
        self._rows = found

    def __getitem__(self, code: TaskCode) -> TaskRow:
        """The row of a task.

        Raises:
            AgronomyError: the table was not filled.
        """
        try:
            return self._rows[code]
        except KeyError:
            raise AgronomyError(
                "tasks: the table is empty; call assistant.wiring.tasks.open_tasks() first"
            ) from None

    def codes(self, wanted: Callable[[TaskRow], bool]) -> frozenset[TaskCode]:
        """The tasks whose row is wanted."""
        return frozenset(code for code in TaskCode if wanted(self[code]))


TASKS = TaskTable()


@cache  # a program has one table for all its run
def asked_tasks() -> frozenset[TaskCode]:
    """The tasks to which something may be answered."""
    return TASKS.codes(lambda row: row.is_asked)


def tasks_of(origin: Origin) -> frozenset[TaskCode]:
    """The tasks that come from somewhere."""
    return TASKS.codes(lambda row: row.origin is origin)
