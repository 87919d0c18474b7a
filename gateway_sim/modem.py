"""A GSM modem on a pseudo-terminal: the operator's own reading of the AT commands.

3GPP TS 27.005 (messages in PDU mode), TS 27.007 (SIM, network, calls, USSD), TS 23.040 (PDUs).
What is sent reaches the virtual phones; what they write is put on the SIM card, where it stays
until it is deleted. Calls of phones ring, with the caller's number.
"""

import os
import re
import tty
from collections import deque
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from itertools import count
from threading import Condition, Thread
from typing import TYPE_CHECKING, Any

from flask import Flask

from gateway_sim import alphabet, wire
from gateway_sim.callbacks import Reply
from gateway_sim.joining import Joining
from gateway_sim.record import EntryKind

if TYPE_CHECKING:
    from gateway_sim.network import Network

END, ABORT = b"\x1a", b"\x1b"
FAULTS = ("silent", "half", "taken", "busy")
ROOM = 20  # messages on the SIM card
CENTRE = "0791440700000000"  # the number of an invented message centre, in front of each PDU
_STATUS = {"delivered": 0x00, "expired": 0x46, "failed": 0x41}
_CREDIT = "Credit 12.40. Ends 30 Jun."


@dataclass
class Card:
    """The SIM card and what is wrong with it: `pin` to be given first, no `credit`, no
    `network`, not `in_place`; `pins_left` until it blocks."""

    pin: str = ""
    credit: bool = True
    network: bool = True
    in_place: bool = True
    pins_left: int = 3
    stored: dict[int, tuple[int, str]] = field(default_factory=dict)


