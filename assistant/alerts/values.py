"""What an alert says, as frozen values; words of the standard are kept as they are written."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from assistant.alert_terms import MessageType, Reference, Scope, Status
from assistant.places import Circle, Geocode, Point

DEFAULT_LANGUAGE = "en-US"  # of an <info> that names none (CAP 1.2, 3.2.2 <language>)


@dataclass(frozen=True)
class Area:
    """Where an alert holds: in words, and as the union of its shapes and codes.

    A polygon is a closed ring: its first and last points are the same.
    """

    words: str
    polygons: tuple[tuple[Point, ...], ...] = ()
    circles: tuple[Circle, ...] = ()
    geocodes: tuple[Geocode, ...] = ()

    @property
    def drawn(self) -> bool:
        """Whether it is told otherwise than in words alone."""
        return bool(self.polygons or self.circles or self.geocodes)


@dataclass(frozen=True)
class Info:
    """One danger in one language; `event`, `headline` and such are the service's own words."""

    language: str
    categories: tuple[str, ...]
    event: str
    responses: tuple[str, ...]
    urgency: str
    severity: str
    certainty: str
    event_codes: tuple[Geocode, ...]
    effective: datetime | None
    onset: datetime | None
    expires: datetime | None
    sender_name: str
    headline: str
    description: str
    instruction: str
    web: str
    contact: str
    areas: tuple[Area, ...]


@dataclass(frozen=True)
class Alert:
    """A message that keeps to the standard. `signed`: it has a signature, checked or not."""

    key: Reference
    status: Status
    kind: MessageType
    scope: Scope
    note: str
    references: tuple[Reference, ...]
    infos: tuple[Info, ...]
    signed: bool


class AlertWrong(StrEnum):
    """What about a message is not as the standard has it."""

    TOO_BIG = "too_big"
    NOT_XML = "not_xml"
    DTD = "dtd"  # a document type or entities: never needed, often an attack
    NOT_CAP = "not_cap"  # another root, or another version of the standard
    MISSING = "missing"
    UNKNOWN = "unknown"  # an element, an attribute or words that do not belong there
    TWICE = "twice"
    ORDER = "order"
    EMPTY = "empty"
    WORD = "word"  # none of the words that are allowed
    TIME = "time"
    IDENTIFIER = "identifier"
    REFERENCE = "reference"
    POINT = "point"
    RING = "ring"  # a polygon of fewer than four points, or one that is not closed
    NUMBER = "number"
    NEEDS = "needs"  # one element must stand beside another that is not there


@dataclass(frozen=True)
class AlertFault:
    """One fault: what is wrong, where (such as info[1]/area[2]/polygon), and what was found."""

    wrong: AlertWrong
    where: str
    got: str = ""


@dataclass(frozen=True)
class Faulty:
    """A message that does not keep to the standard; `key` where at least that could be read."""

    faults: tuple[AlertFault, ...]
    key: Reference | None = None
