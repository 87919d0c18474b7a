"""Segments and screens: sizes from the standard, counts against another library."""

import pytest
import smsutil
from hypothesis import given
from hypothesis import strategies as st

from assistant.alphabet import (
    Encoding,
    SegmentCost,
    cost,
    fits_screen,
    screen_room,
    screen_units,
    septets,
    split,
    ucs2_units,
)

GSM, UCS = Encoding.GSM7, Encoding.UCS2

# 3GPP TS 23.040 clause 9.2.3.24.1 (140 octets; header of 6 octets in each of several):
# 160 and 153 septets, 70 and 67 UCS-2 units. The rest is arithmetic on these.
SEGMENTS = {
    "nothing is one empty segment": ("", SegmentCost(GSM, 0, 1, 160)),
    "160 letters fill one segment": ("a" * 160, SegmentCost(GSM, 160, 1, 0)),
    "161 letters need two": ("a" * 161, SegmentCost(GSM, 161, 2, 145)),
    "306 letters fill two": ("a" * 306, SegmentCost(GSM, 306, 2, 0)),
    "307 letters need three": ("a" * 307, SegmentCost(GSM, 307, 3, 152)),
    "80 euro signs fill one": ("€" * 80, SegmentCost(GSM, 160, 1, 0)),
    "a euro sign never straddles": ("a" * 152 + "€" * 5, SegmentCost(GSM, 162, 2, 143)),
    "70 Devanagari signs fill one": ("क" * 70, SegmentCost(UCS, 70, 1, 0)),
    "71 need two": ("क" * 71, SegmentCost(UCS, 71, 2, 63)),
    "134 fill two": ("क" * 134, SegmentCost(UCS, 134, 2, 0)),
    "135 need three": ("क" * 135, SegmentCost(UCS, 135, 3, 66)),
    "35 emoji fill one": ("🌾" * 35, SegmentCost(UCS, 70, 1, 0)),
    "an emoji never straddles": ("🌾" * 36, SegmentCost(UCS, 72, 2, 61)),
    "one curly quote turns all into UCS-2": ("a" * 69 + "’", SegmentCost(UCS, 70, 1, 0)),
}

MIXED = st.text(
    st.one_of(
        st.sampled_from("abc 0123\n@_"),
        st.sampled_from("€{}[]~^|\\"),
        st.sampled_from("éÇçहিệ’🌾😀"),
    ),
    max_size=500,
)


@pytest.mark.parametrize(("text", "expected"), SEGMENTS.values(), ids=SEGMENTS.keys())
def test_a_text_costs_what_the_standard_says(text: str, expected: SegmentCost) -> None:
    """Encoding, units, segments and room at each edge."""
    assert cost(text) == expected


@given(st.one_of(MIXED, st.text(st.sampled_from("ab€ "), max_size=700)))
def test_segments_are_those_of_an_independent_library(text: str) -> None:
    """Encoding and segments equal smsutil's (PyPI, 1.1.3) on mixed texts."""
    theirs = smsutil.split(text)
    if text:  # smsutil calls an empty text UTF-16
        assert (cost(text).encoding is GSM) == (theirs.encoding == "gsm0338")
        assert split(text) == tuple(part.content for part in theirs.parts)
    assert cost(text).segments == max(1, len(theirs.parts))


@given(MIXED)
def test_segments_joined_give_the_text_and_each_fits(text: str) -> None:
    """Splitting loses nothing and no segment is longer than its room."""
    whole, parts = cost(text), split(text)
    assert "".join(parts) == text
    assert len(parts) == whole.segments
    count = ucs2_units if whole.encoding is UCS else septets
    sizes = [count(part) or 0 for part in parts]
    room = {GSM: (160, 153), UCS: (70, 67)}[whole.encoding][len(parts) > 1]
    assert sum(sizes) == whole.units and max(sizes) <= room
    assert whole.room_left == room - sizes[-1]


@given(st.text())
def test_ucs2_units_are_those_of_python(text: str) -> None:
    """Units equal the length Python's own UTF-16 codec gives."""
    assert ucs2_units(text) == len(text.encode("utf-16-be")) // 2


@pytest.mark.parametrize("text", ["ç", "`", "\x1b", "ê", "ã", "\u00a0", "\t", "ि"])
def test_characters_outside_the_alphabet_have_no_septets(text: str) -> None:
    """Among them the small c with cedilla, the backtick and the escape itself."""
    assert septets("ok " + text) is None


# 3GPP TS 29.002: a USSD string has up to 160 octets, so 80 units; TS 23.038 clause 6.1.2.3.1:
# 182 septets.
@pytest.mark.parametrize(
    ("text", "units", "room"),
    [
        ("a" * 182, 182, 0),
        ("a" * 183, 183, -1),
        ("€" * 91, 182, 0),
        ("€" * 91 + "a", 183, -1),
        ("क" * 80, 80, 0),
        ("क" * 81, 81, -1),
        ("a" * 79 + "🌾", 81, -1),
        ("", 0, 182),
    ],
)
def test_a_screen_holds_182_septets_or_80_units(text: str, units: int, room: int) -> None:
    """What fits, what is left, and by how much a text is too long."""
    assert screen_units(text) == units
    assert screen_room(text) == room
    assert fits_screen(text) is (room >= 0)


def test_a_smaller_screen_can_be_asked_for() -> None:
    """Some operators show less than the standard allows."""
    assert fits_screen("a" * 140, septets_max=140)
    assert not fits_screen("a" * 141, septets_max=140)
    assert not fits_screen("क" * 61, ucs2_max=60)
