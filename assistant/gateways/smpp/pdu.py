"""Protocol data units: octets <-> values. What does not follow the standard is refused whole.

SMPP v3.4 sections 3.2 (header), 4 (bodies), 5 (fields).
"""

import struct
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from enum import IntEnum

HEADER = struct.Struct(">IIII")
LARGEST = 70_000  # octets; message_payload holds up to 65,535
RESPONSE = 0x8000_0000
SEQUENCES = 0x7FFF_FFFF
VERSION = 0x34


class PduError(ValueError):
    """Octets that are no PDU of the standard; `status` is what to answer."""

    def __init__(self, said: str, status: int) -> None:
        super().__init__(said)
        self.status = status


class Command(IntEnum):
    """The ids of the requests we know (5.1.2.1); a response adds the highest bit."""

    BIND_RECEIVER = 0x01
    BIND_TRANSMITTER = 0x02
    QUERY_SM = 0x03
    SUBMIT_SM = 0x04
    DELIVER_SM = 0x05
    UNBIND = 0x06
    BIND_TRANSCEIVER = 0x09
    ENQUIRE_LINK = 0x15
    DATA_SM = 0x103
    NACK = 0x8000_0000


class CommandStatus(IntEnum):
    """The command statuses that we tell apart (5.1.3)."""

    OK = 0x00
    WRONG_LENGTH = 0x02
    WRONG_COMMAND = 0x03
    SYSTEM_ERROR = 0x08
    QUEUE_FULL = 0x14
    THROTTLED = 0x58
    COME_AGAIN = 0x64  # the receiver could not now


STATUS_WORDS: Mapping[int, str] = {
    0x01: "message length is wrong",
    0x02: "command length is wrong",
    0x03: "command is not known",
    0x04: "not in this state of the bind",
    0x05: "bound already",
    0x08: "the message centre failed",
    0x0A: "source address is wrong",
    0x0B: "destination address is wrong",
    0x0C: "message id is wrong",
    0x0D: "bind failed",
    0x0E: "password is wrong",
    0x0F: "system id is wrong",
    0x14: "its queue is full",
    0x15: "service type is wrong",
    0x43: "esm class is wrong",
    0x45: "submit failed",
    0x58: "too fast",
    0x61: "schedule time is wrong",
    0x62: "validity period is wrong",
    0x64: "cannot now",
    0x65: "never",
    0x66: "refused",
    0xFE: "delivery failed",
    0xFF: "error without a name",
}


def status_words(status: int) -> str:
    """A status as a person reads it; operators have their own from 0x400 on."""
    return f"0x{status:02X} {STATUS_WORDS.get(status, 'an error of this operator')}"


class Tag(IntEnum):
    """The optional parameters that we use (5.3.2)."""

    RECEIPTED_MESSAGE_ID = 0x001E
    USER_REFERENCE = 0x0204
    SAR_REF = 0x020C
    SAR_TOTAL = 0x020E
    SAR_SEGMENT = 0x020F
    SC_VERSION = 0x0210
    PAYLOAD = 0x0424
    MESSAGE_STATE = 0x0427
    USSD_SERVICE_OP = 0x0501
    ITS_SESSION_INFO = 0x1383


@dataclass(frozen=True)
class Pdu:
    """A PDU without its body."""

    command: int
    sequence: int
    status: int = 0

    @property
    def is_response(self) -> bool:
        return bool(self.command & RESPONSE)

    def encode(self, sequence: int | None = None) -> bytes:
        """The octets, length first; under another number where one is given."""
        body = self.body()
        number = self.sequence if sequence is None else sequence
        return HEADER.pack(16 + len(body), self.command, self.status, number) + body

    def body(self) -> bytes:
        """The octets after the header."""
        return b""


@dataclass(frozen=True)
class Bind(Pdu):
    """bind_transceiver, bind_transmitter, bind_receiver (4.1)."""

    system_id: str = ""
    password: str = ""
    system_type: str = ""
    version: int = VERSION

    def body(self) -> bytes:
        words = (self.system_id, self.password, self.system_type)
        return b"".join(map(_words, words)) + bytes([self.version, 0, 0]) + b"\0"


@dataclass(frozen=True)
class NamedResponse(Pdu):
    """A response that bears a name: of the message centre, or of a message (4.1.2, 4.4.2)."""

    name: str = ""
    tlvs: Mapping[int, bytes] = field(default_factory=dict)

    def body(self) -> bytes:
        # 4.4.2: the body of a response with an error is left out.
        return b"" if self.status else _words(self.name) + _tlvs(self.tlvs)


@dataclass(frozen=True)
class Address:
    """A number with its type and plan (5.2.5, 5.2.6)."""

    number: str
    ton: int = 1  # international
    npi: int = 1  # E.164


