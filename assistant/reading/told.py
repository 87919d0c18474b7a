"""Whether a task was done, from a reply to the text that asked for it.

Stricter than the answer to a question that waits for a yes: such a text is followed by all
kinds of talk, and what is wrongly taken as done moves a plan and ends the asking. Sure is only
what says nothing else.
"""

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from functools import lru_cache

from assistant.reading.confirms import (
    DONE,
    FORGIVING,
    NO,
    NOT_YET,
    SORTS,
    YES,
    is_for_later,
    read_confirm,
    told_by_rule,
)
from assistant.reading.dates import read_date
from assistant.reading.outcomes import (
    Outcome,
    Reading,
    Reason,
    Wish,
    again,
    confirm,
    understood,
)
from assistant.reading.text.fold import (
    LONGEST_REPLY,
    TEXTS_IN_HAND,
    TEXTS_KEPT,
    Token,
    read_tokens,
)
from assistant.reading.text.lexicon import DEEDS, OTHER, Lexicon, Sort
from assistant.reading.text.rules import Rule
from assistant.reading.text.short import spelt_out
from assistant.reading.text.spot import Item, items

_FIRM = (Sort.DONE, Sort.DEED, Sort.NOT_YET)
MOST_CHOICES = 3  # digits that a task offers
_HOUR = re.compile(r"[1-9]\d?[.:][0-5]\d")
_TICKS = "✅✔☑✓"
_TALK = (Sort.FARM, Sort.SEEDS, Sort.UNIT)  # "I have the seed", "no water"
_MEASURES = frozenset(
    {
        Sort.BESIDE,
        Sort.COMPANION,
        Sort.PERSON,
        Sort.THING,
        Sort.OTHER_UNIT,
        Sort.LITRE,
        Sort.LENGTH,
        Sort.CLOCK,
        Sort.ALL,
    }
)
_COUNTED = _MEASURES | {Sort.FARM, Sort.SEEDS, Sort.UNIT}
_SIZES = frozenset(
    {Sort.OTHER_UNIT, Sort.LITRE, Sort.LENGTH, Sort.CLOCK, Sort.UNIT, Sort.PERSON}
)
_PARTS = frozenset({Sort.FRACTION, Sort.DEAD, Sort.NONE})  # half of it, rotten: not done
_AGAINST = frozenset(
    {
        Sort.NOT,
        Sort.NO,
        Sort.NOT_YET,
        Sort.NOT_KNOWN,
        Sort.COMING_VERB,
        Sort.EDGE,
        Sort.ROUGH,
        Sort.RANGE,
        Sort.SORRY,
        *_PARTS,
    }
)
_OF_DEEDS = frozenset({Sort.DEAD, Sort.RANGE, Sort.NO, Sort.NONE, Sort.ROUGH})
_ROW = (*SORTS, *_TALK, *sorted(_MEASURES | _PARTS))
_OF_DAYS = (
    Sort.DAY,
    Sort.EITHER_DAY,
    Sort.MONTH,
    Sort.WEEKDAY,
    Sort.NEXT,
    Sort.LAST,
    Sort.THIS,
    Sort.AGO,
    Sort.LATER,
    Sort.EDGE,
    Sort.DAYS,
    Sort.MONTH_WORD,
    Sort.DATE_WORD,
    Sort.YEAR_WORD,
    Sort.ORDINAL,
    Sort.CLOCK,
    Sort.NUMBER,
    Sort.ARTICLE,
    Sort.JOIN,
    Sort.FILLER,
)


@lru_cache(maxsize=TEXTS_KEPT)
def read_told(text: str, lexicon: Lexicon, digits: bool = True) -> Reading[str]:
    """As `read_confirm`; to be confirmed where other words stand beside the answer ("done with
    ploughing", "no money for seed"), or where it only says that the text was read ("ok").

    What may stand beside a deed and says nothing of its own (straw, at dawn, 12 kg) is passed
    over; a deed may be told in words that stand apart ("the seed is in water").
    """
    text = spelt_out(text[:LONGEST_REPLY], lexicon)
    found = read_tokens(text)
    row = row_of(found, lexicon)
    by_deed = _by_deed(found, row, lexicon)
    if by_deed is not None:
        return by_deed
    kept = _without_amounts(row, lexicon.places(found))
    if len(kept) == len(row) or any(item.is_digits for item in kept):
        left = text
    else:
        left = " ".join(item.spelt for item in kept)
    reading = read_confirm(left, lexicon, digits)
    if reading.value is None or any(item.is_digits for item in kept):
        return reading
    if reading.value in (YES, DONE) and _may_be_another(found, row, lexicon):
        return _unsure(reading, Reason.NOT_READ)
    if reading.value == YES and _thanks(row, lexicon):
        return _unsure(reading, Reason.ROUGH)
    if reading.value == NO and len(kept) < len(row):  # "no plastic", "my wife is not well"
        return _unsure(reading, Reason.NOT_READ)
    return _sure_or_not(reading, kept, lexicon)


