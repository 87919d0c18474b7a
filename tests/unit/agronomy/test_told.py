"""What a person is told: near what was computed at every size, and agreeing in itself."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.mat import mix_shares, watering_l
from assistant.agronomy.practices import MAT
from assistant.agronomy.quantities import quantities
from assistant.agronomy.rounding import Measure, measured
from assistant.agronomy.told import (
    heap_told_g,
    is_near,
    mix_told,
    pails_told,
    seed_told_kg,
    sprouted_told_kg,
    square_metre_told_g,
)
from assistant.wiring.practices import open_practices

PRACTICES = tuple(open_practices().values())
HA = 10_000.0

fields = st.builds(
    FieldInputs,
    field_area_m2=st.floats(0.001 * HA, 50 * HA),
    germination=st.floats(0.30, 1.0),
    spacing_row_cm=st.sampled_from((10.0, 15.0, 20.0, 25.0, 30.0)),
    spacing_hill_cm=st.sampled_from((10.0, 14.0, 20.0, 25.0, 30.0)),
    seedlings_per_hill=st.integers(1, 6),
    grain_weight_g=st.floats(15, 35),
    pail_litres=st.sampled_from((1.0, 5.0, 7.5, 10.0, 12.0, 15.0, 16.0, 20.0, 25.0)),
)


@given(fields, st.sampled_from(PRACTICES))
@settings(max_examples=400)
def test_every_told_amount_is_within_a_tenth(field, practice):
    """From a plot of 10 m2 to 50 ha, in every pail, on every bed."""
    q = quantities(field, practice)
    told = {
        (seed_told_kg(q), q.seed_kg),
        (sprouted_told_kg(q), q.sprouted_seed_kg),
        (measured(q.nursery_area_m2, Measure.AREA_M2), q.nursery_area_m2),
        (measured(q.urea_g, Measure.UREA_G), q.urea_g),
        (measured(q.spray_water_l, Measure.SPRAY_L), q.spray_water_l),
        (mix_told(q, practice).litres, q.soil_mix_m3 * 1000),
    }
    if q.sheet_m2:
        told.add((measured(q.sheet_m2, Measure.AREA_M2), q.sheet_m2))
    assert [pair for pair in told if not is_near(*pair)] == []


@given(fields, st.sampled_from(PRACTICES))
def test_each_part_of_the_mix_is_within_a_tenth(field, practice):
    """Pails are told where they tell every part well, else litres and the parts of a batch."""
    q = quantities(field, practice)
    mix, shares = mix_told(q, practice), mix_shares(practice)
    if not mix.in_pails:
        return
    for told, share in zip((mix.soil, mix.manure, mix.hull), shares, strict=True):
        assert is_near(told * q.pail_litres, q.soil_mix_m3 * 1000 * share)
    assert mix.litres == mix.pails * q.pail_litres


@given(fields, st.sampled_from(PRACTICES))
def test_the_heaps_together_are_the_seed(field, practice):
    """Heaps x weight is the sprouted seed that was told, within a twentieth."""
    q = quantities(field, practice)
    if q.mats:
        assert heap_told_g(q) * q.mats == pytest.approx(sprouted_told_kg(q) * 1000, rel=0.10)
        assert heap_told_g(q) * q.mats == pytest.approx(seed_told_kg(q) * 1250, rel=0.05)
    else:
        told_kg = square_metre_told_g(q) * q.nursery_area_m2 / 1000
        assert told_kg == pytest.approx(q.sprouted_seed_kg, rel=0.05)


@given(fields, st.sampled_from(PRACTICES))
def test_water_is_told_in_pails_only_where_half_pails_tell_it_well(field, practice):
    """Else in litres, which are near in any case."""
    q = quantities(field, practice)
    for litres in (q.flood_water_l, watering_l(q.nursery_area_m2)):
        pails = pails_told(litres, q.pail_litres)
        if pails is not None:
            assert is_near(pails * q.pail_litres, litres)
        if litres:
            assert is_near(measured(litres, Measure.WATER_L), litres)


def test_a_bed_between_two_batches_is_told_in_half_pails():
    """525 m2 take 210 L of mix: in pails of 20 L 7.5, 2 and 1, where two batches held 400 L."""
    told = mix_told(quantities(FieldInputs(525, 0.80, pail_litres=20)))
    assert told == (210, 7.5, 2, 1)


def test_a_plot_of_ten_square_metres_has_one_heap_of_all_its_seed():
    """24 g of dry seed, 30 g sprouted: no whole mat's 45 g."""
    q = quantities(FieldInputs(10, 0.80))
    assert (seed_told_kg(q), heap_told_g(q)) == (0.025, 31)
    assert mix_told(q) == (4, 0, 0, 0)


def test_a_whole_hectare_is_told_as_it_is_computed():
    """400 pails of 10 L: 280 of soil, 80 of manure, 40 of hull."""
    assert mix_told(quantities(FieldInputs(HA, 0.80)), MAT) == (4000, 280, 80, 40)
