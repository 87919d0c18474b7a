"""Which plain question a text is likest to, learned from ways of asking (`asked/`).

A table over the ideas that the exact rules find (the same in all languages) and over pieces of
words. Each of them is a row of a few numbers, what it is about; they are added up, and the sum
is held against each question. So questions that share words share what was learned of them,
which 136 tables of their own did not: of a hand nobody had seen 55 in 100 were right at once
and not 51, 73 among the first three and not 68. It only routes: what it is sure of is answered
with the fixed text of the question, what it half knows is offered, and the rest goes on. At run
time it is a table of small numbers; `nursery acts questions` makes it anew.
"""

import json
import struct
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import starmap
from math import copysign, log, sqrt
from operator import add, mul
from zlib import crc32

from assistant.acts.pieces import rows_of
from assistant.acts.table import softmax
from assistant.hearing.topics import Topic
from assistant.reading.text.fold import TEXTS_IN_HAND

NONE = "none"
"""The class of what only a person answers."""
PIECE_BITS, IDEA_BITS = 15, 12
IDEA_ROWS = 1 << IDEA_BITS
ROWS = (1 << PIECE_BITS) + IDEA_ROWS
WIDTH = 96  # numbers of a row; with 64 one text in a hundred more is taken for another question
IDEA_WEIGHT = 2.0  # an idea is worth more than a piece: it is the same in all languages
_MOST_COUNTED = 4
_FAR = 20.0  # log odds of what is certain in figures
_LENGTH = struct.Struct("<I")


class MatchError(ValueError):
    """The bytes are no table of this release: make it anew with `nursery acts questions`."""


@dataclass(frozen=True)
class Likeness:
    """How likely a text asks one question, from 0 to 1; of all questions together 1."""

    topic: Topic | None  # None: a question that only a person answers
    share: float

    @property
    def odds(self) -> float:
        """The same as log odds; 0 is as likely as not."""
        return (
            log(self.share / (1 - self.share))
            if 0 < self.share < 1
            else copysign(_FAR, self.share - 0.5)
        )


@dataclass(frozen=True, eq=False)
class MatchTable:
    """A trained table.

    topics: what each line of `held` speaks for, a topic's code or NONE
    rows:   ROWS x WIDTH signed bytes, first of pieces, then of ideas: what each is about
    scale, bias: what a text is about is its weighed sum of rows x scale + bias (WIDTH each)
    held:   topics x WIDTH numbers; with what a text is about, and `shift`, the log odds
    """

    topics: tuple[str, ...]
    rows: memoryview
    scale: Sequence[float]
    bias: Sequence[float]
    held: Sequence[Sequence[float]]
    shift: Sequence[float]

    def likest(self, text: str, ideas: Iterable[str]) -> tuple[Likeness, ...]:
        """The questions, the likest first."""
        return _likest(self, text, frozenset(ideas))

    def weighed(self, text: str, ideas: frozenset[str]) -> tuple[Likeness, ...]:
        """As `likest`, weighed anew."""
        pieces, named = (self._sums(*part) for part in parts(text, ideas))
        scaled = zip(map(add, pieces, named), self.scale, self.bias, strict=True)
        about = [total * scale + bias for total, scale, bias in scaled]
        odds = [
            sum(map(mul, line, about), shift)
            for line, shift in zip(self.held, self.shift, strict=True)
        ]
        found = starmap(Likeness, zip(self._kinds, softmax(odds), strict=True))
        return tuple(sorted(found, key=lambda each: -each.share))

    @cached_property
    def _kinds(self) -> tuple[Topic | None, ...]:
        return tuple(map(_topic, self.topics))

    def _sums(self, places: frozenset[int], weight: float) -> Sequence[float]:
        """What these rows are about together; how many they are does not count."""
        found = [self.rows[at * WIDTH : (at + 1) * WIDTH].tolist() for at in places]
        if not found:
            return [0.0] * WIDTH
        share = weight / sqrt(len(found))
        return [share * total for total in map(sum, zip(*found, strict=True))]


@lru_cache(maxsize=TEXTS_IN_HAND)
def _likest(table: MatchTable, text: str, ideas: frozenset[str]) -> tuple[Likeness, ...]:
    return table.weighed(text, ideas)


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


def read_match(raw: bytes | memoryview) -> MatchTable:
    """The table in these bytes.

    Raises:
        MatchError: they are not whole, or of other questions.
    """
    try:
        (length,) = _LENGTH.unpack_from(raw)
        head = json.loads(bytes(raw[_LENGTH.size : _LENGTH.size + length]))
        table = MatchTable(
            topics=tuple(map(str, head["topics"])),
            rows=memoryview(raw)[_LENGTH.size + length :].cast("b"),
            scale=tuple(map(float, head["scale"])),
            bias=tuple(map(float, head["bias"])),
            held=tuple(tuple(map(float, line)) for line in head["held"]),
            shift=tuple(map(float, head["shift"])),
        )
    except (struct.error, ValueError, KeyError, TypeError) as fault:
        raise MatchError(f"expected a table of questions, got other bytes: {fault}") from fault
    if not _is_whole(table):
        raise MatchError(
            "the table is cut or of other questions: make it anew with `nursery acts questions`"
        )
    return table


def _is_whole(table: MatchTable) -> bool:
    wide = {len(table.scale), len(table.bias), *map(len, table.held)}
    long = {len(table.topics), len(table.shift), len(table.held)}
    right = wide == {WIDTH} and long == {len(Topic) + 1} and len(table.rows) == ROWS * WIDTH
    return right and set(table.topics) == {*Topic, NONE}


def written_match(table: MatchTable) -> bytes:
    """A table as the bytes of its file."""
    head = {
        "topics": table.topics,
        "scale": list(table.scale),
        "bias": list(table.bias),
        "held": [list(line) for line in table.held],
        "shift": list(table.shift),
    }
    packed = json.dumps(head, separators=(",", ":")).encode()
    return _LENGTH.pack(len(packed)) + packed + table.rows.tobytes()
