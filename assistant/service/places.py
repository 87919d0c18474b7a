"""Where villages lie, and which of them are near a place; distances are along the ground."""

import re
from collections.abc import Iterable
from datetime import datetime

from assistant.people import Village
from assistant.places import Circle, Point, in_circle
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.sight import Sight

_NUMBER = r"[-+]?\d{1,3}(?:\.\d+)?"
FAR_KM, NEAR_KM = 500.0, 200.0  # a programme is of a district or a few
_POINT = re.compile(rf"({_NUMBER})\s*[°]?\s*[,; ]\s*({_NUMBER})\s*[°]?")


def read_point(text: str) -> Point | None:
    """A point typed as "-0.68, 37.35": degrees north, then east; None for what is none."""
    found = _POINT.fullmatch(text.strip())
    if found is None:
        return None
    point = Point(float(found[1]), float(found[2]))
    return point if abs(point.latitude) <= 90 and abs(point.longitude) <= 180 else None


def point_of(village: Village) -> Point | None:
    """Where a village lies, where that is known."""
    if village.latitude is None or village.longitude is None:
        return None
    return Point(village.latitude, village.longitude)


def within(villages: Iterable[Village], centre: Point, km: float) -> tuple[Village, ...]:
    """The villages that lie no further than that; of those whose place is known."""
    area = Circle(centre, km)
    placed = ((village, point_of(village)) for village in villages)
    return tuple(village for village, point in placed if point and in_circle(area, point))


def turned(point: Point) -> Point | None:
    """With latitude and longitude changed over; None where that is no place."""
    if abs(point.longitude) > 90:
        return None
    return Point(point.longitude, point.latitude)


def looks_turned(point: Point, others: Iterable[Point]) -> bool:
    """Whether a place lies far from all others and would lie among them the other way round."""
    other, known = turned(point), tuple(others)
    if other is None or any(in_circle(Circle(point, FAR_KM), each) for each in known):
        return False
    return any(in_circle(Circle(other, NEAR_KM), each) for each in known)


def others_than(villages: Iterable[Village], village_id: int) -> tuple[Point, ...]:
    """Where the other villages lie, of those whose place is known."""
    placed = (point_of(village) for village in villages if village.id != village_id)
    return tuple(point for point in placed if point is not None)


def turned_round(villages: Iterable[Village]) -> tuple[str, ...]:
    """The villages whose latitude and longitude seem to have changed places, by name."""
    every = tuple(villages)
    placed = ((village, point_of(village)) for village in every)
    return tuple(
        village.name
        for village, point in placed
        if point is not None and looks_turned(point, others_than(every, village.id))
    )


def place_village(
    house: House, sight: Sight, village_id: int, point: Point | None, now: datetime
) -> Village | None:
    """Keeps where a village lies, or that nobody knows; None for one that is not in sight."""
    village = sight.village(village_id)
    if village is None:
        return None
    with house.store.work() as work:
        latitude, longitude = (point.latitude, point.longitude) if point else (None, None)
        placed = work.people.place_village(village.id, latitude, longitude)
        detail = f"{point.latitude}, {point.longitude}" if point else "-"
        subject = Subject(village_id=village.id)
        note(work, sight.officer.id, TrailAct.VILLAGE_PLACED, now, subject, detail)
    return placed
