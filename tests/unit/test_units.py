"""Land units against published sizes, and the table's own order."""

from fractions import Fraction

import pytest

from assistant.agronomy.units import (
    FAMILIES,
    UNIT_KEYS,
    UNITS,
    UNSETTLED,
    LandUnit,
    Sure,
    land_unit,
    likely_units,
    region_code,
)


@pytest.mark.parametrize(
    ("key", "region", "m2", "source"),
    [
        ("acre", None, 4046.8564224, "definition: 43,560 ft2 of 0.3048 m"),
        ("hectare", None, 10_000, "SI Brochure 2019, table 8"),
        ("decimal", "BD", 40.469, "charteredjournal.com, Unit of land measurement"),
        ("bigha", "BD", 33 * 40.468564224, "the programme: 33 decimals"),
        ("bigha", "NP", 6772.63, "ram-krishna.com.np"),
        ("katha", "NP", 338.63, "ram-krishna.com.np"),
        ("dhur", "NP", 16.93, "ram-krishna.com.np"),
        ("ropani", "NP", 508.74, "74 ft x 74 ft: nirmaljoshi.wordpress.com, 2009"),
        ("aana", "NP", 31.80, "nirmaljoshi.wordpress.com, 2009"),
        ("bigha", "IN-WB", 1337.80, "charteredjournal.com"),
        ("katha", "IN-WB", 66.89, "charteredjournal.com: 720 ft2"),
        ("bigha", "IN-AS", 1337.80, "rhdreamhomes.com"),
        ("lessa", "IN-AS", 13.38, "a hundredth of the bigha of Assam"),
        ("guntha", "IN-MH", 101.17, "blog.inches2cm.com, 2018"),
        ("cent", "IN-TN", 40.469, "charteredjournal.com"),
        ("killa", "IN-PB", 4046.86, "islamabadlawyer.blogspot.com, 2013"),
        ("kanal", "IN-PB", 505.86, "blog.inches2cm.com, 2018"),
        ("marla", "IN-PB", 25.293, "blog.inches2cm.com, 2018"),
        ("rai", "TH", 1600, "thaihousebuild.com"),
        ("sao", "VN-N", 360, "lagiodau.com, 2021"),
        ("mau", "VN-N", 3600, "UN Statistical Paper M21"),
        ("mu", "CN", 666.7, "UN Statistical Paper M21"),
        ("tsubo", "JP", 3.30579, "GNU units 3.22, 2024"),
        ("tan", "JP", 991.736, "GNU units 3.22, 2024"),
        ("cho", "JP", 9917.36, "GNU units 3.22, 2024"),
        ("jia", "TW", 9699.2, "GNU units 3.22, 2024"),
        ("feddan", "EG", 4200.83, "encyclopaedia: 333 1/3 square qasaba of 3.55 m"),
        ("lima", "ZM", 2500, "the programme"),
        ("tumbak", "ID", 14.0625, "procil.id"),
    ],
)
def test_a_unit_has_its_published_size(key, region, m2, source):
    """To the digits that the source prints."""
    unit = land_unit(key, region)
    assert unit is not None, source
    assert float(unit.m2) == pytest.approx(m2, rel=2e-4), source


@pytest.mark.parametrize(
    ("key", "region"),
    [("bigha", None), ("bigha", "IN"), ("bigha", "IN-UP"), ("sao", "VN"), ("katha", None),
     ("kani", "BD"), ("bahu", "ID"), ("lima", "TZ"), ("cent", "US"), ("cent", None)],
)  # fmt: skip
def test_a_unit_without_a_settled_size_is_not_given_one(key, region):
    """632 to 6,773 m2 are called a bigha: never assumed."""
    assert land_unit(key, region) is None


def unit(key: str, region: str) -> LandUnit:
    """The unit of this name, which has a settled size there."""
    found = land_unit(key, region)
    assert found is not None
    return found


def test_the_narrowest_region_decides():
    """A state before its country, the country before everywhere."""
    assert unit("decimal", "IN-WB").region == ""
    assert unit("bigha", "IN-WB").region == "IN-WB"
    assert unit("bigha", "BD-13").region == "BD"


def test_parts_are_whole_parts_of_their_unit():
    """20 katha a bigha, 16 aana a ropani, 10 sao a mau, 20 marla a kanal."""
    for whole, part, region, count in (
        ("bigha", "katha", "NP", 20),
        ("bigha", "katha", "BD", 20),
        ("bigha", "katha", "IN-WB", 20),
        ("bigha", "lessa", "IN-AS", 100),
        ("ropani", "aana", "NP", 16),
        ("mau", "sao", "VN-N", 10),
        ("kanal", "marla", "IN-PB", 20),
        ("killa", "kanal", "IN-PB", 8),
    ):
        assert unit(whole, region).m2 / unit(part, region).m2 == count


def test_every_row_says_where_from_and_how_sure():
    """A size from memory or a single weak source is never taken without a yes."""
    for unit in UNITS:
        assert unit.m2 > 0
        assert unit.source.publisher
        assert (unit.source.publisher == "from memory") is (unit.sure is Sure.MEMORY)
        assert isinstance(unit.m2, Fraction)


def test_families_name_known_units():
    """And what is offered is known and sized there."""
    assert {key for family in FAMILIES for key in family} <= UNIT_KEYS
    assert UNSETTLED.keys() <= UNIT_KEYS
    for region in (None, "BD", "IN", "IN-WB", "NP", "TH", "VN-N", "VN-S", "ZM", "KE", "FR"):
        assert all(land_unit(key, region) for key in likely_units(region))


@pytest.mark.parametrize(
    ("typed", "code"),
    [("in-wb", "IN-WB"), (" BD ", "BD"), ("VN-N", "VN-N"), ("XX", None), ("ZZ", None),
     ("Mars", None), ("", None), ("IN-", None), ("EU", None), ("001", None), ("I1", None)],
)  # fmt: skip
def test_a_region_is_a_code_of_a_country(typed, code):
    """ISO 3166, whatever its case."""
    assert region_code(typed) == code
