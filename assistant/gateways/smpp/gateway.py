"""An SMPP account as a line: keeps its binds, sends, and brings what the operator delivers."""

import logging
import queue
import threading
from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from zlib import crc32

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
from assistant.gateways.memory import Repeats, Taken
from assistant.gateways.numbers import e164
from assistant.gateways.smpp import texts
from assistant.gateways.smpp.flight import Flight
from assistant.gateways.smpp.pdu import (
    Address,
    Command,
    CommandStatus,
    NamedResponse,
    Pdu,
    Short,
    Tag,
    status_words,
)
from assistant.gateways.smpp.session import BindError, GoneError, LostError, SmppSession
from assistant.gateways.smpp.terms import SmppTerms
from assistant.gateways.smpp.ussd import Menus

log = logging.getLogger(__name__)

EARS = 4  # messages of the operator that are taken at once, each phone's in their order
FIRST_PAUSE_S, LONGEST_PAUSE_S = 0.5, 60.0
REST_STATUS = frozenset({CommandStatus.QUEUE_FULL, CommandStatus.THROTTLED})
SHOWN_AGAIN_S = (0.0, 0.5, 1.0, 1.0, 2.0, 2.0)
AGAIN_STATUS = frozenset({CommandStatus.SYSTEM_ERROR, CommandStatus.COME_AGAIN})


