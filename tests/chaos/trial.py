"""One trial: the service, its operator, and faults one after the other by a seed."""

import random
import resource
import sqlite3
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

import requests
from sqlalchemy import make_url, text

from assistant.service.house import House
from assistant.service.pulse import let_texts_go
from assistant.service.restored import begin_again
from assistant.settings import Settings
from assistant.store import Store
from assistant.store.backup import put_back
from assistant.store.engine import open_engine
from assistant.wiring.house import open_house
from gateway_sim import Busy, Deliver, Handler, InTransit, OperatorController, OperatorLimits
from gateway_sim.handlers import Answer
from tests.chaos.count import Toll, toll
from tests.chaos.country import WORDS, Country, zone_at_ten
from tests.chaos.parts import CLOCK, PARTS, Part
from tests.chaos.relay import Relay
from tests.conftest import PrivateServer

SECRET = "of-the-trial-and-nobody-else"
AGAIN = (0.2, 0.5, *([1.0] * 400))  # the operator's pauses before it calls again
JUMPS_S = (400, -400, 86_400, 90 * 86_400, -7_200)
_OPEN = "SELECT count(*) FROM outbox WHERE state IN ('waiting', 'claimed', 'accepted')"
_DUE = (  # of beds that can be read: the others stay due
    "SELECT count(*) FROM reminder JOIN nursery ON nursery.id = reminder.nursery_id "
    "JOIN farmer ON farmer.id = nursery.farmer_id "
    "WHERE reminder.state = 'planned' AND due_at <= :now AND practice <> 'gone' "
    "AND farmer.stopped_at IS NULL"
)
QUIET_S = 600.0  # how long all may take to come to rest at the end, however busy the machine


class Slow(Handler):
    """An operator who takes his time over each text."""

    def submission(self, message: InTransit, answer: Answer) -> Answer:
        time.sleep(0.05)
        return answer


