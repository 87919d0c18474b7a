"""Weighing grains and finding a variety."""

import pytest

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.lot.varieties import VARIETIES, find_variety
from assistant.agronomy.lot.weighing import GrainWeighing, grains_to_count


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
