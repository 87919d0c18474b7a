"""How many statements a text and a screen take, exactly: each one more is a round trip more for
a million phones. What begins and ends a transaction, and the lock that PostgreSQL needs, are
not counted."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from sqlalchemy import Engine, event

from tests.valley import AMINA, BARAKA, Valley

NOT_COUNTED = ("BEGIN", "PRAGMA", "SELECT pg_advisory_xact_lock")


@contextmanager
def counted() -> Iterator[list[str]]:
    """The statements that any store is asked meanwhile."""
    said: list[str] = []

    def note(
        _connection: Any, _cursor: Any, statement: str, _given: Any, _context: Any, _many: bool
    ) -> None:
        if not statement.startswith(NOT_COUNTED):
            said.append(" ".join(statement.split()))

    event.listen(Engine, "before_cursor_execute", note)
    try:
        yield said
    finally:
        event.remove(Engine, "before_cursor_execute", note)


def asked_of(do: Callable[[], object]) -> list[str]:
    """The statements of one deed, each as the verb and the table that it begins with."""
    with counted() as said:
        do()
    return said


@pytest.fixture
def asked_to_sow(valley: Valley) -> Valley:
    """Amina was asked this morning whether she has sown."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "10/6")
    valley.go("10 Jun 06:05")
    return valley


def test_a_text_of_a_stranger_takes_six(valley: Valley) -> None:
    """What is at hand; the text kept; what digits may answer; the talk; what was answered
    lately; the answer."""
    valley.post(BARAKA, "START")
    valley.send()
    said = asked_of(lambda: valley.post(BARAKA, "1"))
    assert len(said) == 6, said


def test_a_text_of_a_farmer_takes_seven_and_writes_two_rows(asked_to_sow: Valley) -> None:
    """The beds and what was asked of them beside those; no talk to be kept."""
    said = asked_of(lambda: asked_to_sow.post(AMINA, "HELP"))
    assert len(said) == 7, said
    assert sum(each.startswith(("INSERT", "UPDATE", "DELETE")) for each in said) == 2, said


def test_an_answer_that_moves_the_plan_takes_fourteen(asked_to_sow: Valley) -> None:
    """The task settled, the event, prompts that wait, the bed, its story, what goes of it and
    what is settled by it; beside what a text takes."""
    said = asked_of(lambda: asked_to_sow.post(AMINA, "1"))
    assert len(said) == 14, "\n".join(said)


def test_a_screen_takes_eight(asked_to_sow: Valley) -> None:
    """A session read and kept beside what a text takes, and the screen kept for a repeat."""
    asked_to_sow.dial(AMINA)
    said = asked_of(lambda: asked_to_sow.key(AMINA, "0"))
    assert len(said) == 8, "\n".join(said)


def test_the_number_of_villages_is_no_matter(asked_to_sow: Valley) -> None:
    """They are kept by the process, under the number of their last change."""
    for number in range(50):
        asked_to_sow.add_village(f"Kijiji {number}")
    asked_to_sow.post(AMINA, "thanks")
    said = asked_of(lambda: asked_to_sow.post(AMINA, "HELP"))
    assert not [each for each in said if "FROM village " in each], said