class Modem:
    """A modem; `port` is what to open. `faults` are taken one a text that is sent:

    silent: the modem never answers      half: half of an answer, then nothing more
    taken:  it is sent, and the modem does not say so      busy: the network has no room now
    """

    url = ""

    def __init__(
        self,
        clock: Callable[[], datetime],
        answer_seconds: float = 10,
        stores_reports: bool = True,
    ) -> None:
        self.card = Card()
        self.faults: deque[str] = deque()
        self.signal = 20
        self._clock, self._seconds, self._stores = clock, answer_seconds, stores_reports
        self._network: Network | None = None
        self._unlocked = self._echo = False
        self._report_to = 0
        self._references, self._numbers, self._refs = count(1), count(1), count(1)
        self._parts: Joining[tuple[str, str]] = Joining()
        self._ids: dict[str, list[tuple[str, int]]] = {}
        self._ringing = ""
        self._changed = Condition()
        self._ours, self._theirs = os.openpty()
        tty.setraw(self._ours)
        tty.setraw(self._theirs)
        self.port = os.ttyname(self._theirs)
        self._closed = False
        Thread(target=self._run, name="modem", daemon=True).start()

    def serve(self, app: Flask, network: "Network") -> None:
        """Take what is sent."""
        self._network = network

    def close(self) -> None:
        """Unplug it."""
        if self._closed:
            return
        self._closed = True
        for end in (self._theirs, self._ours):
            with suppress(OSError):
                os.close(end)

    # --- the line of commands ----------------------------------------------------------------

    def _run(self) -> None:
        held = b""
        while not self._closed:
            try:
                octets = os.read(self._ours, 4096)
            except OSError:
                return
            held += octets
            if self._echo:
                self._put(octets)
            while b"\r" in held:
                line, _, held = held.partition(b"\r")
                self._command(line.decode("latin-1").strip())

    def _put(self, octets: bytes) -> None:
        with suppress(OSError):
            os.write(self._ours, octets)

    def _say(self, *lines: str) -> None:
        self._put("".join(f"\r\n{line}\r\n" for line in lines).encode())

    def _command(self, line: str) -> None:
        if not line.upper().startswith("AT"):
            return
        said = line[2:]
        name = re.split(r"[=?]", said.upper(), maxsplit=1)[0]
        given = said[len(name) :]
        answer = self._answers().get(name)
        if answer is None:
            self._say("OK" if name[:1].isalpha() else "ERROR")
            return
        answer(given)

    def _answers(self) -> Mapping[str, Callable[[str], None]]:
        def ok(given: str) -> None:
            self._say("OK")

        return {
            "": ok,
            "E0": lambda given: self._set_echo(on=False),
            "E1": lambda given: self._set_echo(on=True),
            "E": ok,
            "Z": ok,
            "I": lambda given: self._say("Simulated modem", "OK"),
            "H": ok,
            "+CMEE": ok,
            "+CGMI": lambda given: self._say("Simulated", "OK"),
            "+CGMM": lambda given: self._say("Modem", "OK"),
            "+CGMR": lambda given: self._say("1", "OK"),
            "+CGSN": lambda given: self._say("490154203237518", "OK"),
            "+CIMI": lambda given: self._say("001010123456789", "OK"),
            "+CPIN": self._pin,
            "+CREG": self._creg,
            "+COPS": lambda given: self._say('+COPS: 0,0,"Invented"', "OK"),
            "+CSQ": lambda given: self._say(f"+CSQ: {self.signal},0", "OK"),
            "+CPAS": lambda given: self._say("+CPAS: 0", "OK"),
            "+CMGF": self._cmgf,
            "+CSMS": lambda given: self._say("+CSMS: 1,1,1", "OK"),
            "+CSCS": self._cscs,
            "+CSCA": lambda given: self._say('+CSCA: "+447000000",145', "OK"),
            "+CPMS": self._cpms,
            "+CNMI": self._cnmi,
            "+CLIP": ok,
            "+CFUN": ok,
            "+CHUP": self._chup,
            "+CMGS": self._cmgs,
            "+CMGL": self._cmgl,
            "+CMGR": self._cmgr,
            "+CMGD": self._cmgd,
            "+CUSD": self._cusd,
        }

    def _set_echo(self, *, on: bool) -> None:
        self._echo = on
        self._say("OK")

    # --- SIM and network ---------------------------------------------------------------------

    def _ready(self) -> bool:
        """Whether the card can be used; says why not."""
        if not self.card.in_place:
            self._say("+CME ERROR: 10")
        elif self.card.pin and not self._unlocked:
            self._say(f"+CME ERROR: {12 if self.card.pins_left == 0 else 11}")
        else:
            return True
        return False

    def _pin(self, given: str) -> None:
        card = self.card
        if not card.in_place:
            self._say("+CME ERROR: 10")
        elif given.startswith("="):
            self._unlock(given[1:].strip('"'))
        elif card.pins_left == 0:
            self._say("+CPIN: SIM PUK", "OK")
        elif card.pin and not self._unlocked:
            self._say("+CPIN: SIM PIN", "OK")
        else:
            self._say("+CPIN: READY", "OK")

    def _unlock(self, pin: str) -> None:
        if pin == self.card.pin:
            self._unlocked = True
            self._say("OK")
            return
        self.card.pins_left = max(self.card.pins_left - 1, 0)
        self._say("+CME ERROR: 16")

    def _creg(self, given: str) -> None:
        if given.startswith("="):
            self._say("OK")
        else:
            self._say(f"+CREG: 0,{1 if self.card.network else 2}", "OK")

    def _cmgf(self, given: str) -> None:
        self._say(*{"=?": ["+CMGF: (0)", "OK"], "?": ["+CMGF: 0", "OK"]}.get(given, ["OK"]))

    def _cscs(self, given: str) -> None:
        known = {"=?": ['+CSCS: ("GSM","UCS2")', "OK"], "?": ['+CSCS: "GSM"', "OK"]}
        self._say(*known.get(given, ["OK"]))

    def _cnmi(self, given: str) -> None:
        if given == "=?":
            self._say("+CNMI: (0-2),(0-1),(0),(0-2),(0)", "OK")
            return
        numbers = given.lstrip("=").split(",")
        reports = int(numbers[3]) if len(numbers) > 3 and numbers[3].isdecimal() else 0
        if reports == 2 and not self._stores:
            self._say("+CMS ERROR: 303")
            return
        self._report_to = reports
        self._say("OK")

    def _cusd(self, given: str) -> None:
        if not given.startswith('=1,"'):
            self._say("OK")
            return
        words = _CREDIT if self.card.credit else "Credit 0.00. Top up."
        self._say("OK", f'+CUSD: 0,"{words}",15')

    # --- sending -----------------------------------------------------------------------------

    def _cmgs(self, given: str) -> None:
        if not self._ready():
            return
        fault = self.faults.popleft() if self.faults else ""
        if fault and self._network is not None:
            self._network.core.note(EntryKind.HANDED_IN, detail=f"fault: {fault}", code=503)
        self._put(b"\r\n> ")
        held = b""
        while END not in held and ABORT not in held:
            try:
                held += os.read(self._ours, 4096)
            except OSError:  # unplugged meanwhile
                return
        if ABORT in held:
            self._say("OK")
            return
        if fault != "silent":
            self._sent(held.partition(END)[0].decode().strip(), int(given.lstrip("=")), fault)

    def _sent(self, pdu: str, length: int, fault: str) -> None:
        octets = bytes.fromhex(pdu)
        octets = octets[octets[0] + 1 :]
        if len(octets) != length:
            self._say("+CMS ERROR: 304")
            return
        error = 331 if not self.card.network else 69 if not self.card.credit else 0
        reference = next(self._references) & 0xFF
        error = error or 42 * (fault == "busy")
        error = error or self._hand_in(_read_submit(octets), reference)
        if error:
            self._say(f"+CMS ERROR: {error}")
        elif fault == "half":
            self._put(b"\r\n+CM")
        elif fault != "taken":
            self._say(f"+CMGS: {reference}", "OK")

    def _hand_in(self, sent: Mapping[str, Any], reference: int) -> int:
        """Passes a text on once all of its segments are there; 0, or the error."""
        ref, place, total = sent["piece"]
        mark = (sent["to"], reference)
        key, part = (sent["to"], ref, total), (sent["text"], str(reference))
        whole = self._parts.add(key, place, total, part, self._clock())
        if whole is None:
            return 0
        assert self._network is not None
        number = f"m{next(self._numbers)}"
        self._ids[number] = [(mark[0], int(each[1])) for each in whole]
        text = wire.HandedIn(
            number,
            sent["to"],
            self._network.own_number,
            "".join(each[0] for each in whole),
            self._clock() + sent["valid"],
        )
        answer, _ = self._network.hand_in(text)
        if answer.code in (200, 202):
            self._parts.done(key)
            return 0
        self._parts.back(key, place)
        return 28 if answer.code == 422 else 42

    # --- the card ----------------------------------------------------------------------------

    def _cpms(self, given: str) -> None:
        used = f"{len(self.card.stored)},{ROOM}"
        if given == "=?":
            self._say('+CPMS: ("SM"),("SM"),("SM")', "OK")
        elif given == "?":
            self._say("+CPMS: " + ",".join(f'"SM",{used}' for _ in range(3)), "OK")
        elif self._ready():
            self._say(f"+CPMS: {used},{used},{used}", "OK")

    def _cmgl(self, given: str) -> None:
        if not self._ready():
            return
        lines: list[str] = []
        for index, (state, pdu) in sorted(self.card.stored.items()):
            lines += [f"+CMGL: {index},{state},,{(len(pdu) - len(CENTRE)) // 2}", pdu]
            self.card.stored[index] = 1, pdu
        self._say("\r\n".join(lines), "OK") if lines else self._say("OK")

    def _cmgr(self, given: str) -> None:
        index = int(given.lstrip("=") or 0)
        if index not in self.card.stored:
            self._say("+CMS ERROR: 321")
            return
        state, pdu = self.card.stored[index]
        self._say(f"+CMGR: {state},,{(len(pdu) - len(CENTRE)) // 2}\r\n{pdu}", "OK")

    def _cmgd(self, given: str) -> None:
        if given == "=?":
            self._say("+CMGD: (1-20),(0-4)", "OK")
            return
        with self._changed:
            self.card.stored.pop(int(given.lstrip("=").partition(",")[0]), None)
            self._changed.notify_all()
        self._say("OK")

    def _chup(self, given: str) -> None:
        with self._changed:
            self._ringing = ""
            self._changed.notify_all()
        self._say("OK")

    # --- what phones do ----------------------------------------------------------------------

    def call(self, path: str, fields: Mapping[str, Any]) -> Reply:
        """Put it on the card, or ring; what is on the card is kept however long it takes."""
        if not self.card.network:
            return Reply(None, detail="the modem has no network")
        if path == "/gateway/text":
            return self._store_all(self._delivers(fields), "+CMTI")
        if path == "/gateway/receipt":
            return self._report(fields)
        if path == "/gateway/ring":
            return self._ring(fields["from"])
        return Reply(200, detail="a modem serves no menus")

    def _delivers(self, fields: Mapping[str, Any]) -> list[str]:
        cut = alphabet.cut(fields["text"])
        ref, at = next(self._refs) & 0xFF, datetime.fromisoformat(fields["at"])
        return [
            CENTRE + _deliver(fields["from"], words, cut, at, (ref, cut.segments, place)).hex()
            for place, words in enumerate(cut.parts, 1)
        ]

    def _report(self, fields: Mapping[str, Any]) -> Reply:
        at = datetime.fromisoformat(fields["at"])
        status = _STATUS[fields["fate"]]
        pdus = [
            CENTRE + _status_report(phone, reference, at, status).hex()
            for phone, reference in self._ids.get(fields["id"], [])
        ]
        if self._report_to == 1:
            for pdu in pdus:
                self._say(f"+CDS: {(len(pdu) - len(CENTRE)) // 2}\r\n{pdu.upper()}")
            return Reply(200)
        return self._store_all(pdus, "+CDSI") if self._report_to == 2 else Reply(200)

    def _store_all(self, pdus: list[str], said: str) -> Reply:
        """Onto the card, and until each was taken off it: a card that is full takes no more,
        and then the network brings the text again."""
        placed: list[int] = []
        for pdu in pdus:
            with self._changed:
                free = [n for n in range(1, ROOM + 1) if n not in self.card.stored]
                if not free:
                    return Reply(503, detail="the SIM card is full")
                self.card.stored[free[0]] = 0, pdu.upper()
                placed.append(free[0])
            self._say(f'{said}: "SM",{free[0]}')
        mine = dict.fromkeys(placed)
        with self._changed:
            self._changed.wait_for(
                lambda: not mine.keys() & self.card.stored.keys(), self._seconds
            )
        return Reply(200)

    def _ring(self, phone: str) -> Reply:
        with self._changed:
            self._ringing = phone
        self._say("RING", f'+CLIP: "{phone}",145,,,,0')
        with self._changed:
            self._changed.wait_for(lambda: not self._ringing, self._seconds)
        return Reply(200)


