"""Opens the word lists of the languages, checks them, and hands them in as frozen values.

Names of months and days come from Babel (CLDR), which has them for all nine languages; the
lists add how people really type them. English names are understood in every language.
"""

import tomllib
from collections.abc import Iterable, Mapping
from fractions import Fraction
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from babel import Locale

from assistant.agronomy.units import UNIT_KEYS
from assistant.people import LANGUAGES
from assistant.reading.fold import cut, fold
from assistant.reading.lexicon import Lexicon, Phrase, Sort, WishWords
from assistant.reading.outcomes import Wish

_KEYED = frozenset(
    {
        Sort.NUMBER, Sort.TIMES, Sort.FRACTION, Sort.AND_HALF, Sort.SHIFT, Sort.UNIT, Sort.LENGTH,
        Sort.LITRE, Sort.DAY, Sort.EITHER_DAY, Sort.MONTH, Sort.WEEKDAY, Sort.DAYS,
    }
)  # fmt: skip
_PLAIN = frozenset(Sort) - _KEYED
READY = tuple(LANGUAGES)
_ONE = "one"  # the key of an article that counts: "an acre"
_GRAMMAR = ("times_first", "unit_first", "month_first")
_SHOWN_UNITS = ("hectare", "acre", "are", "m2")  # every list names these


class LexiconError(Exception):
    """A word list that cannot be used; the text names every fault and what to write."""


def open_lexicons(languages: Iterable[str] = READY) -> Mapping[str, Lexicon]:
    """The word lists of these languages by code. Raises LexiconError with all faults."""
    made: dict[str, Lexicon] = {}
    faults: list[str] = []
    for language in languages:
        lexicon, found = _load(language)
        faults += [f"{language}.toml: {fault}" for fault in found]
        if lexicon is not None:
            made[language] = lexicon
    if faults:
        raise LexiconError("word lists with faults:\n" + "\n".join(faults))
    return MappingProxyType(made)


@lru_cache(maxsize=16)
def _load(language: str) -> tuple[Lexicon | None, tuple[str, ...]]:
    source = files("assistant.reading") / "words" / f"{language}.toml"
    try:
        table = tomllib.loads(source.read_text(encoding="utf-8"))
    except (OSError, tomllib.TOMLDecodeError) as error:
        return None, (f"cannot be read ({error}); expected a TOML file of that name",)
    return read_lexicon(language, table)


def read_lexicon(
    language: str, table: Mapping[str, Any]
) -> tuple[Lexicon | None, tuple[str, ...]]:
    """A word list from its parsed table, and all its faults (then there is no word list)."""
    faults = _Faults()
    shown, grammar = faults.section(table, "shown"), faults.section(table, "grammar")
    phrases = _phrases(table, faults)
    wishes = _wishes(table, faults)
    _check_shown(shown, faults)
    if faults.found:
        return None, tuple(faults.found)
    _add_calendar(phrases, str(shown["locale"]))
    _add_units(phrases, shown)
    lists = [tuple(spellings) for spellings in phrases.values()]
    lists += [wish.words for wish in wishes.values()]
    lists += [group for wish in wishes.values() for s in wish.sentences for group in s]
    known = frozenset(w for part in lists for phrase in part for w in phrase)
    return _lexicon(language, table, (shown, grammar), phrases, wishes, known), ()


