"""Several lines: each rests by itself, and what goes by none of the others keeps its place."""

from datetime import timedelta

import pytest
from sqlalchemy import event

from assistant.dialogue.values import Kind
from assistant.gateways.lines import Lines, Route, Terms
from assistant.service.dispatch import dispatch
from assistant.store import Lane, OutboxText, TextState
from tests.unit.service.test_line_pause import (
    BROKE,
    BUSY,
    MINUTE,
    NOBODY,
    SECOND,
    TAKES,
    ListTaker,
    all_looks,
    numbers,
    text,
    write,
)
from tests.valley import LEASE, Valley

NORTH = "+4477001"


def two(first: ListTaker, second: ListTaker, *routes: Route) -> Lines:
    return Lines({"a": first, "b": second}, routes, {"a": Terms(), "b": Terms()})


def look(valley: Valley, lines: Lines) -> int:
    """One look, a second later."""
    valley.now += SECOND
    return dispatch(valley.house, lines, valley.now, limit=100, lease=LEASE)


@pytest.mark.parametrize("why", [NOBODY, BUSY])
def test_all_goes_in_the_order_of_lanes_when_lines_are_back(
    valley: Valley, why: object
) -> None:
    """After an hour without any: danger, answers, then what waited, in the order of writing but
    for the few texts by which the lines were tried."""
    write(valley, *numbers(300))
    begun = valley.now
    valley.now += SECOND
    write(valley, "500", lane=Lane.ANSWER)
    down = ListTaker(lambda message_id: why)  # type: ignore[arg-type, return-value]
    lines = two(down, ListTaker(down.rule))
    for _ in range(60):
        look(valley, lines)
        valley.now += MINUTE
    write(valley, "600", lane=Lane.DANGER)
    first, second = (lines.line(name) for name in ("a", "b"))
    assert isinstance(first, ListTaker) and isinstance(second, ListTaker)
    first.rule = lambda message_id: TAKES
    first.calls = []
    all_looks(valley, lines)  # type: ignore[arg-type]
    assert first.offered[:2] == ["600", "500"]
    prompts = first.offered[2:]
    assert sorted(prompts) == numbers(300)
    tried = [name for name in numbers(300) if text(valley, name).due_at > begun]
    assert [n for n in prompts if n not in tried] == [n for n in numbers(300) if n not in tried]
    assert len(tried) <= 60  # one at a look


def test_while_all_rest_nothing_is_written(valley: Valley) -> None:
    """Thousands that wait cost a look nothing."""
    write(valley, *numbers(300))
    down = ListTaker(lambda message_id: BUSY)
    lines = two(down, ListTaker(down.rule))
    look(valley, lines)
    look(valley, lines)
    statements: list[str] = []

    def count(*given: object) -> None:
        statements.append(str(given[2]))

    event.listen(valley.house.store._engine, "before_cursor_execute", count)
    for _ in range(5):
        assert look(valley, lines) == 0
    event.remove(valley.house.store._engine, "before_cursor_execute", count)
    assert statements == []


def test_what_a_line_that_rests_would_take_holds_up_no_other_route(valley: Valley) -> None:
    """More wait for it than a look claims, and before the others."""
    begun = valley.now
    with valley.house.store.work() as work:
        work.outbox.add_all(
            OutboxText(
                message_id=f"n{place}",
                phone=f"{NORTH}{place:05}",
                text="Water the beds.",
                kind=Kind.PROMPT,
                due_at=valley.now,
                not_after=valley.now + timedelta(days=1),
                created_at=valley.now,
                lane=Lane.TASK,
            )
            for place in range(250)
        )
    valley.now += SECOND
    write(valley, *numbers(20))
    down, up = ListTaker(lambda message_id: BUSY), ListTaker()
    lines = two(down, up, Route(("a",), (NORTH,)), Route(("b",)))
    for _ in range(3):
        look(valley, lines)
    assert sorted(up.offered) == numbers(20)
    waiting = [text(valley, f"n{place}") for place in range(250)]
    assert all(each.state is TextState.WAITING for each in waiting)
    assert sum(each.due_at == begun for each in waiting) >= 248  # one is tried at a time
    down.rule, down.calls = (lambda message_id: TAKES), []
    valley.now += MINUTE
    all_looks(valley, lines)  # type: ignore[arg-type]
    assert len(set(down.offered)) == 250


@pytest.mark.parametrize("bad", [("100",), ("170",), ("100", "101", "399")])
def test_a_text_that_brings_all_lines_down_holds_up_no_other(
    valley: Valley, bad: tuple[str, ...]
) -> None:
    """It goes behind the others, and is tried in ever smaller company."""
    write(valley, *numbers(300))
    rule = ListTaker(lambda message_id: BROKE if message_id in bad else TAKES).rule
    lines = two(ListTaker(rule), ListTaker(rule))
    good = [name for name in numbers(300) if name not in bad]
    for _ in range(200):
        look(valley, lines)
        if all(text(valley, name).state is TextState.ACCEPTED for name in good):
            break
    assert all(text(valley, name).state is TextState.ACCEPTED for name in good)
    assert all(text(valley, name).state is TextState.WAITING for name in bad)
