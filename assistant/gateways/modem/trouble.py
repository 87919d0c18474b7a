"""What a modem refuses, in words that a person at the desk can act on.

Codes: 3GPP TS 27.005 3.2.5 (+CMS ERROR; below 128 those of TS 24.011 annex E-2), TS 27.007 9.2
(+CME ERROR).
"""

import errno
from datetime import timedelta

from assistant.channel import Fate, Handover

NO_CREDIT = "the network refuses texts of this SIM card: see whether its credit is used up"
_SIM = {
    10: "no SIM card in the modem: put it in",
    11: "the SIM card wants its PIN: set pin in the file of lines",
    12: "the SIM card is blocked: unblock it with its PUK in a phone",
    13: "the SIM card failed: take it out, clean it, put it in again",
    14: "the SIM card is busy",
    15: "the SIM card is the wrong one",
    16: "the PIN is wrong: set the right one before anybody tries again; three block the card",
}
_MESSAGE = {
    310: _SIM[10],
    311: _SIM[11],
    313: _SIM[13],
    314: _SIM[14],
    315: _SIM[15],
    316: _SIM[12],
    322: "the store of the SIM card is full",
    330: "the number of the message centre is not known: it stands on the SIM card",
    331: "no network: put the modem, or its aerial, by a window",
    332: "the network did not answer in time",
}
_BARRED = frozenset({8, 10, 21, 50, 69})
_NUMBER = {
    1: "nobody has this number",
    27: "this number is out of order",
    28: "this number is not known",
    29: "this number takes no texts",
    30: "this number is not known here",
    38: "",
}
_BUSY = frozenset({17, 38, 41, 42, 47, 332, 500})
_SOON, _LATE = timedelta(seconds=30), timedelta(minutes=10)


def sim_words(code: int) -> str:
    """Why the SIM card cannot be used (+CME ERROR)."""
    return _SIM.get(code, f"the modem says error {code}")


_PORT = {
    errno.ENOENT: "it is not there: plug the modem in, or set its right port",
    errno.EACCES: "it may not be used: put who runs the service into the group dialout",
    errno.EBUSY: "another program has it: end that one",
}


def port_words(port: str, fault: OSError) -> str:
    """Why a port cannot be opened."""
    said = _PORT.get(fault.errno or 0, f"{fault}: plug the modem in")
    return f"{port} cannot be opened: {said}"


_DENIED = "3"  # +CREG (TS 27.007 7.2)
_UNKNOWN, _WEAK, _GOOD = 99, 10, 20  # of 31 (8.5): -93 and -73 dBm


def network_words(registration: str, signal: str) -> str:
    """Why there is no network, from the modem's answers +CREG and +CSQ."""
    stat = registration.rpartition(":")[2].split(",")[1:2]
    if stat == [_DENIED]:
        return "the network refuses this SIM card: ask its seller whether it is active and paid"
    told = signal.rpartition(":")[2].partition(",")[0].strip()
    strength = int(told) if told.isdecimal() else _UNKNOWN
    if strength >= _UNKNOWN or not strength:
        heard = "no signal"
    else:
        heard = (
            f"signal {'weak' if strength < _WEAK else 'fair' if strength < _GOOD else 'good'}"
        )
    return f"no network ({heard}): put the modem, or its aerial, by a window"


def refused(code: int) -> Handover:
    """What a refusal of a text means (+CMS ERROR): of the number, the card, or the network."""
    said = _NUMBER.get(code)
    if said:
        return Handover(Fate.FAILED, f"{said} ({code})")
    if code in _BARRED:
        return Handover(Fate.TRY_LATER, f"{NO_CREDIT} ({code})", rest=_LATE)
    if code in _MESSAGE and code != 332:
        return Handover(Fate.TRY_LATER, f"{_MESSAGE[code]} ({code})", rest=_LATE)
    if code in _BUSY:
        return Handover(Fate.TRY_LATER, f"the network is busy ({code})", rest=_SOON)
    return Handover(Fate.TRY_LATER, f"the modem says error {code}")
