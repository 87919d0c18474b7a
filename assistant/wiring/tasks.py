"""Opens the table of tasks: the TOML file -> frozen rows, all faults together."""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import fields
from enum import StrEnum
from functools import lru_cache
from importlib.resources import files
from typing import Any

from assistant.agronomy.life.rows import (
    TASKS,
    Ask,
    Delay,
    Doing,
    Fact,
    Origin,
    Said,
    TaskRow,
)
from assistant.agronomy.tasks import TaskCode
from assistant.settings import SettingsError

_KNOWN = frozenset(each.name for each in fields(TaskRow)) - {"code"}
_NAMES: Mapping[str, type[StrEnum]] = {
    "origin": Origin,
    "said": Said,
    "asks": Ask,
    "doing": Doing,
    "delay": Delay,
    "replaced_by": TaskCode,
}
_LISTS: Mapping[str, type[StrEnum] | None] = {
    "ends_with": Fact,
    "said_by": TaskCode,
    "deeds": None,
    "cautions": None,
}


class TaskError(SettingsError):
    """A table of tasks that cannot be used; the text names every fault and what to write."""


def open_tasks() -> None:
    """Reads the house's file and fills the core's table with it.

    Raises:
        TaskError: lists the faults of the file.
    """
    TASKS.fill(_ours())


@lru_cache(maxsize=1)
def _ours() -> tuple[TaskRow, ...]:
    source = files("assistant.agronomy") / "life" / "tasks.toml"
    return read_tasks(tomllib.loads(source.read_text(encoding="utf-8")))


def read_tasks(table: Mapping[str, Any]) -> tuple[TaskRow, ...]:
    """The rows of a parsed file, in the order of work.

    Raises:
        TaskError: a task without a row, a row of no task, a key or value that is not known.
    """
    faults = [f"[{name}]: is no task; leave it out" for name in sorted(set(table) - _CODES)]
    faults += [f"[{code}]: is missing; write its row" for code in TaskCode if code not in table]
    faults += [
        f"[{code}] {fault}"
        for code in TaskCode
        if code in table
        for fault in _faults(table[code])
    ]
    if faults:
        raise TaskError("tasks.toml with faults:\n  " + "\n  ".join(faults))
    return tuple(_row(code, table[code]) for code in TaskCode)


_CODES = frozenset(code.value for code in TaskCode)


def _faults(row: Mapping[str, Any]) -> Iterator[str]:
    for key in sorted(set(row) - _KNOWN):
        yield f"{key}: is not known; known are {', '.join(sorted(_KNOWN))}"
    if "origin" not in row:
        yield f"origin: is missing; write one of {', '.join(Origin)}"
    for key, given in row.items():
        if key in _NAMES:
            yield from _unknown(key, [given], _NAMES[key])
        elif key in _LISTS:
            yield from _unlisted(key, given)
        elif key in _KNOWN and not isinstance(given, bool):
            yield f"{key}: write true or false, not {given!r}"


def _unlisted(key: str, given: object) -> Iterator[str]:
    if not isinstance(given, list) or not all(isinstance(each, str) for each in given):
        yield f"{key}: write a list of names"
    elif (kind := _LISTS[key]) is not None:
        yield from _unknown(key, given, kind)


def _unknown(key: str, given: list[Any], kind: type[StrEnum]) -> Iterator[str]:
    for each in given:
        if each not in set(kind):
            yield f"{key}: write one of {', '.join(kind)}, not {each!r}"


def _row(code: TaskCode, row: Mapping[str, Any]) -> TaskRow:
    given: dict[str, Any] = dict(row)
    for key, kind in _NAMES.items():
        if key in row:
            given[key] = kind(row[key])
    for key, listed in _LISTS.items():
        if key in row:
            names = tuple(listed(each) if listed else each for each in row[key])
            given[key] = names if key == "cautions" else frozenset(names)
    return TaskRow(code, **given)
