"""Several lines, as the service works with them: answers go where the person wrote, receipts by
the operator's own ids, connections in one process."""

from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

import pytest

from assistant.channel import (
    Channel,
    Clock,
    Fate,
    Handover,
    Incoming,
    NotKeptError,
    Outgoing,
    Piece,
    Receipt,
    Screen,
    Take,
)
from assistant.gateways.pace import Pace, begin_of_turns
from assistant.service.arrivals import take, take_incomplete
from assistant.service.connections import take_turns
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

    def open(self, take: Take, clock: Clock) -> None:
        self.ear = take

    def wait_up(self, seconds: float) -> bool:
        return True

    @property
    def why(self) -> str:
        return ""

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


def test_why_a_line_cannot_send_is_kept_while_it_lasts(valley: Valley) -> None:
    """Also while nothing is to be sent; then that it can again."""
    whys = {"desk": "", "north": "the bind was refused: 0x0E password is wrong"}
    end = Connection()
    watch = LineWatch(valley.house, end, owner="x", clock=lambda: valley.now, whys=lambda: whys)

    def said(name: str) -> tuple[str, bool]:
        with valley.house.store.look() as work:
            line = work.running.line(name)
        return line.said, bool(line.rests_until and line.rests_until > valley.now)

    watch.round()
    assert said("north") == ("", False)
    for _ in range(3):
        watch.round()
        assert said("north") == (whys["north"], True) and said("desk") == ("", False)
        valley.now += timedelta(seconds=15)
    whys["north"] = ""
    watch.round()
    assert said("north") == ("", False)


def piece(valley: Valley, part: int, words: str, message_id: str = "") -> Incoming:
    """A piece of a text of three."""
    told = Piece("77", part, 3)
    message_id = message_id or f"p{part}"
    return Incoming(message_id, AMINA, words, Channel.SMS, valley.now, piece=told)


@pytest.fixture
def taken(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The texts that were taken in; a repeat of one is none, as in the inbox."""
    found: dict[str, str] = {}
    words: list[str] = []

    def receive(house: object, incoming: Incoming, now: datetime) -> None:
        if found.setdefault(incoming.gateway_id, incoming.text) not in words:
            words.append(incoming.text)

    monkeypatch.setattr("assistant.service.arrivals.receive", receive)
    return words


def test_pieces_are_one_text_once_all_are_there(valley: Valley, taken: list[str]) -> None:
    """In whatever order; a repeat changes nothing; the same number later is another text."""
    for part, words in ((3, "o"), (1, "hel"), (1, "hel"), (2, "l")):
        assert not taken
        take(valley.house, piece(valley, part, words), valley.now)
    assert taken == ["hello"]
    take(valley.house, piece(valley, 2, "l"), valley.now)
    assert taken == ["hello"]
    for part, words in ((1, "st"), (2, "o"), (3, "p")):
        take(valley.house, piece(valley, part, words, f"q{part}"), valley.now)
    assert taken == ["hello", "stop"]


def test_a_text_that_never_becomes_whole_is_taken_as_it_is(
    valley: Valley, taken: list[str]
) -> None:
    """After a quarter of an hour, with dots for what is missing."""
    take(valley.house, piece(valley, 1, "snake bit "), valley.now)
    take(valley.house, piece(valley, 3, " come"), valley.now)
    assert take_incomplete(valley.house, valley.now + timedelta(minutes=14)) == 0
    assert take_incomplete(valley.house, valley.now + timedelta(minutes=15)) == 1
    assert take_incomplete(valley.house, valley.now + timedelta(minutes=16)) == 0
    assert taken == ["snake bit ... come"]


# --- a rate that several processes share ------------------------------------------------------


@pytest.mark.parametrize("a_second", [0.5, 4.0, 50.0])
def test_processes_share_the_rate_of_a_line(valley: Valley, a_second: float) -> None:
    """Two that send whenever they may do not send faster than one: each turn is one process's,
    and within any second there are no more than the line allows."""
    at = [0.0]

    def turns(span_s: float, most_s: float) -> float:
        now = valley.now + timedelta(seconds=at[0])
        return take_turns(
            valley.house, "hill", now, lambda until: begin_of_turns(until, now, span_s, most_s)
        ).total_seconds()

    both = [Pace(a_second, lambda: at[0], turns) for _ in range(2)]
    sent: list[float] = []
    free = [0.0, 0.0]
    while at[0] < 20:
        for place, pace in enumerate(both):
            if free[place] <= at[0] and (wait := pace.take(1.0)) <= 1.0:
                free[place] = at[0] + wait
                sent.append(free[place])
        at[0] += 1 / a_second / 4
    assert len(sent) >= 15 * a_second
    most = max(sum(begin <= each < begin + 1 - 1e-6 for each in sent) for begin in sent)
    assert most <= max(a_second, 1)
