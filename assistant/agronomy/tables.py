"""Published tables as data: each with its unit, source and how sure we are."""

from dataclasses import dataclass

from assistant.agronomy import sources as s
from assistant.agronomy.constant import HowSure

Cell = float | str


@dataclass(frozen=True)
class Table:
    """Rows under a head; the head names the units."""

    name: str
    head: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
    how_sure: HowSure
    sources: tuple[s.Source, ...] = ()
    note: str = ""

    def numbers(self) -> tuple[tuple[float, ...], ...]:
        """The rows of a table that holds nothing but numbers."""
        return tuple(tuple(float(cell) for cell in row) for row in self.rows)


_REPLICATE_HEAD = ("from mean (%)", "to mean (%)", "largest range (points)")

REPLICATE_RANGE = Table(
    "replicate_range",
    _REPLICATE_HEAD,
    (
        (99, 99, 5), (98, 98, 6), (97, 97, 7), (96, 96, 8), (95, 95, 9), (93, 94, 10),
        (91, 92, 11), (89, 90, 12), (87, 88, 13), (84, 86, 14), (81, 83, 15), (78, 80, 16),
        (73, 77, 17), (70, 72, 18),
    ),
    HowSure.PUBLISHED,
    (s.CFR_201_55,),
    "between four lots of 100 seeds; a mean below 50 stands for 101 less that mean",
)  # fmt: skip
REPLICATE_RANGE_LOW = Table(
    "replicate_range_low",
    _REPLICATE_HEAD,
    ((67, 69, 18), (56, 66, 19), (51, 55, 20)),
    HowSure.FROM_MEMORY,
    (s.CFR_201_55,),
    "the rows of the same table that were not seen",
)
MINIMUM_GERMINATION = Table(
    "minimum_germination",
    ("region", "least germination (%)"),
    (("PH", 85), ("BD", 80)),
    HowSure.PUBLISHED,
    (s.PHILRICE_RCEF, s.BOGURA),
    "certified seed in the Philippines; advice to farmers in Bangladesh",
)
MINIMUM_GERMINATION_MEMORY = Table(
    "minimum_germination_from_memory",
    ("region", "least germination (%)"),
    (("IN", 80),),
    HowSure.FROM_MEMORY,
    note="Indian Minimum Seed Certification Standards, 2013: not seen",
)
BRINE_DENSITY = Table(
    "brine_density",
    ("salt (g in 100 g of brine)", "density at 20 C (kg per m3)"),
    (
        (0, 998.2), (1, 1005.3), (2, 1012.2), (4, 1026.8), (6, 1041.3), (8, 1055.9),
        (10, 1070.7), (12, 1085.7), (14, 1100.9), (16, 1116.2), (18, 1131.9), (20, 1147.8),
        (22, 1164.0), (24, 1180.4), (26, 1197.2),
    ),
    HowSure.PUBLISHED,
    (s.TORUN,),
    "the first row, pure water, is from memory",
)  # fmt: skip
RAIN_CLASSES = Table(
    "rain_classes",
    ("service", "class", "from (mm in 24 h)"),
    (
        ("IN", "light", 2.5), ("IN", "moderate", 15.6), ("IN", "heavy", 64.5),
        ("IN", "very heavy", 115.6), ("IN", "extremely heavy", 204.5),
        ("BD", "light", 1), ("BD", "moderate", 11), ("BD", "moderately heavy", 23),
        ("BD", "heavy", 44), ("BD", "very heavy", 88.1),
        ("TH", "light", 0.1), ("TH", "moderate", 10.1), ("TH", "heavy", 35.1),
        ("TH", "very heavy", 90.1),
        ("ID", "light", 0.5), ("ID", "moderate", 20), ("ID", "heavy", 50),
        ("ID", "very heavy", 100), ("ID", "extreme", 150.1),
        ("NP", "light", 0.1), ("NP", "moderate", 10), ("NP", "heavy", 50),
        ("NP", "very heavy", 100), ("NP", "extreme", 200.1),
    ),
    HowSure.PUBLISHED,
    s.RAIN_SERVICES,
    "a class begins at its first value and ends where the next begins; the names of the two "
    "lowest classes of Nepal are from memory",
)  # fmt: skip
RAIN_CLASSES_MEMORY = Table(
    "rain_classes_from_memory",
    ("service", "class", "from (mm in 24 h)"),
    (
        ("CN", "light", 0.1), ("CN", "moderate", 10), ("CN", "heavy", 25),
        ("CN", "rainstorm", 50), ("CN", "heavy rainstorm", 100),
        ("CN", "extreme rainstorm", 250),
    ),
    HowSure.FROM_MEMORY,
    (s.CHINA_RAIN,),
    "one anonymous page agrees",
)  # fmt: skip

TABLES = tuple(value for value in tuple(globals().values()) if isinstance(value, Table))
