"""The numbers this operator knows: only those set aside for fiction.

Ofcom keeps +44 7700 900000 to 900999 for drama ("Telephone numbers for use in TV and radio
drama programmes"); country code 999 is not assigned to a country in ITU-T E.164, and of it we
use +99900 and seven more digits as a larger test range of our own.
"""

import re

from gateway_sim.errors import NumberError

_FICTION = re.compile(r"\+447700900[0-9]{3}|\+99900[0-9]{7}")
_SPACING = re.compile(r"[\s().\-\u2010-\u2015\u00a0]")
WHICH = (
    "use +447700900000 to +447700900999 (07700900101 will do), "
    "or +99900 and seven digits: numbers that belong to nobody"
)


def number(text: str) -> str:
    """The number as +, country code, subscriber; raises NumberError outside our ranges."""
    compact = _SPACING.sub("", text)
    if compact.startswith("00"):
        compact = "+" + compact[2:]
    elif compact.startswith("07700"):
        compact = "+44" + compact[1:]
    elif compact.startswith(("447700", "99900")):
        compact = "+" + compact
    if not _FICTION.fullmatch(compact):
        raise NumberError(f"{text!r} is not a phone of this operator: {WHICH}")
    return compact
