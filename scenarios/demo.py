"""A filled valley in mid-season, on a clock that people push: `python -m scenarios demo`.

The valley is a season like any other, played to its last line; from there on people hold its
phones and open the officers' pages, and the clock goes with theirs or is pushed.
"""

import time
import tomllib
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from datetime import datetime, timedelta
from datetime import time as clock_time
from http.cookies import SimpleCookie
from pathlib import Path
from queue import Empty, Queue
from secrets import token_urlsafe
from threading import Event
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

from assistant.service.pulse import SENDING, TICKING, Beat
from gateway_sim import OperatorController, Owner, Push, RecordEntry, Showing
from scenarios.clock import RunningClock, VirtualClock
from scenarios.lines import SECRET, OwnWire
from scenarios.play import play_on
from scenarios.printing import Printer, say_nothing
from scenarios.reading import read_season
from scenarios.season import Season, SignsIn
from scenarios.stage import Open, SeasonStage

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIApplication, WSGIEnvironment

DISTRICT = Path(__file__).parent / "district"
STORY, PEOPLE = DISTRICT / "valley.season", DISTRICT / "people.toml"
PROGRAMME = DISTRICT / "programme.toml"
MORNING = clock_time(6, 5)  # when the day's texts have gone out
UNCOVERED_D = 5
LOOK_S = 0.4  # how long something may wait that no push brought
STORM_IN, STORM_H = 1, 6  # hours


class Valley:
    """The demo while it is open. One thread moves everything: whoever calls `serve`.

    phones, pages: where the phone page and the officers' pages are
    link:          signs the lead in, once
    """

    def __init__(self, season: Season, ports: tuple[int, int]) -> None:
        self._season, self._zone = season, ZoneInfo(season.zone)
        self._asked: Queue[Callable[[], None]] = Queue()
        self._moving = Event()
        self._door = OneTimeDoor()
        self.clock = RunningClock(season.blocks[0].at, time.monotonic)
        self._told: Callable[[RecordEntry], None] = lambda entry: None
        line = ShownWire(ports[0], self._showing())
        self.stage = SeasonStage(
            season,
            lambda entry: self._told(entry),
            clock=self.clock,
            open_to=Open(ports[1], line, self._door, str(PROGRAMME)),
        )

    def tell(self, told: Callable[[RecordEntry], None]) -> None:
        """Call this with all that happens from now on."""
        self._told = told

    def fill(self) -> None:
        """Plays the story, and lets the clock run from there."""
        play_on(self.stage, self._season, Printer(self._season, say_nothing))
        self._name_everybody()
        lead = next(each for each in self._season.officers if each.is_lead)
        desk = self.stage.desk(self._season.people[lead.name].phone)
        desk.do(SignsIn())
        self._door.opens_to(desk.cookies())
        self.clock.run()

    def _name_everybody(self) -> None:
        """As an officer would who enrolled them; a farmer who texts gives no name."""
        with self.stage.house.store.work() as work:
            for person in self._season.people.values():
                farmer = work.people.farmer(person.phone)
                if farmer is not None:
                    work.people.save_farmer(replace(farmer, name=person.name))

    @property
    def link(self) -> str:
        """Where the lead is signed in without a password, the first time it is opened."""
        return f"{self.stage.url}{self._door.path}"

    def serve(self, ended: Callable[[], bool]) -> None:
        """Does what is due and what was pushed, until it ends."""
        beats = [Beat(self.stage.house, part) for part in (TICKING, SENDING)]
        while not ended():
            self._one()
            for beat in beats:  # the pages tell whether somebody works
                beat(self.clock.now)

    def _one(self) -> None:
        try:
            push = self._asked.get(timeout=LOOK_S)
        except Empty:
            self.stage.settle()
            return
        try:
            push()
        finally:
            self._moving.clear()

    # Pushes.

    def push(self, key: str) -> None:
        """Asks for a push, which is done by the thread that serves. Raises KeyError."""
        way = self.ways()[key][1]
        if not self._moving.is_set():
            self._moving.set()
            self._asked.put(way)

    def ways(self) -> Mapping[str, tuple[str, Callable[[], None]]]:
        """Each push with its label."""
        return {
            "morning": ("Next morning", lambda: self._to_morning(1)),
            "day5": ("To a day 5", self._to_day_5),
            "storm": ("A storm comes", self._storm),
            "silence": ("A week of silence", lambda: self._to_morning(7)),
        }

    def _showing(self) -> Showing:
        people = tomllib.loads(PEOPLE.read_text(encoding="utf-8"))
        phones = {name: self._season.people[name].phone for name in people}
        return Showing(
            owners={phones[name]: Owner(name, **of) for name, of in people.items()},
            pushes={
                key: Push(label, lambda key=key: self.push(key))  # type: ignore[misc]
                for key, (label, _) in self.ways().items()
            },
            zone=self._season.zone,
            local=self.local,
            busy=self._moving.is_set,
            beside=lambda: ("The officers' page", f"{self.stage.url}/"),
        )

    def local(self) -> str:
        """What the valley's clock shows."""
        here = self._here()
        return f"{here:%A} {here.day} {here:%B %H:%M}"

    def _here(self) -> datetime:
        return self.clock.now.astimezone(self._zone)

    def _to_morning(self, days: int) -> None:
        here = self._here()
        first = 0 if here.time() < MORNING else 1
        day = here.date() + timedelta(days=first + days - 1)
        self.stage.run_to(datetime.combine(day, MORNING, self._zone))

    def _to_day_5(self) -> None:
        """To the next morning on which somebody's bed is five days old."""
        today = self._here().date()
        with self.stage.house.store.look() as work:
            beds = work.nurseries.open_since(today + timedelta(days=1))
        days = [(bed.sow_date - today).days + UNCOVERED_D for bed in beds]
        self._to_morning(min((each for each in days if each > 0), default=UNCOVERED_D))

    def _storm(self) -> None:
        """The lead warns every village by SMS, as from any phone."""
        lead = next(each for each in self._season.officers if each.is_lead)
        phone = self.stage.operator.phone(self._season.people[lead.name].phone)
        begins = self._here().hour + STORM_IN
        hours = f"{begins % 24}-{(begins + STORM_H) % 24}"
        for village in self._season.villages:
            phone.text(f"RAIN {lead.code} {village.name} {hours}")
            self.stage.settle()
            phone.text("1")
            self.stage.settle()


