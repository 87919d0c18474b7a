"""One bind over one connection: requests and their responses, whatever the order; requests of
the other side are answered when they are dealt with.

Sockets and threads, nothing else: what a text is, the gateway knows.
"""

import logging
import socket
import ssl
import threading
from collections.abc import Callable, Iterable
from contextlib import suppress
from dataclasses import dataclass, field

from assistant.gateways.smpp.pdu import (
    RESPONSE,
    SEQUENCES,
    Bind,
    Command,
    CommandStatus,
    NamedResponse,
    Pdu,
    PduError,
    Short,
    decode,
    length_of,
    status_words,
)
from assistant.gateways.smpp.terms import SmppTerms
from assistant.gateways.smpp.tls import Connection, SharedTls

log = logging.getLogger(__name__)

READ_AT_ONCE = 65_536
Landed = Callable[[Pdu | None], None]
"""Is told the response to a request; None where the connection ended before it came."""


class BindError(Exception):
    """The message centre was not reached, or refused the bind; the text is for a person."""


class GoneError(Exception):
    """The connection ended, or its other side does not answer."""


class LostError(GoneError):
    """A request left and its response did not come: the other side may have obeyed it."""


@dataclass
class _Waiting:
    """A request whose response is waited for; `late` takes one that came too late for that."""

    late: Callable[[NamedResponse], None] | None = None
    here: threading.Event = field(default_factory=threading.Event)
    response: Pdu | None = None

    def end(self) -> None:
        """The connection is gone."""
        self.here.set()

    def land(self, response: Pdu) -> None:
        """The response is here."""
        if self.late is not None and isinstance(response, NamedResponse):
            self.late(response)
        self.response = response
        self.here.set()


@dataclass(frozen=True)
class _Flying:
    """A request that nobody waits for."""

    landed: Landed

    def end(self) -> None:
        self.landed(None)

    def land(self, response: Pdu) -> None:
        self.landed(response)


