"""What the network says of a card's credit, by a USSD code (3GPP TS 27.007 7.15, +CUSD)."""

import re

from assistant.alphabet import NotGsmError, from_septets, unpack

_SAID = re.compile(r'\+CUSD: ?\d(?:,"(?P<words>.*)"(?:,(?P<coding>\d+))?)?', re.DOTALL)
_HEX = re.compile(r"(?:[0-9A-Fa-f]{2})+")
_UCS2 = 0x48


def credit_words(line: str) -> str:
    """The words of a +CUSD line. Modems give them plain, or in hexadecimal: packed septets, or
    UCS-2; some say another coding than they use, so what cannot be is not believed."""
    found = _SAID.fullmatch(line)
    if found is None or not found["words"]:
        return ""
    words = found["words"]
    if not _HEX.fullmatch(words):
        return words
    octets = bytes.fromhex(words)
    ucs2 = int(found["coding"] or 15) & 0x4C == _UCS2 or octets[0] == 0
    if ucs2 and len(octets) % 2 == 0:
        return octets.decode("utf-16-be", "replace")
    try:
        return from_septets(unpack(octets, ussd=True))
    except NotGsmError:
        return words