class SmppGateway:
    """A line by SMPP. It sends only between `open` and `close`; one process may have it open.

    An operator that refuses its sender's number, or a text, has said so of the text; one that
    is too busy, of the line. A text whose answer was lost waits for a receipt that tells of it
    (`lost.py`); where none comes it is offered again, and may then come twice: SMPP has no id
    by which a message centre could tell, and no question without that centre's own id.
    """

    at_once = 250  # so many may come twice where the process is killed before it records them

    def __init__(self, terms: SmppTerms) -> None:
        self._terms = terms
        self._taken, self._repeats, self._lost = Taken(), Repeats(), UnknownReports()
        self._links: list[_Link] = []
        self._ears: _Ears | None = None
        self._menus = Menus(terms)
        self._why = "not opened in this process"
        self._stopping = threading.Event()

    # --- its life ----------------------------------------------------------------------------

    def open(self, take: Take, clock: Clock) -> None:
        """Begins to keep the binds, in threads of their own."""
        self._stopping.clear()
        put = self._listen(take, clock)
        commands = [Command.BIND_TRANSCEIVER]
        if self._terms.bind == "two":
            commands = [Command.BIND_TRANSMITTER, Command.BIND_RECEIVER]
        self._links = [_Link(self._terms, each, put, self._told) for each in commands]
        for link in self._links:
            link.start()

    def _listen(self, take: Take, clock: Clock) -> Callable[[SmppSession, Short], None]:
        self._ears = _Ears(lambda session, pdu: self._hear(take, clock(), session, pdu))
        return self._ears.put

    def close(self) -> None:
        """Unbinds and stops."""
        self._stopping.set()
        for link in self._links:
            link.stop()
        if self._ears is not None:
            self._ears.stop()
        self._links, self._why = [], "closed"

    def _told(self, why: str) -> None:
        if why != self._why:
            log.warning("SMPP %s: %s", self._terms.host, why) if why else log.info(
                "SMPP %s: bound", self._terms.host
            )
        self._why = why

    def wait_up(self, seconds: float) -> bool:
        """Waits until texts can be sent; whether they can."""
        return bool(self._links) and self._links[0].wait_up(seconds)

    @property
    def why(self) -> str:
        """Why texts cannot be sent now; empty where they can."""
        return self._why

    # --- out ---------------------------------------------------------------------------------

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """Offers one text, segment by segment; goes on where an earlier offer stopped."""
        session = self._session
        if session is None:
            return self._not_bound()
        parts = self.segments(outgoing)
        for place in range(len(self.taken(outgoing)), len(parts)):
            refused = self._offer(session, outgoing, place, parts[place], now)
            if refused is not None:
                return refused
        return Handover(Fate.ACCEPTED, parts=self.taken(outgoing))

    def in_lists(self, outgoing: Outgoing, now: datetime) -> bool:
        """Any text."""
        return True

    def send_all(self, texts: Sequence[Outgoing], now: datetime) -> list[Handover | None]:
        """Offers many within the window, those of a phone once; what was said of each."""
        session = self._session
        if session is None:
            return [self._not_bound(), *([None] * (len(texts) - 1))]
        return Flight(session, self, texts, now).fly()

    @property
    def _session(self) -> SmppSession | None:
        return self._links[0].session if self._links else None

    def _not_bound(self) -> Handover:
        return Handover(Fate.TRY_LATER, self._why or "not bound yet", answered=False)

    def _offer(
        self,
        session: SmppSession,
        outgoing: Outgoing,
        place: int,
        segment: texts.Segment,
        now: datetime,
    ) -> Handover | None:
        """Offers one segment, but where a receipt told that it was taken; None once it is."""
        if self.is_known(outgoing, place, now):
            return None

        def late(response: NamedResponse) -> None:
            self.answered(outgoing, place, response)

        try:
            response = session.submit(self.leaves(outgoing, place, segment, now), late)
        except LostError as fault:
            return self.in_doubt(str(fault), now)
        except GoneError as fault:
            self.stayed(outgoing, place)
            return Handover(Fate.TRY_LATER, str(fault), answered=False)
        return self.refused(response) if response.status else None

    def segments(self, outgoing: Outgoing) -> tuple[texts.Segment, ...]:
        """A text as this operator wants it."""
        return texts.segments(outgoing.text, outgoing.message_id, self._terms)

    def taken(self, outgoing: Outgoing) -> tuple[str, ...]:
        """The operator's ids of the segments of a text that it has."""
        return self._taken.of(outgoing.message_id)

    def is_known(self, outgoing: Outgoing, place: int, now: datetime) -> bool:
        """Whether a receipt told that a segment was taken whose answer was lost."""
        mark = texts.mark(outgoing.message_id, place).hex()
        part = self._lost.taken(outgoing.phone, mark, now)
        if part:
            self._taken.keep(outgoing.message_id, (*self.taken(outgoing), part))
        return bool(part)

    def leaves(
        self, outgoing: Outgoing, place: int, segment: texts.Segment, now: datetime
    ) -> Short:
        """A segment that is about to leave: until it is answered, it may have arrived."""
        mark = texts.mark(outgoing.message_id, place)
        words = "" if place else outgoing.text
        whole = outgoing.message_id if segment.is_last else ""
        self._lost.doubt(outgoing.phone, mark.hex(), words, now, whole)
        return self._submit(outgoing, mark, segment, now)

    def answered(self, outgoing: Outgoing, place: int, response: NamedResponse) -> None:
        """Remembers a segment that was taken, also where the answer came late."""
        taken, part = self.taken(outgoing), ""
        if response.status == CommandStatus.OK and len(taken) == place:
            part = texts.part_id(response.name, self._terms)
            self._taken.keep(outgoing.message_id, (*taken, part))
        self.stayed(outgoing, place, part)

    def stayed(self, outgoing: Outgoing, place: int, part: str = "") -> None:
        """A segment that did not leave, or was answered: no receipt is needed to tell."""
        mark = texts.mark(outgoing.message_id, place).hex()
        self._lost.answered(outgoing.phone, mark, part)

    def in_doubt(self, why: str, now: datetime) -> Handover:
        """The answer to a text was lost: a receipt may tell of it until it goes again."""
        later = now + timedelta(seconds=self._terms.doubt_s)
        return Handover(Fate.TRY_LATER, why, answered=False, put_off_until=later, in_doubt=True)

    def _submit(
        self, outgoing: Outgoing, mark: bytes, segment: texts.Segment, now: datetime
    ) -> Short:
        terms, tlvs = self._terms, dict(segment.tlvs)
        if terms.reference:
            tlvs[Tag.USER_REFERENCE] = mark
        return Short(
            Command.SUBMIT_SM,
            0,
            source=self._sender(),
            destination=Address(outgoing.phone.removeprefix("+")),
            message=segment.message,
            service_type=terms.service_type,
            esm_class=segment.esm_class,
            validity=texts.validity(outgoing.not_after, now, terms),
            registered=1,
            coding=segment.coding,
            tlvs=tlvs,
        )

    def _sender(self) -> Address:
        terms = self._terms
        return Address(terms.sender.removeprefix("+"), terms.sender_ton, terms.sender_npi)

    def refused(self, response: Pdu) -> Handover:
        """What a refusal means: of the line, of the text for now, or for good."""
        said = status_words(response.status)
        if response.status in REST_STATUS:
            return Handover(Fate.TRY_LATER, said, rest=timedelta(seconds=self._terms.rest_s))
        if response.status in AGAIN_STATUS or response.command == Command.NACK:
            return Handover(Fate.TRY_LATER, said)
        return Handover(Fate.FAILED, said)

    def time(self) -> datetime | None:
        """SMPP tells no time."""
        return None

    # --- in ----------------------------------------------------------------------------------

    def _hear(self, take: Take, now: datetime, session: SmppSession, pdu: Short) -> None:
        """Brings one message; the operator hears that it was taken once it is kept."""
        try:
            if self._menus.is_one(pdu):
                self._step(take, now, session, pdu)
            else:
                news = self._news(pdu, now)
                if news is not None:
                    take(news)
                if not session.answer(pdu) and isinstance(news, Incoming):
                    self._repeats.unanswered(now, news.gateway_id)
        except NotKeptError as fault:
            log.warning("a message is to be brought again: %s", fault)
            session.answer(pdu, CommandStatus.COME_AGAIN)
        except Exception:
            log.exception("a message could not be taken; it is to be brought again")
            session.answer(pdu, CommandStatus.COME_AGAIN)

    def _step(self, take: Take, now: datetime, session: SmppSession, pdu: Short) -> None:
        incoming = self._menus.heard(pdu, now)
        screen = take(incoming) if incoming is not None else None
        session.answer(pdu)
        if screen is not None:
            self._show(self._menus.shown(pdu, screen))

    def _show(self, shown: Short) -> None:
        """Shows a screen; again where the message centre was busy or there was no bind, for as
        long as a person looks at the phone. Not where its answer was lost: shown once more it
        might stand for the next one."""
        for pause_s in SHOWN_AGAIN_S:
            self._stopping.wait(pause_s)
            session = self._session
            if session is None:
                continue
            try:
                if session.request(shown).status not in REST_STATUS | AGAIN_STATUS:
                    return
            except LostError:
                return
            except GoneError:
                continue

    def _receipt(self, pdu: Short, now: datetime) -> Receipt | None:
        told = texts.told(pdu, now)
        if told is None or told.fate is None:
            return None
        part = texts.receipt_id(told.part, self._terms)
        phone = e164(pdu.source.number, self._terms.country)
        receipt = Receipt("", told.fate, told.at, told.detail, part=part)
        known = self._taken.has(part)
        return self._lost.told(receipt, phone, told.mark, told.words, now, known)

    def _news(self, pdu: Short, now: datetime) -> News | None:
        """What a message is; None for what nobody needs, such as a receipt on the way."""
        if texts.is_receipt(pdu):
            return self._receipt(pdu, now)
        phone = e164(pdu.source.number, self._terms.country)
        if not phone:
            log.info("a text from no number was dropped")
            return None
        words, piece = texts.heard(pdu, self._terms)
        words = words.replace("\0", "\N{REPLACEMENT CHARACTER}")
        # SMPP gives a delivery no id that lasts.
        over = pdu.destination.number, pdu.octets, pdu.coding, piece
        message_id = self._repeats.id_of(now, phone, *over)
        return Incoming(message_id, phone, words, Channel.SMS, now, piece=piece)


