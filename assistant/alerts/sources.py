"""Where alerts are read: what a source gives, and how it says what went wrong."""

from dataclasses import dataclass, field
from typing import Protocol


@dataclass(frozen=True)
class Stamp:
    """What a web server said of its answer, sent back to be told only of changes (RFC 9110)."""

    etag: str = ""
    modified: str = ""


@dataclass(frozen=True)
class FoundMessage:
    """One message, by a key that its source knows it by."""

    raw: bytes = field(repr=False)
    key: str


@dataclass(frozen=True)
class Look:
    """One look at a source: what is new, and what could not be read, in words for a log."""

    found: tuple[FoundMessage, ...] = ()
    stamp: Stamp = Stamp()
    trouble: str = ""


class AlertSource(Protocol):
    """A file, a folder, or a web address. Looking never raises for what the source does.

    What was found is given again at the next look until `done` is called for it, so that
    nothing is lost when it could not be kept.
    """

    @property
    def name(self) -> str: ...

    def look(self, before: Stamp) -> Look: ...

    def done(self, key: str) -> None: ...
