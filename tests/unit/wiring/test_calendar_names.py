"""The file of names is what Babel has, and word lists take it from there."""

from importlib.resources import files

import pytest

from assistant.people import LANGUAGES
from assistant.wiring.calendar_names import BRITISH, of_babel, open_calendar_names, written


@pytest.mark.parametrize("locale", [*LANGUAGES, BRITISH])
def test_the_names_are_those_of_babel(locale: str) -> None:
    """CLDR is the outside source; another Babel needs the file made again."""
    assert open_calendar_names(locale) == of_babel(locale)


def test_the_file_is_the_one_that_is_made() -> None:
    """So that nobody mends it by hand."""
    found = (files("assistant.wiring") / "calendar_names.toml").read_text("utf-8")
    assert found.splitlines() == "\n".join(written()).splitlines()


def test_a_language_without_names_in_the_file_has_those_of_babel() -> None:
    """As a word list that somebody tries out."""
    assert open_calendar_names("de") == of_babel("de")
