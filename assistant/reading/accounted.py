"""Whether a text says nothing but what answers are made of: numbers, days, deeds, manners."""

from collections.abc import Iterable
from functools import lru_cache

from assistant.reading.confirms import DONE, NOT_YET, SORTS, is_for_later
from assistant.reading.outcomes import Outcome
from assistant.reading.text.fold import LONGEST_REPLY, TEXTS_IN_HAND, read_tokens
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.short import spelt_out
from assistant.reading.text.spot import items
from assistant.reading.told import read_told

# Words that stand in answers and in cries alike: they account for nothing.
# People and things say nothing without a deed: "my son in the water" is a cry.
_OF_BOTH = frozenset(
    {
        Sort.DEAD,
        Sort.OTHER_UNIT,
        Sort.NOT_KNOWN,
        Sort.OTHER_CALENDAR,
        Sort.NTH,
        Sort.COMPANION,
        Sort.PERSON,
        Sort.THING,
    }
)
# What stands beside a deed says something of its own where it is denied: "my wife is not well".
_DENIALS = frozenset({Sort.NO, Sort.NOT, Sort.NONE})
_OF_ANSWERS = tuple(sort for sort in Sort if sort not in _OF_BOTH)
_OF_ELSE = frozenset({Sort.BESIDE, Sort.UNMEASURED, Sort.LOTS, Sort.LITRE, Sort.PERCENT})
_OF_COUNTS = tuple(sort for sort in _OF_ANSWERS if sort not in _OF_ELSE)


def is_accounted_for(text: str, lexicon: Lexicon, names: Iterable[str] = ()) -> bool:
    """Whether every word is one that answers in this language are made of, or is in one of
    these names (of choices, villages, nurseries); or the words tell a deed and nothing else
    ("my wife covered it with straw")."""
    strange = _strange(text, lexicon)
    if strange is None:
        return False
    if _are_named(strange, names):
        return True
    reading = read_told(text, lexicon, digits=False)
    return reading.outcome is Outcome.UNDERSTOOD and reading.value in (DONE, NOT_YET)


def says_only_answers(text: str, lexicon: Lexicon, names: Iterable[str] = ()) -> bool:
    """Whether every word is one that answers are made of, or is in one of these names; a deed
    among words of its own is none here: a house with 3 buffaloes has no 3 leaves."""
    strange = _strange(text, lexicon)
    return strange is not None and _are_named(strange, names)


def _are_named(words: frozenset[str], names: Iterable[str]) -> bool:
    if not words:
        return True
    return words <= {token.text for name in names for token in read_tokens(name)}


@lru_cache(maxsize=TEXTS_IN_HAND)
def _strange(text: str, lexicon: Lexicon) -> frozenset[str] | None:
    """The words that no answer is made of; None where the text is no answer whatever they are:
    too long, or something beside the deed is denied."""
    if len(text) > LONGEST_REPLY or _denies_beside(text, lexicon):
        return None
    row = items(read_tokens(spelt_out(text, lexicon)), lexicon, _OF_ANSWERS)
    return frozenset(item.text for item in row if item.is_strange)


def _denies_beside(text: str, lexicon: Lexicon) -> bool:
    sorts = {item.sort for item in items(read_tokens(text), lexicon, _OF_ANSWERS)}
    return Sort.BESIDE in sorts and bool(sorts & _DENIALS)


def says_only_a_count(text: str, lexicon: Lexicon) -> bool:
    """Whether every word is one that a count of leaves is told with: "3 kids with me" counts
    something else."""
    row = items(read_tokens(spelt_out(text[:LONGEST_REPLY], lexicon)), lexicon, _OF_COUNTS)
    return not any(item.is_strange for item in row)


def names_a_thing(text: str, lexicon: Lexicon) -> bool:
    """Whether a thing of the work is named: straw, a sack, buckets; not by a number, which in
    some languages is a word of other things, too ("matatu" is three, and a bus)."""
    row = items(read_tokens(text[:LONGEST_REPLY]), lexicon, (Sort.NUMBER, Sort.THING))
    return any(item.sort is Sort.THING for item in row)


def has_name(text: str, names: Iterable[str]) -> bool:
    """Whether one of these names stands in a text, word for word."""
    words = " ".join(token.text for token in read_tokens(text[:LONGEST_REPLY]))
    called = (" ".join(token.text for token in read_tokens(name)) for name in names)
    return any(f" {name} " in f" {words} " for name in called if name)


def denies_or_turns(text: str, lexicon: Lexicon) -> bool:
    """Whether a text says not, none or about, or has a "but" in it."""
    found = read_tokens(text[:LONGEST_REPLY])
    row = items(found, lexicon, (*sorted(_DENIALS), Sort.NOT_YET, Sort.ROUGH))
    denies = any(item.sort is not None for item in row)
    return denies or lexicon.turns(tuple(token.text for token in found))


def is_to_come(text: str, lexicon: Lexicon) -> bool:
    """Whether a text is of a day to come: "4 tomorrow", "it will be 4"."""
    return is_for_later(items(read_tokens(text[:LONGEST_REPLY]), lexicon, SORTS))


def is_of_past(text: str, lexicon: Lexicon) -> bool:
    """Whether a text tells of a time gone by: "it was green last week" is not how it looks."""
    row = items(read_tokens(text[:LONGEST_REPLY]), lexicon, (Sort.LAST, Sort.AGO))
    return any(item.sort in (Sort.LAST, Sort.AGO) for item in row)


def says_not_known(text: str, lexicon: Lexicon) -> bool:
    """Whether a text says "I don't know" and nothing else."""
    if len(text) > LONGEST_REPLY:
        return False
    row = items(
        read_tokens(text), lexicon, (Sort.NOT_KNOWN, Sort.FILLER, Sort.ARTICLE, Sort.SORRY)
    )
    return any(item.sort is Sort.NOT_KNOWN for item in row) and all(
        not item.is_strange and not item.is_digits for item in row
    )
