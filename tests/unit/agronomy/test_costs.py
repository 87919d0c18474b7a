"""What a nursery costs and how long it takes, worked by hand and by what must hold."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.practices import MAT
from assistant.agronomy.quantities import quantities
from assistant.agronomy.work.costs import PriceList, against, cost
from assistant.agronomy.work.labour import nursery_days, planting_hours, work
from assistant.wiring.practices import open_practices

PRICES = PriceList("KES", 150, 20, 30, 10, 60, 90, 500)
WET = open_practices()["wet_bed"]
FIELD = FieldInputs(4000, 0.80)

prices = st.builds(
    PriceList,
    st.just("KES"),
    *[st.floats(0, 1000) for _ in range(7)],
    pail_litres=st.floats(5, 30),
)
fields = st.builds(FieldInputs, st.floats(50, 100_000), st.floats(0.4, 1))


def test_the_cost_of_a_mat_worked_by_hand():
    """0.4 ha at 80 %: 9.615385 kg, 112 + 32 + 16 pails, 44 m2, 0.6 kg urea; 40 m2 x 0.8 h and
    0.4 ha x 32 h are 44.8 h or 5.6 days."""
    told = cost(quantities(FIELD), MAT, PRICES)
    parts = (told.seed, told.soil, told.manure, told.rice_hull, told.sheet, told.labour)
    assert parts == pytest.approx((1442.3077, 2240, 960, 160, 2640, 2800), rel=1e-6)
    assert told.total == pytest.approx(10242.3077, rel=1e-6)
    assert told.urea_if_yellow == pytest.approx(54)


def test_the_cost_against_a_wet_bed_worked_by_hand():
    """The wet bed: 160 m2, 200,000 x 25 / 1e6 / (0.8 x 0.49) = 12.7551 kg, 16 pails of manure,
    160 x 0.08 + 0.4 x 144 = 70.4 h or 8.8 days: 1913.27 + 480 + 4400."""
    beside = against(FIELD, MAT, WET, PRICES)
    assert beside.cost.total == pytest.approx(6793.2653, rel=1e-6)
    assert beside.saved == pytest.approx(6793.2653 - 10242.3077, rel=1e-6)
    assert beside.seed_saved_kg == pytest.approx(12.755102 - 9.615385, rel=1e-5)
    assert (beside.bed_saved_m2, beside.labour_saved_days) == pytest.approx((120, 3.2))


def test_a_wet_bed_is_not_planted_by_machine():
    """Trays at the machine's usual rows are held against hand planting at 20 x 20 with two
    seedlings; a spacing of one's own is kept on both sides."""
    tray = open_practices()["tray"]
    rows = FieldInputs(4000, 0.80, 30, 14, 4)
    assert against(rows, tray, WET, PRICES).quantities.seedlings == pytest.approx(200_000)
    own = FieldInputs(4000, 0.80, 30, 12, 4)
    assert against(own, tray, WET, PRICES).quantities.hills == pytest.approx(111_111, rel=1e-4)


def test_where_labour_is_dear_and_earth_is_free_the_mat_is_cheaper():
    """The same arithmetic says so: nothing is claimed beforehand."""
    dear_labour = replace(PRICES, soil_per_pail=0, manure_per_pail=0, sheet_per_m2=10)
    assert against(FIELD, MAT, WET, dear_labour).saved > 0


@given(fields, prices)
def test_twice_the_prices_is_twice_the_cost(field, listed):
    """Cost is nothing but prices times amounts."""
    prices: dict[str, Any] = {name: 2 * getattr(listed, name) for name in (
        "seed_per_kg", "soil_per_pail", "manure_per_pail", "rice_hull_per_pail",
        "sheet_per_m2", "urea_per_kg", "labour_per_day")}  # fmt: skip
    doubled = replace(listed, **prices)
    q = quantities(field)
    assert cost(q, MAT, doubled).total == pytest.approx(2 * cost(q, MAT, listed).total)


@given(fields, prices)
def test_what_one_saves_the_other_loses(field, listed):
    """Turned round, the same numbers come with the other sign, at the same establishment."""
    same = replace(
        WET, planting=replace(WET.planting, establishment=MAT.planting.establishment)
    )
    there, back = against(field, MAT, same, listed), against(field, same, MAT, listed)
    assert there.saved == pytest.approx(-back.saved)
    assert there.labour_saved_days == pytest.approx(-back.labour_saved_days)


@given(fields, prices)
def test_a_larger_pail_of_the_same_price_is_never_dearer(field, listed):
    """A list that prices by 20 L where another prices by 10 L is cheaper by the pail."""
    larger = replace(listed, pail_litres=listed.pail_litres * 2)
    q = quantities(field)
    assert cost(q, MAT, larger).soil == pytest.approx(cost(q, MAT, listed).soil / 2)


def test_the_work_of_a_small_field_worked_by_hand():
    """0.4 ha, six hands: 126-320 h/ha are 8.4 to 21.3 hours; 1,600 L in half pails of 5 L are
    320 walks; 267 mats, two at a time, are 134 walks."""
    told = work(quantities(FIELD), MAT, hands=6)
    assert told.plant_hours == pytest.approx((8.4, 21.3333), rel=1e-4)
    assert (told.pail_walks, told.mats, told.mat_walks) == (320, 267, 134)
    assert told.mats_an_hour == pytest.approx((267 / 21.3333, 267 / 8.4), rel=1e-4)
    assert told.lift_h == pytest.approx((12.8, 12.8))


def test_a_bed_without_mats_has_none_to_carry():
    """Its seedlings are pulled."""
    told = work(quantities(FIELD, WET), WET)
    assert (told.mats, told.mat_walks, told.mats_an_hour) == (0, 0, None)


@given(fields, st.integers(1, 50))
def test_more_hands_share_the_hours_and_leave_the_work(field, hands):
    """Hours shrink with hands; person-hours do not change."""
    q = quantities(field)
    alone, many = work(q, MAT, 1), work(q, MAT, hands)
    assert many.plant_h == alone.plant_h
    assert many.plant_hours.low * hands == pytest.approx(alone.plant_h.low)
    assert many.plant_hours == pytest.approx(planting_hours(field.field_area_m2, hands))
    assert nursery_days(q) > 0
