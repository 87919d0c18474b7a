"""A variety as a programme describes it: its days, kind, grain weight and age of seedlings."""

from dataclasses import dataclass, replace
from enum import StrEnum

from assistant.agronomy.practices import Practice


class Kind(StrEnum):
    """How its seed is bred; a traditional one may flower by the length of the day."""

    INBRED = "inbred"
    HYBRID = "hybrid"
    TRADITIONAL = "traditional"


@dataclass(frozen=True)
class ProgrammeVariety:
    """One variety.

    Args:
        code: what it is asked for by, such as "early-1"
        name: what people call it
        days: from sowing to maturity [days]
        kind: see `Kind`
        grain_weight_g: weight of 1000 grains [g], None where not known
        age_first, age_last: good age of seedlings [days from sowing]; None: as the practice has
    """

    code: str
    name: str
    days: int
    kind: Kind
    grain_weight_g: float | None = None
    age_first: int | None = None
    age_last: int | None = None


def for_variety(practice: Practice, variety: ProgrammeVariety) -> Practice:
    """The practice with the variety's own age of seedlings, where it has one."""
    if variety.age_first is None or variety.age_last is None:
        return practice
    window, first, last = practice.window, variety.age_first, variety.age_last
    middle = (first + last) // 2
    own = replace(
        window,
        first=replace(window.first, value=first),
        last=replace(window.last, value=last),
        assumed=replace(window.assumed, value=middle),
        earliest=replace(window.earliest, value=min(window.earliest.value, first)),
        latest=replace(window.latest, value=max(window.latest.value, last)),
    )
    return replace(practice, window=own)
