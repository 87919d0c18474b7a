"""Brine, soaking, rain classes and labour against published figures; sources beside each."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.agronomy import constants as c
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.growth.rain import SERVICES, heavy_from_mm, litres_on, rain_class
from assistant.agronomy.lot.brine import salt_g_per_l, specific_gravity
from assistant.agronomy.lot.soaking import soak_days
from assistant.agronomy.sourced.tables import RAIN_CLASSES, RAIN_CLASSES_MEMORY
from assistant.agronomy.work.labour import planting_hours
from tests.reference.sourced import source


@source("RDA-Korea", "ECHO-164", "ICAR-NEH", "KU-Thai", "UMK-NaCl")
@pytest.mark.parametrize(
    ("water_l", "salt_kg", "gravity"),
    [
        (20, 4.23, 1.13),  # Rural Development Administration, Korea, newswire 2010s
        (18, 3.8, 1.13),  # the same, 2009
        (20, 2.0, 1.064),  # ECHO: 2 kg in 20 L, the least for an egg to float; not 1.13
        (10, 1.65, 1.10),  # ICAR, North-East hills
        (10, 1.7, 1.105),  # Kasetsart University's recipe; its own label of 1.08 disagrees
    ],
)
def test_published_recipes_make_their_density(water_l, salt_kg, gravity):
    """By the density table of Nicolaus Copernicus University, at 20 C."""
    assert specific_gravity(salt_kg, water_l) == pytest.approx(gravity, abs=0.003)


@source("UMK-NaCl")
@pytest.mark.parametrize(
    ("gravity", "grams"), [(1.06, 93), (1.08, 126), (1.10, 161), (1.13, 215)]
)
def test_salt_for_a_density(gravity, grams):
    """Grams in a litre of water, from the same table; recipes agree within 4 %."""
    assert salt_g_per_l(gravity) == pytest.approx(grams, rel=0.01)


@source("RDA-Korea", "UMK-NaCl")
def test_the_korean_recipe_comes_back():
    """20 L at 1.13: 4.23 kg published, 4.3 from the table."""
    assert salt_g_per_l(1.13) * 20 / 1000 == pytest.approx(4.23, rel=0.04)


@given(st.floats(1.0, 1.19))
def test_salt_and_density_are_each_others_inverse(gravity):
    """What the salt makes is what was asked for."""
    assert specific_gravity(salt_g_per_l(gravity) / 1000, 1) == pytest.approx(gravity)


def test_no_brine_is_denser_than_the_table():
    """Salt stops dissolving."""
    with pytest.raises(AgronomyError):
        specific_gravity(1, 1)


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


@source("Kerala-SDMA", "Bangladesh-weather", "TMD", "BMKG", "NDMC-Nepal")
@pytest.mark.parametrize(
    ("mm", "classes"),
    [
        # Kerala SDMA (IMD); BMD in The Financial Express and bdnews24; TMD; BMKG in Tempo;
        # DHM in The Himalayan Times; CMA from memory, with lfasc.com.
        (70, {"IN": "heavy", "BD": "heavy", "TH": "heavy", "ID": "heavy", "NP": "heavy",
              "CN": "rainstorm"}),
        (50, {"IN": "moderate", "BD": "heavy", "TH": "heavy"}),
        (40, {"TH": "heavy", "BD": "moderately heavy", "IN": "moderate"}),
        # The printed gaps are closed: a class lasts until the next begins.
        (15.55, {"IN": "light"}),
        (43.5, {"BD": "moderately heavy"}),
        (0, {service: None for service in SERVICES}),
    ],
)  # fmt: skip
def test_a_days_rain_is_called_what_its_service_calls_it(mm, classes):
    """The same rain has another name across a border."""
    assert {service: rain_class(mm, service) for service in classes} == classes


@given(st.floats(0, 500), st.floats(0, 500), st.sampled_from(SERVICES))
def test_more_rain_is_never_a_lower_class(one, other, service):
    """Classes rise with the rain."""
    rows = RAIN_CLASSES.rows + RAIN_CLASSES_MEMORY.rows
    order = [None] + [name for who, name, _ in rows if who == service]
    less, more = sorted((one, other))
    assert order.index(rain_class(less, service)) <= order.index(rain_class(more, service))


@source("Kerala-SDMA", "Bangladesh-weather", "TMD", "BMKG", "NDMC-Nepal")
def test_heavy_rain_begins_where_each_service_says():
    """From 25 mm (China) to 64.5 mm (India)."""
    assert {service: heavy_from_mm(service) for service in SERVICES} == {
        "IN": 64.5, "BD": 44, "TH": 35.1, "ID": 50, "NP": 50, "CN": 25,
    }  # fmt: skip


def test_an_unknown_service_is_named():
    """The error lists those that are known."""
    with pytest.raises(KeyError, match="IN, BD"):
        rain_class(10, "XX")


@source("BMKG")
def test_rain_on_a_bed_is_litres():
    """BMKG, in Tempo: 1 mm is 1 L/m2; 64.5 mm on 50 m2 are 3,225 L."""
    assert litres_on(1, 50) == 50
    assert litres_on(64.5, 50) == pytest.approx(3225)


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


@source("PhilRice-KC4", "PhilRice-transplant")
@pytest.mark.parametrize("days", [3, 7, 15])
def test_gaps_are_filled_within_a_week(days):
    """PhilRice, Key Check 4: within 7 days; from 3 to 15 is the span between publishers."""
    assert c.GAP_FILL_LAST_D.value == 7
    assert c.GAP_FILL_LAST_D.holds(days)
