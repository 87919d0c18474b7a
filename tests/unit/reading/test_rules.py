"""Rules that a speaker of a language can write: groups, strokes, beginnings, accents."""

import pytest

from assistant.reading.text.fold import read_tokens
from assistant.reading.text.rules import WIDTH, bound, read_rule


def finds(rule: str, text: str, strict: bool = False) -> bool:
    """Whether one rule finds itself in a text."""
    words = tuple(token for token in read_tokens(text) if token.is_word or token.is_number)
    book = bound([("it", read_rule(rule))], manners=("please", "sir"))
    return bool(book.found(words, strict))


@pytest.mark.parametrize(
    ("rule", "text", "expected"),
    [
        ("snake/viper + bit/bitten", "a viper has bitten my son", True),
        ("snake/viper + bit/bitten", "bitten by a snake", True),
        ("snake/viper + bit/bitten", "a snake in the bed", False),
        ("river took/takes", "the river took it", True),
        ("river took", "the river has it, he took", False),
        ("drown*", "they are drowning", True),
        ("drown*", "brown", False),
        ("fell in|fallen into + well", "she has fallen into the well", True),
        ("water/flood took/takes all", "the flood took all", True),
        ("don't stop", "don't stop", True),
        ("1cm", "let in 1 cm", True),
        ("= enough/basta", "Enough!", True),
        ("= enough/basta", "enough water", False),
        ("= enough | leave me", "please leave me sir", True),
        ("= enough | leave me", "leave me some water", False),
    ],
)
def test_a_rule_finds_its_words(rule: str, text: str, expected: bool) -> None:
    assert finds(rule, text) is expected


def test_groups_must_not_lie_far_apart() -> None:
    """Two halves of two stories are no cry."""
    between = "word " * WIDTH
    assert finds("child + water", f"child {between[:-10]} water")
    assert not finds("child + water", f"child {between} more water")


def test_accents_count_where_the_text_has_any() -> None:
    """Vietnamese: lu is written for both, lụ is not lũ."""
    assert finds("lũ về", "lũ về rồi", strict=True)
    assert not finds("lũ về", "lụ về rồi", strict=True)
    assert finds("lũ về", "lu ve roi")


@pytest.mark.parametrize("rule", ["", "a +", "| b", "ab*", "don't stop/a-b c"])
def test_a_faulty_rule_is_told(rule: str) -> None:
    with pytest.raises(ValueError, match="expected|begins"):
        read_rule(rule)


def test_names_found_come_with_the_rule_that_found_them() -> None:
    book = bound([("one", read_rule("a + b")), ("two", read_rule("c"))])
    found = book.found(read_tokens("b and a"), strict=False)
    assert set(found) == {"one"}
    assert found["one"].covers(read_tokens("a")[0])
