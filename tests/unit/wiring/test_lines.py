"""The file of lines: what it may say, and every fault told together with what to write."""

from pathlib import Path

import pytest

from assistant.settings import Settings, SettingsError
from assistant.wiring.lines import open_lines

GOOD = """
[[line]]
name = "north"
kind = "wire"
url = "http://127.0.0.1:9"
secret = "s"
sender = "+447700900000"
a_second = 20
a_day = 5000
price = "0.80"

[[line]]
name = "south"
kind = "wire"
url = "http://127.0.0.1:9"
secret = "t"
sender = "+447700900001"

[[route]]
prefixes = ["+99900"]
lines = ["south"]

[[route]]
lines = ["north", "south"]
"""


def opened(tmp_path: Path, text: str, mode: int = 0o600) -> object:
    path = tmp_path / "lines.toml"
    path.write_text(text)
    path.chmod(mode)
    return open_lines(Settings(lines_file=str(path)))


def test_several_lines_are_opened_with_what_operators_call(tmp_path: Path) -> None:
    """Each line has addresses of its own."""
    found = opened(tmp_path, GOOD)
    assert found.lines is not None and found.lines.names == ("north", "south")  # type: ignore[attr-defined]
    assert {"text", "ring", "ussd", "receipt"} <= set(found.hooks["south"])  # type: ignore[attr-defined]


FAULTS = {
    'kind = "wire"\nurl': ('kind = "pigeon"\nurl', "line north: set kind to one of"),
    'name = "south"': ('name = "north"', "line north: there are two of this name"),
    'name = "north"': ('name = "no th"', "line no th: set name"),
    'secret = "s"\n': ("", "line north.secret is missing"),
    "a_day = 5000": ("a_day = -1", "line north.a_day is -1: expected a whole number"),
    'price = "0.80"': ("price = 0.8", 'expected an amount in quotes, such as "0.80"'),
    "a_second = 20": ("speed = 20", "line north.speed is not known"),
    'url = "http://127.0.0.1:9"': ('url = "operator"', "line north: "),
    'lines = ["south"]': ('lines = ["west"]', "route 1: no line west; lines are north, south"),
    'prefixes = ["+99900"]': ('prefixes = "+99900"', "route 1.prefixes is '+99900': expected"),
}


@pytest.mark.parametrize("good", FAULTS)
def test_a_fault_is_told_with_where_it_stands(tmp_path: Path, good: str) -> None:
    """Before anything is started."""
    bad, expected = FAULTS[good]
    with pytest.raises(SettingsError) as told:
        opened(tmp_path, GOOD.replace(good, bad, 1))
    assert expected in str(told.value)


def test_a_file_that_others_may_read_is_refused(tmp_path: Path) -> None:
    """It holds secrets."""
    with pytest.raises(SettingsError, match="chmod 600"):
        opened(tmp_path, GOOD, 0o644)


@pytest.mark.parametrize("text", ["", "line = 3", "[[line", "[[lines]]\nname = 'x'"])
def test_a_file_without_a_line_is_refused(tmp_path: Path, text: str) -> None:
    """And one that is no TOML."""
    with pytest.raises(SettingsError):
        opened(tmp_path, text)


def test_without_any_line_it_says_what_to_set() -> None:
    """Our own wire by two settings, or a file."""
    with pytest.raises(SettingsError, match="NURSERY_LINES_FILE"):
        open_lines(Settings())
