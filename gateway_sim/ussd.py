"""USSD sessions: one at a time for each phone, turn by turn, within the operator's limits."""

from datetime import datetime, timedelta
from functools import partial
from uuid import uuid4

from gateway_sim import alphabet
from gateway_sim.agenda import Due
from gateway_sim.callbacks import Reply
from gateway_sim.core import Core
from gateway_sim.errors import PhoneOffError, SessionError, TextError
from gateway_sim.handlers import InTransit
from gateway_sim.phones import Phone, ShownScreen, UssdSession
from gateway_sim.record import EntryKind
from gateway_sim.wire import RequestError, read_screen, stamp

PATH = "/gateway/ussd"
NO_SERVICE = "The service does not answer. Please try again later."
NO_NETWORK = "The network did not answer. Please dial again."
NO_CODE = "This code is not in use. Dial {code}"


class Ussd:
    """The sessions of all phones with the service behind one code."""

    def __init__(self, core: Core, code: str) -> None:
        self._core = core
        self._code = code
        self._timers: dict[str, Due] = {}

    def dial(self, phone: Phone, code: str) -> str:
        """Begin a session; the first screen. Raises SessionError, PhoneOffError."""
        core, now = self._core, self._core.now()
        code = "".join(code.split())
        with core.changed:
            if not phone.on:
                raise PhoneOffError(f"{phone.number} is switched off: switch it on first")
            self._lapse(phone)
            if phone.session:
                raise SessionError("this phone has a session open: answer it or hang up first")
            if code != self._code:
                return self._unknown(phone, code)
            ends = now + timedelta(seconds=core.limits.session_seconds)
            session = UssdSession(f"s-{uuid4().hex}", code, ends)
            phone.session, phone.screen, phone.ended = session, None, ""
            self._timers[session.id] = core.arrive_later(
                session.ends, partial(self._time_out, phone, session)
            )
        return self._turn(phone, session, "begin", "")

    def answer(self, phone: Phone, text: str) -> str:
        """Answer the screen; the next one. Raises SessionError where none is open."""
        text = alphabet.carried(text)
        with self._core.changed:
            self._lapse(phone)
            session = phone.session
            if session is None:
                why = f" (the last one ended: {phone.ended})" if phone.ended else ""
                raise SessionError(f"no session is open{why}: dial {self._code}")
            if session.asking:
                raise SessionError("wait for the screen before you answer again")
            encoding = alphabet.encoding_of(text)
            if alphabet.size(text, encoding) > self._room(encoding):
                raise TextError(
                    f"an answer holds at most {self._room(encoding)} {encoding} units"
                )
        return self._turn(phone, session, "answer", text)

    def hang_up(self, phone: Phone) -> None:
        """End the session because the person wishes it; the assistant is told."""
        self._break(phone, "hung up", told=True)

    def drop(self, phone: Phone, told: bool) -> None:
        """Lose the session on the way."""
        self._break(phone, "dropped", told)

    def _turn(self, phone: Phone, session: UssdSession, step: str, text: str) -> str:
        """One question to the assistant and the screen that comes back."""
        core = self._core
        fields = self._fields(phone, session, step, text)
        session.asking = True
        try:
            screen = self._ask(phone, fields)
        finally:
            session.asking = False
        with core.changed:
            if phone.session is not session:
                raise SessionError(f"the session ended before the screen came: {phone.ended}")
            phone.screen = screen
            core.note(
                EntryKind.USSD,
                phone.number,
                id=fields["id"],
                text=screen.text,
                detail=text or session.code,
            )
            if not screen.more:
                self._close(phone, session, "the service closed it")
        return screen.text

    def _ask(self, phone: Phone, fields: dict[str, str]) -> ShownScreen:
        turn = InTransit(fields["id"], "ussd", phone.number, fields["text"], self._core.now())
        reply: Reply | None = None
        for _ in self._core.course(turn).delays:
            reply = self._core.call(PATH, phone.number, fields)
        if reply is None:
            self._core.note(EntryKind.LOST, phone.number, id=turn.id, text=turn.text)
            return self._screen(phone, NO_NETWORK, more=False)
        try:
            if not reply.ok:
                raise RequestError(502, f"{reply.code or 'no'} answer to a USSD turn")
            return self._screen(phone, *read_screen(reply.body))
        except RequestError as broken:
            self._core.note(EntryKind.FAULT, phone.number, id=turn.id, detail=str(broken))
            return self._screen(phone, NO_SERVICE, more=False)

    def _screen(self, phone: Phone, text: str, more: bool) -> ShownScreen:
        """The text as the operator passes it on: what is too long is cut, and written down."""
        text = alphabet.carried(text)
        encoding = alphabet.encoding_of(text)
        limit, size = self._room(encoding), alphabet.size(text, encoding)
        if size > limit:
            self._core.note(
                EntryKind.FAULT,
                phone.number,
                text=text,
                detail=f"screen too long: {size} of {limit} {encoding} units, cut",
            )
            text = alphabet.head(text, limit, encoding)
            size = alphabet.size(text, encoding)
        elif not text:
            self._core.note(EntryKind.FAULT, phone.number, detail="empty screen")
        return ShownScreen(text, more, encoding, size, limit)

    def _unknown(self, phone: Phone, code: str) -> str:
        phone.screen = self._screen(phone, NO_CODE.format(code=self._code), more=False)
        phone.ended = f"{code} is not in use"
        self._core.note(EntryKind.USSD, phone.number, text=phone.screen.text, detail=code)
        return phone.screen.text

    def _break(self, phone: Phone, why: str, told: bool) -> None:
        with self._core.changed:
            self._lapse(phone)
            if phone.session:
                self._end(phone, phone.session, why, self._core.now(), told)

    def _lapse(self, phone: Phone) -> None:
        """End a session whose time has run out, if nobody has done so yet."""
        session = phone.session
        if session and self._core.now() >= session.ends:
            self._time_out(phone, session, session.ends)

    def _time_out(self, phone: Phone, session: UssdSession, moment: datetime) -> None:
        if phone.session is session:
            seconds = self._core.limits.session_seconds
            self._end(phone, session, f"time limit of {seconds:g} s", moment, told=True)

    def _end(
        self, phone: Phone, session: UssdSession, why: str, moment: datetime, told: bool
    ) -> None:
        self._close(phone, session, why, moment)
        if told:
            fields = self._fields(phone, session, "end", "")
            self._core.call_later(PATH, phone.number, fields, moment)

    def _close(
        self, phone: Phone, session: UssdSession, why: str, moment: datetime | None = None
    ) -> None:
        self._core.arrivals.cancel(self._timers.pop(session.id))
        phone.session, phone.ended = None, why
        self._core.note(EntryKind.ENDED, phone.number, moment, id=session.id, detail=why)

    def _fields(
        self, phone: Phone, session: UssdSession, step: str, text: str
    ) -> dict[str, str]:
        session.turns += 1
        return {
            "id": f"{session.id}-{session.turns}",
            "session": session.id,
            "from": phone.number,
            "code": session.code,
            "step": step,
            "text": text,
            "at": stamp(self._core.now()),
        }

    def _room(self, encoding: str) -> int:
        limits = self._core.limits
        return limits.screen_septets if encoding == alphabet.GSM_7BIT else limits.screen_ucs2
