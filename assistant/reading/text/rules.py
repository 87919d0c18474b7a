"""Exact rules for what a text means, written so that a speaker of the language can write them.

    "snake/viper + bit/bitten"       a word of each group, in any order, not far apart
    "river took/swept | washed off"  words that stand together; "/" between words for one place
    "drown*"                         any word that begins so
    "= enough/basta"                 the whole text, but for manners ("please") at its ends

A rule is of folded words. In a language whose accents make other words (Vietnamese) a rule's
accents count wherever the text has any.
"""

from bisect import bisect_left
from collections import Counter, defaultdict
from collections.abc import Collection, Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import chain
from typing import Generic, TypeVar

from assistant.reading.text.fold import Token, read_tokens, same

WIDTH = 12  # words that a rule's groups may lie apart: a sentence, not a whole story
WHOLE = "="  # in front of a rule: the text is this and nothing else
STEM = 3  # letters that a beginning must have at least
_FEW = 12  # words of one place: gone through faster than looked up

Name = TypeVar("Name", bound=Hashable)


@dataclass(frozen=True, slots=True)
class RulePlace:
    """What may stand in one place of a rule. Tens of thousands are kept: see `_kept`.

    words, stems: folded words, and beginnings of words
    marked: those words with their accents, where they have any; the others as they are
    marked_stems: likewise
    """

    words: Collection[str]
    stems: tuple[str, ...]
    marked: Collection[str]
    marked_stems: tuple[str, ...]

    def fits(self, token: Token, strict: bool) -> bool:
        """Whether a word of a text may stand here; `strict`: with its accents, if any."""
        if not strict:
            return token.text in self.words or token.text.startswith(self.stems)
        spellings = (token.marked, token.text)
        return any(each in self.marked for each in spellings) or any(
            each.startswith(self.marked_stems) for each in spellings
        )


Alternative = tuple[RulePlace, ...]
"""Words that stand together."""


@dataclass(frozen=True, slots=True)
class Rule:
    """One group or several; the text holds one alternative of each. `is_whole`: it is nothing
    but one of them, since a bare word in other talk means something else."""

    groups: tuple[tuple[Alternative, ...], ...]
    is_whole: bool = False

    @property
    def words(self) -> frozenset[str]:
        """All its words that are written out, folded."""
        return frozenset(
            word
            for group in self.groups
            for alternative in group
            for place in alternative
            for word in place.words
        )

    def covers(self, token: Token) -> bool:
        """Whether a word is one of the rule's own."""
        return any(
            place.fits(token, strict=False)
            for group in self.groups
            for alternative in group
            for place in alternative
        )


Rules = tuple[Rule, ...]


def read_rule(text: str) -> Rule:
    """A rule from its written form.

    Raises:
        ValueError: a group or an alternative is empty, a beginning is too short, or a whole
            text is of several groups.
    """
    bare = text.strip()
    is_whole = bare.startswith(WHOLE)
    groups = tuple(_group(part) for part in bare.removeprefix(WHOLE).split("+"))
    if is_whole and len(groups) > 1:
        raise ValueError(f"{text!r}: a whole text is one group, write it without '+'")
    return Rule(groups, is_whole)


@lru_cache(maxsize=4096)
def _group(part: str) -> tuple[Alternative, ...]:
    return tuple(_alternative(each) for each in part.split("|"))


def _alternative(part: str) -> Alternative:
    written = part.split()
    if not written:
        raise ValueError(f"expected words between the signs, got {part!r}")
    return tuple(place for each in written for place in _places(each))


@lru_cache(maxsize=65536)
def _places(written: str) -> tuple[RulePlace, ...]:
    """A written word is one place, or several where its signs part it ("1cm" is two)."""
    rows = [_words(each) for each in written.split("/")]
    if len(rows) == 1:
        return tuple(_place((word,)) for word in rows[0])
    if any(len(row) != 1 for row in rows):
        raise ValueError(f"{written!r}: expected one word on each side of the stroke")
    return (_place(tuple(row[0] for row in rows)),)


_Found = tuple[tuple[int, int], ...]
_Word = tuple[str, str, bool]  # folded, with its accents, whether it is a beginning


