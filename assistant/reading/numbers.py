"""Numbers as people type them: digits with either decimal mark, words, fractions, mixed.

Exact fractions throughout: Python's float would take "nan", "1e5" and "1_000" for numbers.
No library covers the words of all nine languages (text2num has no Hindi, Swahili, Bengali,
Indonesian, Vietnamese or Filipino; num2words has no Hindi or Swahili and only goes the other
way), so the words are data and the grammar is here.
"""

from dataclasses import dataclass, replace
from fractions import Fraction

from assistant.reading.fold import Kind
from assistant.reading.lexicon import Item, Lexicon, Sort

MOST_DIGITS = 12  # no field, count or percentage needs more; keeps arithmetic small

NUMBER_SORTS = (
    Sort.NUMBER,
    Sort.TIMES,
    Sort.AND_HALF,
    Sort.FRACTION,
    Sort.SHIFT,
    Sort.JOIN,
)


@dataclass(frozen=True)
class Amount:
    """One number of a reply. `other` is what it is if its mark means the other thing."""

    value: Fraction
    items: tuple[Item, ...]
    other: Fraction | None = None
    foreign_mark: bool = False  # the thousands mark is not this language's
    slip: bool = False  # letters for digits, a space inside, a misspelt number word
    odd: bool = False  # two ways to put the parts together
    ratio: tuple[Fraction, Fraction] | None = None  # typed as 41/50
    is_words: bool = False
    is_fraction: bool = False  # half, 3/4
    article: bool = False

    @property
    def glued(self) -> bool:
        """Whether it stands directly after something."""
        return self.items[0].glued


Piece = Amount | Item


def digits_value(raw: str, lexicon: Lexicon) -> tuple[Fraction, Fraction | None, bool] | None:
    """Value, the other value, foreign mark; None where it is no number that we would trust."""
    marks = [ch for ch in raw if ch in ".,"]
    parts = raw.replace(",", ".").split(".")
    if sum(map(len, parts)) > MOST_DIGITS:
        return None
    if not marks:
        return Fraction(int(raw)), None, False
    if len(marks) == 1:
        return _one_mark(parts, marks[0], lexicon)
    if len(set(marks)) == 1:
        return (Fraction(int("".join(parts))), None, False) if _grouped(parts) else None
    if len(set(marks[:-1])) == 1 and marks[-1] != marks[0] and _grouped(parts[:-1]):
        return Fraction("".join(parts[:-1]) + "." + parts[-1]), None, False
    return None


def _one_mark(
    parts: list[str], mark: str, lexicon: Lexicon
) -> tuple[Fraction, Fraction | None, bool]:
    whole, rest = parts
    decimal = Fraction(f"{whole or '0'}.{rest}")
    if not (len(rest) == 3 and 1 <= len(whole) <= 3 and whole[0] != "0"):
        return decimal, None, False
    grouped = Fraction(int(whole + rest))
    if mark == lexicon.decimal:
        return decimal, grouped, False
    return grouped, decimal, mark not in lexicon.groups


def _grouped(parts: list[str]) -> bool:
    """Whether 1,234,567 or, as in South Asia, 12,34,567 or 1,00,000."""
    first, middle, last = parts[0], parts[1:-1], parts[-1]
    by_three = all(len(p) == 3 for p in parts[1:])
    by_two = len(last) == 3 and all(len(p) == 2 for p in middle)
    return 1 <= len(first) <= 3 and first[0] != "0" and (by_three or by_two)


def amounts(
    row: tuple[Item, ...], lexicon: Lexicon, slash: bool = True, spaced: bool = False
) -> tuple[Piece, ...]:
    """The row with its numbers put together.

    `slash`: 1/2 is a fraction (not so in dates). `spaced`: 1 500 is one number.
    """
    pieces: list[Piece] = []
    at = 0
    while at < len(row):
        amount = _digits_at(row, at, lexicon, slash, spaced) or _words_at(row, at, lexicon)
        if amount is not None:
            amount = _more(row, at, amount, lexicon)
        pieces.append(amount or row[at])
        at += len(amount.items) if amount else 1
    return tuple(pieces)


def _digits_at(
    row: tuple[Item, ...], at: int, lexicon: Lexicon, slash: bool, spaced: bool
) -> Amount | None:
    if not row[at].is_digits:
        return None
    if slash and (mixed := _mixed_at(row, at)):
        return mixed
    if spaced and (joined := _spaced_at(row, at, lexicon)):
        return joined
    read = digits_value(row[at].key, lexicon)
    if read is None:
        return None
    value, other, foreign = read
    return Amount(value, (row[at],), other=other, foreign_mark=foreign)


