"""Land units of the places where rice is grown: square metres, where, from whom, how sure.

A unit that means different things in one place stands here for the places where one size is
agreed, and nowhere else: the reader asks back. Regions are ISO 3166-1 or 3166-2 codes, and
VN-N, VN-C, VN-S for the north, centre and south of Viet Nam. The longest matching code wins.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType

from babel import Locale

from assistant.agronomy.sourced.sources import UNDATED, Source

EVERYWHERE = ""

SQ_FOOT_M2 = Fraction(3048, 10_000) ** 2  # international foot, exact by definition
ACRE_M2 = 43_560 * SQ_FOOT_M2  # 4,046.8564224 m2, exact

DEFINITION = Source("BIPM", "The International System of Units, 9th edition, table 8", "2019")
GNU = Source("GNU project", "GNU units 3.22, definitions.units", "2024")
CHARTERED = Source("charteredjournal.com", "Unit of land measurement", UNDATED)
RAWNEXT = Source("rawnext.blogspot.com", "[land units of Bengal]", "2013")
INCHES = Source("blog.inches2cm.com", "[land units of India]", "2018")
HOUSING = Source("housing.com", "Bigha: all about land area measurement unit", UNDATED)
RHDREAM = Source("rhdreamhomes.com", "[bigha by state]", UNDATED)
RAM_KRISHNA = Source("ram-krishna.com.np", "[land units of Nepal]", UNDATED)
NIRMAL = Source("nirmaljoshi.wordpress.com", "Measurement of land in Nepal", "2009")
LAHORE = Source("debugger.pk", "Understanding land measurement in Pakistan", UNDATED)
ISLAMABAD = Source(
    "islamabadlawyer.blogspot.com", "The units of measurement in land laws", "2013"
)
THAI = Source("thaihousebuild.com", "Land measurements", UNDATED)
LAGIODAU = Source("lagiodau.com", "[mau, sao and cong of Viet Nam]", "2021")
UN_M21 = Source("UN Statistical Paper M21, quoted by an encyclopaedia", "[mau and sao]", "1966")
FEDDAN = Source("an encyclopaedia, two mirrors", "Feddan", UNDATED)
JERIB = Source("an encyclopaedia, quoted", "Jerib", UNDATED)
PROCIL = Source("procil.id", "[units of land in Java]", UNDATED)
IICA = Source("IICA", "[rice, Dominican Republic] (prints the figure upside down)", UNDATED)
OFFICE = Source("the programme's office", "land units of a village", UNDATED)
PROGRAMME = Source("the programme's own rule", "fixed sizes of land units", "2026")
MEMORY = Source("from memory", "not seen in a source", "2026")


class Sure(StrEnum):
    """How far a size can be relied on."""

    EXACT = "exact"  # by definition
    AGREED = "agreed"  # sources agree within 2 %, or the programme's own rule
    DISPUTED = "disputed"  # one weak source, or another size nearby: shown in m2 for a yes
    MEMORY = "from memory"  # not seen in a source: shown in m2 for a yes


@dataclass(frozen=True)
class LandUnit:
    """One unit in one region. `m2` is exact, so that what is shown reads back the same."""

    key: str
    region: str
    m2: Fraction
    source: Source
    sure: Sure


def _ft2(feet: int | Fraction) -> Fraction:
    return feet * SQ_FOOT_M2


def _in(
    regions: str, key: str, m2: Fraction | int, source: Source, sure: Sure = Sure.AGREED
) -> tuple[LandUnit, ...]:
    """The same unit in several regions."""
    return tuple(LandUnit(key, r, Fraction(m2), source, sure) for r in regions.split())


_BD_BIGHA = 33 * ACRE_M2 / 100
_NP_BIGHA = _ft2(72_900)
_TSUBO = 36 * Fraction(10, 33) ** 2  # a shaku is 10/33 m
_SQ_KARAM = Fraction(11, 2) ** 2  # the Punjab karam of 5.5 ft

UNITS: tuple[LandUnit, ...] = (
    LandUnit("hectare", EVERYWHERE, Fraction(10_000), DEFINITION, Sure.EXACT),
    LandUnit("are", EVERYWHERE, Fraction(100), GNU, Sure.EXACT),
    LandUnit("m2", EVERYWHERE, Fraction(1), DEFINITION, Sure.EXACT),
    LandUnit("acre", EVERYWHERE, ACRE_M2, GNU, Sure.EXACT),
    LandUnit("sqft", EVERYWHERE, SQ_FOOT_M2, GNU, Sure.EXACT),
    LandUnit("sqyd", EVERYWHERE, 9 * SQ_FOOT_M2, GNU, Sure.EXACT),
    LandUnit("decimal", EVERYWHERE, ACRE_M2 / 100, CHARTERED, Sure.EXACT),
    *_in("IN-TN IN-KL IN-AP IN-TG IN-KA IN-PY", "cent", ACRE_M2 / 100, CHARTERED),
    *_in("IN-MH", "guntha", ACRE_M2 / 40, PROGRAMME),
    *_in("IN-KA IN-AP IN-TG IN-GJ IN-GA", "guntha", ACRE_M2 / 40, INCHES),
    # Bengal, Assam, Bangladesh
    *_in("BD", "bigha", _BD_BIGHA, PROGRAMME),
    *_in("BD", "katha", _BD_BIGHA / 20, CHARTERED),
    *_in("IN-WB", "bigha", _ft2(14_400), CHARTERED),
    *_in("IN-WB", "katha", _ft2(720), PROGRAMME),
    *_in("IN-AS", "bigha", _ft2(14_400), RHDREAM),
    *_in("IN-AS", "katha", _ft2(2_880), RHDREAM, Sure.DISPUTED),  # Cachar: 720 ft2
    *_in("IN-AS", "lessa", _ft2(144), RHDREAM),
    # other states where the sources name one bigha
    *_in("IN-HP", "bigha", _ft2(8_712), HOUSING, Sure.DISPUTED),
    *_in("IN-GJ", "bigha", _ft2(17_424), HOUSING, Sure.DISPUTED),
    # Nepal
    *_in("NP", "bigha", _NP_BIGHA, PROGRAMME),
    *_in("NP", "katha", _NP_BIGHA / 20, PROGRAMME),
    *_in("NP", "dhur", _NP_BIGHA / 400, RAM_KRISHNA),
    *_in("NP", "ropani", _ft2(74 * 74), NIRMAL),
    *_in("NP", "aana", _ft2(74 * 74) / 16, NIRMAL),
    *_in("NP", "paisa", _ft2(74 * 74) / 64, NIRMAL),
    *_in("NP", "daam", _ft2(74 * 74) / 256, NIRMAL),
    # Punjab, Haryana, Pakistan
    *_in("IN-PB", "killa", ACRE_M2, PROGRAMME),
    *_in("IN-HR PK", "killa", ACRE_M2, ISLAMABAD),
    *_in("IN-PB IN-HR PK", "kanal", ACRE_M2 / 8, INCHES),
    *_in("IN-PB IN-HR", "marla", _ft2(9 * _SQ_KARAM), INCHES),
    *_in("PK", "marla", _ft2(9 * _SQ_KARAM), LAHORE, Sure.DISPUTED),  # Lahore town: 225 ft2
    # Sri Lanka: imperial measure
    *_in("LK", "perch", ACRE_M2 / 160, GNU),
    *_in("LK", "rood", ACRE_M2 / 4, GNU),
    # east and south-east Asia
    *_in("TH", "rai", 1_600, THAI),
    *_in("TH", "ngan", 400, THAI),
    *_in("TH", "wah", 4, THAI),
    *_in("LA", "rai", 1_600, MEMORY, Sure.MEMORY),
    *_in("VN-N", "sao", 360, PROGRAMME),
    *_in("VN-N", "mau", 3_600, UN_M21),
    *_in("VN-C", "sao", 500, LAGIODAU),  # the old measure is 497
    *_in("VN-C", "mau", 5_000, UN_M21),
    *_in("VN-S", "sao cong", 1_000, LAGIODAU, Sure.DISPUTED),
    *_in("VN-S", "mau", 10_000, UN_M21, Sure.DISPUTED),
    *_in("CN", "mu", Fraction(10_000, 15), UN_M21),
    *_in("JP", "tsubo", _TSUBO, GNU),
    *_in("JP", "se", 30 * _TSUBO, GNU),
    *_in("JP", "tan", 300 * _TSUBO, GNU),
    *_in("JP", "cho", 3_000 * _TSUBO, GNU),
    *_in("TW", "jia", 2_934 * _TSUBO, GNU),
    *_in("ID", "tumbak", Fraction(15, 4) ** 2, PROCIL, Sure.DISPUTED),
    # west Asia, Africa, America
    *_in("EG", "feddan", Fraction(1_000, 3) * Fraction(355, 100) ** 2, FEDDAN),
    *_in("AF", "jerib", 2_000, JERIB, Sure.DISPUTED),
    *_in("ZM", "lima", 2_500, PROGRAMME),
    *_in("DO", "tarea", Fraction(10_000 * 10, 159), IICA, Sure.DISPUTED),
    *_in("BR-SP BR-PR", "alqueire", 24_200, MEMORY, Sure.MEMORY),
    *_in("BR-MG BR-GO BR-RJ", "alqueire", 48_400, MEMORY, Sure.MEMORY),
)

# Known by name, but no size is agreed anywhere that we know of: always asked back.
UNSETTLED: Mapping[str, str] = MappingProxyType(
    {
        "kani": "Bangladesh: 40 and 120 decimals on one page (rawnext.blogspot.com, 2013)",
        "bata": "Java: often 14 m2, other sizes elsewhere; common practice, no source",
        "bahu": "Java: 7,031 and 7,096 m2, and other sizes elsewhere",
        "tarefa": "Brazil: differs by state",
    }
)


def _split(units: tuple[LandUnit, ...]) -> Mapping[tuple[str, str], LandUnit]:
    """(key, region) -> unit; a row may name two keys for one size."""
    return MappingProxyType(
        {
            (key, unit.region): LandUnit(key, unit.region, unit.m2, unit.source, unit.sure)
            for unit in units
            for key in unit.key.split()
        }
    )


_BY_REGION = _split(UNITS)
UNIT_KEYS = frozenset(key for key, _ in _BY_REGION) | UNSETTLED.keys()

# Units that are parts of one another, biggest first: "1 bigha 5 katha" is one area.
FAMILIES: tuple[tuple[str, ...], ...] = (
    ("hectare", "are", "m2"),
    ("acre", "rood", "perch"),
    ("killa", "kanal", "marla"),
    ("acre", "kanal", "marla"),
    ("acre", "guntha"),
    ("acre", "cent"),
    ("acre", "decimal"),
    ("bigha", "katha", "dhur"),
    ("bigha", "katha", "lessa"),
    ("bigha", "decimal"),
    ("ropani", "aana", "paisa", "daam"),
    ("rai", "ngan", "wah"),
    ("mau", "sao", "m2"),
    ("cho", "tan", "se", "tsubo"),
)

# What a bare number is likeliest to be counted in.
_LIKELY: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        EVERYWHERE: ("hectare", "acre", "m2"),
        "BD": ("bigha", "decimal", "acre", "katha"),
        "IN": ("acre", "hectare", "decimal", "m2"),
        "IN-WB": ("bigha", "katha", "acre", "decimal"),
        "IN-AS": ("bigha", "acre", "hectare"),
        "IN-MH": ("acre", "guntha", "hectare"),
        "IN-TN": ("acre", "cent", "hectare"),
        "IN-KL": ("cent", "acre", "hectare"),
        "IN-PB": ("killa", "kanal", "acre"),
        "NP": ("katha", "bigha", "ropani"),
        "LK": ("acre", "perch", "hectare"),
        "TH": ("rai", "ngan", "m2"),
        "VN": ("m2", "hectare"),
        "VN-N": ("sao", "mau", "m2"),
        "VN-C": ("sao", "mau", "m2"),
        "VN-S": ("cong", "hectare", "m2"),
        "ID": ("hectare", "are", "m2"),
        "ZM": ("lima", "hectare", "acre"),
        "TZ": ("acre", "hectare", "m2"),
        "KE": ("acre", "hectare", "m2"),
        "UG": ("acre", "hectare", "m2"),
    }
)

_CODE = re.compile(r"[A-Z]{2}(-[A-Z0-9]{1,3})?")
_NO_PLACES = frozenset({"EU", "EZ", "UN", "QO", "XA", "XB", "ZZ"})  # CLDR's, not ISO 3166's


def region_code(text: str) -> str | None:
    """The region of a typed code, such as IN-WB, or None where there is no such country.

    The second part is not checked: a district without a row here has its country's units.
    """
    code = text.strip().upper()
    country = code[:2]
    known = country in Locale("en").territories and country not in _NO_PLACES
    return code if known and _CODE.fullmatch(code) else None


def land_unit(key: str, region: str | None = None) -> LandUnit | None:
    """The unit of this name in this region, or None where its size there is not settled."""
    for place in _places(region):
        if (key, place) in _BY_REGION:
            return _BY_REGION[key, place]
    return None


def likely_units(region: str | None = None) -> tuple[str, ...]:
    """The units to offer where a person gave only a number, likeliest first."""
    return next(_LIKELY[place] for place in _places(region) if place in _LIKELY)


_OWN_OFFERED = 2
HERE = "here"  # the region of a unit that an office has set for a village


@dataclass(frozen=True)
class Land:
    """Where an area is read: a region's code, and the sizes [m2] that an office has set for a
    village, by key; those go before."""

    region: str | None = None
    own: Mapping[str, Fraction] = field(default_factory=dict)

    def unit(self, key: str) -> LandUnit | None:
        """The unit of this name there, or None where its size is not settled."""
        if key in self.own:
            return LandUnit(key, HERE, self.own[key], OFFICE, Sure.AGREED)
        return land_unit(key, self.region)

    @property
    def likely(self) -> tuple[str, ...]:
        """The units to offer where a person gave only a number, likeliest first."""
        return tuple(
            dict.fromkeys((*tuple(self.own)[:_OWN_OFFERED], *likely_units(self.region)))
        )


def _places(region: str | None) -> tuple[str, ...]:
    """From the narrowest to everywhere: IN-WB, IN, ''."""
    parts = region.split("-") if region else []
    return (*("-".join(parts[:n]) for n in range(len(parts), 0, -1)), EVERYWHERE)
