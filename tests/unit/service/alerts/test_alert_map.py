"""The drawing of an alert's area: whatever the area, all of it and all villages are on it."""

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from assistant.alerts import Area
from assistant.alerts.fields import polygon
from assistant.places import Circle, Point
from assistant.service.alerts.area_map import HIGH, WIDE, draw

POINTS = st.builds(Point, st.floats(-89, 89), st.floats(-180, 180))
RINGS = st.lists(POINTS, min_size=3, max_size=8).map(lambda corners: (*corners, corners[0]))
CIRCLES = st.builds(Circle, POINTS, st.floats(0, 500))
AREAS = st.builds(
    Area,
    st.just(""),
    st.lists(RINGS, max_size=2).map(tuple),
    st.lists(CIRCLES, max_size=2).map(tuple),
)
VILLAGES = st.lists(st.tuples(st.just("Kijani"), POINTS, st.booleans()), max_size=3)


@given(st.lists(AREAS, max_size=2), VILLAGES)
def test_every_corner_and_village_is_on_the_drawing(areas: list[Area], villages: Any) -> None:
    """Half a unit for rounding."""
    drawing = draw(areas, villages)
    if drawing is None:
        assert not any(area.polygons or area.circles for area in areas)
        return
    corners = [
        tuple(map(float, pair.split(","))) for o in drawing.outlines for pair in o.split()
    ]
    ends = [(x - rx, y + ry) for x, y, rx, ry in drawing.circles]
    marks = [(mark.x, mark.y) for mark in drawing.marks]
    for x, y in (*corners, *ends, *marks):
        assert -0.5 <= x <= WIDE + 0.5 and -0.5 <= y <= HIGH + 0.5


def test_north_is_up_and_east_is_right() -> None:
    """And a degree of longitude is narrower far from the equator: at 60 north, by half."""
    box = polygon("60,10 60,12 61,12 61,10 60,10")
    drawing = draw(
        [Area("", (box,))], [("NE", Point(61, 12), True), ("SW", Point(60, 10), True)]
    )
    assert drawing is not None
    north_east, south_west = drawing.marks
    wide, high = north_east.x - south_west.x, south_west.y - north_east.y
    assert wide > 0 and high > 0
    assert abs(wide / high - 2 * 0.4924) < 0.01  # cos 60.5 degrees = 0.4924


def test_villages_stand_where_the_area_is_across_the_antimeridian() -> None:
    """Not at the other end of the drawing."""
    fiji = polygon("-15,177 -15,-178 -20,-178 -20,177 -15,177")
    drawing = draw([Area("", (fiji,))], [("Taveuni", Point(-17, -179.9), True)])
    assert drawing is not None and WIDE * 0.3 < drawing.marks[0].x < WIDE * 0.9
