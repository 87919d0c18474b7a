"""The arithmetic of a plan. Floor: the same figures as bare floats and day numbers."""

import math
from collections.abc import Iterator
from datetime import date

from assistant.agronomy.calendar import Anchors, calendar
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.quantities import quantities
from tests.benchmarks.databases import Kind
from tests.benchmarks.harness import Result, Side, compare
from tests.benchmarks.size import sized

PLANS = sized(1_000, small=10)
_SOW = date(2026, 6, 10)
_FIELDS = tuple((200.0 + 97 * each, 0.6 + each % 40 / 100) for each in range(PLANS))
_DAYS = (-15, -7, -5, -3, -3, -2, -1, 0, 0, 0, 4, 5, 6, 7, 12, 12, 16, 16, 18, 21)


def _ours() -> None:
    for area_m2, germination in _FIELDS:
        quantities(FieldInputs(field_area_m2=area_m2, germination=germination))
        calendar(Anchors(_SOW))


def _floats() -> None:
    first = _SOW.toordinal()
    for area_m2, germination in _FIELDS:
        seedlings = area_m2 / 0.04 * 2
        seed_kg = seedlings * 25 / 1_000_000 / (germination * 0.65)
        bed_m2 = max(area_m2 / 100, seed_kg * 1_000_000 / 25 / 20_000)
        batches = math.ceil(bed_m2 * 40 / 100)
        (math.ceil(bed_m2 / 0.15), seed_kg * 150 / bed_m2, 7 * batches, 2 * batches, batches)
        (seed_kg * 1.25, bed_m2 * 1.1, bed_m2 * 10, bed_m2 * 15, bed_m2 * 3)
        [date.fromordinal(first + day) for day in _DAYS]


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """Quantities and calendar of many fields."""
    floor = Side("bare float arithmetic and dates", _floats)
    what = "agronomy: quantities and calendar"
    yield compare(what, PLANS, "plans", _ours, floor, runs=runs)
