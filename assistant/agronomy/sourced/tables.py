"""Published tables as data: each with its unit, source and how sure we are."""

from dataclasses import dataclass

from assistant.agronomy.sourced import sources as s
from assistant.agronomy.sourced.constant import HowSure

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
_VARIETY_HEAD = ("variety", "lowest (g per 1000 grains)", "highest (g per 1000 grains)")

VARIETY_DSSAT = Table(
    "variety_grain_weight_dssat",
    _VARIETY_HEAD,
    (
        ("PR114", 23, 23), ("Basmati 385", 22, 22), ("Basmati-515", 21, 21), ("RD23", 22, 22),
        ("BR11", 24, 25), ("BR3", 25, 25), ("BR22", 25, 25), ("BR14", 26, 26), ("Jaya", 30, 30),
        ("Pant-4", 30, 30), ("KDML105", 27.0, 27.0), ("Niew Sanpatong", 27.7, 27.7),
        ("Suphanburi 60", 28.0, 28.0), ("Chainat 1", 27.8, 27.8), ("DOA 1", 27.5, 27.5),
        ("CICA8", 27, 27), ("Zheng Dao 9380", 27, 27), ("Lemont", 20.7, 20.7),
        ("RN12", 19.9, 19.9), ("UPLRi5", 22, 22),
    ),
    HowSure.PUBLISHED,
    (s.DSSAT_RICE,),
    "coefficients of a crop model for grains grown without want, not weights of a seed "
    "laboratory; KS-282 is left out, since the file gives 50 g, beyond its own maximum of 30",
)  # fmt: skip
VARIETY_BRRI_104 = Table(
    "variety_grain_weight_brri_104",
    _VARIETY_HEAD,
    (("BRRI dhan104", 21.5, 21.5),),
    HowSure.PUBLISHED,
    (s.BRRI_104,),
)
VARIETY_BRRI_NEWS = Table(
    "variety_grain_weight_brri_news",
    _VARIETY_HEAD,
    (("BRRI dhan105", 19.4, 19.4), ("BRRI dhan106", 24.5, 24.5)),
    HowSure.PUBLISHED,
    (s.BRRI_NEWS,),
)
VARIETY_TEXAS = Table(
    "variety_grain_weight_texas",
    _VARIETY_HEAD,
    (
        ("Cocodrie", 23.9, 25.2), ("Cypress", 23.9, 25.2), ("Cheniere", 23.9, 25.2),
        ("Jefferson", 28.35, 28.35),
    ),
    HowSure.PUBLISHED,
    (s.TEXAS_2007,),
    "derived from seeds in a pound: 18,000-19,000 and 16,000",
)  # fmt: skip
VARIETY_TABLES = (VARIETY_DSSAT, VARIETY_BRRI_104, VARIETY_BRRI_NEWS, VARIETY_TEXAS)
OLD_SEEDLINGS = Table(
    "old_seedlings",
    ("trial", "young (days)", "old (days)", "young (t/ha)", "old (t/ha)"),
    (
        ("Bioline cj11041, first year", 20, 40, 3.6, 2.0),
        ("Bioline cj11041, second year", 20, 40, 3.4, 1.8),
    ),
    HowSure.PUBLISHED,
    (s.BIOLINE_11041,),
    "the young were sown thin and fed, the old dense and unfed: age is not all of it; IJEP "
    "5(2), 2018, finds 6.35 t/ha at 25 days and a steady fall to 40",
)
NURSERY_COSTS = Table(
    "nursery_costs",
    ("nursery", "cost for a hectare (US dollars)"),
    (
        ("wood frame", 27.21), ("bamboo frame", 27.77), ("plastic frame", 27.20),
        ("nylon rope", 27.04), ("tray", 44.89), ("wet bed", 19.32),
    ),
    HowSure.PUBLISHED,
    (s.PERTANIKA_2000,),
    "mats cost more to raise than a wet bed there; what was gained was gained in planting",
)  # fmt: skip
TABLES = tuple(value for value in tuple(globals().values()) if isinstance(value, Table))
