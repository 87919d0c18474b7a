"""Several lines, as the service works with them: answers go where the person wrote, receipts by
the operator's own ids, connections in one process."""

from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

import pytest

from assistant.channel import (
    Channel,
    Fate,
    Handover,
    Incoming,
    NotKeptError,
    Outgoing,
    Receipt,
    Screen,
    Take,
)
from assistant.service.arrivals import take
from assistant.service.dispatch import dispatch
from assistant.store import DatabaseAwayError, TextState
from assistant.worker import LineWatch
from tests.valley import AMINA, LEASE, Valley


@dataclass
class Line:
    """A way out that keeps what it was offered, and answers as it was told."""

    answer: Handover = Handover(Fate.ACCEPTED)
    offered: list[Outgoing] = field(default_factory=list)

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        self.offered.append(outgoing)
        return self.answer

    def time(self) -> datetime | None:
        return None


def hello(valley: Valley, line: str, message_id: str) -> None:
    """Amina texts by a line."""
    text = Incoming(message_id, AMINA, "hello", Channel.SMS, valley.now, line=line)
    take(valley.house, text, valley.now)


def sent(valley: Valley, line: Line) -> int:
    return dispatch(valley.house, line, valley.now, limit=9, lease=LEASE)


def test_an_answer_goes_by_the_line_that_the_person_wrote_by(valley: Valley) -> None:
    """The last one, where there are several."""
    valley.house = replace(valley.house, several_lines=True)
    line = Line()
    hello(valley, "north", "m1")
    hello(valley, "desk", "m2")
    sent(valley, line)
    assert {(each.line, each.kind) for each in line.offered} == {("desk", "reply")}


def test_receipts_by_the_operators_ids_find_their_text(valley: Valley) -> None:
    """Also one that came before the hand-over was written down."""
    early = Receipt("", Fate.DELIVERED, valley.now, line="north", part="a")
    take(valley.house, early, valley.now)
    hello(valley, "north", "m1")
    line = Line(Handover(Fate.ACCEPTED, line="north", parts=("a", "b")))
    assert sent(valley, line) == 1
    message_id = line.offered[0].message_id

    def state() -> TextState:
        with valley.house.store.look() as work:
            found = work.outbox.get(message_id)
        assert found is not None
        return found.state

    assert state() is TextState.ACCEPTED
    take(valley.house, replace(early, part="b"), valley.now)
    assert state() is TextState.DELIVERED


def test_a_text_that_is_put_off_is_offered_again_and_not_counted(valley: Valley) -> None:
    """Other texts of the batch are not held up by it."""
    hello(valley, "", "m1")
    later = valley.now + timedelta(minutes=1)
    line = Line(Handover(Fate.TRY_LATER, "at its rate", put_off_until=later))
    assert sent(valley, line) == 1
    assert sent(valley, line) == 0
    valley.now, line.answer = later, Handover(Fate.ACCEPTED)
    assert sent(valley, line) == 1
    with valley.house.store.look() as work:
        found = work.outbox.get(line.offered[0].message_id)
    assert found is not None and found.attempts == 0


@dataclass
class Connection:
    """A line that listens."""

    ear: Take | None = None
    closed: int = 0

    def open(self, take: Take) -> None:
        self.ear = take

    def close(self) -> None:
        self.ear, self.closed = None, self.closed + 1


def test_one_process_has_the_connections_and_another_takes_over(valley: Valley) -> None:
    """When the first stops, or gives no sign for twenty seconds."""
    ends = [Connection(), Connection()]
    one, two = (
        LineWatch(valley.house, end, owner=str(place), clock=lambda: valley.now)
        for place, end in enumerate(ends)
    )
    one.round()
    two.round()
    assert (one.has(), two.has()) == (True, False)
    assert ends[0].ear is not None and ends[1].ear is None
    valley.now += timedelta(seconds=21)
    two.round()
    one.round()
    assert (one.has(), two.has(), ends[0].closed) == (False, True, 1)


def test_what_a_line_brings_is_kept_before_it_is_answered(
    valley: Valley, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the database is away, the line hears that nothing was kept."""
    end = Connection()
    LineWatch(valley.house, end, owner="x", clock=lambda: valley.now).round()
    assert end.ear is not None
    text = Incoming("m1", AMINA, "hello", Channel.SMS, valley.now, line="north")
    assert end.ear(text) is None
    with valley.house.store.look() as work:
        assert len(work.outbox.of_phone(AMINA)) == 1

    def away(*given: object) -> Screen | None:
        raise DatabaseAwayError("gone")

    monkeypatch.setattr("assistant.worker.take", away)
    with pytest.raises(NotKeptError):
        end.ear(replace(text, gateway_id="m2"))
