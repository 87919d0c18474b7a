"""A modem as a line: sends one text after another, and brings what its SIM card stores."""

import hashlib
import logging
import queue
import re
import threading
from collections.abc import Callable
from datetime import datetime, timedelta
from uuid import uuid4

import serial

from assistant.alphabet import cost
from assistant.channel import (
    Channel,
    Clock,
    Fate,
    Handover,
    Incoming,
    News,
    NotKeptError,
    Outgoing,
    Receipt,
    Take,
)
from assistant.gateways.lost import UnknownReports
from assistant.gateways.memory import Taken
from assistant.gateways.modem import tpdu
from assistant.gateways.modem.credit import credit_words
from assistant.gateways.modem.port import CommandError, Port, PortError, Serial
from assistant.gateways.modem.terms import ModemTerms
from assistant.gateways.modem.trouble import network_words, port_words, refused, sim_words
from assistant.gateways.numbers import e164

log = logging.getLogger(__name__)

FIRST_PAUSE_S, LONGEST_PAUSE_S = 1.0, 60.0
BUSY_S = 3.0  # how long a text waits for the one before it; then it is put off
SAME_CALL_S = 15.0  # a phone that goes on ringing is one call
_SETTINGS = ("E0", "+CMEE=1", "+CMGF=0", '+CPMS="SM","SM","SM"', "+CLIP=1")
_REGISTERED = re.compile(r"\+CREG: \d,[15]\b.*")
_LISTED = re.compile(r"\+CMGL: (\d+),.*")
_PDU = re.compile(r"[0-9A-F]{20,}")
_CALLER = re.compile(r'\+CLIP: "([+0-9]+)",.*')

OpenPort = Callable[[ModemTerms], Serial]


def open_serial(terms: ModemTerms) -> Serial:
    """The serial port. Raises OSError."""
    found: Serial = serial.Serial(terms.port, terms.baud, timeout=0.1, write_timeout=5)
    return found


