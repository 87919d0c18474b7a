"""A phone that rings the service's number: nobody takes the call, and the assistant is told."""

from uuid import uuid4

from gateway_sim import alphabet
from gateway_sim.core import Core
from gateway_sim.errors import PhoneOffError, SessionError
from gateway_sim.handlers import InTransit
from gateway_sim.phones import Phone, ShownScreen
from gateway_sim.record import EntryKind
from gateway_sim.wire import stamp

PATH = "/gateway/ring"
NOBODY = "It rang. Nobody took the call."


class Rings:
    """Calls of the phones to the service's own number."""

    def __init__(self, core: Core, number: str) -> None:
        self._core = core
        self._number = number

    def ring(self, phone: Phone) -> str:
        """Ring and hang up; what the phone shows then. Raises PhoneOffError, SessionError."""
        core, now = self._core, self._core.now()
        if not phone.on:
            raise PhoneOffError(f"{phone.number} is switched off: switch it on first")
        if phone.session:
            raise SessionError("this phone has a session open: answer it or hang up first")
        ring = InTransit(f"r-{uuid4().hex}", "to_assistant", phone.number, "", now)
        with core.changed:
            phone.screen, phone.ended = self._shown(), "nobody took the call"
            core.note(EntryKind.RANG, phone.number, id=ring.id)
            for delay in core.course(ring).delays:
                core.call_later(PATH, phone.number, self._fields(ring), now + delay)
        return NOBODY

    def _shown(self) -> ShownScreen:
        encoding = alphabet.encoding_of(NOBODY)
        size, limit = alphabet.size(NOBODY, encoding), self._core.limits.screen_septets
        return ShownScreen(NOBODY, False, encoding, size, limit)

    def _fields(self, ring: InTransit) -> dict[str, str]:
        return {
            "id": ring.id,
            "from": ring.phone,
            "to": self._number,
            "at": stamp(ring.at),
        }
