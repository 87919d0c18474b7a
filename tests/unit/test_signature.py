"""Signing and verifying, against values computed with the openssl command line tool."""

import re
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

import assistant.gateways
from assistant.gateways import (
    AT_HEADER,
    SIGNATURE_HEADER,
    read_receipt_callback,
    read_ring_callback,
    read_text_callback,
    read_ussd_callback,
    sign,
    signed_headers,
    verify,
)

WIRE = Path(assistant.gateways.__file__).with_name("WIRE.md").read_text("utf-8")
SECRET, PATH, AT = "example-secret", "/gateway/text", "1780291800"
NOW = datetime(2026, 6, 1, 5, 30, tzinfo=UTC)


def _example(kind: str) -> bytes:
    found = re.search(rf"```{kind}\n(.*?)\n```", WIRE, re.DOTALL)
    assert found is not None
    return found[1].encode()


BODY = _example("text-callback")
# printf '1780291800\n/gateway/text\n<body>' | openssl dgst -sha256 -hmac example-secret
SIGNATURE = "884e460d16972b4274458a47a38501511b4bbd26411c936caf1d42c40383f6c6"


def _verified(**changed: object) -> bool:
    request = {"at": AT, "signature": SIGNATURE, "path": PATH, "body": BODY, "now": NOW}
    return verify(SECRET, **(request | changed))  # type: ignore[arg-type]


def test_the_worked_example_of_the_wire_page_is_right() -> None:
    """The page, openssl and our own function agree."""
    assert sign(SECRET, AT, PATH, BODY) == SIGNATURE
    assert f"{AT_HEADER}: {AT}\n    {SIGNATURE_HEADER}: {SIGNATURE}" in WIRE
    assert sign(SECRET, AT, "/texts", _example("texts")) in WIRE


def test_the_examples_of_the_wire_page_can_be_read() -> None:
    """Each body on the page follows the page."""
    assert read_text_callback(BODY).gateway_id == "op-7"
    assert read_ussd_callback(_example("ussd-callback")).session_id == "op-s9"
    assert read_ring_callback(_example("ring-callback")).phone == "+447700900101"
    assert read_receipt_callback(_example("receipt-callback")).message_id == "t-41"


def test_a_secret_in_any_script_signs_as_openssl_does() -> None:
    """The secret is taken as UTF-8 (value: openssl dgst -sha256 -hmac, empty body)."""
    expected = "1f718d10804be4a8d385e216e87cf69dd962d75f87af5b39384e231dc2fa07ba"
    assert sign("ключ", AT, PATH, b"") == expected


def test_a_signed_request_is_believed() -> None:
    """The headers we make are the headers we accept."""
    headers = signed_headers(SECRET, NOW, PATH, BODY)
    assert headers == {AT_HEADER: AT, SIGNATURE_HEADER: SIGNATURE}
    assert _verified()


@pytest.mark.parametrize("seconds", [-300, -1, 1, 300])
def test_clocks_may_differ_by_five_minutes(seconds: int) -> None:
    """Up to 300 s either way is believed."""
    assert _verified(now=NOW + timedelta(seconds=seconds))


@pytest.mark.parametrize("seconds", [-301, 301, 86400])
def test_a_request_of_another_hour_is_refused(seconds: int) -> None:
    """An old request, well signed, is not believed again."""
    assert not _verified(now=NOW + timedelta(seconds=seconds))


@pytest.mark.parametrize(
    "changed",
    [
        pytest.param({"body": BODY + b" "}, id="body"),
        pytest.param({"path": "/gateway/ussd"}, id="path"),
        pytest.param({"at": "1780291801"}, id="time"),
        pytest.param({"signature": ""}, id="no signature"),
        pytest.param({"at": ""}, id="no time"),
        pytest.param({"signature": "é\ud800" * 32}, id="signature of strange characters"),
        pytest.param({"signature": SIGNATURE.upper()}, id="signature in capitals"),
        pytest.param({"signature": SIGNATURE[:-1]}, id="signature cut short"),
    ],
)
def test_a_changed_request_is_refused(changed: dict[str, object]) -> None:
    """Whatever is changed on the way, the signature no longer holds."""
    assert not _verified(**changed)


@pytest.mark.parametrize(
    "at", ["", "-1", "1e9", "١٧٨٠", "1780291800.0", " 1780291800", "9" * 400]
)
def test_a_time_that_is_no_number_is_refused_even_when_signed(at: str) -> None:
    """Only plain decimal seconds count as a time."""
    assert not _verified(at=at, signature=sign(SECRET, at, PATH, BODY))


def test_another_secret_is_refused() -> None:
    """Only the shared secret signs."""
    signature = sign("other-secret", AT, PATH, BODY)
    assert not _verified(signature=signature)