@dataclass(frozen=True)
class Short(Pdu):
    """submit_sm, deliver_sm (4.4.1, 4.6.1) and data_sm (4.7.1), which share their fields."""

    source: Address = Address("")
    destination: Address = Address("")
    message: bytes = b""
    service_type: str = ""
    esm_class: int = 0
    validity: str = ""
    registered: int = 0
    coding: int = 0
    tlvs: Mapping[int, bytes] = field(default_factory=dict)

    def body(self) -> bytes:
        if len(self.message) > 254:
            raise ValueError(f"expected up to 254 octets, got {len(self.message)}: cut it")
        return b"".join(
            (
                _words(self.service_type),
                _address(self.source),
                _address(self.destination),
                bytes([self.esm_class, 0, 0]),
                _words(""),
                _words(self.validity),
                bytes([self.registered, 0, self.coding, 0, len(self.message)]),
                self.message,
                _tlvs(self.tlvs),
            )
        )

    @property
    def octets(self) -> bytes:
        """The message, wherever it stands."""
        return self.tlvs.get(Tag.PAYLOAD, self.message)


def _words(text: str) -> bytes:
    return text.encode("ascii") + b"\0"


def _address(address: Address) -> bytes:
    return bytes([address.ton, address.npi]) + _words(address.number)


def _tlvs(tlvs: Mapping[int, bytes]) -> bytes:
    return b"".join(struct.pack(">HH", tag, len(value)) + value for tag, value in tlvs.items())


# --- reading ---------------------------------------------------------------------------------


class _Reader:
    def __init__(self, octets: bytes) -> None:
        self._octets, self._place = octets, 0

    def byte(self) -> int:
        return self.take(1)[0]

    def take(self, count: int) -> bytes:
        end = self._place + count
        if end > len(self._octets):
            raise PduError("the body is cut short", CommandStatus.WRONG_LENGTH)
        found = self._octets[self._place : end]
        self._place = end
        return found

    def words(self) -> str:
        end = self._octets.find(b"\0", self._place)
        if end < 0:
            raise PduError("a string has no end", CommandStatus.WRONG_LENGTH)
        found = self._octets[self._place : end]
        self._place = end + 1
        return found.decode("latin-1")

    def address(self) -> Address:
        ton, npi = self.byte(), self.byte()
        return Address(self.words(), ton, npi)

    def tlvs(self) -> dict[int, bytes]:
        found = {}
        while self._place < len(self._octets):
            tag, length = struct.unpack(">HH", self.take(4))
            found[tag] = self.take(length)
        return found

    @property
    def is_done(self) -> bool:
        return self._place >= len(self._octets)


def length_of(start: bytes) -> int:
    """How many octets the PDU has that begins so. Raises PduError for what cannot be one."""
    (length,) = struct.unpack(">I", start[:4])
    if not 16 <= length <= LARGEST:
        raise PduError(f"a PDU of {length} octets", CommandStatus.WRONG_LENGTH)
    return int(length)


def decode(octets: bytes) -> Pdu:
    """The value of one whole PDU; of a command we do not know only its header.

    Raises:
        PduError: its body does not follow the standard.
    """
    _, command, status, sequence = HEADER.unpack(octets[:16])
    read = _BODIES.get(command)
    header = Pdu(command, sequence, status)
    return read(header, _Reader(octets[16:])) if read else header


def _bind(header: Pdu, reader: _Reader) -> Bind:
    words = (reader.words(), reader.words(), reader.words())
    version = reader.byte()
    reader.take(2)
    reader.words()
    return Bind(header.command, header.sequence, header.status, *words, version)


def _named(header: Pdu, reader: _Reader) -> NamedResponse:
    # Some leave the body out, with a good status too.
    name = "" if reader.is_done else reader.words()
    return NamedResponse(header.command, header.sequence, header.status, name, reader.tlvs())


def _short(header: Pdu, reader: _Reader) -> Short:
    service_type = reader.words()
    source, destination = reader.address(), reader.address()
    esm_class = reader.byte()
    reader.take(2)
    reader.words()
    validity = reader.words()
    registered, _, coding, _, length = reader.take(5)
    message = reader.take(length)
    return Short(
        header.command,
        header.sequence,
        header.status,
        source=source,
        destination=destination,
        message=message,
        service_type=service_type,
        esm_class=esm_class,
        validity=validity,
        registered=registered,
        coding=coding,
        tlvs=reader.tlvs(),
    )


def _data(header: Pdu, reader: _Reader) -> Short:
    service_type = reader.words()
    source, destination = reader.address(), reader.address()
    esm_class, registered, coding = reader.take(3)
    return Short(
        header.command,
        header.sequence,
        header.status,
        source=source,
        destination=destination,
        service_type=service_type,
        esm_class=esm_class,
        registered=registered,
        coding=coding,
        tlvs=reader.tlvs(),
    )


_BINDS = (Command.BIND_RECEIVER, Command.BIND_TRANSMITTER, Command.BIND_TRANSCEIVER)
_BODIES: dict[int, Callable[[Pdu, _Reader], Pdu]] = {
    **dict.fromkeys(map(int, _BINDS), _bind),
    **{command | RESPONSE: _named for command in _BINDS},
    Command.SUBMIT_SM: _short,
    Command.DELIVER_SM: _short,
    Command.DATA_SM: _data,
    **{c | RESPONSE: _named for c in (Command.SUBMIT_SM, Command.DELIVER_SM, Command.DATA_SM)},
}
