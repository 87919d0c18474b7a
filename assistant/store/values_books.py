"""What the store hands out of messages and seasons taken together. Times are aware, in UTC."""

from dataclasses import dataclass
from datetime import datetime

from assistant.channel import Channel
from assistant.store.values import TextState


@dataclass(frozen=True)
class TextCounts:
    """Outgoing texts of one village in one span of time; None: officers and strangers.

    `segments` are those of texts that the operator took, which is what it asks money for.
    """

    village_id: int | None
    waiting: int
    accepted: int
    delivered: int
    failed: int
    expired: int
    withdrawn: int
    segments: int


@dataclass(frozen=True)
class HeardCounts:
    """What came in from the phones of one village: texts, dialled sessions, missed calls."""

    village_id: int | None
    texts: int
    sessions: int
    rings: int


@dataclass(frozen=True)
class Lost:
    """Texts that did not arrive, for one reason; `taken`: the operator had them."""

    village_id: int | None
    state: TextState
    taken: bool
    detail: str
    texts: int
    segments: int


@dataclass(frozen=True)
class SentLine:
    """One outgoing text in a list of all; no farmer: to an officer or a stranger.

    `village_id` is the village it is counted for, `lives_in` where the farmer is now.
    """

    id: int
    phone: str
    farmer_id: int | None
    farmer: str | None
    lives_in: int | None
    village_id: int | None
    text: str
    state: TextState
    due_at: datetime
    accepted_at: datetime | None
    delivered_at: datetime | None
    segments: int
    detail: str


@dataclass(frozen=True)
class HeardLine:
    """One incoming message in a list of all."""

    gateway_id: str
    phone: str
    farmer_id: int | None
    farmer: str | None
    lives_in: int | None
    village_id: int | None
    text: str
    channel: Channel
    at: datetime
    failed: bool
