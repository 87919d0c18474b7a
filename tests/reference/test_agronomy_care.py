"""Seed that needs longer, seed really sown, care and cautions, against what others publish."""

from datetime import date

import pytest

from assistant.agronomy import constants as c
from assistant.agronomy.calendar import Anchors, TaskCode, calendar
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.lot.germination import good_seed
from assistant.agronomy.lot.soaking import Seed
from assistant.agronomy.practices import MAT
from assistant.agronomy.quantities import is_weak
from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.agronomy.seed import seed_kg
from assistant.wiring.practices import open_practices
from tests.reference.sourced import INDEPENDENT, RANGE, source
from tests.talk import nursery

SOW = date(2026, 6, 10)


def _days(seed: Seed) -> tuple[int, int]:
    """Days in water, and moist, as the calendar of a mat has them."""
    tasks = {task.code: task for task in calendar(Anchors(SOW, sprouting=seed.sprouting))}
    soak, drain = tasks[TaskCode.SOAK].day, tasks[TaskCode.DRAIN_SEED].day
    return drain - soak, -drain


@source("Lanka")
def test_slow_seed_is_soaked_and_kept_moist_as_long_as_the_longest_advice():
    """Sri Lanka soaks 48 h for dapog and keeps seed moist 48 h for wet beds."""
    assert _days(Seed(slow=True)) == (48 / 24, 48 / 24)


@source("Bogura")
def test_slow_seed_in_cool_water_is_kept_moist_as_in_the_cool_season():
    """Bangladesh keeps Boro seed moist for 60-72 h."""
    _, moist = _days(Seed(slow=True, cool=True))
    assert 60 <= moist * 24 <= 72


@source("Kubota", "RDA-Korea")
@pytest.mark.parametrize(("water_c", "days"), [(15, 6.7), (12, 8.3), (10, 10)])
def test_the_calendar_soaks_by_summed_warmth_in_cool_water(water_c, days):
    """100 degree-days: about 7 days at 15 C, 8 at 12 (Japan), 10 at 10 C (Korea)."""
    soaked, _ = _days(Seed(water_c=water_c))
    assert days <= soaked < days + 1


@source("ICAR-germination")
def test_a_home_test_is_counted_when_growers_count():
    """A grower's test lies seven days in wet jute before it is counted."""
    assert c.SEED_TEST_COUNT_D.value == 7
    count = c.SEED_TEST_DAY.value + c.SEED_TEST_COUNT_D.value
    assert count < c.SOAK_DAY.value  # and there are days left to act on it


@source("PhilRice-RCEF", "Bogura")
@pytest.mark.parametrize(("region", "weak"), [("PH", True), ("BD", False)])
def test_the_same_seed_is_weak_in_one_country_and_good_in_another(region, weak):
    """82 % is below the 85 % of the Philippines and above the 80 % advised in Bangladesh."""
    assert is_weak(0.82, good_seed(region)) is weak


@source("PhilRice-40kg", kind=INDEPENDENT)
def test_seed_really_sown_teaches_what_the_publisher_counts():
    """40 kg at 45,000 a kilogram and 85 % give 1,530,000 seedlings, of which 750,000 are
    planted: 0.490, whatever the plan counted on."""
    inputs = FieldInputs(10_000, 0.85, seedlings_per_hill=3, grain_weight_g=1e6 / 45_000)
    told = SeasonOutcome(
        nursery_id=1,
        farmer_id=1,
        ended_on=SOW,
        field_area_m2=10_000,
        planted_area_m2=10_000,
        mats=600,
        mats_left=0,
        resown=False,
        establishment=inputs.establishment,
        seed_share=40 / seed_kg(inputs),
    )
    assert told.observed_establishment == pytest.approx(0.490, abs=0.001)


@source("PhilRice-dapog")
def test_a_mat_is_watered_twice_a_day_until_day_four():
    """Twice a day to four days after sowing; the straw comes off on day 5."""
    [rule] = [rule for rule in MAT.days.tasks if rule.code is TaskCode.WATER]
    tasks = {task.code: task for task in calendar(Anchors(SOW))}
    last = tasks[TaskCode.WATER].until
    assert last is not None and (last - SOW).days == 4 and rule.every_d == 1


@source("PhilRice-transplant", "ICAR-transplanting")
def test_the_usual_hill_is_one_that_publishers_plant():
    """2-3 seedlings of inbred rice (PhilRice), 2 (ICAR); 20 x 20 cm are 25 hills on 1 m2."""
    assert 2 <= c.SEEDLINGS_PER_HILL.value <= 3
    assert 10_000 / c.SPACING_CM.value**2 == 25


@source("KAU-thesis-2003")
def test_a_tray_takes_two_of_soil_to_one_of_dung():
    """The ratio that gave the heavier mat and the darker seedlings."""
    bed = open_practices()["tray"].bed
    assert (bed.soil_parts.value, bed.manure_parts.value, bed.hull_parts.value) == (2, 1, 0)


@source("MU-Ext")
def test_thunder_keeps_people_in_for_half_an_hour():
    """Wait 30 minutes after the last thunder."""
    assert c.THUNDER_WAIT_MIN.value == 30


@source("Simplot-SDS")
def test_urea_in_the_eyes_is_rinsed_for_a_quarter_of_an_hour():
    """The safety data sheet says 15 minutes."""
    assert c.EYE_RINSE_MIN.value == 15


@source("PhilRice-KC4", "PhilRice-transplant", kind=RANGE)
def test_gaps_are_filled_while_seedlings_still_catch_up():
    """Within 7 days of planting; no publisher asks for it before the third."""
    planted = date(2026, 7, 1)
    bed = nursery(sow=date(2026, 6, 12), sown=True, transplanted_on=planted)
    [gaps] = [task for task in bed.tasks if task.code is TaskCode.FILL_GAPS]
    assert 3 <= (gaps.date - planted).days <= 7
