"""Packing both ways over arbitrary texts, and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.alphabet import NotGsmError, from_septets, pack, to_septets, unpack
from assistant.alphabet.tables import DOUBLE, SINGLE

GSM_TEXTS = st.text(st.sampled_from(sorted(SINGLE | DOUBLE)), max_size=182)


@given(GSM_TEXTS)
def test_sms_packing_comes_back(text: str) -> None:
    """With the count of septets an SMS text returns exactly."""
    codes = to_septets(text)
    assert from_septets(unpack(pack(codes), len(codes))) == text


@given(GSM_TEXTS)
def test_ussd_packing_comes_back_but_for_one_return(text: str) -> None:
    """Without a count a USSD text returns exactly, or with its last return doubled."""
    codes = to_septets(text)
    back = unpack(pack(codes, ussd=True), ussd=True)
    doubled = codes.endswith(b"\r") and len(codes) % 8 == 0
    assert back == codes + (b"\r" if doubled else b"")


@given(st.binary(max_size=40).map(lambda octets: bytes(octet & 0x7F for octet in octets)))
def test_any_septets_can_be_shown(codes: bytes) -> None:
    """Whatever a network delivers, decoding gives a text."""
    assert len(from_septets(codes)) <= len(codes)


def test_a_text_beyond_the_alphabet_is_refused_by_name() -> None:
    """The error says which characters and what to do."""
    with pytest.raises(NotGsmError, match=r"got \['ç', 'ि'\]: send it as UCS-2"):
        to_septets("çaि")


def test_octets_above_the_alphabet_are_refused() -> None:
    """Packed octets given as septets are noticed."""
    with pytest.raises(NotGsmError, match="unpack them first"):
        from_septets(b"\xe8\x32")


def test_a_count_beyond_the_octets_is_refused() -> None:
    """A length field that promises more than arrived is noticed."""
    with pytest.raises(NotGsmError, match="expected 6 septets, got 5"):
        unpack(bytes.fromhex("E8329BFD06"), 6)
