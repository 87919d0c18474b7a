"""Shoots by chance, leaves by warmth, delays by trials: how sure each is."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import poisson

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.growth.leaves import (
    LeafAdvice,
    LeafForecast,
    Sureness,
    leaf_advice,
)
from assistant.agronomy.growth.overdue import days_late, loss_when_late, seedlings_when_late
from assistant.agronomy.growth.stand import (
    filling,
    is_sure,
    likely_share,
    needed_shoots,
    stand_share,
)
from assistant.agronomy.life.again import sow_again_day, sown_again
from assistant.agronomy.practices import MAT
from assistant.agronomy.quantities import quantities
from assistant.agronomy.tasks import TaskCode
from assistant.wiring.practices import open_practices
from tests.talk import nursery

PRACTICES = open_practices()
WET = PRACTICES["wet_bed"]
FIELD = quantities(FieldInputs(field_area_m2=4000.0, germination=0.85))


@given(st.integers(0, 2000), st.integers(1, 9))
def test_the_range_of_a_count_holds_what_was_counted(shoots, squares):
    """Its ends lie on both sides of the share itself."""
    likely = likely_share(shoots, squares, FIELD)
    share = stand_share(shoots / squares, FIELD)
    assert 0 <= likely.low <= share + 1e-9 and share - 1e-9 <= likely.high


@pytest.mark.parametrize("shoots", [20, 60, 150])
def test_a_count_at_the_end_of_its_range_would_be_rare(shoots):
    """scipy, Poisson: were the truth at either end, a count so far off comes in some 2.5 % of
    squares (score interval, so near and not exact)."""
    likely = likely_share(shoots, 1, FIELD)
    low, high = (end * needed_shoots(FIELD) for end in likely)
    assert poisson.sf(shoots - 1, low) == pytest.approx(0.025, abs=0.017)
    assert poisson.cdf(shoots, high) == pytest.approx(0.025, abs=0.017)


def test_three_squares_settle_what_one_leaves_open():
    """55 of 62 shoots may be enough or may not; 144 in three squares are not."""
    assert not is_sure(55, 1, FIELD)
    assert is_sure(144, 3, FIELD)
    assert is_sure(0, 1, FIELD) and is_sure(90, 1, FIELD)


def test_a_bed_without_mats_is_filled_by_area():
    """Half of the shoots is half of the bed, and no mats."""
    q = quantities(FieldInputs(4000, 0.85, establishment=0.49), WET)
    more = filling(needed_shoots(q) * 0.4, q)
    assert (more.mats, more.bed_m2) == pytest.approx((0, 80))


@pytest.mark.parametrize("code", PRACTICES)
def test_seed_soaked_today_is_sown_when_the_practice_sows_it(code):
    """Its calendar, counted from that sowing, soaks today."""
    today = date(2026, 6, 10)
    again = sown_again(nursery(practice=PRACTICES[code]), today)
    assert again.sow_date == sow_again_day(today, again)
    tasks = {task.code: task for task in again.tasks}
    assert tasks[TaskCode.SOAK].date == today


def test_a_wet_bed_is_late_when_its_own_window_is_over():
    """Day 24 is four days late on a mat and in time on a wet bed."""
    assert (days_late(24), days_late(24, WET)) == (4, 0)
    assert (seedlings_when_late(2, 24), seedlings_when_late(2, 24, WET)) == (3, 2)
    assert leaf_advice(4, 24) is LeafAdvice.SOON
    assert leaf_advice(4, 24, WET) is LeafAdvice.READY


@given(st.integers(0, 80), st.integers(0, 80))
def test_a_longer_delay_never_costs_less(one, other):
    """And none costs nothing."""
    sooner, later = sorted((one, other))
    low, high = loss_when_late(sooner), loss_when_late(later)
    assert low.low <= high.low and low.high <= high.high
    assert loss_when_late(20) == (0, 0)
    assert 0 <= low.low <= low.high <= 0.47


@pytest.mark.parametrize(
    ("spread", "word"),
    [(0, Sureness.NEAR), (3, Sureness.NEAR), (4, Sureness.ROUGH), (8, Sureness.VAGUE)],
)
def test_a_forecast_says_how_sure_it_is(spread, word):
    """By the days between its earliest and its latest."""
    assert LeafForecast(18, 17, 17 + spread).sure is word


def test_the_mat_of_the_core_is_the_one_that_files_give():
    """So that nothing depends on how a practice came in."""
    assert PRACTICES["mat"] is MAT
