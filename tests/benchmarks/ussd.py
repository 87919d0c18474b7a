"""Two hundred USSD sessions at once, beside a morning and without one: what a screen takes.

The web side answers in a process of its own over HTTP, as operators call it; a worker in
another writes the morning's texts. Each session dials, then keys in the sign-up, and waits for
a second or three before each key, as a quick person does. Screens are counted while the morning
lasts. The seconds are by the clock, so that a machine with other work shows others; its load
stands beside them.
"""

import json
import os
import random
import subprocess
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from http.client import HTTPConnection
from itertools import count
from pathlib import Path
from statistics import quantiles
from threading import Event

from assistant.store.engine import open_engine
from gateway_sim.wire import headers
from tests.benchmarks.crowd import MORNING, Crowd, phone
from tests.benchmarks.databases import Kind, kinds
from tests.benchmarks.harness import table
from tests.benchmarks.receive import SIGN_UP
from tests.benchmarks.size import sized

PHONES = sized(5_000, small=40)
SESSIONS = sized(200, small=4)
WITHOUT_S = sized(5, small=1)  # how long the sessions go on with no morning beside them
PAUSE_S = (1.0, 3.0)
SECRET = "of-the-benchmark-and-nobody-else"
HEAD = ("USSD: a screen", "sessions", "screens", "half under", "95 %", "99 %", "load")
_OPEN = """
import sys
from assistant.store import Store
from tests.benchmarks.crowd import MORNING, house_at
house = house_at(Store(sys.argv[1]))
"""
WEB = f"""{_OPEN}
from assistant.web.app import create_app
from assistant.web.connections import listen
import logging
logging.getLogger("waitress.queue").setLevel(logging.ERROR)
app = create_app(
    house, secret={SECRET!r}, wake=lambda: None, clock=lambda: MORNING, pages=()
)
server = listen(app, "127.0.0.1", 0, threads=8)
print(server.effective_port, flush=True)
server.run()
"""
WORKER = f"""{_OPEN}
from assistant.service.tick import tick
print("ready", flush=True)
input()
tick(house, MORNING)
print("done", flush=True)
"""


class Sessions:
    """Many phones, each in one session after another until all is over."""

    def __init__(self, port: int) -> None:
        self._port, self._over, self._numbers = port, Event(), count(1)
        self.took: list[float] = []

    def run(self, pool: ThreadPoolExecutor) -> None:
        """Begins all of them."""
        self._all = [pool.submit(self._phone, number) for number in range(SESSIONS)]

    def stop(self) -> list[float]:
        """Ends them; how long each screen took [s]."""
        self._over.set()
        for each in self._all:
            each.result()
        return self.took

    def _phone(self, seed: int) -> None:
        rng = random.Random(seed)
        line = HTTPConnection("127.0.0.1", self._port, timeout=60)
        self._over.wait(rng.uniform(0, PAUSE_S[1]))
        while not self._over.is_set():
            number = next(self._numbers)
            for step, key in enumerate(("", *SIGN_UP[1:])):
                if self._over.is_set():
                    break
                self.took.append(self._screen(line, number, step, key))
                self._over.wait(rng.uniform(*PAUSE_S))
        line.close()

    def _screen(self, line: HTTPConnection, number: int, step: int, key: str) -> float:
        told = {
            "id": f"u{number}-{step}",
            "session": f"u{number}",
            "from": phone(1_000_000 + number),
            "code": "*555*7#",
            "step": "answer" if step else "begin",
            "text": key,
            "at": MORNING.isoformat(),
        }
        body, path = json.dumps(told).encode(), "/gateway/ussd"
        begun = time.perf_counter()
        line.request("POST", path, body, headers(SECRET, MORNING, path, body))
        answer = line.getresponse()
        said = answer.read()
        took = time.perf_counter() - begun
        assert answer.status == 200, (answer.status, said)
        return took


def run() -> str:
    """The table, on each kind of database."""
    rows: list[tuple[str, ...]] = []
    with kinds(wanted=True) as (found, said):
        for kind in found:
            rows += _measured(kind)
    return f"{table(rows, HEAD)}\n{said}"


def _measured(kind: Kind) -> Iterator[tuple[str, ...]]:
    with kind.fresh() as url, ThreadPoolExecutor(SESSIONS) as pool:
        Crowd((5,), farmers=PHONES).settle(url)
        _count_on(url)
        web, worker = _started(WEB, url), _started(WORKER, url)
        try:
            port = int(_line(web))
            assert _line(worker) == "ready"
            sessions = Sessions(port)
            sessions.run(pool)
            time.sleep(PAUSE_S[1] + WITHOUT_S)
            alone = len(sessions.took)
            begun = time.perf_counter()
            assert worker.stdin
            worker.stdin.write("go\n")
            worker.stdin.flush()
            assert _line(worker) == "done"
            rate = PHONES / (time.perf_counter() - begun)
            took = sessions.stop()
            yield _row(f"{kind.name}, no morning", took[:alone])
            what = f"{kind.name}, a morning of {rate:,.0f} phones a second"
            yield _row(what, took[alone:])
        finally:
            for process in (web, worker):
                process.kill()
                process.communicate()


def _count_on(url: str) -> None:
    """Those who sign up get numbers of their own: the crowd came with numbers."""
    engine = open_engine(url)
    if engine.dialect.name == "postgresql":
        with engine.begin() as connection:
            for name in ("farmer", "nursery", "reminder", "outbox"):
                connection.exec_driver_sql(
                    f"SELECT setval(pg_get_serial_sequence('{name}', 'id'), "
                    f"(SELECT max(id) FROM {name}))"
                )
    engine.dispose()


def _row(what: str, took: list[float]) -> tuple[str, ...]:
    if len(took) < 2:  # noqa: PLR2004  # of a small run
        return (what, f"{SESSIONS}", f"{len(took)}", "", "", "", "")
    cuts = quantiles(took, n=100, method="inclusive")
    shown = (f"{cuts[at - 1] * 1e3:.0f} ms" for at in (50, 95, 99))
    return (what, f"{SESSIONS}", f"{len(took):,}", *shown, f"{os.getloadavg()[0]:.1f}")


def _started(code: str, url: str) -> "subprocess.Popen[str]":
    pipe, root = subprocess.PIPE, Path(__file__).parents[2]
    command = [sys.executable, "-c", code, url]
    return subprocess.Popen(command, stdin=pipe, stdout=pipe, text=True, cwd=root)


def _line(process: "subprocess.Popen[str]") -> str:
    assert process.stdout
    return process.stdout.readline().strip()
