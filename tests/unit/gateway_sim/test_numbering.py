"""Which numbers the operator knows."""

import pytest

from gateway_sim.errors import NumberError
from gateway_sim.numbering import number


@pytest.mark.parametrize(
    "typed",
    [
        "+447700900101",
        "07700900101",
        "+44 7700 900 101",
        "07700 900-101",
        "00447700900101",
        "447700900101",
        "+44 (7700) 900101",
    ],
)
def test_a_number_of_fiction_is_known_however_it_is_written(typed: str) -> None:
    """Ofcom's range for drama, in the usual spellings."""
    assert number(typed) == "+447700900101"


def test_the_larger_test_range_is_known() -> None:
    """+99900 and seven digits: our own range under an unassigned country code."""
    assert number("+99900 1234567") == "+999001234567"


@pytest.mark.parametrize(
    "typed",
    ["", "abc", "+447700901000", "+4477009001011", "+99900123456", "07700900１01", "112"],
)
def test_any_other_number_is_refused_with_the_ones_to_use(typed: str) -> None:
    """Nobody's real telephone, and a way out in the same line."""
    with pytest.raises(NumberError, match=r"use \+447700900000 to \+447700900999"):
        number(typed)
