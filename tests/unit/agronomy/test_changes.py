"""What happened changes a nursery in one place, whoever says so."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.changes import _CHANGES, _DELAY, _DOING, after
from assistant.agronomy.life.events import (
    EVENTS,
    Assumed,
    By,
    Counted,
    Done,
    PutOff,
    SeedTestBegun,
    SeedTested,
)
from assistant.agronomy.life.rows import Delay, Doing
from assistant.agronomy.nursery import Nursery

SOW = date(2026, 6, 20)
DAY = timedelta(days=1)


def nursery() -> Nursery:
    """A mat bed of an invented farmer, planned and not sown."""
    inputs = FieldInputs(2000.0, 0.8)
    return Nursery(1, 1, "A", None, inputs, "2000 m2", False, SOW, SOW - 20 * DAY)


def done(task: TaskCode, on: date, by: By = By.FARMER) -> Done:
    return Done(on=on, by=by, task=task)


def test_every_kind_of_event_and_change_has_its_place() -> None:
    """No kind falls through to a default."""
    assert set(_CHANGES) == set(EVENTS.values())
    assert set(_DOING) == set(Doing)
    assert set(_DELAY) == set(Delay)


def test_a_deed_is_the_same_whoever_tells_it() -> None:
    """The officer on the page and the farmer by text move the same days."""
    for task in (TaskCode.SOW, TaskCode.UNCOVER_FLOOD, TaskCode.TRANSPLANT, TaskCode.SOAK):
        on = SOW + 2 * DAY
        assert after(nursery(), done(task, on)) == after(nursery(), done(task, on, By.OFFICER))


def test_a_sowing_told_for_another_day_moves_the_days_and_keeps_nothing_stale() -> None:
    later = after(nursery(), done(TaskCode.SOW, SOW + DAY))
    assert later == replace(nursery(), sow_date=SOW + DAY, sown=True)


def test_a_sowing_that_was_only_taken_so_is_known_once_it_is_told() -> None:
    """What happened since the planned day stands."""
    taken = after(nursery(), Assumed(on=SOW, by=By.CLOCK))
    assert (taken.sown, taken.sow_assumed) == (True, True)
    uncovered = after(taken, done(TaskCode.UNCOVER_FLOOD, SOW + 5 * DAY))
    known = after(uncovered, done(TaskCode.SOW, SOW))
    assert known == replace(uncovered, sow_assumed=False)


@pytest.mark.parametrize(
    ("task", "was", "until", "sow"),
    [
        (TaskCode.SOW, SOW, SOW + DAY, SOW + DAY),
        (TaskCode.SOAK, SOW - 2 * DAY, SOW + DAY, SOW + 3 * DAY),
        (TaskCode.DRAIN_BED, SOW + 16 * DAY, SOW + 17 * DAY, SOW),
    ],
)
def test_putting_off_moves_what_the_row_says(
    task: TaskCode, was: date, until: date, sow: date
) -> None:
    event = PutOff(on=was, by=By.FARMER, task=task, was=was, until=until)
    assert after(nursery(), event).sow_date == sow


def test_an_uncovering_that_cannot_wait_so_long_stays_where_it_is() -> None:
    """The last day for it comes from the practice."""
    on = SOW + 5 * DAY
    far = PutOff(on=on, by=By.FARMER, task=TaskCode.UNCOVER_FLOOD, was=on, until=SOW + 30 * DAY)
    assert after(nursery(), far) == nursery()


def test_a_count_of_seeds_becomes_the_germination_of_the_plan() -> None:
    begun = after(nursery(), SeedTestBegun(on=SOW - 15 * DAY, by=By.FARMER))
    assert (begun.test_begun, begun.test_counted) == (SOW - 15 * DAY, False)
    counted = after(begun, SeedTested(on=SOW - 8 * DAY, by=By.FARMER, sprouted=83, seeds=100))
    assert (counted.inputs.germination, counted.germination_known) == (0.83, True)
    assert counted.test_counted


def test_a_count_of_leaves_is_kept_and_moves_no_sowing() -> None:
    event = Counted(on=SOW + 12 * DAY, by=By.FARMER, leaves=2.5)
    assert after(nursery(), event).sow_date == SOW