def _lexicon(
    language: str,
    table: Mapping[str, Any],
    sections: tuple[Mapping[str, Any], Mapping[str, Any]],
    phrases: dict[Sort, dict[Phrase, str]],
    wishes: dict[Wish, WishWords],
    known: frozenset[str],
) -> Lexicon:
    shown, grammar = sections
    flags = {name: bool(grammar.get(name, False)) for name in _GRAMMAR}
    return Lexicon(
        language=language,
        locale=str(shown["locale"]),
        decimal=str(shown["decimal"]),
        groups=tuple(shown["groups"]),
        digits=str(shown.get("digits", "0123456789")),
        number_fraction=str(grammar.get("number_fraction", "times")),
        phrases=MappingProxyType({s: MappingProxyType(p) for s, p in phrases.items()}),
        unit_names=MappingProxyType(_unit_names(shown)),
        answers=MappingProxyType(dict(shown["answers"])),
        wish_names=MappingProxyType({w: shown["wishes"][w.value] for w in Wish}),
        wishes=MappingProxyType(wishes),
        stop_not=tuple(phrase_of(p) for p in table.get("stop_not", {}).get("words", ())),
        known=known,
        **flags,
    )


def _unit_names(shown: Mapping[str, Any]) -> dict[str, tuple[str, str]]:
    """One and many of each unit; a unit that the list does not name is shown by its key."""
    names = {key: (key, key) for key in UNIT_KEYS}
    return names | {key: (name[0], name[-1]) for key, name in shown["units"].items()}


def phrase_of(text: str) -> Phrase:
    """A phrase as replies are cut."""
    return tuple(token.text for token in cut(fold(text)))


class _Faults:
    """Collects what is wrong, so that a translator sees all of it at once."""

    def __init__(self) -> None:
        self.found: list[str] = []

    def add(self, fault: str) -> None:
        self.found.append(fault)

    def section(self, table: Mapping[str, Any], name: str) -> Mapping[str, Any]:
        """A section that must be there."""
        section = table.get(name)
        if not isinstance(section, Mapping):
            self.add(f"[{name}] is missing")
            return {}
        return section

    def words(self, value: object, place: str) -> tuple[Phrase, ...]:
        """A list of phrases."""
        if not isinstance(value, list) or not all(isinstance(text, str) for text in value):
            self.add(f"{place}: expected a list of words in quotes")
            return ()
        phrases = tuple(phrase_of(text) for text in value)
        for text, phrase in zip(value, phrases, strict=True):
            if not phrase:
                self.add(f"{place}: {text!r} holds nothing to look for")
        return tuple(phrase for phrase in phrases if phrase)


def _phrases(table: Mapping[str, Any], faults: _Faults) -> dict[Sort, dict[Phrase, str]]:
    phrases: dict[Sort, dict[Phrase, str]] = {sort: {} for sort in Sort}
    plain = faults.section(table, "words")
    for name, spellings in plain.items():
        if name not in {sort.value for sort in _PLAIN}:
            faults.add(f"[words] {name}: no such kind of word")
            continue
        for phrase in faults.words(spellings, f"[words] {name}"):
            phrases[Sort(name)][phrase] = ""
    for sort in (*sorted(_KEYED), Sort.ARTICLE):
        for key, spellings in table.get(sort.value, {}).items():
            _check_key(sort, key, faults)
            for phrase in faults.words(spellings, f"[{sort.value}] {key}"):
                _put(phrases[sort], phrase, key, f"[{sort.value}]", faults)
    return phrases


def _put(
    into: dict[Phrase, str], phrase: Phrase, key: str, place: str, faults: _Faults
) -> None:
    if into.get(phrase, key) != key:
        faults.add(f"{place} {' '.join(phrase)!r} stands for both {into[phrase]} and {key}")
    into[phrase] = key


def _check_key(sort: Sort, key: str, faults: _Faults) -> None:
    if sort is Sort.ARTICLE:
        good = key == _ONE
    elif sort is Sort.UNIT:
        good = all(part in UNIT_KEYS or part == "after" for part in key.split())
    elif sort is Sort.DAYS and key == "month":
        good = True
    else:
        try:
            good = Fraction(key) is not None
        except (ValueError, ZeroDivisionError):
            good = False
    if not good:
        faults.add(f"[{sort.value}] {key!r} is not a key that this section knows")


