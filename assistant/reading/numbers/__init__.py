"""The numbers of a reply: digits, words, fractions, mixed (1 1/2, one and a half)."""

from assistant.reading.numbers.amount import NUMBER_SORTS, Amount, Piece, tokens_of
from assistant.reading.numbers.amounts import amounts, is_broken
from assistant.reading.numbers.slips import may_be_number, number_items

__all__ = [
    "NUMBER_SORTS",
    "Amount",
    "Piece",
    "amounts",
    "is_broken",
    "may_be_number",
    "number_items",
    "tokens_of",
]
