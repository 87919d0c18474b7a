"""The days of a bed by its warmth."""

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.clock import HEAT_OF_A_DAY, WARM_C, Clock
from assistant.agronomy.life.days import due
from assistant.agronomy.life.events import By, Counted, Done
from assistant.agronomy.nursery import Nursery
from assistant.wiring.practices import open_practices

DAY = timedelta(days=1)
SOW = date(2026, 12, 15)
MADE = SOW - 40 * DAY
PRACTICES = open_practices()


def bed(climate: tuple[float, ...] | None = None, **given: Any) -> Nursery:
    """A mat bed sown in mid-December, where the months are as warm as given."""
    inputs = FieldInputs(4000.0, 0.85)
    plain = Nursery(1, 1, "A", None, inputs, "0.4 ha", True, SOW, MADE, climate=climate)
    return replace(plain, **given)


def even(mean_c: float) -> tuple[float, ...]:
    """Twelve months of one mean [C]."""
    return (mean_c,) * 12


def window(nursery: Nursery) -> tuple[int, int]:
    """The first and last good day of planting, from sowing."""
    days = nursery.paced.window
    return int(days.first.value), int(days.last.value)


def counted(nursery: Nursery, leaves: float, day: int) -> Nursery:
    return after(nursery, Counted(on=nursery.sow_date + day * DAY, by=By.FARMER, leaves=leaves))


def test_a_day_of_the_practice_stands_for_the_warmth_of_three_leaves_in_fifteen_days() -> None:
    """83 x 3 / 15 = 16.6 degree-days above 9 C; four leaves in 20 days ask for the same."""
    assert pytest.approx(16.6) == HEAT_OF_A_DAY
    assert pytest.approx(83 * 4 / 20) == HEAT_OF_A_DAY
    assert pytest.approx(25.6) == WARM_C


def test_without_figures_the_days_of_the_practice_stand() -> None:
    assert bed().paced is bed().practice


@given(st.floats(25.7, 40))
def test_warm_months_change_nothing(mean_c: float) -> None:
    """Never sooner than the practice has it."""
    assert window(bed(even(mean_c))) == (15, 20)


@pytest.mark.parametrize(
    ("mean_c", "first", "last"), [(15, 42, 56), (16, 36, 48), (20, 23, 31)]
)
def test_cool_months_make_it_later(mean_c: float, first: int, last: int) -> None:
    """By hand: 249 and 332 degree-days at 6, 7 and 11 a day, counted up to whole days."""
    assert window(bed(even(mean_c))) == (first, last)


def test_all_days_of_the_bed_follow() -> None:
    """At 16 C, 7 degree-days: day 5 is 83 / 7 = 11.9, day 12 is 199.2 / 7 = 28.5; the bed is
    drained and the field made ready for the day that is planted, later too."""
    days = {task.code: task.day for task in bed(even(16)).tasks}
    assert days[TaskCode.UNCOVER_FLOOD] == 12
    assert days[TaskCode.LEAF_COUNT] == 29
    planting = bed(even(16)).day(bed(even(16)).anchors.transplant_date)
    assert 36 <= planting <= 48
    assert days[TaskCode.DRAIN_BED] == planting - 2
    assert days[TaskCode.FIELD_PLOUGH] == planting - 21
    assert days[TaskCode.OVERDUE] == 49


def test_what_comes_before_soaking_moves_with_it() -> None:
    """Seed is collected before it is soaked, and its test is counted before, however long
    cool water asks for: at 16 C 100 / 16 days, 7, and 2 moist."""
    tasks = {task.code: task.date for task in bed(even(16)).tasks}
    assert tasks[TaskCode.SOAK] == SOW - 9 * DAY
    assert tasks[TaskCode.COLLECT] < tasks[TaskCode.MIX] < tasks[TaskCode.SOAK]
    assert tasks[TaskCode.SEED_TEST] + 7 * DAY <= tasks[TaskCode.SOAK]


def test_a_figure_of_late_corrects_the_month() -> None:
    """Ten days around it, and no longer."""
    clock = Clock(SOW, even(25.6), 15.0, SOW + 5 * DAY)
    assert [clock.mean_c(SOW + d * DAY) for d in (0, 15, 16)] == [15.0, 15.0, 25.6]
    assert clock.stretched(15) > 15


def test_two_leaves_in_the_cold_are_never_called_old() -> None:
    """Day 21 at 15 C: 83 / 6 = 13.8 days to the third leaf; the window is still ahead."""
    young = counted(bed(even(15), sown=True), 1.5, 21)
    for day in range(15, 35):
        codes = due(young, SOW + day * DAY)
        assert TaskCode.OVERDUE not in codes and TaskCode.TRANSPLANT not in codes
        assert TaskCode.DRAIN_BED not in codes


def test_a_count_moves_the_one_window_there_is() -> None:
    """2.5 leaves on day 30 at 15 C: none more to 3, one to 4, which takes 83 / 6 days."""
    before = bed(even(15), sown=True)
    moved = counted(before, 2.5, 30)
    assert window(before) == (42, 56)
    assert window(moved) == (30, 44)
    transplant = [task for task in moved.tasks if task.code is TaskCode.TRANSPLANT]
    assert [(task.day, (task.until or SOW) - SOW) for task in transplant] == [(30, 44 * DAY)]


def test_a_count_alone_moves_no_bed_past_what_it_bears() -> None:
    """A pace says little; day 45 stays the last one for a mat."""
    slow = counted(bed(sown=True), 1.0, 30)
    assert slow.day(slow.latest) == 45
    assert window(slow)[1] <= 45


def test_a_chosen_day_that_no_longer_fits_goes() -> None:
    chosen = bed(sown=True).transplanting_on(SOW + 16 * DAY)
    cold = chosen.warmed(even(15), None, None)
    assert cold.transplant_date is None


@given(st.floats(9, 40), st.floats(0, 8), st.integers(1, 60), st.sampled_from(list(PRACTICES)))
def test_every_warmth_and_count_makes_a_nursery(
    mean_c: float, leaves: float, day: int, code: str
) -> None:
    """And its days stand in their order: one window, drained before it is planted."""
    plain = bed(even(mean_c), practice=PRACTICES[code], sown=True)
    nursery = counted(plain, leaves, day)
    days = nursery.paced.window
    assert days.first.value <= days.assumed.value <= days.last.value <= days.latest.value
    assert nursery.anchors.uncover_date < nursery.anchors.drain_date
    assert nursery.anchors.drain_date <= nursery.anchors.transplant_date
    codes = [task.code for task in nursery.tasks]
    assert codes.count(TaskCode.TRANSPLANT) == 1


@pytest.mark.parametrize(("uncovered", "expected"), [(4, 7), (5, 7), (6, 9), (7, 10), (9, 12)])
def test_colour_is_looked_at_three_days_after_a_late_uncovering(
    uncovered: int, expected: int
) -> None:
    """Shoots just uncovered are pale; day 7 at the soonest, and where all goes as planned."""
    on = SOW + uncovered * DAY
    told = Done(on=on, by=By.FARMER, task=TaskCode.UNCOVER_FLOOD)
    days = {task.code: task.day for task in after(bed(sown=True), told).tasks}
    assert days[TaskCode.COLOUR_CHECK] == expected
