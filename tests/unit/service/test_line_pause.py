"""A line that is away or busy has a pause; the texts keep their tries and their places."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta

import pytest

from assistant.channel import Fate, Handover, Outgoing
from assistant.dialogue.values import Kind
from assistant.gateways.lines import Lines, Route, Terms
from assistant.gateways.pace import begin_of_turns
from assistant.service.dispatch import dispatch
from assistant.service.line_pause import TRIED_WITH, let_leave
from assistant.service.tick import tick
from assistant.store import Lane, OutboxText, TextState
from tests.valley import LEASE, Valley

SECOND, MINUTE, DAY = timedelta(seconds=1), timedelta(minutes=1), timedelta(days=1)
NOBODY = Handover(Fate.TRY_LATER, "nobody answers", answered=False)
BROKE = Handover(Fate.TRY_LATER, "it broke", answered=False, in_doubt=True)
BUSY = Handover(Fate.TRY_LATER, "503 busy", rest=timedelta(seconds=30))
TAKES = Handover(Fate.ACCEPTED)


@dataclass
class ListTaker:
    """An operator who takes lists, answers by a rule, and keeps what it was offered at once."""

    rule: Callable[[str], Handover] = lambda message_id: TAKES
    calls: list[list[str]] = field(default_factory=list)
    at_once: int = 500

    def time(self) -> None:
        """It tells none."""

    def in_lists(self, text: Outgoing, now: datetime) -> bool:
        return True

    def send(self, text: Outgoing, now: datetime) -> Handover:
        self.calls.append([text.message_id])
        return self.rule(text.message_id)

    def send_all(self, texts: Sequence[Outgoing], now: datetime) -> Sequence[Handover | None]:
        """One connection for all of them: it breaks for all, and a pause is said once."""
        self.calls.append([text.message_id for text in texts])
        answers = [self.rule(text.message_id) for text in texts]
        if any(not answer.answered for answer in answers):
            return [BROKE] * len(texts)
        return [BUSY, *[None] * (len(texts) - 1)] if BUSY in answers else answers

    @property
    def offered(self) -> list[str]:
        """All of it, in order."""
        return [each for call in self.calls for each in call]


def write(valley: Valley, *names: str, lane: Lane = Lane.TASK, lasts: timedelta = DAY) -> None:
    """Texts are written now, each to a phone by the first part of its name."""
    with valley.house.store.work() as work:
        work.outbox.add_all(
            OutboxText(
                message_id=name,
                phone=f"+4477009{name.partition('-')[0]:0>5}",
                text="Water the beds.",
                kind=Kind.PROMPT,
                due_at=valley.now,
                not_after=valley.now + lasts,
                created_at=valley.now,
                lane=lane,
            )
            for name in names
        )


def look(valley: Valley, operator: ListTaker) -> int:
    """One look at the outbox, a second later."""
    valley.now += SECOND
    return dispatch(valley.house, operator, valley.now, limit=500, lease=LEASE)


def all_looks(valley: Valley, operator: ListTaker) -> None:
    """Looks while something goes, as the worker has it; no time passes."""
    while dispatch(valley.house, operator, valley.now, limit=500, lease=LEASE):
        pass


def text(valley: Valley, name: str) -> OutboxText:
    with valley.house.store.look() as work:
        found = work.outbox.get(name)
    assert found is not None
    return found


def went(valley: Valley, names: Sequence[str]) -> bool:
    """Whether all these texts are with the operator; the latest are those that may not be."""
    with valley.house.store.look() as work:
        found = map(work.outbox.get, reversed(names))
        return all(each is not None and each.state is TextState.ACCEPTED for each in found)


def numbers(count: int, first: int = 100) -> list[str]:
    return [str(first + place) for place in range(count)]


@pytest.mark.parametrize("why", [NOBODY, BROKE, BUSY])
def test_what_waited_for_the_line_goes_at_once_in_its_order(
    valley: Valley, why: Handover
) -> None:
    """However long it was away: no text lost a try, and danger written meanwhile is first."""
    write(valley, *numbers(150))
    valley.now += SECOND
    write(valley, "300-1", "300-2", lane=Lane.ANSWER)
    operator = ListTaker(lambda message_id: why)
    for _ in range(40):
        assert look(valley, operator) == 0
        valley.now += MINUTE
    write(valley, "400", lane=Lane.DANGER)
    assert all(text(valley, name).attempts == 0 for name in numbers(150))
    operator.rule, operator.calls = lambda message_id: TAKES, []
    all_looks(valley, operator)
    assert operator.offered == ["400", "300-1", "300-2", *numbers(150)]


def test_a_line_that_rests_is_offered_nothing_and_then_a_few(valley: Valley) -> None:
    """One, then as many again as went: an operator who is starting meets no whole morning."""
    write(valley, *numbers(300))
    operator = ListTaker(lambda message_id: BUSY)
    look(valley, operator)
    assert [len(call) for call in operator.calls] == [300]
    for _ in range(28):
        look(valley, operator)
    assert len(operator.calls) == 1
    valley.now += 2 * SECOND
    look(valley, operator)
    assert [len(call) for call in operator.calls[1:]] == [1]
    operator.rule, operator.calls = lambda message_id: TAKES, []
    valley.now += 30 * SECOND
    assert look(valley, operator) == TRIED_WITH
    assert [len(call) for call in operator.calls] == [1, 1, 2, 4, 8, 16, 32]
    assert look(valley, operator) == 300 - TRIED_WITH


def test_a_text_ends_by_its_own_time_alone(valley: Valley) -> None:
    """The one that is worthless meanwhile is given up, the other goes."""
    write(valley, "101", lasts=10 * MINUTE)
    write(valley, "102", lasts=DAY)
    operator = ListTaker(lambda message_id: NOBODY)
    for _ in range(15):
        look(valley, operator)
        valley.now += MINUTE
        tick(valley.house, valley.now)
    operator.rule = lambda message_id: TAKES
    look(valley, operator)
    assert text(valley, "101").state is TextState.EXPIRED
    assert text(valley, "102").state is TextState.ACCEPTED


@pytest.mark.parametrize("answer", [BROKE, BUSY])
@pytest.mark.parametrize("bad", [("100",), ("170",), ("100", "101", "399")])
def test_a_text_that_brings_the_line_down_holds_up_no_other(
    valley: Valley, answer: Handover, bad: tuple[str, ...]
) -> None:
    """It alone is to blame, and tried again by itself, later and later."""
    write(valley, *numbers(300))
    operator = ListTaker(lambda message_id: answer if message_id in bad else TAKES)
    begun = valley.now
    good = [name for name in numbers(300) if name not in bad]
    while valley.now - begun < timedelta(minutes=15):
        while look(valley, operator):
            pass
        if went(valley, good):
            break
    assert went(valley, good)
    assert all(text(valley, name).state is TextState.WAITING for name in bad)
    assert sorted(set(operator.offered)) == numbers(300)


def test_an_answer_stays_in_its_order_where_its_beginning_is_to_blame(valley: Valley) -> None:
    """What follows it to the same phone waits as long."""
    write(valley, "101-1", "101-2", "102", "103", lane=Lane.ANSWER)
    operator = ListTaker(lambda message_id: BROKE if message_id == "101-1" else TAKES)
    for _ in range(20):
        look(valley, operator)
    assert text(valley, "102").state is text(valley, "103").state is TextState.ACCEPTED
    assert text(valley, "101-1").attempts == 1 and "101-2" not in sum(operator.calls[1:], [])
    operator.rule, operator.calls = lambda message_id: TAKES, []
    valley.now += MINUTE
    all_looks(valley, operator)
    assert operator.offered == ["101-1", "101-2"]


# --- moments that a clock which was wrong left behind -----------------------------------------

JUMPS = pytest.mark.parametrize("jump", [timedelta(seconds=400), DAY, 90 * DAY])


@JUMPS
@pytest.mark.parametrize("why", [NOBODY, BUSY])
def test_a_pause_that_begins_later_than_now_is_none(
    valley: Valley, jump: timedelta, why: Handover
) -> None:
    """The line was tried while the clock was ahead."""
    write(valley, "101", lasts=200 * DAY)
    right = valley.now
    valley.now += jump
    look(valley, ListTaker(lambda message_id: why))
    valley.now = right
    assert look(valley, ListTaker()) == 1


@JUMPS
def test_what_was_claimed_by_a_clock_ahead_comes_back_at_once(
    valley: Valley, jump: timedelta
) -> None:
    """Its worker was killed; the lease would last as long as the clock was wrong."""
    write(valley, "101", lasts=200 * DAY)
    with valley.house.store.work() as work:
        assert work.outbox.claim(valley.now + jump, 9, LEASE)
    assert look(valley, ListTaker()) == 1


def test_what_another_process_has_in_hand_stays_there(valley: Valley) -> None:
    """Its clock may be some seconds ahead, and it may be trying the line."""
    write(valley, "101")
    with valley.house.store.work() as work:
        assert work.outbox.claim(valley.now + 20 * SECOND, 9, LEASE * 1.5)
    assert look(valley, ListTaker()) == 0


def test_a_text_whose_next_try_is_too_far_off_goes_now(valley: Valley) -> None:
    """One that was tried, one that a line put off; not what is to leave later by right."""
    write(valley, "101", "102", "103", lasts=200 * DAY)
    ahead = valley.now + DAY
    with valley.house.store.work() as work:
        work.outbox.claim(valley.now, 2, LEASE)
        work.outbox.record("101", Fate.TRY_LATER, ahead, retry_at=ahead + MINUTE)
        work.lines.put_off(["102"], ahead + MINUTE)
        work.outbox.claim(valley.now, 1, LEASE)
        work.lines.hold(["103"], ahead)
    assert look(valley, ListTaker()) == 0
    assert let_leave(valley.house, valley.now) == 2
    assert let_leave(valley.house, valley.now) == 0
    assert look(valley, ListTaker()) == 2
    assert text(valley, "103").due_at == ahead


@JUMPS
def test_the_connections_are_free_where_a_clock_ahead_took_them(
    valley: Valley, jump: timedelta
) -> None:
    """The process that had them is gone, and its clock was wrong."""
    with valley.house.store.work() as work:
        assert work.lines.own("one", valley.now + jump, valley.now + jump + 20 * SECOND)
        assert work.lines.own("two", valley.now, valley.now + 20 * SECOND)
        assert not work.lines.own("one", valley.now, valley.now + 20 * SECOND)


@JUMPS
def test_turns_are_free_where_a_clock_ahead_took_them(valley: Valley, jump: timedelta) -> None:
    """Nobody takes turns for longer than a text waits for one."""
    now = valley.now
    begin, until = begin_of_turns(now + jump, now, 0.25, 1.0)
    assert (begin, until) == (now, now + timedelta(seconds=0.25))
    begin, until = begin_of_turns(now + SECOND, now, 0.25, 1.0)
    assert begin == now + SECOND


@JUMPS
def test_one_of_several_lines_rests_no_longer_than_it_should(
    valley: Valley, jump: timedelta
) -> None:
    """It was busy while the clock was ahead."""
    operator = ListTaker(lambda message_id: BUSY)
    lines = Lines({"north": operator}, (Route(("north",)),), {"north": Terms()})
    write(valley, "101", lasts=200 * DAY)
    right = valley.now
    valley.now += jump
    dispatch(valley.house, lines, valley.now, limit=9, lease=LEASE)
    valley.now, operator.rule = right, lambda message_id: TAKES
    write(valley, "102")
    valley.now += SECOND
    assert dispatch(valley.house, lines, valley.now, limit=9, lease=LEASE) == 1
    assert text(valley, "102").state is TextState.ACCEPTED
