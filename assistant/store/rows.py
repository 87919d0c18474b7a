"""From rows to the values of the core: nothing else leaves the room."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import fields
from functools import cache
from operator import attrgetter, itemgetter
from typing import Any, ClassVar, Protocol, TypeVar

from sqlalchemy import Row
from sqlalchemy.orm import Session, object_session

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import Practice
from assistant.dialogue.values import Standing
from assistant.people import Farmer, Village, VillageUnit
from assistant.reminders.values import Reminder
from assistant.store.codec import read_focus
from assistant.store.core import table_of
from assistant.store.errors import BadRowError
from assistant.store.tables import (
    NurseryRow,
    OutboxRow,
    VillageRow,
    WarningRow,
)
from assistant.store.values import OutboxText, UssdTalk

PRACTICES = "practices"  # where a session holds the practices, by code
UNREADABLE = "unreadable"  # where it notes the nurseries that could not be read, and why
NO_PHONE = "-"  # begins, before the farmer's id, what stands for the number of who has none
_NAMES = [field.name for field in fields(OutboxText)]
_OUTBOX = itemgetter(*map(table_of(OutboxRow).c.keys().index, _NAMES))
_FOCUS = _NAMES.index("focus")


class Value(Protocol):
    """Any dataclass."""

    __dataclass_fields__: ClassVar[dict[str, Any]]


V = TypeVar("V", bound=Value)


def value(kind: type[V], row: Any, **given: object) -> V:
    """A value whose fields are the row's columns of the same names, but for those given."""
    names, read = _reader(kind, frozenset(given))
    return kind(**dict(zip(names, read(row), strict=True)), **given)


@cache
def _reader(
    kind: type[Value], given: frozenset[str]
) -> tuple[tuple[str, ...], Callable[[Any], tuple[Any, ...]]]:
    """The fields that come from a row, and what reads them: thousands of rows have the same."""
    names = tuple(field.name for field in fields(kind) if field.name not in given)
    return names, attrgetter(*names)


def village(row: VillageRow) -> Village:
    climate = None if row.climate is None else tuple(row.climate)
    units = None if row.units is None else tuple(map(_unit, row.units))
    return value(Village, row, practices=tuple(row.practices), climate=climate, units=units)


def _unit(kept: Any) -> VillageUnit:
    names, m2 = kept
    return VillageUnit(tuple(names), float(m2))


def farmer(row: Any) -> Farmer:
    return value(Farmer, row, phone="" if row.phone.startswith(NO_PHONE) else row.phone)


def nursery(row: NurseryRow) -> Nursery:
    """One nursery.

    Raises:
        BadRowError: a row that an earlier release kept and the core no longer accepts, or a
            practice whose file is gone.
    """
    session = object_session(row)
    return nursery_of(row, session.info[PRACTICES] if session else {})


def nursery_of(row: Any, known: Mapping[str, Practice]) -> Nursery:
    """The same of a row of plain columns, with the practices that are known, by code.

    Raises:
        BadRowError: as for `nursery`.
    """
    try:
        practice = _practice(row, known)
        climate = None if row.climate is None else tuple(row.climate)
        inputs = value(FieldInputs, row)
        return value(Nursery, row, inputs=inputs, practice=practice, climate=climate)
    except AgronomyError as error:
        raise BadRowError(
            f"nursery {row.id}: {error}; correct it in the table or close it"
        ) from error


def readable(row: NurseryRow) -> Nursery | None:
    """One nursery; None where it cannot be read, which the session then knows of. A bad row
    harms itself: a list goes on without it, and its farmer can still be answered."""
    try:
        return nursery(row)
    except BadRowError as fault:
        session = object_session(row)
        if session is not None:
            note_unreadable(session, row.id, fault)
        return None


def note_unreadable(session: Session, nursery_id: int, fault: BadRowError) -> None:
    """Notes in a session that a nursery could not be read, and why."""
    session.info.setdefault(UNREADABLE, {})[nursery_id] = str(fault)


def sound(found: Iterable[Any], at: int = 1) -> Iterator[tuple[Any, Nursery]]:
    """The rows of several tables, each with its nursery, whose row stands at a place in them;
    those that cannot be read are passed over."""
    for each in found:
        nursery = readable(each[at])
        if nursery is not None:
            yield each, nursery


def _practice(row: Any, known: Mapping[str, Practice]) -> Practice:
    if row.practice not in known:
        raise no_practice(row.id, row.practice, known)
    return known[row.practice]


def no_practice(nursery_id: int, code: str, known: Iterable[str]) -> BadRowError:
    """What is said of a nursery whose practice is not there."""
    return BadRowError(
        f"nursery {nursery_id}: expected a practice of {', '.join(known)}, got "
        f"{code!r}; put its file back"
    )


def reminder(row: Any) -> Reminder:
    return value(Reminder, row)


def outbox_text(row: Any) -> OutboxText:
    """One text. Thousands are claimed in a morning: a whole row is read by its places, which
    takes a third of the time that its names take."""
    if isinstance(row, Row):
        columns = list(_OUTBOX(row))
        columns[_FOCUS] = read_focus(columns[_FOCUS])
        return OutboxText(*columns)
    return value(OutboxText, row, focus=read_focus(row.focus))


def ussd_talk(row: Any) -> UssdTalk:
    return value(UssdTalk, row, pages=tuple(row.pages), focus=read_focus(row.focus))


def standing(row: WarningRow, answer: str | None = None) -> Standing:
    return value(Standing, row, answer=answer)
