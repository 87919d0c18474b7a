"""Which places an area holds, checked against geometry from outside the project."""

import math
import random
from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.alerts import Area
from assistant.alerts import held as held_in
from assistant.alerts.fields import circle, polygon
from assistant.alerts.places import in_polygon as which_in
from assistant.alerts.places import turn
from assistant.places import Circle, Geocode, Point, VillagePlace, in_circle

DEGREES = st.integers(-80, 80)


def in_polygon(ring: Sequence[Point], point: Point) -> bool:
    """One point."""
    (found,) = which_in(ring, [point])
    return found


def crossings(ring: list[tuple[int, int]], x: float, y: float) -> bool:
    """The crossing-number test of W. R. Franklin's PNPOLY: another way to the same answer."""
    inside = False
    for (x1, y1), (x2, y2) in zip(ring, ring[1:], strict=False):
        if (y1 > y) != (y2 > y) and x < (x2 - x1) * (y - y1) / (y2 - y1) + x1:
            inside = not inside
    return inside


@given(st.lists(st.tuples(DEGREES, DEGREES), min_size=3, max_size=9), DEGREES, DEGREES)
def test_a_polygon_holds_what_an_independent_test_says(
    corners: list[tuple[int, int]], x: int, y: int
) -> None:
    """Rings of any shape, crossing themselves too; the point lies off all corners and edges."""
    ring = [*corners, corners[0]]
    east, north = x + math.pi / 10, y + math.e / 10
    drawn = [Point(latitude, longitude) for longitude, latitude in ring]
    assert in_polygon(drawn, Point(north, east)) == crossings(ring, east, north)


RING = polygon("-0.9,36.9 -0.9,37.1 -1.1,37.1 -1.1,36.9 -0.9,36.9")


@pytest.mark.parametrize(
    ("point", "inside"),
    [
        (Point(-1, 37), True),
        (Point(-0.9, 37), True),  # on an edge: rather one too many warned than one too few
        (Point(-0.9, 36.9), True),  # on a corner
        (Point(-0.899, 37), False),
        (Point(37, -1), False),  # latitude and longitude changed over
    ],
)
def test_latitude_comes_first(point: Point, inside: bool) -> None:
    """CAP 1.2, 3.2.4: pairs of latitude and longitude."""
    assert in_polygon(RING, point) is inside


FIJI = polygon("-15,177 -15,-178 -20,-178 -20,177 -15,177")


@pytest.mark.parametrize(
    ("longitude", "inside"),
    [
        (178, True),
        (180, True),
        (-180, True),
        (-179, True),
        (176, False),
        (-177, False),
        (0, False),
    ],
)
def test_a_ring_goes_the_short_way_over_the_antimeridian(
    longitude: float, inside: bool
) -> None:
    """Five degrees wide, not 355: as RFC 7946, 3.1.9 expects of what crosses it."""
    assert in_polygon(FIJI, Point(-17, longitude)) is inside
    assert in_polygon(FIJI[::-1], Point(-17, longitude)) is inside


def test_a_box_of_the_whole_world_holds_everything() -> None:
    """A step of a whole turn is no way of no length."""
    world = polygon("90,-180 90,180 -90,180 -90,-180 90,-180")
    assert all(
        in_polygon(world, Point(lat, lon)) for lat in (-89, 0, 50) for lon in (-180, 0, 9)
    )


def test_a_ring_round_a_pole_holds_the_pole() -> None:
    """North of 60, in steps of a third of a turn."""
    ring = polygon("60,0 60,120 60,-120 60,0")
    assert in_polygon(ring, Point(89, 77)) and in_polygon(ring, Point(61, -100))
    assert not in_polygon(ring, Point(59, 77)) and not in_polygon(ring, Point(-80, 0))


def test_a_polygon_without_inside_holds_only_its_edge() -> None:
    """There and back again."""
    line = polygon("0,0 0,2 0,1 0,0")
    assert in_polygon(line, Point(0, 1)) or not in_polygon(line, Point(1, 1))
    assert not in_polygon(line, Point(1, 1))


