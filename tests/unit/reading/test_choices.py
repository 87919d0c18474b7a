"""A name among other words and numbers. Sentences of our own."""

import pytest

from assistant.reading import read_choice
from assistant.wiring.lexicons import open_lexicons

LEXICON = open_lexicons(("en",))["en"]
MATS = (("Mats left", "left", "remained"), ("Just enough", "enough"), ("Too few", "not enough"))
COLOURS = (("Green",), ("Yellow", "light green"))


@pytest.mark.parametrize(
    ("words", "names", "place"),
    [
        ("leaves are light green", COLOURS, 1),
        ("leaves are green", COLOURS, 0),
        ("it was not enough", MATS, 2),
        ("it was enough", MATS, 1),
        ("12 mats remained", MATS, 0),
        ("3 mats left", MATS, 0),
        ("3", MATS, 2),
        ("left 3", MATS, None),
        ("2 acres left", MATS, None),
    ],
)
def test_a_longer_name_beats_its_part_and_a_count_is_no_digit(
    words: str, names: tuple[tuple[str, ...], ...], place: int | None
) -> None:
    """Light green is no green; twelve mats are no twelfth choice."""
    assert read_choice(words, names, LEXICON).value == place
