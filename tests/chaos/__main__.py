"""`python -m tests.chaos --kills N --seed S [--database postgresql]`."""

import argparse
import sys
import tempfile
import time
from contextlib import ExitStack
from pathlib import Path

import tests.chaos as about
from tests.chaos.trial import Trial
from tests.conftest import PrivateServer


def main() -> int:
    """Runs one trial and prints its toll; 1 where anything was lost, double or broken."""
    parser = argparse.ArgumentParser(prog="python -m tests.chaos", description=about.__doc__)
    parser.add_argument("--kills", type=int, default=20, help="faults, most of them kills")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--database", choices=("sqlite", "postgresql"), default="sqlite")
    given = parser.parse_args()
    begun = time.monotonic()
    with ExitStack() as held:
        folder = Path(held.enter_context(tempfile.TemporaryDirectory(prefix="chaos-")))
        server = None
        if given.database == "postgresql":
            server = PrivateServer()
            held.callback(server.stop)
            server.start()
        trial = held.enter_context(Trial(folder, given.seed, server).open())
        for _ in range(given.kills):
            trial.step()
        trial.quieten()
        toll = trial.count()
        after = trial.restore()
    print(f"seed {given.seed}, {given.database}, {time.monotonic() - begun:.0f} s")
    for name, count in sorted(trial.faults.items()):
        print(f"  {count:5} x {name}")
    for name, count in toll.counted.items():
        print(f"{count:7} {name}")
    for what, found in (
        ("lost", toll.lost),
        ("double", toll.double),
        ("broken", toll.broken),
        ("after a copy was put back", after),
    ):
        print(f"{what}: {len(found)}")
        for each in found[:20]:
            print(f"    {each}")
    return 0 if toll.is_whole and not after else 1


if __name__ == "__main__":
    sys.exit(main())
