"""What a phone can show and what a text costs: the one room that counts characters.

Facts of 3GPP TS 23.038 (alphabets, packing) and 3GPP TS 23.040 (segments). A septet is one
7-bit code of the GSM alphabet, a UCS-2 unit is one UTF-16 code unit of 16 bits.
"""

from assistant.alphabet.counting import (
    Encoding,
    SegmentCost,
    cost,
    measure,
    septets,
    split,
    ucs2_units,
)
from assistant.alphabet.lookalikes import plain
from assistant.alphabet.packing import NotGsmError, from_septets, pack, to_septets, unpack
from assistant.alphabet.screen import fits_screen, screen_room, screen_units

__all__ = [
    "SegmentCost",
    "Encoding",
    "NotGsmError",
    "cost",
    "fits_screen",
    "from_septets",
    "measure",
    "pack",
    "plain",
    "screen_room",
    "screen_units",
    "septets",
    "split",
    "to_septets",
    "ucs2_units",
    "unpack",
]
