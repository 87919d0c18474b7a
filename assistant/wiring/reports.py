"""Opens the ways in which farmers tell of a bed, as frozen values."""

import tomllib
from collections.abc import Iterator, Mapping
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from assistant.hearing.asking import Tongue, tongue
from assistant.hearing.reporting import Idea, Reports
from assistant.people import LANGUAGES
from assistant.wiring.lexicons import open_lexicons


class ReportsError(Exception):
    """Files that cannot be used; the text names every fault and what to write."""


@lru_cache(maxsize=1)
def open_reports() -> Reports:
    """The ideas in all languages. Raises ReportsError with all faults."""
    faults: list[str] = []
    tongues = {code: _tongue(code, faults) for code in LANGUAGES}
    if faults:
        raise ReportsError("reports with faults:\n" + "\n".join(faults))
    return Reports(MappingProxyType(tongues))


def _tongue(code: str, faults: list[str]) -> Tongue:
    name = f"{code}.toml"
    try:
        table = tomllib.loads(
            (files("assistant.hearing") / "reports" / name).read_text("utf-8")
        )
        faults += list(_faults(name, table))
        return tongue(code, open_lexicons()[code].is_tonal, table)
    except (OSError, tomllib.TOMLDecodeError) as fault:
        faults.append(f"reports/{name}: {fault}; expected a TOML file")
    except ValueError as fault:
        faults.append(f"reports/{name}: {fault}")
    return tongue(code, False, {})


def _faults(name: str, table: Mapping[str, Any]) -> Iterator[str]:
    """A mistyped idea would never be heard, in silence."""
    for idea, said in table.items():
        if idea not in set(Idea):
            yield f"reports/{name}: {idea} is not known; known are {', '.join(Idea)}"
        if not isinstance(said, str):
            yield f"reports/{name}: {idea}: expected ways parted by '|' in quotes"
    for idea in Idea:
        if idea not in table:
            yield f"reports/{name}: {idea} is missing; write how it is said"
