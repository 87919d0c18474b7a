"""What the store hands out of messages and seasons taken together. Times are aware, in UTC."""

from dataclasses import astuple, dataclass, replace
from datetime import date, datetime
from operator import add

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

    @classmethod
    def none(cls, village_id: int | None) -> "TextCounts":
        """Nothing was sent."""
        return cls(village_id, 0, 0, 0, 0, 0, 0, 0)

    def billed_too(self, segments: int) -> "TextCounts":
        """With segments of texts that the operator took and lost: it bills those."""
        return replace(self, segments=self.segments + segments)

    def plus(self, other: "TextCounts") -> "TextCounts":
        """Those of two spans of time."""
        mine, more = astuple(self)[1:], astuple(other)[1:]
        return TextCounts(self.village_id, *map(add, mine, more))


@dataclass(frozen=True)
class HeardCounts:
    """What came in from the phones of one village: texts, dialled sessions, missed calls."""

    village_id: int | None
    texts: int
    sessions: int
    rings: int

    @classmethod
    def none(cls, village_id: int | None) -> "HeardCounts":
        """Nothing came in."""
        return cls(village_id, 0, 0, 0)

    def plus(self, other: "HeardCounts") -> "HeardCounts":
        """Those of two spans of time."""
        mine, more = astuple(self)[1:], astuple(other)[1:]
        return HeardCounts(self.village_id, *map(add, mine, more))


@dataclass(frozen=True)
class MonthCounts:
    """The messages of one village in one month or part of it (named by its first day), both
    ways; here `sent.segments` are all that the operator took, also of texts that it lost."""

    month: date
    sent: TextCounts
    heard: HeardCounts

    @classmethod
    def none(cls, village_id: int | None, month: date) -> "MonthCounts":
        """Nothing passed."""
        return cls(month, TextCounts.none(village_id), HeardCounts.none(village_id))


@dataclass(frozen=True)
class LostTexts:
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
    private: bool = False  # without its words


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
    private: bool = False  # without its words
