"""The whole line on one machine and one virtual clock: operator, assistant, database.

Nothing is played: texts go over the real wire between a simulated operator and the real
assistant, each on a port of its own, and into a SQLite file. Only time is the player's.
"""

import logging
import os
import tempfile
import traceback
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, replace
from datetime import datetime, time, timedelta
from functools import cached_property, lru_cache, partial
from pathlib import Path
from threading import Lock, Thread
from typing import TYPE_CHECKING, Self

from argon2 import PasswordHasher
from flask import Flask
from jinja2 import FileSystemBytecodeCache
from werkzeug.serving import WSGIRequestHandler, make_server

from assistant.channel import Gateway
from assistant.service.desk.accounts import give_one_time_password
from assistant.service.enrol import add_officer, add_villages_if_none, offer_practices
from assistant.service.house import House
from assistant.settings import Settings
from assistant.store import Store
from assistant.store.engine import forget_power_cuts
from assistant.web.app import create_app
from assistant.wiring.hearing import open_ears
from assistant.wiring.house import open_house, open_store
from assistant.wiring.lexicons import open_lexicons
from assistant.wiring.lines import open_lines
from assistant.wiring.practices import open_practices
from assistant.worker import Worker
from gateway_sim import EntryKind, RecordEntry
from scenarios.clock import VirtualClock, next_mark
from scenarios.desk import OfficerBrowser
from scenarios.lines import LINES, SECRET, WIRE, OwnWire
from scenarios.season import Season

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIApplication, WSGIEnvironment

CALLED = "/gateway/"  # begins the addresses that operators call
NEVER_RENEWED = 10**6  # uses of an officer's code: a season is written with one
LOOK_EVERY_SECONDS = 0.01  # how often a server looks whether it should stop
ROUNDS = 50  # a moment that is not over after so many rounds never will be
# After the operator sent a text back, the assistant is let try again each minute for so long.
RETRY_FOR, RETRY_EVERY = timedelta(hours=1), timedelta(minutes=1)


# Nobody attacks the codes of a season: the same way of hashing at its least cost.
_hash_code = PasswordHasher(time_cost=1, memory_cost=8, parallelism=1).hash


def _as_it_is(app: "WSGIApplication") -> "WSGIApplication":
    return app


@dataclass(frozen=True)
class Open:
    """How a season's stage is opened to people, who come in many at once.

    pages:     the port of the officers' pages
    line:      the line over which it goes, where not as its name says
    front:     what stands before the officers' pages
    programme: the file of the programme
    """

    pages: int = 0
    line: OwnWire | None = None
    front: Callable[["WSGIApplication"], "WSGIApplication"] = _as_it_is
    programme: str = ""


