"""Quantities as people measure them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.agronomy.rounding import Measure, measured

# Whole range from a garden plot to a thousand hectares.
amounts = st.floats(0.01, 1_000_000)


NEVER_LESS = (Measure.SEED_KG, Measure.AREA_M2, Measure.SPRAY_L, Measure.MIX_L)


@given(amounts, st.sampled_from(Measure))
def test_nothing_is_rounded_to_nothing(amount, measure):
    """A little is never none."""
    assert measured(amount, measure) > 0


@given(amounts, st.sampled_from(NEVER_LESS))
def test_what_must_suffice_is_rounded_up(amount, measure):
    """Seed, bed, spray water and mix are never less than computed."""
    assert measured(amount, measure) >= amount * (1 - 1e-6)


@given(st.floats(0.05, 100_000))
def test_the_rounded_spray_is_never_stronger_than_meant(area_m2):
    """Urea down and water up keep the spray at half a percent or weaker, on any real bed."""
    grams = measured(area_m2 * 15, Measure.UREA_G)
    litres = measured(area_m2 * 3, Measure.SPRAY_L)
    assert grams / litres <= 5


@given(st.floats(1, 1_000_000), st.sampled_from(sorted(set(Measure) - {Measure.PAILS})))
def test_rounding_stays_near(amount, measure):
    """What is told is within a tenth of what was computed, from one unit on."""
    amount = round(amount) if measure is Measure.COUNT else amount
    assert measured(amount, measure) == pytest.approx(amount, rel=0.1)


@given(amounts, st.sampled_from(Measure))
def test_rounding_twice_changes_nothing(amount, measure):
    """A rounded amount is one that can be measured."""
    once = measured(amount, measure)
    assert measured(once, measure) == once


@given(st.tuples(amounts, amounts).map(sorted), st.sampled_from(Measure))
def test_more_is_never_told_as_less(pair, measure):
    """Rounding keeps the order of amounts."""
    less, more = pair
    assert measured(less, measure) <= measured(more, measure)


@pytest.mark.parametrize(
    ("amount", "measure", "told"),
    [
        (9.0498, Measure.SEED_KG, 9.1),
        (0.2404, Measure.SEED_KG, 0.25),
        (24.04, Measure.SEED_KG, 24.5),
        (36.06, Measure.SEED_G, 36),
        (40.0, Measure.AREA_M2, 40),
        (44.0, Measure.AREA_M2, 44),
        (1.1, Measure.AREA_M2, 1.1),
        (400.0, Measure.WATER_L, 400),
        (607.0, Measure.UREA_G, 600),
        (0.479, Measure.UREA_G, 0.47),
        (121.4, Measure.SPRAY_L, 125),
        (7.2, Measure.WEIGHT_KG, 7),
        (1.6, Measure.MIX_M3, 1.6),
        (0.04, Measure.MIX_M3, 0.04),
        (101_171.4, Measure.COUNT, 101_000),
    ],
)
def test_amounts_are_told_as_scales_and_tins_tell_them(amount, measure, told):
    """Worked by hand from the steps that the instruments have."""
    assert measured(amount, measure) == told
