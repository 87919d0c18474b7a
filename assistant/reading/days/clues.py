"""What a reply says about a day, clue by clue, in order."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from assistant.reading.days.by_number import bare_at, iso_at, named_at, numeric_at
from assistant.reading.days.by_word import (
    day_word_at,
    signed_at,
    span_at,
    this_month_at,
    weekday_at,
)
from assistant.reading.days.told import Clue, Told, day_start
from assistant.reading.outcomes import Reason
from assistant.reading.pieces import Row
from assistant.reading.text.fold import Token, TokenKind
from assistant.reading.text.lexicon import Sort
from assistant.reading.text.spot import Item

_READERS: tuple[Callable[[Told, int], Clue | None], ...] = (
    iso_at,
    numeric_at,
    signed_at,
    this_month_at,
    span_at,
    named_at,
    day_word_at,
    weekday_at,
    bare_at,
)


def split_dots(found: Sequence[Token]) -> tuple[Token, ...]:
    """10.6.2026 as numbers with marks between: here a dot is no decimal mark."""
    parts: list[Token] = []
    for token in found:
        if not token.is_number or token.text.isdigit():
            parts.append(token)
            continue
        marks = token.text.replace(",", ".").partition(".")
        glued = token.glued
        while marks[1]:
            parts += [
                Token(marks[0], TokenKind.NUMBER, glued, token.at),
                Token(".", TokenKind.MARK, True, token.at),
            ]
            marks, glued = marks[2].partition("."), True
        parts.append(Token(marks[0], TokenKind.NUMBER, glued, token.at))
    return tuple(part for part in parts if part.text)


def find_clues(told: Told) -> list[Clue]:
    """All clues, in order."""
    clues: list[Clue] = []
    at = 0
    while at < len(told.row.pieces):
        clue = _clue_at(told, at)
        if clue is None:
            at += 1
            continue
        clues.append(_spelt(told.row, clue))
        at = max(clue.end, at + 1)
    return clues


def _clue_at(told: Told, at: int) -> Clue | None:
    """The clue that starts here; a word such as "tarehe" may stand before digits."""
    start = day_start(told.row, at)
    if start > at:
        word = told.row.item(at, Sort.DATE_WORD)
        loose = word is not None and told.row.lexicon.has(Sort.ARTICLE, word.phrase)
        readers = (iso_at, numeric_at, span_at) if loose else (iso_at, numeric_at)
        after = (read(told, start) for read in readers)
        if (clue := next(filter(None, after), None)) is not None:
            return replace(clue, start=at)
    return next((clue for read in _READERS if (clue := read(told, at))), None)


def _spelt(row: Row, clue: Clue) -> Clue:
    """The clue, read back where one of its words may be another one misspelt."""
    pieces = row.pieces[clue.start : clue.end]
    found = [piece for piece in pieces if isinstance(piece, Item)]
    unclear = any(item.has_rivals or _may_be_later(row, item) for item in found)
    return replace(clue, doubt=clue.doubt or Reason.MISSPELT) if unclear else clue


def _may_be_later(row: Row, item: Item) -> bool:
    """Vietnamese without tone marks: thang sau is June, and next month."""
    plain = not any(token.with_accents for token in item.tokens)
    return plain and item.sort is Sort.MONTH and row.lexicon.has(Sort.LATER, item.phrase)
