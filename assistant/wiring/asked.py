"""Opens the ways of asking and the table that is learned from them, as frozen values."""

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from importlib.resources import files
from pathlib import Path
from types import MappingProxyType

import assistant
from assistant.hearing.matching import NONE, MatchTable, read_match
from assistant.hearing.topics import Topic
from assistant.people import LANGUAGES
from assistant.wiring.mapped import mapped

Asked = Mapping[str, Mapping[str, tuple[str, ...]]]


class AskedError(Exception):
    """Files that cannot be used; the text names every fault and what to write."""


@lru_cache(maxsize=1)
def open_asked() -> Asked:
    """Language -> question -> its ways. Raises AskedError with all faults."""
    faults: list[str] = []
    opened = {code: MappingProxyType(_open(code, faults)) for code in LANGUAGES}
    if faults:
        raise AskedError("ways of asking with faults:\n" + "\n".join(faults))
    return MappingProxyType(opened)


def _open(language: str, faults: list[str]) -> dict[str, tuple[str, ...]]:
    name = f"asked/{language}.toml"
    try:
        table = tomllib.loads((files("assistant.hearing") / name).read_text("utf-8"))
    except (OSError, tomllib.TOMLDecodeError) as fault:
        faults.append(f"{name}: {fault}; expected a TOML file")
        return {}
    codes = {*Topic, NONE}
    faults += [f"{name}: {code} is no question of topics.py" for code in set(table) - codes]
    faults += [f"{name}: {code} is missing" for code in codes - set(table)]
    return {str(code): tuple(map(str, ways)) for code, ways in table.items()}


def open_more() -> Asked:
    """The ways of other hands (`asked/more`), which the table is also learned from: language ->
    question -> its ways. Raises AskedError."""
    return {code: _more(code) for code in LANGUAGES}


def _more(language: str) -> dict[str, tuple[str, ...]]:
    name = f"asked/more/{language}.tsv"
    found: dict[str, tuple[str, ...]] = {}
    for line in (files("assistant.hearing") / name).read_text("utf-8").splitlines():
        code, _, way = line.partition("\t")
        if code not in {*Topic, NONE} or not way:
            raise AskedError(f"{name}: expected a question, a tab, a way: {line!r}")
        found[code] = (*found.get(code, ()), way)
    return found


def open_labels() -> Mapping[str, Mapping[str, str]]:
    """Language -> question -> its first way, which is shown."""
    return {
        language: {code: ways[0] for code, ways in rows.items() if ways}
        for language, rows in open_asked().items()
    }


def open_match() -> MatchTable:
    """The learned table as it is shipped. Raises AskedError."""
    try:
        room = Path(assistant.__file__).parent / "hearing" / "asked"
        return read_match(mapped(room / "table.bin"))
    except (OSError, ValueError) as fault:  # MatchError is a ValueError
        raise AskedError(f"assistant/hearing/asked/table.bin: {fault}") from fault
