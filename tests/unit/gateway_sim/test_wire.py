"""The operator's reading of the wire."""

import json
from datetime import UTC, datetime, timedelta

import pytest

from gateway_sim import wire

AT = 1767225600
NOW = datetime.fromtimestamp(AT, UTC)
BODY = b'{"id":"t1"}'
# printf '1767225600\n/texts\n{"id":"t1"}' | openssl dgst -sha256 -hmac 'paddy-field'
# (OpenSSL 3.0.19)
BY_OPENSSL = "9ae9f942db95dc908bb7ace62d62cc3c54cbc30d0efdd25d35bfdf34df090fc4"


def signed(at: str = str(AT), mark: str = BY_OPENSSL) -> dict[str, str]:
    return {"X-Nursery-At": at, "X-Nursery-Signature": mark}


def test_a_signature_is_what_openssl_computes() -> None:
    """The worked example, made with another program."""
    assert wire.signature("paddy-field", str(AT), "/texts", BODY) == BY_OPENSSL


@pytest.mark.parametrize("late", [-300, 0, 300])
def test_a_request_signed_within_five_minutes_is_taken(late: int) -> None:
    """Both edges of the allowed difference between clocks."""
    wire.check("paddy-field", NOW + timedelta(seconds=late), "/texts", BODY, signed())


REFUSED = {
    "another path": ("/other", BODY, signed(), 0),
    "another body": ("/texts", BODY + b" ", signed(), 0),
    "another time": ("/texts", BODY, signed(at=str(AT + 1)), 0),
    "no headers": ("/texts", BODY, {}, 0),
    "a signature that is not hex": ("/texts", BODY, signed(mark="é"), 0),
    "a clock 301 s fast": ("/texts", BODY, signed(), 301),
    "a clock 301 s slow": ("/texts", BODY, signed(), -301),
}


@pytest.mark.parametrize(("path", "body", "headers", "late"), REFUSED.values(), ids=REFUSED)
def test_a_request_is_refused_when_it_has(
    path: str, body: bytes, headers: dict[str, str], late: int
) -> None:
    """Anything that was not signed, or not lately: 401."""
    with pytest.raises(wire.RequestError) as refused:
        wire.check("paddy-field", NOW + timedelta(seconds=late), path, body, headers)
    assert refused.value.code == 401


@pytest.mark.parametrize("at", ["", "yesterday", "-5", "9" * 5000, "١٢"])
def test_a_time_that_is_no_number_is_refused_though_signed(at: str) -> None:
    """Signed nonsense is nonsense."""
    mark = wire.signature("paddy-field", at, "/texts", BODY)
    with pytest.raises(wire.RequestError, match="expected unix seconds"):
        wire.check("paddy-field", NOW, "/texts", BODY, signed(at, mark))


@pytest.mark.parametrize(
    ("body", "says"),
    [
        (b"\xff", "not JSON"),
        (b"[1]", "not a JSON object"),
        (b"{}", "id, to, from, text, not_after"),
        (json.dumps(dict.fromkeys(["id", "to", "from", "text"], "x")).encode(), "not_after"),
    ],
)
def test_a_faulty_text_is_told_all_its_faults(body: bytes, says: str) -> None:
    """400 and every field that is wrong."""
    with pytest.raises(wire.RequestError, match=says) as refused:
        wire.handed_in(body)
    assert refused.value.code == 400


@pytest.mark.parametrize("not_after", ["soon", "2026-06-10T06:00:00"])
def test_a_time_without_a_zone_is_refused(not_after: str) -> None:
    """A text's last moment must be one moment."""
    fields = {"id": "1", "to": "x", "from": "y", "text": "z", "not_after": not_after}
    with pytest.raises(wire.RequestError, match="not_after is"):
        wire.handed_in(json.dumps(fields).encode())
