"""Where villages lie: what is typed, and how far is far.

Distances: on the WGS 84 ellipsoid (NIMA TR8350.2: a = 6 378 137 m, 1/f = 298.257 223 563) one
degree of longitude on the equator is a * pi / 180 = 111.319 5 km, and one degree of latitude
from the equator is 110.574 4 km (any geodesy handbook; from memory).
"""

from dataclasses import replace

import pytest

from assistant.people import Village
from assistant.places import Point
from assistant.service.places import looks_turned, read_point, turned_round, within

EQUATOR = Point(0.0, 37.0)


def _at(latitude: float | None, longitude: float | None) -> Village:
    return Village(1, "Mtoni", "Africa/Nairobi", latitude=latitude, longitude=longitude)


@pytest.mark.parametrize(
    ("typed", "read"),
    {
        "-0.68, 37.35": Point(-0.68, 37.35),
        "-0.68 37.35": Point(-0.68, 37.35),
        " 10° ; +106.5° ": Point(10.0, 106.5),
        "90,180": Point(90.0, 180.0),
        "91, 10": None,
        "10, 181": None,
        "10": None,
        "0,68, 37,35": None,
        "nan, 1e5": None,
        "": None,
    }.items(),
)
def test_a_point_is_degrees_north_then_east(typed: str, read: Point | None) -> None:
    """Anything else is none."""
    assert read_point(typed) == read


@pytest.mark.parametrize(
    ("village", "km", "near"),
    [
        (_at(0.0, 38.0), 111.31, False),
        (_at(0.0, 38.0), 111.33, True),
        (_at(1.0, 37.0), 110.57, False),
        (_at(1.0, 37.0), 110.58, True),
        (_at(None, None), 500.0, False),
    ],
)
def test_a_village_is_near_by_the_ground_between(
    village: Village, km: float, near: bool
) -> None:
    """One whose place nobody knows is not."""
    assert bool(within([village], EQUATOR, km)) is near


def test_a_place_written_the_other_way_round_is_seen() -> None:
    """It lies far from all others, and turned round among them."""
    valley = (Point(-0.68, 37.35), Point(-0.71, 37.44))
    assert looks_turned(Point(37.4, -0.7), valley)
    assert not looks_turned(Point(-0.7, 37.4), valley)
    assert not looks_turned(Point(10.0, 106.5), valley)  # another country, and no slip
    assert not looks_turned(Point(37.4, -0.7), ())  # the first village of a programme
    assert not looks_turned(Point(1.0, 150.0), valley)


def test_villages_written_the_other_way_round_are_named() -> None:
    """For the check of a deployment and the command line."""
    villages = [
        replace(_at(-0.68, 37.35), id=1, name="Kijani"),
        replace(_at(-0.71, 37.44), id=2, name="Mto Mwanga"),
        replace(_at(37.4, -0.7), id=3, name="Ukingo"),
    ]
    assert turned_round(villages) == ("Ukingo",)
