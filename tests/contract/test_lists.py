"""Lists on our own wire, both ways, between our gateway and the simulated operator."""

from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, timedelta
from time import monotonic, sleep

import pytest

from assistant.channel import Fate, Handover, ListGateway, Outgoing, Receipt
from assistant.gateways import HttpGateway
from gateway_sim import Busy, EntryKind, Refuse
from tests.contract.lines import LINES, Line

PHONES = [f"+4477009001{number:02}" for number in range(1, 21)]


@pytest.fixture
def wire() -> Iterator[Line]:
    with LINES["wire"]() as opened:
        yield opened


def offered(line: Line, phones: list[str]) -> Sequence[Handover | None] | None:
    """The answers to a list of one text a phone."""
    assert isinstance(line.gateway, ListGateway)
    now = datetime.now(UTC)
    until = now + timedelta(hours=9)
    texts = [Outgoing(f"t-{phone[-4:]}", phone, "Water the beds.", until) for phone in phones]
    return line.gateway.send_all(texts, now)


def test_a_list_arrives_whole_and_its_receipts_come_together(wire: Line) -> None:
    """Each phone once, each receipt once."""
    assert offered(wire, PHONES) == [Handover(Fate.ACCEPTED)] * len(PHONES)
    receipts = wire.heard.of(Receipt, len(PHONES))
    assert sorted(each.message_id for each in receipts) == [f"t-{each[-4:]}" for each in PHONES]
    assert {wire.operator.phone(phone).texts[0] for phone in PHONES} == {"Water the beds."}
    until = monotonic() + 60
    while not told_together(wire) and monotonic() < until:
        sleep(0.01)  # the operator writes it down when it was answered
    assert told_together(wire), wire.operator.record


def told_together(line: Line) -> bool:
    """Whether receipts were told in a list."""
    called = line.operator.recorded(EntryKind.CALLED)
    return any(each.detail == "/gateway/receipts" for each in called)


def test_a_list_offered_again_arrives_once(wire: Line) -> None:
    """When its answer was lost."""
    offered(wire, PHONES)
    assert offered(wire, PHONES[:3] + ["+447700900150"]) == [Handover(Fate.ACCEPTED)] * 4
    assert len(wire.operator.phone(PHONES[0]).texts) == 1


def test_each_text_of_a_list_is_answered_by_itself(wire: Line) -> None:
    """One is refused, one is not for now."""
    wire.operator.handler = Refuse()
    answers = offered(wire, PHONES[:2])
    assert answers is not None
    assert [each.fate for each in answers if each] == [Fate.FAILED] * 2
    assert answers[0] is not None and answers[0].detail
    wire.operator.handler = Busy(phone="+447700900151")
    later = offered(wire, ["+447700900151", "+447700900152"])
    assert later is not None
    assert [each.fate for each in later if each] == [Fate.TRY_LATER, Fate.ACCEPTED]


def test_a_busy_operator_answers_for_the_whole_list(wire: Line) -> None:
    """The first stands for all; the others were not looked at and lose no try."""
    wire.operator.handler = Busy()
    answers = offered(wire, PHONES[:3])
    assert answers is not None and answers[0] is not None
    assert answers[0].rest is not None and answers[1:] == [None, None]


def test_an_operator_without_lists_is_known_for_an_hour(
    wire: Line, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Then asked again."""
    monkeypatch.setattr("assistant.gateways.http._LIST", "/unknown")
    asked: list[str] = []
    post = HttpGateway._post

    def noted(self: HttpGateway, below: str, body: bytes, now: datetime) -> object:
        asked.append(below)
        return post(self, below, body, now)

    monkeypatch.setattr(HttpGateway, "_post", noted)
    assert offered(wire, PHONES[:2]) is None
    assert offered(wire, PHONES[:2]) is None
    assert asked == ["/unknown"]


def test_an_operator_that_is_gone_answers_for_none(wire: Line) -> None:
    """All may have arrived, so all are offered again under their ids."""
    wire.operator.stop()
    answers = offered(wire, PHONES[:2])
    assert answers is not None
    assert [each.answered for each in answers if each] == [False, False]
