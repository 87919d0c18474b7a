"""A drawing of where villages lie, in numbers: no tiles, nothing from elsewhere."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, radians, sqrt

from assistant.people import Village
from assistant.service.desk.villages import VillageLine

WIDE, EDGE = 640.0, 60.0  # of the drawing, in its own units
LOWEST, HIGHEST = 160.0, 560.0
KM_PER_DEGREE = 111.2  # of latitude; a drawing needs no more
LEAST_KM = 2.0  # across: a single village is not blown up
SMALLEST, LARGEST = 5.0, 16.0  # radius of a mark
STEPS_KM = (1, 2, 5, 10, 20, 50, 100, 200, 500)
LATER_HALF = 0.6  # of the width: names there stand to the left of their marks


@dataclass(frozen=True)
class VillageMark:
    """A village: its place in the drawing, its size by open nurseries."""

    line: VillageLine
    x: float
    y: float
    radius: float
    leftward: bool


@dataclass(frozen=True)
class VillageMap:
    """The drawing, with a rule of so many km; `unplaced` are on no map."""

    marks: tuple[VillageMark, ...]
    wide: float
    high: float
    rule_km: int
    rule: float
    unplaced: tuple[Village, ...]


def village_map(lines: Sequence[VillageLine]) -> VillageMap | None:
    """Draws the villages that were placed; None where none is. North is up; a longitude is as
    much shorter than a latitude as it is there."""
    placed = [each for each in lines if each.village.latitude is not None]
    if not placed:
        return None
    points = _points(placed)
    across = max(LEAST_KM, *(x for x, _ in points))
    down = max(y for _, y in points)
    scale = min((WIDE - 2 * EDGE) / across, (HIGHEST - 2 * EDGE) / max(down, 0.1))
    left = (WIDE - scale * max(x for x, _ in points)) / 2
    high = max(LOWEST, scale * down + 2 * EDGE)
    top = (high - scale * down) / 2
    most = max(each.beds for each in placed) or 1
    marks = tuple(
        _mark(each, left + scale * x, top + scale * y, most)
        for each, (x, y) in zip(placed, points, strict=True)
    )
    rule_km = max((km for km in STEPS_KM if km * scale <= WIDE / 3), default=STEPS_KM[0])
    unplaced = tuple(each.village for each in lines if each.village.latitude is None)
    return VillageMap(marks, WIDE, round(high), rule_km, round(rule_km * scale, 1), unplaced)


def _points(placed: Sequence[VillageLine]) -> list[tuple[float, float]]:
    """Km east of the most western one, and south of the most northern."""
    north = [each.village.latitude or 0.0 for each in placed]
    east = [each.village.longitude or 0.0 for each in placed]
    narrow = cos(radians(sum(north) / len(north))) * KM_PER_DEGREE
    return [
        ((x - min(east)) * narrow, (max(north) - y) * KM_PER_DEGREE)
        for x, y in zip(east, north, strict=True)
    ]


def _mark(line: VillageLine, x: float, y: float, most: int) -> VillageMark:
    radius = SMALLEST + (LARGEST - SMALLEST) * sqrt(line.beds / most)
    return VillageMark(line, round(x, 1), round(y, 1), round(radius, 1), x > WIDE * LATER_HALF)