def row_of(found: tuple[Token, ...], lexicon: Lexicon) -> tuple[Item, ...]:
    """The words of a text as what they mean beside a deed."""
    return items(found, lexicon, _ROW, FORGIVING)


def _sure_or_not(
    reading: Reading[str], row: tuple[Item, ...], lexicon: Lexicon
) -> Reading[str]:
    says_more = any(item.is_strange or item.sort in _PARTS for item in row)
    if says_more or _only_talks(row) or _perhaps_another(row):
        return _unsure(reading, Reason.NOT_READ)
    if reading.outcome is Outcome.CONFIRM:
        put_off = reading.value == NOT_YET and reading.reason is Reason.ROUGH  # "tomorrow"
        sure = put_off or reading.reason is Reason.NOT_READ  # strange there were seeds only
        return replace(reading, outcome=Outcome.UNDERSTOOD) if sure else reading
    if reading.value == YES and not _says_yes(row, lexicon):
        return _unsure(reading, Reason.ROUGH)
    return reading


def _by_deed(
    found: tuple[Token, ...], row: tuple[Item, ...], lexicon: Lexicon
) -> Reading[str] | None:
    """What the deeds of a text say by themselves; None where its other words decide."""
    if _is_of_a_person(row):
        return again(Reason.NOT_READ)
    names_deed = any(item.sort is Sort.DEED for item in row) or told_by_rule(found, lexicon)
    if names_deed and says_how_many_of(row):
        return confirm(DONE, lexicon.answers[DONE], Reason.TWO_VALUES)
    if _tells_by_rule(found, row, lexicon):
        return understood(DONE, lexicon.answers[DONE])
    return None


def says_how_many_of(row: tuple[Item, ...]) -> bool:
    """ "3 plots of the 4": two numbers of one thing are a part of it."""
    counts = [
        item
        for at, item in enumerate(row)
        if item.is_digits and not _SIZES & {each.sort for each in row[max(at - 1, 0) : at + 2]}
    ]
    return len({item.key for item in counts}) > 1


def _is_of_a_person(row: tuple[Item, ...]) -> bool:
    """ "My mother does not come up" is of her and not of the shoots."""
    deeds = {item.key for item in row if item.sort is Sort.DEED}
    return deeds == {"up"} and any(item.sort is Sort.PERSON for item in row)


def _may_be_another(found: tuple[Token, ...], row: tuple[Item, ...], lexicon: Lexicon) -> bool:
    """Whether what was done may be of another field, or not wholly done; or a thing is done
    with ("the soil is finished"), since no deed is named."""
    codes = {code for code, _ in told_by_rule(found, lexicon)}
    sorts = {item.sort for item in row}
    names_deed = Sort.DEED in sorts or bool(codes & DEEDS)
    return OTHER in codes or (bool(sorts & {Sort.THING, Sort.PERSON}) and not names_deed)


@lru_cache(maxsize=TEXTS_IN_HAND)
def is_of_other(text: str, lexicon: Lexicon) -> bool:
    """Whether words say that a deed is another's, of another thing, or not wholly done yet."""
    found = read_tokens(spelt_out(text[:LONGEST_REPLY], lexicon))
    return any(code == OTHER for code, _ in told_by_rule(found, lexicon))


def _tells_by_rule(found: tuple[Token, ...], row: tuple[Item, ...], lexicon: Lexicon) -> bool:
    """Whether a deed is told in words that stand apart, and nothing else is said."""
    told = told_by_rule(found, lexicon)
    rules = [rule for code, rule in told if code in DEEDS]
    places = lexicon.places(found)
    if (
        not rules
        or any(code == OTHER for code, _ in told)
        or any(
            is_against(item, lexicon, rules)
            and not _only_joins(row, at, lexicon)
            and not (item.sort is Sort.ROUGH and item.tokens[0].at in places)
            for at, item in enumerate(row)
        )
        or asks(row)
        or is_for_later(row)
    ):
        return False
    kept = (item for item in _without_amounts(row, places) if not _is_many(item))
    return all(
        item.sort is not None
        or not (item.is_strange or item.is_digits)
        or _is_covered(item, rules)
        for item in kept
    )


def is_against(item: Item, lexicon: Lexicon, rules: Sequence[Rule]) -> bool:
    """Not the words that are only little ones in most sentences ("on a semé" is no range), nor
    what a deed is told with: dead plants that were replaced, "no cover since seven"."""
    little = item.sort is Sort.RANGE and lexicon.has(Sort.FILLER, item.phrase)
    of_deed = item.sort in _OF_DEEDS and all(
        any(rule.covers(token) for rule in rules) for token in item.tokens
    )
    return item.sort in _AGAINST and not little and not of_deed


