"""What only a modem can meet: cards without PIN, credit or network, a store that is full, a
modem that falls silent or is unplugged."""

import os
import select
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from assistant.channel import Fate, Handover, Incoming, Outgoing, Receipt
from assistant.gateways.modem import ModemGateway, ModemTerms
from gateway_sim import OperatorController
from gateway_sim.modem import Card, Modem
from tests.contract.lines import SOON, Heard

AMINA = "+447700900101"


def now() -> datetime:
    return datetime.now(UTC)


class Desk:
    """A gateway and a modem of its own."""

    def __init__(self, card: Card | None = None, **terms: object) -> None:
        self.heard = Heard()
        self.operator = OperatorController(
            side=lambda clock: Modem(clock, answer_seconds=0.1), limits=SOON
        )
        self.modem: Modem = self.operator.network.core.assistant  # type: ignore[assignment]
        self.modem.card = card or Card()
        given = {"answer_s": 5.0, "send_s": 0.5, "poll_s": 0.2} | terms
        self.gateway = ModemGateway(ModemTerms(self.modem.port, **given))  # type: ignore[arg-type]

    def send(self, message_id: str = "t-1") -> Handover:
        text = Outgoing(message_id, AMINA, "hi", now() + timedelta(hours=1))
        return self.gateway.send(text, now())

    def takes(self, message_id: str = "t-1") -> bool:
        """Whether it takes a text, which is offered until the modem answers, as the service
        does: on a machine at work it may be silent for a while."""
        return until(lambda: self.send(message_id).fate is Fate.ACCEPTED)


@contextmanager
def desk(card: Card | None = None, **terms: object) -> Iterator[Desk]:
    found = Desk(card, **terms)
    with found.operator:
        found.gateway.open(found.heard.take, now)
        try:
            yield found
        finally:
            found.gateway.close()


def until(true: Callable[[], bool], seconds: float = 60) -> bool:
    """Waits (real time) until something is true; whether it is."""
    end = time.monotonic() + seconds
    while not true() and time.monotonic() < end:
        time.sleep(0.01)
    return true()


def test_a_card_is_unlocked_by_its_pin() -> None:
    """Which is given once."""
    with desk(Card(pin="1234"), pin="1234") as found:
        assert found.gateway.wait_up(60), found.gateway.why
        assert found.takes()


CARDS: dict[str, tuple[Card, dict[str, Any], str]] = {
    "no PIN set": (Card(pin="1234"), {}, "wants its PIN"),
    "no card": (Card(in_place=False), {}, "put it in"),
    "blocked": (Card(pin="1234", pins_left=0), {}, "PUK"),
    "no network": (Card(network=False), {}, "by a window"),
}


@pytest.mark.parametrize("case", CARDS)
def test_what_is_wrong_with_a_card_is_said_in_words(case: str) -> None:
    """At each text, until somebody mends it."""
    card, terms, words = CARDS[case]
    with desk(card, **terms) as found:
        assert until(lambda: words in found.gateway.why), found.gateway.why
        handover = found.send()
        assert (handover.fate, handover.answered) == (Fate.TRY_LATER, False)
        assert words in handover.detail


def test_a_wrong_pin_is_tried_once() -> None:
    """Three would block the card."""
    with desk(Card(pin="1234"), pin="4321") as found:
        assert until(lambda: "PIN is wrong" in found.gateway.why)
        time.sleep(1.5)  # it looks again after a second
        assert found.modem.card.pins_left == 2


def test_a_card_without_credit_rests_and_says_so() -> None:
    """And goes on once it was topped up; what phones write is brought all the same."""
    with desk(Card(credit=False)) as found:
        assert found.gateway.wait_up(60)
        handover = found.send()
        assert handover.fate is Fate.TRY_LATER and "credit" in handover.detail
        assert handover.rest == timedelta(minutes=10)
        found.operator.phone(AMINA).text("help")
        assert found.heard.of(Incoming, 1)
        found.modem.card.credit = True
        assert found.takes()


def test_the_credit_is_asked_of_the_network() -> None:
    """By the code that is set."""
    with desk(credit="*100#") as found:
        assert found.gateway.wait_up(60)
        assert found.gateway.credit().startswith("Credit 12.40")


def test_a_network_that_comes_back_is_noticed() -> None:
    """Without anybody doing anything."""
    with desk(Card(network=False)) as found:
        assert until(lambda: "by a window" in found.gateway.why)
        found.modem.card.network = True
        assert found.gateway.wait_up(60)
        assert found.takes()


def test_a_store_that_is_full_is_emptied_once_texts_can_be_kept() -> None:
    """The card holds twenty; what has no room waits in the network. Each is taken once."""
    with desk() as found:
        assert found.gateway.wait_up(60)
        found.heard.away = True
        for number in range(22):
            found.operator.phone(AMINA).text(f"text {number}")
        assert until(lambda: len(found.modem.card.stored) == 20)
        found.heard.away = False
        texts = found.heard.of(Incoming, 22)
        words = [each.text for each in texts if isinstance(each, Incoming)]
        assert sorted(words) == sorted(f"text {number}" for number in range(22))
        assert until(lambda: not found.modem.card.stored)


