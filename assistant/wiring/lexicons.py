"""Opens the word lists of the languages and hands them in as frozen values."""

import tomllib
from collections.abc import Iterable, Mapping
from functools import lru_cache, partial
from importlib.resources import files
from types import MappingProxyType

from assistant.people import LANGUAGES
from assistant.reading.outcomes import Wish
from assistant.reading.text.lexicon import Lexicon, Sort, WishWords
from assistant.reading.text.near import Affixes
from assistant.reading.text.rules import RULE_VALUES
from assistant.wiring.deed_lists import read_deed_list
from assistant.wiring.kept import kept, word_sources
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


class _FaultyError(Exception):
    """A list that is not made, and so not kept; its arguments are the faults."""


_VALUES = (Lexicon, Sort, Wish, WishWords, Affixes, *RULE_VALUES)


@lru_cache(maxsize=16)
@lasting()
def _open(language: str) -> tuple[Lexicon | None, tuple[str, ...]]:
    """The word list of a language, from the last start where nothing has changed since."""
    try:
        made = partial(_made, language)
        return kept(f"words-{language}", word_sources(), made, _VALUES), ()
    except _FaultyError as faulty:
        return None, faulty.args


def _made(language: str) -> Lexicon:
    room = files("assistant.reading")
    try:
        table = tomllib.loads((room / "words" / f"{language}.toml").read_text(encoding="utf-8"))
        deeds = tomllib.loads((room / "deeds" / f"{language}.toml").read_text("utf-8"))
    except (OSError, tomllib.TOMLDecodeError) as error:
        raise _FaultyError(
            f"cannot be read ({error}); expected a TOML file of that name"
        ) from error
    english = None if language == ENGLISH else _open(ENGLISH)[0]
    lexicon, faults = read_word_list(language, table, english, read_deed_list(deeds))
    if lexicon is None:
        raise _FaultyError(*faults)
    return lexicon