class SeasonStage:
    """A deployment of its own for one season, between `__enter__` and `__exit__`.

    Args:
        clock: another than one that moves only when it is moved
        open_to: the people that it is opened to; None where nobody but the player comes

    operator: the network and its phones      clock: the time of everything
    url:      where the officers' pages are
    trouble:  what the assistant logged as an error; a sound season leaves it empty
    """

    def __init__(
        self,
        season: Season,
        listen: Callable[[RecordEntry], None],
        line: str = WIRE,
        breaks: Sequence[str] = (),
        *,
        clock: VirtualClock | None = None,
        open_to: Open | None = None,
    ) -> None:
        self.clock = clock or VirtualClock(season.blocks[0].at)
        self.trouble: list[str] = []
        self._open_to = open_to or Open()
        self._many = open_to is not None
        self._line, self._breaks = self._open_to.line or LINES[line], breaks
        self.operator = self._line.operator(self.clock)
        self._season, self._listen = season, listen
        self._held = ExitStack()
        self._refused_at: datetime | None = None
        self._marks: Sequence[time] = ()

    def __enter__(self) -> Self:
        with ExitStack() as held:
            held.enter_context(_errors_into(self.trouble))
            held.enter_context(self.operator)
            self.operator.on_entry(self._note)
            settings = _settings(self._season, self.operator.url, self._open_to.programme)
            folder = _database(os.getpid()).parent
            self._line.patience(self._breaks)
            settings = self._line.settings(settings, self.operator, folder)
            self._marks = _marks(settings)
            self.house = self._open(settings, held)
            opened = open_lines(settings, self.house)
            making = partial(
                create_app,
                self.house,
                secret=SECRET,
                wake=lambda: None,
                clock=self.clock,
                hooks=opened.hooks,
                terms=opened.terms,
            )
            front = self._open_to.front(_Web(making))
            served = _served(front, self._open_to.pages, many=self._many)
            self.url = held.enter_context(served)
            self.operator.callback_url = self._line.callback(self.url)
            held.enter_context(self._line.kept(self.house, opened, self.clock))
            self._line.trouble(self._breaks)
            self._worker = _worker(self.house, opened.gateway, settings, self.clock)
            self._held = held.pop_all()
        return self

    def __exit__(self, *error: object) -> None:
        self._held.close()

    def _open(self, settings: Settings, held: ExitStack) -> House:
        store = held.enter_context(_fresh_store())
        house = replace(open_house(settings, store), hash_code=_hash_code)
        add_villages_if_none(house, tuple((v.name, v.zone) for v in self._season.villages))
        for village in self._season.villages:
            if village.practices:
                offer_practices(house, village.name, village.practices)
        for officer in self._season.officers:
            add_officer(
                house,
                phone=self._season.people[officer.name].phone,
                name=officer.name,
                villages=officer.villages,
                language=officer.language,
                is_lead=officer.is_lead,
                code=officer.code,
                hash_code=_hash_code,
                now=self.clock(),
            )
        return house

    def desk(self, phone: str) -> OfficerBrowser:
        """An officer's way to the pages."""
        found = OfficerBrowser(self.url, phone, lambda: self._one_time_password(phone))
        self._held.callback(found.close)
        return found

    def _one_time_password(self, phone: str) -> str:
        _, password = give_one_time_password(self.house, phone, self.clock.now)
        return password

    def _note(self, entry: RecordEntry) -> None:
        if entry.kind is EntryKind.HANDED_IN and entry.code not in (200, 202):
            self._refused_at = entry.at
        self._listen(entry)

    # Time.

    def settle(self) -> None:
        """Lets everything happen that can happen at this moment.

        The clock's part comes once: a second tick of the same moment changes nothing.
        """
        record = self.operator.record
        work = self._worker.round
        for _ in range(ROUNDS):
            before = len(record)
            self._line.ready()
            self._guarded(work)
            self.operator.advance()
            work = self._worker.send
            if len(record) == before:
                return
        raise RuntimeError(f"at {self.clock.now} the assistant and the operator never rest")

    def _guarded(self, work: Callable[[], None]) -> None:
        """The worker's own loop logs what a round fails of and goes on; so does this one."""
        try:
            work()
        except Exception:
            self.trouble.append(traceback.format_exc())

    def move(self, limit: datetime) -> bool:
        """Moves on to the next moment at which something may happen, or to `limit`.

        Returns:
            False where the clock shows `limit` already.
        """
        if self.clock.now >= limit:
            return False
        self.clock.to(min(limit, *self._moments()))
        self.settle()
        return True

    def run_to(self, moment: datetime) -> None:
        """Lets all time pass until a moment, with what it brings."""
        while self.move(moment):
            pass

    def run_before(self, moment: datetime) -> None:
        """Lets time pass with all that it brings before a moment, but nothing of the moment."""
        while (coming := min(self._moments())) < moment:
            self.clock.to(coming)
            self.settle()

    def _moments(self) -> Iterator[datetime]:
        now = self.clock.now
        yield next_mark(now, self._marks, self._season.zones)
        due = self.operator.due()
        if due is not None and due > now:
            yield due
        if self._refused_at is not None and now < self._refused_at + RETRY_FOR:
            yield now + RETRY_EVERY


def _settings(season: Season, operator_url: str, programme: str) -> Settings:
    return Settings(
        database_url=f"sqlite:///{_database(os.getpid())}",
        programme=season.title,
        zone=season.zone,
        region=season.region,
        languages=season.languages,
        programme_file=programme,
        gateway_url=operator_url,
        gateway_secret=SECRET,
        web_secret=SECRET,
        second_factor=False,
        code_uses=NEVER_RENEWED,
    )