def test_a_polygon_of_tens_of_thousands_of_corners_is_no_matter() -> None:
    """As many as fit into the largest message, each edge crossing many others."""
    chance = random.Random(7)
    wild = [Point(chance.uniform(-9, 9), chance.uniform(-9, 9)) for _ in range(60_000)]
    drawn = [(point.longitude, point.latitude) for point in [*wild, wild[0]]]
    found = in_polygon([*wild, wild[0]], Point(0.5, 0.5))
    assert found == crossings(drawn, 0.5, 0.5)  # type: ignore[arg-type]


# Flinders Peak to Buninyong is 54972.271 m on GRS 80, which differs from WGS 84 by less than
# 0.1 mm here: Geocentric Datum of Australia Technical Manual 2.4, 4.3 (from memory).
FLINDERS = Point(-(37 + 57 / 60 + 3.72030 / 3600), 144 + 25 / 60 + 29.52440 / 3600)
BUNINYONG = Point(-(37 + 39 / 60 + 10.15610 / 3600), 143 + 55 / 60 + 35.38390 / 3600)


def test_a_circle_is_measured_on_the_ellipsoid() -> None:
    """To a centimetre over 55 km; a sphere of 6371 km would be some 50 m off."""
    assert in_circle(Circle(FLINDERS, 54.97228), BUNINYONG)
    assert not in_circle(Circle(FLINDERS, 54.97226), BUNINYONG)


def test_a_circle_reaches_over_the_antimeridian() -> None:
    """A tenth of a degree at the equator is 11.132 km (a pi/1800, a = 6378.137 km)."""
    near = Point(0, -179.95)
    assert in_circle(circle("0,179.95 11.14"), near)
    assert not in_circle(circle("0,179.95 11.12"), near)


def test_a_circle_reaches_as_far_north_as_its_radius() -> None:
    """A degree of latitude at the equator is 110.574 km (WGS 84), the least there is."""
    assert in_circle(circle("0,0 110.58"), Point(1, 0))
    assert not in_circle(circle("0,0 110.57"), Point(1, 0))
    assert in_circle(circle("89,0 111.7"), Point(90, 0))


def test_a_circle_of_no_radius_is_its_centre() -> None:
    """The earthquake of the standard's appendix A.3."""
    spot = circle("32.9525,-115.5527 0")
    assert in_circle(spot, Point(32.9525, -115.5527))
    assert not in_circle(spot, Point(32.9526, -115.5527))


CODE = Geocode("LINDARA-WARD", "07")
WITH_CODE = VillagePlace(geocodes=frozenset({CODE}))


@pytest.mark.parametrize(
    ("area", "place", "held"),
    [
        (Area("", geocodes=(CODE,)), WITH_CODE, True),
        (Area("", geocodes=(Geocode(" lindara-ward", "07 "),)), WITH_CODE, True),
        (Area("", geocodes=(Geocode("LINDARA-WARD", "7"),)), WITH_CODE, False),
        (Area("", geocodes=(Geocode("OTHER", "07"),)), WITH_CODE, False),
        (Area("", geocodes=(CODE,)), VillagePlace(Point(-1, 37)), False),
        (
            Area("", (RING,), geocodes=(CODE,)),
            VillagePlace(Point(-1, 37)),
            True,
        ),  # the union of all
        (Area("", (RING,), (circle("5,5 1"),)), VillagePlace(Point(5, 5)), True),
        (Area("", (RING,)), VillagePlace(), False),
        (Area("the whole country"), VillagePlace(Point(-1, 37), frozenset({CODE})), False),
    ],
)
def test_an_area_is_the_union_of_its_shapes_and_codes(
    area: Area, place: VillagePlace, held: bool
) -> None:
    """CAP 1.2, 3.2.4; words alone hold nothing that a program can find."""
    assert held_in(area, {7: place}) == ({7} if held else set())


def test_latitude_and_longitude_changed_over_are_found_out() -> None:
    """A box round (-0.68, 37.35), the slopes of Mount Kenya, written longitude first."""
    village = {1: VillagePlace(Point(-0.68, 37.35))}
    ring = tuple(Point(*each) for each in ((37, -1), (38, -1), (38, 0), (37, 0), (37, -1)))
    slip = Area("", polygons=(ring,), circles=(Circle(Point(37.35, -0.68), 5),))
    assert held_in(slip, village) == frozenset()
    turned = turn(slip)
    assert turned is not None and held_in(turned, village) == {1}
    assert turn(Area("only words")) is None
    assert turn(Area("", circles=(Circle(Point(1, 120), 5),))) is None  # no latitude of 120
