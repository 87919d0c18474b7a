"""How much memory the assistant's process takes, each step in a process of its own, and what
time of the processor it takes to come so far.

What is resident at the end and at its peak [MiB], as Linux counts it. Floor: Python with Flask
and SQLAlchemy imported, which any program of this kind has.
"""

import subprocess
import sys

from tests.benchmarks.crowd import FARMERS, Crowd
from tests.benchmarks.databases import SQLITE
from tests.benchmarks.harness import table
from tests.benchmarks.size import SMALL

_WHOLE_ONLY = ("deployment open, two languages", "deployment open, all languages")
ALL_DUE = tuple(range(10))  # every day of these has a text

_OPEN = """
from assistant.people import LANGUAGES
from assistant.store import Store
from tests.benchmarks.crowd import MORNING, house_at
store = Store(URL)
"""
STEPS = (
    ("Python alone", ""),
    ("with Flask and SQLAlchemy (the floor)", "import flask, sqlalchemy.orm"),
    ("the assistant imported", "import assistant.commands.serve"),
    ("deployment open, two languages", f"{_OPEN}house = house_at(store)"),
    ("deployment open, all languages", f"{_OPEN}house = house_at(store, tuple(LANGUAGES))"),
    (
        "all in one, idle",
        """
import os, socket, tempfile, time
with socket.create_server(("127.0.0.1", 0)) as free:
    port = free.getsockname()[1]
os.environ |= {
    "NURSERY_DATABASE_URL": f"sqlite:///{tempfile.mkdtemp()}/new.sqlite3",
    "NURSERY_GATEWAY_URL": "http://127.0.0.1:9",
    "NURSERY_GATEWAY_SECRET": "of-the-benchmark-and-nobody-else",
    "NURSERY_PORT": str(port),
    "NURSERY_KEY_FILE": os.path.join(tempfile.mkdtemp(), "key"),
    "NURSERY_JOURNAL_FILE": os.path.join(tempfile.mkdtemp(), "stopped"),
}
from assistant.commands import serve
from assistant.commands.deployment import opened, settings_now
settings = settings_now()
serve._until_stopped = lambda: time.sleep(1)
with opened(settings, migrate=True) as house:
    serve._serve(house, settings, "")
""",
    ),
    (
        f"after a morning of {FARMERS:,} phones",
        f"""{_OPEN}
import assistant.commands.serve
from assistant.worker import Worker
from tests.benchmarks.dispatch import Accepts
gateway = Accepts()
house = house_at(store)
worker = Worker(house, gateway, pause_s=1, batch=100, lease_s=60, clock=lambda: MORNING)
for _ in range(10):  # what is left over goes with the next round
    worker.round()
assert gateway.taken == {FARMERS}, gateway.taken
""",
    ),
)
# Not getrusage: what its parent had counts for a new process too.
_USED = """
import time
from pathlib import Path
spent = time.process_time()
lines = Path("/proc/self/status").read_text().splitlines()
at = {line.split(":")[0]: line.split()[1] for line in lines if line.startswith("Vm")}
print(at["VmRSS"], at["VmHWM"], spent)
"""
FLOOR = 1


def run() -> str:
    """The table of all steps."""
    with SQLITE.fresh() as url:
        Crowd(ALL_DUE).settle(url)
        steps = [each for each in STEPS if not (SMALL and each[0] in _WHOLE_ONLY)]
        used = [_used(f"URL = {url!r}\n{code}\n{_USED}") for _, code in steps]
    rows = [
        (
            what,
            f"{now:.0f} MiB",
            f"{peak:.0f} MiB",
            f"{now / used[FLOOR][0]:.1f}",
            f"{cpu:.1f} s",
        )
        for (what, _), (now, peak, cpu) in zip(steps, used, strict=True)
    ]
    return table(rows, ("memory: the process", "resident", "peak", "ratio", "our CPU"))


def _used(code: str) -> tuple[float, float, float]:
    """Resident, its peak [MiB], and the processor's time [s]."""
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False
    )
    if done.returncode:
        raise RuntimeError(f"a step failed: {done.stderr[-1000:]}")
    now, peak, cpu = done.stdout.split()[-3:]
    return int(now) / 1024, int(peak) / 1024, float(cpu)  # given in KiB
