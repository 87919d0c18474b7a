"""A valley to try things in: a whole deployment on a clock of its own, with phones, no network.

    valley.go("10 Jun 06:00")                    the clock moves; what is due is sent
    valley.text(AMINA, "DONE")                   gives the texts that her phone then received
    valley.dial(AMINA); valley.key(AMINA, "1")   give USSD screens

Texts are compared by the messages they were made of, so that a better wording breaks no test:

    assert valley.text(AMINA, "hello") == [like(m.ASK_LANGUAGE, ...)]

Swahili is here a catalogue that marks each text, so that one that goes past it shows.
"""

import re
from collections.abc import Callable, Iterator
from copy import deepcopy
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, time, timedelta
from gettext import NullTranslations
from types import EllipsisType
from zoneinfo import ZoneInfo

from assistant.alphabet import plain
from assistant.channel import Channel, Fate, Handover, Incoming, Outgoing, Receipt, Screen, Step
from assistant.people import Village
from assistant.reminders.plan import Hours
from assistant.service.dispatch import dispatch, take_receipt
from assistant.service.house import House
from assistant.service.receive import receive
from assistant.service.tick import tick
from assistant.store import Store
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.hearing import open_ears
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_talk as m
from assistant.wording.message import Message, Say
from assistant.wording.render import Catalogue, render
from assistant.wording.screens import Limits

AMINA, BARAKA, ZAWADI = "+447700900101", "+447700900102", "+447700900103"
OFFICER, LEAD = "+447700900001", "+447700900002"
CODE = "246810"
YEAR = 2026
NAIROBI = "Africa/Nairobi"
KIJANI, MWANGA = Village(1, "Kijani", NAIROBI), Village(2, "Mto Mwanga", NAIROBI)
LEASE = timedelta(minutes=1)
# When a worker's rounds find something: midnight, the prompts, the second asking, the evening.
ROUNDS = (time(0, 1), time(6, 0), time(6, 1), time(16, 0), time(20, 0))


class Marked(NullTranslations):
    """Translations that can be seen."""

    def gettext(self, message: str) -> str:
        return f"sw:{message}"

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return f"sw:{msgid1 if n == 1 else msgid2}"


CATALOGUES = {"en": open_catalogue("en"), "sw": Catalogue("sw", Marked())}
LEXICONS = open_lexicons(("en", "sw"))
EARS = open_ears()

Part = Message | Say | str | EllipsisType


class Like:
    """Equal to a text that is made of these parts, whatever fills slots that are not given.

    A message stands for its text with any slots, what it said for exactly that; `...` for any
    further lines.
    """

    def __init__(self, parts: tuple[Part, ...], language: str) -> None:
        self._parts, self._catalogue = parts, CATALOGUES[language]
        self._pattern = re.compile("".join(self._pieces()))

    def _pieces(self) -> Iterator[str]:
        before: Part = ...
        for part in self._parts:
            if part is ...:
                yield r"[\s\S]*?"
            else:
                yield ("" if before is ... else "\n") + self._piece(part)
            before = part

    def _piece(self, part: Part) -> str:
        if isinstance(part, Message):
            template = plain(self._catalogue.translations.gettext(part.text))
            return re.sub(r"\\\{\w+\\\}", "(?:.|\n)+?", re.escape(template))
        text = render(part, self._catalogue) if isinstance(part, Say) else str(part)
        return re.escape(plain(text))

    def __eq__(self, other: object) -> bool:
        return isinstance(other, str) and self._pattern.fullmatch(other) is not None

    def __hash__(self) -> int:
        return hash(self._parts)

    def __repr__(self) -> str:
        return "like(" + ", ".join(map(self._shown, self._parts)) + ")"

    def _shown(self, part: Part) -> str:
        if isinstance(part, Say):
            return repr(render(part, self._catalogue))
        return repr(part.text if isinstance(part, Message) else part)


def like(*parts: Part, language: str = "en") -> Like:
    """What a text is made of, for comparing."""
    return Like(parts, language)


def numbered(*labels: Message | Say | str) -> tuple[Say, ...]:
    """The lines of a list of choices."""
    worded = (label() if isinstance(label, Message) else label for label in labels)
    return tuple(m.NUMBERED(digit=at, label=label) for at, label in enumerate(worded, start=1))


def at(when: str, zone: str = NAIROBI) -> datetime:
    """A local time such as "10 Jun 06:00" in the year of the tests, aware."""
    return datetime.strptime(f"{YEAR} {when}", "%Y %d %b %H:%M").replace(tzinfo=ZoneInfo(zone))


