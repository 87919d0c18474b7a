"""Opens the questions that are answered at once, as frozen values."""

import tomllib
from collections.abc import Iterator, Mapping
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from assistant.hearing.asking import AREA, ASKS, OTHER, Questions, Row, Tongue, row, tongue
from assistant.hearing.topics import Topic
from assistant.people import LANGUAGES
from assistant.wiring.lexicons import open_lexicons

_TOPICS = "topics.toml"


class QuestionsError(Exception):
    """Files that cannot be used; the text names every fault and what to write."""


@lru_cache(maxsize=1)
def open_questions() -> Questions:
    """The questions in all languages. Raises QuestionsError with all faults."""
    faults: list[str] = []
    rows = _rows(_read(_TOPICS, faults), faults)
    known = frozenset().union(*(each.ideas | each.without for each in rows))
    known = (known | {ASKS, OTHER}) - {AREA}
    tongues = {code: _tongue(code, known, faults) for code in LANGUAGES}
    if faults:
        raise QuestionsError("questions with faults:\n" + "\n".join(faults))
    return Questions(rows, MappingProxyType(tongues))


def _read(name: str, faults: list[str]) -> Mapping[str, Any]:
    try:
        return tomllib.loads(
            (files("assistant.hearing") / "questions" / name).read_text("utf-8")
        )
    except (OSError, tomllib.TOMLDecodeError) as fault:
        faults.append(f"{name}: {fault}; expected a TOML file")
        return {}


def _rows(table: Mapping[str, Any], faults: list[str]) -> tuple[Row, ...]:
    faults += [f"{_TOPICS}: [{name}] is not known" for name in table if name not in set(Topic)]
    faults += [f"{_TOPICS}: [{topic}] has no rows" for topic in Topic if topic not in table]
    return tuple(
        row(Topic(name), written)
        for name, section in table.items()
        if name in set(Topic)
        for written in section.get("rows", ())
    )


def _tongue(code: str, known: frozenset[str], faults: list[str]) -> Tongue:
    table = _read(f"{code}.toml", faults)
    faults += list(_faults(f"{code}.toml", table, known))
    usable = {idea: said for idea, said in table.items() if isinstance(said, str) and said}
    try:
        return tongue(code, open_lexicons()[code].is_tonal, usable)
    except ValueError as fault:
        faults.append(f"{code}.toml: {fault}")
        return tongue(code, False, {})


def _faults(name: str, table: Mapping[str, Any], known: frozenset[str]) -> Iterator[str]:
    """A mistyped idea would never be heard, in silence."""
    for idea, said in table.items():
        if idea not in known:
            yield f"{name}: {idea} stands in no row of {_TOPICS}"
        if not isinstance(said, str):
            yield f"{name}: {idea}: expected ways parted by '|' in quotes"
    for idea in sorted(known - set(table)):
        yield f"{name}: {idea} is missing; write how it is said"