class _Link:
    """Keeps one bind: opens it again when it ends, in longer and longer pauses, and asks now
    and then whether the other side is still there."""

    def __init__(
        self,
        terms: SmppTerms,
        command: Command,
        deliver: Callable[[SmppSession, Short], None],
        told: Callable[[str], None],
    ) -> None:
        self._terms, self._command = terms, command
        self._deliver, self._told = deliver, told
        self.session: SmppSession | None = None
        self._up, self._changed, self._stopping = (threading.Event() for _ in range(3))
        self._thread = threading.Thread(target=self._run, name="smpp-link", daemon=True)

    def start(self) -> None:
        self._thread.start()

    def stop(self) -> None:
        self._stopping.set()
        self._changed.set()
        self._thread.join()

    def wait_up(self, seconds: float) -> bool:
        return self._up.wait(seconds)

    def _run(self) -> None:
        pause_s = FIRST_PAUSE_S
        while not self._stopping.is_set():
            session = SmppSession(self._terms, self._command, self._deliver, self._ended)
            try:
                session.open()
            except BindError as fault:
                self._told(str(fault))
                self._stopping.wait(pause_s)
                pause_s = min(pause_s * 2, LONGEST_PAUSE_S)
                continue
            pause_s = FIRST_PAUSE_S
            self._keep(session)
            self._stopping.wait(pause_s)

    def _keep(self, session: SmppSession) -> None:
        """Until the bind ends, or is to be closed."""
        self._changed.clear()
        self.session = session
        self._told("")
        self._up.set()
        while session.is_up and not self._stopping.is_set():
            if not self._changed.wait(self._terms.enquire_s):
                try:
                    session.enquire()
                except GoneError as fault:
                    session.drop(f"enquire_link: {fault}")
        self.session = None
        self._up.clear()
        session.close()

    def _ended(self, session: SmppSession, why: str) -> None:
        if session is self.session:
            self._told(why)
        self._changed.set()


class _Ears:
    """Threads that take messages: several at once, those of a phone one after another."""

    def __init__(self, hear: Callable[[SmppSession, Short], None]) -> None:
        self._hear = hear
        self._queues: list[queue.SimpleQueue[tuple[SmppSession, Short] | None]] = [
            queue.SimpleQueue() for _ in range(EARS)
        ]
        self._threads = [
            threading.Thread(target=self._run, args=(each,), name="smpp-ear", daemon=True)
            for each in self._queues
        ]
        for thread in self._threads:
            thread.start()

    def put(self, session: SmppSession, pdu: Short) -> None:
        """A message to take."""
        place = crc32(pdu.source.number.encode()) % EARS
        self._queues[place].put((session, pdu))

    def stop(self) -> None:
        """Ends once what is waiting was taken."""
        for each in self._queues:
            each.put(None)
        for thread in self._threads:
            thread.join()

    def _run(self, waiting: "queue.SimpleQueue[tuple[SmppSession, Short] | None]") -> None:
        while (item := waiting.get()) is not None:
            self._hear(*item)
