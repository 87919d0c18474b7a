"""Land units of the places where rice is grown: square metres, where, from whom, how sure.

A unit that means different things in one place stands here for the places where one size is
agreed, and nowhere else: the reader asks back. Regions are ISO 3166-1 or 3166-2 codes, and
VN-N, VN-C, VN-S for the north, centre and south of Viet Nam. The longest matching code wins.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType

EVERYWHERE = ""

SQ_FOOT_M2 = Fraction(3048, 10000) ** 2  # international foot, exact by definition
SQ_YARD_M2 = 9 * SQ_FOOT_M2
ACRE_M2 = 43_560 * SQ_FOOT_M2  # 4,046.8564224 m2, exact
DECIMAL_M2 = ACRE_M2 / 100


class Sure(StrEnum):
    """How far a size can be relied on."""

    EXACT = "exact"  # by definition
    AGREED = "agreed"  # sources agree within 2 %, or the programme's own rule
    DISPUTED = (
        "disputed"  # one weak source, or another size is used nearby: shown in m2 for a yes
    )
    MEMORY = "from memory"  # not seen in a source: shown in m2 for a yes


@dataclass(frozen=True)
class LandUnit:
    """One unit in one region. `m2` is exact, so that what is shown reads back the same."""

    key: str
    region: str
    m2: Fraction
    source: str
    sure: Sure


def _ft2(feet: int) -> Fraction:
    return feet * SQ_FOOT_M2


UNITS: tuple[LandUnit, ...] = (
    LandUnit(
        "hectare", EVERYWHERE, Fraction(10_000), "SI Brochure, 9th ed., table 8", Sure.EXACT
    ),
    LandUnit("acre", EVERYWHERE, ACRE_M2, "definition: 43,560 square feet", Sure.EXACT),
    LandUnit("m2", EVERYWHERE, Fraction(1), "SI", Sure.EXACT),
    LandUnit(
        "are", EVERYWHERE, Fraction(100), "GNU units 3.22, 2024: are = 100 m2", Sure.EXACT
    ),
)

_BY_REGION: Mapping[tuple[str, str], LandUnit] = MappingProxyType(
    {(unit.key, unit.region): unit for unit in UNITS}
)
REGIONS = frozenset(unit.region for unit in UNITS if unit.region)


def land_unit(key: str, region: str | None = None) -> LandUnit | None:
    """The unit of this name in this region, or None where its size there is not settled."""
    for place in _places(region):
        if (key, place) in _BY_REGION:
            return _BY_REGION[key, place]
    return None


def _places(region: str | None) -> tuple[str, ...]:
    """From the narrowest to everywhere: IN-WB, IN, ''."""
    if not region:
        return (EVERYWHERE,)
    parts = region.upper().split("-")
    return (*("-".join(parts[:n]) for n in range(len(parts), 0, -1)), EVERYWHERE)


# Units that are parts of one another, biggest first: "1 bigha 5 katha" is one area.
FAMILIES: tuple[tuple[str, ...], ...] = (
    ("hectare", "are", "m2"),
    ("acre", "kanal", "marla"),
    ("acre", "guntha", "cent", "decimal"),
    ("bigha", "katha", "dhur", "decimal"),
    ("bigha", "katha", "lessa"),
    ("ropani", "aana", "paisa", "daam"),
    ("rai", "ngan", "wah"),
)

_LIKELY: Mapping[str, tuple[str, ...]] = MappingProxyType({"": ("hectare", "acre", "m2")})


def likely_units(region: str | None = None) -> tuple[str, ...]:
    """The units to offer where a person gave only a number, likeliest first."""
    for place in _places(region):
        if place in _LIKELY:
            return _LIKELY[place]
    return _LIKELY[EVERYWHERE]
