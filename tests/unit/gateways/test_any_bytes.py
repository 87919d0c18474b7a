"""Whatever bytes come from outside, each parser says what it is or refuses: it never fails.

Short with each run of the tests; at length by hand, an example a parser and millisecond:

    NURSERY_FUZZ=50000 .venv/bin/python -m pytest -q tests/unit/gateways/test_any_bytes.py
"""

import json
import os
import struct
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.channel import NotTakenError, Request
from assistant.gateways.alert_feed import read_feed
from assistant.gateways.callbacks import (
    WireError,
    read_receipt_callback,
    read_receipts_callback,
    read_ring_callback,
    read_text_callback,
    read_ussd_callback,
)
from assistant.gateways.mapped import Secrets
from assistant.gateways.mapped_calls import mapped_hooks
from assistant.gateways.mapping import CallFields, Check, Meets, Provider, Sends
from assistant.gateways.modem.credit import credit_words
from assistant.gateways.modem.tpdu import TpduError, read
from assistant.gateways.signature import verify
from assistant.gateways.smpp.pdu import Pdu, PduError, Short, decode, length_of
from assistant.gateways.smpp.terms import SmppTerms
from assistant.gateways.smpp.texts import heard, is_receipt, told
from assistant.gateways.smpp.ussd import Menus
from assistant.settings import SettingsError
from assistant.settings.reading import from_file
from assistant.wiring.journal import read_journal

NOW = datetime(2026, 6, 1, 5, 30, tzinfo=UTC)
EXAMPLES = int(os.environ.get("NURSERY_FUZZ", "40"))
TERMS = SmppTerms(host="127.0.0.1", port=2775, system_id="n", password="p", sender="+44770")

TOLD = {
    "id": "a",
    "from": "+447700900101",
    "to": "+447700900000",
    "text": "0.4 ha",
    "at": "2026-06-01T08:00:00+03:00",
    "session": "9",
    "code": "*555*7#",
    "step": "begin",
    "fate": "delivered",
    "phase": "open",
}
JSON = json.dumps(TOLD).encode()
FORM = b"id=a&from=%2B447700900101&text=0.4+ha&at=1780291800&session=9&phase=open"


def _short(message: bytes, esm: int = 0, coding: int = 0, tlvs: bytes = b"") -> bytes:
    """A deliver_sm (SMPP 3.4, 4.6.1)."""
    body = b"\0\1\1447700900101\0\1\1447700900000\0" + bytes([esm, 0, 0]) + b"\0\0"
    body += bytes([0, 0, coding, 0, len(message)]) + message + tlvs
    return struct.pack(">IIII", 16 + len(body), 5, 0, 1) + body


PDUS = (
    _short(b"hello"),
    _short(b"\5\0\3\1\2\1part", esm=0x40),
    _short(b"id:7 sub:001 dlvrd:001 done date:2606010800 stat:DELIVRD err:000 text:x", esm=4),
    _short("0,4 га".encode("utf-16-be"), coding=8),
    _short(b"", tlvs=b"\4\x24\0\3abc\2\x0c\0\2\0\1\5\1\0\1\2"),
    _short(b"1", tlvs=b"\5\1\0\1\1\x13\x80\0\2\0\1"),
    _short(b"1", tlvs=b"\5\1\0\0"),  # a step of a session that says no step
)


def _smpp(raw: bytes) -> object:
    length_of(raw[:4].ljust(4, b"\0"))
    found: Pdu = decode(raw.ljust(16, b"\0"))
    if isinstance(found, Short):
        menus = Menus(TERMS)
        if menus.is_one(found):
            menus.heard(found, NOW)
        return told(found, NOW) if is_receipt(found) else heard(found, TERMS)
    return found


FIELDS = CallFields(
    phone="from",
    text="text",
    id="id",
    at="at",
    session="session",
    step="phase",
    steps={"open": "begin", "reply": "answer"},
    their_id="id",
    fate="fate",
    fates={"ok": "delivered"},
    so_far="*",
)


