"""Spoons, caps, pails and hands against what others weighed and counted; sources on each."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import beta

from assistant.agronomy import constants_measures as c
from assistant.agronomy.growth.leaves import days_per_leaf
from assistant.agronomy.lot.brine import salt_g_per_l
from assistant.agronomy.measures import LevelMeasure, seed_measure, urea_measure
from assistant.agronomy.season.beta import beta_cdf, beta_point
from assistant.agronomy.work.labour import planting_hours
from assistant.agronomy.work.loads import pail_of_mix_kg
from tests.reference.sourced import INDEPENDENT, RANGE, source


@source("sovetysad", "harvesthub", kind=INDEPENDENT)
def test_a_level_spoon_of_urea_weighs_what_gardeners_weigh():
    """10-12 g; 12 g: by the weight of granules in trade and the spoon of 15 mL."""
    assert 10 <= c.UREA_KG_PER_L.value * c.SPOON_ML.value <= 12


@source("habinfo", kind=INDEPENDENT)
def test_a_matchbox_of_urea_weighs_what_gardeners_weigh():
    """15 g in a box of 20 cubic centimetres."""
    assert c.UREA_KG_PER_L.value * 20 == pytest.approx(15, rel=0.02)


@source("ehinga", "adzumi")
def test_a_cap_is_that_of_a_water_bottle():
    """A cap holds 6 g of compound fertilizer, of which a spoon of 15 mL holds 14 g."""
    assert c.CAP_ML.value * 14 / 15 == pytest.approx(6, rel=0.01)


@source("ehinga", "tradeinfact", kind=RANGE)
def test_a_cap_of_urea_a_litre_is_never_stronger_than_the_spray():
    """4.8 g, where 5 g are meant: the measures told stay below."""
    grams = c.CAP_ML.value * c.UREA_KG_PER_L.value
    assert 4.5 <= grams <= 5
    level = urea_measure(5.0)
    assert level == (LevelMeasure.CAP, 1.0)


@source("USDA-test-weight", "PAU-KVK-2015", kind=INDEPENDENT)
def test_sprouted_seed_fills_the_tin_that_dry_paddy_fills():
    """Swollen by a quarter in weight and room, it weighs what 0.579 and 0.608 kg/L say."""
    assert 0.579 <= c.SPROUTED_KG_PER_L.value <= 0.608
    assert seed_measure(587, 1.0) == (LevelMeasure.TIN, 1.0)


@source("adzumi", kind=INDEPENDENT)
def test_a_pail_of_earth_weighs_what_gardeners_weigh():
    """12 kg of sod earth in a pail of 10 L."""
    span = pail_of_mix_kg(10)
    assert span.low <= 12 <= span.high


@source("RDA-Korea", "shikisyuunou", "UMK-NaCl", kind=INDEPENDENT)
@pytest.mark.parametrize(("water_l", "salt_kg"), [(18, 3.8), (10, 2.2)])
def test_more_recipes_for_heavy_salt_water(water_l, salt_kg):
    """Korea, 2009, and Japan, 2020, both for 1.13."""
    assert salt_g_per_l(1.13) * water_l / 1000 == pytest.approx(salt_kg, rel=0.03)


@source("congnghe", kind=INDEPENDENT)
def test_a_woman_plants_a_sao_in_a_day():
    """360 m2 by one person in a day, from seedlings raised in a yard (Viet Nam)."""
    hours = planting_hours(360, 1)
    assert hours.low < 8 < hours.high
    assert (hours.low + hours.high) / 2 == pytest.approx(8, rel=0.01)


@source("AAU-mat", "DSSAT-RICER048", kind=RANGE)
def test_three_leaves_take_the_days_of_each_season():
    """15-20 days in the warm season, 20-25 in the cool: three leaves at 26 C, and at 20 C (the
    two means are ours)."""
    assert 14.5 <= 3 * days_per_leaf(26) <= 20
    assert 20 <= 3 * days_per_leaf(20) <= 25


@source("scipy", kind=INDEPENDENT)
@given(st.floats(0.01, 0.99), st.floats(1, 200), st.floats(1, 200))
def test_what_is_believed_of_a_share_is_betas(share, a, b):
    """scipy, beta: the chance below a share, and the share of a chance."""
    assert beta_cdf(share, a, b) == pytest.approx(beta.cdf(share, a, b), abs=1e-9)
    assert beta_point(share, a, b) == pytest.approx(beta.ppf(share, a, b), abs=1e-6)