def day(when: str) -> date:
    """A date such as "10 Jun" in the year of the tests."""
    return at(f"{when} 00:00").date()


@dataclass
class Numbers:
    """1, 2, 3 ...; what a copy of a valley goes on counting."""

    last: int = 0

    def __next__(self) -> int:
        self.last += 1
        return self.last


@dataclass
class Operator:
    """An operator in memory: drops repeats of an id, keeps what it was offered, says receipts.

    `answers` are used up first, one for each offer; then everything is accepted. Without
    `receipts` a text is accepted and nothing more is heard of it.
    """

    answers: list[Handover | Exception] = field(default_factory=list)
    receipts: bool = True
    down: bool = False
    offered: list[Outgoing] = field(default_factory=list)
    delivered: list[Outgoing] = field(default_factory=list)

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """The hand-over of one text."""
        self.offered.append(outgoing)
        if self.down:
            return Handover(Fate.TRY_LATER, "no answer")
        answer = self.answers.pop(0) if self.answers else Handover(Fate.ACCEPTED)
        if isinstance(answer, Exception):
            raise answer
        known = {each.message_id for each in self.delivered}
        if answer.fate is Fate.ACCEPTED and outgoing.message_id not in known:
            self.delivered.append(outgoing)
        return answer

    def time(self) -> None:
        """It tells none."""


