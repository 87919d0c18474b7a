"""The header of a segment: which piece of a long text it is, and whose tables it is read by.

3GPP TS 23.040 clause 9.2.3.24: elements of kind, length and octets. What is not known, and what
cannot be, is ignored.
"""

from dataclasses import dataclass

from assistant.alphabet import from_septets
from assistant.channel import Piece

JOINED_8, JOINED_16 = 0x00, 0x08
SINGLE_SHIFT, LOCKING_SHIFT = 0x24, 0x25


@dataclass(frozen=True)
class Header:
    """What a header says. `locking` and `single` are numbers of languages (TS 23.038
    6.2.1.2.4)."""

    piece: Piece | None = None
    locking: int = 0
    single: int = 0

    def words(self, septets: bytes) -> str:
        """Septets, one an octet, as this header has them read. Raises NotGsmError."""
        return from_septets(septets, locking=self.locking, single=self.single)


NO_HEADER = Header()


def read_header(octets: bytes) -> Header:
    """What the octets of a header say, its length not among them."""
    piece, shifts, place = None, {LOCKING_SHIFT: 0, SINGLE_SHIFT: 0}, 0
    while place + 2 <= len(octets):
        kind, length = octets[place], octets[place + 1]
        data = octets[place + 2 : place + 2 + length]
        if (kind, len(data)) in ((JOINED_8, 3), (JOINED_16, 4)):
            piece = piece_of(data[:-2], data[-1], data[-2])
        elif kind in shifts and len(data) == 1:
            shifts[kind] = data[0]
        place += 2 + length
    return Header(piece, shifts[LOCKING_SHIFT], shifts[SINGLE_SHIFT])


def piece_of(ref: bytes, place: int, total: int) -> Piece | None:
    """A total or place that cannot be is ignored (9.2.3.24.1)."""
    return Piece(ref.hex(), place, total) if 1 <= place <= total and total > 1 else None
