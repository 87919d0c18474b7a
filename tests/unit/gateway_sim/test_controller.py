"""The life of the operator: start, answer, stop, and what goes wrong."""

from threading import Event
from typing import Any

import pytest
import requests

from gateway_sim import Handler, OperatorController
from gateway_sim.controller import real_time
from gateway_sim.errors import NumberError, OperatorError, StartError
from gateway_sim.handlers import Fates, InTransit

SECRET = "between-the-two"


def test_it_answers_as_soon_as_it_is_started() -> None:
    """On a free port, until it is stopped."""
    with OperatorController(secret=SECRET) as op:
        assert requests.get(f"{op.url}/phones", timeout=60).json()["code"] == "*555*7#"
        url = op.url
    with pytest.raises(requests.ConnectionError):
        requests.get(f"{url}/phones", timeout=60)


def test_it_can_be_started_again() -> None:
    """Its phones keep their texts."""
    operator = OperatorController(secret=SECRET)
    with operator:
        operator.phone("+447700900101").text("hi")
    with operator as op:
        assert [sent.text for sent in op.phone("+447700900101").sent] == ["hi"]


def test_a_slow_start_names_the_knob() -> None:
    """The one to turn on a slow machine."""
    answered = Event()
    operator = OperatorController(secret=SECRET, start_seconds=0.01)
    operator.network.phones = lambda: [] if answered.wait(60) else []  # type: ignore[method-assign]
    with pytest.raises(StartError, match="start_seconds=0.01: allow more"):
        operator.start()
    answered.set()


def test_a_port_that_is_taken_is_said_so() -> None:
    """Without leaving the process."""
    with OperatorController(secret=SECRET) as op:
        port = int(op.url.rsplit(":", 1)[1])
        with pytest.raises(StartError, match="choose another port, or 0"):
            OperatorController(secret=SECRET, port=port).start()


@pytest.mark.parametrize(
    ("arguments", "error", "says"),
    [
        ({"host": "0.0.0.0"}, StartError, "127.0.0.1, localhost only"),
        ({"secret": ""}, StartError, "secret is empty"),
        ({"number": "+15551234567"}, NumberError, "use"),
    ],
)
def test_what_it_cannot_be_is_refused(
    arguments: dict[str, Any], error: type[Exception], says: str
) -> None:
    """Loopback only, with a secret, under a number of fiction."""
    with pytest.raises(error, match=says):
        OperatorController(**{"secret": SECRET, **arguments})


def test_its_address_is_known_only_while_it_runs() -> None:
    """A hint instead of None."""
    with pytest.raises(OperatorError, match="is not running"):
        _ = OperatorController(secret=SECRET).url


class Broken(Handler):
    """Fails when asked."""

    def to_phone(self, message: InTransit, course: Fates) -> Fates:
        raise RuntimeError("the handler is broken")


def test_an_error_in_the_servers_thread_is_raised_again(
    operator: OperatorController, assistant: Any
) -> None:
    """The assistant gets a 500, the test the error itself."""
    operator.handler = Broken()
    assert assistant.hand_in("hi").status_code == 500
    with pytest.raises(RuntimeError, match="the handler is broken"):
        operator.advance()
    operator.advance()


def test_an_error_in_the_servers_thread_is_raised_at_the_stop() -> None:
    """For tests that never advance."""
    with pytest.raises(RuntimeError, match="lost my mind"):
        with OperatorController(secret=SECRET) as op:
            op.network.phones = _fail  # type: ignore[method-assign]
            requests.get(f"{op.url}/phones", timeout=60)


def _fail() -> Any:
    raise RuntimeError("lost my mind")


def test_in_real_time_a_thread_of_its_own_does_what_is_due(assistant: Any) -> None:
    """A text, the stub's answer, and the receipt, without anybody advancing."""
    with OperatorController(secret=SECRET, callback_url=assistant.url) as op:
        assistant.operator_url = op.url
        assistant.clock = real_time
        assistant.on_text = lambda fields: assistant.hand_in(f"you said {fields['text']}")
        phone = op.phone("+447700900101")
        phone.text("hi")
        assert phone.wait_for(1)
        assert phone.texts == ["you said hi"]
        assert op.network.core.wait(lambda: bool(assistant.fates), 60)
