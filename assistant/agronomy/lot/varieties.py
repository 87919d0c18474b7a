"""The weight of 1000 grains of a variety, where somebody published one."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from assistant.agronomy.sourced.sources import Source
from assistant.agronomy.sourced.tables import VARIETY_TABLES


@dataclass(frozen=True)
class Variety:
    """A variety with its published weights of 1000 grains [g], the lowest and the highest."""

    name: str
    low_g: float
    high_g: float
    sources: tuple[Source, ...]

    @property
    def grain_weight_g(self) -> float:
        """The middle of what was published [g per 1000 grains]."""
        return (self.low_g + self.high_g) / 2


def variety_key(name: str) -> str:
    """A name without case, spaces and signs: 'BR 11', 'br-11' and 'BR11' are one."""
    return "".join(sign for sign in name.casefold() if sign.isalnum())


def _all() -> Mapping[str, Variety]:
    rows = [
        Variety(str(name), float(low), float(high), table.sources)
        for table in VARIETY_TABLES
        for name, low, high in table.rows
    ]
    return MappingProxyType({variety_key(each.name): each for each in rows})


VARIETIES = _all()


def find_variety(name: str) -> Variety | None:
    """The variety of this name, None where no weight was published."""
    return VARIETIES.get(variety_key(name))
