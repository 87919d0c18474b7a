"""Tables that are looked at where they lie."""

from pathlib import Path

import pytest

import assistant
from assistant.acts import read_table
from assistant.wiring.hearing import open_table
from assistant.wiring.mapped import mapped, replace_bytes


def test_who_has_the_old_one_keeps_it(tmp_path: Path) -> None:
    """A service runs while a table is trained anew."""
    file = tmp_path / "table.bin"
    file.write_bytes(b"old")
    held = mapped(file)
    replace_bytes(file, b"n")
    assert (bytes(held), bytes(mapped(file))) == (b"old", b"n")
    assert list(tmp_path.iterdir()) == [file]
    assert held.readonly


def test_the_table_says_the_same_from_its_place_and_from_memory() -> None:
    """It is six megabytes, of which a text needs a few pages."""

    raw = (Path(assistant.__file__).parent / "acts" / "table.bin").read_bytes()
    for text in ("nyoka kaniuma", "done", ""):
        assert open_table().weigh(text) == read_table(raw).weigh(text)


def test_an_empty_file_is_refused(tmp_path: Path) -> None:
    """By an error that its readers tell in words."""
    (tmp_path / "table.bin").touch()
    with pytest.raises(ValueError, match="empty"):
        mapped(tmp_path / "table.bin")
