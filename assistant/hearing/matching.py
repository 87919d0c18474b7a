"""Which plain question a text is likest to, learned from ways of asking (`asked/`).

A linear table over the ideas that the exact rules find (the same in all languages) and over
pieces of words. It only routes: what it is sure of is answered with the fixed text of the
question, what it half knows is offered, and the rest goes on. At run time it is a table of
small numbers; `nursery acts questions` makes it anew.
"""

import json
import struct
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import sqrt
from operator import add
from zlib import crc32

from assistant.acts.pieces import rows_of
from assistant.hearing.topics import Topic

NONE = "none"
"""The class of what only a person answers."""
PIECE_BITS, IDEA_BITS = 15, 12
IDEA_ROWS = 1 << IDEA_BITS
ROWS = (1 << PIECE_BITS) + IDEA_ROWS
IDEA_WEIGHT = 2.0  # an idea is worth more than a piece: it is the same in all languages
_MOST_COUNTED = 4
_LENGTH = struct.Struct("<I")


class MatchError(ValueError):
    """The bytes are no table of this release: make it anew with `nursery acts questions`."""


@dataclass(frozen=True)
class Likeness:
    """How like a text is to one question; above 0 is likelier it than not."""

    topic: Topic | None  # None: a question that only a person answers
    score: float


@dataclass(frozen=True, eq=False)
class MatchTable:
    """A trained table.

    topics: what each number of a row speaks for, a topic's code or NONE
    rows:   ROWS x topics signed bytes, first of pieces, then of ideas
    scale, bias: a topic's score is its weighed sum x scale + bias
    """

    topics: tuple[str, ...]
    rows: memoryview
    scale: Sequence[float]
    bias: Sequence[float]

    def likest(self, text: str, ideas: Iterable[str]) -> tuple[Likeness, ...]:
        """The questions, the likest first."""
        pieces, named = (self._sums(*part) for part in parts(text, ideas))
        sums = map(add, pieces, named)
        scored = zip(self.topics, sums, self.scale, self.bias, strict=True)
        found = [Likeness(_topic(code), s * scale + bias) for code, s, scale, bias in scored]
        return tuple(sorted(found, key=lambda each: -each.score))

    def _sums(self, places: frozenset[int], weight: float) -> Sequence[float]:
        """What these rows say of each question together; how many they are does not count."""
        width = len(self.topics)
        found = [self.rows[at * width : (at + 1) * width].tolist() for at in places]
        if not found:
            return [0.0] * width
        share = weight / sqrt(len(found))
        return [share * total for total in map(sum, zip(*found, strict=True))]


def _topic(code: str) -> Topic | None:
    return None if code == NONE else Topic(code)


def parts(text: str, ideas: Iterable[str]) -> tuple[tuple[frozenset[int], float], ...]:
    """The rows that a text falls on, of its pieces and of its ideas, each kind with its
    weight."""
    pieces = rows_of(text, PIECE_BITS)
    named = frozenset(_row(each) for each in _features(ideas))
    return (pieces, 1.0), (named, IDEA_WEIGHT)


def _features(ideas: Iterable[str]) -> set[str]:
    """Ideas, pairs of them, and how many they are."""
    names = sorted(set(ideas))
    pairs = {f"j{one} {other}" for at, one in enumerate(names) for other in names[at + 1 :]}
    return {*(f"i{each}" for each in names), *pairs, f"k{min(len(names), _MOST_COUNTED)}"}


def _row(feature: str) -> int:
    return (1 << PIECE_BITS) + (crc32(feature.encode()) & (IDEA_ROWS - 1))


def read_match(raw: bytes) -> MatchTable:
    """The table in these bytes.

    Raises:
        MatchError: they are not whole, or of other questions.
    """
    try:
        (length,) = _LENGTH.unpack_from(raw)
        head = json.loads(raw[_LENGTH.size : _LENGTH.size + length])
        table = MatchTable(
            topics=tuple(map(str, head["topics"])),
            rows=memoryview(raw)[_LENGTH.size + length :].cast("b"),
            scale=tuple(map(float, head["scale"])),
            bias=tuple(map(float, head["bias"])),
        )
    except (struct.error, ValueError, KeyError, TypeError) as fault:
        raise MatchError(f"expected a table of questions, got other bytes: {fault}") from fault
    width = len(table.topics)
    whole = len(table.scale) == len(table.bias) == width and len(table.rows) == ROWS * width
    if set(table.topics) != {*Topic, NONE} or not whole:
        raise MatchError(
            "the table is cut or of other questions: make it anew with `nursery acts questions`"
        )
    return table


def written_match(table: MatchTable) -> bytes:
    """A table as the bytes of its file."""
    head = {"topics": table.topics, "scale": list(table.scale), "bias": list(table.bias)}
    packed = json.dumps(head, separators=(",", ":")).encode()
    return _LENGTH.pack(len(packed)) + packed + table.rows.tobytes()
