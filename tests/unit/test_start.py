"""What a start does not open: large libraries that most processes never need."""

import subprocess
import sys

import pytest

LARGE = ("alembic", "openpyxl", "numpy", "shapely", "icalendar", "zxcvbn", "lxml", "signxml")


@pytest.fixture(scope="module")
def opened() -> frozenset[str]:
    """The modules of a process with the web side and the worker."""
    code = "import sys, assistant.commands.serve; print(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    )
    return frozenset(done.stdout.split())


@pytest.mark.parametrize("name", LARGE)
def test_a_start_opens_no_library_that_few_need(opened: frozenset[str], name: str) -> None:
    """They were a third of an idle process; who needs one opens it then."""
    assert name not in opened