# --- PDUs (TS 23.040) ------------------------------------------------------------------------


def _swap(digits: str) -> bytes:
    digits += "F" * (len(digits) % 2)
    return bytes(
        int(digits[place + 1] + digits[place], 16) for place in range(0, len(digits), 2)
    )


def _address(phone: str) -> bytes:
    digits = phone.removeprefix("+")
    return bytes([len(digits), 0x91]) + _swap(digits)


def _time(at: datetime) -> bytes:
    """Seven octets, in UTC (9.2.3.11)."""
    return _swap(at.astimezone(UTC).strftime("%y%m%d%H%M%S") + "00")


def _packed(septets: bytes, skip_bits: int) -> bytes:
    """Septets behind so many bits of fill, the first in the lowest bits (TS 23.038 6.1.2.1)."""
    stream = skip_bits
    octets = bytearray()
    held = 0
    bits = stream
    for septet in septets:
        held |= septet << bits
        bits += 7
        while bits >= 8:
            octets.append(held & 0xFF)
            held >>= 8
            bits -= 8
    if bits:
        octets.append(held & 0xFF)
    return bytes(octets)


def _unpacked(octets: bytes, skip_bits: int, septets: int) -> bytes:
    whole = int.from_bytes(octets, "little") >> skip_bits
    return bytes(whole >> 7 * place & 0x7F for place in range(septets))


