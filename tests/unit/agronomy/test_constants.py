"""Every number has a unit, a source or an honest word, and stands on the page."""

import re
from collections import Counter
from importlib import import_module
from pathlib import Path

import pytest

import assistant.agronomy
from assistant.agronomy.practices import Practice
from assistant.agronomy.sourced.conflicts import CONFLICTS
from assistant.agronomy.sourced.constant import Constant, HowSure
from assistant.agronomy.sourced.tables import TABLES
from assistant.agronomy.sources_page import ALL_CONSTANTS, own_numbers, sources_page
from assistant.agronomy.units import UNITS
from assistant.wiring.practices import open_practices

ROOM = Path(assistant.agronomy.__file__).parent
PRACTICES = tuple(open_practices().values())
CONSTANTS = (*ALL_CONSTANTS, *(each for one in PRACTICES for each in own_numbers(one)))


def test_each_constant_lies_in_its_own_range():
    """Its value is inside its range and its unit is named."""
    for constant in CONSTANTS:
        assert constant.holds(constant.value), constant.name
        assert constant.unit, constant.name


def test_each_constant_says_how_sure_it_is():
    """Published means a source; a practice names none; a choice gives its reason."""
    for constant in CONSTANTS:
        if constant.how_sure is HowSure.PUBLISHED:
            assert constant.sources, constant.name
        elif constant.how_sure is HowSure.COMMON_PRACTICE:
            assert not constant.sources, constant.name
        else:
            assert constant.note, constant.name


@pytest.mark.parametrize("table", TABLES, ids=lambda each: each.name)
def test_each_table_is_whole_and_says_how_sure_it_is(table):
    """Every row has a cell for each word of the head; published means a source."""
    assert all(len(row) == len(table.head) for row in table.rows)
    assert table.sources or table.how_sure is not HowSure.PUBLISHED


def test_no_two_constants_share_a_name():
    """A name means one number."""
    names = [constant.name for constant in CONSTANTS]
    assert len(names) == len(set(names))


def test_the_committed_page_is_the_generated_one():
    """SOURCES.md was made from the data as it is now (the page says how to make it anew)."""
    assert (ROOM / "SOURCES.md").read_text(encoding="utf-8") == sources_page(PRACTICES) + "\n"


def test_the_page_has_a_row_for_everything_that_the_program_knows():
    """Constants, tables, practices with their tasks, units of land, and disagreements."""
    page = sources_page(PRACTICES)
    for constant in CONSTANTS:
        assert f"| `{constant.name}` | {constant.value:g} |" in page
    for table in TABLES:
        assert f"## `{table.name}`" in page
    for unit in UNITS:
        assert f"| {unit.key} | {unit.region or 'everywhere'} |" in page
    for conflict in CONFLICTS:
        assert f"| {conflict.topic} | {conflict.said} | {conflict.accepted} |" in page


@pytest.mark.parametrize("practice", PRACTICES, ids=lambda each: each.code)
def test_the_page_tells_the_days_of_each_practice(practice: Practice) -> None:
    """Every task of its file, under its name."""
    page = sources_page(PRACTICES)
    own = page[page.index(f"(`{practice.code}`)") :]
    for rule in practice.days.tasks:
        assert f"| `{rule.code}` | {rule.start.anchor}" in own


def test_no_constant_of_any_module_is_left_off_the_page():
    """Whoever declares one in another module of the room adds that module to the page."""
    for path in sorted(ROOM.rglob("*.py")):
        parts = path.relative_to(ROOM).with_suffix("").parts
        module = import_module(".".join(("assistant.agronomy", *parts)))
        for value in vars(module).values():
            assert not isinstance(value, Constant) or value in CONSTANTS, value.name


def test_no_constant_is_read_by_nothing() -> None:
    """A number that only its table has changes nothing when it is corrected."""
    package = ROOM.parent
    code = "".join(path.read_text("utf-8") for path in sorted(package.rglob("*.py")))
    tables = "".join(path.read_text("utf-8") for path in sorted(ROOM.rglob("*.toml")))
    named = Counter(re.findall(r"\b[A-Z][A-Z0-9_]+\b", code))
    asked = set(re.findall(r'"([a-z0-9_]+)"', tables))
    silent = [
        each.name
        for each in ALL_CONSTANTS
        if named[each.name.upper()] < 2 and each.name not in asked
    ]
    assert silent == []
