"""Reading callbacks: what is taken, and how a refusal reads."""

import json
from datetime import UTC, datetime

import pytest

from assistant.channel import Channel, Fate, Incoming, Receipt, Step
from assistant.gateways import (
    WireError,
    read_receipt_callback,
    read_ring_callback,
    read_text_callback,
    read_ussd_callback,
)

AT = datetime(2026, 6, 1, 5, 30, tzinfo=UTC)
TEXT: dict[str, object] = {
    "id": "op-7",
    "from": "+999000000000",
    "to": "+447700900000",
    "text": "1",
    "at": "2026-06-01T05:30:00Z",
}
USSD = TEXT | {"session": "s-9", "code": "*555*7#", "step": "begin", "text": ""}
RECEIPT: dict[str, object] = {"id": "t-41", "fate": "delivered", "at": "2026-06-01T05:30:00Z"}


def _body(base: dict[str, object], **changed: object) -> bytes:
    return json.dumps(base | changed).encode()


def test_a_text_becomes_an_incoming() -> None:
    """All the fields of a text arrive."""
    expected = Incoming("op-7", "+999000000000", "1", Channel.SMS, AT, Step.TEXT, None)
    assert read_text_callback(_body(TEXT)) == expected


def test_a_ring_becomes_an_incoming_without_words() -> None:
    """There is only who rang, and when."""
    ring = {name: told for name, told in TEXT.items() if name != "text"}
    expected = Incoming("op-7", "+999000000000", "", Channel.RING, AT, Step.TEXT, None)
    assert read_ring_callback(_body(ring)) == expected


@pytest.mark.parametrize("step", [Step.BEGIN, Step.ANSWER, Step.END])
def test_a_ussd_turn_becomes_an_incoming(step: Step) -> None:
    """A turn carries its session and step."""
    expected = Incoming("op-7", "+999000000000", "2", Channel.USSD, AT, step, "s-9")
    assert read_ussd_callback(_body(USSD, step=step.value, text="2")) == expected


@pytest.mark.parametrize("fate", [Fate.DELIVERED, Fate.FAILED, Fate.EXPIRED])
def test_a_receipt_is_read(fate: Fate) -> None:
    """A receipt carries its fate and, if given, the operator's words."""
    body = _body(RECEIPT, fate=fate.value, detail="absent")
    assert read_receipt_callback(body) == Receipt("t-41", fate, AT, "absent")
    assert read_receipt_callback(_body(RECEIPT)).detail == ""


def test_unknown_keys_are_ignored() -> None:
    """An operator may send more than we asked for."""
    assert read_text_callback(_body(TEXT, cost=3, network={"x": [1]})).text == "1"


@pytest.mark.parametrize(
    "text", ["", "a" * 2500, "নমস্কার 🌾" * 300, " \n\t '; --{0}", "x" * 40_000]
)
def test_a_text_is_never_cut_or_changed(text: str) -> None:
    """Whatever a phone says arrives whole."""
    assert read_text_callback(_body(TEXT, text=text)).text == text


def test_what_no_database_holds_is_replaced() -> None:
    """Half an emoji, or a NUL, becomes the replacement character; the rest is kept."""
    assert read_text_callback(_body(TEXT, text="a\ud83cb\0c")).text == "a\ufffdb\ufffdc"


@pytest.mark.parametrize(
    "at", ["2026-06-01T11:00:00+05:30", "2026-06-01T05:30:00.000Z", "2026-06-01 05:30+00:00"]
)
def test_times_of_any_offset_become_utc(at: str) -> None:
    """The same moment, however written."""
    read = read_text_callback(_body(TEXT, at=at)).at
    assert read == AT and read.tzinfo is UTC


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("id", 7),
        ("id", ""),
        ("id", "a b"),
        ("id", "x" * 129),
        ("id", "é"),
        ("from", "07700900101"),
        ("from", "447700900101"),
        ("from", "+4477009001011234"),
        ("from", "+44770090010१"),
        ("from", "INFO"),
        ("from", None),
        ("to", ["+447700900000"]),
        ("text", 1),
        ("text", None),
        ("text", "x" * 40_001),
        ("at", "2026-06-01T05:30:00"),
        ("at", "yesterday"),
        ("at", 1780291800),
        ("at", "0001-01-01T00:00:00+14:00"),
        ("at", "x" * 5000),
    ],
)
def test_a_faulty_field_is_named(field: str, value: object) -> None:
    """Types are strict, and the refusal says which field and what was expected."""
    with pytest.raises(WireError, match=f'^"{field}": expected a .*, got .*$') as refused:
        read_text_callback(_body(TEXT, **{field: value}))
    assert len(str(refused.value)) < 200


def test_all_faulty_fields_are_named_at_once() -> None:
    """An operator's developer mends them in one go."""
    with pytest.raises(WireError) as refused:
        read_ussd_callback(
            b'{"id": true, "from": "+447700900101", "step": "start", "text": {}}'
        )
    assert str(refused.value).split("; ") == [
        '"id": expected a string of 1 to 128 visible ASCII characters, got true',
        '"session": expected a string of 1 to 128 visible ASCII characters, got nothing',
        '"code": expected a string of up to 40000 characters, got nothing',
        '"step": expected "begin", "answer" or "end", got "start"',
        '"text": expected a string of up to 40000 characters, got an object',
        '"at": expected a time with an offset like "2026-06-01T05:30:00Z", got nothing',
    ]


@pytest.mark.parametrize("fate", ["accepted", "try_later", "DELIVERED", None, []])
def test_a_receipt_has_one_of_three_fates(fate: object) -> None:
    """What only a hand-over can say is no receipt."""
    with pytest.raises(WireError, match='^"fate": expected "delivered", "failed" or "expired"'):
        read_receipt_callback(_body(RECEIPT, fate=fate))


@pytest.mark.parametrize(
    "body",
    [
        pytest.param(b"", id="nothing"),
        pytest.param(b"[]", id="a list"),
        pytest.param(b'"text"', id="a string"),
        pytest.param(b"id=7&text=1", id="a form"),
        pytest.param(b'{"id": "\xff"}', id="not UTF-8"),
        pytest.param('{"id": "7"}'.encode("utf-16"), id="UTF-16"),
        pytest.param(b"[" * 100_000, id="nested without end"),
        pytest.param(b'{"id": ' + b"9" * 10_000 + b"}", id="a number without end"),
    ],
)
def test_a_body_that_is_no_object_is_refused(body: bytes) -> None:
    """Garbage is refused in words, never by a crash."""
    with pytest.raises(WireError, match="expected a JSON object in UTF-8"):
        read_text_callback(body)
