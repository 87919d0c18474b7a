"""A table of a TOML file as a dataclass, whoever's it is."""

from dataclasses import dataclass, field
from decimal import Decimal

import pytest

from assistant.wiring.filled import Faults, filled


@dataclass(frozen=True)
class Inner:
    """One table in another."""

    word: str
    most: int = 3

    def __post_init__(self) -> None:
        if self.word == "no":
            raise ValueError("word: say another")


@dataclass(frozen=True)
class Outer:
    """One of each kind."""

    inner: Inner
    name: str = "x"
    pause_s: float = 1.0
    fine: bool = False
    price: Decimal | None = None
    numbers: tuple[int, ...] = ()
    words: tuple[str, ...] = ()
    pairs: dict[str, str] = field(default_factory=dict)
    other: Inner | None = None


def test_what_is_written_becomes_the_dataclass_and_the_rest_keeps_its_default() -> None:
    """A whole number will do for one with a point; money keeps its digits."""
    table = {
        "inner": {"word": "a"},
        "pause_s": 2,
        "fine": True,
        "price": "0.80",
        "numbers": [200, 202],
        "words": ["a"],
        "pairs": {"a": "{b}"},
    }
    wanted = Outer(
        Inner("a"), "x", 2.0, True, Decimal("0.80"), (200, 202), ("a",), {"a": "{b}"}
    )
    assert filled(Outer, table) == wanted
    assert str(wanted.price) == "0.80"


# what the table says beside [inner]: its fault, at the place "line 1"
FAULTS = {
    "name": (3, "line 1.name is 3: expected words in quotes"),
    "pause_s": (float("inf"), "line 1.pause_s is inf: expected a number above 0"),
    "fine": ("yes", "line 1.fine is 'yes': expected true or false"),
    "price": (0.8, 'line 1.price is 0.8: expected an amount in quotes, such as "0.80"'),
    "numbers": ([True], "line 1.numbers is [True]: expected a list of whole numbers"),
    "words": ([], "line 1.words is []: expected a list of words in quotes"),
    "pairs": ({"a": 1}, "line 1.pairs is {'a': 1}: expected a table of words in quotes"),
    "other": ("a", "line 1.other: write it as a table"),
    "nam": ("a", "line 1.nam is not known; known are inner, name"),
}


@pytest.mark.parametrize("entry", FAULTS)
def test_a_fault_is_told_by_its_place_with_what_is_expected(entry: str) -> None:
    """One, and nothing else."""
    value, words = FAULTS[entry]
    with pytest.raises(Faults) as refused:
        filled(Outer, {"inner": {"word": "a"}, entry: value}, "line 1")
    (told,) = refused.value.all
    assert told.startswith(words)


def test_all_faults_are_told_also_those_of_tables_within() -> None:
    """And what a dataclass says of its entries together, beside the others."""
    table = {"inner": {"word": "no"}, "other": {"mots": 1, "most": -1}, "fine": 1}
    with pytest.raises(Faults) as refused:
        filled(Outer, table)
    assert refused.value.all == (
        "inner: word: say another",
        "fine is 1: expected true or false",
        "other.word is missing",
        "other.most is -1: expected a whole number, 0 or more",
        "other.mots is not known; known are word, most",
    )
