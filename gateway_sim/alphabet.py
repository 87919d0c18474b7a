"""How a phone network writes texts: the GSM 7-bit alphabet, UCS-2, and their sizes.

The operator's own reading of 3GPP TS 23.038 (alphabets, 6.2.1) and TS 23.040 (joined texts,
9.2.3.24.1). National shift tables are not used: few basic phones read them.
"""

from collections.abc import Iterable
from dataclasses import dataclass

GSM_7BIT = "GSM-7"
UCS_2 = "UCS-2"

# 3GPP TS 23.038 6.2.1: a character's place in this string is its septet.
_DEFAULT = (
    "@£$¥èéùìòÇ\nØø\rÅå"
    "Δ_ΦΓΛΩΠΨΣΘΞ\x1bÆæßÉ"
    " !\"#¤%&'()*+,-./"
    "0123456789:;<=>?"
    "¡ABCDEFGHIJKLMNO"
    "PQRSTUVWXYZÄÖÑÜ§"
    "¿abcdefghijklmno"
    "pqrstuvwxyzäöñüà"
)
_ESCAPE = 0x1B
# 3GPP TS 23.038 6.2.1.1: each of these costs two septets, the escape and the one given here.
_EXTENSION = {
    0x0A: "\f",
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
_SEPTETS: dict[str, bytes] = {
    **{ch: bytes([code]) for code, ch in enumerate(_DEFAULT) if code != _ESCAPE},
    **{ch: bytes([_ESCAPE, code]) for code, ch in _EXTENSION.items()},
}

# Units in a text that stands alone, and in each part of a joined one (6 octets of header).
_ROOM = {GSM_7BIT: (160, 153), UCS_2: (70, 67)}
MOST_SEGMENTS = 255  # TS 23.040 9.2.3.24.1: the total is one octet


@dataclass(frozen=True)
class Cut:
    """A text as it travels: its alphabet, its size in units of that alphabet, its parts."""

    encoding: str
    units: int
    parts: tuple[str, ...]

    @property
    def segments(self) -> int:
        """How many SMS the text costs; an empty text is one."""
        return len(self.parts)


def encoding_of(text: str) -> str:
    """GSM-7 where every character is in the default alphabet or its extension, else UCS-2."""
    return GSM_7BIT if all(ch in _SEPTETS for ch in text) else UCS_2


def septets(text: str) -> bytes:
    """The text in the GSM 7-bit alphabet, one septet in each octet (not packed).

    Raises KeyError for a character that is not in the alphabet.
    """
    return b"".join(_SEPTETS[ch] for ch in text)


def from_septets(codes: bytes) -> str:
    """The text of septets, one in each octet; an escape without a character of its own shows
    that of the next code (6.2.1)."""
    shown, place = "", 0
    while place < len(codes):
        code = codes[place]
        if code == _ESCAPE and place + 1 < len(codes):
            place += 1
            following = codes[place]
            shown += _EXTENSION.get(following, _DEFAULT[following])
        else:
            shown += " " if code == _ESCAPE else _DEFAULT[code]
        place += 1
    return shown


def size(text: str, encoding: str) -> int:
    """Units that the text takes: septets, or UTF-16 code units (an emoji takes two)."""
    return sum(_width(ch, encoding) for ch in text)


def cut(text: str) -> Cut:
    """Cut a text into the parts that travel; escape and surrogate pairs stay whole."""
    encoding = encoding_of(text)
    units = size(text, encoding)
    alone, joined = _ROOM[encoding]
    parts = (text,) if units <= alone else tuple(_fill(text, encoding, joined))
    return Cut(encoding, units, parts)


def head(text: str, limit: int, encoding: str) -> str:
    """As much of the text's beginning as fits in `limit` units."""
    return next(iter(_fill(text, encoding, limit)), "")


def carried(text: str) -> str:
    """The text as a network can carry it: a broken surrogate becomes a replacement sign."""
    return text.encode("utf-16", "surrogatepass").decode("utf-16", "replace")


def _fill(text: str, encoding: str, room: int) -> Iterable[str]:
    """Pieces of the text, each as full as whole characters allow."""
    start = used = 0
    for place, ch in enumerate(text):
        width = _width(ch, encoding)
        if used + width > room:
            yield text[start:place]
            start, used = place, 0
        used += width
    yield text[start:]


def _width(ch: str, encoding: str) -> int:
    if encoding == GSM_7BIT:
        return len(_SEPTETS[ch])
    return 2 if ord(ch) > 0xFFFF else 1
