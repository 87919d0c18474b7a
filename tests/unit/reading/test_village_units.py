"""Sizes in the land units of one village. Expected values are the sizes that were set, times
the number; acre 4,046.8564224 m2 (international definition)."""

from collections.abc import Mapping

import pytest

from assistant.people import VillageUnit
from assistant.reading import Lexicon, Outcome, Reason, read_area
from assistant.reading.village_units import is_same_everywhere, is_unit_name, with_units

HERE = (
    VillageUnit(("bigha",), 1338.0),
    VillageUnit(("katha",), 66.9),
    VillageUnit(("plot",), 400.0),
    VillageUnit(("rante", "lante"), 400.0),
    VillageUnit(("line",), 50.0),
    VillageUnit(("thửa",), 300.0),
)
ACRE = 4046.8564224


@pytest.mark.parametrize(
    ("language", "text", "m2"),
    [
        ("en", "2 bigha", 2676),
        ("en", "one and a half bighas", 2007),
        ("en", "1 bigha 5 katha", 1672.5),
        ("en", "half a plot", 200),
        ("en", "2 plots of rice", 800),
        ("en", "3 lines", 150),
        ("en", "lante 2", 800),
        ("en", "my plot is 2 acres", 2 * ACRE),
        ("hi", "2 बीघा", 2676),
        ("hi", "do bigha", 2676),
        ("bn", "২ বিঘা", 2676),
        ("sw", "plot 2 na nusu", 1000),
        ("vi", "2 thửa", 600),
        ("vi", "2 thua", 600),
    ],
)
def test_a_size_is_read_by_the_units_of_the_village(
    lexicons: Mapping[str, Lexicon], language: str, text: str, m2: float
) -> None:
    """A name that the list knows counts in all its spellings and scripts."""
    reading = read_area(text, with_units(lexicons[language], HERE))
    assert reading.outcome is Outcome.UNDERSTOOD
    assert reading.value == pytest.approx(m2)


def test_the_size_is_shown_in_square_metres_too(lexicons: Mapping[str, Lexicon]) -> None:
    """So that a wrong one is seen by who knows the field."""
    reading = read_area("2 bigha", with_units(lexicons["en"], HERE))
    assert reading.words == "2 bigha (2,676 m2)"


def test_without_them_it_is_asked_back_as_before(lexicons: Mapping[str, Lexicon]) -> None:
    """The list of the language is not touched by another village's."""
    with_units(lexicons["en"], HERE)
    assert with_units(lexicons["en"], ()) is lexicons["en"]
    assert read_area("2 bigha", lexicons["en"]).reason is Reason.REGION_UNIT
    assert read_area("2 plots", lexicons["en"]).reason is Reason.UNMEASURED_UNIT


def test_a_bare_number_is_offered_in_them_first(lexicons: Mapping[str, Lexicon]) -> None:
    """Two of them, then what is usual in the region."""
    reading = read_area("2", with_units(lexicons["en"], HERE))
    assert [each.words for each in reading.options][:3] == ["2 bigha", "2 katha", "2 ha"]


def test_sides_of_a_plot_are_no_plot(lexicons: Mapping[str, Lexicon]) -> None:
    """ "A plot of 50 by 100" is asked in feet or metres."""
    reading = read_area("a plot of 50 by 100", with_units(lexicons["en"], HERE))
    assert (reading.reason, reading.value) == (Reason.MISSING_UNIT, 5000.0)


def test_names_are_words_and_none_of_units_that_are_the_same_everywhere(
    lexicons: Mapping[str, Lexicon],
) -> None:
    """A hectare is ten thousand square metres in every village."""
    assert is_unit_name("rante") and is_unit_name("small plot") and is_unit_name("बीघा")
    assert not any(map(is_unit_name, ("", "2 bigha", "a b c", "plot!", "x" * 21)))
    same = ("ha", "acre", "acres", "हेक्टेयर", "m2", "ekari", "mét vuông")
    assert all(is_same_everywhere(each, lexicons) for each in same)
    assert not any(is_same_everywhere(each, lexicons) for each in ("bigha", "plot", "sào"))