def _place(words: Sequence[_Word]) -> RulePlace:
    plain = _kept({text for text, _, is_stem in words if not is_stem})
    marked = _kept({marked for _, marked, is_stem in words if not is_stem})
    stems = tuple(text for text, _, is_stem in words if is_stem)
    marked_stems = tuple(marked for _, marked, is_stem in words if is_stem)
    return RulePlace(
        words=plain,
        stems=stems,
        marked=plain if marked == plain else marked,
        marked_stems=stems if marked_stems == stems else marked_stems,
    )


def _kept(words: set[str]) -> Collection[str]:
    """The words in the least room; the same words are always the same value."""
    return _alike(tuple(sorted(words))) if len(words) <= _FEW else _Many(sorted(words))


@cache
def _alike(words: tuple[str, ...]) -> tuple[str, ...]:
    """One value for all that are equal, while rules are read."""
    return words


class _Many(tuple[str, ...]):
    """Many words in their order, found by halving: a set takes five times the room."""

    __slots__ = ()

    def __contains__(self, word: object) -> bool:
        if not isinstance(word, str):
            return False
        at = bisect_left(self, word)
        return at < len(self) and self[at] == word


@lru_cache(maxsize=65536)
def _words(spelling: str) -> tuple[_Word, ...]:
    is_stem = spelling.endswith("*")
    if spelling.isascii() and spelling.isalpha():  # as most are; cut and folded it is the same
        word = same(spelling.lower())
        return ((word, word, False),)
    found = [t for t in read_tokens(spelling.rstrip("*")) if t.is_word or t.is_number]
    if not found:
        raise ValueError(f"expected a word, got {spelling!r}")
    if is_stem and len(found[-1].text) < STEM:
        raise ValueError(f"{spelling!r} begins too many words, give {STEM} letters")
    last = len(found) - 1
    return tuple(
        (same(token.text), same(token.marked or token.text), is_stem and at == last)
        for at, token in enumerate(found)
    )


# --- many rules at once ----------------------------------------------------------------------


@dataclass(frozen=True, eq=False)
class RuleBook(Generic[Name]):
    """Many rules under names, looked up by the words of a text.

    alternatives: each once
    by_word, by_start: word, or first letters of a beginning -> alternatives that hold it in
        their rarest place, and which place that is
    groups_of: alternative -> the groups it stands in; a group that rules share is one
    keyed: group -> the rules of which it is the rarest, with all their groups
    manners: words that may stand at the ends of a whole text and say nothing
    """

    alternatives: tuple[Alternative, ...]
    by_word: Mapping[str, _Found]
    by_start: Mapping[str, _Found]
    groups_of: tuple[tuple[int, ...], ...]
    keyed: Mapping[int, tuple[tuple[Name, Rule, tuple[int, ...]], ...]]
    manners: frozenset[str] = frozenset()

    def found(self, words: Sequence[Token], strict: bool) -> dict[Name, Rule]:
        """The names of which a rule finds itself in these words, each with such a rule."""
        return dict(self.every(words, strict))

    def every(self, words: Sequence[Token], strict: bool) -> tuple[tuple[Name, Rule], ...]:
        """Every rule that finds itself in these words, under its name."""
        places: dict[int, list[int]] = {}
        for at, token in enumerate(words):
            for each, step in self._holding(token):
                if _stands(self.alternatives[each], words, at - step, strict):
                    for group in self.groups_of[each]:
                        places.setdefault(group, []).append(at)
        return tuple(
            (name, rule)
            for key in places
            for name, rule, groups in self.keyed.get(key, ())
            if all(group in places for group in groups)
            and _is_near(groups, places)
            and (not rule.is_whole or self._is_all(rule, words, strict))
        )

    def places(self, name: Name, words: Sequence[Token], strict: bool) -> frozenset[int]:
        """The places of the words by which rules of this name find themselves."""
        found = (rule for each, rule in self.every(words, strict) if each == name)
        ways = {way for rule in found for group in rule.groups for way in group}
        return frozenset(
            at + step
            for way in ways
            for at in range(len(words))
            if _stands(way, words, at, strict)
            for step in range(len(way))
        )

    def _is_all(self, rule: Rule, words: Sequence[Token], strict: bool) -> bool:
        """Whether an alternative of a rule is the text from end to end, manners aside."""
        return any(
            _stands(alternative, words, at, strict)
            and self._are_manners(words[:at])
            and self._are_manners(words[at + len(alternative) :])
            for group in rule.groups
            for alternative in group
            for at in range(len(words) - len(alternative) + 1)
        )

    def _are_manners(self, words: Sequence[Token]) -> bool:
        return all(token.text in self.manners for token in words)

    def _holding(self, token: Token) -> tuple[tuple[int, int], ...]:
        return self.by_word.get(token.text, ()) + self.by_start.get(token.text[:STEM], ())


