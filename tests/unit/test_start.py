"""What a start does not open: large libraries that most processes never need."""

import subprocess
import sys
import typing

import click
import pytest

from assistant.__main__ import _COMMANDS, main

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


def test_the_help_opens_no_command() -> None:
    """It took four seconds when every command was opened for its first sentence."""
    code = """
import sys
from assistant.__main__ import main
main(["--help"], standalone_mode=False)
print("opened", *sys.modules)
"""
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    )
    shown, _, opened = done.stdout.partition("\nopened ")
    assert {name for name in opened.split() if name.startswith("assistant.")} == {
        "assistant.__main__",
        "assistant.commands",
        "assistant.commands.left_out",
        "assistant.commands.one_line",
    }
    assert "plan       Print the quantities" in shown


@pytest.mark.parametrize("name", _COMMANDS)
def test_a_command_is_listed_with_its_own_words(name: str) -> None:
    """The list of commands is written by hand, so that it opens none of them."""
    group = typing.cast(click.Group, main)
    found = group.get_command(click.Context(group), name)
    assert found is not None
    assert _COMMANDS[name].sentence == found.get_short_help_str(limit=1000)
