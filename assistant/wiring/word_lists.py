"""A word list from its parsed table: checked whole, folded, with Babel's month and day names.

Babel (CLDR) has the names for all nine languages; the lists add how people really type them.
English names are understood in every language.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType
from typing import Any

from assistant.agronomy.units import UNIT_KEYS
from assistant.reading.outcomes import Wish
from assistant.reading.text.fold import read_tokens, same
from assistant.reading.text.lexicon import (
    BESIDE_A_DEED,
    DEEDS,
    TOLD,
    Lexicon,
    Phrase,
    Sort,
    WishWords,
)
from assistant.reading.text.near import Affixes
from assistant.reading.text.phrases import PackedPhrases
from assistant.reading.text.rules import Rule, bound, read_rule
from assistant.wiring.calendar_names import CalendarNames, open_calendar_names
from assistant.wiring.deed_lists import DeedList

_NUMBERS = frozenset(
    {
        Sort.NUMBER,
        Sort.TIMES,
        Sort.FRACTION,
        Sort.AND_HALF,
        Sort.SHIFT,
        Sort.LENGTH,
        Sort.LITRE,
        Sort.DAY,
        Sort.EITHER_DAY,
        Sort.MONTH,
        Sort.WEEKDAY,
        Sort.NTH,
    }
)
_KEYED = _NUMBERS | {Sort.UNIT, Sort.DAYS, Sort.ARTICLE, Sort.DEED}
_PLAIN = frozenset(Sort) - _KEYED | {Sort.ARTICLE}
_GRAMMAR = (
    "times_first",
    "fraction_adds",
    "unit_first",
    "month_first",
    "next_is_coming",
    "edge_after",
    "is_tonal",
    "no_is_not",
    "mixes_english",
)
_SECTIONS = _KEYED | frozenset(
    {"shown", "grammar", "words", "stop_not", "wishes", "choice", "danger", "told"}
)
_AFFIXES = ("prefixes", "suffixes")
_SHOWN = ("locale", "decimal", "groups", "units", "answers", "wishes")
_ANSWERS = ("yes", "no", "done", "not_yet")
_DIGITS = "0123456789"
_SHOWN_UNITS = ("hectare", "acre", "are", "m2")  # every list names these
_NAMES: Mapping[str, str] = MappingProxyType({"sqft": "sq ft", "sqyd": "sq yd"})  # else its key
_MIXED = (
    Sort.NUMBER,
    Sort.TIMES,
    Sort.FRACTION,
    Sort.UNIT,
    Sort.LENGTH,
    Sort.PERCENT,
    Sort.ABOUT,
    Sort.ROUGH,
    Sort.DAY,
    Sort.YES,
    Sort.NO,
    Sort.DONE,
    Sort.DEED,
    Sort.NOT_YET,
    Sort.NOT_KNOWN,
)
# Signs say the same in every language.
_SIGNS: Mapping[Sort, str] = MappingProxyType({Sort.YES: "👍👌✅✔☑✓🙏", Sort.NO: "👎❌✖✗🚫❎"})

_Table = Mapping[str, Any]


_Phrases = tuple[tuple[tuple[str, str], ...], ...]  # their words, plain and with accents


@dataclass
class _Draft:
    """A word list in the making, and all that is wrong with it."""

    faults: list[str] = field(default_factory=list)
    phrases: dict[Sort, dict[Phrase, str]] = field(
        default_factory=lambda: {sort: {} for sort in Sort}
    )
    wishes: dict[Wish, WishWords] = field(default_factory=dict)
    choices: dict[str, tuple[str, ...]] = field(default_factory=dict)
    danger: tuple[str, ...] = ()
    told: list[tuple[str, Rule]] = field(default_factory=list)
    short: Mapping[str, str] = field(default_factory=dict)
    joining: _Phrases = ()
    placing: _Phrases = ()
    placed: _Phrases = ()
    turning: frozenset[str] = frozenset()
    marked: dict[tuple[Sort | Wish, Phrase], set[Phrase]] = field(default_factory=dict)
    is_tonal: bool = False  # else nobody asks for accents, and they are not noted

    def note(self, group: Sort | Wish, phrase: Phrase, spelling: Phrase) -> None:
        """A phrase is written so, with its accents."""
        if self.is_tonal:
            self.marked.setdefault((group, phrase), set()).add(spelling)

    def section(self, table: _Table, name: str) -> _Table:
        """A section that must be there."""
        section = table.get(name)
        if isinstance(section, Mapping):
            return section
        self.faults.append(f"[{name}] is missing")
        return {}

    def words(self, value: object, place: str, group: Sort | Wish) -> tuple[Phrase, ...]:
        """The phrases of a list of words, noted with their accents."""
        if not isinstance(value, list) or not all(isinstance(text, str) for text in value):
            self.faults.append(f"{place}: expected a list of words in quotes")
            return ()
        phrases = []
        for text in value:
            if text.isascii() and text.replace(" ", "").isalpha():  # cut it is the same
                phrase = tuple(map(same, text.lower().split()))
                phrases.append(phrase)
                self.note(group, phrase, phrase)
                continue
            found = read_tokens(text)
            phrase = tuple(same(token.text) for token in found)
            if not phrase:
                self.faults.append(f"{place}: {text!r} holds nothing to look for")
                continue
            phrases.append(phrase)
            self.note(group, phrase, tuple(token.marked for token in found))
        return tuple(phrases)

    def put(self, sort: Sort, key: str, spellings: object) -> None:
        """Phrases of one meaning. A phrase with two meanings in one sort is a fault."""
        place = f"[{sort}] {key}".strip()
        for phrase in self.words(spellings, place, sort):
            other = self.phrases[sort].setdefault(phrase, key)
            if other != key:
                self.faults.append(f"{place}: {' '.join(phrase)!r} stands for {other} too")

    def taken(self) -> set[Phrase]:
        """Every phrase so far."""
        return {phrase for phrases in self.phrases.values() for phrase in phrases}


def read_word_list(
    language: str,
    table: _Table,
    english: Lexicon | None = None,
    deeds: DeedList | None = None,
) -> tuple[Lexicon | None, tuple[str, ...]]:
    """The word list of a parsed table, and all its faults (then there is no word list).

    `english`: its words are understood too, where the list says that people mix them in.
    `deeds`: how deeds are told.
    """
    draft = _Draft(is_tonal=bool(table.get("grammar", {}).get("is_tonal", False)))
    for name in sorted(set(table) - _SECTIONS):
        draft.faults.append(f"[{name}]: no such section")
    _read_phrases(table, draft)
    _read_wishes(draft.section(table, "wishes"), draft)
    _read_choices(table.get("choice", {}), draft)
    _read_told(table.get("told", {}), draft)
    _add_deeds(deeds or DeedList(), draft)
    _read_danger(table.get("danger", {}).get("words"), draft)
    shown, grammar = draft.section(table, "shown"), draft.section(table, "grammar")
    _check_shown(shown, draft)
    for name in sorted(set(grammar) - {*_GRAMMAR, *_AFFIXES}):
        draft.faults.append(f"[grammar] {name}: no such rule")
    if draft.faults:
        return None, tuple(draft.faults)
    _add_signs(draft)
    _add_calendar(draft, str(shown["locale"]))
    _add_units(draft, shown)
    flags = {name: bool(grammar.get(name, False)) for name in _GRAMMAR}
    own = _known(draft)
    if flags.pop("mixes_english") and english is not None:
        _add_english(draft, english)
    not_stop = draft.words(table.get("stop_not", {}).get("words", []), "[stop_not]", Wish.STOP)
    affixes = {name: _affixes(grammar.get(name, ())) for name in _AFFIXES}
    return _frozen(language, shown, flags, affixes, draft, not_stop, own), ()


def _affixes(listed: Sequence[str]) -> tuple[str, ...]:
    folded = {token.text for text in listed for token in read_tokens(text)}
    return tuple(sorted(folded, key=len, reverse=True))


def _frozen(
    language: str,
    shown: _Table,
    flags: Mapping[str, Any],  # by the names of its fields
    affixes: Mapping[str, tuple[str, ...]],
    draft: _Draft,
    not_stop: tuple[Phrase, ...],
    own: frozenset[str],
) -> Lexicon:
    marked = {
        (group, phrase): tuple(sorted(spellings))
        for (group, phrase), spellings in draft.marked.items()
        if group not in BESIDE_A_DEED
    }
    known = _known(draft)
    return Lexicon(
        language=language,
        locale=str(shown["locale"]),
        decimal=str(shown["decimal"]),
        groups=tuple(shown["groups"]),
        digits=str(shown.get("digits", _DIGITS)),
        own_digits=str(shown.get("own_digits", shown.get("digits", _DIGITS))),
        phrases=MappingProxyType({sort: _listed(sort, draft) for sort in draft.phrases}),
        marked=MappingProxyType(marked),
        unit_names=MappingProxyType(_unit_names(shown)),
        answers=MappingProxyType(dict(shown["answers"])),
        wish_names=MappingProxyType({wish: shown["wishes"][wish.value] for wish in Wish}),
        wishes=MappingProxyType(draft.wishes),
        choices=MappingProxyType(draft.choices),
        told=bound(draft.told),
        short=MappingProxyType(dict(draft.short)),
        joining=draft.joining,
        placing=draft.placing,
        placed=draft.placed,
        turning=draft.turning,
        affixes=Affixes(**affixes),
        stop_not=not_stop,
        danger=draft.danger,
        known=own if known == own else known,
        own=own,
        own_units=MappingProxyType({}),
        **flags,
    )


def _listed(sort: Sort, draft: _Draft) -> Mapping[Phrase, str]:
    """The phrases of a sort; packed where they are thousands."""
    phrases = draft.phrases[sort]
    if sort not in BESIDE_A_DEED:
        return MappingProxyType(phrases)
    spelt = (
        (phrase, spelling)
        for (group, phrase), spellings in draft.marked.items()
        if group is sort
        for spelling in spellings
    )
    return PackedPhrases.of(phrases, spelt)


def _known(draft: _Draft) -> frozenset[str]:
    """Every single word of the list."""
    lists = [tuple(phrases) for phrases in draft.phrases.values()]
    for wish in draft.wishes.values():
        lists += [wish.words, *(group for sentence in wish.sentences for group in sentence)]
    listed = {word for phrases in lists for phrase in phrases for word in phrase}
    return frozenset(listed.union(*(rule.words for _, rule in draft.told)))


# --- phrases ---------------------------------------------------------------------------------


def _read_phrases(table: _Table, draft: _Draft) -> None:
    for name, spellings in draft.section(table, "words").items():
        if name in {sort.value for sort in _PLAIN}:
            draft.put(Sort(name), "", spellings)
        else:
            draft.faults.append(f"[words] {name}: no such kind of word")
    for sort in sorted(_KEYED):
        for key, spellings in table.get(sort.value, {}).items():
            if not _is_key(sort, key):
                draft.faults.append(f"[{sort}] {key!r} is no key that this section knows")
            draft.put(sort, key, spellings)


def _is_key(sort: Sort, key: str) -> bool:
    if sort is Sort.ARTICLE:
        return key == "one"
    if sort is Sort.UNIT:
        return all(part in UNIT_KEYS or part in ("after", "one") for part in key.split())
    if sort is Sort.DEED:
        return set(key.split()) <= DEEDS
    if sort is Sort.DAYS and key == "month":
        return True
    try:
        Fraction(key)
    except (ValueError, ZeroDivisionError):
        return False
    return True


# --- wishes ----------------------------------------------------------------------------------


def _read_wishes(section: _Table, draft: _Draft) -> None:
    for name in sorted(set(section) - {wish.value for wish in Wish}):
        draft.faults.append(f"[wishes.{name}]: no such wish")
    taken: dict[Phrase, Wish] = {}
    for wish in Wish:
        own, place = section.get(wish.value, {}), f"[wishes.{wish}]"
        words = draft.words(own.get("words", []), f"{place} words", wish)
        anywhere = draft.words(own.get("anywhere", []), f"{place} anywhere", wish)
        if not words:
            draft.faults.append(f"{place} needs at least one word")
        for phrase in words:
            if taken.setdefault(phrase, wish) is not wish:
                draft.faults.append(f"{place} {' '.join(phrase)!r} is also {taken[phrase]}")
        for phrase in sorted(set(anywhere) - set(words)):
            draft.faults.append(
                f"{place} anywhere: {' '.join(phrase)!r} is not among the words"
            )
        sentences = _sentences(own.get("sentences", []), wish, draft)
        draft.wishes[wish] = WishWords(words, sentences, anywhere)


def _sentences(
    rows: object, wish: Wish, draft: _Draft
) -> tuple[tuple[tuple[Phrase, ...], ...], ...]:
    """Rows of groups; the words of a group stand in one string with | between."""
    place = f"[wishes.{wish}] sentences"
    if not isinstance(rows, list) or not all(isinstance(row, list) for row in rows):
        draft.faults.append(f"{place}: expected a list of lists")
        return ()
    return tuple(
        tuple(draft.words(str(group).split("|"), place, wish) for group in row) for row in rows
    )


# --- choices ---------------------------------------------------------------------------------


def _read_choices(section: _Table, draft: _Draft) -> None:
    """What a choice of a list is called besides its label, as in other letters."""
    for code, spellings in section.items():
        if not isinstance(spellings, list) or not all(map(_is_text, spellings)):
            draft.faults.append(f"[choice] {code}: expected a list of words in quotes")
            continue
        draft.choices[code] = tuple(spellings)


def _read_told(section: _Table, draft: _Draft) -> None:
    """How what was done is told in words that stand apart: "seed + in water"."""
    for code, lines in section.items():
        if code not in TOLD:
            draft.faults.append(f"[told] {code}: no such deed; known are {', '.join(TOLD)}")
            continue
        rules = [_rule(str(line), f"[told] {code}", draft) for line in lines]
        draft.told += [(code, rule) for rule in rules if rule is not None]


def _longest_first(phrases: Iterable[str]) -> _Phrases:
    rows = ((_folded(word) for word in phrase.split()) for phrase in phrases)
    found = (tuple(each for word in row for each in word) for row in rows)
    return tuple(sorted(found, key=len, reverse=True))


def _add_deeds(deeds: DeedList, draft: _Draft) -> None:
    draft.faults += [f"deeds: {fault}" for fault in deeds.faults]
    draft.told += deeds.rules
    draft.short = deeds.short
    draft.joining, draft.placing, draft.placed = map(
        _longest_first, (deeds.joining, deeds.placing, deeds.placed)
    )
    draft.turning = frozenset(plain for word in deeds.turning for plain, _ in _folded(word))
    for sort, spellings in deeds.phrases.items():
        for spelling in spellings:
            words = [word for each in spelling.split() for word in _folded(each)]
            if words:
                phrase, marked = zip(*words, strict=True)
                draft.phrases[sort].setdefault(phrase, "")
                draft.note(sort, phrase, marked)


@lru_cache(maxsize=65536)
def _folded(word: str) -> tuple[tuple[str, str], ...]:
    """A word folded, and with its accents; several where its signs part it."""
    if word.isascii() and word.isalpha():  # as most are; cut and folded it is the same
        plain = same(word.lower())
        return ((plain, plain),)
    return tuple((same(token.text), token.marked) for token in read_tokens(word))


def forget_folded() -> None:
    """Lets go of what was kept for reading the lists."""
    _folded.cache_clear()


def _rule(line: str, place: str, draft: _Draft) -> Rule | None:
    try:
        return read_rule(line)
    except ValueError as fault:
        draft.faults.append(f"{place}: {fault}")
        return None


def _read_danger(spellings: object, draft: _Draft) -> None:
    """Words of a call for help that cannot wait; missing where a language has none yet."""
    if spellings is None:
        return
    if not isinstance(spellings, list) or not all(map(_is_text, spellings)):
        draft.faults.append("[danger] words: expected a list of words in quotes")
        return
    draft.danger = tuple(spellings)


def _is_text(text: object) -> bool:
    return isinstance(text, str) and bool(read_tokens(text))


# --- shown words -----------------------------------------------------------------------------


def _check_shown(shown: _Table, draft: _Draft) -> None:
    """Everything that is shown must be there, since a reply is read back in it."""
    wanted = {
        "[shown]": (shown, _SHOWN),
        "[shown.units]": (shown.get("units", {}), _SHOWN_UNITS),
        "[shown.answers]": (shown.get("answers", {}), _ANSWERS),
        "[shown.wishes]": (shown.get("wishes", {}), tuple(wish.value for wish in Wish)),
    }
    for place, (section, names) in wanted.items():
        draft.faults += [f"{place} {name} is missing" for name in names if name not in section]
    for key in sorted(set(shown.get("units", {})) - UNIT_KEYS):
        draft.faults.append(f"[shown.units] {key}: no such unit")
    for name in ("digits", "own_digits"):
        if len(str(shown.get(name, _DIGITS))) != len(_DIGITS):
            draft.faults.append(f"[shown] {name}: expected the ten digits from 0 to 9")


def _unit_names(shown: _Table) -> dict[str, tuple[str, str]]:
    """One and many of each unit; a unit that the list does not name is shown by its key."""
    names = {key: (_NAMES.get(key, key),) * 2 for key in UNIT_KEYS}
    return names | {key: (name[0], name[-1]) for key, name in shown["units"].items()}


# --- what every list has ---------------------------------------------------------------------


def _add_signs(draft: _Draft) -> None:
    for sort, signs in _SIGNS.items():
        draft.put(sort, "", list(signs))


def _add_english(draft: _Draft, english: Lexicon) -> None:
    """English numbers, units, days and answers, unless one of their words means something."""
    own = {word for phrase in draft.taken() for word in phrase}
    for sort in _MIXED:
        for phrase, key in english.phrases[sort].items():
            if own.isdisjoint(phrase):
                draft.phrases[sort][phrase] = key


def _add_units(draft: _Draft, shown: _Table) -> None:
    """What is shown can be typed; a unit's key is understood where it is no other word."""
    taken = draft.taken()
    names = [(key, [key]) for key in sorted(UNIT_KEYS) if (key,) not in taken]
    names += [(key, [name]) for key, name in _NAMES.items()]
    for key, spellings in (*names, *shown["units"].items()):
        for phrase in draft.words(spellings, f"[shown.units] {key}", Sort.UNIT):
            draft.phrases[Sort.UNIT].setdefault(phrase, key)


def _add_calendar(draft: _Draft, locale: str) -> None:
    """Month and day names: the list's own, then the language's in Babel, then English."""
    own = open_calendar_names(locale)
    both = set(_phrases_of(own[Sort.MONTH])) & set(_phrases_of(own[Sort.WEEKDAY]))  # Mar
    days = {p for sort in (Sort.MONTH, Sort.WEEKDAY) for p in draft.phrases[sort]}
    _add_names(draft, own, days | both)
    _add_names(draft, open_calendar_names("en"), draft.taken() | both)


def _add_names(draft: _Draft, names: CalendarNames, taken: set[Phrase]) -> None:
    for sort, rows in names.items():
        for name, key in rows:
            for phrase in draft.words([name], f"[{sort}]", sort):
                if phrase not in taken:
                    draft.phrases[sort].setdefault(phrase, key)


def _phrases_of(rows: Sequence[tuple[str, str]]) -> Iterator[Phrase]:
    return (tuple(token.text for token in read_tokens(name)) for name, _ in rows)