RULE_VALUES = (RuleBook, Rule, RulePlace, _Many)
"""Of what a book of rules is made, for who keeps one."""


def forget_written() -> None:
    """Lets go of what was kept for reading rules: after a start no more are read."""
    for each in (_group, _places, _words, _alike, same):
        each.cache_clear()


def bound(rules: Iterable[tuple[Name, Rule]], manners: Iterable[str] = ()) -> RuleBook[Name]:
    """A book of these rules."""
    groups: dict[tuple[Alternative, ...], int] = {}
    keyed: dict[int, list[tuple[Name, Rule, tuple[int, ...]]]] = defaultdict(list)
    for name, rule in rules:
        numbers = tuple(groups.setdefault(group, len(groups)) for group in rule.groups)
        rarest = min(zip(rule.groups, numbers, strict=True), key=lambda each: len(each[0]))
        keyed[rarest[1]].append((name, rule, numbers))
    members: dict[Alternative, set[int]] = defaultdict(set)
    for group, number in groups.items():
        for alternative in group:
            members[alternative].add(number)
    by_word: dict[str, list[tuple[int, int]]] = defaultdict(list)
    by_start: dict[str, list[tuple[int, int]]] = defaultdict(list)
    counts = Counter(chain.from_iterable(_keys(place) for each in members for place in each))
    sums: dict[int, int] = {}  # of places, which many alternatives share
    for number, alternative in enumerate(members):
        step = _rarest(alternative, counts, sums)
        place = alternative[step]
        here = (number, step)  # one value for all words of the place
        for word in place.words:
            by_word[word].append(here)
        for stem in place.stems:
            by_start[stem[:STEM]].append(here)
    shared: dict[_Found, _Found] = {}  # words of one place are found in the same places
    alike: dict[tuple[int, ...], tuple[int, ...]] = {}  # so are alternatives of one group
    groups_of = (tuple(sorted(found)) for found in members.values())
    return RuleBook(
        alternatives=tuple(members),
        by_word=_frozen(by_word, shared),
        by_start=_frozen(by_start, shared),
        groups_of=tuple(alike.setdefault(each, each) for each in groups_of),
        keyed={key: tuple(found) for key, found in keyed.items()},
        manners=frozenset(token.text for word in manners for token in read_tokens(word)),
    )


def _rarest(alternative: Alternative, counts: Counter[str], sums: dict[int, int]) -> int:
    """Which place of an alternative has the words that stand in the fewest."""
    if len(alternative) == 1:
        return 0
    for place in alternative:
        if id(place) not in sums:
            sums[id(place)] = sum(map(counts.__getitem__, _keys(place)))
    return min(range(len(alternative)), key=lambda step: sums[id(alternative[step])])


def _frozen(
    found: Mapping[str, Sequence[tuple[int, int]]], shared: dict[_Found, _Found]
) -> Mapping[str, _Found]:
    """Each list as a tuple; equal ones are one."""
    return {key: shared.setdefault(each, each) for key, each in _tuples(found)}


def _tuples(found: Mapping[str, Sequence[tuple[int, int]]]) -> Iterator[tuple[str, _Found]]:
    return ((key, tuple(each)) for key, each in found.items())


def _keys(place: RulePlace) -> Collection[str]:
    if not place.stems:  # words are there once each
        return place.words
    return frozenset((*place.words, *(stem[:STEM] for stem in place.stems)))


def _stands(alternative: Alternative, words: Sequence[Token], at: int, strict: bool) -> bool:
    if at < 0 or len(words) - at < len(alternative):
        return False
    return all(
        place.fits(token, strict)
        for place, token in zip(alternative, words[at : at + len(alternative)], strict=True)
    )


def _is_near(groups: Sequence[int], places: Mapping[int, Sequence[int]]) -> bool:
    """Whether a place of each group lies within the width of one of the first."""
    first, *others = (places[group] for group in groups)
    return any(
        all(any(abs(at - start) <= WIDTH for at in other) for other in others)
        for start in first
    )