class ShownWire(OwnWire):
    """Our own wire, its phones shown with their stories and the clock on a port."""

    def __init__(self, port: int, showing: Showing) -> None:
        self._port, self._showing = port, showing

    def operator(self, clock: VirtualClock) -> OperatorController:
        """The simulated operator, with what stands beside its phones."""
        return OperatorController(
            secret=SECRET, clock=clock, port=self._port, showing=self._showing
        )


class OneTimeDoor:
    """Stands before the officers' pages and lets whoever has the link in, once."""

    def __init__(self) -> None:
        self.path = f"/as-lead/{token_urlsafe(16)}"
        self._cookies: Mapping[str, str] = {}

    def opens_to(self, cookies: Mapping[str, str]) -> None:
        """What the pages know the lead by."""
        self._cookies = cookies

    def __call__(self, app: "WSGIApplication") -> "WSGIApplication":
        """The pages behind the door."""

        def front(environ: "WSGIEnvironment", start: "StartResponse") -> "list[bytes]":
            if environ.get("PATH_INFO") != self.path or not self._cookies:
                return app(environ, start)  # type: ignore[return-value]
            given, self._cookies = self._cookies, {}
            start("303 See Other", [("Location", "/"), *_set(given)])
            return []

        return front


def _set(cookies: Mapping[str, str]) -> list[tuple[str, str]]:
    jar: SimpleCookie = SimpleCookie(dict(cookies))
    for one in jar.values():
        one["path"], one["httponly"], one["samesite"] = "/", True, "Lax"
    return [("Set-Cookie", one.OutputString()) for one in jar.values()]


@contextmanager
def open_valley(phones: int, pages: int) -> Iterator[Valley]:
    """The demo, filled and open on these ports of this machine only."""
    valley = Valley(read_season(STORY), (phones, pages))
    with valley.stage:
        valley.fill()
        yield valley
