"""What the store hands out beside the values of the core. Times are aware and in UTC."""

from dataclasses import dataclass
from datetime import datetime
from enum import IntEnum, StrEnum
from typing import NamedTuple

from assistant.agronomy.nursery import Nursery
from assistant.channel import Screen
from assistant.dialogue.values import Focus, Kind
from assistant.people import Farmer


class TextState(StrEnum):
    """Where an outgoing text stands."""

    WAITING = "waiting"  # to be sent when it is due; also after a try that was put off
    CLAIMED = "claimed"  # a dispatcher has it until its lease runs out
    ACCEPTED = "accepted"  # the operator has it
    DELIVERED = "delivered"  # the phone has it; nothing undoes this
    FAILED = "failed"
    EXPIRED = "expired"  # its time ran out, with us or on the way
    WITHDRAWN = "withdrawn"  # taken back before it was sent


class Lane(IntEnum):
    """Which texts leave before which, however many of the others wait."""

    DANGER = 0  # warnings, and what else is urgent
    ANSWER = 1  # to who wrote, and to officers
    TASK = 2  # of a day, that must be done
    DAY = 3  # of a day, told only
    LIST = 4  # one text to many


@dataclass(frozen=True)
class OutboxText:
    """One text to a phone, from the moment it is written until its receipt.

    `attempts` counts the tries that were put off; `encoding` and `segments` say how it was
    sent; `accepted_at` is set for every text that went out, also where the receipt came first.
    """

    message_id: str
    phone: str
    text: str
    kind: Kind
    due_at: datetime
    not_after: datetime
    created_at: datetime
    focus: Focus | None = None
    nursery_id: int | None = None
    warning_id: int | None = None
    urgent: bool = False
    state: TextState = TextState.WAITING
    attempts: int = 0
    encoding: str = ""
    segments: int = 0
    accepted_at: datetime | None = None
    delivered_at: datetime | None = None
    ended_at: datetime | None = None  # when it failed, expired or was withdrawn
    detail: str = ""
    private: bool = False  # pages do not show its words
    lane: int = Lane.TASK
    id: int = 0


@dataclass(frozen=True)
class UssdTalk:
    """One open USSD session: the pages of its last answer and the one that is shown."""

    session_id: str
    phone: str
    pages: tuple[str, ...] = ()
    page: int = 0
    focus: Focus | None = None


@dataclass(frozen=True)
class Seen:
    """Whether an incoming message is new; for a repeat, the screen that answered it."""

    new: bool
    answer: Screen | None = None


@dataclass(frozen=True)
class Call:
    """A farmer's call for help that nobody has handled."""

    id: int
    farmer: Farmer
    nursery: Nursery | None
    about: str
    words: str
    at: datetime


@dataclass(frozen=True)
class Unheard:
    """A call that was answered by a text, which waits here yet or never arrived.

    `due_at` is when the text leaves; `urgent` whether the quiet hours do not hold it.
    """

    call: Call
    message_id: str
    state: TextState
    due_at: datetime
    urgent: bool


@dataclass(frozen=True)
class UnreadText:
    """A reply that could not be read; `phone` and `farmer` are none where its writer wants
    nothing kept, `farmer` also where nobody enrolled them."""

    id: int
    language: str
    asked: str
    text: str
    at: datetime
    phone: str | None = None
    farmer: Farmer | None = None


@dataclass(frozen=True)
class Account:
    """An officer's way into the page.

    `one_time_until` is set while the password was made for one sign-in; `totp_salt` where there
    is a second factor, `totp_last` the step of its last code that was taken.
    """

    id: int
    phone: str
    name: str
    language: str
    is_lead: bool
    password_hash: str | None
    one_time_until: datetime | None
    totp_salt: str | None
    totp_last: int | None


@dataclass(frozen=True)
class OpenSession:
    """A browser that is signed in; `key` is the hash of what it carries."""

    key: str
    officer_id: int
    begun_at: datetime
    seen_at: datetime
    proved_at: datetime
    browser: str


@dataclass(frozen=True)
class TextCodes:
    """What an officer's texts may bear: the code, and the next one once it was sent."""

    code_hash: str
    next_code_hash: str | None
    code_uses: int


@dataclass(frozen=True)
class OneTimeCode:
    """A code that was sent to a phone, as a hash."""

    phone: str
    code_hash: str
    sent_at: datetime
    tries: int


@dataclass(frozen=True)
class TrailEntry:
    """One line of the audit trail; no officer means the command line."""

    id: int
    at: datetime
    officer: str | None
    act: str
    farmer_id: int | None
    farmer: str | None
    nursery_id: int | None
    label: str | None
    village: str | None
    detail: str


class WarningAnswers(NamedTuple):
    """What came back on one warning, in phones."""

    asked: int
    delivered: int
    covered: int
    need_help: int

    @property
    def silent(self) -> int:
        """Those that were asked and have not answered."""
        return self.asked - self.covered - self.need_help
