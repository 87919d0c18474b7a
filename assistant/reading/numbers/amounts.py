"""The numbers of a reply put together: what stands in digits, in words, and in both."""

from dataclasses import replace
from fractions import Fraction

from assistant.reading.numbers.amount import Amount, Piece
from assistant.reading.numbers.digits import MOST_DIGITS
from assistant.reading.numbers.in_digits import digits_at, get, mixed_at
from assistant.reading.numbers.in_words import WordSum
from assistant.reading.numbers.slips import beside_slip
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.spot import Item

_HALF = Fraction(1, 2)
_SCALES = (1_000_000, 1000, 100)


def amounts(
    row: tuple[Item, ...], lexicon: Lexicon, slash: bool = True, spaced: bool = False
) -> tuple[Piece, ...]:
    """The row with its numbers put together.

    `slash`: 1/2 is a fraction (not so in dates). `spaced`: 1 500 is one number.
    """
    pieces = _amounts(row, lexicon, slash, spaced)
    return tuple(beside_slip(pieces, at, lexicon) for at in range(len(pieces)))


def _amounts(row: tuple[Item, ...], lexicon: Lexicon, slash: bool, spaced: bool) -> list[Piece]:
    pieces: list[Piece] = []
    at = 0
    while at < len(row):
        amount = digits_at(row, at, lexicon, slash, spaced) or _words_at(row, at, lexicon)
        if amount is not None:
            amount = _more(row, at + len(amount.items), amount, lexicon)
            amount = amount if _can_be_shown(amount.value) else None
        pieces.append(amount or row[at])
        at += len(amount.items) if amount else 1
    return pieces


def _can_be_shown(value: Fraction) -> bool:
    """Whether it reads back the same when it is shown: six decimals, or a short fraction."""
    return (value * 10**6).denominator == 1 or value.denominator < 10_000


def is_broken(row: tuple[Item, ...], marks: str) -> bool:
    """Whether digits, something, digits stand glued in no form that we know: 1e5, 1_000."""
    for before, middle, after in zip(row, row[1:], row[2:], strict=False):
        if not (before.is_digits and middle.glued and after.is_digits and after.glued):
            continue
        if middle.is_strange or middle.sort is Sort.JOIN:
            return True
        if middle.sort is None and not middle.is_digits and not middle.is_mark(marks):
            return True
    return False


def _words_at(row: tuple[Item, ...], at: int, lexicon: Lexicon) -> Amount | None:
    """A number in words: forty one, saadhe teen, half."""
    item = row[at]
    if item.sort is Sort.FRACTION:
        return Amount(Fraction(item.key), (item,), is_words=True, is_fraction=True)
    if item.sort is Sort.SHIFT:
        return _shifted_at(row, at, lexicon)
    if item.sort is Sort.POINT:  # point five
        return _pointed(row, at, Amount(Fraction(0), (), is_words=True))
    if item.sort not in (Sort.NUMBER, Sort.TIMES):
        return None
    value, end = WordSum(row, at, lexicon).read()
    slip = any(i.misspelt for i in row[at:end])
    return Amount(value, row[at:end], is_words=True, is_slip=slip)


def _shifted_at(row: tuple[Item, ...], at: int, lexicon: Lexicon) -> Amount | None:
    """A quarter or a half more or less than the number that follows; alone, than one.

    Before a hundred it is a part of the hundred: sava sau is 125.
    """
    shift = Fraction(row[at].key)
    after = None
    if at + 1 < len(row):
        after = _words_at(row, at + 1, lexicon) or digits_at(row, at + 1, lexicon, False, False)
    if after is None or after.value.denominator != 1 or after.value < 1 or after.other:
        return Amount(1 + shift, (row[at],), is_words=True) if shift != _HALF else None
    part = shift * (100 if after.value == 100 else 1)
    return replace(after, value=after.value + part, items=(row[at], *after.items))


