"""A variety as a programme describes it: its days, kind, grain weight and age of seedlings."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from assistant.agronomy.practices import Anchor, Practice, TaskRule, Window
from assistant.agronomy.tasks import TaskCode

BEFORE_WINDOW = (TaskCode.LEAF_COUNT, TaskCode.CHOOSE_DAY)


class Breeding(StrEnum):
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
        kind: see `Breeding`
        grain_weight_g: weight of 1000 grains [g], None where not known
        age_first, age_last: good age of seedlings [days from sowing]; None: as the practice has
    """

    code: str
    name: str
    days: int
    kind: Breeding
    grain_weight_g: float | None = None
    age_first: int | None = None
    age_last: int | None = None


def for_variety(practice: Practice, variety: ProgrammeVariety) -> Practice:
    """The practice with the variety's own age of seedlings, where it has one."""
    return for_ages(practice, variety.age_first, variety.age_last)


def for_ages(practice: Practice, first: int | None, last: int | None) -> Practice:
    """The practice with seedlings of that age [days from sowing], where it is known."""
    if first is None or last is None:
        return practice
    window = practice.window
    middle = (first + last) // 2
    own = replace(
        window,
        first=replace(window.first, value=first),
        last=replace(window.last, value=last),
        assumed=replace(window.assumed, value=middle),
        earliest=replace(window.earliest, value=min(window.earliest.value, first)),
        latest=replace(window.latest, value=max(window.latest.value, last)),
    )
    days = replace(practice.days, tasks=tuple(_before(own, window, practice)))
    return replace(practice, window=own, days=days)


def _before(own: Window, usual: Window, practice: Practice) -> Iterator[TaskRule]:
    """What is asked before the window is asked as long before the variety's own, and never
    before the bed is uncovered."""
    moved = own.first.value - usual.first.value
    for rule in practice.days.tasks:
        if rule.code in BEFORE_WINDOW and rule.start.anchor is Anchor.SOW:
            day = max(rule.start.days.value + moved, practice.days.uncover.value + 1)
            start = replace(
                rule.start, days=replace(rule.start.days, value=day, low=None, high=None)
            )
            rule = replace(rule, start=start)
        yield rule
