"""How deeds are told in a language, from its parsed table: words that stand apart, and what may
stand beside them.

`[forms]` names lists of endings, beginnings or words, so that a verb is written once: with
`me = ["nime", "tume"]` the word `{me}loweka` is `nimeloweka/tumeloweka`. `/` stands between
words for one place, as in rules; `o_meu` is one word of a form that is written as two.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import chain, product
from typing import Any

from assistant.reading.text.lexicon import TOLD, Sort
from assistant.reading.text.rules import Rule, read_rule

_FORM = re.compile(r"\{(\w+)\}")
_MOST_SHOWN = 120  # letters of a fault: a word in all its forms is long
_INDIC, _LATIN = re.compile("[\u0900-\u09ff]"), re.compile("[a-z]", re.IGNORECASE)
_NONE = "-"  # in a form: nothing stands there
_BESIDE: Mapping[str, Sort] = {
    "beside": Sort.COMPANION,
    "person": Sort.PERSON,
    "thing": Sort.THING,
    "clock": Sort.CLOCK,
}
_PARTS = ("joining", "turning", "placing", "placed")
_SECTIONS = frozenset({"forms", "told", "short", "parts", *_BESIDE})


@dataclass
class DeedList:
    """The rules under what they tell, the phrases by sort, short words and what they are in
    full, words that join the parts of a sentence and those that turn it, and all that is
    wrong."""

    rules: list[tuple[str, Rule]] = field(default_factory=list)
    phrases: dict[Sort, list[str]] = field(default_factory=dict)
    faults: list[str] = field(default_factory=list)
    short: dict[str, str] = field(default_factory=dict)
    joining: list[str] = field(default_factory=list)
    turning: list[str] = field(default_factory=list)
    placing: list[str] = field(default_factory=list)
    placed: list[str] = field(default_factory=list)


def read_deed_list(table: Mapping[str, Any]) -> DeedList:
    """The deed list of a parsed table; with faults it is not to be used."""
    found = DeedList([], {}, [f"[{name}]: no such section" for name in set(table) - _SECTIONS])
    forms: dict[str, tuple[str, ...]] = {}
    for name, words in table.get("forms", {}).items():
        forms[name] = tuple(_spelt(words, f"[forms] {name}", forms, found))
    for code, lines in table.get("told", {}).items():
        if code not in TOLD:
            found.faults.append(f"[told] {code}: expected one of {', '.join(sorted(TOLD))}")
            continue
        found.rules += [(code, rule) for rule in _rules(lines, code, forms, found)]
    for name, sort in _BESIDE.items():
        for kind, lines in table.get(name, {}).items():
            place = f"[{name}] {kind}"
            found.phrases.setdefault(sort, []).extend(_phrases(lines, place, forms, found))
    parts = table.get("parts", {})
    found.faults += [f"[parts] {name}: no such list" for name in set(parts) - set(_PARTS)]
    for name in _PARTS:
        words = _spelt(parts.get(name, []), f"[parts] {name}", forms, found)
        getattr(found, name).extend(words)
    for word, spellings in table.get("short", {}).items():
        _add_short(word, spellings, found)
    return found


def _add_short(word: str, spellings: object, found: DeedList) -> None:
    if not isinstance(spellings, list) or not all(isinstance(each, str) for each in spellings):
        found.faults.append(f"[short] {word}: expected a list of words in quotes")
        return
    for each in spellings:
        if found.short.setdefault(each.casefold(), word) != word or " " in each:
            found.faults.append(f"[short] {word}: {each!r} is two words, or stands for two")


def _spelt(
    words: object, place: str, forms: Mapping[str, tuple[str, ...]], found: DeedList
) -> Iterator[str]:
    """The words of a list, with its forms written out."""
    if not isinstance(words, list) or not all(isinstance(word, str) for word in words):
        found.faults.append(f"{place}: expected a list of words in quotes")
        return
    for word in words:
        try:
            yield from _word_forms(word, forms)
        except KeyError as fault:
            found.faults.append(f"{place}: no form {fault} above it")


def _word_forms(word: str, forms: Mapping[str, tuple[str, ...]]) -> Iterator[str]:
    """A word for each way to fill its forms."""
    if "{" not in word:
        yield "" if word == _NONE else word
        return
    pieces = _FORM.split(word)  # plain, name, plain, name, ...
    choices = [forms[piece] if at % 2 else (piece,) for at, piece in enumerate(pieces)]
    for parts in product(*choices):
        yield "".join(part for part in parts if part != _NONE)


def _options(word: str, forms: Mapping[str, tuple[str, ...]]) -> list[str]:
    """What may stand for a word of a rule or phrase: its sides, in all their forms."""
    return [each for side in word.split("/") for each in _word_forms(side, forms)]


def _written(rule: str, forms: Mapping[str, tuple[str, ...]]) -> str:
    """A rule with the forms of each of its words written out."""
    groups = (
        " | ".join(each for way in group.split("|") for each in _ways(way.split(), forms))
        for group in rule.split("+")
    )
    return " + ".join(groups)


def _ways(words: list[str], forms: Mapping[str, tuple[str, ...]]) -> Iterator[str]:
    """One place a word; a way of its own for each form of two words (`o_meu`)."""
    rows = []
    for word in words:
        found = _options(word, forms)
        single = [each for each in found if "_" not in each]
        rows.append([*(["/".join(single)] if single else []), *(set(found) - set(single))])
    for way in product(*rows):
        yield " ".join(way).replace("_", " ")


def _rules(
    lines: object, code: str, forms: Mapping[str, tuple[str, ...]], found: DeedList
) -> Iterator[Rule]:
    place = f"[told] {code}"
    for line in lines if isinstance(lines, list) else ():
        try:
            yield read_rule(_written(str(line), forms))
        except (KeyError, ValueError) as fault:
            found.faults.append(f"{place}: {line!r}: {str(fault)[-_MOST_SHOWN:]}")
    if not isinstance(lines, list):
        found.faults.append(f"{place}: expected a list of rules")


def _phrases(
    lines: object, place: str, forms: Mapping[str, tuple[str, ...]], found: DeedList
) -> Iterator[str]:
    """Each phrase that a line of words with `/` stands for; `-` is no word, `o_meu` two."""
    if not isinstance(lines, list) or not all(isinstance(line, str) for line in lines):
        found.faults.append(f"{place}: expected a list of words in quotes")
        return
    for line in lines:
        try:
            rows = [_options(word, forms) for word in line.split()]
        except KeyError as fault:
            found.faults.append(f"{place}: no form {fault} above it")
            continue
        for words in chain.from_iterable(product(*each) for each in _of_one_script(rows)):
            yield " ".join(word for word in words if word not in ("", _NONE)).replace("_", " ")


def _of_one_script(rows: list[list[str]]) -> Iterator[list[list[str]]]:
    """The rows with Latin words alone, and with Indic ones alone: within a phrase nobody goes
    from one script to the other and back, and all ways to do so would be most of a list."""
    ways = [
        [[word for word in row if not other.search(word)] for row in rows]
        for other in (_INDIC, _LATIN)
    ]
    if rows in ways:
        return iter([rows])
    return iter([way for way in ways if all(way)] or [rows])
