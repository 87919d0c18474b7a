"""What a transaction has read of people and villages and not changed since: people are asked
for six times in a turn, and villages at every text.

What was read of people is forgotten when mapped objects or their statements write to them, and
at a lock that may have been waited for. Villages, and the questions that an office answers, are
kept by the process, under the number of the last change that `counter` holds.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from sqlalchemy import bindparam, event, select, update
from sqlalchemy.orm import ORMExecuteState, Session, UOWTransaction

from assistant.hearing.office import OfficeQuestion
from assistant.people import Village
from assistant.store.core import table_of
from assistant.store.tables import FarmerRow, OfficerRow, OfficerVillageRow, VillageRow
from assistant.store.tables_people import EnrolmentRow
from assistant.store.tables_questions import OfficeQuestionRow
from assistant.store.tables_running import CounterRow

VILLAGES = "villages"  # the counter's name, and where a session holds the shelf
_PEOPLE, _CHANGED, _AT = "people", "villages changed", "villages at"
# Kinds of what was read.
FARMER, OFFICER, ENROLLED, AT_HAND = "farmer", "officer", "enrolled", "at hand"
_SHELVED = (VillageRow, OfficeQuestionRow)  # kept by the process under one number
_PERSONS = (FarmerRow, OfficerRow, OfficerVillageRow, EnrolmentRow)


class Transaction(Session):
    """A session that knows when people and villages change in it."""


@dataclass(frozen=True)
class Villages:
    """The villages of a programme by name, as they were at a change of that number."""

    number: int
    by_name: tuple[Village, ...]
    by_id: Mapping[int, Village]


@dataclass
class Shelf:
    """Holds the villages for all threads, and the office's questions with the number of the
    change they are of; they are put there whole."""

    villages: Villages | None = None
    questions: tuple[int, tuple[OfficeQuestion, ...]] | None = None


def people(session: Session) -> dict[tuple[str, str], Any]:
    """What was read of people, by kind and phone; None of who is not there."""
    found: dict[tuple[str, str], Any] = session.info.setdefault(_PEOPLE, {})
    return found


def forget(session: Session) -> None:
    """What was read of people may have changed."""
    people(session).clear()


def shelf(session: Session) -> Shelf:
    """Where the process keeps the villages; a bare one in a session that was given none, and
    where this transaction has changed a village, which nobody else may see yet."""
    if session.info.get(_CHANGED):
        return Shelf()
    kept: Shelf = session.info.setdefault(VILLAGES, Shelf())
    return kept


def kept_villages(session: Session, *, ask: bool) -> Villages | None:
    """The villages that the process keeps, where they are those of today.

    Args:
        ask: whether to look up the number of the last change where it was not read yet
    """
    number = _number(session, ask)
    kept = shelf(session).villages
    return kept if kept is not None and kept.number == number else None


def keep_villages(session: Session, by_name: tuple[Village, ...]) -> None:
    """Keeps what was read of all villages for the next who ask; those that are retired are
    found by their ids alone."""
    number = _number(session, ask=True)
    if number is not None:
        by_id = {village.id: village for village in by_name}
        open_ones = tuple(each for each in by_name if each.retired_at is None)
        shelf(session).villages = Villages(number, open_ones, by_id)


def kept_questions(session: Session) -> tuple[OfficeQuestion, ...] | None:
    """The office's questions that the process keeps, where they are those of today."""
    number, kept = _number(session, ask=True), shelf(session).questions
    return kept[1] if kept is not None and kept[0] == number else None


def keep_questions(session: Session, found: tuple[OfficeQuestion, ...]) -> None:
    """Keeps what was read of the office's questions for the next who ask."""
    number = _number(session, ask=True)
    if number is not None:
        shelf(session).questions = (number, found)


def note_number(session: Session, number: int | None) -> None:
    """The number of the last change of a village was read."""
    session.info[_AT] = number


def _number(session: Session, ask: bool) -> int | None:
    if ask and _AT not in session.info:
        note_number(session, session.scalar(NUMBER, {"counter": VILLAGES}))
    number: int | None = session.info.get(_AT)
    return number


@event.listens_for(Transaction, "after_flush")
def _flushed(session: Session, _context: UOWTransaction) -> None:
    written = (*session.new, *session.dirty, *session.deleted)
    if any(isinstance(each, _PERSONS) for each in written):
        forget(session)
    if any(isinstance(each, _SHELVED) for each in written):
        shelved_changed(session)


@event.listens_for(Transaction, "do_orm_execute")
def _executed(state: ORMExecuteState) -> None:
    if not (state.is_update or state.is_insert or state.is_delete):
        return
    if state.bind_mapper is None:
        return
    if issubclass(state.bind_mapper.class_, _PERSONS):
        forget(state.session)
    if issubclass(state.bind_mapper.class_, _SHELVED):
        shelved_changed(state.session)


def shelved_changed(session: Session) -> None:
    """What is on the shelf changes: other processes read it again once this is committed."""
    session.info[_CHANGED] = True
    session.connection().execute(_ONE_MORE, {"of": VILLAGES})


_COUNTER = table_of(CounterRow)
NUMBER = select(_COUNTER.c.number).where(_COUNTER.c.name == bindparam("counter"))
_ONE_MORE = (
    update(_COUNTER)
    .where(_COUNTER.c.name == bindparam("of"))
    .values(number=_COUNTER.c.number + 1)
)
