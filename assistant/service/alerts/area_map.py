"""A drawing of an alert's area and the officer's villages, as the numbers of an SVG."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from assistant.alerts import Area
from assistant.alerts.places import unrolled
from assistant.places import Circle, Point

WIDE, HIGH, EDGE = 640.0, 400.0, 24.0  # of the drawing, and its empty border
MOST_CORNERS = 400  # of one outline; more cannot be seen
KM_PER_DEGREE = 111.2  # of latitude; near enough to draw with
LEAST_DEGREES = 0.02  # what is shown of a single spot

Spot = tuple[float, float]  # east and north, in degrees


@dataclass(frozen=True)
class Mark:
    """One village where it stands in the drawing."""

    name: str
    x: float
    y: float
    inside: bool


@dataclass(frozen=True)
class Drawing:
    """Outlines as the points of an SVG polygon, circles as (x, y, rx, ry)."""

    outlines: tuple[str, ...]
    circles: tuple[tuple[float, float, float, float], ...]
    marks: tuple[Mark, ...]
    wide: float = WIDE
    high: float = HIGH


def draw(areas: Iterable[Area], villages: Sequence[tuple[str, Point, bool]]) -> Drawing | None:
    """The drawing of areas with villages (name, place, whether inside); None without shapes.

    Degrees are drawn straight, those of longitude shorter by the cosine of the latitude.
    """
    areas = tuple(areas)
    rings = [_thinned(unrolled(ring)) for area in areas for ring in area.polygons]
    circles = [circle for area in areas for circle in area.circles]
    if not rings and not circles:
        return None
    middle = rings[0][0][0] if rings else circles[0].centre.longitude
    spots = [_near(point, middle) for _, point, _ in villages]
    frame = _Frame(
        [*spots, *(spot for ring in rings for spot in ring), *_rims(circles, middle)]
    )
    return Drawing(
        tuple(
            " ".join("{:.1f},{:.1f}".format(*frame.put(spot)) for spot in ring)
            for ring in rings
        ),
        tuple(_ellipse(circle, middle, frame) for circle in circles),
        tuple(
            Mark(name, *frame.put(spot), inside)
            for (name, _, inside), spot in zip(villages, spots, strict=True)
        ),
    )


class _Frame:
    """Puts degrees onto the drawing, so that all spots are on it."""

    def __init__(self, spots: Sequence[Spot]) -> None:
        east, north = zip(*spots, strict=True)
        self._west, self._top = min(east), max(north)
        middle = math.radians((max(north) + min(north)) / 2)
        self._squeeze = max(math.cos(middle), 0.05)
        wide = max((max(east) - min(east)) * self._squeeze, LEAST_DEGREES)
        high = max(max(north) - min(north), LEAST_DEGREES)
        self.scale = min((WIDE - 2 * EDGE) / wide, (HIGH - 2 * EDGE) / high)
        used_wide = (max(east) - min(east)) * self._squeeze * self.scale
        used_high = (max(north) - min(north)) * self.scale
        self._left, self._down = (WIDE - used_wide) / 2, (HIGH - used_high) / 2

    def put(self, spot: Spot) -> tuple[float, float]:
        """Where a spot is drawn."""
        east, north = spot
        x = self._left + (east - self._west) * self._squeeze * self.scale
        return round(x, 1), round(self._down + (self._top - north) * self.scale, 1)


def _thinned(ring: Sequence[Spot]) -> Sequence[Spot]:
    return ring[:: max(1, math.ceil(len(ring) / MOST_CORNERS))]


def _near(point: Point, middle: float) -> Spot:
    """A point at the turn of longitude that is nearest to the middle."""
    turns = round((middle - point.longitude) / 360.0)
    return point.longitude + turns * 360.0, point.latitude


def _rims(circles: Iterable[Circle], middle: float) -> list[Spot]:
    """The four ends of each circle."""
    found = []
    for circle in circles:
        east, north = _near(circle.centre, middle)
        up = circle.radius_km / KM_PER_DEGREE
        aside = up / max(math.cos(math.radians(north)), 0.05)
        found += [(east - aside, north), (east + aside, north)]
        found += [(east, north - up), (east, north + up)]
    return found


def _ellipse(circle: Circle, middle: float, frame: _Frame) -> tuple[float, float, float, float]:
    west, east, south, north = map(frame.put, _rims([circle], middle))
    return (
        (west[0] + east[0]) / 2,
        (south[1] + north[1]) / 2,
        max((east[0] - west[0]) / 2, 1.0),
        max((south[1] - north[1]) / 2, 1.0),
    )