class SmppSession:
    """A bind between `open` and its end.

    Args:
        command: which bind
        deliver: is given each message of the other side, in the reading thread; it answers
            by `answer`, from any thread
        ended: is told once that the connection ended, and why
    """

    def __init__(
        self,
        terms: SmppTerms,
        command: Command,
        deliver: Callable[["SmppSession", Short], None],
        ended: Callable[["SmppSession", str], None],
    ) -> None:
        self._terms, self._command = terms, command
        self._deliver, self._ended = deliver, ended
        self._sequence = 0
        self._waiting: dict[int, _Waiting | _Flying] = {}
        self._lock, self._writing = threading.Lock(), threading.Lock()
        self._window = threading.BoundedSemaphore(terms.window)
        self._socket: Connection | None = None
        self._gone = ""

    # --- its life ----------------------------------------------------------------------------

    def open(self) -> str:
        """Connects and binds; the name of the message centre. Raises BindError."""
        terms = self._terms
        try:
            self._socket = self._connected()
        except OSError as fault:
            why = fault.strerror or str(fault) or type(fault).__name__
            raise BindError(f"{terms.host}:{terms.port} is not reached: {why}") from fault
        threading.Thread(target=self._read, name="smpp", daemon=True).start()
        asked = Bind(
            self._command,
            0,
            system_id=terms.system_id,
            password=terms.password,
            system_type=terms.system_type,
        )
        try:
            response = self.request(asked)
        except GoneError as fault:
            self.drop(str(fault))
            raise BindError(f"the bind was not answered: {fault}") from fault
        if response.status:
            why = f"the bind was refused: {status_words(response.status)}"
            self.drop(why)
            raise BindError(why)
        return response.name if isinstance(response, NamedResponse) else ""

    def _connected(self) -> Connection:
        terms = self._terms
        plain = socket.create_connection((terms.host, terms.port), terms.answer_s)
        plain.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        if terms.tls:
            context = ssl.create_default_context(cafile=terms.ca_file or None)
            return SharedTls(context.wrap_socket(plain, server_hostname=terms.host))
        plain.settimeout(None)  # reading waits for ever; a silent peer is found by enquire_link
        return plain

    @property
    def is_up(self) -> bool:
        return self._socket is not None and not self._gone

    def close(self) -> None:
        """Unbinds, and ends the connection."""
        if self.is_up:
            with suppress(GoneError):
                self.request(Pdu(Command.UNBIND, 0))
        self.drop("closed")

    def drop(self, why: str) -> None:
        """Ends the connection at once; whoever waits for a response is told."""
        with self._lock:
            if self._gone:
                return
            self._gone = why
            waiting, self._waiting = list(self._waiting.values()), {}
        for each in waiting:
            each.end()
        if self._socket is not None:
            with suppress(OSError):
                self._socket.shutdown(socket.SHUT_RDWR)
            self._socket.close()
        self._ended(self, why)

    # --- requests of ours --------------------------------------------------------------------

    def submit(self, pdu: Pdu, late: Callable[[NamedResponse], None]) -> Pdu:
        """Sends a text within the window; its response. Raises GoneError; a response that
        comes later is given to `late`."""
        if not self.enter(wait=True):
            raise GoneError("the window stayed full")
        try:
            return self.request(pdu, late)
        finally:
            self.leave()

    def enter(self, *, wait: bool) -> bool:
        """Takes a place in the window, for as long as an answer may take, or only a free one;
        whether there was one."""
        if wait:
            return self._window.acquire(timeout=self._terms.answer_s)
        return self._window.acquire(blocking=False)

    def leave(self) -> None:
        """Gives a place in the window back."""
        self._window.release()

    @property
    def window(self) -> int:
        """How many requests may be unanswered."""
        return self._terms.window

    @property
    def answer_s(self) -> float:
        """How long an answer is waited for [s]."""
        return self._terms.answer_s

    @property
    def why(self) -> str:
        """Why the connection ended; empty while it stands."""
        return self._gone

    def enquire(self) -> None:
        """Asks whether the other side is there. Raises GoneError."""
        self.request(Pdu(Command.ENQUIRE_LINK, 0))

    def request(self, pdu: Pdu, late: Callable[[NamedResponse], None] | None = None) -> Pdu:
        """Sends a request under a number of its own; its response. Raises GoneError."""
        waiting = _Waiting(late)
        with self._lock:
            sequence = self._number(waiting)
        self._write(pdu.encode(sequence))
        if not waiting.here.wait(self._terms.answer_s) and late is None:
            with self._lock:
                self._waiting.pop(sequence, None)
        if waiting.response is None:
            raise LostError(self._gone or f"no answer within {self._terms.answer_s:g} s")
        return waiting.response

    def launch(self, requests: Iterable[tuple[Pdu, Landed]]) -> None:
        """Sends requests by one write and waits for none; each is told its response. Raises
        GoneError where none of them left."""
        with self._lock:
            octets = [pdu.encode(self._number(_Flying(landed))) for pdu, landed in requests]
        with suppress(GoneError):  # which has been told to each
            self._write(b"".join(octets))

    def _number(self, waiting: _Waiting | _Flying) -> int:
        """A number for a request, under which it waits. The lock is held."""
        if self._gone:
            raise GoneError(self._gone)
        self._sequence = self._sequence % SEQUENCES + 1
        self._waiting[self._sequence] = waiting
        return self._sequence

    def answer(self, pdu: Pdu, status: int = CommandStatus.OK) -> bool:
        """Answers a request of the other side; False where the connection was gone."""
        command = pdu.command | RESPONSE
        kind = NamedResponse if pdu.command in (Command.DELIVER_SM, Command.DATA_SM) else Pdu
        try:
            self._write(kind(command, pdu.sequence, status).encode())
        except GoneError:
            return False
        return True

    def _write(self, octets: bytes) -> None:
        try:
            with self._writing:
                if self._socket is None:
                    raise GoneError("not connected")
                self._socket.sendall(octets)
        except OSError as fault:
            self.drop(f"the connection broke: {fault}")
            raise GoneError(self._gone) from fault

    # --- what comes in -----------------------------------------------------------------------

    def _read(self) -> None:
        """Reads until the connection ends. PDUs come in any pieces."""
        held = bytearray()
        why = "the message centre ended the connection"
        connection = self._socket
        assert connection is not None
        try:
            while octets := connection.recv(READ_AT_ONCE):
                held += octets
                self._take_all(held)
        except PduError as fault:
            why = f"what came is no SMPP: {fault}"
            self._refuse(Pdu(0, 0), fault.status)
        except OSError as fault:
            why = f"the connection broke: {fault}"
        self.drop(why)

    def _take_all(self, held: bytearray) -> None:
        start = 0
        while len(held) - start >= 16:
            length = length_of(bytes(held[start : start + 4]))
            if len(held) - start < length:
                break
            self._take(bytes(held[start : start + length]))
            start += length
        del held[:start]

    def _take(self, octets: bytes) -> None:
        header = Pdu(*_header(octets))
        try:
            pdu = decode(octets)
        except PduError as fault:
            log.warning("a PDU 0x%08X that cannot be read: %s", header.command, fault)
            if not header.is_response:
                self._refuse(header, fault.status)
            return
        if pdu.is_response:
            self._respond(pdu)
        elif isinstance(pdu, Short):
            self._deliver(self, pdu)
        elif pdu.command in (Command.ENQUIRE_LINK, Command.UNBIND):
            self.answer(pdu)
            if pdu.command == Command.UNBIND:
                self.drop("the message centre unbound")
        else:
            self._refuse(pdu, CommandStatus.WRONG_COMMAND)

    def _respond(self, pdu: Pdu) -> None:
        with self._lock:
            waiting = self._waiting.pop(pdu.sequence, None)
        if waiting is not None:
            waiting.land(pdu)

    def _refuse(self, pdu: Pdu, status: int) -> None:
        with suppress(GoneError):
            self._write(Pdu(Command.NACK, pdu.sequence, status).encode())


def _header(octets: bytes) -> tuple[int, int, int]:
    numbers = [int.from_bytes(octets[place : place + 4], "big") for place in (4, 12, 8)]
    return numbers[0], numbers[1], numbers[2]
