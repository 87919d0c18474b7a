"""What a line of a season accepts as the text that it expects."""

import pytest

from scenarios.heard import differences, read_expected

TEXT = (
    "A day 5:\nUncover and let in 1 cm of water, about 40 pails. Seed 14.5 kg\n1 Done 2 Not up"
)


@pytest.mark.parametrize(
    "words",
    [
        "Uncover",
        "uncover | 40 PAILS",
        "day 5: Uncover and let in",
        "1 cm | 40 pails | 1 Done",
        "14.5 kg",
        "Uncover | but not transplant",
        "",
    ],
)
def test_a_text_with_all_pieces_in_order_is_as_expected(words: str) -> None:
    """Case, line breaks and what stands between do not matter."""
    assert differences(read_expected(words), TEXT) == ()


@pytest.mark.parametrize(
    ("words", "fault"),
    [
        ("transplant", "not in it: transplant"),
        ("40 pails | Uncover", "in it, but not in this order: Uncover"),
        ("Uncover | but not pails", "should not be in it: pails"),
        # Whole numbers only: these digits stand inside others.
        ("4.5 kg", "not in it: 4.5 kg"),
        ("0 pails", "not in it: 0 pails"),
        ("Seed 14", "not in it: Seed 14"),
        ("5 kg", "not in it: 5 kg"),
    ],
)
def test_what_is_missing_or_should_not_be_there_is_named(words: str, fault: str) -> None:
    """Each piece that does not hold is told on its own."""
    assert differences(read_expected(words), TEXT) == (fault,)


def test_a_whole_text_is_compared_without_its_line_breaks() -> None:
    """`hears exactly` wants nothing more and nothing less."""
    expected = read_expected("Noted. Good.", whole=True)
    assert differences(expected, "Noted.\nGood.") == ()
    assert differences(expected, "Noted. Good. Bye.") == ("not exactly: Noted. Good.",)
