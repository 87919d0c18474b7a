"""The learned table: a row of small whole numbers a piece, summed and calibrated.

The file is four bytes (the length of the head), a head in JSON, and one signed byte a row and
act. The wiring opens it; this room does no I/O.
"""

import json
import struct
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import exp, sqrt
from types import MappingProxyType

from assistant.acts.act import Act
from assistant.acts.pieces import rows_of

_LENGTH = struct.Struct("<I")
MOST_BITS = 20

Weights = Mapping[Act, float]
"""How likely a text is each act; they add up to 1."""


class TableError(ValueError):
    """The bytes are no table of this release: make it anew with `nursery acts train`."""


@dataclass(frozen=True, eq=False)
class ActTable:
    """A trained table.

    bits:    there are 2**bits rows
    acts:    what each number of a row speaks for
    rows:    2**bits x acts signed bytes
    scale, bias: an act's score is its sum x scale / sqrt(pieces) + bias
    turn, shift: scores -> log odds (acts x acts, acts)
    """

    bits: int
    acts: tuple[Act, ...]
    rows: memoryview
    scale: Sequence[float]
    bias: Sequence[float]
    turn: Sequence[Sequence[float]]
    shift: Sequence[float]

    def weigh(self, text: str) -> Weights:
        """How likely each act is. Of a text without a word it says next to nothing."""
        scores = self._scores(rows_of(text, self.bits))
        odds = [
            sum(weight * score for weight, score in zip(line, scores, strict=True)) + shift
            for line, shift in zip(self.turn, self.shift, strict=True)
        ]
        return MappingProxyType(dict(zip(self.acts, softmax(odds), strict=True)))

    def _scores(self, places: Iterable[int]) -> list[float]:
        width = len(self.acts)
        found = [self.rows[at * width : (at + 1) * width].tolist() for at in places]
        share = 1 / sqrt(len(found)) if found else 0.0
        sums = map(sum, zip(*found, strict=True)) if found else [0] * width
        return [
            total * scale * share + bias
            for total, scale, bias in zip(sums, self.scale, self.bias, strict=True)
        ]


def read_table(raw: bytes | memoryview) -> ActTable:
    """The table in these bytes.

    Raises:
        TableError: they are not whole, or of other acts.
    """
    try:
        (length,) = _LENGTH.unpack_from(raw)
        head = json.loads(bytes(raw[_LENGTH.size : _LENGTH.size + length]))
        acts = tuple(Act(act) for act in head["acts"])
        table = ActTable(
            bits=int(head["bits"]),
            acts=acts,
            rows=memoryview(raw)[_LENGTH.size + length :].cast("b"),
            scale=tuple(map(float, head["scale"])),
            bias=tuple(map(float, head["bias"])),
            turn=tuple(tuple(map(float, line)) for line in head["turn"]),
            shift=tuple(map(float, head["shift"])),
        )
    except (struct.error, ValueError, KeyError, TypeError) as fault:
        raise TableError(
            f"expected a table of acts, got bytes that are none: {fault}"
        ) from fault
    _check(table)
    return table


def written(table: ActTable) -> bytes:
    """A table as the bytes of its file."""
    head = {
        "acts": list(table.acts),
        "bits": table.bits,
        "scale": list(table.scale),
        "bias": list(table.bias),
        "turn": [list(line) for line in table.turn],
        "shift": list(table.shift),
    }
    packed = json.dumps(head, separators=(",", ":")).encode()
    return _LENGTH.pack(len(packed)) + packed + table.rows.tobytes()


def _check(table: ActTable) -> None:
    width = len(table.acts)
    sizes = {len(table.scale), len(table.bias), len(table.turn), len(table.shift)}
    sizes |= {len(line) for line in table.turn}
    if set(table.acts) != set(Act) or sizes != {width}:
        raise TableError(
            f"expected the acts {', '.join(Act)}, each with its numbers, got "
            f"{', '.join(table.acts)}: make the table anew with `nursery acts train`"
        )
    if not 0 < table.bits <= MOST_BITS or len(table.rows) != width << table.bits:
        raise TableError(
            f"expected {width << table.bits} numbers, got {len(table.rows)}: the file is cut; "
            "make it anew with `nursery acts train`"
        )


def softmax(odds: Sequence[float]) -> list[float]:
    """Log odds as shares that add up to 1."""
    top = max(odds)
    parts = [exp(each - top) for each in odds]
    whole = sum(parts)
    return [part / whole for part in parts]
