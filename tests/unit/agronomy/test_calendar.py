"""The days of one nursery: forward, backward, and re-anchored by what happened."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.agronomy.calendar import (
    Anchors,
    DayChoice,
    TaskCode,
    calendar,
    judge_transplant,
    sow_for_transplant,
)
from assistant.agronomy.errors import AgronomyError

SOW = date(2026, 6, 10)

# (first day, last day) from sowing, as the growers' calendar is taught; field tasks for day 18.
DAYS = {
    TaskCode.SEED_TEST: (-15, None),
    TaskCode.COLLECT: (-7, None),
    TaskCode.MIX: (-3, None),
    TaskCode.SOAK: (-2, None),
    TaskCode.DRAIN_SEED: (-1, None),
    TaskCode.SOW: (0, None),
    TaskCode.WATER: (0, 4),
    TaskCode.RAIN_WATCH: (0, 5),
    TaskCode.UNCOVER_FLOOD: (5, None),
    TaskCode.KEEP_WATER: (6, 15),
    TaskCode.COLOUR_CHECK: (7, None),
    TaskCode.LEAF_COUNT: (12, None),
    TaskCode.CHOOSE_DAY: (12, None),
    TaskCode.DRAIN_BED: (16, None),
    TaskCode.TRANSPLANT: (15, 20),
    TaskCode.OVERDUE: (21, None),
    TaskCode.FIELD_FLOOD: (-5, -4),
    TaskCode.FIELD_PLOUGH: (-3, None),
    TaskCode.FIELD_PUDDLE: (4, 11),
    TaskCode.FIELD_LEVEL: (16, 17),
}


def _days(anchors: Anchors) -> dict[TaskCode, tuple[int, int | None]]:
    return {
        task.code: (task.day, None if task.until is None else anchors.day_of(task.until))
        for task in calendar(anchors)
    }


def _day(number: int) -> date:
    return SOW + timedelta(days=number)


@st.composite
def anchored(draw):
    """Any nursery whose dates can belong together."""
    sow = draw(st.dates(date(1, 3, 1), date(9999, 10, 1)))
    uncover = draw(st.none() | st.integers(1, 14))
    drain_after = 5 if uncover is None else uncover
    transplant = draw(st.none() | st.integers(max(8, drain_after + 3), 45))
    moved = [
        None if day is None else sow + timedelta(days=day) for day in (uncover, transplant)
    ]
    return Anchors(sow, moved[0], moved[1])


def test_the_calendar_of_a_plain_plan():
    """Each task stands on its day from sowing."""
    assert _days(Anchors(SOW)) == DAYS


@given(anchored())
def test_dates_and_days_say_the_same(anchors):
    """Date is sowing plus day, no task ends before it begins, and dates never run backward."""
    tasks = calendar(anchors)
    for task in tasks:
        assert task.date == anchors.sow + timedelta(days=task.day)
        assert task.until is None or task.until >= task.date
    assert [task.date for task in tasks] == sorted(task.date for task in tasks)


@given(anchored())
def test_the_bed_is_wet_from_uncovering_until_draining(anchors):
    """Watering ends the day before uncovering; water stands until the day before draining."""
    days = _days(anchors)
    uncover, drain = days[TaskCode.UNCOVER_FLOOD][0], days[TaskCode.DRAIN_BED][0]
    assert days[TaskCode.WATER] == (0, uncover - 1)
    if drain - uncover > 1:
        assert days[TaskCode.KEEP_WATER] == (uncover + 1, drain - 1)
    else:
        assert TaskCode.KEEP_WATER not in days


@given(anchored())
def test_transplanting_day_lies_in_its_window(anchors):
    """The window is days 15 to 20, stretched to hold a day chosen outside it."""
    first, last = _days(anchors)[TaskCode.TRANSPLANT]
    chosen = anchors.day_of(anchors.transplant_date)
    assert (first, last) == (min(15, chosen), max(20, chosen))


@given(st.dates(date(1, 3, 1), date(9999, 10, 1)))
def test_backward_from_a_wished_day_comes_home(sow):
    """The sowing day for a wished transplanting day is 18 days before it."""
    wished = Anchors(sow).transplant_date
    assert sow_for_transplant(wished) == sow
    assert (wished - sow).days == 18


def test_a_chosen_day_moves_the_draining_and_the_field():
    """Transplanting on day 20 drains on 18, levels on 18-19 and ploughs on -1."""
    days = _days(Anchors(SOW, transplant=_day(20)))
    moved = {
        TaskCode.KEEP_WATER: (6, 17),
        TaskCode.DRAIN_BED: (18, None),
        TaskCode.FIELD_FLOOD: (-3, -2),
        TaskCode.FIELD_PLOUGH: (-1, None),
        TaskCode.FIELD_PUDDLE: (6, 13),
        TaskCode.FIELD_LEVEL: (18, 19),
    }
    assert days == {**DAYS, **moved}


def test_seed_that_is_slow_moves_only_the_water():
    """Uncovering on day 7 means watering until 6 and standing water from 8; shoots
    that were just uncovered are pale for three days."""
    days = _days(Anchors(SOW, uncover=_day(7)))
    moved = {
        TaskCode.WATER: (0, 6),
        TaskCode.UNCOVER_FLOOD: (7, None),
        TaskCode.KEEP_WATER: (8, 15),
        TaskCode.COLOUR_CHECK: (10, None),
    }
    assert days == {**DAYS, **moved}


def test_overdue_follows_the_age_of_the_leaves():
    """A late chosen day stretches the window, not the honest word on day 21."""
    days = _days(Anchors(SOW, transplant=_day(24)))
    assert days[TaskCode.TRANSPLANT] == (15, 24)
    assert days[TaskCode.OVERDUE] == (21, None)


def test_leap_day_is_a_day():
    """28 February 2028 plus two days is 1 March."""
    tasks = {task.code: task.date for task in calendar(Anchors(date(2028, 2, 24)))}
    assert tasks[TaskCode.UNCOVER_FLOOD] == date(2028, 2, 29)


@pytest.mark.parametrize(
    ("day", "choice"),
    [
        (7, DayChoice.IMPOSSIBLE),
        (8, DayChoice.EARLY),
        (14, DayChoice.EARLY),
        (15, DayChoice.GOOD),
        (20, DayChoice.GOOD),
        (21, DayChoice.LATE),
        (45, DayChoice.LATE),
        (46, DayChoice.IMPOSSIBLE),
    ],
)
def test_a_wished_day_is_judged_by_the_age_it_gives(day, choice):
    """15 to 20 is good; earlier and later are said so; far outside is asked back."""
    assert judge_transplant(SOW, _day(day)) is choice


@pytest.mark.parametrize(
    "moved",
    [
        {"uncover": _day(0)},
        {"uncover": _day(15)},
        {"transplant": _day(7)},
        {"transplant": _day(46)},
        {"uncover": _day(9), "transplant": _day(11)},
    ],
)
def test_dates_that_cannot_belong_together_are_refused(moved):
    """No bed is uncovered before it is sown or after it is drained."""
    with pytest.raises(AgronomyError):
        Anchors(SOW, **moved)
