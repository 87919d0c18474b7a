"""What passes between a phone and the assistant: texts, screens, receipts, and the way out.

Times are aware and in UTC. Phone numbers are E.164 with the leading plus.
"""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal
from enum import StrEnum
from typing import Protocol


class Channel(StrEnum):
    """How a person reached us."""

    SMS = "sms"
    USSD = "ussd"
    RING = "ring"  # a call that nobody takes: it costs the caller nothing


class Step(StrEnum):
    """Where in its USSD session a message stands; an SMS is always a TEXT."""

    TEXT = "text"
    BEGIN = "begin"
    ANSWER = "answer"
    END = "end"  # the session is gone (hung up, dropped or timed out): nothing can be shown


@dataclass(frozen=True)
class Incoming:
    """One message from a phone, under the gateway's own id."""

    gateway_id: str
    phone: str
    text: str
    channel: Channel
    at: datetime
    step: Step = Step.TEXT
    session_id: str | None = None

    def __post_init__(self) -> None:
        if self.at.tzinfo is None:
            raise ValueError(f"expected an aware time, got {self.at!r}: give it a time zone")


@dataclass(frozen=True)
class Outgoing:
    """One text to a phone, under our own id, worthless after `not_after`."""

    message_id: str
    phone: str
    text: str
    not_after: datetime


@dataclass(frozen=True)
class Screen:
    """One USSD answer; `more` keeps the session open for a reply."""

    text: str
    more: bool


class Fate(StrEnum):
    """What became of a text, as a receipt or the hand-over says."""

    ACCEPTED = "accepted"  # the operator has it
    DELIVERED = "delivered"  # the phone has it
    FAILED = "failed"  # it will never arrive
    EXPIRED = "expired"  # its time ran out on the way
    TRY_LATER = "try_later"  # not taken now; ask again


@dataclass(frozen=True)
class Receipt:
    """What the operator says of an earlier text, found again by our own id."""

    message_id: str
    fate: Fate
    at: datetime
    detail: str = ""


@dataclass(frozen=True)
class Handover:
    """What the gateway said when it was offered a text: ACCEPTED, FAILED or TRY_LATER.

    `answered` is False where nobody answered at all, so that the next would only wait too.
    `rest` is how long the operator wants to be left in peace, where it said so: a pause of the
    line and not of this text.
    """

    fate: Fate
    detail: str = ""
    answered: bool = True
    rest: timedelta | None = None


class Gateway(Protocol):
    """The way out to the phones. Receiving is by callback, so sending is all there is.

    `send` may be called twice with the same `message_id` when the answer to the first call was
    lost; the operator must then drop the repeat. It never raises for what the network does.
    """

    def send(self, outgoing: Outgoing, now: datetime) -> Handover: ...


@dataclass(frozen=True)
class Tariff:
    """What the operator takes for one segment, in the money of an ISO 4217 code."""

    per_segment: Decimal
    currency: str

    def cost(self, segments: int) -> Decimal:
        """What so many segments cost, exact."""
        return self.per_segment * segments


Clock = Callable[[], datetime]
"""Where an entrance (web request, worker loop, command line) reads the time."""