def _deliver(
    phone: str, words: str, cut: alphabet.Cut, at: datetime, piece: tuple[int, int, int]
) -> bytes:
    header = b""
    if cut.segments > 1:
        header = bytes([5, 0, 3, *piece])
    if cut.encoding == alphabet.GSM_7BIT:
        septets = alphabet.septets(words)
        fill = -len(header) * 8 % 7
        data = header + _packed(septets, fill)
        length = (len(header) * 8 + fill) // 7 + len(septets)
        coding = 0
    else:
        data, coding = header + words.encode("utf-16-be"), 8
        length = len(data)
    first = 0x04 | (0x40 if header else 0)
    return (
        bytes([first])
        + _address(phone)
        + bytes([0, coding])
        + _time(at)
        + bytes([length])
        + data
    )


def _status_report(phone: str, reference: int, at: datetime, status: int) -> bytes:
    return bytes([0x06, reference]) + _address(phone) + _time(at) + _time(at) + bytes([status])


def _read_submit(octets: bytes) -> dict[str, Any]:
    """A SUBMIT (9.2.2.2) as fields; `piece` is (reference, place, total)."""
    first, digits = octets[0], octets[2]
    end = 4 + (digits + 1) // 2
    swapped = "".join(f"{octet & 15:x}{octet >> 4:x}" for octet in octets[4:end])
    coding = octets[end + 1]
    place = end + 2
    valid = timedelta(days=2)
    if first & 0x18 == 0x10:
        valid, place = _validity(octets[place]), place + 1
    length, data = octets[place], octets[place + 1 :]
    header = data[: data[0] + 1] if first & 0x40 else b""
    joined = len(header) == 6 and header[1] == 0
    piece = (header[3], header[5], header[4]) if joined else (0, 1, 1)
    if coding == 8:
        text = data[len(header) : length].decode("utf-16-be")
    else:
        fill = -len(header) * 8 % 7
        before = (len(header) * 8 + fill) // 7
        text = alphabet.from_septets(_unpacked(data[len(header) :], fill, length - before))
    return {
        "to": "+" + swapped[:digits],
        "valid": valid,
        "piece": piece,
        "text": text,
    }


def _validity(octet: int) -> timedelta:
    """9.2.3.12.1."""
    if octet <= 143:
        return timedelta(minutes=5 * (octet + 1))
    if octet <= 167:
        return timedelta(hours=12, minutes=30 * (octet - 143))
    if octet <= 196:
        return timedelta(days=octet - 166)
    return timedelta(weeks=octet - 192)
