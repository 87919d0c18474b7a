"""Look-alike punctuation becomes plain; letters and numbers stay what they are.

The pairs are common practice, no source; characters and names are Unicode's.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.alphabet import Encoding, cost, plain, septets

PAIRS = {
    "curly quotes": ("“Don’t” ‘go’", "\"Don't\" 'go'"),
    "angle quotes": ("«oui»", '"oui"'),
    "dashes and minus": ("5–6 days — no, −1", "5-6 days - no, -1"),
    "ellipsis": ("wait…", "wait..."),
    "bullets": ("• soak\n• drain", "- soak\n- drain"),
    "spaces that do not break": ("5\u00a0kg\u202f!", "5 kg !"),
    "a times sign": ("30 × 60 cm", "30 x 60 cm"),
    "what cannot be seen": ("a\u200bb\ufeffc\u00add", "abcd"),
    "line ends of all kinds": ("a\r\nb\rc\u2028d", "a\nb\nc\nd"),
    "an accent typed apart": ("bie\u0301n", "bién"),
    "two accents typed apart": ("Vie\u0323\u0302t", "Việt"),
}


@pytest.mark.parametrize(("typed", "expected"), PAIRS.values(), ids=PAIRS.keys())
def test_look_alikes_become_plain(typed: str, expected: str) -> None:
    """Each look-alike turns into what every phone has."""
    assert plain(typed) == expected


@pytest.mark.parametrize("text", ["ç ê ã", "1½ kg", "5 m²", "20 °C", "क्\u200dष", "₹5", "😀"])
def test_letters_and_numbers_are_never_changed(text: str) -> None:
    """A changed fraction, power or letter would change what the text says."""
    assert plain(text) == text


def test_a_plain_text_takes_half_the_segments() -> None:
    """One curly apostrophe costs a whole segment more, and plain saves it."""
    text = "Don’t flood the bed before day 5. " * 4
    assert cost(text).segments == 3
    assert cost(plain(text)).segments == 1
    assert cost(plain(text)).encoding is Encoding.GSM7


@given(st.text(st.sampled_from("abé 5\r\n\u0301\u0300’—…•\u00a0\u00ad\u200b\u2028ि")))
def test_plain_twice_is_plain_once(text: str) -> None:
    """Applying it again changes nothing."""
    assert plain(plain(text)) == plain(text)


@given(st.text(st.characters(max_codepoint=0x7E, min_codepoint=0x20, exclude_characters="`")))
def test_gsm_text_is_left_alone(text: str) -> None:
    """A text that is plain already does not change."""
    assert septets(text) is not None
    assert plain(text) == text
