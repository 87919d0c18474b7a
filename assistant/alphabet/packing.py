"""Septets and the octets they are packed in.

Source: 3GPP TS 23.038 clauses 6.1.2.1.1 (SMS), 6.1.2.3.1 (USSD) and 6.2.1 (escapes).
"""

import re
from functools import lru_cache

from assistant.alphabet import national
from assistant.alphabet.tables import DEFAULT, ESCAPE, EXTENSION

_CR = 0x0D
_SPACE = " "
_ENCODE = {ord(character): chr(code) for code, character in enumerate(DEFAULT)}
_ENCODE.update({ord(found): ESCAPE + chr(code) for code, found in EXTENSION.items()})
del _ENCODE[ord(ESCAPE)]
_KNOWN = frozenset(map(chr, _ENCODE))
_ESCAPED = re.compile("\x1b(.?)", re.DOTALL)


class NotGsmError(ValueError):
    """A text or octets that the GSM 7-bit alphabet cannot hold."""


def to_septets(text: str) -> bytes:
    """Encode `text`, one septet an octet. Raises NotGsmError where `septets` says None."""
    missing = set(text) - _KNOWN
    if missing:
        raise NotGsmError(
            f"expected characters of the GSM alphabet, got {sorted(missing)}: send it as UCS-2"
        )
    return text.translate(_ENCODE).encode("ascii")


def from_septets(codes: bytes, *, locking: int = 0, single: int = 0) -> str:
    """Decode one septet an octet, as a phone shows them.

    An escape before a code without an extension character shows the code's own character;
    two escapes, or one at the end, show a space. Raises NotGsmError for octets above 0x7F.

    Args:
        locking, single: numbers of the languages whose tables stand in for the default and
            the extension table (6.2.1.2.4); an unknown one changes nothing
    """
    if not codes.isascii():
        raise NotGsmError("expected octets up to 0x7F, got more: unpack them first")
    shown, escaped = _tables(locking, single)
    parts = _ESCAPED.split(codes.decode("ascii"))
    parts[0::2] = [part.translate(shown) for part in parts[0::2]]
    parts[1::2] = [escaped.get(part, part.translate(shown)) for part in parts[1::2]]
    return "".join(parts)


@lru_cache
def _tables(locking: int, single: int) -> tuple[dict[int, str], dict[str, str]]:
    """The character of a code alone, and after an escape."""
    escaped = national.SINGLE.get(single, EXTENSION)
    shown = {chr(code): found for code, found in escaped.items()}
    alone = dict(enumerate(national.LOCKING.get(locking, DEFAULT)))
    return alone, shown | {ESCAPE: _SPACE, "": _SPACE}


def pack(codes: bytes, *, ussd: bool = False) -> bytes:
    """Pack septets into octets, the first septet in the lowest bits.

    For USSD a carriage return fills seven spare bits, which would read as "@"; one that was
    wanted at the end of a full octet is doubled, since the receiver drops the last.
    """
    if ussd and (len(codes) % 8 == 7 or (codes and len(codes) % 8 == 0 and codes[-1] == _CR)):
        codes += bytes([_CR])
    bits = sum(code << 7 * place for place, code in enumerate(codes))
    return bits.to_bytes((7 * len(codes) + 7) // 8, "little")


def unpack(packed: bytes, count: int | None = None, *, ussd: bool = False) -> bytes:
    """Unpack octets into septets: `count` of them, or (None) all that the octets hold.

    An SMS must give `count`, since seven septets and eight take the same octets. For USSD the
    carriage return that ends on an octet boundary is a filler and dropped.
    Raises NotGsmError when the octets hold fewer than `count`.
    """
    held = 8 * len(packed) // 7
    if count is not None and count > held:
        raise NotGsmError(f"expected {count} septets, got {held}: the octets were cut short")
    bits = int.from_bytes(packed, "little")
    codes = bytes(bits >> 7 * place & 0x7F for place in range(held if count is None else count))
    filled = ussd and codes and len(codes) % 8 == 0 and codes[-1] == _CR
    return codes[:-1] if filled else codes
