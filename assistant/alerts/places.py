"""Whether an area holds a place: by polygon, circle or code, as the union of all of them."""

from collections.abc import Sequence
from dataclasses import dataclass

import shapely
from geographiclib.geodesic import Geodesic

from assistant.alerts.values import Area, Circle, Geocode, Point

HALF_TURN, TURN = 180.0, 360.0
POLE = 90.0


@dataclass(frozen=True)
class Place:
    """A village as an alert sees it: a mark on the map, codes, both, or neither."""

    point: Point | None = None
    geocodes: frozenset[Geocode] = frozenset()

    @property
    def findable(self) -> bool:
        """Whether any alert could be matched to it."""
        return self.point is not None or bool(self.geocodes)


def covers(area: Area, place: Place) -> bool:
    """Whether an area holds a place; its edge belongs to it."""
    if not place.geocodes.isdisjoint(map(as_code, area.geocodes)):
        return True
    point = place.point
    if point is None:
        return False
    return any(in_circle(circle, point) for circle in area.circles) or any(
        in_polygon(ring, point) for ring in area.polygons
    )


def as_code(code: Geocode) -> Geocode:
    """A code as codes are compared: blanks do not count, nor capitals in its system's name."""
    return Geocode(code.name.strip().upper(), code.value.strip())


def in_circle(circle: Circle, point: Point) -> bool:
    """Whether a point is no farther than the radius, along the WGS 84 ellipsoid."""
    centre = circle.centre
    metres = Geodesic.WGS84.Inverse(
        centre.latitude, centre.longitude, point.latitude, point.longitude, Geodesic.DISTANCE
    )["s12"]
    return bool(metres <= circle.radius_km * 1000)


def in_polygon(ring: Sequence[Point], point: Point) -> bool:
    """Whether a point is inside a ring, or on it.

    Edges are straight in latitude and longitude. A step of more than half a turn goes the
    short way, over the antimeridian; one of a whole turn goes round. Where a ring crosses
    itself, what is enclosed an even number of times is outside.
    """
    corners = unrolled(ring)
    shape = shapely.Polygon(corners)
    turns = (-TURN, 0.0, TURN)
    east = [point.longitude + turn for turn in turns]
    return bool(shapely.intersects_xy(shape, east, [point.latitude] * len(turns)).any())


def unrolled(ring: Sequence[Point]) -> list[tuple[float, float]]:
    """The corners as (longitude, latitude), longitudes going on beyond 180 where they must."""
    corners = [(ring[0].longitude, ring[0].latitude)]
    shift = 0.0
    for before, after in zip(ring, ring[1:], strict=False):
        step = after.longitude - before.longitude
        if HALF_TURN < abs(step) < TURN:
            shift += -TURN if step > 0 else TURN
        corners.append((after.longitude + shift, after.latitude))
    if shift:  # all round a pole, so that its beginning is a turn away: closed over that pole
        pole = POLE if sum(latitude for _, latitude in corners) > 0 else -POLE
        corners += [(corners[-1][0], pole), (corners[0][0], pole), corners[0]]
    return corners
