"""Labour, cost, delay, land and seed in hand against published figures; sources on each."""

import pytest

from assistant.agronomy.constants import INCUBATE_H, SOAK_H, SOAK_WARMTH_C_D
from assistant.agronomy.constants_work import (
    BRINE_DENSITY_KG_PER_L,
    BRINE_MINUTES,
    BRINE_RINSES,
    HOURS_PER_DAY,
    WATERING_L_PER_M2,
)
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.growth.overdue import loss_when_late, seedlings_when_late
from assistant.agronomy.lot.brine import brine_recipe
from assistant.agronomy.lot.soaking import soak_days, sprouting
from assistant.agronomy.lot.varieties import VARIETIES, find_variety
from assistant.agronomy.quantities import quantities
from assistant.agronomy.sourced.tables import NURSERY_COSTS, OLD_SEEDLINGS
from assistant.agronomy.units import land_unit
from assistant.agronomy.work.labour import planting_hours, work
from assistant.agronomy.work.planting import hills_on_string, mats_in_a_load
from assistant.wiring.practices import open_practices
from tests.reference.sourced import ARITHMETIC, INDEPENDENT, PRACTICE, RANGE, source

HECTARE = 10_000.0
PRACTICES = open_practices()
MAT, WET, TRAY = (PRACTICES[code] for code in ("mat", "wet_bed", "tray"))


@source("NARC-methods")
def test_lifting_takes_the_people_that_were_counted():
    """For a hectare four people cut mats in a day, 18 uproot and bundle seedlings."""
    days = {
        practice.code: work(quantities(FieldInputs(HECTARE, 0.85), practice), practice)
        for practice in (MAT, WET)
    }
    assert days["mat"].lift_h.low / HOURS_PER_DAY.value == pytest.approx(4)
    assert days["wet_bed"].lift_h.low / HOURS_PER_DAY.value == pytest.approx(18)


@source("NARC-methods", "ACRI-1532", kind=RANGE)
@pytest.mark.parametrize("workers", [30, 35, 40])
def test_published_planters_lie_in_the_span(workers):
    """30-35 workers for a hectare in Nepal, 40 in Kerala, a day of 8 hours each."""
    span = planting_hours(HECTARE, 1)
    assert span.low <= workers * 8 <= span.high


@source("IJNES-64", "ACRI-1532")
@pytest.mark.parametrize("hours", [30, 3 * 8])
def test_a_machine_plants_in_published_hours(hours):
    """30 person-hours a hectare; three workers for a day."""
    span = planting_hours(HECTARE, 1, TRAY)
    assert span.low <= hours <= span.high


@source("ASABE-1700770")
def test_trays_are_filled_in_published_hours():
    """50 trays took 2 to 4.5 person-hours; a mat of the same area is made of twice the soil."""
    per_m2 = [hours / (50 * 0.1624) for hours in (2, 4.5)]
    assert all(TRAY.labour.raise_h_per_m2.holds(rate) for rate in per_m2)
    litres = 50 * 0.1624 * 20  # of soil, 2 cm deep
    for hours in (2, 4.5):
        assert MAT.labour.raise_h_per_m2.holds(round(hours / litres * 40, 2))


@source("Nongsaro-281", kind=INDEPENDENT)
def test_a_hectare_of_trays_takes_the_hours_that_korea_counts():
    """15 to 37 hours for the seedlings of a hectare, in the yard and on the bed."""
    told = work(quantities(FieldInputs(HECTARE, 0.85, 30, 14, 4), TRAY), TRAY)
    assert told.raise_h.low < 15 and told.raise_h.high == pytest.approx(37, rel=0.03)


@source("Pertanika-8-205")
def test_the_published_costs_are_told_as_they_stand():
    """US dollars for a hectare of seedlings: frames 27.04-27.77, trays 44.89, wet bed 19.32."""
    costs = {str(name): float(cost) for name, cost in NURSERY_COSTS.rows}
    assert costs["wet bed"] == 19.32
    assert costs["wet bed"] < min(value for name, value in costs.items() if name != "wet bed")
    assert (costs["tray"], costs["plastic frame"]) == (44.89, 27.20)


@source("GAB-7-1")
def test_two_weeks_of_delay_cost_what_four_years_in_nepal_cost():
    """About 38 % after two weeks."""
    loss = loss_when_late(20 + 14)
    assert loss.low <= 0.38 <= loss.high + 0.001


@source("cj11041")
def test_forty_day_seedlings_cost_what_two_years_cost():
    """3.6 to 2.0 and 3.4 to 1.8 t/ha, that is 44 and 47 %, for 20 days more."""
    losses = [1 - float(old) / float(young) for *_, young, old in OLD_SEEDLINGS.rows]
    assert losses == pytest.approx([0.444, 0.471], abs=0.001)
    loss = loss_when_late(20 + 20)
    assert loss.low <= losses[0] <= losses[1] + 0.01 and loss.high >= losses[1] - 0.002


@source("IJEP-5-59")
def test_the_yield_falls_steadily_with_delay():
    """From 25 days to 40 it falls all the way; a day of holding after pulling costs nothing."""
    falls = [loss_when_late(day).high for day in range(20, 41, 5)]
    assert falls == sorted(falls) and falls[0] == 0


@source("NARJ-4-5")
def test_a_trial_that_kept_date_and_age_apart_found_no_loss_by_age():
    """Whatever the variety and the date, age of seedlings had no effect on the yield."""
    assert all(loss_when_late(day).low == 0 for day in range(20, 46))


