"""How many slips in a number would go unnoticed: `python -m tests.benchmarks.mutations`.

Each constant of the trade, and each day of a task of the mat, is changed alone, in a process of
its own, and the tests of agronomy are run against it. What passes all the same was noticed by
nobody. A change stays in memory: no file is touched. `--only NAME` changes only some.
"""

import argparse
import contextlib
import os
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

import babel  # noqa: F401  (imported once, before the processes part)
import pytest
import scipy.stats  # noqa: F401
from hypothesis import settings

from assistant.agronomy.practices import MAT
from assistant.agronomy.sources_page import ALL_CONSTANTS

REFERENCE = ("tests/reference", "--ignore=tests/reference/test_checks.py")
# The page of sources names every number, so its test would notice all of them.
UNIT = (
    "tests/unit/agronomy",
    "tests/unit/wording/test_figures.py",
    "--ignore=tests/unit/agronomy/test_constants.py",
)
FACTORS = (0.6, 1.4)
_QUIET = ("-x", "-p", "no:cacheprovider", "-W", "ignore:Module already imported")
FAILED = 1  # pytest: some test failed


class Mutant(NamedTuple):
    """One number and what it is multiplied by; a whole number is moved by one at least."""

    name: str
    factor: float


def mutants(only: str = "") -> Iterator[Mutant]:
    """Every number that is not nothing, each way."""
    names = [each.name for each in ALL_CONSTANTS if each.value and only in each.name]
    tasks = [f"task:{rule.code}" for rule in MAT.days.tasks if only in rule.code]
    return (Mutant(name, factor) for name in (*names, *tasks) for factor in FACTORS)


def is_noticed(mutant: Mutant, paths: tuple[str, ...]) -> bool:
    """Whether any check fails with the number changed."""
    child = os.fork()
    if child:
        code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        if code not in (0, FAILED):
            raise RuntimeError(f"the tests could not be run with {mutant}: {code}")
        return code == FAILED
    _change(mutant)
    settings.register_profile("mutants", max_examples=5, deadline=None, database=None)
    with Path(os.devnull).open("w") as nowhere, contextlib.redirect_stdout(nowhere):
        with contextlib.redirect_stderr(nowhere):
            code = pytest.main([*_QUIET, *paths], plugins=[_Few()])
    os._exit(int(code))


class _Few:
    """Few examples a property: a changed number is seen in any of them."""

    def pytest_collection_finish(self) -> None:
        """After the suite has chosen its own profile."""
        settings.load_profile("mutants")


def _change(mutant: Mutant) -> None:
    for constant in ALL_CONSTANTS:
        if constant.name == mutant.name:
            object.__setattr__(constant, "value", _moved(constant.value, mutant.factor))
    for rule in MAT.days.tasks:
        if mutant.name == f"task:{rule.code}":
            days: Any = rule.start.days
            fields = {**vars(days), "value": _moved(int(days.value), mutant.factor)}
            start = type(rule.start)(rule.start.anchor, type(days)(**fields))
            object.__setattr__(rule, "start", start)


def _moved(value: float, factor: float) -> float:
    if not isinstance(value, int):
        return value * factor
    moved = round(value * factor)
    return moved if moved != value else value + (1 if factor > 1 else -1)


def main() -> None:
    """Prints each change that the checks against the world did not notice, and who did."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--only", default="", help="numbers with this in their name")
    given = parser.parse_args()
    tried, missed, nobody = 0, 0, 0
    for mutant in mutants(given.only):
        tried += 1
        if is_noticed(mutant, REFERENCE):
            continue
        missed += 1
        ours = is_noticed(mutant, UNIT)
        nobody += not ours
        who = "only our own tests" if ours else "nobody"
        print(f"{mutant.name} x {mutant.factor}: noticed by {who}", flush=True)
    print(
        f"{tried} changes: {missed} go unnoticed by tests/reference, {nobody} of them by "
        "tests/unit/agronomy too"
    )


if __name__ == "__main__":
    main()
