"""Opens the word lists of the languages and hands them in as frozen values."""

import tomllib
from collections.abc import Iterable, Mapping
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType

from assistant.people import LANGUAGES
from assistant.reading.text.lexicon import Lexicon
from assistant.wiring.deed_lists import read_deed_list
from assistant.wiring.lasting import lasting
from assistant.wiring.word_lists import read_word_list

ENGLISH = "en"


class LexiconError(Exception):
    """A word list that cannot be used; the text names every fault and what was expected."""


def open_lexicons(languages: Iterable[str] = tuple(LANGUAGES)) -> Mapping[str, Lexicon]:
    """The word lists of these languages by code. Raises LexiconError with all faults."""
    made: dict[str, Lexicon] = {}
    faults: list[str] = []
    with lasting():
        opened = [(language, *_open(language)) for language in languages]
    for language, lexicon, found in opened:
        faults += [f"{language}.toml: {fault}" for fault in found]
        if lexicon is not None:
            made[language] = lexicon
    if faults:
        raise LexiconError("word lists with faults:\n" + "\n".join(faults))
    return MappingProxyType(made)


@lru_cache(maxsize=16)
@lasting()
def _open(language: str) -> tuple[Lexicon | None, tuple[str, ...]]:
    room = files("assistant.reading")
    try:
        table = tomllib.loads((room / "words" / f"{language}.toml").read_text(encoding="utf-8"))
        deeds = tomllib.loads((room / "deeds" / f"{language}.toml").read_text("utf-8"))
    except (OSError, tomllib.TOMLDecodeError) as error:
        return None, (f"cannot be read ({error}); expected a TOML file of that name",)
    english = None if language == ENGLISH else _open(ENGLISH)[0]
    return read_word_list(language, table, english, read_deed_list(deeds))
