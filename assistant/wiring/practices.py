"""Opens the practices: TOML files -> values of the core, all faults of all files together.

A programme may add a folder of its own; a file there needs nothing but itself.
"""

import re
import sys
import tomllib
from collections.abc import Mapping
from functools import lru_cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.sources_page import sources_page
from assistant.settings import SettingsError
from assistant.wiring.dangers import open_dangers
from assistant.wiring.practice_file import read_practice
from assistant.wiring.tasks import open_tasks

_CODE = re.compile(r"[a-z][a-z0-9_]{0,19}")


class PracticeError(SettingsError):
    """Practice files that cannot be used; the text names every fault and what to write."""


def open_practices(folder: Path | None = None) -> Mapping[str, Practice]:
    """All practices by code, the mat first: those of the house, and those of a folder.

    Raises:
        PracticeError: lists the faults of all files.
    """
    open_dangers()
    open_tasks()  # which tasks a practice may have stands there
    made: dict[str, Practice] = {MAT.code: MAT}
    faults: list[str] = []
    for name, practice, found in (*_ours(), *_read(_own(folder, faults))):
        faults += [f"{name}: {fault}" for fault in found]
        if practice is not None and practice.code != MAT.code:
            made[practice.code] = practice
    if faults:
        raise PracticeError("practice files with faults:\n  " + "\n  ".join(faults))
    return MappingProxyType(made)


class _Read(NamedTuple):
    """One file that was read."""

    name: str
    practice: Practice | None
    faults: tuple[str, ...]


@lru_cache(maxsize=1)
def _ours() -> tuple[_Read, ...]:
    """The files of the house, which do not change while the program runs."""
    return tuple(_read(_files(files("assistant.agronomy") / "practices")))


def _read(sources: list[Traversable]) -> list[_Read]:
    return [_Read(each.name, *_open(each.name.removesuffix(".toml"), each)) for each in sources]


def _files(folder: Traversable) -> list[Traversable]:
    found = (each for each in folder.iterdir() if each.name.endswith(".toml"))
    return sorted(found, key=lambda each: each.name)


def _own(folder: Path | None, faults: list[str]) -> list[Traversable]:
    """The files of a programme's folder, which may not change the mat."""
    if folder is None:
        return []
    if not folder.is_dir():
        faults.append(f"{folder}: is no folder; name one that holds practice files")
        return []
    found = _files(folder)
    if any(each.name == f"{MAT.code}.toml" for each in found):
        faults.append(f"{MAT.code}.toml: the mat stands in the program; give it another name")
    return found


def _open(code: str, source: Traversable) -> tuple[Practice | None, tuple[str, ...]]:
    if not _CODE.fullmatch(code):
        return None, ("name the file with small letters, digits and _, such as wet_bed.toml",)
    try:
        table = tomllib.loads(source.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        return None, (f"cannot be read ({error}); expected TOML in UTF-8",)
    return read_practice(code, table)


if __name__ == "__main__":
    sys.stdout.write(sources_page(open_practices().values()) + "\n")
