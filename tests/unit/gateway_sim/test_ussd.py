"""USSD sessions over real HTTP, on a clock of the test's own."""

from typing import Any

import pytest

from gateway_sim import EntryKind, Handler, Lose, OperatorController, Phone, Repeat
from gateway_sim.errors import PhoneOffError, SessionError, TextError

CODE = "*555*7#"


def test_a_session_goes_from_screen_to_screen(phone: Phone, assistant: Any) -> None:
    """Begin, answer, and an end that the service makes."""
    assistant.screens = {"": ("1 Go on", True), "1": ("Sow on 10 June.", False)}
    assert phone.dial(CODE) == "1 Go on"
    assert phone.in_session
    assert phone.answer("1") == "Sow on 10 June."
    assert (phone.in_session, phone.ended) == (False, "the service closed it")
    turns = assistant.calls("/gateway/ussd")
    assert [(turn["step"], turn["text"], turn["code"]) for turn in turns] == [
        ("begin", "", CODE),
        ("answer", "1", CODE),
    ]
    assert len({turn["id"] for turn in turns}) == 2
    assert len({turn["session"] for turn in turns}) == 1


def test_a_screen_says_how_full_it_is(phone: Phone, assistant: Any) -> None:
    """In septets, of 182; an escape pair counts two (3GPP TS 23.038 6.2.1.1, 6.1.2.3.1)."""
    assistant.screens = {"": ("5 €", True)}
    phone.dial(CODE)
    assert phone.screen is not None
    assert (phone.screen.encoding, phone.screen.size, phone.screen.limit) == ("GSM-7", 4, 182)


# 160 octets hold 182 septets or 80 UCS-2 units (3GPP TS 29.002 17.7.4, TS 23.038 6.1.2.3.1).
LONG = {
    "183 letters": ("a" * 183, "a" * 182, "183 of 182 GSM-7"),
    "a euro sign at the edge": ("a" * 181 + "€", "a" * 181, "183 of 182 GSM-7"),
    "81 Devanagari letters": ("क" * 81, "क" * 80, "81 of 80 UCS-2"),
    "an emoji at the edge": ("क" * 79 + "🌾", "क" * 79, "81 of 80 UCS-2"),
}


@pytest.mark.parametrize(("text", "shown", "says"), LONG.values(), ids=LONG)
def test_a_screen_too_long_is_cut_and_written_down(
    operator: OperatorController, phone: Phone, assistant: Any, text: str, shown: str, says: str
) -> None:
    """As an operator would cut it, and as a fault that a test can ask for."""
    assistant.screens = {"": (text, True)}
    assert phone.dial(CODE) == shown
    assert f"screen too long: {says}" in operator.faults[0].detail


@pytest.mark.parametrize("text", ["a" * 182, "क" * 80])
def test_a_full_screen_is_no_fault(
    operator: OperatorController, phone: Phone, assistant: Any, text: str
) -> None:
    """Exactly 182 septets, exactly 80 units."""
    assistant.screens = {"": (text, True)}
    assert phone.dial(CODE) == text
    assert operator.faults == []


def test_a_phone_has_one_session_at_a_time(phone: Phone) -> None:
    """3GPP TS 24.090 clause 6: one USSD transaction for each user."""
    phone.dial(CODE)
    with pytest.raises(SessionError, match="hang up first"):
        phone.dial(CODE)


def test_two_phones_talk_at_once(operator: OperatorController, phone: Phone) -> None:
    """Each in a session of its own."""
    other = operator.phone("+447700900102")
    phone.dial(CODE)
    other.dial(CODE)
    assert phone.session is not None and other.session is not None
    assert phone.session.id != other.session.id


def test_hanging_up_is_told_to_the_assistant(phone: Phone, assistant: Any) -> None:
    """As a last step without a text; a second time does nothing."""
    phone.dial(CODE)
    phone.hang_up()
    phone.hang_up()
    assert assistant.steps == ["begin", "end"]
    assert phone.ended == "hung up"


