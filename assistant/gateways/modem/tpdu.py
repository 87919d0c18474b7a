"""The PDUs of short messages, as a modem takes and gives them.

3GPP TS 23.040: SUBMIT 9.2.2.2, DELIVER 9.2.2.1, STATUS-REPORT 9.2.2.3, addresses 9.1.2.5, times
9.2.3.11, validity 9.2.3.12, status 9.2.3.15, header of a segment 9.2.3.24. TS 27.005 3.1:
before a PDU stands the number of the message centre, empty for that of the SIM.
"""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zlib import crc32

from assistant.alphabet import (
    Encoding,
    from_septets,
    measure,
    pack,
    split,
    to_septets,
    unpack,
)
from assistant.channel import Fate, Piece
from assistant.gateways.headers import JOINED_8, Header, read_header

_DELIVER, _SUBMIT, _REPORT = 0, 1, 2
_UDHI, _RELATIVE, _ASK_REPORT = 0x40, 0x10, 0x20
_INTERNATIONAL, _NAME = 0x91, 0xD0
_UCS2, _OCTETS = 0x08, 0x04
_EXPIRED = 0x46


class TpduError(ValueError):
    """Octets that are no PDU of a short message."""


@dataclass(frozen=True)
class Ready:
    """A segment to send: `hex` for the modem, `length` [octets without the centre's number]."""

    hex: str
    length: int


def submits(phone: str, text: str, message_id: str, left: timedelta) -> tuple[Ready, ...]:
    """A text as SUBMITs, with a report asked for. The same id makes the same segments."""
    words = split(text)
    ref = crc32(message_id.encode()) & 0xFF
    found = []
    for place, each in enumerate(words, 1):
        header = b""
        if len(words) > 1:
            header = bytes([5, JOINED_8, 3, ref, len(words), place])
        octets = _submit(phone, each, header, left, ucs2=measure(text)[0] is Encoding.UCS2)
        found.append(Ready("00" + octets.hex().upper(), len(octets)))
    return tuple(found)


def _submit(phone: str, text: str, header: bytes, left: timedelta, *, ucs2: bool) -> bytes:
    first = _SUBMIT | _RELATIVE | _ASK_REPORT | (_UDHI if header else 0)
    digits = phone.removeprefix("+")
    length, user_data = _user_data(text, header, ucs2=ucs2)
    return b"".join(
        (
            bytes([first, 0, len(digits), _INTERNATIONAL]),
            _semi_octets(digits),
            bytes([0, _UCS2 if ucs2 else 0, _relative(left), length]),
            user_data,
        )
    )


