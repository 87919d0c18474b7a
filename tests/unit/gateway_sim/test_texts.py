"""Texts between phones and the assistant, over real HTTP, on a clock of the test's own."""

from datetime import timedelta
from typing import Any

import pytest

from gateway_sim import (
    Busy,
    EntryKind,
    Fail,
    Handler,
    Lose,
    MessageDelay,
    NoReceipt,
    OperatorController,
    Phone,
    ReceiptLater,
    Refuse,
    Reorder,
    Repeat,
)
from gateway_sim.errors import NumberError, PhoneOffError, TextError

HOUR = timedelta(hours=1)


def test_a_text_from_a_phone_is_called_back_before_text_returns(
    phone: Phone, assistant: Any
) -> None:
    """All its fields, as the description of the wire has them."""
    phone.text("0.4 ha")
    (fields,) = assistant.calls("/gateway/text")
    assert fields.pop("id")
    assert fields == {
        "from": "+447700900101",
        "to": "+447700900000",
        "text": "0.4 ha",
        "at": "2026-06-10T03:00:00+00:00",
    }


def test_a_text_for_a_phone_arrives_and_is_reported(
    operator: OperatorController, phone: Phone, assistant: Any
) -> None:
    """In the inbox at once; the receipt waits until the operator may call."""
    answer = assistant.hand_in("Water twice today. " * 10)
    assert (answer.status_code, answer.json()) == (202, {"fate": "accepted"})
    (received,) = phone.inbox
    assert (received.text, received.sender) == ("Water twice today. " * 10, "+447700900000")
    assert (received.encoding, received.segments) == ("GSM-7", 2)
    assert assistant.fates == []
    operator.advance()
    assert assistant.fates == [("n1", "delivered")]


def test_the_same_id_twice_is_one_text(phone: Phone, assistant: Any) -> None:
    """The second is told that it is a repeat."""
    assistant.hand_in("hi")
    again = assistant.hand_in("hi")
    assert (again.status_code, again.json()) == (200, {"fate": "accepted", "repeat": True})
    assert phone.texts == ["hi"]


def test_a_late_text_arrives_when_it_is_due(
    operator: OperatorController, phone: Phone, assistant: Any, clock: Any
) -> None:
    """Not before, and with the time it was due."""
    operator.handler = MessageDelay(timedelta(minutes=5))
    assistant.hand_in("hi")
    due = clock() + timedelta(minutes=5)
    assert (phone.texts, operator.due()) == ([], due)
    clock.forward(minutes=7)
    operator.advance()
    assert [(received.text, received.at) for received in phone.inbox] == [("hi", due)]
    assert operator.due() is None


def test_a_late_text_from_a_phone_is_called_back_when_due(
    operator: OperatorController, phone: Phone, assistant: Any, clock: Any
) -> None:
    """It says when it was written."""
    operator.handler = MessageDelay(HOUR)
    phone.text("done")
    assert assistant.texts == []
    clock.forward(hours=1)
    operator.advance()
    assert assistant.calls("/gateway/text")[0]["at"] == "2026-06-10T03:00:00+00:00"


def test_a_text_too_late_expires_instead(
    operator: OperatorController, phone: Phone, assistant: Any, clock: Any
) -> None:
    """What is worthless after an hour is not shown after two."""
    operator.handler = MessageDelay(2 * HOUR)
    assistant.hand_in("uncover today")
    clock.forward(hours=3)
    operator.advance()
    assert (phone.texts, assistant.fates) == ([], [("n1", "expired")])


def test_a_lost_text_is_neither_shown_nor_reported(
    operator: OperatorController, phone: Phone, assistant: Any
) -> None:
    """In both directions; the record knows."""
    operator.handler = Lose()
    assistant.hand_in("hi")
    phone.text("ho")
    assert (phone.texts, assistant.texts, assistant.fates) == ([], [], [])
    assert [entry.text for entry in operator.recorded(EntryKind.LOST)] == ["hi", "ho"]


def test_a_repeated_text_comes_twice_under_one_id(
    operator: OperatorController, phone: Phone, assistant: Any
) -> None:
    """In both directions; one receipt."""
    operator.handler = Repeat()
    assistant.hand_in("hi")
    phone.text("ho")
    assert (phone.texts, assistant.texts) == (["hi", "hi"], ["ho", "ho"])
    assert len({fields["id"] for fields in assistant.calls("/gateway/text")}) == 1
    assert assistant.fates == [("n1", "delivered")]


def test_texts_overtake_each_other(
    operator: OperatorController, phone: Phone, assistant: Any, clock: Any
) -> None:
    """The first of two comes last."""
    operator.handler = Reorder(timedelta(minutes=1))
    assistant.hand_in("first", id="a")
    assistant.hand_in("second", id="b")
    clock.forward(minutes=1)
    operator.advance()
    assert phone.texts == ["second", "first"]


@pytest.mark.parametrize(
    ("handler", "code", "fate"), [(Refuse(), 422, "failed"), (Busy(), 503, "try_later")]
)
def test_a_text_that_is_not_taken_is_answered_so(
    operator: OperatorController,
    phone: Phone,
    assistant: Any,
    handler: Handler,
    code: int,
    fate: str,
) -> None:
    """For good, or for now."""
    operator.handler = handler
    answer = assistant.hand_in("hi")
    assert (answer.status_code, answer.json()["fate"]) == (code, fate)
    assert phone.texts == []