@pytest.mark.parametrize(("told", "steps"), [(False, ["begin"]), (True, ["begin", "end"])])
def test_a_session_can_be_lost(
    phone: Phone, assistant: Any, told: bool, steps: list[str]
) -> None:
    """The assistant may hear of it or not."""
    phone.dial(CODE)
    phone.drop(told)
    assert (phone.in_session, phone.ended, assistant.steps) == (False, "dropped", steps)
    phone.dial(CODE)
    assert phone.in_session


def test_a_session_ends_at_the_operators_limit(
    operator: OperatorController, phone: Phone, assistant: Any, clock: Any
) -> None:
    """180 s by the clock unless set otherwise; the assistant is told."""
    phone.dial(CODE)
    clock.forward(seconds=179)
    operator.advance()
    assert phone.in_session
    clock.forward(seconds=1)
    operator.advance()
    assert (phone.in_session, assistant.steps) == (False, ["begin", "end"])


def test_an_answer_after_the_limit_finds_no_session(phone: Phone, clock: Any) -> None:
    """Even where nobody has advanced the operator; the reason is given."""
    phone.dial(CODE)
    clock.forward(minutes=4)
    with pytest.raises(SessionError, match="time limit of 180 s"):
        phone.answer("1")


def test_a_finished_session_leaves_nothing_due(
    operator: OperatorController, phone: Phone
) -> None:
    """A scenario's clock is not led to a limit that no longer matters."""
    phone.dial(CODE)
    phone.hang_up()
    assert operator.due() is None


def test_an_unknown_code_is_answered_by_the_operator(phone: Phone, assistant: Any) -> None:
    """With the code that works; the assistant hears nothing."""
    assert phone.dial("*1#") == "This code is not in use. Dial *555*7#"
    assert (phone.in_session, assistant.got) == (False, [])


@pytest.mark.parametrize("code", [500, 401, 404])
def test_an_assistant_that_fails_ends_the_session(
    operator: OperatorController, phone: Phone, assistant: Any, code: int
) -> None:
    """The person reads the operator's own words; the record shows a fault."""
    assistant.codes = [code]
    assert "does not answer" in phone.dial(CODE)
    assert (phone.in_session, len(operator.faults)) == (False, 1)


@pytest.mark.parametrize(
    ("handler", "calls", "screen"),
    [
        (Lose(ways=("ussd",)), 0, "The network did not answer. Please dial again."),
        (Repeat(ways=("ussd",)), 2, "Menu"),
    ],
)
def test_a_turn_can_be_lost_or_come_twice(
    operator: OperatorController,
    phone: Phone,
    assistant: Any,
    handler: Handler,
    calls: int,
    screen: str,
) -> None:
    """Twice under one id, as after a hiccup of the line."""
    operator.handler = handler
    assert phone.dial(CODE) == screen
    turns = assistant.calls("/gateway/ussd")
    assert (len(turns), len({turn["id"] for turn in turns})) == (calls, min(calls, 1))


def test_switching_off_ends_the_session(phone: Phone, assistant: Any) -> None:
    """And a phone that is off cannot dial."""
    phone.dial(CODE)
    phone.power(False)
    assert assistant.steps == ["begin", "end"]
    with pytest.raises(PhoneOffError):
        phone.dial(CODE)


def test_an_answer_must_fit_as_a_screen_must(phone: Phone) -> None:
    """The session stays open for a shorter one."""
    phone.dial(CODE)
    with pytest.raises(TextError, match="at most 182"):
        phone.answer("a" * 183)
    assert phone.in_session


def test_the_record_tells_the_talk(
    operator: OperatorController, phone: Phone, assistant: Any
) -> None:
    """What was dialled or answered, and the screen it got."""
    assistant.screens["1"] = ("Bye", False)
    phone.dial(CODE)
    phone.answer("1")
    told = [(entry.detail, entry.text) for entry in operator.recorded(EntryKind.USSD)]
    assert told == [(CODE, "Menu"), ("1", "Bye")]
