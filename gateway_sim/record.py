"""What happened at the operator, in order; tests read it, the console prints it."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum


class EntryKind(StrEnum):
    """What an entry is about."""

    HANDED_IN = "handed in"  # the assistant brought a text; code is our answer
    DELIVERED = "delivered"
    LOST = "lost"
    FAILED = "failed"
    EXPIRED = "expired"
    WRITTEN = "written"  # a phone sent a text
    RANG = "rang"  # a phone rang the service's number
    CALLED = "called"  # we called the assistant back; code is its answer, None if none came
    USSD = "ussd"  # one turn of a session: what the phone sent and the screen it got
    ENDED = "ended"  # a USSD session ended; detail says why
    POWER = "power"
    FAULT = "fault"  # what should not have happened; detail says what


@dataclass(frozen=True)
class RecordEntry:
    """One thing that happened to one phone."""

    at: datetime
    kind: EntryKind
    phone: str = ""
    id: str = ""
    text: str = ""
    detail: str = ""
    code: int | None = None
    segments: int = 0

    def __str__(self) -> str:
        code = "" if self.code is None else f" {self.code}"
        segments = f" ({self.segments} segments)" if self.segments > 1 else ""
        detail = f" [{self.detail}]" if self.detail else ""
        text = f": {self.text!r}" if self.text else ""
        return f"{self.phone} {self.kind}{code}{segments}{detail}{text}".strip()
