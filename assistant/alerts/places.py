"""Whether an area holds a place: by polygon, circle or code, as the union of all of them."""

from collections.abc import Mapping, Sequence

from assistant.alerts.values import Area
from assistant.places import POLE, Circle, Point, VillagePlace, as_code, in_circle

HALF_TURN, TURN = 180.0, 360.0


def held(area: Area, places: Mapping[int, VillagePlace]) -> frozenset[int]:
    """The places that an area holds, by their ids; its edge belongs to it."""
    codes = frozenset(map(as_code, area.geocodes))
    named = {key for key, place in places.items() if not codes.isdisjoint(place.geocodes)}
    points = {key: place.point for key, place in places.items() if place.point is not None}
    around = {
        key
        for key, point in points.items()
        if any(in_circle(circle, point) for circle in area.circles)
    }
    inside: set[int] = set()
    for ring in area.polygons:
        found = in_polygon(ring, list(points.values()))
        inside.update(key for key, is_in in zip(points, found, strict=True) if is_in)
    return frozenset(named | around | inside)


def turn(area: Area) -> Area | None:
    """The shapes of an area with latitude and longitude changed over, a frequent slip; None
    where that is no place on earth, or there are no shapes."""
    rings = tuple(tuple(map(_turned, ring)) for ring in area.polygons)
    circles = tuple(Circle(_turned(each.centre), each.radius_km) for each in area.circles)
    points = [point for ring in rings for point in ring]
    points += [each.centre for each in circles]
    on_earth = bool(points) and all(abs(point.latitude) <= POLE for point in points)
    return Area(area.words, rings, circles) if on_earth else None


def _turned(point: Point) -> Point:
    return Point(point.longitude, point.latitude)


def in_polygon(ring: Sequence[Point], points: Sequence[Point]) -> list[bool]:
    """Whether each of some points is inside a ring, or on it.

    Edges are straight in latitude and longitude. A step of more than half a turn goes the
    short way, over the antimeridian; one of a whole turn goes round. Where a ring crosses
    itself, what is enclosed an even number of times is outside.
    """
    import shapely  # noqa: PLC0415  # a sixth of an idle process, and most see no polygon

    corners = unrolled(ring)
    shape = shapely.Polygon(corners)
    shapely.prepare(shape)
    north = [point.latitude for point in points]
    found = [False] * len(points)
    for turn in (-TURN, 0.0, TURN):
        east = [point.longitude + turn for point in points]
        for at, is_in in enumerate(shapely.intersects_xy(shape, east, north).tolist()):
            found[at] = found[at] or is_in
    return found


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
