"""What was before a deed, kept for a minute as plain data, and the way back to it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, fields, replace
from datetime import date, datetime
from typing import Any

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.reminders.values import Reminder, State
from assistant.service.house import House
from assistant.service.replan import save_and_plan
from assistant.store import Work


@dataclass
class Before:
    """What a deed has made or changed.

    visits, marks, texts: ids of rows that it made         calls: id, and when the next person
        would have been told of an alarm
    handed: rows of calls that were given to a colleague
    warned: answers that it noted, by warning and phone    beds: fields of nurseries as they
        were, with the id of their last event then         asked: tasks as they were
    """

    visits: list[int] = field(default_factory=list)
    marks: list[int] = field(default_factory=list)
    texts: list[str] = field(default_factory=list)
    calls: list[tuple[int, str | None]] = field(default_factory=list)
    warned: list[tuple[int, str]] = field(default_factory=list)
    beds: list[dict[str, Any]] = field(default_factory=list)
    asked: list[tuple[int, str, str | None, str | None]] = field(default_factory=list)
    handed: list[int] = field(default_factory=list)
    how: str = ""  # "told" or "later", where texts do not leave in a minute

    def keep_text(self, message_id: str, *, held: bool, waits: bool) -> None:
        """Keeps a text that was sent, and whether it can be taken back."""
        self.texts.append(message_id)
        self.how = "told" if not held else "later" if waits else self.how

    def keep_bed(self, before: Nursery, after: Nursery, last_event: int) -> None:
        """Keeps what differs between two states of a nursery, and the event to go back to."""
        changed = {
            each.name: _plain(getattr(before, each.name))
            for each in fields(before)
            if getattr(before, each.name) != getattr(after, each.name)
        }
        self.beds.append({"id": before.id, "event": last_event, "fields": changed})

    def keep_asked(self, tasks: Iterable[Reminder]) -> None:
        """Keeps the states of tasks."""
        for each in tasks:
            at = each.answered_at.isoformat() if each.answered_at else None
            self.asked.append((each.id, each.state.value, each.answer, at))

    def data(self) -> dict[str, Any]:
        """As it is kept."""
        return {each.name: getattr(self, each.name) for each in fields(self)}


def go_back(work: Work, house: House, kept: Mapping[str, Any], now: datetime) -> int:
    """Puts everything back; how many texts had left already."""
    work.story.drop_visits(kept["visits"])
    work.desk.unmark(kept["marks"])
    work.handed.take_back(kept.get("handed", ()))
    for warning_id, phone in kept["warned"]:
        work.warnings.unanswer(warning_id, phone)
    for call_id, next_at in kept["calls"]:
        work.calls.reopen(call_id, datetime.fromisoformat(next_at) if next_at else None)
    for bed in kept["beds"]:
        _bed_back(work, house, bed, now)
    for reminder_id, state, answer, at in kept["asked"]:
        answered_at = datetime.fromisoformat(at) if at else None
        work.reminders.put_back(reminder_id, State(state), answer, answered_at)
    return len(kept["texts"]) - work.outbox.take_back(kept["texts"], now)


def _bed_back(work: Work, house: House, bed: Mapping[str, Any], now: datetime) -> None:
    found = _with_farmer(work, bed["id"])
    if found is None:
        return
    farmer, nursery = found
    work.lock(farmer.phone)
    work.events.drop_after(nursery.id, bed["event"])
    if bed["fields"]:
        was: dict[str, Any] = {
            name: _read(nursery, name, value) for name, value in bed["fields"].items()
        }
        save_and_plan(work, house, farmer, replace(nursery, **was), now)


def _with_farmer(work: Work, nursery_id: int) -> tuple[Farmer, Nursery] | None:
    nursery = work.nurseries.get(nursery_id)
    farmer = work.people.farmer_by_id(nursery.farmer_id) if nursery else None
    return (farmer, nursery) if farmer and nursery else None


def _plain(value: object) -> object:
    return {"date": value.isoformat()} if isinstance(value, date) else value


def _read(nursery: Nursery, name: str, value: Any) -> object:
    if isinstance(value, dict):
        return date.fromisoformat(value["date"])
    if isinstance(value, list):
        return tuple(value)
    kind = type(getattr(nursery, name))
    return kind(value) if isinstance(value, str) and kind is not type(None) else value
