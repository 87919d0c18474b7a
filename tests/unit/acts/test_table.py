"""The learned table: what it weighs, and that a broken file is told."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.acts import Act, TableError, read_table
from assistant.acts.pieces import LONGEST, pieces, rows_of
from assistant.acts.table import written
from assistant.wiring.hearing import open_table

TABLE = open_table()


@given(st.text(max_size=2 * LONGEST))
def test_any_text_is_weighed_and_the_weights_add_up_to_one(text: str) -> None:
    """Emoji, half a letter, another script, nothing at all."""
    weights = TABLE.weigh(text)
    assert set(weights) == set(Act)
    assert sum(weights.values()) == pytest.approx(1)


def test_the_same_text_weighs_the_same() -> None:
    """No chance in it: a case can be looked into again."""
    assert dict(TABLE.weigh("nyoka kaniuma")) == dict(TABLE.weigh("nyoka kaniuma"))


@pytest.mark.parametrize(
    ("text", "act"),
    [
        ("my child drank the spray", Act.HARM),
        ("nyoka amemuuma mke wangu", Act.HARM),
        ("lũ cuốn hết mạ rồi", Act.DANGER),
        ("do not send me these messages", Act.REFUSE),
        ("how much water today?", Act.QUESTION),
    ],
)
def test_plain_texts_weigh_most_as_what_they_are(text: str, act: Act) -> None:
    weights = TABLE.weigh(text)
    assert max(weights, key=lambda each: weights[each]) is act


def test_marks_case_and_drawn_out_letters_leave_the_words_what_they_are() -> None:
    """People type without marks and with many letters."""
    words = {piece for piece in pieces("Nooooo água") if piece.startswith("w")}
    assert words == {"wnoo", "wagua"}


def test_any_number_is_the_same_piece() -> None:
    assert "b^ 0" in pieces("7") and "w000" in pieces("400")


def test_what_is_beyond_the_longest_text_is_not_looked_at() -> None:
    long = "a " * LONGEST
    assert rows_of(long, TABLE.bits) == rows_of(long + "poison", TABLE.bits)


def test_a_table_goes_through_its_file_unchanged() -> None:
    again = read_table(written(TABLE))
    assert again.weigh("help me") == TABLE.weigh("help me")


@pytest.mark.parametrize("cut", [0, 3, 40, 5000])
def test_a_cut_file_is_told_with_what_to_do(cut: int) -> None:
    with pytest.raises(TableError, match=r"bytes that are none|nursery acts train"):
        read_table(written(TABLE)[:cut])
