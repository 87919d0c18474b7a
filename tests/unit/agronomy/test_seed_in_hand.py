"""Weighing grains, finding a variety, and two lots for one field."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.lot.lots import SeedLot, fill_up_kg, mixed, should_part
from assistant.agronomy.lot.varieties import VARIETIES, find_variety
from assistant.agronomy.lot.weighing import GrainWeighing, grains_to_count
from assistant.agronomy.quantities import quantities

lots = st.builds(
    SeedLot,
    kg=st.floats(0.1, 100),
    germination=st.floats(0.05, 1),
    grain_weight_g=st.floats(15, 30),
)


def test_two_hundred_grains_of_five_grams_are_twenty_five():
    """By hand: 5 g / 200 x 1000; a scale of whole grams leaves 22.5 to 27.5."""
    weighed = GrainWeighing(200, 5)
    assert weighed.grain_weight_g == pytest.approx(25)
    assert weighed.likely == pytest.approx((22.5, 27.5))
    assert not weighed.is_near_enough


def test_a_thousand_grains_are_near_enough_on_a_kitchen_scale():
    """By hand: half a gram in 25 is a fiftieth."""
    weighed = GrainWeighing(1000, 25)
    assert weighed.likely == pytest.approx((24.5, 25.5))
    assert weighed.is_near_enough


@pytest.mark.parametrize(("step_g", "grains"), [(1, 400), (0.1, 100), (5, 2000)])
def test_a_coarser_scale_asks_for_more_grains(step_g, grains):
    """By hand: the step's half is a twentieth of 10 g, 1 g, 50 g of grains at 25 g."""
    assert grains_to_count(step_g) == grains
    assert GrainWeighing(grains, 25 * grains / 1000, step_g).is_near_enough


@pytest.mark.parametrize(("grains", "grams"), [(0, 5), (100, 0), (100, float("nan"))])
def test_nothing_weighs_nothing(grains, grams):
    """It is asked again."""
    with pytest.raises(AgronomyError):
        GrainWeighing(grains, grams)


@pytest.mark.parametrize("typed", ["BR11", "br 11", "Br-11"])
def test_a_variety_is_found_however_it_is_written(typed):
    """Case, spaces and signs are no matter; between two published weights stands the middle."""
    found = find_variety(typed)
    assert found is not None
    assert (found.low_g, found.high_g, found.grain_weight_g) == (24, 25, 24.5)


def test_what_nobody_published_is_not_guessed():
    """Weigh it instead."""
    assert find_variety("Supa") is None


def test_every_listed_variety_can_be_planned_with():
    """Each weight is inside what the arithmetic takes, and names its source."""
    for variety in VARIETIES.values():
        assert FieldInputs(4000, 0.9, grain_weight_g=variety.grain_weight_g)
        assert variety.sources


def test_lots_of_like_grain_mix_by_weight():
    """By hand: 3 kg at 90 % and 1 kg at 70 % are 4 kg at 85 %."""
    lot = mixed([SeedLot(3, 0.9), SeedLot(1, 0.7)])
    assert (lot.kg, lot.germination, lot.grain_weight_g) == pytest.approx((4, 0.85, 25))


def test_small_grains_count_for_more():
    """By hand: 1 kg at 20 g is 50,000 grains, 1 kg at 25 g 40,000; 90 % and 45 % of them are
    63,000 of 90,000, and 2 kg of 90,000 grains weigh 22.22 g for 1000."""
    lot = mixed([SeedLot(1, 0.9, 20), SeedLot(1, 0.45, 25)])
    assert lot.germination == pytest.approx(0.7)
    assert lot.grain_weight_g == pytest.approx(22.2222, rel=1e-5)


@given(st.lists(lots, min_size=1, max_size=4))
def test_a_mixture_loses_no_seed_and_no_sprout(several):
    """Grains and sprouts of the mixture are those of its lots."""
    lot = mixed(several)
    assert lot.seeds == pytest.approx(sum(each.seeds for each in several))
    sprouts = sum(each.seeds * each.germination for each in several)
    assert lot.seeds * lot.germination == pytest.approx(sprouts)


@given(lots, lots)
def test_filling_up_gives_the_seedlings_that_the_field_needs(at_hand, other):
    """Both lots together sprout what one lot of the right weight would."""
    inputs = FieldInputs(4000, 0.8)
    more = fill_up_kg(inputs, at_hand, other)
    needed = quantities(inputs).seedlings / inputs.establishment
    sprouts = at_hand.seeds * at_hand.germination
    if more:
        sprouts += replace(other, kg=more).seeds * other.germination
        assert sprouts == pytest.approx(needed)
    else:
        assert sprouts >= needed * (1 - 1e-9)


def test_lots_far_apart_are_better_sown_apart():
    """More than ten points of a hundred."""
    assert should_part([SeedLot(1, 0.95), SeedLot(1, 0.8)])
    assert not should_part([SeedLot(1, 0.9), SeedLot(1, 0.82)])
    assert not should_part([])


def test_no_seed_is_no_lot():
    """Nor are more sprouts than seeds."""
    for kg, germination in ((0, 0.9), (1, 1.2)):
        with pytest.raises(AgronomyError):
            SeedLot(kg, germination)
    with pytest.raises(AgronomyError):
        mixed([])