@source("PhilRice-transplant", "ICAR-transplanting", kind=RANGE)
@pytest.mark.parametrize(("day", "low", "high"), [(21, 2, 3), (28, 3, 4), (50, 5, 6)])
def test_older_seedlings_are_planted_more_to_a_hill(day, low, high):
    """2-3 at 21 days, 3-4 at 28, one more a week; 5-6 when late or old."""
    assert low <= seedlings_when_late(2, day) <= high


@source("JCS-90-269", "Yamagata", "RDA-Korea")
@pytest.mark.parametrize(("warmth", "slow"), [(100, False), (120, True)])
def test_slow_varieties_are_soaked_by_their_own_warmth(warmth, slow):
    """120 degree-days for Koshihikari and most in Yamagata, 100 in Korea, 80 for the quick."""
    assert soak_days(12, slow=slow) == pytest.approx(warmth / 12)
    assert SOAK_WARMTH_C_D.holds(80)


@source("Lanka", "Bogura")
def test_slow_seed_stays_within_published_hours():
    """48 h in water (dapog), 48 h moist (wet bed) in Sri Lanka; 40-72 h in Bangladesh."""
    slow = sprouting(28, slow=True)
    assert slow.soak_d * 24 == 48 and SOAK_H.holds(48)
    assert slow.incubate_d * 24 == 48 and INCUBATE_H.holds(48)


@source("ICAR-NEH", "UMK-NaCl", kind=INDEPENDENT)
def test_the_salt_of_a_farmers_pail_makes_the_density():
    """5 L in a pail of 10 L: 0.81 kg of salt; ICAR takes 1.65 kg in 10 L for about 1.10."""
    recipe = brine_recipe(9.0, 10.0)
    assert recipe.salt_g * 2 == pytest.approx(1650, rel=0.04)
    assert BRINE_DENSITY_KG_PER_L.value == 1.10
    assert recipe.times * recipe.seed_kg_at_once >= 9.0


@source("ECHO-164", "Bogura")
def test_seed_is_short_in_brine_and_well_rinsed():
    """About 5 minutes, not long; rinsed 3-4 times."""
    recipe = brine_recipe(9.0, 10.0)
    assert recipe.minutes <= 10 and BRINE_MINUTES.holds(5)
    assert recipe.rinses in (3, 4) and BRINE_RINSES.holds(4)


@source("DSSAT-RICER048", "TAMU-2007", "BRRI104")
@pytest.mark.parametrize(
    ("name", "grams"),
    [("KDML105", 27.0), ("Lemont", 20.7), ("BR11", 24.5), ("Jaya", 30), ("Jefferson", 28.35),
     ("BRRI dhan104", 21.5)],
)  # fmt: skip
def test_listed_varieties_weigh_what_was_published(name, grams):
    """Model coefficients x 1000; Texas from 16,000 seeds in a pound; a Bangladesh release."""
    found = find_variety(name)
    assert found is not None and found.grain_weight_g == pytest.approx(grams, abs=0.01)


@source("DSSAT-RICER048")
def test_a_slip_of_the_published_file_is_not_listed():
    """KS-282 stands there at 50 g, beyond the file's own maximum of 30."""
    assert find_variety("KS-282") is None
    assert all(15 <= each.low_g <= each.high_g <= 30 for each in VARIETIES.values())


@source("bigha", "Nepal-units")
@pytest.mark.parametrize(
    ("region", "m2"),
    [("IN-AS", 1337.80), ("IN-WB", 1337.80), ("BD", 1335.46), ("IN-HP", 809.37),
     ("NP", 6772.63)],
)  # fmt: skip
def test_a_bigha_is_as_large_as_its_region_has_it(region, m2):
    """14,400 square feet in Assam and West Bengal, 8,712 in Himachal Pradesh, 72,900 in Nepal;
    Bangladesh 33 decimals (33 x 435.6 square feet)."""
    unit = land_unit("bigha", region)
    assert unit is not None and float(unit.m2) == pytest.approx(m2, abs=0.01)


@source("bigha")
@pytest.mark.parametrize("region", [None, "IN", "IN-BR", "IN-UP", "IN-MP", "IN-PB", "KE"])
def test_a_bigha_without_a_settled_size_is_asked_back(region):
    """632 to 6,773 m2, with three sizes and more in Bihar, Uttar Pradesh, Madhya Pradesh and
    Punjab: nothing is assumed."""
    unit = land_unit("bigha", region)
    assert unit is None or unit.sure != "agreed"


@source("GNU-units", kind=ARITHMETIC)
def test_exact_units_are_exact():
    """GNU units: acre 4046.8564224 m2 (international), are 100, tan 10 se of 30 tsubo."""
    acre, tan = land_unit("acre"), land_unit("tan", "JP")
    assert acre is not None and float(acre.m2) == pytest.approx(4046.8564224, abs=1e-7)
    assert tan is None or float(tan.m2) == pytest.approx(991.736, abs=0.001)


@source("arithmetic", kind=ARITHMETIC)
@pytest.mark.parametrize(("metres", "cm", "hills"), [(10, 20, 51), (20, 25, 81), (7, 14, 51)])
def test_hills_along_a_string_begin_and_end_it(metres, cm, hills):
    """One at each end: 10 m at 20 cm are 50 gaps and 51 hills."""
    assert hills_on_string(metres, cm) == hills


@source("memory", kind=PRACTICE)
def test_no_load_of_mats_passes_the_lifting_guide():
    """Health and Safety Executive, from memory: 16 kg for women, 25 for men at waist height."""
    assert mats_in_a_load() == 2
    assert 2 * 7.2 <= 16


@source("memory", kind=PRACTICE)
def test_watering_by_hand_brings_what_a_warm_day_takes():
    """FAO Irrigation and Drainage Paper 56, 1998, not seen: 5-7 mm a day, that is 5-7 L/m2."""
    assert 5 <= 2 * WATERING_L_PER_M2.value <= 7
