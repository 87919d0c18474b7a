"""The GSM 7-bit default alphabet and its extension table.

Source: 3GPP TS 23.038, clauses 6.2.1 and 6.2.1.1. The tables of its Annex A are read
(`national.py`) and never sent by: phones that lack them show garbage, so we send UCS-2 instead.
"""

ESCAPE = "\x1b"
"""The code that calls one character of the extension table; itself no character."""

DEFAULT = (
    "@£$¥èéùìòÇ\nØø\rÅå"
    "Δ_ΦΓΛΩΠΨΣΘΞ\x1bÆæßÉ"
    " !\"#¤%&'()*+,-./"
    "0123456789:;<=>?"
    "¡ABCDEFGHIJKLMNO"
    "PQRSTUVWXYZÄÖÑÜ§"
    "¿abcdefghijklmno"
    "pqrstuvwxyzäöñüà"
)
"""The character of each code from 0x00 to 0x7F, a row of sixteen a line."""

EXTENSION = {
    0x0A: "\f",  # page break
    0x14: "^",
    0x28: "{",
    0x29: "}",
    0x2F: "\\",
    0x3C: "[",
    0x3D: "~",
    0x3E: "]",
    0x40: "|",
    0x65: "€",
}
"""The character of each code after an ESCAPE; codes not listed have none."""

SINGLE = frozenset(DEFAULT) - {ESCAPE}
"""Characters of one septet."""

DOUBLE = frozenset(EXTENSION.values())
"""Characters of two septets: an ESCAPE and a code."""
