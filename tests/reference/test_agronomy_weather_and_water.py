"""Brine, soaking, rain classes and labour against published figures; sources beside each."""

import pytest

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.lot.brine import salt_g_per_l
from assistant.agronomy.lot.soaking import soak_days
from assistant.agronomy.work.labour import planting_hours
from tests.reference.sourced import INDEPENDENT, source


@source("RDA-Korea", "UMK-NaCl", kind=INDEPENDENT)
def test_the_korean_recipe_comes_back():
    """20 L at 1.13: 4.23 kg published, 4.3 from the table."""
    assert salt_g_per_l(1.13) * 20 / 1000 == pytest.approx(4.23, rel=0.04)


@source("RDA-Korea", "Kubota")
@pytest.mark.parametrize(
    ("water_c", "days"),
    [
        (10, 10),  # Rural Development Administration, Korea, 2009
        (15, 6.7),  # Kubota, Japan: about 7
        (12, 8.3),  # Kubota, Japan: about 8
        (25, 1),  # PhilRice, Sri Lanka and Bangladesh: 24 h in warm water
    ],
)
def test_cool_water_soaks_longer(water_c, days):
    """A hundred degree-days, only below 20 C."""
    assert soak_days(water_c) == pytest.approx(days, abs=0.05)


@source("JCS-90-269")
def test_ice_cold_water_is_refused():
    """Japanese Journal of Crop Science 90:269, 2021: soaking at 5 C fails."""
    with pytest.raises(AgronomyError):
        soak_days(5)
    assert soak_days(6) == pytest.approx(100 / 6)


@source("ACRI-1532", "IJNES-64")
@pytest.mark.parametrize(
    "hours",
    [
        250,  # ACRI, Kerala KVK: about 250 person-hours on a hectare
        126,  # IJNES 64, hybrid rice
        40 * 8,  # ACRI: 40 workers a hectare, days of 8 hours
    ],
)
def test_published_planting_hours_lie_in_the_range(hours):
    """One person on a hectare; ten people take a tenth."""
    alone, ten = planting_hours(10_000, 1), planting_hours(10_000, 10)
    assert alone.low <= hours <= alone.high
    assert ten == pytest.approx([alone.low / 10, alone.high / 10])
