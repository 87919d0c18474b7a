"""What passes between a phone and the assistant: texts, screens, receipts, and the way out.

Times are aware and in UTC. Phone numbers are E.164 with the leading plus.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from decimal import Decimal
from enum import StrEnum
from typing import Protocol, runtime_checkable


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
class Piece:
    """Which piece of a long text a message is: 1 to `parts`, under the phone's own `ref`."""

    ref: str
    part: int
    parts: int


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
    line: str = ""  # the line it came by; none where there is only one
    piece: Piece | None = None  # of a long text, where the line does not join it

    def __post_init__(self) -> None:
        if self.at.tzinfo is None:
            raise ValueError(f"expected an aware time, got {self.at!r}: give it a time zone")


@dataclass(frozen=True)
class Outgoing:
    """One text to a phone, under our own id, worthless after `not_after`.

    `kind` says what it is for and `line` by which line its reader last wrote: a deployment of
    several lines chooses by them. With `only` it goes by that line or not at all. What is
    `urgent` is held back by no quota of ours.
    """

    message_id: str
    phone: str
    text: str
    not_after: datetime
    kind: str = ""
    line: str = ""
    only: bool = False
    urgent: bool = False


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
    """What the operator says of an earlier text, found again by our own id; or, where
    `message_id` is empty, by the line it went by and the operator's own id for a part of it
    (see `Handover.parts`)."""

    message_id: str
    fate: Fate
    at: datetime
    detail: str = ""
    line: str = ""
    part: str = ""


@dataclass(frozen=True)
class Handover:
    """What the gateway said when it was offered a text: ACCEPTED, FAILED or TRY_LATER.

    `answered` is False where nobody answered at all, so that the next would only wait too.
    `rest` is how long the operator wants to be left in peace, where it said so: a pause of the
    line and not of this text. `line` names who was offered the text, where there are several.
    `parts` are the operator's own ids of its segments, where receipts will bear those.
    `put_off_until` is set where the text was offered to nobody: every line for it rests, is
    busy, or is at its rate or its quota, until then; `in_place` with it where all of them rest
    and the text cannot be to blame. `in_doubt` is True where the text may have left and only
    the answer was lost: a phone may show it.
    """

    fate: Fate
    detail: str = ""
    answered: bool = True
    rest: timedelta | None = None
    line: str = ""
    parts: tuple[str, ...] = ()
    put_off_until: datetime | None = None
    in_place: bool = False
    in_doubt: bool = False


# --- a line, out -----------------------------------------------------------------------------


class Gateway(Protocol):
    """The way out to the phones.

    `send` may be called twice with the same `message_id` when the answer to the first call was
    lost; the operator, or the line before it, must then drop the repeat. It never raises for
    what the network does.
    """

    def send(self, outgoing: Outgoing, now: datetime) -> Handover: ...

    def time(self) -> datetime | None:
        """The operator's clock; None where it does not tell one."""
        ...


@runtime_checkable
class ListGateway(Protocol):
    """A way out that also takes many texts at once."""

    @property
    def at_once(self) -> int:
        """How many it takes in a list; 0 where it takes none."""
        ...

    def in_lists(self, outgoing: Outgoing, now: datetime) -> bool:
        """Whether it takes this text in a list; others are offered one by one."""
        ...

    def send_all(
        self, texts: Sequence[Outgoing], now: datetime
    ) -> Sequence[Handover | None] | None:
        """Offers all of them: what was said of each in their order, None for those that were
        not looked at. None instead of a list where the other side takes no lists: then offer
        them one by one."""
        ...


@dataclass(frozen=True)
class RouteStands:
    """Whether all lines `rest` for texts to some numbers (such as "+254"; none: any) and of
    some kinds (as `Outgoing.kind`; none: any)."""

    prefixes: tuple[str, ...]
    kinds: tuple[str, ...]
    rests: bool


@runtime_checkable
class RoutedGateway(Protocol):
    """A way out by several lines, of which some may rest while others go on."""

    def all_rest(self, now: datetime) -> bool:
        """Whether no line may be offered anything."""
        ...

    def routes_stand(self, now: datetime) -> Sequence[RouteStands]:
        """How the routes stand, in their order: the first that takes a text is the text's."""
        ...


# --- a line, in ------------------------------------------------------------------------------

News = Incoming | Receipt
"""All that a line can bring: a text, a missed call, a step of USSD; what became of a text."""

Take = Callable[[News], Screen | None]
"""The assistant's ear, given to a line that listens by itself. It returns when the news is
kept, with the screen where one is due; a line answers its operator only then. It raises
NotKeptError where nothing was kept: the operator should bring the same again."""


class NotKeptError(Exception):
    """What a line brought could not be kept: have it brought again, under the same id."""


@runtime_checkable
class Listener(Protocol):
    """A line that keeps a connection of its own, and hears by it."""

    def open(self, take: Take, clock: "Clock") -> None:
        """Begins to listen, in threads of its own, and keeps the connection up by itself."""
        ...

    def close(self) -> None:
        """Ends the connection; what was not kept is brought again by the operator."""
        ...

    def wait_up(self, seconds: float) -> bool:
        """Waits until texts can be sent; whether they can."""
        ...

    @property
    def why(self) -> str:
        """Why texts cannot be sent now, in words to act on; empty where they can."""
        ...


@dataclass(frozen=True)
class Request:
    """One call of an operator over HTTP. `path` is what was asked for, without the query."""

    method: str
    path: str
    query: Mapping[str, str]
    headers: Mapping[str, str]  # as they were sent; look them up by `header`
    body: bytes

    def header(self, name: str) -> str:
        """The value of a header, empty where it is missing."""
        wanted = name.lower()
        return next((v for k, v in self.headers.items() if k.lower() == wanted), "")


@dataclass(frozen=True)
class Response:
    """How an operator's call is answered."""

    status: int
    body: bytes = b""
    kind: str = "text/plain; charset=utf-8"


def content(screen: Screen | None) -> Response:
    """An answer without words: 204."""
    return Response(204)


@dataclass(frozen=True)
class Brought:
    """What one call brought, in order, and how it is answered once all of it is kept.

    `answer` is given the screen of the last piece of news that had one.
    """

    news: tuple[News, ...]
    answer: Callable[[Screen | None], Response] = field(default=content)


class NotTakenError(ValueError):
    """A call that is not taken: not signed, or not in form. `why` goes into our log, where it
    is worth a line there; the operator reads the text."""

    def __init__(self, status: int, said: str, why: str = "") -> None:
        super().__init__(said)
        self.status, self.why = status, why


Hook = Callable[[Request, datetime], Brought]
"""Reads one call of an operator at a moment. Raises NotTakenError."""

Hooks = Mapping[str, Hook]
"""The addresses that an operator calls, below that of the line, each with its reader."""


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
