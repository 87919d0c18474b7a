"""How much memory the assistant's process takes, each step in a process of its own.

The peak of what was resident [MiB], as Linux counts it. Floor: Python with Flask
and SQLAlchemy imported, which any program of this kind has.
"""

import subprocess
import sys

from tests.benchmarks.crowd import FARMERS, Crowd
from tests.benchmarks.databases import SQLITE
from tests.benchmarks.harness import table

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
        f"after a morning of {FARMERS:,} phones",
        f"""{_OPEN}
import assistant.commands.serve
from assistant.worker import Worker
from tests.benchmarks.dispatch import Accepts
gateway = Accepts()
house = house_at(store)
Worker(house, gateway, pause_s=1, batch=100, lease_s=60, clock=lambda: MORNING).round()
assert gateway.taken == {FARMERS}, gateway.taken
""",
    ),
)
# Not getrusage: what its parent had counts for a new process too.
_PEAK = """
from pathlib import Path
lines = Path("/proc/self/status").read_text().splitlines()
print(next(line.split()[1] for line in lines if line.startswith("VmHWM:")))
"""
FLOOR = 1


def run() -> str:
    """The table of all steps."""
    with SQLITE.fresh() as url:
        Crowd(ALL_DUE).settle(url)
        peaks = [_peak_mib(f"URL = {url!r}\n{code}\n{_PEAK}") for _, code in STEPS]
    rows = [
        (what, f"{peak:.0f} MiB", f"{peak / peaks[FLOOR]:.1f}")
        for (what, _), peak in zip(STEPS, peaks, strict=True)
    ]
    return table(rows, ("memory: the process", "peak", "ratio"))


def _peak_mib(code: str) -> float:
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False
    )
    if done.returncode:
        raise RuntimeError(f"a step failed: {done.stderr[-1000:]}")
    return int(done.stdout.split()[-1]) / 1024  # given in KiB
