"""How many, and how many litres: one number, not below nothing."""

from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from assistant.reading.numbers import NUMBER_SORTS, Amount, amounts, is_broken, number_items
from assistant.reading.outcomes import Reading, Reason, again, confirm, slipped, understood
from assistant.reading.pieces import Row
from assistant.reading.text.echo import number_words
from assistant.reading.text.fold import (
    LONGEST_REPLY,
    TEXTS_IN_HAND,
    has_other_digits,
    read_tokens,
)
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.spot import Item, items

BIGGEST_COUNT = 10_000_000
SMALLEST_PAIL_L, BIGGEST_PAIL_L = 1, 60  # nobody lifts more; a smaller one is a cup
BIGGEST_L = 1000

_SORTS = (
    *NUMBER_SORTS,
    Sort.NONE,
    Sort.NOT_KNOWN,
    Sort.SORRY,
    Sort.NO,
    Sort.NOT,
    Sort.ROUGH,
    Sort.RANGE,
    Sort.OF,
    Sort.ABOUT,
    Sort.ARTICLE,
    Sort.FARM,
    Sort.FILLER,
    Sort.GREETING,
)
_LITRE_SORTS = (Sort.LITRE, *_SORTS)
_OF_TIME = frozenset({Sort.DAYS, Sort.CLOCK, Sort.MONTH_WORD})
_TIME_SORTS = (*_SORTS, *sorted(_OF_TIME), Sort.NOT_YET)  # "setengah" is a half first
_FEWEST_DOUBLED = 3  # letters: "royo2" is a word said twice, "x2" and "no2" are numbers
_MARKS = "/.,:()+-~"


@lru_cache(maxsize=TEXTS_IN_HAND)
def read_count(text: str, lexicon: Lexicon) -> Reading[float]:
    """How many."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    if _says_a_word_twice(text) or _beside_number(text, lexicon, frozenset({Sort.NOT_YET})):
        return again(Reason.NOT_READ)
    row = _row(text, lexicon, _SORTS)
    reading = _one_number(row) if row else again(Reason.NOT_READ)
    return slipped(reading, has_other_digits(text, lexicon.own_digits))


def counts_in(text: str, lexicon: Lexicon) -> int:
    """How many numbers stand in a text, in digits or words; one that is taken back, denied or
    rough counts as more than one: nothing in it is sure."""
    row = _row(text[:LONGEST_REPLY], lexicon, _SORTS)
    if row is None:
        return 2
    unsure = row.sorts() & {Sort.NOT, Sort.NO, Sort.NONE, Sort.ROUGH, Sort.RANGE, Sort.SORRY}
    return 2 if unsure else len(row.numbers())


def is_of_time(text: str, lexicon: Lexicon) -> bool:
    """Whether a number is of days or hours: "in 2 hours", "2 days ago" are no leaves."""
    return _beside_number(text, lexicon, _OF_TIME)


def _beside_number(text: str, lexicon: Lexicon, sorts: frozenset[Sort]) -> bool:
    row = items(read_tokens(text), lexicon, _TIME_SORTS)
    numbers = [at for at, item in enumerate(row) if item.is_digits or item.sort is Sort.NUMBER]
    near = {at + step for at in numbers for step in (-1, 1)}
    return any(row[at].sort in sorts for at in near if 0 <= at < len(row))


def _says_a_word_twice(text: str) -> bool:
    """Whether a 2 stands for a word said twice, as people write it: "bibit2"."""
    found = read_tokens(text)
    return any(
        token.glued and token.text == "2" and before.is_word
        for before, token in pairwise(found)
        if len(before.text) >= _FEWEST_DOUBLED
    )


def read_litres(text: str, lexicon: Lexicon) -> Reading[float]:
    """The size of a pail [L]; another measure than litres is read back in litres."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    row = _row(text, lexicon, _LITRE_SORTS)
    reading = _one_number(row) if row else again(Reason.NOT_READ)
    if row is None or reading.value is None:
        return reading
    sizes = {row.key(at) for at in range(len(row.pieces)) if row.sort(at) is Sort.LITRE}
    if len(sizes) > 1:
        return again(Reason.TWO_VALUES)
    return _litres(reading, Fraction(sizes.pop()) if sizes else Fraction(1), lexicon)


