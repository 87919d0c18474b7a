"""What a person is told: near what was computed at every size, and agreeing in itself."""

import re
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.mat import mix_shares, watering_l
from assistant.agronomy.nursery import Nursery
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
from assistant.dialogue.results import quantity_texts
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.practices import open_practices
from assistant.wording.day import DayWork, work_says
from assistant.wording.render import render

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


SIZES_M2 = tuple(50 * 1.17**step for step in range(54))  # 50 m2 to 20 ha
PAILS_L = (1.0, 5.0, 8.0, 10.0, 12.0, 15.0, 18.0, 20.0, 25.0)


@pytest.mark.parametrize("practice", PRACTICES, ids=lambda each: each.code)
def test_at_every_size_and_pail_what_is_told_is_near(practice):
    """The whole grid, and not only what chance draws: no told amount is a tenth off, and the
    heaps together are the seed."""
    for area in SIZES_M2:
        for pail in PAILS_L:
            q = quantities(FieldInputs(area, 0.85, pail_litres=pail), practice)
            mix = mix_told(q, practice)
            assert is_near(seed_told_kg(q), q.seed_kg), area
            assert is_near(sprouted_told_kg(q), q.sprouted_seed_kg), area
            assert is_near(mix.litres, q.soil_mix_m3 * 1000), (area, pail)
            assert is_near(measured(q.urea_g, Measure.UREA_G), q.urea_g), area
            assert is_near(measured(q.spray_water_l, Measure.SPRAY_L), q.spray_water_l), area
            assert is_near(measured(q.nursery_area_m2, Measure.AREA_M2), q.nursery_area_m2), (
                area
            )
            if q.mats:
                heaps = heap_told_g(q) * q.mats / 1000
                assert heaps == pytest.approx(seed_told_kg(q) * 1.25, rel=0.05), area


ENGLISH = open_catalogue("en")
ONE_OF_MANY = re.compile(r"(?<![\d.,])1 (equal )?(heaps|mats|pails|trays|tins|litres)\b")


@pytest.mark.parametrize("practice", PRACTICES, ids=lambda each: each.code)
@pytest.mark.parametrize("area", [10, 15, 20, 50, 60, 100, 500, 1000])
@pytest.mark.parametrize("pail", [1.0, 5.0, 10.0, 20.0])
def test_one_is_told_as_one(practice, area, pail):
    """No "1 heaps": in the plan, and in the work of each day."""
    today = date(2026, 6, 1)
    inputs = FieldInputs(area, 0.85, pail_litres=pail)
    bed = Nursery(1, 1, "A", None, inputs, f"{area} m2", True, today, today, practice=practice)
    told = [say for text in quantity_texts(bed, today, None) for say in text.says]
    for task in bed.tasks:
        told += work_says(DayWork(bed, (task.code,), task.date))
    found = [render(say, ENGLISH) for say in told]
    assert [text for text in found if ONE_OF_MANY.search(text)] == []
