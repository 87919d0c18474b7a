"""When to sow, the day of sowing and measures: worked by hand, and by what must hold."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.lot.programme_variety import Breeding, ProgrammeVariety, for_variety
from assistant.agronomy.mat import smaller_bed
from assistant.agronomy.measures import (
    LevelMeasure,
    mats_for_a_tin,
    seed_measure,
    tin_litres,
    urea_measure,
)
from assistant.agronomy.practices import MAT
from assistant.agronomy.quantities import quantities
from assistant.agronomy.season.sowing import DayReason, SowingNeeds, field_ready, sowings
from assistant.agronomy.work.labour import work
from assistant.agronomy.work.sowing_day import sowing_day

TODAY = dt.date(2026, 12, 1)
days_ahead = st.integers(0, 400).map(lambda n: TODAY + dt.timedelta(days=n))


def test_water_and_harvest_leave_a_span_with_three_days():
    """Water on 5 January: soaked 2 days, ploughed 21 days before planting, so planted from the
    28th on with seedlings of 18 days, sown on the 10th. 110 days before 20 May is 30 Jan."""
    wanted = SowingNeeds(
        110, water_from=dt.date(2027, 1, 5), harvest_before=dt.date(2027, 5, 20)
    )
    found = sowings(wanted, TODAY)
    assert field_ready(dt.date(2027, 1, 5)) == dt.date(2027, 1, 28)
    assert (found.first, found.last) == (dt.date(2027, 1, 10), dt.date(2027, 1, 30))
    assert [day.sow.day for day in found.days] == [10, 20, 30]
    assert [day.reason for day in found.days] == [
        DayReason.FIELD_READY,
        DayReason.IN_HAND,
        DayReason.LAST,
    ]
    last = found.days[-1]
    assert (last.ripe, last.flowers) == (dt.date(2027, 5, 20), dt.date(2027, 4, 20))
    assert (last.plant_from, last.plant_until) == (dt.date(2027, 2, 14), dt.date(2027, 2, 19))


def test_what_cannot_be_is_said_with_the_days_that_are_missing():
    """A variety of 140 days sown on 6 March is not ripe by 1 June."""
    wanted = SowingNeeds(
        140, water_from=dt.date(2027, 3, 1), harvest_before=dt.date(2027, 6, 1)
    )
    found = sowings(wanted, TODAY)
    assert found.days == ()
    assert found.short_d == (dt.date(2027, 3, 6) - dt.date(2027, 1, 12)).days == 53


def test_water_alone_gives_days_a_week_apart():
    """Nothing is said of harvest where no days are known."""
    found = sowings(SowingNeeds(water_from=dt.date(2027, 1, 5)), TODAY)
    assert [day.sow.day for day in found.days] == [10, 17, 24]
    assert {day.ripe for day in found.days} == {None}


def test_a_safe_time_to_flower_holds_both_ends():
    """A variety of 120 days flowers on day 90."""
    wanted = SowingNeeds(
        120, flower_from=dt.date(2027, 4, 1), flower_before=dt.date(2027, 4, 21)
    )
    found = sowings(wanted, TODAY)
    assert (found.first, found.last) == (dt.date(2027, 1, 1), dt.date(2027, 1, 21))
    assert found.days[0].reason is DayReason.FLOWERS_SAFE


@given(st.integers(60, 200), days_ahead, days_ahead)
def test_each_day_that_is_told_fits(days, water, harvest):
    """In order, none before the seed can be soaked, planted after the water, ripe in time."""
    found = sowings(SowingNeeds(days, water_from=water, harvest_before=harvest), TODAY)
    assert bool(found.days) != bool(found.short_d)
    assert sorted(day.sow for day in found.days) == [day.sow for day in found.days]
    for day in found.days:
        assert day.sow >= TODAY + dt.timedelta(days=2)
        assert day.plant_until >= field_ready(water)
        assert day.ripe <= harvest


def test_a_variety_brings_its_own_age_of_seedlings():
    """14-18 days, 16 until a day is chosen; without one all stays as the practice has it."""
    own = ProgrammeVariety("m", "Mwanga", 110, Breeding.INBRED, age_first=14, age_last=18)
    window = for_variety(MAT, own).window
    assert (window.first.value, window.assumed.value, window.last.value) == (14, 16, 18)
    assert for_variety(MAT, ProgrammeVariety("k", "K", 120, Breeding.HYBRID)) is MAT


def test_the_day_of_sowing_from_six_hands():
    """40 m2 take 19.6 to 44.4 person-hours (0.49-1.11 on each): six people 3.3 to 7.4 hours,
    267 mats 36 to 82 an hour, from 6:00 until 9:30 or 13:30."""
    labour = work(quantities(FieldInputs(4000, 0.85)), MAT, 6)
    day = sowing_day(labour, dt.time(6))
    assert (day.hours.low, day.hours.high) == pytest.approx((3.27, 7.4), abs=0.01)
    assert day.pieces_an_hour == pytest.approx((36.1, 81.7), abs=0.1)
    assert (day.days, day.hands_for_a_day) == (1, 6)
    assert day.ends == (dt.time(9, 30), dt.time(13, 30))


def test_too_few_hands_take_more_than_a_day():
    """Three people need up to 14.8 hours, that is two days; six do it in one."""
    day = sowing_day(work(quantities(FieldInputs(4000, 0.85)), MAT, 3), dt.time(6))
    assert (day.days, day.hands_for_a_day) == (2, 6)


def test_a_tin_is_known_by_how_many_fill_the_pail():
    """25 tins in a pail of 10 L are 0.4 L each: 235 g of sprouted seed, five and a half mats of
    43 g."""
    tin = tin_litres(10, 25)
    assert tin == pytest.approx(0.4)
    assert mats_for_a_tin(43, tin) == pytest.approx(5.46, abs=0.01)
    with pytest.raises(AgronomyError):
        tin_litres(10, 0)


@given(st.floats(1, 2000), st.one_of(st.none(), st.floats(0.05, 5)))
def test_level_measures_are_near_and_urea_is_never_more(grams, tin):
    """Within a tenth of what is meant; halves at the finest."""
    sizes_g = {
        LevelMeasure.SPOON: 15 * 0.75,
        LevelMeasure.CAP: 6.4 * 0.75,
        LevelMeasure.TIN: (tin or 0) * 750,
    }
    urea = urea_measure(grams, tin)
    if urea:
        told = urea.amount * sizes_g[urea.measure]
        assert grams * 0.899 <= told <= grams * 1.000001
    seed = seed_measure(grams, tin)
    if seed:
        told = seed.amount * sizes_g[seed.measure] / 750 * 587
        assert told == pytest.approx(grams, rel=0.1001)


def test_a_bed_shrinks_only_where_seeds_would_lie_thin():
    """Single seedlings at 25 x 25 cm: 289,600 seeds need 29 m2 at 1 on each cm2; the smallest
    bed that is published for a hectare is 40 m2. Much seed keeps the usual bed."""
    thin = FieldInputs(10_000, 0.85, 25, 25, seedlings_per_hill=1)
    assert quantities(thin, smaller_bed(thin)).nursery_area_m2 == pytest.approx(40)
    usual = FieldInputs(10_000, 0.85, 20, 20, seedlings_per_hill=2)
    assert quantities(usual, smaller_bed(usual)).nursery_area_m2 == pytest.approx(90.5, abs=0.1)
    thick = FieldInputs(10_000, 0.60, 15, 15, seedlings_per_hill=3)
    assert quantities(thick, smaller_bed(thick)) == quantities(thick)
