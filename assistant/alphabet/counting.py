"""How many septets, UCS-2 units and segments a text takes.

Source: 3GPP TS 23.040 clause 9.2.3.24.1. A segment holds 140 octets; in a text of several, the
header that joins them takes six octets of each (8-bit reference).
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise

from assistant.alphabet.tables import DOUBLE, SINGLE


class Encoding(StrEnum):
    """How a text travels."""

    GSM7 = "gsm7"
    UCS2 = "ucs2"


ALONE = {Encoding.GSM7: 160, Encoding.UCS2: 70}
"""Units in a text of one segment."""

JOINED = {Encoding.GSM7: 153, Encoding.UCS2: 67}
"""Units in each segment of a longer text."""

_GSM_TEXT = re.compile("[" + re.escape("".join(sorted(SINGLE | DOUBLE))) + "]*")
_ASTRAL = re.compile("[\U00010000-\U0010ffff]")
_IS_WIDE: Mapping[Encoding, Callable[[str], bool]] = {
    Encoding.GSM7: DOUBLE.__contains__,
    Encoding.UCS2: "\uffff".__lt__,
}


@dataclass(frozen=True)
class SegmentCost:
    """What a text takes: `units` [septets or UCS-2 units] and `segments`.

    `room_left` [units] is what its last segment can still take. The first character beyond
    the room of a single segment turns it into two smaller ones.
    """

    encoding: Encoding
    units: int
    segments: int
    room_left: int


def septets(text: str) -> int | None:
    """Count the septets of `text`; None when the GSM alphabet lacks one of its characters."""
    if _GSM_TEXT.fullmatch(text) is None:
        return None
    return len(text) + sum(map(text.count, DOUBLE))


def ucs2_units(text: str) -> int:
    """Count the 16-bit units of `text`: two for each character beyond U+FFFF."""
    return len(text) + len(_ASTRAL.findall(text))


def measure(text: str) -> tuple[Encoding, int]:
    """Say how `text` travels and in how many units: GSM 7-bit whenever it can."""
    count = septets(text)
    if count is None:
        return Encoding.UCS2, ucs2_units(text)
    return Encoding.GSM7, count


def cost(text: str) -> SegmentCost:
    """Count what `text` takes; an empty text is one empty segment."""
    encoding, units = measure(text)
    if units <= ALONE[encoding]:
        return SegmentCost(encoding, units, 1, ALONE[encoding] - units)
    starts, used = _starts(text, encoding, units)
    return SegmentCost(encoding, units, len(starts), JOINED[encoding] - used)


def split(text: str) -> tuple[str, ...]:
    """Cut `text` into its segments, no character across two: as many as `cost` counts."""
    encoding, units = measure(text)
    if units <= ALONE[encoding]:
        return (text,)
    starts, _ = _starts(text, encoding, units)
    return tuple(text[start:end] for start, end in pairwise([*starts, len(text)]))


def _starts(text: str, encoding: Encoding, units: int) -> tuple[list[int], int]:
    """Find where each segment begins, and the units used in the last."""
    room = JOINED[encoding]
    if units == len(text):  # no character is wide, so all segments but the last are full
        even = list(range(0, units, room))
        return even, units - even[-1]
    is_wide = _IS_WIDE[encoding]
    starts, used = [0], 0
    for index, character in enumerate(text):
        width = 2 if is_wide(character) else 1
        if used + width > room:
            starts.append(index)
            used = 0
        used += width
    return starts, used
