"""Fills the slots of a question from the session and from what is known."""

from datetime import date, time

from assistant.agronomy.constants import GOOD_GERMINATION
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.values import Known, Session
from assistant.wording.dangers import name_of
from assistant.wording.day import about
from assistant.wording.message import Message, Named, Say, Slot, slots_of

# slot -> the answer it shows, where the session keeps it under another name
_ANSWERS = {
    "area": "area_words",
    "percent": "germination_heard",
    "litres": "pail",
    "date": "sowing",
    "chosen": "transplanting",
    "done_on": "day",
    "first": "best_first",  # the window as a leaf count moved it
    "last": "best_last",
}

_DATES = frozenset({"date", "first", "last", "chosen", "done_on"})


def _name(slot: str) -> str:
    return _ANSWERS.get(slot, slot)


def chosen_nursery(session: Session, known: Known) -> Nursery | None:
    """The nursery that a talk is about, where it has one and it is still open."""
    kept = session.answers.get("nursery")
    return known.nursery(int(kept)) if isinstance(kept, int | float | str) else None


def _shown(slot: str, session: Session, known: Known) -> Slot:
    value = session.answers[_name(slot)]
    if slot == "percent" and not isinstance(value, int | float):
        return round(GOOD_GERMINATION.value * 100)  # untested: the plan's assumption
    if slot in _DATES:
        return date.fromisoformat(str(value))
    if slot in ("from_time", "to_time", "time"):
        return time.fromisoformat(str(value))
    if slot == "danger":
        return name_of(str(value))
    if slot == "practice":
        practice = known.practice(value)
        return Named(practice.names, practice.code)
    return value if isinstance(value, str | int | float) else str(value)


def worded(message: Message, session: Session, known: Known) -> Say:
    """A message with its slots filled: from the answers given, else from the nursery."""
    wanted = slots_of(message.text)
    given = {
        slot: _shown(slot, session, known) for slot in wanted if _name(slot) in session.answers
    }
    nursery = chosen_nursery(session, known)
    return about(message, nursery, known.today, **given) if nursery else message(**given)
