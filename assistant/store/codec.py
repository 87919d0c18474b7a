"""Sessions and focuses as JSON and back.

What was saved by another release may have another shape. It then comes back as None, so that
a talk starts again kindly and never fails on its own past.
"""

from collections.abc import Mapping
from dataclasses import asdict, fields
from datetime import date
from typing import Any

from assistant.agronomy.calendar import TaskCode
from assistant.dialogue.values import Focus, Item, Kept, Session

Json = dict[str, Any]


def session_json(session: Session) -> Json:
    """A session as it is kept."""
    return {
        **{field.name: getattr(session, field.name) for field in fields(Session)},
        "answers": dict(session.answers),
        "path": list(session.path),
        "waiting": None if session.waiting is None else dict(session.waiting),
        "held": None if session.held is None else session_json(session.held),
    }


def read_session(kept: object) -> Session | None:
    """The session that was kept, or None where its shape is unknown."""
    try:
        return _session(_shaped(kept, {field.name for field in fields(Session)}))
    except (TypeError, ValueError):
        return None


def focus_json(focus: Focus | None) -> Json | None:
    """A focus as it is kept with its text."""
    if focus is None:
        return None
    items = [{**asdict(item), "day": item.day.isoformat()} for item in focus.items]
    return {"question": focus.question, "items": items, "warning_id": focus.warning_id}


def read_focus(kept: object) -> Focus | None:
    """The focus that was kept, or None where its shape is unknown."""
    try:
        return _focus(_shaped(kept, {"question", "items", "warning_id"}))
    except (TypeError, ValueError):
        return None


def _session(kept: Json) -> Session:
    return Session(
        conversation=_of(str, kept["conversation"]),
        version=_of(int, kept["version"]),
        step=_of(str, kept["step"]),
        answers=_answers(kept["answers"]),
        path=tuple(_of(str, step) for step in _of(list, kept["path"])),
        waiting=None if kept["waiting"] is None else _answers(kept["waiting"]),
        tries=_of(int, kept["tries"]),
        held=None if kept["held"] is None else read_session(kept["held"]),
    )


def _focus(kept: Json) -> Focus:
    question, warning_id = kept["question"], kept["warning_id"]
    return Focus(
        question=None if question is None else _of(str, question),
        items=tuple(_item(item) for item in _of(list, kept["items"])),
        warning_id=None if warning_id is None else _of(int, warning_id),
    )


def _item(kept: object) -> Item:
    item = _shaped(kept, {"nursery_id", "task", "day"})
    return Item(
        nursery_id=_of(int, item["nursery_id"]),
        task=TaskCode(item["task"]),
        day=date.fromisoformat(_of(str, item["day"])),
    )


def _answers(kept: object) -> Mapping[str, Kept]:
    answers: Json = _of(dict, kept)
    for value in answers.values():
        if not isinstance(value, str | int | float | None):
            raise TypeError(f"expected a single value, got {value!r}")
    return answers


def _shaped(kept: object, names: set[str]) -> Json:
    shaped: Json = _of(dict, kept)
    if shaped.keys() != names:
        raise TypeError(f"expected {sorted(names)}, got {sorted(shaped)}")
    return shaped


def _of(kind: type[Any], value: object) -> Any:
    if type(value) is not kind:  # not isinstance: JSON's true is no number
        raise TypeError(f"expected {kind.__name__}, got {value!r}")
    return value
