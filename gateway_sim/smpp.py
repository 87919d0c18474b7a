"""A message centre that speaks SMPP v3.4: the operator's own reading of the standard.

SMPP Protocol Specification v3.4, Issue 1.2: header 3.2, bodies 4, fields 5. Clients bind as
transceiver, transmitter or receiver; what they submit reaches the virtual phones, joined from
its segments; what phones write, receipts and USSD steps go out as deliver_sm to who may
receive.
"""

import socket
import ssl
import struct
from collections import deque
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from itertools import count
from threading import Condition, RLock, Thread
from typing import TYPE_CHECKING, Any

from flask import Flask

from gateway_sim import alphabet, wire
from gateway_sim.callbacks import Reply
from gateway_sim.errors import StartError
from gateway_sim.joining import Joining
from gateway_sim.record import EntryKind
from gateway_sim.tls import TlsConnection

if TYPE_CHECKING:
    from gateway_sim.network import Network

BIND_RX, BIND_TX, SUBMIT, DELIVER, UNBIND, BIND_TRX, ENQUIRE = 1, 2, 4, 5, 6, 9, 0x15
NACK, RESPONSE = 0x80000000, 0x80000000
OK, BAD_LENGTH, BAD_COMMAND, BAD_STATE, BAD_DESTINATION = 0, 2, 3, 4, 0x0B
BAD_PASSWORD, BAD_SYSTEM, FAILED, THROTTLED = 0x0E, 0x0F, 0x45, 0x58
T_PAYLOAD, T_SAR_REF, T_SAR_TOTAL, T_SAR_PART = 0x0424, 0x020C, 0x020E, 0x020F
T_RECEIPTED, T_STATE, T_USSD, T_SESSION = 0x001E, 0x0427, 0x0501, 0x1383
T_MARK = 0x0204
_STATES = {"delivered": (2, "DELIVRD"), "expired": (3, "EXPIRED"), "failed": (5, "UNDELIV")}
LARGEST = 70_000
FAULTS = ("throttle", "full", "silent", "crash", "half", "drop")


@dataclass(frozen=True)
class SmppAccount:
    """Who may bind, and how this message centre tells things.

    receipts: what a receipt bears: text, fields, or both
    marks:    a receipt bears the client's user_message_reference, beside the other fields
    hex_ids:  a submit is answered with an id in hexadecimal, a receipt bears it in decimal
    """

    system_id: str = "nursery"
    password: str = "secret"
    receipts: str = "both"
    hex_ids: bool = False
    marks: bool = True


@dataclass
class _Part:
    """One segment as it was submitted; the client's own mark of it, where it gave one."""

    id: str
    text: str
    mark: bytes | None = None


@dataclass
class _Bind:
    """One client, from its bind to the end of its connection."""

    connection: socket.socket | TlsConnection
    sends: bool = False
    hears: bool = False
    writing: RLock = field(default_factory=RLock)


