"""USSD sessions over SMPP: which step a message is, and how a screen is shown.

SMPP v3.4 sections 5.3.2.44 (ussd_service_op) and 5.3.2.43 (its_session_info); GSM 7-bit text
has the data coding of 3GPP TS 23.038 clause 5 (0x0F), an octet a septet.
"""

import threading
from datetime import datetime
from uuid import uuid4

from assistant.alphabet import Encoding, measure, to_septets
from assistant.channel import Channel, Incoming, Screen, Step
from assistant.gateways.numbers import e164
from assistant.gateways.smpp import texts
from assistant.gateways.smpp.pdu import Address, Command, Short, Tag
from assistant.gateways.smpp.terms import SmppTerms

SERVICE = "USSD"
BEGINS, ANSWERS, SHOWN = 1, 18, 19  # PSSR indication; USSR, USSN confirm
ASK, LAST = 2, 17  # USSR request; PSSR response
GSM, UCS2 = 0x0F, 0x08
_MOST = 10_000  # sessions kept in mind; older ones have long timed out


class Menus:
    """The sessions that are open at one operator."""

    def __init__(self, terms: SmppTerms) -> None:
        self._terms = terms
        self._open: dict[tuple[str, int], str] = {}
        self._lock = threading.Lock()

    def is_one(self, pdu: Short) -> bool:
        """Whether a message is a step of a session; one whose step is empty is a text."""
        return bool(pdu.tlvs.get(Tag.USSD_SERVICE_OP))

    def heard(self, pdu: Short, now: datetime) -> Incoming | None:
        """The step that a message is; None where there is nothing to say to it."""
        operation = pdu.tlvs[Tag.USSD_SERVICE_OP][0]
        phone = e164(pdu.source.number, self._terms.country)
        if not phone or operation == SHOWN:
            return None
        step = self._step(pdu, operation)
        session_id = self._session(self._key(pdu), step)
        words = texts.heard(pdu, self._terms)[0] if step is Step.ANSWER else ""
        return Incoming(
            uuid4().hex, phone, words, Channel.USSD, now, step=step, session_id=session_id
        )

    def _key(self, pdu: Short) -> tuple[str, int]:
        return e164(pdu.source.number, self._terms.country), _number(pdu)

    def _step(self, pdu: Short, operation: int) -> Step:
        if _is_end(pdu):
            return Step.END
        return Step.BEGIN if operation == BEGINS else Step.ANSWER

    def _session(self, key: tuple[str, int], step: Step) -> str:
        """The id of a session; a number that comes again after a beginning is another."""
        with self._lock:
            found = self._open.pop(key, None)
            if step is Step.BEGIN or found is None:
                found = uuid4().hex
            if step is not Step.END:
                self._open[key] = found
                while len(self._open) > _MOST:
                    del self._open[next(iter(self._open))]
            return found

    def shown(self, pdu: Short, screen: Screen) -> Short:
        """The message that shows a screen in the session of another."""
        is_gsm = measure(screen.text)[0] is Encoding.GSM7
        octets = to_septets(screen.text) if is_gsm else screen.text.encode("utf-16-be")
        if not screen.more:
            with self._lock:
                self._open.pop(self._key(pdu), None)
        tlvs: dict[int, bytes] = {Tag.USSD_SERVICE_OP: bytes([ASK if screen.more else LAST])}
        session = pdu.tlvs.get(Tag.ITS_SESSION_INFO)
        if session is not None and len(session) == 2:
            last = session[1] & 0xFE | (0 if screen.more else 1)
            tlvs[Tag.ITS_SESSION_INFO] = bytes([session[0], last])
        return Short(
            Command.SUBMIT_SM,
            0,
            source=Address(pdu.destination.number, pdu.destination.ton, pdu.destination.npi),
            destination=Address(pdu.source.number, pdu.source.ton, pdu.source.npi),
            message=octets,
            service_type=SERVICE,
            coding=GSM if is_gsm else UCS2,
            tlvs=tlvs,
        )


def _number(pdu: Short) -> int:
    session = pdu.tlvs.get(Tag.ITS_SESSION_INFO, b"")
    return session[0] if session else -1


def _is_end(pdu: Short) -> bool:
    session = pdu.tlvs.get(Tag.ITS_SESSION_INFO, b"")
    return len(session) == 2 and bool(session[1] & 1)
