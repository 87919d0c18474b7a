"""The page of words is true: each word is at home where the page says."""

import re
from importlib import import_module
from importlib.util import find_spec
from pathlib import Path

import pytest

import assistant

PAGE = (Path(assistant.__file__).parent / "TERMS.md").read_text("utf-8")
HOMES = re.findall(r"^\| [^|]+ \| [^|]+ \| `([\w.]+)` \|$", PAGE, re.MULTILINE)


@pytest.mark.parametrize("home", HOMES)
def test_a_word_is_at_home_where_the_page_says(home: str) -> None:
    """A module, or a name in one."""
    module, _, name = home.rpartition(".")
    if not name[0].isupper() and _is_module(home):
        return
    assert hasattr(import_module(module), name), f"TERMS.md names {home}, which is not there"


def _is_module(dotted: str) -> bool:
    try:
        return find_spec(dotted) is not None
    except ModuleNotFoundError:  # a name in a module, and no module
        return False


def test_every_row_of_the_page_is_looked_at() -> None:
    """A row that is written otherwise would be held to nothing."""
    rows = [line for line in PAGE.splitlines() if line.startswith("| ")]
    assert len(HOMES) == len(rows) - 1  # the head