class Centre:
    """A message centre on a port of this machine. `faults` are taken one a submit_sm of a text,
    `screen_faults` one a screen of USSD:

    throttle, full: it is refused for now        silent: it is taken and never answered
    crash: it is taken, and the connection ends before the answer
    half:  half of the answer is written, then the connection ends
    drop:  the connection ends and nothing is taken
    """

    url = ""

    def __init__(
        self,
        clock: Callable[[], datetime],
        account: SmppAccount | None = None,
        answer_seconds: float = 10,
        tls: ssl.SSLContext | None = None,
        port: int = 0,
    ) -> None:
        self.account = account or SmppAccount()
        self.faults: deque[str] = deque()
        self.screen_faults: deque[str] = deque()
        self.submitted = 0
        self._clock, self._seconds, self._tls = clock, answer_seconds, tls
        self._network: Network | None = None
        self._numbers, self._sequence, self._sessions = count(1), count(1), count(1)
        self._binds: list[_Bind] = []
        self._answers: dict[int, int] = {}
        self._shown: dict[int, tuple[str, bool]] = {}
        self._session_numbers: dict[str, int] = {}
        self._parts: Joining[_Part] = Joining()
        self._ids: dict[str, tuple[str, list[_Part]]] = {}
        self._changed = Condition()
        try:
            self._door = socket.create_server(("127.0.0.1", port))
        except OSError as taken:
            raise StartError(
                f"port {port} is not free: end what has it, or take another (--smpp-port)"
            ) from taken
        self.port: int = self._door.getsockname()[1]
        Thread(target=self._accept, name="smpp-door", daemon=True).start()

    def serve(self, app: Flask, network: "Network") -> None:
        """Take what clients submit."""
        self._network = network

    def close(self) -> None:
        """End all connections."""
        with suppress(OSError):
            self._door.shutdown(socket.SHUT_RDWR)
        self._door.close()
        self.drop()

    def drop(self) -> None:
        """End the connections of all clients; they may bind again."""
        for bind in list(self._binds):
            self._end(bind)

    def wait_bound(self, seconds: float = 60, binds: int = 1) -> bool:
        """Wait for clients that receive; whether so many are bound."""
        with self._changed:
            return self._changed.wait_for(
                lambda: sum(bind.hears for bind in self._binds) >= binds, seconds
            )

    # --- connections -------------------------------------------------------------------------

    def _accept(self) -> None:
        while True:
            try:
                plain, _ = self._door.accept()
                plain.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
                connection = self._secured(plain)
            except ssl.SSLError:
                continue
            except OSError:
                return
            bind = _Bind(connection)
            self._binds.append(bind)
            Thread(target=self._serve, args=(bind,), name="smpp-client", daemon=True).start()

    def _secured(self, plain: socket.socket) -> socket.socket | TlsConnection:
        if self._tls is None:
            return plain
        return TlsConnection(self._tls.wrap_socket(plain, server_side=True))

    def _serve(self, bind: _Bind) -> None:
        held = b""
        try:
            while octets := bind.connection.recv(65_536):
                held += octets
                while len(held) >= 16:
                    (length,) = struct.unpack(">I", held[:4])
                    if not 16 <= length <= LARGEST:
                        self._write(bind, NACK, BAD_LENGTH, 0)
                        return
                    if len(held) < length:
                        break
                    whole, held = held[:length], held[length:]
                    self._take(bind, whole)
        except OSError:
            pass
        finally:
            self._end(bind)

    def _end(self, bind: _Bind) -> None:
        with suppress(OSError):
            bind.connection.shutdown(socket.SHUT_RDWR)
        bind.connection.close()
        with self._changed:
            if bind in self._binds:
                self._binds.remove(bind)
            bind.sends = bind.hears = False
            self._changed.notify_all()

    def _write(
        self, bind: _Bind, command: int, status: int, sequence: int, body: bytes = b""
    ) -> None:
        head = struct.pack(">IIII", 16 + len(body), command, status, sequence)
        with bind.writing:
            bind.connection.sendall(head + body)

    # --- what clients ask --------------------------------------------------------------------

    def _take(self, bind: _Bind, whole: bytes) -> None:
        _, command, status, sequence = struct.unpack(">IIII", whole[:16])
        body = whole[16:]
        if command & RESPONSE:
            with self._changed:
                self._answers[sequence] = status
                self._changed.notify_all()
        elif command in (BIND_RX, BIND_TX, BIND_TRX):
            self._bind(bind, command, sequence, body)
        elif command == ENQUIRE:
            self._write(bind, ENQUIRE | RESPONSE, OK, sequence)
        elif command == UNBIND:
            self._write(bind, UNBIND | RESPONSE, OK, sequence)
            self._end(bind)
        elif command == SUBMIT:
            self._submit(bind, sequence, body)
        else:
            self._write(bind, NACK, BAD_COMMAND, sequence)

    def _bind(self, bind: _Bind, command: int, sequence: int, body: bytes) -> None:
        system_id, password, *_ = body.split(b"\0")
        status = OK
        if system_id.decode() != self.account.system_id:
            status = BAD_SYSTEM
        elif password.decode() != self.account.password:
            status = BAD_PASSWORD
        named = b"centre\0" + struct.pack(">HHB", 0x0210, 1, 0x34)
        with bind.writing:  # bound once it is told so, and told nothing else before
            with self._changed:
                bind.sends = not status and command != BIND_RX
                bind.hears = not status and command != BIND_TX
                self._changed.notify_all()
            self._write(bind, command | RESPONSE, status, sequence, b"" if status else named)

    def _submit(self, bind: _Bind, sequence: int, body: bytes) -> None:
        self.submitted += 1
        sent = _read(body)
        faults = self.screen_faults if T_USSD in sent["tlvs"] else self.faults
        fault = faults.popleft() if faults else ""
        if fault and self._network is not None:
            self._network.core.note(EntryKind.HANDED_IN, detail=f"fault: {fault}", code=503)
        early = {"throttle": THROTTLED, "full": 0x14}.get(fault)
        if not bind.sends or early is not None:
            status = BAD_STATE if early is None else early
            self._write(bind, SUBMIT | RESPONSE, status, sequence)
            return
        if fault == "drop":
            self._end(bind)
            return
        status, name = self._submitted(sent)
        if fault == "silent":
            return
        answer = b"" if status else name.encode() + b"\0"
        if fault == "half":
            bind.connection.sendall(struct.pack(">IIII", 16 + len(answer), SUBMIT, 0, 0)[:9])
        if fault in ("crash", "half"):
            self._end(bind)
            return
        self._write(bind, SUBMIT | RESPONSE, status, sequence, answer)

    def _submitted(self, sent: Mapping[str, Any]) -> tuple[int, str]:
        if T_USSD in sent["tlvs"]:
            return self._show(sent)
        number = next(self._numbers)
        name = f"{number:X}" if self.account.hex_ids else f"c{number}"
        part = _Part(
            str(number) if self.account.hex_ids else name,
            sent["text"],
            sent["tlvs"].get(T_MARK),
        )
        whole = self._joined(sent, part)
        if whole is None:
            return OK, name
        assert self._network is not None
        text = wire.HandedIn(
            part.id,
            "+" + sent["to"],
            "+" + sent["from"],
            "".join(each.text for each in whole),
            _until(sent["validity"], self._clock()),
        )
        self._ids[part.id] = sent["to"], whole
        answer, _ = self._network.hand_in(text)
        if answer.code in (200, 202):
            ref, _, total = sent["piece"]
            self._parts.done((sent["to"], ref, total))
            return OK, name
        self._back(sent)
        if answer.code == 422:
            return (BAD_DESTINATION if "not a phone" in answer.detail else FAILED), ""
        return THROTTLED, ""

    def _joined(self, sent: Mapping[str, Any], part: _Part) -> list[_Part] | None:
        """All segments of a text, in order, once the last of them came."""
        ref, place, total = sent["piece"]
        if total < 2:
            return [part]
        return self._parts.add((sent["to"], ref, total), place, total, part, self._clock())

    def _back(self, sent: Mapping[str, Any]) -> None:
        """A segment that was refused: those before it wait for it to come again."""
        ref, place, total = sent["piece"]
        self._parts.back((sent["to"], ref, total), place)

    # --- what phones do ----------------------------------------------------------------------

    def call(self, path: str, fields: Mapping[str, Any]) -> Reply:
        """Deliver to whoever may receive; without a client that does, no code."""
        if path == "/gateway/text":
            return self._deliver_text(fields)
        if path == "/gateway/receipt":
            return self._deliver_receipt(fields)
        if path == "/gateway/ussd":
            return self._deliver_step(fields)
        return Reply(200, detail="SMPP tells of no missed calls")

    def _deliver_text(self, fields: Mapping[str, Any]) -> Reply:
        cut = alphabet.cut(fields["text"])
        reference = next(self._sessions) & 0xFF
        reply = Reply(200)
        for place, words in enumerate(cut.parts, 1):
            octets, coding = _octets(words, cut.encoding)
            esm = 0
            if cut.segments > 1:
                octets = bytes([5, 0, 3, reference, cut.segments, place]) + octets
                esm = 0x40
            reply = self._deliver(fields["from"], fields["to"], octets, coding=coding, esm=esm)
            if not reply.ok:
                return reply
        return reply

    def _deliver_receipt(self, fields: Mapping[str, Any]) -> Reply:
        state, word = _STATES[fields["fate"]]
        at = datetime.fromisoformat(fields["at"]).astimezone(UTC).strftime("%y%m%d%H%M")
        reply = Reply(200)
        phone, parts = self._ids.get(fields["id"], ("", [_Part(fields["id"], "")]))
        for part in parts:
            words = (
                f"id:{part.id} sub:001 dlvrd:{int(state == 2):03} submit date:{at} "
                f"done date:{at} stat:{word} err:{0 if state == 2 else 1:03} text:"
            ).encode() + part.text.encode("ascii", "replace")[:20]
            tlvs = {T_RECEIPTED: part.id.encode() + b"\0", T_STATE: bytes([state])}
            if part.mark is not None and self.account.marks:
                tlvs[T_MARK] = part.mark
            reply = self._deliver(
                "+" + phone,
                self._own_number(),
                words if self.account.receipts != "fields" else b"",
                esm=0x04,
                tlvs=tlvs if self.account.receipts != "text" else {},
            )
            if not reply.ok:
                return reply
        return reply

    def _own_number(self) -> str:
        assert self._network is not None
        return self._network.own_number

    def _deliver_step(self, fields: Mapping[str, Any]) -> Reply:
        """One step of a session, and the screen that comes back."""
        step, session = fields["step"], fields["session"]
        number = self._session_numbers.setdefault(session, next(self._sessions) & 0xFF)
        words = fields["code"] if step == "begin" else fields["text"]
        encoding = alphabet.encoding_of(words)
        octets, coding = _octets(words, encoding)
        tlvs = {T_USSD: bytes([1 if step == "begin" else 18])}
        tlvs[T_SESSION] = bytes([number, 1 if step == "end" else 0])
        self._shown.pop(number, None)
        coding = coding or 0x0F
        to = fields["code"].strip("*#").replace("*", "")
        reply = self._deliver(fields["from"], to, octets, coding=coding, tlvs=tlvs)
        if not reply.ok or step == "end":
            self._session_numbers.pop(session, None)
            return reply
        with self._changed:
            self._changed.wait_for(lambda: number in self._shown, self._seconds)
            shown = self._shown.pop(number, None)
        if shown is None:
            return Reply(None, detail="no screen came")
        return Reply(200, wire.written({"text": shown[0], "more": shown[1]}))

    def _show(self, sent: Mapping[str, Any]) -> tuple[int, str]:
        number = sent["tlvs"][T_SESSION][0]
        with self._changed:
            self._shown[number] = sent["text"], sent["tlvs"][T_USSD][0] == 2
            self._changed.notify_all()
        return OK, f"u{next(self._numbers)}"

    def _deliver(
        self,
        source: str,
        to: str,
        octets: bytes,
        *,
        coding: int = 0,
        esm: int = 0,
        tlvs: Mapping[int, bytes] | None = None,
    ) -> Reply:
        """One deliver_sm and its answer."""
        bind = next((each for each in self._binds if each.hears), None)
        if bind is None:
            return Reply(None, detail="nobody is bound to receive")
        sequence = next(self._sequence)
        body = _written(source, to, octets, coding, esm, tlvs or {})
        try:
            self._write(bind, DELIVER, OK, sequence, body)
        except OSError as gone:
            return Reply(None, detail=f"the client is gone: {gone}")
        with self._changed:
            self._changed.wait_for(
                lambda: sequence in self._answers or not bind.hears, self._seconds
            )
            status = self._answers.pop(sequence, None)
        if status is None:
            return Reply(None, detail="the client did not answer")
        return Reply(200 if status == OK else 503, detail=f"status 0x{status:02x}")


