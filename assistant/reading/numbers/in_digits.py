"""Numbers in digits: with a fraction (1 1/2, 41/50) or a space for the thousands (1 500)."""

import re
from fractions import Fraction

from assistant.reading.numbers.amount import Amount
from assistant.reading.numbers.digits import read_digits
from assistant.reading.text.lexicon import Lexicon
from assistant.reading.text.spot import Item

_TRIPLE = re.compile(r"\d{3}([.,]\d{1,6})?")


def get(row: tuple[Item, ...], at: int) -> Item | None:
    """The item at a place."""
    return row[at] if at < len(row) else None


def digits_at(
    row: tuple[Item, ...], at: int, lexicon: Lexicon, slash: bool, spaced: bool
) -> Amount | None:
    if not row[at].is_digits:
        return None
    if slash and (mixed := mixed_at(row, at)):
        return mixed
    if spaced and (joined := _spaced_at(row, at, lexicon)):
        return joined
    read = read_digits(row[at].key, lexicon)
    if read is None:
        return None
    return Amount(read.value, (row[at],), other=read.other, foreign_mark=read.foreign_mark)


def _whole(row: tuple[Item, ...], at: int) -> int | None:
    """The whole number in digits at `at`, of four digits at most."""
    item = get(row, at)
    is_whole = item is not None and item.is_digits and item.key.isdigit()
    return int(item.key) if item is not None and is_whole and len(item.key) <= 4 else None


def _is_slash(row: tuple[Item, ...], at: int) -> bool:
    item = get(row, at)
    return item is not None and item.is_mark("/")


def mixed_at(row: tuple[Item, ...], at: int) -> Amount | None:
    """41/50, 1/2, 1 1/2 and 1-1/2."""
    first = _whole(row, at)
    if first is None:
        return None
    if _is_slash(row, at + 1):
        return _ratio(row[at : at + 3], first, _whole(row, at + 2))
    spot = at + 2 if at + 1 < len(row) and row[at + 1].is_mark("-") else at + 1
    top = _whole(row, spot)
    bottom = _whole(row, spot + 2) if _is_slash(row, spot + 1) else None
    if top is None or not bottom or top >= bottom or row[spot].glued != (spot == at + 2):
        return None
    return Amount(first + Fraction(top, bottom), row[at : spot + 3], is_fraction=True)


def _ratio(used: tuple[Item, ...], top: int, bottom: int | None) -> Amount | None:
    if not bottom:
        return None
    ratio = Fraction(top), Fraction(bottom)
    return Amount(Fraction(top, bottom), used, ratio=ratio, is_fraction=True)


def _spaced_at(row: tuple[Item, ...], at: int, lexicon: Lexicon) -> Amount | None:
    """1 500 and 12 500: a space for the thousands; sure only where the language has that."""
    first = row[at].key
    if not first.isdigit() or len(first) > 3 or first.startswith("0"):
        return None
    end = at + 1
    while end < min(len(row), at + 3) and row[end - 1].key.isdigit() and _is_triple(row[end]):
        end += 1
    if end == at + 1:
        return None
    value = Fraction("".join(item.key for item in row[at:end]).replace(",", "."))
    return Amount(value, row[at:end], is_slip=" " not in lexicon.groups)


def _is_triple(item: Item) -> bool:
    """Three digits, the last of which may be followed by decimals: 1 000,5."""
    return item.is_digits and bool(_TRIPLE.fullmatch(item.key)) and not item.glued
