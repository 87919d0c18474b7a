"""One number of a reply, put together from its parts."""

from dataclasses import dataclass
from fractions import Fraction

from assistant.reading.text.fold import Token
from assistant.reading.text.lexicon import Sort
from assistant.reading.text.spot import Item

NUMBER_SORTS = (
    Sort.NUMBER,
    Sort.TIMES,
    Sort.AND_HALF,
    Sort.FRACTION,
    Sort.SHIFT,
    Sort.POINT,
    Sort.JOIN,
)


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


def tokens_of(piece: Piece) -> tuple[Token, ...]:
    """The tokens that a piece is made of."""
    own = piece.items if isinstance(piece, Amount) else (piece,)
    return tuple(token for item in own for token in item.tokens)