def _octets(words: str, encoding: str) -> tuple[bytes, int]:
    if encoding == alphabet.GSM_7BIT:
        return alphabet.septets(words), 0
    return words.encode("utf-16-be"), 8


def _written(
    source: str, to: str, octets: bytes, coding: int, esm: int, tlvs: Mapping[int, bytes]
) -> bytes:
    """The body of a deliver_sm (4.6.1)."""
    body = b"\0\x01\x01" + source.removeprefix("+").encode() + b"\0"
    body += b"\x01\x01" + to.removeprefix("+").encode() + b"\0"
    body += bytes([esm, 0, 0]) + b"\0\0" + bytes([0, 0, coding, 0, len(octets)]) + octets
    for tag, value in tlvs.items():
        body += struct.pack(">HH", tag, len(value)) + value
    return body


def _read(body: bytes) -> dict[str, Any]:
    """A submit_sm (4.4.1) as fields; `piece` is (reference, place, total)."""
    _, _, rest = body.partition(b"\0")
    source, _, rest = rest[2:].partition(b"\0")
    to, _, rest = rest[2:].partition(b"\0")
    esm = rest[0]
    _, _, rest = rest[3:].partition(b"\0")
    validity, _, rest = rest.partition(b"\0")
    coding, length = rest[2], rest[4]
    octets, rest = rest[5 : 5 + length], rest[5 + length :]
    tlvs: dict[int, bytes] = {}
    while rest:
        tag, size = struct.unpack(">HH", rest[:4])
        tlvs[tag], rest = rest[4 : 4 + size], rest[4 + size :]
    octets = tlvs.get(T_PAYLOAD, octets)
    piece = ("", 1, 1)
    if esm & 0x40:
        header, octets = octets[1 : octets[0] + 1], octets[octets[0] + 1 :]
        if header[0] == 0:
            piece = (f"8-{header[2]}", header[4], header[3])
        elif header[0] == 8:
            piece = (f"16-{header[2:4].hex()}", header[5], header[4])
    elif T_SAR_REF in tlvs:
        piece = (f"sar-{tlvs[T_SAR_REF].hex()}", tlvs[T_SAR_PART][0], tlvs[T_SAR_TOTAL][0])
    return {
        "from": source.decode(),
        "to": to.decode(),
        "validity": validity.decode(),
        "text": _text(octets, coding),
        "tlvs": tlvs,
        "piece": piece,
    }


def _text(octets: bytes, coding: int) -> str:
    if coding == 8:
        return octets.decode("utf-16-be")
    if coding == 3:
        return octets.decode("latin-1")
    return alphabet.from_septets(octets)


def _until(validity: str, now: datetime) -> datetime:
    """The end of a text's time (7.1.1): absolute with a quarter-hour offset, or relative."""
    if not validity:
        return now + timedelta(days=1)
    years, months, days, hours, minutes, seconds = (
        int(validity[place : place + 2]) for place in range(0, 12, 2)
    )
    if validity.endswith("R"):
        days += 365 * years + 30 * months
        return now + timedelta(days=days, hours=hours, minutes=minutes, seconds=seconds)
    offset = timedelta(minutes=15 * int(validity[13:15]))
    at = datetime(2000 + years, months, days, hours, minutes, seconds, tzinfo=UTC)
    return at - offset if validity.endswith("+") else at + offset
