"""Opens the words by which questions of a programme's office are told and held to."""

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from assistant.hearing.office import OfficeWords
from assistant.people import LANGUAGES
from assistant.reading.text.fold import read_tokens

_LISTS = ("small", "refused", "measures")


class OfficeWordsError(Exception):
    """A file that cannot be used; the text names every fault and what to write."""


@lru_cache(maxsize=1)
def open_office_words() -> Mapping[str, OfficeWords]:
    """Language -> its words, folded. Raises OfficeWordsError with all faults."""
    name = "office.toml"
    try:
        table = tomllib.loads((files("assistant.hearing") / name).read_text("utf-8"))
    except (OSError, tomllib.TOMLDecodeError) as fault:
        raise OfficeWordsError(f"{name}: {fault}; expected a TOML file") from fault
    faults = [f"[{code}] is no language" for code in set(table) - set(LANGUAGES)]
    for code in LANGUAGES:
        found = table.get(code, {})
        faults += [f"[{code}] has no {each}" for each in _LISTS if not found.get(each)]
        faults += [f"[{code}] {each} is not known" for each in set(found) - set(_LISTS)]
    if faults:
        raise OfficeWordsError(f"{name}: " + "; ".join(sorted(faults)))
    return MappingProxyType({code: _words(table[code]) for code in LANGUAGES})


def _words(table: Mapping[str, Any]) -> OfficeWords:
    small, refused, measures = (tuple(map(_folded, table[each])) for each in _LISTS)
    return OfficeWords(frozenset(small), refused, frozenset(measures))


def _folded(words: str) -> str:
    """As replies are folded; the sign for any end stays."""
    parts = [each.text for each in read_tokens(words.removesuffix("*"))]
    return " ".join(parts) + ("*" if words.endswith("*") else "")