def _marks(settings: Settings) -> tuple[time, ...]:
    """The local times at which the assistant has something to say. What it does in silence,
    such as giving up yesterday's, is done by then, or when somebody texts before."""
    return (settings.quiet_until, settings.prompt_at, settings.second_at)


def _worker(house: House, gateway: Gateway, settings: Settings, clock: VirtualClock) -> Worker:
    return Worker(
        house,
        gateway,
        pause_s=settings.worker_pause_s,
        batch=settings.send_batch,
        lease_s=settings.lease_s,
        clock=clock,
    )


def prepare() -> None:
    """Does once what every season needs and what takes its time, for processes to come."""
    forget_power_cuts()
    open_lexicons()
    open_ears()
    _empty_database()
    _folder()


# --- the database ----------------------------------------------------------------------------


@contextmanager
def _fresh_store() -> Iterator[Store]:
    """The store of this process, on a file of its own with nothing in it.

    The engine outlives the season: a new one would compile every query again, which takes
    longer than the season.
    """
    path = _database(os.getpid())
    for rest in path.parent.glob(f"{path.name}*"):
        rest.unlink()
    path.write_bytes(_empty_database())
    store = _store(path)
    try:
        yield store
    finally:
        store.close()


@lru_cache(maxsize=1)
def _store(path: Path) -> Store:
    return Store(f"sqlite:///{path}", open_practices())


@lru_cache(maxsize=1)
def _database(process: int) -> Path:
    """Where a process has its database; one that was forked has another than its parent."""
    folder = Path(_folder().name) / str(process)
    folder.mkdir(exist_ok=True)
    return folder / "nursery.sqlite3"


@lru_cache(maxsize=1)
def _folder() -> tempfile.TemporaryDirectory[str]:
    """A folder for all, which goes when the process ends that made it."""
    return tempfile.TemporaryDirectory(prefix="season-")


@lru_cache(maxsize=1)
def _empty_database() -> bytes:
    """A database with its tables and nothing in it, made once a process: that is slow."""
    with tempfile.TemporaryDirectory(prefix="season-") as folder:
        path = Path(folder) / "nursery.sqlite3"
        open_store(Settings(database_url=f"sqlite:///{path}")).close()
        return path.read_bytes()


# --- the web side ----------------------------------------------------------------------------


class _Web:
    """Serves operators from the start, and officers' pages once somebody comes to them: to make
    those takes as long as a week of a season, and most seasons have no use for them."""

    def __init__(self, making: Callable[..., Flask]) -> None:
        self._making = making
        self._for_operators = making(pages=())
        self._alone = Lock()

    def __call__(self, environ: "WSGIEnvironment", start: "StartResponse") -> Iterable[bytes]:
        called = environ.get("PATH_INFO", "").startswith(CALLED)
        return (self._for_operators if called else self._whole())(environ, start)

    def _whole(self) -> Flask:
        with self._alone:
            return self._made

    @cached_property
    def _made(self) -> Flask:
        app = self._making()
        app.jinja_env.bytecode_cache = FileSystemBytecodeCache(_folder().name)
        return app


class _Silent(WSGIRequestHandler):
    """The conversation is printed; a list of requests helps nobody."""

    def log(self, type: str, message: str, *args: object) -> None:
        return


@contextmanager
def _served(app: "WSGIApplication", port: int, *, many: bool) -> Iterator[str]:
    """The web side, at the address given. One thread, so all keeps its order, unless many
    people come."""
    server = make_server("127.0.0.1", port, app, threaded=many, request_handler=_Silent)
    thread = Thread(target=server.serve_forever, args=(LOOK_EVERY_SECONDS,), daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.port}"
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


class _Into(logging.Handler):
    def __init__(self, found: list[str]) -> None:
        super().__init__(logging.ERROR)
        self._found = found

    def emit(self, record: logging.LogRecord) -> None:
        self._found.append(logging.Formatter().format(record))


@contextmanager
def _errors_into(found: list[str]) -> Iterator[None]:
    """Gathers what the assistant logs as an error, instead of printing it."""
    log, handler = logging.getLogger("assistant"), _Into(found)
    propagated, log.propagate = log.propagate, False
    log.addHandler(handler)
    try:
        yield
    finally:
        log.removeHandler(handler)
        log.propagate = propagated
