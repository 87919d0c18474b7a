"""Misspelt number words: where one is taken, and where it only makes a number unsure."""

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from assistant.reading.numbers.amount import Amount, Piece
from assistant.reading.text.fold import Token
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.near import is_slip_of
from assistant.reading.text.spot import Item, items


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


def beside_slip(pieces: list[Piece], at: int, lexicon: Lexicon) -> Piece:
    """A number next to a word that may be more of it, misspelt: dua beas, moja na nsu."""
    amount = pieces[at]
    if not isinstance(amount, Amount):
        return amount
    if amount.is_words and amount.is_fraction and _lost_its_whole(pieces, at):
        return replace(amount, is_slip=True)
    round_words = amount.is_words and amount.value >= 10 and amount.value % 10 == 0
    for step, whole in ((-1, amount.is_words), (1, round_words)):
        beside = _piece(pieces, at + step)
        if isinstance(beside, Item) and beside.sort is Sort.JOIN:
            beside = _piece(pieces, at + 2 * step)
        if isinstance(beside, Item) and may_be_number(beside, lexicon, whole):
            return replace(amount, is_slip=True)
    return amount


def _lost_its_whole(pieces: list[Piece], at: int) -> bool:
    """On and a half: an "and" before the half, and no number before the "and"."""
    joined, before = _piece(pieces, at - 1), _piece(pieces, at - 2)
    if not isinstance(joined, Item) or joined.sort is not Sort.JOIN:
        return False
    is_unit = isinstance(before, Item) and before.sort is Sort.UNIT
    return not isinstance(before, Amount) and not is_unit


def _piece(pieces: list[Piece], at: int) -> Piece | None:
    return pieces[at] if 0 <= at < len(pieces) else None


def may_be_number(item: Item, lexicon: Lexicon, whole: bool = False) -> bool:
    """Whether a word that we do not know is likely a misspelt part of a number.

    `whole`: a number by itself counts too, not only what goes on with one (belas, half).
    """
    if not (item.is_strange or item.misspelt):
        return False
    words, token = _number_words(lexicon, whole), item.tokens[-1]
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
        for phrase, spelling in lexicon.all_spellings()
        for plain, marked in zip(phrase, spelling, strict=True)
        if plain in words
    }
    return frozenset(spelt or {(word, word) for word in words if len(word) >= shortest})