def _whole(row: tuple[Item, ...], at: int, longest: int = 4) -> int | None:
    """The whole number in digits at `at`."""
    if at >= len(row) or not row[at].is_digits or not row[at].key.isdigit():
        return None
    return int(row[at].key) if len(row[at].key) <= longest else None


def _mixed_at(row: tuple[Item, ...], at: int) -> Amount | None:
    """1/2, 1 1/2, 1-1/2 and 41/50."""
    first = _whole(row, at)
    if first is None:
        return None
    if _is_slash(row, at + 1):
        return _ratio(row[at : at + 3], first, _whole(row, at + 2))
    gap = at + 1 + (1 if at + 1 < len(row) and row[at + 1].is_mark("-") else 0)
    top = _whole(row, gap)
    bottom = _whole(row, gap + 2) if _is_slash(row, gap + 1) else None
    if top is None or not bottom or top >= bottom or row[gap].glued != (gap > at + 1):
        return None
    part = Fraction(top, bottom)
    return Amount(first + part, row[at : gap + 3], is_fraction=True)


def _is_slash(row: tuple[Item, ...], at: int) -> bool:
    return at < len(row) and row[at].is_mark("/")


def _ratio(items: tuple[Item, ...], top: int, bottom: int | None) -> Amount | None:
    if not bottom:
        return None
    ratio = Fraction(top), Fraction(bottom)
    return Amount(Fraction(top, bottom), items, ratio=ratio, is_fraction=True)


def _spaced_at(row: tuple[Item, ...], at: int, lexicon: Lexicon) -> Amount | None:
    """1 500 and 12 500: a space for the thousands mark; sure only where the language has it."""
    if not row[at].key.isdigit() or len(row[at].key) > 3 or row[at].key.startswith("0"):
        return None
    end = at + 1
    while end < len(row) and end < at + 3 and _is_triple(row[end]):
        end += 1
    if end == at + 1:
        return None
    value = Fraction(int("".join(item.key for item in row[at:end])))
    return Amount(value, row[at:end], slip=" " not in lexicon.groups)


def _is_triple(item: Item) -> bool:
    return item.is_digits and len(item.key) == 3 and item.key.isdigit() and not item.glued


def _words_at(row: tuple[Item, ...], at: int, lexicon: Lexicon) -> Amount | None:
    """A number in words: forty one, themanini na tano, saadhe teen, half."""
    item = row[at]
    if item.sort is Sort.FRACTION:
        return Amount(Fraction(item.key), (item,), is_words=True, is_fraction=True)
    if item.sort is Sort.SHIFT:
        return _shifted_at(row, at, lexicon)
    if item.sort not in (Sort.NUMBER, Sort.TIMES):
        return None
    value, end = _WordSum(row, at, lexicon).read()
    return Amount(value, row[at:end], is_words=True, slip=any(i.misspelt for i in row[at:end]))


def _shifted_at(row: tuple[Item, ...], at: int, lexicon: Lexicon) -> Amount | None:
    """A quarter more or less than the number that follows, as in Hindi and Bengali."""
    if at + 1 >= len(row):
        return None
    after = _words_at(row, at + 1, lexicon) or _digits_at(row, at + 1, lexicon, False, False)
    if after is None or after.value.denominator != 1 or after.value < 1:
        return None
    shift = Fraction(row[at].key)
    unit = Fraction(100) if after.value == 100 else Fraction(1)
    return replace(
        after, value=after.value + shift * unit, items=(row[at], *after.items), other=None
    )


class _WordSum:
    """Adds and multiplies the number words from one place on, as long as they fit together."""

    def __init__(self, row: tuple[Item, ...], at: int, lexicon: Lexicon) -> None:
        self.row, self.at, self.lexicon = row, at, lexicon
        self.head = Fraction(0)  # finished parts: the two thousand of 2,500
        self.tail: Fraction | None = None  # the part that is still being made
        self.room = Fraction(10**9)  # only something smaller may still be added

    def read(self) -> tuple[Fraction, int]:
        """The value, and where the number ends."""
        end = self.at
        while self.at < len(self.row):
            joined = self.row[self.at].sort is Sort.JOIN and end > 0 and self.tail is not None
            if joined:
                self.at += 1
            if not self._take(joined):
                break
            end = self.at
        return self.head + (self.tail or 0), end

    def _take(self, joined: bool) -> bool:
        if self.at >= len(self.row):
            return False
        item = self.row[self.at]
        if item.sort is Sort.NUMBER:
            return self._add(Fraction(item.key))
        if item.sort is Sort.TIMES and not (joined and not self.lexicon.times_first):
            return self._multiply(Fraction(item.key))
        return False

    def _add(self, value: Fraction) -> bool:
        if self.tail is not None and value >= self.room:
            return False
        self.head += self.tail or 0
        self.tail = value
        self.room = _place(value)
        self.at += 1
        return True

    def _multiply(self, times: Fraction) -> bool:
        if self.lexicon.times_first:
            return self._multiply_next(times)
        whole = self.head + (self.tail or 0)
        if self.tail is None:
            self.tail = times
        elif whole < times:
            self.head, self.tail = Fraction(0), whole * times
        elif self.tail < times and times < self.room * 1000:
            self.tail *= times
        else:
            return False
        self.room = times
        self.at += 1
        return True

    def _multiply_next(self, times: Fraction) -> bool:
        """Mia tano, elfu mbili: the multiplier first."""
        if self.tail is not None and times >= self.room:
            return False
        self.head += self.tail or 0
        self.tail, self.room = times, times
        self.at += 1
        after = self.row[self.at] if self.at < len(self.row) else None
        if after is not None and after.sort is Sort.NUMBER and Fraction(after.key) < times:
            self.tail = times * Fraction(after.key)
            self.at += 1
        return True


