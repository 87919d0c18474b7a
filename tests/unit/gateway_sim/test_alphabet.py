"""The operator's counting, against the standard and another library."""

import pytest
import smsutil
from hypothesis import given
from hypothesis import strategies as st

from gateway_sim.alphabet import carried, cut, encoding_of, head, septets, size

# Septets by 3GPP TS 23.038 clauses 6.2.1 and 6.2.1.1 (default alphabet and its extension).
SEPTETS = {
    "hello": "68656C6C6F",
    "How are you?": "486F772061726520796F753F",
    "2 € par mois": "32201B6520706172206D6F6973",
    "@@@@@@@": "00000000000000",
    "{}": "1B281B29",
    "[~]|\\^": "1B3C1B3D1B3E1B401B2F1B14",
    "Ää": "5B7B",
    "ñÑ¿¡": "7D5D6040",
    "§": "5F",
    "Δ_ΦΓΛΩΠΨΣΘΞ": "101112131415161718191A",
    "line1\nline2": "6C696E65310A6C696E6532",
}

# 3GPP TS 23.040 clause 9.2.3.24.1: 160 septets or 70 UCS-2 units in a text that stands alone,
# 153 or 67 in each part of a joined one; no escape or surrogate pair is split.
CUTS = {
    "no letter is one text": ("", "GSM-7", 0, 1),
    "160 letters are one text": ("a" * 160, "GSM-7", 160, 1),
    "161 letters are two": ("a" * 161, "GSM-7", 161, 2),
    "306 letters are two": ("a" * 306, "GSM-7", 306, 2),
    "307 letters are three": ("a" * 307, "GSM-7", 307, 3),
    "80 euro signs are one": ("€" * 80, "GSM-7", 160, 1),
    "a euro sign at the seam moves on whole": ("a" * 152 + "€" + "a" * 152, "GSM-7", 306, 3),
    "70 Devanagari letters are one": ("क" * 70, "UCS-2", 70, 1),
    "71 Devanagari letters are two": ("क" * 71, "UCS-2", 71, 2),
    "an ear of rice counts twice": ("🌾" * 35, "UCS-2", 70, 1),
    "an ear of rice is not split": ("🌾" * 67, "UCS-2", 134, 3),
    "a small c with cedilla is not in the alphabet": ("ç", "UCS-2", 1, 1),
    "a capital one is": ("Ç", "GSM-7", 1, 1),
}

TEXTS = st.text(st.sampled_from("ab 1@€{|éÇçক🌾😀\n"), max_size=400)


@pytest.mark.parametrize(("text", "expected"), SEPTETS.items())
def test_letters_become_the_septets_of_the_standard(text: str, expected: str) -> None:
    """One septet for each letter, two for those of the extension."""
    assert septets(text).hex().upper() == expected


@pytest.mark.parametrize(("text", "encoding", "units", "parts"), CUTS.values(), ids=CUTS.keys())
def test_a_text_is_cut_as_the_standard_says(
    text: str, encoding: str, units: int, parts: int
) -> None:
    """Alphabet, size and number of parts on both sides of each limit."""
    found = cut(text)
    assert (found.encoding, found.units, found.segments) == (encoding, units, parts)
    assert "".join(found.parts) == text


@given(TEXTS.filter(bool))
def test_parts_are_those_of_another_library(text: str) -> None:
    """The same alphabet and parts as smsutil 1.1.3 (PyPI)."""
    found, theirs = cut(text), smsutil.split(text)
    assert list(found.parts) == [part.content for part in theirs.parts]
    assert (found.encoding == "GSM-7") == (theirs.encoding == "gsm0338")


@given(TEXTS, st.integers(min_value=2, max_value=182))
def test_a_cut_screen_fits_and_lacks_less_than_one_letter(text: str, limit: int) -> None:
    """As many letters as fit, and no more."""
    encoding = encoding_of(text)
    shown = head(text, limit, encoding)
    assert text.startswith(shown)
    assert size(shown, encoding) <= limit
    rest = text[len(shown) :]
    assert not rest or size(shown + rest[0], encoding) > limit


def test_a_broken_surrogate_is_replaced() -> None:
    """Half an emoji, which JSON can write, becomes U+FFFD and not a crash."""
    assert carried("a\ud83c!") == "a\ufffd!"
