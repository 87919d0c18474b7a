"""Where villages lie: points on the earth, circles around them, codes of a weather service."""

from dataclasses import dataclass

from geographiclib.geodesic import Geodesic

POLE, DATE_LINE = 90.0, 180.0
# Of latitude, on WGS 84: a(1 - e^2) pi/180 = 110.574 km at the equator, more elsewhere.
LEAST_KM_PER_DEGREE = 110.57


@dataclass(frozen=True)
class Point:
    """WGS 84, decimal degrees; north and east are positive."""

    latitude: float
    longitude: float


@dataclass(frozen=True)
class Circle:
    """All within `radius_km` of a point."""

    centre: Point
    radius_km: float


@dataclass(frozen=True, order=True)
class Geocode:
    """A code for a place or an event, in a system that `name` tells."""

    name: str
    value: str


@dataclass(frozen=True)
class VillagePlace:
    """A village as an alert sees it: a mark on the map, codes, both, or neither."""

    point: Point | None = None
    geocodes: frozenset[Geocode] = frozenset()

    @property
    def findable(self) -> bool:
        """Whether any alert could be matched to it."""
        return self.point is not None or bool(self.geocodes)


def as_code(code: Geocode) -> Geocode:
    """A code as codes are compared: blanks do not count, nor capitals in its system's name."""
    return Geocode(code.name.strip().upper(), code.value.strip())


def in_circle(circle: Circle, point: Point) -> bool:
    """Whether a point is no farther than the radius, along the WGS 84 ellipsoid."""
    centre = circle.centre
    if abs(centre.latitude - point.latitude) * LEAST_KM_PER_DEGREE > circle.radius_km:
        return False  # most villages are; the exact way takes longer
    metres = Geodesic.WGS84.Inverse(
        centre.latitude, centre.longitude, point.latitude, point.longitude, Geodesic.DISTANCE
    )["s12"]
    return bool(metres <= circle.radius_km * 1000)
