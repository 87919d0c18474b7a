"""Opens the words that give a day to the work of a nursery, as frozen values."""

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType

from assistant.hearing.dating import DayWords, day_words
from assistant.people import LANGUAGES
from assistant.wiring.lexicons import open_lexicons


class DayWordsError(Exception):
    """Files that cannot be used; the text names every fault and what to write."""


@lru_cache(maxsize=1)
def open_day_words() -> Mapping[str, DayWords]:
    """The words of all languages. Raises DayWordsError with all faults."""
    faults: list[str] = []
    opened = {code: _open(code, faults) for code in LANGUAGES}
    if faults:
        raise DayWordsError("words of days with faults:\n" + "\n".join(faults))
    found = {code: words for code, words in opened.items() if words is not None}
    return MappingProxyType(found)


def _open(language: str, faults: list[str]) -> DayWords | None:
    name = f"{language}.toml"
    try:
        table = tomllib.loads((files("assistant.hearing") / "days" / name).read_text("utf-8"))
        said = {str(row): str(way) for row, way in table.items()}
        return day_words(language, open_lexicons()[language].is_tonal, said)
    except (OSError, ValueError) as fault:
        faults.append(f"{name}: {fault}")
        return None