def _mapped(raw: bytes) -> object:
    for body in ("json", "form"):
        for name in ("text", "ring", "ussd", "receipt"):
            how = CallFields(**{**vars(FIELDS), "body": body})
            sends = Sends(
                "http://127.0.0.1:9/x", {"to": "{digits}"}, Meets((200,)), their_id="id"
            )
            provider = Provider(sends, Check(header="X-Key"), **{name: how}, country="+44")
            hook = mapped_hooks(provider, Secrets(token="t", secret="s"))[name]
            try:
                hook(Request("POST", f"/gateway/x/{name}", {}, {"X-Key": "t"}, raw), NOW)
            except NotTakenError:
                continue
    return None


def _signed(raw: bytes) -> object:
    at = raw[:12].decode("latin-1")
    return verify("s", at=at, signature=at, path=at, body=raw, now=NOW)


def _journal(raw: bytes) -> object:
    path = Path(os.environ.get("TMPDIR", "/tmp")) / f"any-bytes-{os.getpid()}"
    path.write_bytes(raw)
    try:
        return read_journal(path)
    finally:
        path.unlink()


FEED = (
    b'<?xml version="1.0"?><rss><channel><item><link>https://a/b</link></item></channel></rss>'
)
PARSERS: dict[str, tuple[Callable[[bytes], object], tuple[bytes, ...], type[Exception]]] = {
    "smpp": (_smpp, PDUS, PduError),
    "modem": (
        lambda raw: read(raw.decode("latin-1")),
        (
            b"000009D0E8329BFD060008621142901000000409AC09C0",
            b"00040C9152740000001000006211429010004A05E8329BFD06",
            b"00062A0C91527400000010621142901000006211429010004A00",
        ),
        TpduError,
    ),
    "modem credit": (
        lambda raw: credit_words(raw.decode("latin-1")),
        (b'+CUSD: 0,"Credit 4.50",15', b'+CUSD: 2,"00430072",72'),
        NotTakenError,
    ),
    "text": (read_text_callback, (JSON,), WireError),
    "ring": (read_ring_callback, (JSON,), WireError),
    "ussd": (read_ussd_callback, (JSON,), WireError),
    "receipt": (read_receipt_callback, (JSON,), WireError),
    "receipts": (
        read_receipts_callback,
        (json.dumps({"receipts": [TOLD, TOLD]}).encode(),),
        WireError,
    ),
    "mapped": (_mapped, (JSON, FORM), NotTakenError),
    "signature": (_signed, (b"1780291800",), NotTakenError),
    "feed": (lambda raw: read_feed(raw, "https://a.example/x"), (FEED,), NotTakenError),
    "journal": (_journal, (b'["2026-06-01T08:00:00+00:00", "ab", "stop"]\n',), NotTakenError),
    "settings": (
        lambda raw: from_file(raw.decode("utf-8", "replace"), "settings"),
        (b'zone = "Africa/Nairobi"\nday_segments = 5\n',),
        SettingsError,
    ),
}


@st.composite
def near(draw: st.DrawFn, good: tuple[bytes, ...]) -> bytes:
    """Bytes of a good one, with some cut out, doubled, put in or written over; or any."""
    raw = bytearray(draw(st.sampled_from(good)))
    for _ in range(draw(st.integers(0, 4))):
        at = draw(st.integers(0, len(raw)))
        end = min(len(raw), at + draw(st.integers(0, 6)))
        raw[at:end] = draw(st.binary(max_size=6) | st.sampled_from(ODD))
    return bytes(raw) if draw(st.integers(0, 9)) else draw(st.binary(max_size=200))


ODD = (b"\0", b"\xff\xff\xff\xff", b"null", b"1e999", b'"\\ud800"', b"[", b"{", b"-1", b"NaN")


@pytest.mark.parametrize("name", PARSERS)
@settings(max_examples=EXAMPLES, deadline=None, suppress_health_check=list(HealthCheck))
@given(data=st.data())
def test_any_bytes_are_read_or_refused(name: str, data: st.DataObject) -> None:
    """Each parser that meets bytes from outside; alerts and workbooks have theirs beside them
    (`alerts/test_reading.py`, `service/office/test_workbook_bombs.py`)."""
    parse, good, refusal = PARSERS[name]
    raw = data.draw(near(good))
    try:
        parse(raw)
    except refusal:
        pass


@pytest.mark.parametrize("name", PARSERS)
def test_the_good_ones_are_read(name: str) -> None:
    """Else what is near to them is near to nothing."""
    parse, good, _ = PARSERS[name]
    for raw in good:
        parse(raw)
