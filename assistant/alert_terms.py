"""What is known of official alerts also where the package that reads them is left out: what
names a message, the words of the standard that thresholds are made of, and the thresholds."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import Protocol, TypeVar

CATEGORIES = tuple(
    "Geo Met Safety Security Rescue Fire Health Env Transport Infra CBRNE Other".split()
)
URGENCIES = ("Immediate", "Expected", "Future", "Past", "Unknown")
SEVERITIES = ("Extreme", "Severe", "Moderate", "Minor", "Unknown")
CERTAINTIES = ("Observed", "Likely", "Possible", "Unlikely", "Unknown")


class Status(StrEnum):
    """How a message is to be handled; only an actual one is about a danger."""

    ACTUAL = "Actual"
    EXERCISE = "Exercise"
    SYSTEM = "System"
    TEST = "Test"
    DRAFT = "Draft"


class MessageType(StrEnum):
    """The standard's msgType."""

    ALERT = "Alert"
    UPDATE = "Update"
    CANCEL = "Cancel"
    ACK = "Ack"
    ERROR = "Error"


class Scope(StrEnum):
    """Whom a message is meant for."""

    PUBLIC = "Public"
    RESTRICTED = "Restricted"
    PRIVATE = "Private"


@dataclass(frozen=True, order=True)
class Reference:
    """What names one message among all: who sent it, under which identifier, and when."""

    sender: str
    identifier: str
    sent: datetime


@dataclass(frozen=True)
class Rules:
    """Which dangers lead to a warning.

    categories: the standard's; weather, since a bed is harmed by rain, hail and wind
    events: words of which one stands in the event or headline, or `name=value` of an event
        code; none: any event of these categories
    severities: from Moderate, "possible threat to life or property"; Minor is "minimal to no
        known threat", and one does not know what Unknown is
    urgencies: what is still to come; an hour's notice (Expected) is enough to cover a bed, and
        heavy rain is told the day before (Future)
    certainties: what is more likely than not; who covers in vain too often stops covering
    lasts: how long an alert holds that names no end; the standard leaves that to who reads it
    """

    categories: frozenset[str] = frozenset({"Met"})
    events: tuple[str, ...] = ()
    severities: frozenset[str] = frozenset({"Extreme", "Severe", "Moderate"})
    urgencies: frozenset[str] = frozenset({"Immediate", "Expected", "Future"})
    certainties: frozenset[str] = frozenset({"Observed", "Likely"})
    lasts: timedelta = timedelta(hours=24)


class _Spoken(Protocol):
    @property
    def language(self) -> str: ...


Told = TypeVar("Told", bound=_Spoken)


def spoken(told: Sequence[Told], language: str) -> Told:
    """What is said in a language; else in English; else what was said first."""
    for wanted in (language, "en"):
        for each in told:
            if each.language.lower().split("-")[0] == wanted.lower():
                return each
    return told[0]
