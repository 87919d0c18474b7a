"""Every number has a unit, a source or an honest word, and stands on the page."""

from pathlib import Path

import pytest

import assistant.agronomy
from assistant.agronomy.constant import HowSure
from assistant.agronomy.constants import CONSTANTS
from assistant.agronomy.sources_page import sources_page
from assistant.agronomy.tables import TABLES

ROOM = Path(assistant.agronomy.__file__).parent


@pytest.mark.parametrize("constant", CONSTANTS, ids=lambda each: each.name)
def test_each_constant_lies_in_its_own_range(constant):
    """Its value is inside its range and its unit is named."""
    assert constant.holds(constant.value)
    assert constant.unit


@pytest.mark.parametrize("constant", CONSTANTS, ids=lambda each: each.name)
def test_each_constant_says_how_sure_it_is(constant):
    """Published means a source; a practice names none; a choice gives its reason."""
    if constant.how_sure is HowSure.PUBLISHED:
        assert constant.sources
    elif constant.how_sure is HowSure.COMMON_PRACTICE:
        assert not constant.sources
    else:
        assert constant.note


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
    assert (ROOM / "SOURCES.md").read_text(encoding="utf-8") == sources_page() + "\n"
