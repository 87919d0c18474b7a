"""What handlers make of messages, asked directly."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from gateway_sim import Busy, Chain, Deliver, Fail, Handler, Lose, MessageDelay, Reorder, Repeat
from gateway_sim.errors import HandlerError
from gateway_sim.handlers import Answer, Fates, InTransit, Way

HOUR = timedelta(hours=1)
AT_ONCE = Fates()


def message(text: str = "hi", way: Way = "to_phone", phone: str = "+447700900101") -> InTransit:
    return InTransit("m1", way, phone, text, datetime(2026, 6, 10, tzinfo=UTC))


def test_a_misspelt_method_is_refused_with_the_near_name() -> None:
    """A handler that would never be asked is found when it is written."""
    with pytest.raises(HandlerError, match=r"did you mean to_phone\?"):
        type("Mine", (Handler,), {"to_fone": lambda self, message, course: course})


def test_a_helper_may_be_hidden_behind_an_underscore() -> None:
    """Names that begin with _ are the handler's own affair."""
    type("Mine", (Deliver,), {"_count": 0})


def test_an_unknown_way_is_refused() -> None:
    """A way that no message goes."""
    ways: Any = ("to_fone",)
    with pytest.raises(HandlerError, match="no such way: to_fone"):
        Lose(ways=ways)


def test_handlers_in_a_chain_go_on_from_each_other() -> None:
    """Late, and then twice."""
    chain = Chain(MessageDelay(HOUR), Repeat())
    assert chain.to_phone(message(), AT_ONCE) == Fates((HOUR, HOUR))


def test_a_chain_asks_all_for_the_hand_over() -> None:
    """Busy once, then open."""
    chain = Chain(Deliver(), Busy(first=1))
    codes = [chain.submission(message(), Answer()).code for _ in range(2)]
    assert codes == [503, 202]


def test_a_handler_touches_only_what_it_is_told_to() -> None:
    """By way, by phone, by what the text says, and so many."""
    loser = Lose(
        ways=("to_phone",), phone="+447700900101", only=lambda m: "rain" in m.text, first=1
    )
    kept = [
        loser.to_assistant(message("rain", "to_assistant"), AT_ONCE),
        loser.to_phone(message("rain", phone="+447700900102"), AT_ONCE),
        loser.to_phone(message("sun"), AT_ONCE),
    ]
    lost = loser.to_phone(message("rain"), AT_ONCE)
    after = loser.to_phone(message("rain"), AT_ONCE)
    assert kept == [AT_ONCE] * 3
    assert (lost, after) == (Fates(()), AT_ONCE)


def test_reordering_holds_every_other_message() -> None:
    """The first waits, the second goes on."""
    handler = Reorder(HOUR)
    courses = [handler.to_phone(message(), AT_ONCE) for _ in range(4)]
    assert courses == [Fates((HOUR,)), AT_ONCE] * 2


def test_a_failure_is_for_texts_to_phones() -> None:
    """What phones send does not fail unless asked for."""
    handler = Fail("gone")
    assert handler.to_phone(message(), AT_ONCE) == Fates((), "gone")
    assert handler.to_assistant(message(way="to_assistant"), AT_ONCE) == AT_ONCE
