"""A nursery changes by being copied, and keeps only what can be true."""

from datetime import date, timedelta

import pytest

from assistant.agronomy.calendar import DayChoice, TaskCode
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery

SOW = date(2026, 6, 10)
PLAIN = Nursery(
    id=1,
    farmer_id=1,
    label="A",
    name=None,
    inputs=FieldInputs(4000, 0.85),
    area_typed="1 acre",
    germination_known=True,
    sow_date=SOW,
    made_on=date(2026, 5, 20),
)


def _day(number: int) -> date:
    return SOW + timedelta(days=number)


def _dates(nursery: Nursery) -> dict[TaskCode, date]:
    return {task.code: task.date for task in nursery.tasks}


def test_it_knows_its_day_quantities_and_calendar():
    """Its parts follow from its inputs and its sowing day."""
    assert PLAIN.day(_day(-3)) == -3
    assert PLAIN.quantities.mats == 267
    assert _dates(PLAIN)[TaskCode.UNCOVER_FLOOD] == _day(5)


def test_sown_a_day_late_moves_everything():
    """The whole calendar is counted from the day it was really sown."""
    late = PLAIN.sown_on(_day(1))
    assert late.sown and not late.sow_assumed
    assert _dates(late)[TaskCode.UNCOVER_FLOOD] == _day(6)
    assert PLAIN.sow_date == SOW


def test_a_chosen_day_survives_a_small_move_of_the_sowing():
    """A transplanting day that is still possible stays; one that is not goes."""
    chosen = PLAIN.transplanting_on(_day(17))
    assert chosen.sown_on(_day(2)).transplant_date == _day(17)
    assert chosen.sown_on(_day(12)).transplant_date is None


def test_sowing_again_forgets_the_uncovering():
    """A bed sown anew is covered anew."""
    open_bed = PLAIN.uncovering_on(_day(6), uncovered=True)
    again = open_bed.sown_on(_day(9))
    assert (again.uncovered, again.uncover_date) == (False, None)


def test_it_says_which_uncovering_days_can_be():
    """Day 1 to 14 can be, and only before the bed is drained."""
    assert [PLAIN.may_uncover_on(_day(n)) for n in (0, 1, 14, 15)] == [False, True, True, False]
    early = PLAIN.transplanting_on(_day(10))
    assert [early.may_uncover_on(_day(n)) for n in (7, 8)] == [True, False]


def test_it_judges_a_transplanting_day_with_its_own_uncovering():
    """A bed uncovered on day 9 cannot be transplanted on day 11, though others can."""
    slow = PLAIN.uncovering_on(_day(9), uncovered=True)
    assert PLAIN.judge_transplanting(_day(11)) is DayChoice.EARLY
    assert slow.judge_transplanting(_day(11)) is DayChoice.IMPOSSIBLE
    assert slow.judge_transplanting(_day(16)) is DayChoice.GOOD


def test_an_impossible_date_makes_no_nursery():
    """What the judgement calls impossible is refused."""
    with pytest.raises(AgronomyError):
        PLAIN.transplanting_on(_day(60))
    with pytest.raises(AgronomyError):
        PLAIN.uncovering_on(_day(20), uncovered=False)
