"""Prints what things cost, each beside a floor: `python -m tests.benchmarks [NAME...]`.

A ratio is what ours takes for each unit of the floor, both measured in the same run. There are
no limits here and nothing fails for being slow: the machine decides the seconds. `segments`
prints what a season costs in texts, by language; `line_morning` who comes first on a slow line;
`clicks` what each job at the officers' desk takes, at 600 and 5,000 farmers.
"""

import argparse
from importlib import import_module

from tests.benchmarks.databases import kinds
from tests.benchmarks.harness import HEAD, Result, shown, table

STORED = (
    "receive",
    "morning",
    "tick",
    "dispatch",
    "receipts",
    "lines",
    "warning",
    "pages",
    "office_list",
)  # on each kind of database
NAMES = ("alphabet", "agronomy", "reading", *STORED)
PLAIN = (
    "memory",
    "segments",
    "line_morning",
    "growth",
    "clicks",
    "ussd",
)  # print tables of their own


def main() -> None:
    """Runs the named benchmarks, or all."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks", description=__doc__)
    parser.add_argument("names", nargs="*", choices=[*NAMES, *PLAIN, []], metavar="NAME")
    parser.add_argument("--runs", type=int, default=5, help="runs of each; the median counts")
    given = parser.parse_args()
    names = given.names or [*NAMES, *PLAIN]
    timed = [name for name in names if name in NAMES]
    if timed:
        print(_timed(timed, given.runs))
    for name in names:
        if name in PLAIN:
            print(f"\n{import_module(f'tests.benchmarks.{name}').run()}")


def _timed(names: list[str], runs: int) -> str:
    results: list[Result] = []
    with kinds(wanted=bool(set(names) & set(STORED))) as (found, postgresql):
        for name in names:
            results += import_module(f"tests.benchmarks.{name}").run(runs, found)
    return f"{table(map(shown, results), HEAD)}\n{postgresql}"


if __name__ == "__main__":
    main()
