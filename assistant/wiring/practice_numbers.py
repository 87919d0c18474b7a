"""The numbers of a practice file: each with its source, inside what can be.

A number is the name of a constant of the trade, or a table of its value and where it is from.
"""

from collections.abc import Mapping
from typing import Any, NamedTuple

from assistant.agronomy.constants import CONSTANTS
from assistant.agronomy.constants_work import WORK_CONSTANTS
from assistant.agronomy.sourced.constant import Constant, HowSure
from assistant.agronomy.sourced.sources import Source

_KNOWN: Mapping[str, Constant] = {each.name: each for each in (*CONSTANTS, *WORK_CONSTANTS)}
_SURE: Mapping[str, HowSure] = {
    "published": HowSure.PUBLISHED,
    "common practice": HowSure.COMMON_PRACTICE,
    "from memory": HowSure.FROM_MEMORY,
    "judgement": HowSure.JUDGEMENT,
    "design choice": HowSure.DESIGN_CHOICE,
}
_KEYS = frozenset({"value", "low", "high", "sure", "sources", "note"})
_SOURCE_KEYS = ("publisher", "title", "year")


class UnitRange(NamedTuple):
    """A unit, and the ends between which a value can be."""

    unit: str
    low: float
    high: float


class Basis(NamedTuple):
    """Where a number is from."""

    how_sure: HowSure
    sources: tuple[Source, ...]
    note: str


class NumberReader:
    """Reads the parts of one file and collects what is wrong with them."""

    def __init__(self, code: str, table: Mapping[str, Any]) -> None:
        self.code = code
        self.faults: list[str] = []
        self._sources = self._read_sources(self.section(table, "sources", needed=False))

    def fault(self, place: str, text: str) -> None:
        """Notes what is wrong at a place, and what to write."""
        self.faults.append(f"{place}: {text}")

    def section(
        self, table: Mapping[str, Any], name: str, *, needed: bool = True
    ) -> Mapping[str, Any]:
        """A table of the file; an empty one where it is missing."""
        found = table.get(name)
        if isinstance(found, Mapping):
            return found
        if needed or found is not None:
            self.fault(f"[{name}]", "is missing; write this section")
        return {}

    def only(self, table: Mapping[str, Any], place: str, known: frozenset[str]) -> None:
        """Notes keys that nobody reads, which are mostly slips of the pen."""
        for key in sorted(set(table) - known):
            self.fault(f"{place} {key}".strip(), f"is not known; known are {_listed(known)}")

    def flag(self, table: Mapping[str, Any], place: str, name: str, *, default: bool) -> bool:
        """Yes or no."""
        found = table.get(name, default)
        if not isinstance(found, bool):
            self.fault(f"{place} {name}", f"write true or false, not {found!r}")
            return default
        return found

    def words(self, table: Mapping[str, Any], place: str) -> tuple[tuple[str, str], ...]:
        """A table of short texts, in the order of the file."""
        for key, text in table.items():
            if not isinstance(text, str) or not text.strip():
                self.fault(f"{place} {key}", f"write words in quotes, not {text!r}")
        return tuple((key, str(text)) for key, text in table.items())

    def number(self, given: object, place: str, span: UnitRange) -> Constant | None:
        """A number with its source."""
        if given is None:
            self.fault(place, f"is missing; write a number of {span.unit} with its source")
            return None
        if isinstance(given, str):
            found = _KNOWN.get(given)
            if found is None:
                self.fault(place, f"no constant is called {given!r}")
            return found
        if not isinstance(given, Mapping):
            self.fault(place, f"write a table with value and sure, not {given!r}")
            return None
        self.only(given, place, _KEYS)
        value = self._within(given.get("value"), f"{place} value", span)
        low, high = (
            None if given.get(end) is None else self._within(given[end], f"{place} {end}", span)
            for end in ("low", "high")
        )
        basis = self.basis(given, place)
        if value is None or basis is None:
            return None
        name = f"{self.code}.{place.strip('[]').replace('] ', '.')}"
        made = Constant(name, value, low, high, span.unit, *basis)
        if not made.holds(value):
            self.fault(place, f"the value {value:g} lies outside its own low and high")
        return made

    def basis(self, given: Mapping[str, Any], place: str) -> Basis | None:
        """How sure a number is, its sources and the note about it."""
        sure = _SURE.get(str(given.get("sure")))
        if sure is None:
            self.fault(f"{place} sure", f"write one of {_listed(_SURE)}")
            return None
        keys, note = given.get("sources", []), given.get("note", "")
        if not isinstance(keys, list) or not isinstance(note, str):
            self.fault(place, "sources is a list of names, note a text in quotes")
            return None
        for key in keys:
            if key not in self._sources:
                self.fault(f"{place} sources", f"no [sources.{key}] stands in this file")
        sources = tuple(self._sources[key] for key in keys if key in self._sources)
        if sure is HowSure.PUBLISHED and not keys:
            self.fault(f"{place} sources", "a published number names at least one source")
        if sure is HowSure.COMMON_PRACTICE and keys:
            self.fault(f"{place} sources", "what a source prints is published")
        if sure not in (HowSure.PUBLISHED, HowSure.COMMON_PRACTICE) and not note:
            self.fault(f"{place} note", f"say why, since it is {sure}")
        return Basis(sure, sources, note)

    def _within(self, given: object, place: str, span: UnitRange) -> float | None:
        if isinstance(given, bool) or not isinstance(given, int | float):
            self.fault(place, f"write a number of {span.unit}, not {given!r}")
            return None
        if not span.low <= given <= span.high:  # also for nan
            self.fault(
                place, f"expected {span.low:g} to {span.high:g} {span.unit}, got {given}"
            )
            return None
        return given

    def _read_sources(self, table: Mapping[str, Any]) -> Mapping[str, Source]:
        made = {}
        for key, row in table.items():
            parts = [
                row.get(part) if isinstance(row, Mapping) else None for part in _SOURCE_KEYS
            ]
            if all(isinstance(part, str) and part.strip() for part in parts):
                made[key] = Source(*(str(part) for part in parts))
            else:
                self.fault(f"[sources.{key}]", f"write {_listed(_SOURCE_KEYS)} in quotes")
        return made


def _listed(words: Any) -> str:
    return ", ".join(sorted(words))
