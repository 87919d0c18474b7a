"""The network's weather: what a line says it does, and the handler that makes it so."""

import re
from collections.abc import Callable, Mapping, Sequence
from datetime import timedelta

from gateway_sim import (
    Busy,
    Chain,
    Deliver,
    Fail,
    Handler,
    Lose,
    MessageDelay,
    Refuse,
    Reorder,
    Repeat,
)
from gateway_sim.handlers import MessageMatch, Way
from scenarios.season import NetworkChange, NetworkFault, Person

_WAYS: Mapping[str, tuple[Way, ...]] = {
    "texts to": ("to_phone",),
    "texts from": ("to_assistant",),
    "receipts of": ("receipt",),
    "screens of": ("ussd",),
}
_LINE = re.compile(
    r"(?P<does>loses|repeats|delays|swaps|refuses|fails)\s+(?:the\s+first\s+(?P<first>\d+)\s+)?"
    rf"(?P<what>{'|'.join(_WAYS)})\s+(?P<who>\S+)"
    r"(?:\s+by\s+(?P<by>\d+)\s+(?P<unit>minutes?|hours?))?"
)
EVERYBODY = "everybody"
HOW_TO = (
    "write: network loses (repeats, delays, swaps, refuses, fails) texts to (texts from, "
    "receipts of, screens of) NAME or everybody, a delay with: by 10 minutes; "
    "or: network is busy; or: network is well"
)
_BY_ITSELF = {
    "is well": NetworkChange(None),
    "is busy": NetworkChange(NetworkFault("busy")),
}


def read_network(words: str, people: Mapping[str, Person]) -> NetworkChange:
    """What a line says of the network. Raises ValueError with what to write instead."""
    words = " ".join(words.split())
    if words in _BY_ITSELF:
        return _BY_ITSELF[words]
    found = _LINE.fullmatch(words)
    if found is None:
        raise ValueError(HOW_TO)
    if (found["does"] in ("delays", "swaps")) != bool(found["by"]):
        raise ValueError("a delay or a swap, and nothing else, says how long: by 10 minutes")
    who = found["who"]
    if who != EVERYBODY and who not in people:
        raise ValueError(f"nobody is called {who}; name a phone of the head, or {EVERYBODY}")
    unit = "hours" if (found["unit"] or "").startswith("hour") else "minutes"
    fault = NetworkFault(
        does=found["does"],
        ways=_WAYS[found["what"]],
        phone=None if who == EVERYBODY else people[who].phone,
        by=timedelta(**{unit: int(found["by"] or 0)}),
        first=int(found["first"]) if found["first"] else None,
    )
    return NetworkChange(fault)


def handler(faults: Sequence[NetworkFault]) -> Handler:
    """The handler of all faults together, in the order of their lines."""
    return Chain(*(_MADE[fault.does](fault) for fault in faults)) if faults else Deliver()


def _which(fault: NetworkFault) -> MessageMatch:
    which = MessageMatch()
    if fault.ways:
        which["ways"] = fault.ways  # type: ignore[typeddict-item]
    if fault.phone:
        which["phone"] = fault.phone
    if fault.first is not None:
        which["first"] = fault.first
    return which


_MADE: Mapping[str, Callable[[NetworkFault], Handler]] = {
    "loses": lambda fault: Lose(**_which(fault)),
    "repeats": lambda fault: Repeat(**_which(fault)),
    "delays": lambda fault: MessageDelay(fault.by, **_which(fault)),
    "swaps": lambda fault: Reorder(fault.by, **_which(fault)),
    "refuses": lambda fault: Refuse(**_which(fault)),
    "fails": lambda fault: Fail(**_which(fault)),
    "busy": lambda fault: Busy(**_which(fault)),
}
