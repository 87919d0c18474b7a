"""Writes events as an iCalendar file (RFC 5545); escaping and folding are the library's."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

PRODUCT = "-//nursery//nursery calendar//EN"


@dataclass(frozen=True)
class CalendarName:
    """What a calendar is called, and its language."""

    name: str
    language: str


@dataclass(frozen=True)
class CalendarEvent:
    """A day in somebody's calendar; it takes no hours of that day."""

    uid: str
    on: date
    summary: str
    description: str
    sequence: int
    changed_at: datetime
    cancelled: bool = False
    address: str = ""


def written(named: CalendarName, events: Iterable[CalendarEvent]) -> bytes:
    """The file. Without a METHOD, since nobody is invited; DTSTAMP is then the time of the last
    change (3.8.7.2), so that a file without changes is the same file."""
    from icalendar import Calendar  # noqa: PLC0415  # large, and few ask for a calendar

    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("calscale", "GREGORIAN")
    calendar.add("name", named.name, parameters={"language": named.language})  # RFC 7986
    calendar.add("x-wr-calname", named.name)  # what most programs read
    for event in events:
        calendar.add_component(_component(event))
    content: bytes = calendar.to_ical()
    return content


def _component(event: CalendarEvent) -> Any:
    from icalendar import Event as Component  # noqa: PLC0415  # as above

    made = Component()
    made.add("uid", event.uid)
    made.add("dtstamp", event.changed_at)
    made.add("last-modified", event.changed_at)
    made.add("sequence", event.sequence)
    made.add("dtstart", event.on)
    made.add("summary", event.summary)
    made.add("description", event.description)
    made.add("status", "CANCELLED" if event.cancelled else "CONFIRMED")
    made.add("transp", "TRANSPARENT")
    if event.address:
        made.add("url", event.address)
    return made
