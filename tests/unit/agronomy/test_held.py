"""Seed that must not be sown is prescribed by nothing, whatever the clock does."""

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.days import coming, due
from assistant.agronomy.life.events import By, Done, NewSeed, SeedTestBegun, SeedTested
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.stages import Stage, course_of
from assistant.reminders.diary import diary
from assistant.reminders.plan import Hours, planned

SOW = date(2026, 6, 20)
DAY = timedelta(days=1)
ABOUT_SEED = {TaskCode.SEED_TEST, TaskCode.SEED_COUNT, TaskCode.SEED_HELD}


def weak(**given: Any) -> Nursery:
    """A plan whose seed sprouts to a third, as a count said."""
    inputs = FieldInputs(4000.0, 0.3)
    made = SOW - 20 * DAY
    plain = Nursery(1, 1, "A", None, inputs, "0.4 ha", True, SOW, made, test_counted=True)
    return replace(plain, **given)


def a_count(on: date, sprouted: int) -> SeedTested:
    return SeedTested(on=on, by=By.FARMER, sprouted=sprouted, seeds=100)


@given(st.integers(-20, 60))
def test_no_day_prescribes_anything_of_forbidden_seed(ahead: int) -> None:
    """By text, on the screen, on the wall and in the picture."""
    today = SOW + ahead * DAY
    held = weak()
    assert set(due(held, today)) <= ABOUT_SEED
    following = coming(held, today)
    assert following is None or following.code in ABOUT_SEED
    assert {entry.task.code for entry in diary(held, today)} <= ABOUT_SEED
    told = planned(held, "Africa/Nairobi", Hours(), today)
    assert {each.task for each in told} <= ABOUT_SEED
    assert course_of(held).at(ahead) is Stage.PLANNED


def test_other_seed_is_asked_for_some_days_and_then_the_officer_knows() -> None:
    """From the day of collecting until after that of sowing: no text for ever."""
    days = [r.day for r in planned(weak(), "Africa/Nairobi", Hours(), date.min)]
    assert days == sorted(days) and len(days) < 9
    assert max(days) <= SOW + 7 * DAY


def test_a_test_that_runs_is_waited_for() -> None:
    """Nothing is asked that was answered."""
    running = after(weak(), SeedTestBegun(on=SOW - 9 * DAY, by=By.FARMER))
    told = planned(running, "Africa/Nairobi", Hours(), SOW - 9 * DAY)
    assert [(each.task, each.day) for each in told] == [(TaskCode.SEED_COUNT, SOW - 2 * DAY)]


def test_good_seed_in_time_keeps_the_planned_days() -> None:
    """It can still be soaked on the planned day."""
    lifted = after(weak(), a_count(SOW - 2 * DAY, 85))
    assert not lifted.held
    assert lifted.sow_date == SOW


def test_good_seed_that_comes_late_moves_the_days_a_week_ahead() -> None:
    """As long as any plan has from collecting to sowing, so that nothing is left out."""
    lifted = after(weak(), a_count(SOW + 3 * DAY, 85))
    assert lifted.sow_date == SOW + 10 * DAY
    assert TaskCode.COLLECT in due(lifted, SOW + 3 * DAY)


def test_new_seed_counts_as_any_that_nobody_tested() -> None:
    fresh = after(weak(), NewSeed(on=SOW - 5 * DAY, by=By.FARMER))
    assert not fresh.held
    assert (fresh.inputs.germination, fresh.germination_known) == (0.80, False)
    assert (fresh.test_begun, fresh.test_counted) == (None, False)


def test_another_weak_count_holds_on() -> None:
    assert after(weak(), a_count(SOW, 40)).held


def test_what_is_sown_against_the_word_goes_on() -> None:
    """A bed that is there needs its water, whatever was said of its seed."""
    sown = after(weak(), Done(on=SOW, by=By.OFFICER, task=TaskCode.SOW))
    assert not sown.held
    assert TaskCode.WATER in due(sown, SOW + DAY)
