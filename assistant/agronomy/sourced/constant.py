"""What a number of the trade carries with it: unit, range, source, and how sure we are."""

from dataclasses import dataclass
from enum import StrEnum

from assistant.agronomy.sourced.sources import Source


class HowSure(StrEnum):
    """Where a number comes from, in the words of the generated page."""

    PUBLISHED = "published"
    COMMON_PRACTICE = "common practice, no source"
    FROM_MEMORY = "from memory"
    JUDGEMENT = "judgement"
    DESIGN_CHOICE = "design choice"


@dataclass(frozen=True)
class Constant:
    """One number: `value` within `low`..`high`, all in `unit`.

    `sources` are those seen to print the value, or, for a judgement or a design choice,
    those that bound it; `note` says which.
    """

    name: str
    value: float
    low: float | None
    high: float | None
    unit: str
    how_sure: HowSure
    sources: tuple[Source, ...] = ()
    note: str = ""

    def holds(self, value: float) -> bool:
        """Whether a value lies within the published range, ends included; open ends hold."""
        above = self.low is None or value >= self.low
        return above and (self.high is None or value <= self.high)


def published(
    name: str,
    value: float,
    unit: str,
    *sources: Source,
    low: float | None = None,
    high: float | None = None,
    note: str = "",
) -> Constant:
    """A number that stood in the named sources."""
    return Constant(name, value, low, high, unit, HowSure.PUBLISHED, sources, note)


def practice(
    name: str,
    value: float,
    unit: str,
    *,
    low: float | None = None,
    high: float | None = None,
    note: str = "",
) -> Constant:
    """A number that growers use and no independent source was seen to print."""
    return Constant(name, value, low, high, unit, HowSure.COMMON_PRACTICE, (), note)


def chosen(
    name: str,
    value: float,
    unit: str,
    *bounds: Source,
    note: str,
    low: float | None = None,
    high: float | None = None,
    how_sure: HowSure = HowSure.DESIGN_CHOICE,
) -> Constant:
    """A number this project chose, with the sources that bound it and the reason."""
    return Constant(name, value, low, high, unit, how_sure, bounds, note)
