"""A deed told in one part of a text, and what beside it takes it back."""

import pytest

from assistant.reading import told_in_part
from assistant.wiring.lexicons import open_lexicons


@pytest.mark.parametrize(
    ("language", "text", "part"),
    [
        ("en", "we drained the bed because my cousin kept nagging", "we drained the bed"),
        ("en", "the parrots laughed while we sowed the mats", "we sowed the mats"),
        ("sw", "tumefunika kitalu kwa sababu jirani alipiga baragumu", "tumefunika kitalu"),
        ("fr", "on a semé toute la planche parce que le tambour insistait", "on a semé"),
        ("vi", "tôi gieo xong hết rồi, thằng út đàn ca suốt buổi", "tôi gieo xong hết"),
    ],
)
def test_the_part_that_tells_a_deed_is_found(language: str, text: str, part: str) -> None:
    found = told_in_part(text, open_lexicons()[language])
    assert found is not None
    assert found.startswith(part)


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "we drained the bed, but the parrots laughed"),
        ("en", "we drained the bed while the parrots laughed?"),
        ("en", "we drained the bed, the other one not"),
        ("en", "we drained the bed, the parrots will laugh"),
        ("en", "we drained half the bed because the parrots laughed"),
        ("en", "the parrots drained the bed because they laughed"),
        ("en", "we drained the bed"),
        ("sw", "tumefunika kitalu lakini jirani alipiga baragumu"),
    ],
)
def test_what_takes_a_deed_back_leaves_no_part(language: str, text: str) -> None:
    assert told_in_part(text, open_lexicons()[language]) is None
