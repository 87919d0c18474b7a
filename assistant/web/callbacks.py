"""What the operator calls: a text, a ring, a turn of USSD, a receipt. Each is signed."""

import logging
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from functools import wraps

from flask import Blueprint, Response, request
from flask.typing import ResponseReturnValue

from assistant.channel import Clock
from assistant.gateways import (
    AT_HEADER,
    SIGNATURE_HEADER,
    WireError,
    read_receipt_callback,
    read_ring_callback,
    read_text_callback,
    read_ussd_callback,
    verify,
    why_refused,
)
from assistant.service.away import DatabaseAwayError
from assistant.service.dispatch import take_receipt
from assistant.service.house import House
from assistant.service.receive import receive
from assistant.service.ring import take_ring

log = logging.getLogger(__name__)

AGAIN_S = "5"  # when the operator may send what could not be kept


@dataclass(frozen=True)
class Door:
    """What a callback needs to be let in and to be answered."""

    house: House
    secret: str
    wake: Callable[[], None]
    clock: Clock

    def signed(self, body: bytes, now: datetime) -> bool:
        """Whether the operator signed this request lately."""
        return verify(
            self.secret,
            at=request.headers.get(AT_HEADER, ""),
            signature=request.headers.get(SIGNATURE_HEADER, ""),
            path=request.path,
            body=body,
            now=now,
        )


Handler = Callable[[bytes, datetime], ResponseReturnValue]


def callbacks(door: Door) -> Blueprint:
    """The operator's four calls."""
    found = Blueprint("gateway", __name__, url_prefix="/gateway")

    @found.post("/text")
    @_let_in(door)
    def text(body: bytes, now: datetime) -> ResponseReturnValue:
        receive(door.house, read_text_callback(body), now)
        door.wake()
        return "", 204

    @found.post("/ring")
    @_let_in(door)
    def ring(body: bytes, now: datetime) -> ResponseReturnValue:
        take_ring(door.house, read_ring_callback(body), now)
        door.wake()
        return "", 204

    @found.post("/ussd")
    @_let_in(door)
    def ussd(body: bytes, now: datetime) -> ResponseReturnValue:
        screen = receive(door.house, read_ussd_callback(body), now)
        door.wake()
        if screen is None:
            return "", 204
        return {"text": screen.text, "more": screen.more}

    @found.post("/receipt")
    @_let_in(door)
    def receipt(body: bytes, now: datetime) -> ResponseReturnValue:
        take_receipt(door.house, read_receipt_callback(body), now)
        return "", 204

    return found


def _let_in(door: Door) -> Callable[[Handler], Callable[[], ResponseReturnValue]]:
    """Checks the signature and the body's form before a call is taken."""

    def wrap(handler: Handler) -> Callable[[], ResponseReturnValue]:
        @wraps(handler)
        def call() -> ResponseReturnValue:
            body, now = request.get_data(), door.clock()
            if not door.signed(body, now):
                at = request.headers.get(AT_HEADER, "")
                log.warning("%s refused: %s", request.path, why_refused(at, now))
                return Response("sign the request with the shared secret\n", 401)
            try:
                return handler(body, now)
            except WireError as fault:
                return Response(f"{fault}\n", 400)
            except DatabaseAwayError as fault:
                log.warning("%s not taken, to be sent again: %s", request.path, fault)
                return Response("send the same again\n", 503, {"Retry-After": AGAIN_S})

        return call

    return wrap