class Trial:
    """A whole service in a folder, with its faults."""

    def __init__(self, folder: Path, seed: int, server: PrivateServer | None = None) -> None:
        self.rng, self._folder, self._server = random.Random(seed), folder, server
        self.url = server.url if server else f"sqlite:///{folder / 'nursery.sqlite3'}"
        zone = zone_at_ten(datetime.now(UTC))
        self.store = Store(self.url)
        self.store.migrate()
        self.country = Country(self.store, zone)
        self.operator = OperatorController(
            secret=SECRET, limits=OperatorLimits(retry_seconds=AGAIN)
        )
        self._clock = folder / "clock"
        self._clock.write_text("0")
        self.faults: Counter[str] = Counter()
        self._zone = zone

    @contextmanager
    def open(self) -> Iterator["Trial"]:
        """The operator serves, web and worker run."""
        self.operator.start()
        # Where it serves it serves again, after it was gone.
        self.operator._port = int(self.operator.url.rpartition(":")[2])
        self._relay = Relay(_free_port(), self.operator._port)
        self._relay.start()
        self.web_port = _free_port()
        environment = self._environment()
        self.operator.callback_url = f"http://127.0.0.1:{self.web_port}"
        self._parts = {
            name: Part(name, environment, self._folder / f"{name}.log") for name in PARTS
        }
        try:
            self._all_run()
            yield self
        finally:
            for part in self._parts.values():
                part.kill()
            self._relay.kill()
            self.operator.stop()
            self.store.close()

    def _environment(self) -> dict[str, str]:
        return {
            CLOCK: str(self._clock),
            "NURSERY_DATABASE_URL": self.url,
            "NURSERY_GATEWAY_URL": f"http://127.0.0.1:{self._relay.port}",
            "NURSERY_GATEWAY_SECRET": SECRET,
            "NURSERY_GATEWAY_TIMEOUT_S": "2",
            "NURSERY_PORT": str(self.web_port),
            "NURSERY_ZONE": self._zone,
            "NURSERY_LANGUAGES": "en",
            "NURSERY_STRANGERS_HOUR_ANSWERS": "0",  # hundreds of strangers write in minutes
            "NURSERY_LEASE_S": "4",
            "NURSERY_WORKER_PAUSE_S": "0.1",
            "NURSERY_JOURNAL_FILE": str(self._folder / "stopped"),
            "NURSERY_KEY_FILE": str(self._folder / "key"),
        }

    def _all_run(self) -> None:
        for part in self._parts.values():
            part.start()

    # --- what happens ------------------------------------------------------------------------

    def step(self) -> None:
        """People do something, something breaks, and is mended."""
        self._people()
        name, fault = self.rng.choice(self._kinds())
        self.faults[name] += 1
        fault()
        self._people()
        time.sleep(self.rng.uniform(0, 0.3))
        self._all_run()

    def _people(self) -> None:
        """A farmer comes, farmers and strangers write, one stops."""
        try:
            self.country.farmer_comes()
        except Exception:  # the database is away: nobody comes
            return
        for number in (self.country.stranger(), self.rng.choice(self.country.farmers)):
            wrote = self.country.wrote.setdefault(number, [])
            if len(wrote) < len(WORDS) and number not in self.country.stopped:
                self._write(number, WORDS[len(wrote)])
        if self.rng.random() < 0.1:
            self._stop(self.rng.choice(self.country.farmers))

    def _stop(self, number: str) -> None:
        if number not in self.country.stopped:
            self.country.stopped.add(number)
            self.country.wrote.setdefault(number, [])
            self._write(number, "STOP")

    def _write(self, number: str, words: str) -> None:
        self.country.wrote[number].append(words)
        self.operator.phone(number).text(words)

    def _kinds(self) -> list[tuple[str, Callable[[], None]]]:
        """The faults, each as often as it stands here."""
        kills = [
            ("kill of web", lambda: self._parts["web"].kill()),
            ("kill of worker", lambda: self._parts["worker"].kill()),
        ]
        return [
            *kills * 6,
            ("kill of both", self._kill_both),
            ("operator gone", self._operator_gone),
            ("kill of the operator's door", self._operator_killed),
            ("kill of all three", self._kill_all),
            ("operator slow", lambda: self._operator(Slow(), 0.5)),
            ("operator busy", lambda: self._operator(Busy(ways=("to_phone",)), 0.5)),
            ("clock jumps", self._jump),
            ("row spoilt", self._spoil),
            ("database gone", self._database_gone),
            ("disk full", self._disk_full),
        ]

    def _kill_both(self) -> None:
        for part in self._parts.values():
            part.kill()

    def _operator_killed(self) -> None:
        """What is on its way is cut, and nobody is there for a while."""
        self._people()
        self._relay.kill()
        time.sleep(self.rng.uniform(0.1, 3))
        self._relay.start()

    def _kill_all(self) -> None:
        self._relay.kill()
        self._kill_both()
        time.sleep(self.rng.uniform(0, 1))
        self._relay.start()

    def _operator_gone(self) -> None:
        """Its server is down, and comes again at the same place with what it knew."""
        self.operator.stop()
        time.sleep(self.rng.uniform(0.1, 1))
        self.operator.start()

    def _operator(self, handler: Handler, seconds: float) -> None:
        self.operator.handler = handler
        self._people()
        time.sleep(seconds)
        self.operator.handler = Deliver()

    def _jump(self) -> None:
        """The clock of the machine is wrong for a while; somebody is killed meanwhile, too."""
        self._clock.write_text(str(self.rng.choice(JUMPS_S)))
        time.sleep(self.rng.uniform(0.2, 1))
        if self.rng.random() < 0.3:
            self._parts["worker"].kill()
            self._parts["worker"].start()
            time.sleep(0.5)
        self._clock.write_text("0")

    def _spoil(self) -> None:
        """A row that cannot be read, of a practice whose file is gone."""
        try:
            nursery_id = self.country.spoil()
            engine = open_engine(self.url)
            with engine.begin() as connection:
                spoilt = text("UPDATE nursery SET practice = 'gone' WHERE id = :id")
                connection.execute(spoilt, {"id": nursery_id})
            engine.dispose()
        except Exception:  # it is away just now
            return

    def _disk_full(self) -> None:
        """No process can write into the database's files; a server of its own goes instead."""
        if self._server is not None:
            return self._database_gone()
        for part in self._parts.values():
            part.may_write(4096)
        self._people()
        time.sleep(self.rng.uniform(0.2, 2))
        for part in self._parts.values():
            part.may_write(resource.RLIM_INFINITY)

    def _database_gone(self) -> None:
        seconds = self.rng.uniform(0.2, 2)
        if self._server is not None:
            self._server.crash()
            time.sleep(seconds)
            self._server.begin()
            return
        path = make_url(self.url).database
        assert path is not None
        holder = sqlite3.connect(path, timeout=10, isolation_level=None)
        holder.execute("BEGIN EXCLUSIVE")
        time.sleep(seconds)
        holder.execute("ROLLBACK")
        holder.close()

    # --- at the end --------------------------------------------------------------------------

    def quieten(self) -> None:
        """All is well again; returns when nothing is on its way."""
        self._all_run()
        until = time.monotonic() + QUIET_S
        while not self._is_quiet() and time.monotonic() < until:
            time.sleep(0.2)

    def _is_quiet(self) -> bool:
        if self.operator.due() is not None:
            return False
        with self.store.look() as work:
            waits = work.running.waiting_since(datetime.now(UTC))
        return waits is None and not any(map(self._count_of, (_OPEN, _DUE)))

    def _count_of(self, counted: str) -> int:
        engine = open_engine(self.url)
        with engine.connect() as connection:
            given = {"now": _moment(self.url)} if ":now" in counted else {}
            count = connection.execute(text(counted), given).scalar_one()
        engine.dispose()
        return int(count)

    def count(self) -> Toll:
        """What it came to."""
        return toll(self.store, self.operator, self.country)

    # --- a copy is put back ------------------------------------------------------------------

    def restore(self) -> list[str]:
        """A copy is made, people stop, all is lost, the copy is put back and held: nobody has a
        text before a person lets them go, and nobody who stopped has one after."""
        copy = self._folder / "copy"
        self.store.backup(copy)
        leavers = [self.rng.choice(self.country.farmers) for _ in range(3)]
        for number in leavers:
            self._stop(number)
        self.quieten()
        for part in self._parts.values():
            part.kill()
        self.store.close()
        put_back(self.url, copy)
        house = open_house(Settings(zone=self._zone, languages=("en",)), self.store)
        _begin_again(house, self.country.stopped)
        had = {
            number: len(self.operator.phone(number).inbox) for number in self.country.farmers
        }
        self._all_run()
        wrong = []
        self.country.farmer_comes()  # there is something to say
        time.sleep(2)
        for number, count in had.items():
            if len(self.operator.phone(number).inbox) > count:
                wrong.append(f"{number} had a text while all were held")
        let_texts_go(house)
        self.quieten()
        for number in self.country.stopped:
            if len(self.operator.phone(number).inbox) > had.get(number, 0):
                wrong.append(f"{number} stopped and had a text of the copy")
        return wrong

    def is_ready(self) -> bool:
        """Whether the web side answers."""
        try:
            answer = requests.get(f"http://127.0.0.1:{self.web_port}/health", timeout=2)
        except requests.RequestException:
            return False
        return answer.ok


def _begin_again(house: House, stopped: set[str]) -> None:
    now = datetime.now(UTC)
    begin_again(house, [(number, now) for number in sorted(stopped)], now)


def _moment(url: str) -> object:
    """Now, as it stands in a database."""
    now = datetime.now(UTC)
    return now if url.startswith("postgresql") else now.strftime("%Y-%m-%d %H:%M:%S.%f")


def _free_port() -> int:
    import socket

    with socket.create_server(("127.0.0.1", 0)) as found:
        port: int = found.getsockname()[1]
        return port
