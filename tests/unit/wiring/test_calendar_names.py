"""The file of names is what Babel has, and word lists take it from there."""

from importlib.resources import files

from assistant.wiring.calendar_names import of_babel, open_calendar_names, written


def test_the_file_is_what_babel_has() -> None:
    """CLDR is the outside source; another Babel needs the file made again, and nobody mends it
    by hand."""
    found = (files("assistant.wiring") / "calendar_names.toml").read_text("utf-8")
    assert found.splitlines() == list(written())


def test_a_language_without_names_in_the_file_has_those_of_babel() -> None:
    """As a word list that somebody tries out."""
    assert open_calendar_names("de") == of_babel("de")
