"""Opens the table of dangers: the TOML file -> frozen rows, all faults together."""

import tomllib
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import fields
from functools import lru_cache
from importlib.resources import files
from typing import Any

from assistant.agronomy.dangers.rows import DANGERS, RAIN, BedStage, Danger
from assistant.settings import SettingsError

_KNOWN = frozenset(each.name for each in fields(Danger)) - {"code"}
_LISTS = ("words", "stages", "alert_words")
MOST_DAYS = 14  # a warning that stands longer is forgotten, and holds up work


class DangerError(SettingsError):
    """A table of dangers that cannot be used; the text names every fault and what to write."""


def open_dangers() -> None:
    """Reads the house's file and fills the core's table with it.

    Raises:
        DangerError: lists the faults of the file.
    """
    DANGERS.fill(_ours())


@lru_cache(maxsize=1)
def _ours() -> tuple[Danger, ...]:
    source = files("assistant.agronomy") / "dangers" / "dangers.toml"
    return read_dangers(tomllib.loads(source.read_text(encoding="utf-8")))


def read_dangers(table: Mapping[str, Any]) -> tuple[Danger, ...]:
    """The rows of a parsed file, rain first.

    Raises:
        DangerError: rain is missing, a key or value that is not known, a word of two dangers.
    """
    faults = [] if RAIN in table else [f"[{RAIN}]: is missing; write its row"]
    for code, row in table.items():
        faults += [f"[{code}] {fault}" for fault in _faults(row)]
    faults += [
        f"{word}: is a word of two dangers; leave it to one"
        for word, count in Counter(_words(table)).items()
        if count > 1
    ]
    if faults:
        raise DangerError("dangers.toml with faults:\n  " + "\n  ".join(faults))
    codes = sorted(table, key=lambda code: code != RAIN)
    return tuple(_row(code, table[code]) for code in codes)


def _words(table: Mapping[str, Any]) -> Iterator[str]:
    for row in table.values():
        for key in ("words", "alert_words"):
            yield from (f"{key} {word}" for word in row.get(key, ()) if isinstance(word, str))


def _faults(row: Mapping[str, Any]) -> Iterator[str]:
    for key in sorted(set(row) - _KNOWN):
        yield f"{key}: is not known; known are {', '.join(sorted(_KNOWN))}"
    for key in ("words", "stages"):
        if not row.get(key):
            yield f"{key}: is missing; write a list of at least one"
    for key, given in row.items():
        if key in _LISTS:
            yield from _unlisted(key, given)
        elif key == "longest_d":
            yield from _no_days(given)
        elif key in _KNOWN and not isinstance(given, bool):
            yield f"{key}: write true or false, not {given!r}"


def _no_days(given: object) -> Iterator[str]:
    if type(given) is not int or not 0 < given <= MOST_DAYS:
        yield f"longest_d: write days from 1 to {MOST_DAYS}, not {given!r}"


def _unlisted(key: str, given: object) -> Iterator[str]:
    if not isinstance(given, list) or not all(isinstance(each, str) for each in given):
        yield f"{key}: write a list of words"
        return
    for each in given:
        if key == "stages" and each not in set(BedStage):
            yield f"stages: write some of {', '.join(BedStage)}, not {each!r}"
        if key == "words" and (each != each.upper() or len(each.split()) != 1):
            yield f"words: write one word in capitals, not {each!r}"
        if key == "alert_words" and each != each.casefold():
            yield f"alert_words: write small letters, not {each!r}"


def _row(code: str, row: Mapping[str, Any]) -> Danger:
    given: dict[str, Any] = dict(row)
    for key in _LISTS:
        given[key] = tuple(row.get(key, ()))
    given["stages"] = frozenset(BedStage(each) for each in given["stages"])
    return Danger(code, **given)