def names_litres(text: str, lexicon: Lexicon) -> bool:
    """Whether a text names a measure of water, so that its number is surely one of it."""
    row = _row(text, lexicon, _LITRE_SORTS)
    return row is not None and Sort.LITRE in row.sorts()


def _row(text: str, lexicon: Lexicon, sorts: tuple[Sort, ...]) -> Row | None:
    row = _half_beside(number_items(read_tokens(text), lexicon, sorts))
    if is_broken(row, _MARKS):
        return None
    return Row(amounts(row, lexicon, spaced=True), lexicon)


_WHOLE = frozenset({Sort.NUMBER})
_HALF = frozenset({Sort.JOIN, Sort.AND_HALF})


def _half_beside(row: tuple[Item, ...]) -> tuple[Item, ...]:
    """Without what is counted between a number and its half: "3 feuilles et demie"."""
    return tuple(
        item
        for at, item in enumerate(row)
        if not (
            item.sort is Sort.FARM
            and 0 < at < len(row) - 1
            and (row[at - 1].is_digits or row[at - 1].sort in _WHOLE)
            and row[at + 1].sort in _HALF
        )
    )


def _litres(reading: Reading[float], size: Fraction, lexicon: Lexicon) -> Reading[float]:
    litres = Fraction(round(Fraction(str(reading.value)) * size * 10), 10)
    if not 0 < litres <= BIGGEST_L:
        return again(Reason.IMPOSSIBLE)
    value, words = float(litres), number_words(litres, lexicon) + " L"
    reason = reading.reason
    if size != 1:
        reason = Reason.UNUSUAL
    elif not SMALLEST_PAIL_L <= litres <= BIGGEST_PAIL_L:
        reason = Reason.TOO_BIG if litres > BIGGEST_PAIL_L else Reason.TOO_SMALL
    return confirm(value, words, reason) if reason else understood(value, words)


def _one_number(row: Row) -> Reading[float]:
    numbers, sorts = row.numbers(), row.sorts()
    if not row.pieces:
        return again(Reason.EMPTY)
    if len(numbers) > 1:
        return again(Reason.TWO_VALUES)
    if not numbers:
        if Sort.NOT_KNOWN in sorts:
            return again(Reason.NOT_KNOWN)
        has_strange = any(row.strange(at) for at in range(len(row.pieces)))
        if Sort.NONE in sorts and not has_strange:
            return understood(0.0, number_words(Fraction(0), row.lexicon))
        return again(Reason.NOT_READ)
    amount = row.amount(numbers[0])
    if amount is None or row.has_sign():
        return again(Reason.IMPOSSIBLE)
    return _count(row, amount)


def _count(row: Row, amount: Amount) -> Reading[float]:
    value, words, sorts = (
        float(amount.value),
        number_words(amount.value, row.lexicon),
        row.sorts(),
    )
    if amount.value > BIGGEST_COUNT:
        return again(Reason.TOO_BIG)
    if Sort.NOT in sorts or Sort.NO in row.sorts(1):
        return again(Reason.NEGATED)
    if amount.is_slip or amount.is_odd or amount.foreign_mark:
        return confirm(value, words, Reason.SLIP)
    asks = any(row.mark(at, "?") for at in range(len(row.pieces)))
    if asks or row.has_loose_sign() or sorts & {Sort.ROUGH, Sort.NOT_KNOWN, Sort.RANGE}:
        return confirm(value, words, Reason.ROUGH)
    if amount.other is not None and amount.other > amount.value:
        return confirm(value, words, Reason.AMBIGUOUS)
    return understood(value, words)
