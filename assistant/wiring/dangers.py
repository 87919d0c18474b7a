"""Opens the table of dangers: the TOML file -> frozen rows, all faults together."""

import tomllib
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import fields
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from assistant.agronomy.dangers.rows import DANGERS, RAIN, BedStage, DangerRow, FirstAdvice
from assistant.people import LANGUAGES
from assistant.settings import SettingsError
from assistant.wording.dangers import without_texts

_KNOWN = frozenset(each.name for each in fields(DangerRow)) - {"code"}
_ADVICE = frozenset(each.name for each in fields(FirstAdvice))
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
def _ours() -> tuple[DangerRow, ...]:
    source = files("assistant.agronomy") / "dangers" / "dangers.toml"
    return read_dangers(tomllib.loads(source.read_text(encoding="utf-8")))


def read_dangers(table: Mapping[str, Any]) -> tuple[DangerRow, ...]:
    """The rows of a parsed file, rain first.

    Raises:
        DangerError: rain is missing, a key or value that is not known, a word of two dangers,
            a danger without its texts.
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
    found = tuple(_row(code, table[code]) for code in codes)
    faults = [f"[{row.code}] {fault}" for row in found for fault in without_texts(row)]
    if faults:
        raise DangerError("dangers.toml with faults:\n  " + "\n  ".join(faults))
    return found


def _words(table: Mapping[str, Any]) -> Iterator[str]:
    for row in table.values():
        own = [each for words in _of_officers(row).values() for each in words]
        yield from (f"words {word}" for word in dict.fromkeys(own))
        yield from (f"alert_words {word}" for word in row.get("alert_words", ()))


def _of_officers(row: Mapping[str, Any]) -> Mapping[str, list[str]]:
    given = row.get("words")
    return given if isinstance(given, dict) and not [*_unworded(given)] else {}


def _faults(row: Mapping[str, Any]) -> Iterator[str]:
    for key in sorted(set(row) - _KNOWN):
        yield f"{key}: is not known; known are {', '.join(sorted(_KNOWN))}"
    yield from _unworded(row.get("words"))
    yield from _unadvised(row.get("advice"))
    for key, given in row.items():
        if key in ("words", "advice"):
            continue
        if key == "alert_words":
            yield from _unlisted(given)
        elif key == "longest_d":
            yield from _no_days(given)
        elif key in _KNOWN and not isinstance(given, bool):
            yield f"{key}: write true or false, not {given!r}"


def _unworded(given: object) -> Iterator[str]:
    if not isinstance(given, dict) or "en" not in given:
        yield 'words: is missing; write words.en = ["..."], and those of other languages'
        return
    for language, words in given.items():
        if language not in LANGUAGES:
            yield f"words.{language}: is no language; write one of {', '.join(LANGUAGES)}"
        if not isinstance(words, list) or not words or not all(map(_is_word, words)):
            yield f"words.{language}: write a list of single words in capitals, not {words!r}"


def _is_word(each: object) -> bool:
    return isinstance(each, str) and each == each.upper() and len(each.split()) == 1


def _no_days(given: object) -> Iterator[str]:
    if type(given) is not int or not 0 < given <= MOST_DAYS:
        yield f"longest_d: write days from 1 to {MOST_DAYS}, not {given!r}"


def _unadvised(given: object) -> Iterator[str]:
    if not isinstance(given, list) or not given:
        yield "advice: is missing; write at least one [[...advice]]"
        return
    for each in given:
        if not isinstance(each, dict) or set(each) != _ADVICE:
            yield f"advice: write {', '.join(sorted(_ADVICE))}, not {each!r}"
        elif not each["what"] or not each["rests_on"]:
            yield "advice: say what is done, and what that rests on"
        elif not each["stages"] or not set(each["stages"]) <= set(BedStage):
            yield f"advice: stages are some of {', '.join(BedStage)}, not {each['stages']!r}"


def _unlisted(given: object) -> Iterator[str]:
    if not isinstance(given, list) or not all(isinstance(each, str) for each in given):
        yield "alert_words: write a list of words"
        return
    for each in given:
        if each != each.casefold():
            yield f"alert_words: write small letters, not {each!r}"


def _row(code: str, row: Mapping[str, Any]) -> DangerRow:
    given: dict[str, Any] = dict(row)
    given["alert_words"] = tuple(row.get("alert_words", ()))
    words = {language: tuple(each) for language, each in given["words"].items()}
    given["words"] = MappingProxyType(words)
    given["advice"] = tuple(map(_advice, row["advice"]))
    return DangerRow(code, **given)


def _advice(each: Mapping[str, Any]) -> FirstAdvice:
    stages = frozenset(BedStage(stage) for stage in each["stages"])
    return FirstAdvice(stages, each["what"], each["rests_on"])