def _user_data(text: str, header: bytes, *, ucs2: bool) -> tuple[int, bytes]:
    """TP-UDL and TP-UD; septets begin on a septet's boundary after the header (9.2.3.24)."""
    if ucs2:
        octets = header + text.encode("utf-16-be", "surrogatepass")
        return len(octets), octets
    septets = to_septets(text)
    if not header:
        return len(septets), pack(septets)
    before = -(-len(header) * 8 // 7)
    fill = before * 7 - len(header) * 8
    bits = int.from_bytes(pack(septets), "little") << fill
    size = (fill + 7 * len(septets) + 7) // 8
    return before + len(septets), header + bits.to_bytes(size, "little")


def _relative(left: timedelta) -> int:
    """The validity that fits best and ends no later (9.2.3.12.1)."""
    minutes = max(int(left.total_seconds() // 60), 5)
    if minutes <= 12 * 60:
        return minutes // 5 - 1
    if minutes <= 24 * 60:
        return 143 + (minutes - 12 * 60) // 30
    return min(166 + minutes // (24 * 60), 196)


# --- reading ---------------------------------------------------------------------------------


@dataclass(frozen=True)
class Delivered:
    """A text from a phone. `sender` is a number with its plus, or a name."""

    sender: str
    text: str
    at: datetime
    piece: Piece | None


@dataclass(frozen=True)
class Reported:
    """What became of a segment: to whom, under which reference; None while it is tried on."""

    phone: str
    reference: int
    fate: Fate | None
    at: datetime
    detail: str


class _Reader:
    def __init__(self, octets: bytes) -> None:
        self._octets, self._place = octets, 0

    def byte(self) -> int:
        return self.take(1)[0]

    def take(self, count: int) -> bytes:
        found = self._octets[self._place : self._place + count]
        if len(found) < count:
            raise TpduError("the PDU is cut short")
        self._place += count
        return found

    def rest(self) -> bytes:
        return self._octets[self._place :]


def read(pdu: str) -> Delivered | Reported:
    """What a stored message is.

    Raises:
        TpduError: it is neither a text from a phone nor a report.
    """
    try:
        reader = _Reader(bytes.fromhex(pdu))
    except ValueError as fault:
        raise TpduError(f"no hexadecimal: {pdu[:20]!r}") from fault
    reader.take(reader.byte())  # the message centre
    first = reader.byte()
    if first & 3 == _DELIVER:
        return _delivered(reader, has_header=bool(first & _UDHI))
    if first & 3 == _REPORT:
        return _reported(reader)
    raise TpduError(f"a message of kind {first & 3}")


def _delivered(reader: _Reader, *, has_header: bool) -> Delivered:
    sender = _address(reader)
    reader.byte()
    coding = reader.byte()
    at = _time(reader.take(7))
    length, octets = reader.byte(), reader.rest()
    skip = octets[0] + 1 if has_header and octets else 0
    header = read_header(octets[1:skip])
    return Delivered(sender, _text(octets, length, coding, skip, header), at, header.piece)


def _text(octets: bytes, length: int, coding: int, skip: int, header: Header) -> str:
    """The words after `skip` octets of header (TS 23.038 clause 4)."""
    alphabet = coding & 0x0C if coding < 0xF0 else (_OCTETS if coding & 4 else 0)
    if 0xE0 <= coding < 0xF0:
        alphabet = _UCS2
    if alphabet == _UCS2:
        return octets[skip:length].decode("utf-16-be", "replace")
    if alphabet == _OCTETS:
        return octets[skip:length].decode("utf-8", "replace")
    count = min(length, 8 * len(octets) // 7)
    return header.words(unpack(octets, count)[-(-skip * 8 // 7) :])


def _reported(reader: _Reader) -> Reported:
    reference, phone = reader.byte(), _address(reader)
    reader.take(7)
    at, status = _time(reader.take(7)), reader.byte()
    return Reported(phone, reference, _fate(status), at, f"status 0x{status:02x}")


def _fate(status: int) -> Fate | None:
    """9.2.3.15: below 0x20 it is done, to 0x3F it is still tried, from there it never will."""
    if status < 0x20:
        return Fate.DELIVERED
    if status < 0x40:
        return None
    return Fate.EXPIRED if status == _EXPIRED else Fate.FAILED


# --- fields ----------------------------------------------------------------------------------


def _semi_octets(digits: str) -> bytes:
    """Two digits an octet, the first in the low half; F fills (9.1.2.3)."""
    whole = digits + "F" * (len(digits) % 2)
    return bytes.fromhex("".join(b + a for a, b in zip(whole[::2], whole[1::2], strict=True)))


def _address(reader: _Reader) -> str:
    length, kind = reader.byte(), reader.byte()
    octets = reader.take((length + 1) // 2)
    if kind & 0x70 == 0x50:
        return from_septets(unpack(octets, length * 4 // 7))
    digits = "".join(f"{octet & 15:x}{octet >> 4:x}" for octet in octets)[:length]
    return ("+" if kind & 0x70 == 0x10 else "") + digits


def _time(octets: bytes) -> datetime:
    """A time of the message centre; its zone is in quarters of an hour (9.2.3.11)."""
    swapped = [f"{octet & 15:x}{octet >> 4:x}" for octet in octets]
    quarters = int(swapped[6], 16)
    tens = quarters >> 4 & 7
    offset = timedelta(minutes=15 * (tens * 10 + (quarters & 15)))
    try:
        year, month, day, hour, minute, second = map(int, swapped[:6])
        at = datetime(2000 + year, month, day, hour, minute, second, tzinfo=UTC)
    except ValueError as fault:
        raise TpduError(f"no time: {octets.hex()}") from fault
    return at + offset if quarters & 0x80 else at - offset
