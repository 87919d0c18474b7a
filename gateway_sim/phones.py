"""Virtual phones: what a person holds in the hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Protocol

from gateway_sim.handlers import InTransit


@dataclass(frozen=True)
class Received:
    """A text in a phone's inbox, as the phone shows it: its parts joined again.

    `turn` rises with every text on the network, so that a reader can ask for newer ones.
    """

    turn: int
    id: str
    sender: str
    text: str
    encoding: str
    segments: int
    at: datetime


@dataclass(frozen=True)
class SentText:
    """A text that the phone sent."""

    turn: int
    id: str
    text: str
    encoding: str
    segments: int
    at: datetime


@dataclass(frozen=True)
class ShownScreen:
    """A USSD screen: `size` of `limit` units are used; `more` waits for an answer."""

    text: str
    more: bool
    encoding: str
    size: int
    limit: int


@dataclass
class UssdSession:
    """One USSD talk of one phone."""

    id: str
    code: str
    ends: datetime  # when the operator will end it
    turns: int = 0
    asking: bool = False  # a turn is on its way to the assistant


class PhoneNetwork(Protocol):
    """What a phone needs of the network."""

    def send(self, phone: Phone, text: str) -> SentText: ...
    def power(self, phone: Phone, on: bool) -> None: ...
    def fill(self, phone: Phone, full: bool) -> None: ...
    def fill_until(self, phone: Phone, moment: datetime) -> None: ...
    def dial(self, phone: Phone, code: str) -> str: ...
    def answer(self, phone: Phone, text: str) -> str: ...
    def hang_up(self, phone: Phone) -> None: ...
    def drop(self, phone: Phone, told: bool) -> None: ...
    def wait_for(self, phone: Phone, count: int, seconds: float) -> bool: ...


class Phone:
    """One phone of the network.

    inbox:  the texts it received     sent:    the texts it sent
    screen: the USSD screen it shows  session: the talk that is open
    ended:  why the last talk ended   on:      whether it is switched on
    """

    def __init__(self, number: str, lines: PhoneNetwork) -> None:
        self.number = number
        self.inbox: list[Received] = []
        self.sent: list[SentText] = []
        self.on = True
        self.full = False  # its memory holds no more; what comes waits
        self.session: UssdSession | None = None
        self.screen: ShownScreen | None = None
        self.ended = ""
        self.waiting: list[InTransit] = []  # texts the network keeps until the phone is on
        self._lines = lines

    def text(self, text: str) -> SentText:
        """Send a text to the assistant; the text as it was sent."""
        return self._lines.send(self, text)

    def dial(self, code: str) -> str:
        """Begin a USSD session, or ring the service's number; the screen's text. Raises
        SessionError if a session is open."""
        return self._lines.dial(self, code)

    def answer(self, text: str) -> str:
        """Answer the screen; the next screen's text. Raises SessionError if none is open."""
        return self._lines.answer(self, text)

    def hang_up(self) -> None:
        """End the session; the assistant is told. Without a session, nothing happens."""
        self._lines.hang_up(self)

    def drop(self, told: bool = False) -> None:
        """Lose the session without the person wishing it; `told`: the assistant hears of it."""
        self._lines.drop(self, told)

    def power(self, on: bool) -> None:
        """Switch the phone on or off; texts that waited arrive when it is on again."""
        self._lines.power(self, on)

    def fill(self, full: bool) -> None:
        """Fill the phone's memory, or empty it; texts that waited arrive when it has room."""
        self._lines.fill(self, full)

    def fill_until(self, moment: datetime) -> None:
        """Fill the phone's memory; at that time it is emptied."""
        self._lines.fill_until(self, moment)

    def wait_for(self, count: int, seconds: float = 60.0) -> bool:
        """Wait (real time) until the inbox holds so many texts; whether it does."""
        return self._lines.wait_for(self, count, seconds)

    @property
    def in_session(self) -> bool:
        return self.session is not None

    @property
    def texts(self) -> list[str]:
        """The inbox as plain texts."""
        return [received.text for received in self.inbox]


def newer(
    phones: Sequence[Phone], after: int, sent: bool = True
) -> list[tuple[Phone, Received | SentText]]:
    """What these phones received (and sent) since a turn, oldest first."""
    found: list[tuple[Phone, Received | SentText]] = []
    for phone in phones:
        items: list[Received | SentText] = [*phone.inbox, *(phone.sent if sent else ())]
        found += [(phone, item) for item in items if item.turn > after]
    return sorted(found, key=lambda pair: pair[1].turn)
