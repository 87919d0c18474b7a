"""Sessions and focuses as JSON: there and back, and what cannot be read."""

import json
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.agronomy.calendar import TaskCode
from assistant.dialogue.values import Focus, Item, Session
from assistant.store.codec import focus_json, read_focus, read_session, session_json

_FINITE = st.floats(allow_nan=False, allow_infinity=False)
_KEPT = st.none() | st.booleans() | st.integers() | _FINITE | st.text()
_ANSWERS = st.dictionaries(st.text(), _KEPT)
_SESSIONS = st.builds(
    Session,
    conversation=st.text(),
    version=st.integers(),
    step=st.text(),
    answers=_ANSWERS,
    path=st.lists(st.text()).map(tuple),
    waiting=st.none() | _ANSWERS,
    tries=st.integers(),
)
_ITEMS = st.builds(Item, st.integers(), st.sampled_from(TaskCode), st.dates())
_FOCUSES = st.builds(
    Focus,
    question=st.none() | st.text(),
    items=st.lists(_ITEMS).map(tuple),
    warning_id=st.none() | st.integers(),
)


@given(_SESSIONS)
def test_every_session_comes_back_from_json_as_it_was(session: Session) -> None:
    """Through text, as a database keeps it."""
    assert read_session(json.loads(json.dumps(session_json(session)))) == session


@given(_FOCUSES)
def test_every_focus_comes_back_from_json_as_it_was(focus: Focus) -> None:
    """Through text, as a database keeps it."""
    assert read_focus(json.loads(json.dumps(focus_json(focus)))) == focus


_SESSION = session_json(Session("plan", 1, "area", {"area_m2": 4000.0}, ("language",)))
_FOCUS = focus_json(Focus(items=(Item(7, TaskCode.SOW, date(2026, 6, 10)),)))

_STRANGE_SESSIONS: dict[str, object] = {
    "nothing": None,
    "a list": [],
    "an empty object": {},
    "a field too many": {**_SESSION, "mood": "good"},
    "a field too few": {name: _SESSION[name] for name in _SESSION if name != "tries"},
    "a version in words": {**_SESSION, "version": "one"},
    "a truth for a number": {**_SESSION, "tries": True},
    "answers in a list": {**_SESSION, "answers": ["0.4 ha"]},
    "an answer that is a list": {**_SESSION, "answers": {"area": [1, 2]}},
    "a path that is a word": {**_SESSION, "path": "language"},
    "a path of numbers": {**_SESSION, "path": [1]},
    "waiting for a word": {**_SESSION, "waiting": "yes"},
}
_STRANGE_FOCUSES = {
    "nothing": None,
    "a word": "plan.area",
    "a field too few": {"question": "plan.area"},
    "a task of another release": {
        **(_FOCUS or {}),
        "items": [{"nursery_id": 7, "task": "sing", "day": "2026-06-10"}],
    },
    "an impossible day": {
        **(_FOCUS or {}),
        "items": [{"nursery_id": 7, "task": "sow", "day": "2026-02-30"}],
    },
    "a task that is a list": {
        **(_FOCUS or {}),
        "items": [{"nursery_id": 7, "task": ["sow"], "day": "2026-06-10"}],
    },
    "a warning in words": {**(_FOCUS or {}), "warning_id": "the last"},
}


@pytest.mark.parametrize("kept", _STRANGE_SESSIONS.values(), ids=_STRANGE_SESSIONS.keys())
def test_a_session_of_unknown_shape_is_none_at_all(kept: object) -> None:
    """The talk then starts again; it never fails on what another release kept."""
    assert read_session(kept) is None


@pytest.mark.parametrize("kept", _STRANGE_FOCUSES.values(), ids=_STRANGE_FOCUSES.keys())
def test_a_focus_of_unknown_shape_is_none_at_all(kept: object) -> None:
    """Its digits then answer nothing, and the farmer is asked again."""
    assert read_focus(kept) is None