def _more(row: tuple[Item, ...], after: int, amount: Amount, lexicon: Lexicon) -> Amount:
    """What may follow a number: a multiplier after digits, a half after a whole number."""
    pointed = _pointed(row, after, amount)
    if pointed is not None:
        return pointed
    item = get(row, after)
    is_times = item is not None and item.sort is Sort.TIMES and not lexicon.times_first
    if item is not None and is_times and not (amount.is_words or amount.other or amount.ratio):
        value = amount.value * Fraction(item.key)
        amount = replace(amount, value=value, items=(*amount.items, item))
        after += 1
    if amount.is_fraction or amount.value.denominator != 1:
        return amount
    return _with_half(row, after, amount, lexicon)


def _pointed(row: tuple[Item, ...], after: int, amount: Amount) -> Amount | None:
    """One point five, moja nukta tano, hai phay hai lam."""
    item = get(row, after)
    if item is None or item.sort is not Sort.POINT or amount.ratio or amount.other:
        return None
    digits, at = "", after + 1
    while (digit := _figure(row, at)) is not None and not (len(digits) == 1 and len(digit) > 1):
        digits, at = digits + digit, at + 1
    if not digits or len(digits) > MOST_DIGITS or amount.value.denominator != 1:
        return None
    value = amount.value + Fraction(int(digits), 10 ** len(digits))
    return replace(amount, value=value, items=(*amount.items, *row[after:at]))


def _figure(row: tuple[Item, ...], at: int) -> str | None:
    """A number below a hundred, as it is said after the point."""
    item = get(row, at)
    if item is None or item.misspelt:
        return None
    if item.sort is Sort.NUMBER and item.key.isdigit() and len(item.key) <= 2:
        return item.key
    return item.key if item.is_digits and item.key.isdigit() and len(item.key) <= 2 else None


def _with_half(row: tuple[Item, ...], after: int, amount: Amount, lexicon: Lexicon) -> Amount:
    """One and a half, moja na nusu, mot ruoi, satu setengah; three quarters."""
    item = get(row, after)
    if item is not None and item.sort is Sort.AND_HALF:
        return _plus(amount, Fraction(item.key) * _scale(amount), (item,))
    joined = item is not None and item.sort is Sort.JOIN
    part = _part_at(row, after + joined)
    if part is None:
        return amount
    used = (*row[after : after + joined], *part.items)
    if joined or lexicon.fraction_adds:
        return _plus(amount, part.value * _scale(amount), used)
    return _side_by_side(amount, part, used) if part.is_words else amount


def _scale(amount: Amount) -> int:
    """What the half is of: "hai ngàn rưỡi", "two thousand and a half" are 2500."""
    if not amount.is_words or amount.value == 0:
        return 1
    return next((each for each in _SCALES if amount.value % each == 0), 1)


def _plus(amount: Amount, part: Fraction, used: tuple[Item, ...]) -> Amount:
    return replace(amount, value=amount.value + part, items=(*amount.items, *used), other=None)


def _part_at(row: tuple[Item, ...], at: int) -> Amount | None:
    """A fraction below one at `at`."""
    item = get(row, at)
    if item is None:
        return None
    if item.sort is Sort.FRACTION and Fraction(item.key) < 1:
        return Amount(Fraction(item.key), (item,), is_words=True, is_fraction=True)
    mixed = mixed_at(row, at) if item.is_digits else None
    return mixed if mixed and mixed.ratio and mixed.value < 1 else None


def _side_by_side(amount: Amount, part: Amount, used: tuple[Item, ...]) -> Amount:
    """A number and a fraction word: "one half", "two thirds"; "1 half" and "2 half" are odd."""
    product, total = amount.value * part.value, amount.value + part.value
    is_odd = part.value == _HALF and not (amount.is_words and amount.value == 1)
    return replace(
        amount,
        value=product,
        items=(*amount.items, *used),
        other=total if is_odd else None,
        is_odd=is_odd,
        is_fraction=True,
    )