def test_a_text_kept_before_a_crash_has_the_same_id_after_it() -> None:
    """It is still on the card, since it was not deleted."""
    with desk() as found:
        assert found.gateway.wait_up(60)
        found.gateway.close()
        found.operator.phone(AMINA).text("help")
        assert until(lambda: bool(found.modem.card.stored))
        terms = ModemTerms(found.modem.port, answer_s=60, poll_s=0.1)
        again = ModemGateway(terms)
        stored = dict(found.modem.card.stored)
        again.open(found.heard.take, now)
        assert until(lambda: not found.modem.card.stored), (again.why, found.operator.record)
        again.close()
        found.modem.card.stored.update(stored)  # as if it had died before it deleted
        last = ModemGateway(terms)
        last.open(found.heard.take, now)
        ids = {each.gateway_id for each in found.heard.of(Incoming, 2)}
        last.close()
        assert len(ids) == 1, found.heard.news


@pytest.mark.parametrize("fault", ["half", "taken"])
def test_a_text_whose_answer_was_lost_is_found_by_its_report(fault: str) -> None:
    """The modem counts what it sends: a report under the next count is that of the text."""
    with desk() as found:
        assert found.gateway.wait_up(60) and found.takes("t-1")
        found.modem.faults.append(fault)
        assert found.send("t-2").put_off_until is not None
        assert len(found.heard.of(Receipt, 2)) == 2
        assert until(lambda: found.send("t-2").fate is Fate.ACCEPTED)
        assert found.operator.phone(AMINA).texts == ["hi", "hi"]


def test_a_report_of_a_text_in_doubt_is_one_of_the_text() -> None:
    """Its reader may answer at once, before it would be offered again."""
    with desk() as found:
        assert found.gateway.wait_up(60) and found.takes("t-1")
        assert found.heard.of(Receipt, 1)
        found.modem.faults.append("taken")
        assert found.send("t-2").in_doubt
        told = found.heard.of(Receipt, 2)[1]
        assert isinstance(told, Receipt)
        assert (told.message_id, told.fate) == ("t-2", Fate.DELIVERED)


def test_a_report_of_the_first_copy_counts_for_the_second() -> None:
    """It went again before the phone, which was off, had the first."""
    with desk() as found:
        assert found.gateway.wait_up(60) and found.takes("t-1")
        assert found.heard.of(Receipt, 1)
        found.operator.phone(AMINA).power(False)
        found.modem.faults.extend(["taken", "silent"])
        assert found.send("t-2").in_doubt and found.send("t-2").in_doubt
        handover = found.send("t-2")
        assert (handover.fate, len(handover.parts)) == (Fate.ACCEPTED, 1)
        found.operator.phone(AMINA).power(True)
        told = [each.part for each in found.heard.of(Receipt, 3) if isinstance(each, Receipt)]
        assert told[1:] == [*handover.parts] * 2  # of both copies, under the id that is known


@pytest.mark.parametrize("fault", ["silent", "half", "taken"])
def test_a_modem_that_falls_silent_is_noticed(fault: str) -> None:
    """The text is offered again. Where it had left it comes twice, since it is the first: no
    count is known by which a report would be that of the text."""
    with desk() as found:
        assert found.gateway.wait_up(60)
        found.modem.faults.append(fault)
        handover = found.send()
        assert (handover.fate, handover.answered) == (Fate.TRY_LATER, False)
        assert until(lambda: found.send().fate is Fate.ACCEPTED)
        assert set(found.operator.phone(AMINA).texts) == {"hi"}


def test_a_modem_that_is_unplugged_is_said() -> None:
    """Until it is back."""
    with desk() as found:
        assert found.gateway.wait_up(60)
        found.modem.close()
        assert until(lambda: "plug" in found.gateway.why)
        assert found.send().fate is Fate.TRY_LATER


def test_a_network_without_room_is_left_in_peace() -> None:
    """For half a minute; the text is not lost."""
    with desk() as found:
        assert found.gateway.wait_up(60)
        found.modem.faults.append("busy")
        handover = found.send()
        assert (handover.fate, handover.rest) == (Fate.TRY_LATER, timedelta(seconds=30))
        assert found.takes()


def test_a_text_that_a_process_began_and_never_ended_is_given_up() -> None:
    """The modem still waits for its words, and would take our commands for them."""
    found = Desk(answer_s=1.0)
    with found.operator:
        port = os.open(found.modem.port, os.O_RDWR | os.O_NOCTTY)
        os.write(port, b"AT+CMGS=20\r0011")
        heard = b""
        while b">" not in heard:
            assert select.select([port], [], [], 10)[0], heard
            heard += os.read(port, 99)
        os.close(port)
        found.gateway.open(found.heard.take, now)
        assert found.gateway.wait_up(60), found.gateway.why
        assert found.takes()
        found.gateway.close()
        assert found.operator.phone(AMINA).texts == ["hi"]
