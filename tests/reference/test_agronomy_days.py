"""Calendar and leaves against published timelines; the source stands beside each."""

from datetime import date, timedelta

import pytest

from assistant.agronomy import constants as c
from assistant.agronomy.calendar import Anchors, TaskCode, calendar, sow_for_transplant
from assistant.agronomy.growth.leaf_pace import forecast_by_warmth
from assistant.agronomy.growth.leaves import days_per_leaf, leaves_on
from assistant.agronomy.growth.warmth import is_mean_c
from tests.reference.sourced import ARITHMETIC, INDEPENDENT, RANGE, source

PLANTING = date(2025, 7, 1)
TASKS = {task.code: task for task in calendar(Anchors(sow_for_transplant(PLANTING)))}


@source("PhilRice-FOM-2007")
@pytest.mark.parametrize(
    ("task", "first", "last"),
    [
        # PhilRice, Field Operations Manual, 2007: plough 21 days before, harrow a week later
        # and again a week later, level 1-2 days before; soaked 1-2 days before ploughing.
        (TaskCode.FIELD_FLOOD, date(2025, 6, 8), date(2025, 6, 9)),
        (TaskCode.FIELD_PLOUGH, date(2025, 6, 10), None),
        (TaskCode.FIELD_PUDDLE, date(2025, 6, 17), date(2025, 6, 24)),
        (TaskCode.FIELD_LEVEL, date(2025, 6, 29), date(2025, 6, 30)),
    ],
)
def test_the_field_is_prepared_as_the_manual_counts_back(task, first, last):
    """Transplanting on 1 July 2025."""
    assert (TASKS[task].date, TASKS[task].until) == (first, last)


@source("ICAR-transplanting", "PhilRice-landprep", kind=RANGE)
def test_ploughing_stays_between_published_schedules():
    """10-15 days (ICAR, transplanting 5) to 3-4 weeks before (PhilRice, land preparation)."""
    before = (PLANTING - TASKS[TaskCode.FIELD_PLOUGH].date).days
    assert 10 <= before <= 28


@source("PJAR-37-29", kind=RANGE)
def test_levelling_leaves_the_mud_time_to_settle():
    """Pakistan J. Agric. Res. 37(1): 24 to 72 hours after puddling (the field is levelled a
    day or two before planting, puddled a week before)."""
    gap = PLANTING - TASKS[TaskCode.FIELD_LEVEL].date
    assert timedelta(hours=24) <= gap <= timedelta(hours=72)


@source("PhilRice-dapog")
def test_straw_comes_off_when_philrice_takes_it_off():
    """PhilRice, modified dapog: watered twice a day to day 4, uncovered on day 5."""
    watering = TASKS[TaskCode.WATER]
    assert watering.until is not None and (watering.until - watering.date).days == 4
    assert TASKS[TaskCode.UNCOVER_FLOOD].day == 5


@source("PhilRice-dapog", "Lanka", "Bogura")
def test_soaking_and_sprouting_take_what_publishers_give():
    """PhilRice soaks 12-24 h; Sri Lanka 24 h, then 24-48 h moist; Bangladesh 24, 40-72."""
    soak, drain, sow = (
        TASKS[code].day for code in (TaskCode.SOAK, TaskCode.DRAIN_SEED, TaskCode.SOW)
    )
    assert (drain - soak) * 24 == c.SOAK_H.value == 24
    assert (sow - drain) * 24 == c.INCUBATE_H.value == 24


@source("AAU-mat", "Jaffna-8215", "gansulong")
@pytest.mark.parametrize(
    "day",
    [
        15, 20,  # Assam Agricultural University, mat nursery, Sali season: 15-20 days
        16,  # Jaffna (abstract): best of 8-22 days, 5.065 t/ha
        18,  # gansulong, China: 13-20 days
    ],
)  # fmt: skip
def test_the_window_holds_the_ages_that_did_best_in_warm_seasons(day):
    """Day 15 until day 20."""
    assert c.TRANSPLANT_FIRST_DAY.value <= day <= c.TRANSPLANT_LAST_DAY.value


@source("DSSAT-RICER048", kind=ARITHMETIC)
@pytest.mark.parametrize(("mean_c", "days"), [(26, 4.88), (20, 7.55)])
def test_days_per_leaf_of_the_crop_model(mean_c, days):
    """DSSAT, RICER048.CUL: 83 degree-days a leaf above 9 C."""
    assert days_per_leaf(mean_c) == pytest.approx(days, abs=0.005)


@source("DSSAT-RICER048", kind=ARITHMETIC)
def test_the_fourth_leaf_after_a_count_comes_by_the_published_rates():
    """DSSAT, RICER048.CUL: 83 (55-90) degree-days a leaf above 9 C. Two leaves on day 15 at a
    mean of 20 C: 1.5 leaves of 7.55 days on; between one of 5 days and two of 8.18."""
    assert forecast_by_warmth(4, 2, 15, 20.0) == (26, 20, 32)


@source("AgronJ-100-490")
def test_a_mean_temperature_is_taken_where_leaves_grow_and_nowhere_else():
    """Streck et al., 2008: leaves appear between 11 and 40 C."""
    assert is_mean_c(11) and is_mean_c(40)
    assert not is_mean_c(10.9) and not is_mean_c(40.1)


@source("DSSAT-RICER048", kind=INDEPENDENT)
@pytest.mark.parametrize(("day", "leaves"), [(15, 3), (20, 4)])
def test_the_window_is_three_to_four_leaves_in_warm_weather(day, leaves):
    """The crop model at 26 C gives the leaves of the growers' rule."""
    assert leaves_on(day, 26) == pytest.approx(leaves, abs=0.15)


@source("gansulong", "JCS-88-27", kind=INDEPENDENT)
def test_leaves_at_fifteen_days_agree_with_two_countries():
    """China (gansulong): 2.7-3.5 leaves at 13-20 days; JCS 88:27, 2019: 3.0-3.6 at 15."""
    assert 2.7 <= leaves_on(15, 26) <= 3.6


@source("Ellis-1993", "AgronJ-100-490")
def test_no_faster_above_the_optimum():
    """Ellis et al., 1993 (year from memory): no faster at 28 C than at 24; Streck et al.,
    2008: optimum 26 C."""
    assert leaves_on(15, 28) == leaves_on(15, 26)
    assert leaves_on(15, 28) <= leaves_on(15, 24) * 1.15