def _wishes(table: Mapping[str, Any], faults: _Faults) -> dict[Wish, WishWords]:
    section = faults.section(table, "wishes")
    for name in set(section) - {wish.value for wish in Wish}:
        faults.add(f"[wishes.{name}]: no such wish")
    made: dict[Wish, WishWords] = {}
    taken: dict[Phrase, Wish] = {}
    for wish in Wish:
        own = section.get(wish.value, {})
        words = faults.words(own.get("words", []), f"[wishes.{wish}] words")
        if not words:
            faults.add(f"[wishes.{wish}] needs at least one word")
        for phrase in words:
            if taken.setdefault(phrase, wish) is not wish:
                faults.add(f"[wishes.{wish}] {' '.join(phrase)!r} is also {taken[phrase]}")
        made[wish] = WishWords(words, _sentences(own.get("sentences", []), wish, faults))
    return made


def _sentences(
    rows: object, wish: Wish, faults: _Faults
) -> tuple[tuple[tuple[Phrase, ...], ...], ...]:
    """Rows of groups; the words of a group stand in one string with | between."""
    place = f"[wishes.{wish}] sentences"
    if not isinstance(rows, list) or not all(isinstance(row, list) for row in rows):
        faults.add(f"{place}: expected a list of lists")
        return ()
    return tuple(
        tuple(faults.words(str(group).split("|"), place) for group in row) for row in rows
    )


def _check_shown(shown: Mapping[str, Any], faults: _Faults) -> None:
    for name in ("locale", "decimal", "groups", "units", "answers", "wishes"):
        if name not in shown:
            faults.add(f"[shown] {name} is missing")
    units = shown.get("units", {})
    for key in _SHOWN_UNITS:
        if key not in units:
            faults.add(f"[shown.units] {key} is missing")
    for key in sorted(set(units) - UNIT_KEYS):
        faults.add(f"[shown.units] {key}: no such unit")
    for name in ("yes", "no", "done", "not_yet"):
        if name not in shown.get("answers", {}):
            faults.add(f"[shown.answers] {name} is missing")
    for wish in Wish:
        if wish.value not in shown.get("wishes", {}):
            faults.add(f"[shown.wishes] {wish.value} is missing")


def _add_units(phrases: dict[Sort, dict[Phrase, str]], shown: Mapping[str, Any]) -> None:
    """What is shown can be typed; a unit's key is understood where it is no other word."""
    own = {phrase for sort in Sort for phrase in phrases[sort]}
    for key in sorted(UNIT_KEYS):
        if (key,) not in own:
            phrases[Sort.UNIT][(key,)] = key
    for key, names in shown["units"].items():
        for name in names:
            phrases[Sort.UNIT].setdefault(phrase_of(name), key)


def _add_calendar(phrases: dict[Sort, dict[Phrase, str]], locale: str) -> None:
    """Month and day names: the list's own, then the language's in Babel, then English."""
    taken = {phrase for sort in (Sort.MONTH, Sort.WEEKDAY) for phrase in phrases[sort]}
    own = _calendar(locale)
    double = own[Sort.MONTH].keys() & own[Sort.WEEKDAY].keys()
    for names in (own, _calendar("en")):
        everything = {p for sort in Sort for p in phrases[sort]} if names is not own else taken
        for sort, table in names.items():
            for phrase, key in table.items():
                if phrase not in everything and phrase not in double:
                    phrases[sort].setdefault(phrase, key)


def _calendar(locale: str) -> dict[Sort, dict[Phrase, str]]:
    names = Locale.parse(locale)
    months: dict[Phrase, str] = {}
    days: dict[Phrase, str] = {}
    for context in ("format", "stand-alone"):
        for width in ("wide", "abbreviated"):
            for number, name in names.months[context][width].items():
                months.setdefault(phrase_of(name), str(number))
            for number, name in names.days[context][width].items():
                days.setdefault(phrase_of(name), str(number))
    return {Sort.MONTH: months, Sort.WEEKDAY: days}
