"""A reply as a row of pieces (numbers put together, and what stands around them)."""

from dataclasses import dataclass

from assistant.reading.numbers import Amount, Piece
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.spot import Item


@dataclass(frozen=True)
class Row:
    """The pieces of a reply; places outside the row hold nothing."""

    pieces: tuple[Piece, ...]
    lexicon: Lexicon

    def get(self, at: int) -> Piece | None:
        """The piece at a place."""
        return self.pieces[at] if 0 <= at < len(self.pieces) else None

    def sort(self, at: int) -> Sort | None:
        """What the list says of the piece there; None for numbers, marks, strange words."""
        piece = self.get(at)
        return piece.sort if isinstance(piece, Item) else None

    def item(self, at: int, sort: Sort) -> Item | None:
        """The piece at a place, where it is of this sort."""
        piece = self.get(at)
        return piece if isinstance(piece, Item) and piece.sort is sort else None

    def key(self, at: int) -> str:
        """The key of the piece at a place; empty for a number."""
        piece = self.get(at)
        return piece.key if isinstance(piece, Item) else ""

    def amount(self, at: int) -> Amount | None:
        """The number at a place."""
        piece = self.get(at)
        return piece if isinstance(piece, Amount) else None

    def mark(self, at: int, marks: str) -> bool:
        """Whether one of these marks stands at a place."""
        piece = self.get(at)
        return isinstance(piece, Item) and piece.is_mark(marks)

    def glued(self, at: int) -> bool:
        """Whether the piece at a place stands directly after the one before it."""
        piece = self.get(at)
        return piece is not None and piece.glued

    def strange(self, at: int) -> bool:
        """Whether a word that the list does not know stands at a place."""
        piece = self.get(at)
        return isinstance(piece, Item) and piece.is_strange

    def unread_digits(self, at: int) -> bool:
        """Whether digits stand there that are no number we would trust."""
        piece = self.get(at)
        return isinstance(piece, Item) and piece.is_digits

    def after(self, at: int, *sorts: Sort) -> int:
        """The first place from `at` on that is none of these sorts."""
        while self.sort(at) in sorts:
            at += 1
        return at

    def sorts(self, start: int = 0, end: int | None = None) -> set[Sort]:
        """The sorts that stand between two places."""
        places = range(start, len(self.pieces) if end is None else end)
        return {sort for at in places if (sort := self.sort(at)) is not None}

    def numbers(self) -> list[int]:
        """The places of numbers, trusted or not."""
        return [
            at for at in range(len(self.pieces)) if self.amount(at) or self.unread_digits(at)
        ]

    def opens_with_not(self) -> bool:
        """Whether a "no" that may be a "not" opens the reply: bukan 2 ha; not: bukan, 2 ha."""
        opening = self.lexicon.no_is_not and self.sort(0) is Sort.NO
        return opening and not self.mark(1, ",.;:!-")

    def has_loose_sign(self, start: int = 0, end: int | None = None) -> bool:
        """Whether a plus or a minus stands before a number, apart or after a word: ha - 2."""
        places = range(max(start, 0), len(self.pieces) if end is None else end)
        return any(
            self.mark(at, "+-")
            and self.amount(at + 1) is not None
            and self.amount(at - 1) is None
            for at in places
        )

    def has_sign(self) -> bool:
        """Whether a number has a minus before it that joins it to nothing: -2 acres."""
        return any(
            self.amount(at) is not None
            and self.glued(at)
            and self.mark(at - 1, "-")
            and not self.glued(at - 1)
            and self.amount(at - 2) is None
            for at in range(1, len(self.pieces))
        )