def test_a_text_refused_for_now_is_taken_under_the_same_id_later(
    operator: OperatorController, phone: Phone, assistant: Any
) -> None:
    """Busy twice; then it is no repeat."""
    operator.handler = Busy(first=2)
    codes = [assistant.hand_in("hi").status_code for _ in range(4)]
    assert codes == [503, 503, 202, 200]
    assert phone.texts == ["hi"]


REFUSED = {
    "a real-looking number": {"to": "+447911123456"},
    "the service itself": {"to": "+447700900000"},
    "another sender": {"from": "+447700900001"},
    "256 segments": {"text": "a" * (255 * 153 + 1)},
}


@pytest.mark.parametrize("wrong", REFUSED.values(), ids=REFUSED)
def test_a_text_no_network_could_carry_is_refused(
    phone: Phone, assistant: Any, wrong: Any
) -> None:
    """422 with the reason; TS 23.040 counts parts in one octet."""
    answer = assistant.hand_in(**{"text": "hi", **wrong})
    assert (answer.status_code, answer.json()["fate"]) == (422, "failed")
    assert answer.json()["detail"]
    assert phone.texts == []


def test_receipts_come_late_or_never(
    operator: OperatorController, phone: Phone, assistant: Any, clock: Any
) -> None:
    """The text itself is on time."""
    operator.handler = ReceiptLater(HOUR)
    assistant.hand_in("a", id="a")
    operator.handler = NoReceipt()
    assistant.hand_in("b", id="b")
    operator.advance()
    assert (phone.texts, assistant.fates) == (["a", "b"], [])
    clock.forward(hours=1)
    operator.advance()
    assert assistant.fates == [("a", "delivered")]


def test_a_phone_that_is_gone_is_reported_as_failed(
    operator: OperatorController, phone: Phone, assistant: Any
) -> None:
    """Accepted first, then failed, with the reason."""
    operator.handler = Fail("no such subscriber")
    assert assistant.hand_in("hi").status_code == 202
    operator.advance()
    (receipt,) = assistant.calls("/gateway/receipt")
    assert (receipt["fate"], receipt["detail"]) == ("failed", "no such subscriber")
    assert phone.texts == []


def test_texts_wait_for_a_phone_that_is_off(
    operator: OperatorController, phone: Phone, assistant: Any, clock: Any
) -> None:
    """They arrive in order when it is on again, and are reported then."""
    phone.power(False)
    assistant.hand_in("a", id="a")
    assistant.hand_in("b", id="b")
    operator.advance()
    assert (phone.texts, assistant.fates) == ([], [])
    clock.forward(minutes=30)
    phone.power(True)
    assert phone.texts == ["a", "b"]
    assert assistant.fates == [("a", "delivered"), ("b", "delivered")]
    clock.forward(hours=2)
    operator.advance()
    assert len(assistant.fates) == 2


def test_a_text_expires_while_its_phone_is_off(
    operator: OperatorController, phone: Phone, assistant: Any, clock: Any
) -> None:
    """At its own last moment, and it does not come after all."""
    phone.power(False)
    assistant.hand_in("hi")
    assert operator.due() == clock() + HOUR
    clock.forward(hours=1)
    operator.advance()
    phone.power(True)
    assert (phone.texts, assistant.fates) == ([], [("n1", "expired")])


def test_a_phone_that_is_off_sends_nothing(phone: Phone) -> None:
    """The person is told what to do first."""
    phone.power(False)
    with pytest.raises(PhoneOffError, match="switch it on first"):
        phone.text("hi")


def test_an_endless_text_is_refused(phone: Phone) -> None:
    """More than 255 parts cannot be joined."""
    with pytest.raises(TextError, match="at most 255"):
        phone.text("a" * (255 * 153 + 1))


@pytest.mark.parametrize("text", ["", "🌾" * 500, "half \ud83c of a sign", "a\x00b"])
def test_odd_texts_reach_the_assistant(phone: Phone, assistant: Any, text: str) -> None:
    """An empty text, a long one, a broken one: one callback each."""
    phone.text(text)
    assert len(assistant.texts) == 1


def test_a_callback_is_tried_again_under_the_same_id(
    operator: OperatorController, phone: Phone, assistant: Any, clock: Any
) -> None:
    """Until the assistant takes it."""
    assistant.codes = [503, 500, 204]
    phone.text("hi")
    while operator.due():
        clock.now = operator.due()
        operator.advance()
    assert assistant.texts == ["hi"] * 3
    assert len({fields["id"] for fields in assistant.calls("/gateway/text")}) == 1
    assert [entry.code for entry in operator.recorded(EntryKind.CALLED)] == [503, 500, 204]
    assert operator.faults == []


def test_a_callback_waits_for_an_assistant_that_is_away(
    operator: OperatorController, phone: Phone, assistant: Any, clock: Any
) -> None:
    """No answer at all is a reason to call again."""
    operator.callback_url = ""
    phone.text("hi")
    operator.callback_url = assistant.url
    clock.now = operator.due()
    operator.advance()
    assert assistant.texts == ["hi"]


def test_a_callback_that_is_wrong_is_not_repeated(
    operator: OperatorController, phone: Phone, assistant: Any
) -> None:
    """400 says that it will never be taken; the record shows a fault."""
    assistant.codes = [400]
    phone.text("hi")
    assert operator.due() is None
    assert "given up after 1 calls: 400 not now" in operator.faults[0].detail


def test_the_service_has_no_phone_of_its_own(operator: OperatorController) -> None:
    """Its number is taken."""
    with pytest.raises(NumberError, match="is the service itself"):
        operator.phone("07700900000")