class ModemGateway:
    """A line by a modem. It works only between `open` and `close`, in one process.

    A text from a phone stays on the SIM card until it is stored here, and is brought again
    after a crash under the same id.
    """

    def __init__(self, terms: ModemTerms, open_port: OpenPort = open_serial) -> None:
        self._terms, self._open_port = terms, open_port
        self._taken, self._lost = Taken(), UnknownReports()
        self._last: int | None = None  # the modem counts what it sends, to 255
        self._doubted: dict[tuple[str, int], frozenset[int]] = {}
        self._counting = threading.Lock()  # no report is read before its count is known
        self._clock: Clock | None = None
        self._port: Port | None = None
        self._pin_tried = False
        self._why = "not opened in this process"
        self._stopping, self._look, self._up = (threading.Event() for _ in range(3))
        self._calls: list[str] = []
        self._shown: list[str] = []
        self._told: queue.SimpleQueue[str] = queue.SimpleQueue()
        self._rang: tuple[str, datetime] | None = None
        self._thread: threading.Thread | None = None

    # --- its life ----------------------------------------------------------------------------

    def open(self, take: Take, clock: Clock) -> None:
        """Begins to keep the modem, in a thread of its own."""
        self._stopping.clear()
        self._clock = clock
        self._thread = threading.Thread(
            target=self._run, args=(take, clock), name="modem-keeper", daemon=True
        )
        self._thread.start()

    def close(self) -> None:
        """Gives the port back; what is on the SIM card stays there."""
        self._stopping.set()
        self._look.set()
        if self._thread is not None:
            self._thread.join()
        self._why = "closed"

    def wait_up(self, seconds: float) -> bool:
        """Waits until texts can be sent; whether they can."""
        return self._up.wait(seconds)

    @property
    def why(self) -> str:
        """Why texts cannot be sent now; empty where they can."""
        return self._why

    def _tell(self, why: str) -> None:
        if why and why != self._why:
            log.warning("modem %s: %s", self._terms.port, why)
        self._why = why

    def _run(self, take: Take, clock: Clock) -> None:
        pause_s = FIRST_PAUSE_S
        while not self._stopping.is_set():
            try:
                port = Port(self._open_port(self._terms), self._hear)
            except OSError as fault:
                self._tell(port_words(self._terms.port, fault))
                self._stopping.wait(pause_s)
                pause_s = min(pause_s * 2, LONGEST_PAUSE_S)
                continue
            try:
                self._begin(port)
                pause_s = FIRST_PAUSE_S
                self._keep(port, take, clock)
            except (OSError, CommandError, _SimError) as fault:
                self._tell(str(fault))
            finally:
                self._port = None
                self._up.clear()
                port.close()
            self._stopping.wait(pause_s)
            pause_s = min(pause_s * 2, LONGEST_PAUSE_S)

    def _begin(self, port: Port) -> None:
        """Sets the modem up; raises _SimError where its card cannot be used."""
        port.abort()
        for setting in _SETTINGS[:2]:
            port.ask(f"AT{setting}", self._terms.answer_s)
        self._unlock(port)
        for setting in _SETTINGS[2:]:
            port.ask(f"AT{setting}", self._terms.answer_s)
        try:  # reports onto the card; some modems can only show them at once
            port.ask("AT+CNMI=2,1,0,2,0", self._terms.answer_s)
        except CommandError:
            port.ask("AT+CNMI=2,1,0,1,0", self._terms.answer_s)

    def _unlock(self, port: Port) -> None:
        try:
            state = " ".join(port.ask("AT+CPIN?", self._terms.answer_s))
            if "SIM PUK" in state:
                raise _SimError(sim_words(12))
            if "SIM PIN" in state:
                if not self._terms.pin or self._pin_tried:
                    raise _SimError(sim_words(16 if self._pin_tried else 11))
                self._pin_tried = True
                port.ask(f'AT+CPIN="{self._terms.pin}"', self._terms.answer_s)
                self._pin_tried = False
        except CommandError as fault:
            raise _SimError(sim_words(fault.code)) from fault

    def _keep(self, port: Port, take: Take, clock: Clock) -> None:
        """Until the port is gone, or is to be closed: brings what came."""
        self._look.set()
        while not self._stopping.is_set():
            self._look.wait(self._terms.poll_s)
            self._look.clear()
            self._registered(port)
            self._bring_calls(port, take, clock())
            self._bring_stored(port, take)

    def _registered(self, port: Port) -> None:
        """Whether there is a network; without one nothing is sent, but all is read."""
        said = port.ask("AT+CREG?", self._terms.answer_s)
        if any(_REGISTERED.fullmatch(line) for line in said):
            self._port = port
            self._tell("")
            self._up.set()
            return
        self._port = None
        self._up.clear()
        signal = next(iter(port.ask("AT+CSQ", self._terms.answer_s)), "")
        self._tell(network_words(next(iter(said), ""), signal))

    # --- out ---------------------------------------------------------------------------------

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """Offers one text, segment by segment; goes on where an earlier offer stopped."""
        port = self._port
        if port is None:
            return Handover(Fate.TRY_LATER, self._why or "not ready yet", answered=False)
        parts = tpdu.submits(
            outgoing.phone, outgoing.text, outgoing.message_id, outgoing.not_after - now
        )
        for place in range(len(self._taken.of(outgoing.message_id)), len(parts)):
            refused = self._offer(port, outgoing, place, parts[place], now)
            if refused is not None:
                return refused
        return Handover(Fate.ACCEPTED, parts=self._taken.of(outgoing.message_id))

    def _offer(
        self, port: Port, outgoing: Outgoing, place: int, ready: tpdu.Ready, now: datetime
    ) -> Handover | None:
        """Offers one segment, but where a report told that it was taken; None once it is."""
        segment = outgoing.message_id, place
        for count in self._doubted.get(segment, ()):
            if self._lost.taken(outgoing.phone, str(count), now):
                self._keep_part(outgoing, place, count)
                return None
        try:
            with self._counting:
                self._last = self._submit(port, ready)
                self._keep_part(outgoing, place, self._last)
        except CommandError as fault:
            return refused(fault.code)
        except TimeoutError as busy:
            later = now + timedelta(seconds=BUSY_S)
            return Handover(Fate.TRY_LATER, str(busy), put_off_until=later)
        except PortError as fault:
            return self._in_doubt(outgoing, place, str(fault), now)
        return None

    def _keep_part(self, outgoing: Outgoing, place: int, reference: int) -> None:
        """A segment was taken; it may have been before, under counts that were in doubt."""
        part = _part(outgoing.phone, reference)
        taken = self._taken.of(outgoing.message_id)
        self._taken.keep(outgoing.message_id, (*taken, part))
        self._lost.answered(outgoing.phone, str(reference))
        for count in self._doubted.pop((outgoing.message_id, place), ()):
            if count != reference:
                self._lost.answered(outgoing.phone, str(count), part)

    def _in_doubt(self, outgoing: Outgoing, place: int, said: str, now: datetime) -> Handover:
        """A segment that may have left waits for a report under the modem's next count."""
        if self._last is None:
            return Handover(Fate.TRY_LATER, said, answered=False, in_doubt=True)
        count, segment = self._last + 1 & 0xFF, (outgoing.message_id, place)
        self._doubted[segment] = self._doubted.get(segment, frozenset()) | {count}
        is_last = place + 1 == cost(outgoing.text).segments
        whole = outgoing.message_id if is_last else ""
        self._lost.doubt(outgoing.phone, str(count), "", now, whole)
        later = now + timedelta(seconds=self._terms.doubt_s)
        return Handover(
            Fate.TRY_LATER, said, answered=False, put_off_until=later, in_doubt=True
        )

    def _submit(self, port: Port, ready: tpdu.Ready) -> int:
        """The reference under which the network took a segment."""
        command = f"AT+CMGS={ready.length}"
        said = port.ask(command, self._terms.send_s, body=ready.hex, wait_s=BUSY_S)
        found = [line for line in said if line.startswith("+CMGS:")]
        if not found:
            raise PortError("the modem took a text and did not say under which number")
        return int(found[0].partition(":")[2].partition(",")[0])

    def time(self) -> datetime | None:
        """A modem's clock is nobody's word."""
        return None

    def credit(self) -> str:
        """What the network says of the card's credit; empty where no code is set or it does
        not answer."""
        if self._port is None or not self._terms.credit:
            return ""
        while not self._told.empty():
            self._told.get_nowait()
        try:
            self._port.ask(f'AT+CUSD=1,"{self._terms.credit}",15', self._terms.answer_s)
            return credit_words(self._told.get(timeout=self._terms.answer_s))
        except (OSError, CommandError, queue.Empty):
            return ""

    # --- in ----------------------------------------------------------------------------------

    def _hear(self, line: str) -> None:
        """What the modem says unasked, in the reading thread: only noted."""
        caller = _CALLER.fullmatch(line)
        if caller:
            self._calls.append(caller[1])
        elif line.startswith("+CUSD:"):
            self._told.put(line)
        elif _PDU.fullmatch(line):
            self._shown.append(line)
        self._look.set()

    def _bring_calls(self, port: Port, take: Take, now: datetime) -> None:
        """A call is ended unanswered, so that it costs the caller nothing, and brought once."""
        while self._calls:
            told = self._calls.pop(0)
            phone = e164(told, self._terms.country)
            again = self._rang is not None and self._rang[0] == phone
            if again and self._rang and now - self._rang[1] < timedelta(seconds=SAME_CALL_S):
                self._rang = (phone, now)
                continue
            self._rang = (phone, now)
            if phone:
                self._take(take, Incoming(uuid4().hex, phone, "", Channel.RING, now))
            try:
                port.ask("AT+CHUP", self._terms.answer_s)
            except CommandError:
                log.info("the call ended by itself")

    def _bring_stored(self, port: Port, take: Take) -> None:
        """Each message of the card: kept here, and only then taken off it. A modem that cannot
        store reports has shown them."""
        while self._shown:
            self._bring(take, self._shown.pop(0))
        lines = port.ask("AT+CMGL=4", self._terms.answer_s)
        for place, line in enumerate(lines[:-1]):
            listed = _LISTED.fullmatch(line)
            if listed and self._bring(take, lines[place + 1]):
                port.ask(f"AT+CMGD={listed[1]}", self._terms.answer_s)

    def _bring(self, take: Take, pdu: str) -> bool:
        """Whether a stored message is done with."""
        try:
            found = tpdu.read(pdu)
        except tpdu.TpduError as fault:
            log.warning("a message of the SIM card cannot be read and is deleted: %s", fault)
            return True
        news = self._news(found, pdu)
        return news is None or self._take(take, news)

    def _news(self, found: tpdu.Delivered | tpdu.Reported, pdu: str) -> News | None:
        if isinstance(found, tpdu.Reported):
            if found.fate is None:
                return None
            return self._receipt(found, found.fate)
        phone = e164(found.sender, self._terms.country)
        if not phone:
            log.info("a text from no number was dropped")
            return None
        # The message centre's second is in it: nobody writes the same twice within one, so it
        # is the same text, wherever it stands on the card and after a crash too.
        words = found.text.replace("\0", "\N{REPLACEMENT CHARACTER}")
        return Incoming(
            hashlib.sha256(pdu.encode()).hexdigest(),
            phone,
            words,
            Channel.SMS,
            found.at,
            piece=found.piece,
        )

    def _receipt(self, found: tpdu.Reported, fate: Fate) -> Receipt:
        part = _part(found.phone, found.reference)
        detail = "" if fate is Fate.DELIVERED else found.detail
        receipt = Receipt("", fate, found.at, detail, part=part)
        if self._clock is None:
            return receipt
        with self._counting:
            mark, known = str(found.reference), self._taken.has(part)
            return self._lost.told(receipt, found.phone, mark, "", self._clock(), known)

    def _take(self, take: Take, news: News) -> bool:
        try:
            take(news)
        except NotKeptError as fault:
            log.warning("what came stays on the SIM card: %s", fault)
            return False
        except Exception:
            log.exception("what came could not be taken; it stays on the SIM card")
            return False
        return True


class _SimError(Exception):
    """The SIM card cannot be used."""


def _part(phone: str, reference: int) -> str:
    """The network counts to 255 and begins anew: only with the number it is one text's."""
    return f"{phone.removeprefix('+')}-{reference}"