def _only_joins(row: tuple[Item, ...], at: int, lexicon: Lexicon) -> bool:
    """ "Until the mats were wet", "with (से) straw": no range where no number stands beside;
    "or" stays one."""
    item = row[at]
    if lexicon.turns(item.phrase):
        return False
    joins = item.sort is Sort.RANGE or (item.sort is Sort.ROUGH and lexicon.joins(item.phrase))
    beside = row[max(at - 1, 0) : at] + row[at + 1 : at + 2]
    return joins and not any(each.is_digits or each.sort is Sort.NUMBER for each in beside)


def _is_covered(item: Item, rules: Sequence[Rule]) -> bool:
    """Whether a word of an item is one of these rules' own."""
    return any(rule.covers(token) for rule in rules for token in item.tokens)


def asks(row: tuple[Item, ...]) -> bool:
    """Whether a question mark stands in it."""
    return any(item.is_mark("?") for item in row)


def _without_amounts(row: tuple[Item, ...], places: frozenset[int]) -> tuple[Item, ...]:
    """Without what may stand beside a deed, numbers that are of such a thing (12 kg), and words
    that only say where, or with whom ("behind the old chapel")."""
    return tuple(
        item
        for at, item in enumerate(row)
        if item.sort not in _MEASURES
        and not (item.is_digits and _is_amount(row, at))
        and not (item.is_strange and item.tokens[0].at in places)
    )


def _is_many(item: Item) -> bool:
    """A number beside a deed that is told is of what was done, or an hour (7.30); 1 and 2 may
    be a choice."""
    if not item.is_digits:
        return False
    return bool(_HOUR.fullmatch(item.key)) or (
        item.key.isdigit() and int(item.key) > MOST_CHOICES
    )


def _is_amount(row: tuple[Item, ...], at: int) -> bool:
    beside = row[max(at - 1, 0) : at] + row[at + 1 : at + 2]
    return any(item.sort in _COUNTED for item in beside)


@lru_cache(maxsize=TEXTS_KEPT)
def read_told_day(text: str, lexicon: Lexicon, today: date) -> date | None:
    """The day gone by that words name which say nothing else. Of a word for yesterday and
    tomorrow alike (kal) the former: it tells of what was done."""
    row = items(read_tokens(text), lexicon, (Sort.NOT_YET, *_OF_DAYS))
    if any(item.sort is Sort.NOT_YET for item in row):  # "nanti sore": later today
        return None
    if text.isdigit() or any(item.is_strange or _is_week(item) for item in row):
        return None
    reading = read_date(text, lexicon, today, past=True)
    if reading.outcome is Outcome.UNDERSTOOD:
        return reading.value
    if reading.reason is not Reason.AMBIGUOUS or len(reading.options) != 2:
        return None
    gone = [each.value for each in reading.options if each.value < today]
    return gone[0] if len(gone) == 1 else None


def _is_week(item: Item) -> bool:
    return item.sort is Sort.EDGE and len(item.phrase) > 1


@lru_cache(maxsize=TEXTS_KEPT)
def is_no_day(text: str, lexicon: Lexicon) -> bool:
    """Whether words with a day's name in them name a week ("minggu ini": minggu is Sunday)."""
    return lexicon.has(Sort.EDGE, tuple(token.text for token in read_tokens(text)))


def _unsure(reading: Reading[str], reason: Reason) -> Reading[str]:
    return replace(reading, outcome=Outcome.CONFIRM, reason=reason)


def _only_talks(row: tuple[Item, ...]) -> bool:
    """No word for done or not yet, and things of the farm beside a yes or no."""
    sorts = {item.sort for item in row}
    return not sorts & {*_FIRM} and bool(sorts & {*_TALK})


def _perhaps_another(row: tuple[Item, ...]) -> bool:
    """A misspelt answer beside other words: nimenunua is bought, nimefunua uncovered."""
    return len(row) > 1 and any(item.misspelt for item in row)


def _thanks(row: tuple[Item, ...], lexicon: Lexicon) -> bool:
    """Yes and thanks are the manners of who has read a text: nothing is said to be done."""
    words = " ".join(item.text for item in row).split()
    thanks = {phrase for phrase in lexicon.wishes[Wish.THANKS].words if phrase}
    return any(
        tuple(words[at : at + len(phrase)]) == phrase
        for phrase in thanks
        for at in range(len(words))
    )


@lru_cache(maxsize=TEXTS_IN_HAND)
def begins_with_yes(text: str, lexicon: Lexicon) -> bool:
    """Whether the first words are a yes, or an "ok"."""
    row = row_of(read_tokens(text[:LONGEST_REPLY]), lexicon)
    return bool(row) and row[0].sort is Sort.YES


def _says_yes(row: tuple[Item, ...], lexicon: Lexicon) -> bool:
    """Whether a yes is one: "ok" may only mean that the text was read."""
    return any(
        lexicon.has(Sort.PLAIN_YES, item.phrase[:1]) or item.text in _TICKS
        for item in row
        if item.sort is Sort.YES
    )
