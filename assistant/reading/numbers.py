"""The numbers of a reply: digits, words, fractions, mixed (1 1/2, one and a half)."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache

from assistant.reading.digits import MOST_DIGITS, read_digits
from assistant.reading.fold import Token
from assistant.reading.lexicon import Lexicon, Sort
from assistant.reading.near import is_slip_of
from assistant.reading.number_words import WordSum
from assistant.reading.spot import Item, items

NUMBER_SORTS = (
    Sort.NUMBER,
    Sort.TIMES,
    Sort.AND_HALF,
    Sort.FRACTION,
    Sort.SHIFT,
    Sort.POINT,
    Sort.JOIN,
)
_HALF = Fraction(1, 2)


@dataclass(frozen=True)
class Amount:
    """One number of a reply, and what is not sure about it."""

    value: Fraction
    items: tuple[Item, ...]
    other: Fraction | None = None  # what it is if its mark, or its parts, mean the other thing
    foreign_mark: bool = False  # the thousands mark is not this language's
    is_odd: bool = False  # "1 half": half, or one and a half (`other`)
    is_slip: bool = False  # a space for the thousands, a misspelt number word
    ratio: tuple[Fraction, Fraction] | None = None  # typed as 41/50
    is_words: bool = False
    is_fraction: bool = False  # half, 3/4

    @property
    def glued(self) -> bool:
        """Whether it stands directly after something."""
        return bool(self.items) and self.items[0].glued


Piece = Amount | Item


def number_items(
    found: Sequence[Token],
    lexicon: Lexicon,
    sorts: tuple[Sort, ...],
    forgiving: tuple[Sort, ...] = (),
) -> tuple[Item, ...]:
    """Items; a number word may be misspelt where it is the only number, or part of one."""
    row = items(found, lexicon, sorts, (*forgiving, Sort.NUMBER))
    numbers = [at for at, item in enumerate(row) if _is_number(item)]
    kept: list[Item] = []
    for at, item in enumerate(row):
        is_wild = _is_guess(item) and not _belongs(row, at, numbers)
        kept += item.strange if is_wild else (item,)
    return tuple(kept)


def _is_guess(item: Item) -> bool:
    return item.sort is Sort.NUMBER and item.misspelt


def _is_number(item: Item) -> bool:
    told = item.sort in (Sort.NUMBER, Sort.TIMES) and not item.misspelt
    return item.is_digits or told


def _belongs(row: tuple[Item, ...], at: int, numbers: list[int]) -> bool:
    """Whether there is no other number, or another number word stands next to this one."""
    if not numbers:
        return True
    beside = [at - 1, at + 1]
    beside += [at + 2] if at + 2 < len(row) and row[at + 1].sort is Sort.JOIN else []
    beside += [at - 2] if at > 1 and row[at - 1].sort is Sort.JOIN else []
    return any(place in numbers and not row[place].is_digits for place in beside)


def tokens_of(piece: Piece) -> tuple[Token, ...]:
    """The tokens that a piece is made of."""
    own = piece.items if isinstance(piece, Amount) else (piece,)
    return tuple(token for item in own for token in item.tokens)


def amounts(
    row: tuple[Item, ...], lexicon: Lexicon, slash: bool = True, spaced: bool = False
) -> tuple[Piece, ...]:
    """The row with its numbers put together.

    `slash`: 1/2 is a fraction (not so in dates). `spaced`: 1 500 is one number.
    """
    pieces = _amounts(row, lexicon, slash, spaced)
    return tuple(_beside_slip(pieces, at, lexicon) for at in range(len(pieces)))


def _beside_slip(pieces: list[Piece], at: int, lexicon: Lexicon) -> Piece:
    """A number next to a word that may be more of it, misspelt: dua beas, moja na nsu."""
    amount = pieces[at]
    if not isinstance(amount, Amount):
        return amount
    round_words = amount.is_words and amount.value >= 10 and amount.value % 10 == 0
    for step, whole in ((-1, amount.is_words), (1, round_words)):
        beside = _piece(pieces, at + step)
        if isinstance(beside, Item) and beside.sort is Sort.JOIN:
            beside = _piece(pieces, at + 2 * step)
        if isinstance(beside, Item) and may_be_number(beside, lexicon, whole):
            return replace(amount, is_slip=True)
    return amount


def _piece(pieces: list[Piece], at: int) -> Piece | None:
    return pieces[at] if 0 <= at < len(pieces) else None


def may_be_number(item: Item, lexicon: Lexicon, whole: bool = False) -> bool:
    """Whether a word that we do not know is likely a misspelt part of a number.

    `whole`: a number by itself counts too, not only what goes on with one (belas, half).
    """
    if not item.is_strange:
        return False
    words, token = _number_words(lexicon, whole), item.tokens[0]
    has_tones = lexicon.is_tonal and token.with_accents
    return any(
        is_slip_of(token.text, plain) or (has_tones and is_slip_of(token.marked, word))
        for plain, word in words
    )


@lru_cache(maxsize=32)
def _number_words(lexicon: Lexicon, whole: bool) -> frozenset[tuple[str, str]]:
    """The words that numbers go on with, without and with accents; with `whole` all of them.

    Short words without their tone marks are too near to everything: they have to be typed.
    """
    parts = (Sort.TIMES, Sort.FRACTION, Sort.AND_HALF)
    words = {w for sort in parts for phrase in lexicon.phrases[sort] for w in phrase}
    heads = {phrase[0] for phrase in lexicon.phrases[Sort.NUMBER]}
    tails = {w for phrase in lexicon.phrases[Sort.NUMBER] for w in phrase[1:]}
    words |= heads | tails if whole else tails - heads
    shortest = 4 if lexicon.is_tonal else 3
    spelt = {
        (plain if len(plain) >= shortest else "", marked)
        for (_, phrase), spellings in lexicon.marked.items()
        for spelling in spellings
        for plain, marked in zip(phrase, spelling, strict=True)
        if plain in words
    }
    return frozenset(spelt or {(word, word) for word in words if len(word) >= shortest})


def _amounts(row: tuple[Item, ...], lexicon: Lexicon, slash: bool, spaced: bool) -> list[Piece]:
    pieces: list[Piece] = []
    at = 0
    while at < len(row):
        amount = _digits_at(row, at, lexicon, slash, spaced) or _words_at(row, at, lexicon)
        if amount is not None:
            amount = _more(row, at + len(amount.items), amount, lexicon)
        pieces.append(amount or row[at])
        at += len(amount.items) if amount else 1
    return pieces


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


def _get(row: tuple[Item, ...], at: int) -> Item | None:
    return row[at] if at < len(row) else None


def _digits_at(
    row: tuple[Item, ...], at: int, lexicon: Lexicon, slash: bool, spaced: bool
) -> Amount | None:
    if not row[at].is_digits:
        return None
    if slash and (mixed := _mixed_at(row, at)):
        return mixed
    if spaced and (joined := _spaced_at(row, at, lexicon)):
        return joined
    read = read_digits(row[at].key, lexicon)
    if read is None:
        return None
    return Amount(read.value, (row[at],), other=read.other, foreign_mark=read.foreign_mark)


def _whole(row: tuple[Item, ...], at: int) -> int | None:
    """The whole number in digits at `at`, of four digits at most."""
    item = _get(row, at)
    is_whole = item is not None and item.is_digits and item.key.isdigit()
    return int(item.key) if item is not None and is_whole and len(item.key) <= 4 else None


def _is_slash(row: tuple[Item, ...], at: int) -> bool:
    item = _get(row, at)
    return item is not None and item.is_mark("/")


def _mixed_at(row: tuple[Item, ...], at: int) -> Amount | None:
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
    while end < min(len(row), at + 3) and _is_triple(row[end]):
        end += 1
    if end == at + 1:
        return None
    value = Fraction(int("".join(item.key for item in row[at:end])))
    return Amount(value, row[at:end], is_slip=" " not in lexicon.groups)


def _is_triple(item: Item) -> bool:
    return item.is_digits and len(item.key) == 3 and item.key.isdigit() and not item.glued


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
        after = _words_at(row, at + 1, lexicon) or _digits_at(
            row, at + 1, lexicon, False, False
        )
    if after is None or after.value.denominator != 1 or after.value < 1 or after.other:
        return Amount(1 + shift, (row[at],), is_words=True) if shift != _HALF else None
    part = shift * (100 if after.value == 100 else 1)
    return replace(after, value=after.value + part, items=(row[at], *after.items))


def _more(row: tuple[Item, ...], after: int, amount: Amount, lexicon: Lexicon) -> Amount:
    """What may follow a number: a multiplier after digits, a half after a whole number."""
    pointed = _pointed(row, after, amount)
    if pointed is not None:
        return pointed
    item = _get(row, after)
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
    item = _get(row, after)
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
    item = _get(row, at)
    if item is None or item.misspelt:
        return None
    if item.sort is Sort.NUMBER and item.key.isdigit() and len(item.key) <= 2:
        return item.key
    return item.key if item.is_digits and item.key.isdigit() and len(item.key) <= 2 else None


def _with_half(row: tuple[Item, ...], after: int, amount: Amount, lexicon: Lexicon) -> Amount:
    """One and a half, moja na nusu, mot ruoi, satu setengah; three quarters."""
    item = _get(row, after)
    if item is not None and item.sort is Sort.AND_HALF:
        return _plus(amount, Fraction(item.key), (item,))
    joined = item is not None and item.sort is Sort.JOIN
    part = _part_at(row, after + joined)
    if part is None:
        return amount
    used = (*row[after : after + joined], *part.items)
    if joined or lexicon.fraction_adds:
        return _plus(amount, part.value, used)
    return _side_by_side(amount, part, used) if part.is_words else amount


def _plus(amount: Amount, part: Fraction, used: tuple[Item, ...]) -> Amount:
    return replace(amount, value=amount.value + part, items=(*amount.items, *used), other=None)


def _part_at(row: tuple[Item, ...], at: int) -> Amount | None:
    """A fraction below one at `at`."""
    item = _get(row, at)
    if item is None:
        return None
    if item.sort is Sort.FRACTION and Fraction(item.key) < 1:
        return Amount(Fraction(item.key), (item,), is_words=True, is_fraction=True)
    mixed = _mixed_at(row, at) if item.is_digits else None
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
