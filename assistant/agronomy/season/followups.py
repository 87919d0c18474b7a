"""Tasks that follow on what happened: the count of a seed test, gap filling, the result.

They are no part of a plan's calendar, since nobody knows at a desk whether and when they come.
"""

import datetime as dt
from typing import NamedTuple

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w
from assistant.agronomy.calendar import Task, TaskCode, day_after

# Asked the day after the gaps are filled, and once more; then the nursery closes by itself.
RESULT_AFTER_D = int(c.GAP_FILL_LAST_D.value) + 1
RESULT_AGAIN_D = RESULT_AFTER_D + 3


# Common practice, no source: often enough to be there when other seed is, no more texts than a
# phone bears. Later the officer, who was told, knows.
HELD_ASKED_EVERY_D = 3
HELD_ASKED_UNTIL_D = 5

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


def held_asking(sow: dt.date) -> Task:
    """The asking for other seed while a plan is held: from the day its material would have been
    collected until some days after the planned sowing, every few days."""
    first = day_after(sow, c.COLLECT_DAY.value)
    last = day_after(sow, HELD_ASKED_UNTIL_D)
    day = int(c.COLLECT_DAY.value)
    return Task(TaskCode.SEED_HELD, day, first, last, HELD_ASKED_EVERY_D)


def morning_after(sow: dt.date, flooded_on: dt.date) -> Task:
    """The asking what stands of a bed, on the day after a flood or storm."""
    on = day_after(flooded_on, 1)
    return Task(TaskCode.AFTER_FLOOD, (on - sow).days, on)


def part_watered(sow: dt.date, part: dt.date) -> tuple[Task, ...]:
    """The watering of a part of a bed that is sown, on the days until the rest is."""
    first, last = day_after(part, 1), day_after(sow, -1)
    return (Task(TaskCode.WATER, (first - sow).days, first, last),) if first <= last else ()


class AddedSeed(NamedTuple):
    """Seed added to a thin bed: its sowing, and the days from it to uncovering and planting."""

    sown: dt.date
    uncover_d: float
    ready_d: float

    @property
    def ready(self) -> dt.date:
        """The first day on which it can be planted."""
        return day_after(self.sown, self.ready_d)


def follow_ups(
    sow: dt.date,
    count_on: dt.date | None,
    transplanted_on: dt.date | None,
    added: AddedSeed | None = None,
) -> tuple[Task, ...]:
    """The tasks that follow on a test begun, on seed that was added, and on a field planted."""
    found: list[tuple[TaskCode, dt.date, dt.date | None]] = []
    if count_on is not None:
        found.append((TaskCode.SEED_COUNT, count_on, None))
    if added is not None:
        found += [
            (TaskCode.MORE_SOW, added.sown, None),
            (TaskCode.MORE_UNCOVER, day_after(added.sown, added.uncover_d), None),
            (TaskCode.MORE_READY, added.ready, None),
        ]
    if transplanted_on is not None:
        found += _after_planting(
            max(transplanted_on, added.ready) if added else transplanted_on
        )
    return tuple(Task(code, (on - sow).days, on, until) for code, on, until in found)


def _after_planting(planted: dt.date) -> list[tuple[TaskCode, dt.date, dt.date | None]]:
    """Water and snails, gaps, the first feeding and the result, once all is planted that was
    raised."""
    first, last = day_after(planted, RESULT_AFTER_D), day_after(planted, RESULT_AGAIN_D)
    days = {
        TaskCode.YOUNG_FIELD: w.YOUNG_FIELD_D,
        TaskCode.FILL_GAPS: w.GAP_FILL_D,
        TaskCode.FIRST_FEED: w.FIRST_FEED_D,
    }
    told = [(code, day_after(planted, each.value), None) for code, each in days.items()]
    return [*told, (TaskCode.SEASON_RESULT, first, last)]
