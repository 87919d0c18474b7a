"""What fits one USSD answer.

Source: 3GPP TS 29.002 (a USSD string has up to 160 octets) and TS 23.038: 182 septets or 80
UCS-2 units. Some operators show less, so both are arguments.
"""

from assistant.alphabet.counting import Encoding, measure

SEPTETS_MAX = 182
UCS2_MAX = 80


def screen_units(text: str) -> int:
    """Count the units of `text` on a screen [septets, or UCS-2 units where it needs them]."""
    return measure(text)[1]


def screen_room(text: str, *, septets_max: int = SEPTETS_MAX, ucs2_max: int = UCS2_MAX) -> int:
    """Say how many units are still free beside `text`; negative when it is too long."""
    encoding, units = measure(text)
    return (septets_max if encoding is Encoding.GSM7 else ucs2_max) - units


def fits_screen(text: str, *, septets_max: int = SEPTETS_MAX, ucs2_max: int = UCS2_MAX) -> bool:
    """Tell whether one USSD answer can hold `text`."""
    return screen_room(text, septets_max=septets_max, ucs2_max=ucs2_max) >= 0