class Valley:
    """One deployment, its phones and its clock."""

    def __init__(self, house: House, start: datetime) -> None:
        self.now, self.operator = start.astimezone(UTC), Operator()
        self._ids = Numbers()
        self.house = replace(house, new_id=lambda: f"text-{next(self._ids)}")
        self._heard: dict[str, int] = {}
        self._receipted = 0
        self._sessions: dict[str, str] = {}

    def copied(self, store: Store) -> "Valley":
        """The same moment in a copy of the database."""
        other = Valley(replace(self.house, store=store), self.now)
        other.operator, other._receipted = deepcopy(self.operator), self._receipted
        other._heard, other._sessions = dict(self._heard), dict(self._sessions)
        other._ids.last = self._ids.last
        return other

    # --- the clock ---------------------------------------------------------------------------

    def go(self, when: str | datetime, zone: str = NAIROBI) -> None:
        """Moves the clock, the worker looking at it on the way as it would."""
        until = when if isinstance(when, datetime) else at(when, zone)
        for stop in sorted({*self._stops(until, zone), until}):
            self.leap(stop)

    def _stops(self, until: datetime, zone: str) -> Iterator[datetime]:
        today = self.now.astimezone(ZoneInfo(zone)).date()
        while today <= until.date():
            for clock in ROUNDS:
                stop = datetime.combine(today, clock, ZoneInfo(zone))
                if self.now < stop <= until:
                    yield stop
            today += timedelta(days=1)

    def leap(self, when: str | datetime) -> None:
        """Moves the clock while no worker runs; it looks when the time is come."""
        moment = when if isinstance(when, datetime) else at(when)
        assert moment >= self.now, f"the clock is at {self.now}, past {moment}"
        self.now = moment.astimezone(UTC)
        self.round()

    def round(self) -> None:
        """What the worker does in a round."""
        tick(self.house, self.now)
        self.send()

    def send(self) -> None:
        """Hands over what waits, and tells what was delivered."""
        for _ in range(50):
            if not dispatch(self.house, self.operator, self.now, limit=100, lease=LEASE):
                break
        else:
            raise AssertionError("the outbox does not come to an end")
        if self.operator.receipts:
            self.deliver(*self.operator.delivered[self._receipted :])
        self._receipted = len(self.operator.delivered)

    def deliver(self, *texts: Outgoing) -> None:
        """The operator says that these reached their phones."""
        for text in texts:
            receipt = Receipt(text.message_id, Fate.DELIVERED, self.now)
            assert take_receipt(self.house, receipt, self.now)

    # --- phones ------------------------------------------------------------------------------

    def heard(self, phone: str) -> list[str]:
        """What reached a phone since this was asked last."""
        texts = [each.text for each in self.operator.delivered if each.phone == phone]
        fresh = texts[self._heard.get(phone, 0) :]
        self._heard[phone] = len(texts)
        return fresh

    def post(self, phone: str, words: str, gateway_id: str = "") -> None:
        """A text comes in; what it calls for stays in the outbox."""
        gateway_id = gateway_id or f"in-{next(self._ids)}"
        receive(self.house, Incoming(gateway_id, phone, words, Channel.SMS, self.now), self.now)

    def text(self, phone: str, words: str, gateway_id: str = "") -> list[str]:
        """A text comes in and is answered; what the phone received since it was asked last."""
        self.post(phone, words, gateway_id)
        self.send()
        return self.heard(phone)

    def dial(self, phone: str) -> Screen:
        """A USSD session begins."""
        self._sessions[phone] = f"session-{next(self._ids)}"
        return self._turn(phone, Step.BEGIN, "")

    def key(self, phone: str, words: str, gateway_id: str = "") -> Screen:
        """An answer in the session that is open."""
        return self._turn(phone, Step.ANSWER, words, gateway_id)

    def hang_up(self, phone: str) -> None:
        """The session is gone."""
        incoming = self._ussd(phone, Step.END, "", "")
        assert receive(self.house, incoming, self.now) is None

    def _turn(self, phone: str, step: Step, words: str, gateway_id: str = "") -> Screen:
        screen = receive(self.house, self._ussd(phone, step, words, gateway_id), self.now)
        assert screen is not None
        return screen

    def _ussd(self, phone: str, step: Step, words: str, gateway_id: str) -> Incoming:
        gateway_id = gateway_id or f"in-{next(self._ids)}"
        return Incoming(
            gateway_id, phone, words, Channel.USSD, self.now, step, self._sessions[phone]
        )

    # --- people ------------------------------------------------------------------------------

    def add_village(self, name: str, zone: str = NAIROBI) -> Village:
        """A village of the programme."""
        with self.house.store.work() as work:
            return work.people.add_village(name, zone)

    def add_officer(self, *villages: Village, phone: str = OFFICER, lead: bool = False) -> None:
        """An officer with the code `CODE`."""
        with self.house.store.work() as work:
            ids = [village.id for village in villages]
            work.people.add_officer(phone, "Asha", f"hash of {CODE}", "en", ids, is_lead=lead)

    def enrol(self, phone: str, village: int = 1, language: int = 1) -> None:
        """Signs a farmer up by SMS; villages are listed by name."""
        for words in ("START", str(language), str(village), "1"):
            self.text(phone, words)

    def plan(self, phone: str, sow: str, area: str = "0.4 ha") -> list[str]:
        """A farmer plans one more nursery, by SMS."""
        if self.text(phone, "MENU") == [like(m.ASK_MENU, ..., language=self._speaks(phone))]:
            self.text(phone, "6")
        for words in (area, "85", "10", sow):
            self.text(phone, words)
        return self.text(phone, "1")

    def sow(self, phone: str, sown_on: str, area: str = "0.4 ha") -> list[str]:
        """A farmer joins after sowing, on a past day."""
        if self.text(phone, "MENU") == [like(m.ASK_MENU, ..., language=self._speaks(phone))]:
            self.text(phone, "6")
        for words in (area, "85", "10", sown_on, "1"):
            self.text(phone, words)
        return self.text(phone, "1")

    def _speaks(self, phone: str) -> str:
        with self.house.store.work() as work:
            farmer = work.people.farmer(phone)
        return (farmer.language if farmer else None) or "en"


def house_of(store: Store, zone: str = NAIROBI) -> House:
    """A deployment in two languages, with codes that are quick to check."""
    ids = Numbers()
    return House(
        store=store,
        catalogues=CATALOGUES,
        lexicons=LEXICONS,
        ears=EARS,
        languages=("en", "sw"),
        zone=zone,
        region=None,
        hours=Hours(),
        limits=Limits(),
        urgent_breaks_quiet=True,
        new_id=lambda: f"text-{next(ids)}",
        check_code=lambda code, code_hash: code_hash == f"hash of {code}",
        key=b"the key of a valley",
    )


Way = Callable[[Valley], object]
Staged = Callable[[Way], Valley]


def settle(valley: Valley) -> None:
    """The two villages, and nobody in them."""
    for village in (KIJANI, MWANGA):
        assert valley.add_village(village.name, village.zone) == village


Row = tuple[str, str, str, list[Like]]


def play(valley: Valley, rows: tuple[Row, ...]) -> None:
    """Plays rows of (when, who, sends, hears); who sends nothing only listens."""
    for when, phone, sends, hears in rows:
        valley.go(when)
        before = valley.heard(phone) if sends else []
        assert before == [], f"{when}: unread before {sends!r}"
        got = valley.text(phone, sends) if sends else valley.heard(phone)
        assert got == hears, f"{when} {sends!r}"
