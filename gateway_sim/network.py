"""The operator as a whole: its phones, their texts and sessions, and what is due."""

from collections.abc import Callable, Sequence
from datetime import datetime

from gateway_sim import wire
from gateway_sim.core import Core
from gateway_sim.errors import NumberError
from gateway_sim.handlers import Answer
from gateway_sim.numbering import number
from gateway_sim.phones import Phone, Received, SentText, newer
from gateway_sim.rings import Rings
from gateway_sim.texts import Texts
from gateway_sim.ussd import Ussd


class Network:
    """Phones of one operator and the one service they reach.

    kick: called after something may have become due.
    """

    def __init__(
        self, core: Core, own_number: str, ussd_code: str, kick: Callable[[], None]
    ) -> None:
        self.core = core
        self.own_number = own_number
        self.ussd_code = ussd_code
        self._kick = kick
        self._phones: dict[str, Phone] = {}
        self._texts = Texts(core, own_number)
        self._ussd = Ussd(core, ussd_code)
        self._rings = Rings(core, own_number)

    def phone(self, text: str) -> Phone:
        """The phone of this number, made at its first use. Raises NumberError."""
        known = number(text)
        if known == self.own_number:
            raise NumberError(f"{known} is the service itself: take another number")
        with self.core.changed:
            return self._phones.setdefault(known, Phone(known, self))

    @property
    def repeats(self) -> int:
        """Texts that came again under an id that was taken."""
        return self._texts.repeats

    def phones(self) -> list[Phone]:
        """All phones used so far, by number."""
        with self.core.changed:
            return [self._phones[known] for known in sorted(self._phones)]

    def hand_in(self, text: wire.HandedIn) -> tuple[Answer, bool]:
        """Take a text of the assistant; our answer, and whether we had it before."""
        try:
            phone = self.phone(text.to)
        except NumberError as unknown:
            return Answer(422, str(unknown)), False
        answer = self._texts.hand_in(phone, text)
        self.core.do_arrivals()
        return answer

    def news(
        self, phones: Sequence[Phone], after: int, seconds: float, sent: bool = True
    ) -> list[tuple[Phone, Received | SentText]]:
        """What these phones got (and sent) since a turn, waiting so long for the first."""
        self.core.wait(lambda: bool(newer(phones, after, sent)), seconds)
        with self.core.changed:
            return newer(phones, after, sent)

    # What a phone asks of the network.

    def send(self, phone: Phone, text: str) -> SentText:
        sent = self._texts.send(phone, text)
        self._kick()
        return sent

    def power(self, phone: Phone, on: bool) -> None:
        if not on:
            self._ussd.drop(phone, told=True)
        self._texts.power(phone, on)
        self._kick()

    def fill(self, phone: Phone, full: bool) -> None:
        self._texts.fill(phone, full)
        self._kick()

    def fill_until(self, phone: Phone, moment: datetime) -> None:
        self._texts.fill(phone, True)
        self.core.arrive_later(moment, lambda due: self._texts.fill(phone, False))

    def dial(self, phone: Phone, code: str) -> str:
        if not self._is_ours(code):
            return self._ussd.dial(phone, code)
        shown = self._rings.ring(phone)
        self._kick()
        return shown

    def _is_ours(self, dialled: str) -> bool:
        """Whether what was dialled is the service's number and no code."""
        try:
            return number(dialled) == self.own_number
        except NumberError:
            return False

    def answer(self, phone: Phone, text: str) -> str:
        return self._ussd.answer(phone, text)

    def hang_up(self, phone: Phone) -> None:
        self._ussd.hang_up(phone)
        self._kick()

    def drop(self, phone: Phone, told: bool) -> None:
        self._ussd.drop(phone, told)
        self._kick()

    def wait_for(self, phone: Phone, count: int, seconds: float) -> bool:
        return self.core.wait(lambda: len(phone.inbox) >= count, seconds)
