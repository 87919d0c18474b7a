"""The text of one element -> its value, by the rules of the standard that a schema cannot hold.

Section numbers are those of CAP 1.2. Blank space around a text is not held against it.
"""

import re
from datetime import UTC, datetime, timedelta

from assistant.alert_terms import Reference
from assistant.alerts.values import DEFAULT_LANGUAGE, AlertWrong
from assistant.places import DATE_LINE, POLE, Circle, Point

# 3.2.1 <sent>, 3.3.2: seconds, and a zone in digits; letters such as Z must not stand there.
_TIME = re.compile(
    r"([0-9]{4}-[0-9]{2}-[0-9]{2})T([0-9]{2}:[0-9]{2}:[0-9]{2})([-+][0-9]{2}:[0-5][0-9])"
)
# 3.2.1 <identifier>, <sender>: no spaces, commas or the restricted characters < and &.
_IDENTIFIER = re.compile(r"[^\s,<&]+")
_DECIMAL = re.compile(r"[-+]?([0-9]+(\.[0-9]*)?|\.[0-9]+)")
_LANGUAGE = re.compile(r"[A-Za-z]{1,8}(-[A-Za-z0-9]{1,8})*")
MOST_DIGITS = 40
LEAST_CORNERS = 4  # 3.2.4 <polygon>: the first pair is given again as the last
FARTHEST_ZONE = timedelta(hours=14)  # XML Schema Part 2, 3.2.7.3

# Ours: no danger is told of outside them, and a zone or a day more stays in the calendar.
YEARS = range(1900, 3000)


class WrongText(Exception):
    """A text that is not what its element holds; becomes a fault."""

    def __init__(self, wrong: AlertWrong) -> None:
        super().__init__(wrong)
        self.wrong = wrong


def identifier(text: str) -> str:
    """A name for a message or its sender."""
    if not _IDENTIFIER.fullmatch(text):
        raise WrongText(AlertWrong.IDENTIFIER)
    return text


def moment(text: str) -> datetime:
    """A moment such as 2003-06-17T14:57:00-07:00, in UTC; 24:00:00 is the end of its day."""
    found = _TIME.fullmatch(text)
    if found is None:
        raise WrongText(AlertWrong.TIME)
    day, clock, zone = found.groups()
    ends_day = clock == "24:00:00"
    try:
        local = datetime.fromisoformat(f"{day}T{'00:00:00' if ends_day else clock}{zone}")
        if local.year not in YEARS or abs(local.utcoffset() or timedelta()) > FARTHEST_ZONE:
            raise WrongText(AlertWrong.TIME)
        return (local + timedelta(days=int(ends_day))).astimezone(UTC)
    except (ValueError, OverflowError):
        raise WrongText(AlertWrong.TIME) from None


def references(text: str) -> tuple[Reference, ...]:
    """Earlier messages, each as sender,identifier,sent; blanks between them."""
    return tuple(_reference(each) for each in text.split())


def _reference(text: str) -> Reference:
    parts = text.split(",")
    if len(parts) != 3:
        raise WrongText(AlertWrong.REFERENCE)
    try:
        return Reference(identifier(parts[0]), identifier(parts[1]), moment(parts[2]))
    except WrongText:
        raise WrongText(AlertWrong.REFERENCE) from None


def decimal(text: str) -> float:
    """A number in plain digits."""
    if len(text) > MOST_DIGITS or not _DECIMAL.fullmatch(text):
        raise WrongText(AlertWrong.NUMBER)
    return float(text)


def whole(text: str) -> int:
    """A count."""
    if len(text) > MOST_DIGITS or not re.fullmatch(r"[-+]?[0-9]+", text):
        raise WrongText(AlertWrong.NUMBER)
    return int(text)


def language(text: str) -> str:
    """A code as in RFC 3066, such as en-US, which is meant where it is left empty (3.2.2)."""
    if not text:
        return DEFAULT_LANGUAGE
    if not _LANGUAGE.fullmatch(text):
        raise WrongText(AlertWrong.WORD)
    return text


def _point(text: str) -> Point:
    parts = text.split(",")
    if len(parts) != 2:
        raise WrongText(AlertWrong.POINT)
    try:
        latitude, longitude = map(decimal, parts)
    except WrongText:
        raise WrongText(AlertWrong.POINT) from None
    if abs(latitude) > POLE or abs(longitude) > DATE_LINE:
        raise WrongText(AlertWrong.POINT)
    return Point(latitude, longitude)


def polygon(text: str) -> tuple[Point, ...]:
    """A closed ring of latitude,longitude with blanks between the pairs."""
    ring = tuple(map(_point, text.split()))
    if len(ring) < LEAST_CORNERS or ring[0] != ring[-1]:
        raise WrongText(AlertWrong.RING)
    return ring


def circle(text: str) -> Circle:
    """A centre and a radius [km], as latitude,longitude radius."""
    parts = text.split()
    if len(parts) != 2:
        raise WrongText(AlertWrong.POINT)
    centre, radius_km = _point(parts[0]), decimal(parts[1])
    if radius_km < 0:
        raise WrongText(AlertWrong.NUMBER)
    return Circle(centre, radius_km)
