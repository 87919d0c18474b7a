"""Texts in both directions: sent, carried as the handler says, kept, reported on."""

from datetime import datetime
from functools import partial
from itertools import count
from uuid import uuid4

from gateway_sim import alphabet
from gateway_sim.core import Core
from gateway_sim.errors import PhoneOffError, TextError
from gateway_sim.handlers import Answer, InTransit
from gateway_sim.phones import Phone, Received, SentText
from gateway_sim.record import EntryKind
from gateway_sim.wire import HandedIn, stamp


class Texts:
    """The text traffic between the phones and the assistant's short number."""

    def __init__(self, core: Core, number: str) -> None:
        self._core = core
        self._number = number
        self._turns = count(1)
        self._accepted: set[str] = set()
        self._reported: set[str] = set()
        self.repeats = 0

    def send(self, phone: Phone, text: str) -> SentText:
        """Take a text from a phone; raises PhoneOffError, or TextError if it is too long."""
        core, now = self._core, self._core.now()
        if not phone.on:
            raise PhoneOffError(f"{phone.number} is switched off: switch it on first")
        text = alphabet.carried(text)
        size = _cut(text)
        message = InTransit(f"t-{uuid4().hex}", "to_assistant", phone.number, text, now)
        with core.changed:
            sent = SentText(
                next(self._turns), message.id, text, size.encoding, size.segments, now
            )
            phone.sent.append(sent)
            core.note(
                EntryKind.WRITTEN,
                phone.number,
                id=message.id,
                text=text,
                segments=size.segments,
            )
            course = core.course(message)
            for delay in course.delays:
                core.call_later(
                    "/gateway/text", phone.number, self._fields(message), now + delay
                )
            if not course.delays:
                core.note(EntryKind.LOST, phone.number, id=message.id, text=text)
        return sent

    def hand_in(self, phone: Phone, text: HandedIn) -> tuple[Answer, bool]:
        """Take a text from the assistant; our answer, and whether it came before."""
        core, now = self._core, self._core.now()
        if text.sender != self._number:
            return Answer(422, f"the sender must be {self._number}, which you rent"), False
        shown = alphabet.carried(text.text)
        message = InTransit(text.id, "to_phone", phone.number, shown, now, text.not_after)
        with core.changed:
            if text.id in self._accepted:
                self.repeats += 1
                return Answer(200, "had this before"), True
            answer = self._verdict(message)
            core.note(
                EntryKind.HANDED_IN,
                phone.number,
                id=text.id,
                text=shown,
                code=answer.code,
                detail=answer.detail,
            )
            if answer.code == 202:
                self._accepted.add(text.id)
                self._carry(phone, message)
            return answer, False

    def power(self, phone: Phone, on: bool) -> None:
        """Switch a phone; what waited for it arrives."""
        core, now = self._core, self._core.now()
        with core.changed:
            phone.on = on
            core.note(EntryKind.POWER, phone.number, detail="on" if on else "off")
            if on:
                self._arrive_waiting(phone, now)

    def fill(self, phone: Phone, full: bool) -> None:
        """Fill or empty a phone's memory; what waited for room arrives."""
        core, now = self._core, self._core.now()
        with core.changed:
            phone.full = full
            core.note(EntryKind.POWER, phone.number, detail="full" if full else "has room")
            if not full:
                self._arrive_waiting(phone, now)

    def _arrive_waiting(self, phone: Phone, now: datetime) -> None:
        waiting, phone.waiting = phone.waiting, []
        for message in waiting:
            self._arrive(phone, message, now)

    def _verdict(self, message: InTransit) -> Answer:
        try:
            _cut(message.text)
        except TextError as refused:
            return Answer(422, str(refused))
        return self._core.handler.submission(message, Answer())

    def _carry(self, phone: Phone, message: InTransit) -> None:
        course, now = self._core.course(message), message.at
        for delay in course.delays:
            self._core.arrive_later(now + delay, partial(self._arrive, phone, message))
        if course.failure:
            self._core.note(
                EntryKind.FAILED,
                phone.number,
                id=message.id,
                text=message.text,
                detail=course.failure,
            )
            self._report(message, "failed", now, course.failure)
        elif not course.delays:
            self._core.note(EntryKind.LOST, phone.number, id=message.id, text=message.text)

    def _arrive(self, phone: Phone, message: InTransit, moment: datetime) -> None:
        """Bring a text to its phone, or keep it while the phone is off and it is not late."""
        end = message.not_after
        if end is not None and moment > end:
            self._expire(message, end)
        elif phone.on and not phone.full:
            self._show(phone, message, moment)
        else:
            phone.waiting.append(message)
            if end is not None:
                self._core.arrive_later(end, partial(self._give_up, phone, message))

    def _show(self, phone: Phone, message: InTransit, moment: datetime) -> None:
        size = _cut(message.text)
        received = Received(
            turn=next(self._turns),
            id=message.id,
            sender=self._number,
            text="".join(size.parts),
            encoding=size.encoding,
            segments=size.segments,
            at=moment,
        )
        phone.inbox.append(received)
        self._core.note(
            EntryKind.DELIVERED,
            phone.number,
            moment,
            id=message.id,
            text=received.text,
            segments=size.segments,
        )
        self._report(message, "delivered", moment)

    def _give_up(self, phone: Phone, message: InTransit, moment: datetime) -> None:
        if message in phone.waiting:
            phone.waiting.remove(message)
            self._expire(message, moment)

    def _expire(self, message: InTransit, moment: datetime) -> None:
        self._core.note(
            EntryKind.EXPIRED, message.phone, moment, id=message.id, text=message.text
        )
        self._report(message, "expired", moment)

    def _report(
        self, message: InTransit, fate: str, moment: datetime, detail: str = ""
    ) -> None:
        """Let the assistant know what became of its text: once, however many copies."""
        if message.id in self._reported:
            return
        self._reported.add(message.id)
        receipt = InTransit(message.id, "receipt", message.phone, fate, moment)
        fields = {"id": message.id, "fate": fate, "at": stamp(moment), "detail": detail}
        for delay in self._core.course(receipt).delays:
            self._core.call_later("/gateway/receipt", message.phone, fields, moment + delay)

    def _fields(self, message: InTransit) -> dict[str, str]:
        return {
            "id": message.id,
            "from": message.phone,
            "to": self._number,
            "text": message.text,
            "at": stamp(message.at),
        }


def _cut(text: str) -> alphabet.Cut:
    size = alphabet.cut(text)
    if size.segments > alphabet.MOST_SEGMENTS:
        raise TextError(
            f"{size.segments} segments: a joined text has at most {alphabet.MOST_SEGMENTS}"
        )
    return size
