"""Phone numbers as operators write them."""

import re

_NUMBER = re.compile(r"\+[1-9][0-9]{4,14}")
_SPACING = re.compile(r"[\s().-]")


def e164(told: str, country: str = "") -> str:
    """A number as +, country code, subscriber; empty for what is none, such as a name.

    Args:
        country: with its plus, put in the place of a leading 0; without one such numbers are
            none
    """
    compact = _SPACING.sub("", told)
    if compact.startswith("00"):
        compact = "+" + compact[2:]
    elif compact.startswith("0") and country:
        compact = country + compact[1:]
    elif compact.isascii() and compact.isdecimal():
        compact = "+" + compact
    return compact if _NUMBER.fullmatch(compact) else ""