def _place(value: Fraction) -> Fraction:
    """What may still be added after this number is smaller than this: 80 takes 1 to 9."""
    if value.denominator != 1 or value < 10:
        return Fraction(0)
    place = 1
    while value % (place * 10) == 0:
        place *= 10
    return Fraction(place if place > 1 else 0)


def _more(row: tuple[Item, ...], at: int, amount: Amount, lexicon: Lexicon) -> Amount:
    """What may follow a number: a multiplier after digits, a half after anything."""
    after = at + len(amount.items)
    if after < len(row) and row[after].sort is Sort.TIMES and not amount.is_words:
        times = Fraction(row[after].key)
        if amount.other is None and not amount.ratio and not lexicon.times_first:
            amount = replace(
                amount, value=amount.value * times, items=(*amount.items, row[after])
            )
            after += 1
    if amount.is_fraction:
        return _fraction_times(row, after, amount)
    return _with_half(row, after, amount, lexicon)


def _fraction_times(row: tuple[Item, ...], after: int, amount: Amount) -> Amount:
    """Half a hundred is nobody's number: left alone."""
    return amount


def _with_half(row: tuple[Item, ...], after: int, amount: Amount, lexicon: Lexicon) -> Amount:
    """One and a half, moja na nusu, satu setengah; three quarters is a product."""
    if after < len(row) and row[after].sort is Sort.AND_HALF:
        part = Fraction(row[after].key)
        return replace(
            amount, value=amount.value + part, items=(*amount.items, row[after]), other=None
        )
    joined = after < len(row) and row[after].sort is Sort.JOIN
    spot = after + (1 if joined else 0)
    part_amount = _part_at(row, spot)
    if part_amount is None or amount.value.denominator != 1:
        return amount
    used = (*amount.items, *row[after:spot], *part_amount.items)
    if joined:
        return replace(amount, value=amount.value + part_amount.value, items=used, other=None)
    if not part_amount.is_words:
        return amount
    return _side_by_side(amount, part_amount, used, lexicon)


def _part_at(row: tuple[Item, ...], at: int) -> Amount | None:
    """A fraction below one at `at`."""
    if at >= len(row):
        return None
    if row[at].sort is Sort.FRACTION and Fraction(row[at].key) < 1:
        return Amount(Fraction(row[at].key), (row[at],), is_words=True, is_fraction=True)
    if row[at].is_digits and (mixed := _mixed_at(row, at)) and mixed.ratio and mixed.value < 1:
        return mixed
    return None


def _side_by_side(
    amount: Amount, part: Amount, used: tuple[Item, ...], lexicon: Lexicon
) -> Amount:
    """A number and a fraction word with nothing between: a product or a sum, by language."""
    product, total = amount.value * part.value, amount.value + part.value
    if lexicon.number_fraction == "plus":
        return replace(amount, value=total, items=used, other=None)
    unclear = not (amount.is_words or part.value != Fraction(1, 2)) or amount.value > 9
    if amount.value > 1 and part.value == Fraction(1, 2):
        unclear = True
    return replace(
        amount, value=product, items=used, other=None, odd=unclear, is_fraction=product < 1
    )


def is_broken(row: tuple[Item, ...], allowed: frozenset[str]) -> bool:
    """Whether digits, something and digits stand glued together in no form that we know: 1e5."""
    for before, middle, after in zip(row, row[1:], row[2:], strict=False):
        if not (before.is_digits and after.is_digits and middle.glued and after.glued):
            continue
        if middle.text not in allowed and middle.tokens[0].kind is not Kind.NUMBER:
            return True
    return False
