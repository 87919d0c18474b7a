"""Tasks that follow on what happened: the count of a seed test, gap filling, the result.

They are no part of a plan's calendar, since nobody knows at a desk whether and when they come.
"""

import datetime as dt

from assistant.agronomy import constants as c
from assistant.agronomy.calendar import Task, TaskCode, day_after

# Asked the day after the gaps are filled, and once more; then the nursery closes by itself.
RESULT_AFTER_D = int(c.GAP_FILL_LAST_D.value) + 1
RESULT_AGAIN_D = RESULT_AFTER_D + 3


# A season that nobody tells the end of is over, four weeks after the seedlings were planted or
# were past planting. Common practice, no source: by then nobody looks back.
NO_RESULT_AFTER_D = 28


def count_day(test_begun: dt.date) -> dt.date:
    """The day on which the seeds of a home test are counted."""
    return day_after(test_begun, c.SEED_TEST_COUNT_D.value)


def retest_sow_day(today: dt.date, soak_day: float = c.SOAK_DAY.value) -> dt.date:
    """The earliest sowing for seed that is bought and put to the test tomorrow.

    A day to buy it, the days of the test, then soaking and sprouting.
    """
    return day_after(count_day(day_after(today, 1)), -soak_day)


def follow_ups(
    sow: dt.date, test_begun: dt.date | None, transplanted_on: dt.date | None
) -> tuple[Task, ...]:
    """The tasks that follow on a test begun and on a field planted."""
    found: list[tuple[TaskCode, dt.date, dt.date | None]] = []
    if test_begun is not None:
        found.append((TaskCode.SEED_COUNT, count_day(test_begun), None))
    if transplanted_on is not None:
        fill = day_after(transplanted_on, c.GAP_FILL_LAST_D.value)
        first = day_after(transplanted_on, RESULT_AFTER_D)
        last = day_after(transplanted_on, RESULT_AGAIN_D)
        found += [(TaskCode.FILL_GAPS, fill, None), (TaskCode.SEASON_RESULT, first, last)]
    return tuple(Task(code, (on - sow).days, on, until) for code, on, until in found)


_AFTER_PLANTING = frozenset({TaskCode.FILL_GAPS, TaskCode.SEASON_RESULT})


def is_over(code: TaskCode, test_counted: bool, transplanted_on: dt.date | None) -> bool:
    """Whether a task has lost its sense: a counted test, the bed of a planted field."""
    if transplanted_on is not None:
        return code not in _AFTER_PLANTING
    return code is TaskCode.SEED_COUNT and test_counted
