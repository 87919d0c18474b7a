"""Ringing the service's number: nobody takes the call, and the assistant hears of it."""

from typing import Any

import pytest

from gateway_sim import EntryKind, Lose, OperatorController, Phone, Repeat
from gateway_sim.errors import PhoneOffError, SessionError


@pytest.mark.parametrize("dialled", ["+447700900000", "07700 900000", "00447700900000"])
def test_who_dials_the_number_rings(phone: Phone, assistant: Any, dialled: str) -> None:
    """However the number is written; the phone shows that nobody took it."""
    assert phone.dial(dialled) == "It rang. Nobody took the call."
    assert not phone.in_session
    rang = assistant.calls("/gateway/ring")
    assert [(each["from"], each["to"]) for each in rang] == [(phone.number, "+447700900000")]
    assert assistant.calls("/gateway/ussd") == []


def test_a_ring_is_written_down(operator: OperatorController, phone: Phone) -> None:
    """So that a test can ask for it."""
    phone.dial("+447700900000")
    assert [entry.phone for entry in operator.record if entry.kind is EntryKind.RANG] == [
        phone.number
    ]


def test_a_ring_can_be_lost_or_told_twice(
    operator: OperatorController, phone: Phone, assistant: Any
) -> None:
    """Under one id, as a text can."""
    operator.handler = Lose()
    phone.dial("+447700900000")
    assert assistant.calls("/gateway/ring") == []
    operator.handler = Repeat()
    phone.dial("+447700900000")
    rang = assistant.calls("/gateway/ring")
    assert len(rang) == 2 and rang[0]["id"] == rang[1]["id"]


def test_a_phone_in_a_session_or_switched_off_cannot_ring(phone: Phone, assistant: Any) -> None:
    """It says why."""
    phone.dial("*555*7#")
    with pytest.raises(SessionError):
        phone.dial("+447700900000")
    phone.power(False)
    with pytest.raises(PhoneOffError):
        phone.dial("+447700900000")
