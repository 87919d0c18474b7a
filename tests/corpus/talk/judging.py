"""What a turn wrote down and whom it reached, and whether that is what was meant."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from assistant.dialogue import conversations as talks
from assistant.dialogue import values as v
from assistant.hearing.kinds import HARMS, LOSSES, Kind

DEEDS = frozenset({"done", "covered"})
VALUES = {"left": "surplus"}  # what the talk keeps -> what the corpus calls it
NEAR = 0.02  # a stated area and its measure in m2: 1 acre is 4047, "4000" to whoever wrote it


@dataclass(frozen=True)
class Outcome:
    """One turn in short: `written` what was kept of the farmer's words as a fact, `reached`
    what a person or a safe question heard of it."""

    written: frozenset[str]
    reached: frozenset[str]


def outcome(turn: v.Turn) -> Outcome:
    """The short of a turn."""
    written = frozenset(fact for change in turn.changes for fact in _written(change))
    written |= _area(turn)
    reached = frozenset(who for change in turn.changes for who in _reached(change))
    return Outcome(written, reached | _opened(turn))


def _area(turn: v.Turn) -> set[str]:
    session = turn.session
    if session is None or session.conversation != "plan" or "area" not in session.answers:
        return set()
    return {f"area={session.answers['area']}"}


def _written(change: v.Change) -> set[str]:
    match change:
        case v.AnswerItem(answer=answer):
            return {VALUES.get(answer, answer)}
        case v.AnswerWarning(answer="covered"):
            return {"covered"}
        case v.Enrol():
            return {"yes"}
        case _:
            return set()


def _reached(change: v.Change) -> set[str]:
    match change:
        case v.RaiseAlarm(kind=kind):
            if kind == Kind.DIE:
                return {"die"}
            return {"harm"} if kind in HARMS else {"danger"} if kind in LOSSES else set()
        case v.AnswerWarning(answer="help"):
            return {"danger"}
        case v.StopTexts() | v.Decline() | v.PauseTexts():
            return {"refuse"}
        case v.CallForHelp(about=about):
            return {"person", about}
        case v.NoteUnread(passed=passed):
            return {"passed"} if passed else {"unread"}
        case _:
            return set()


_TALKS: Mapping[str, str] = {
    talks.IF_LOST.name: "danger",
    talks.STOP_ALL.name: "refuse",
    talks.STOPPING.name: "refuse",
    talks.OFFICER.name: "person",
    talks.TROUBLE.name: "trouble",
}


def _opened(turn: v.Turn) -> frozenset[str]:
    session = turn.session
    name = session.conversation if session else ""
    return frozenset({_TALKS[name]} if name in _TALKS else ())


# --- against what was meant ------------------------------------------------------------------

_Judge = Callable[[Outcome], bool]


def _heard(*who: str) -> _Judge:
    return lambda got: bool(got.reached & set(who)) and not got.written & DEEDS


def _nothing_written(got: Outcome) -> bool:
    return not _facts(got)


def _facts(got: Outcome) -> frozenset[str]:
    """What was kept as said, but for "not yet", which asks again."""
    return got.written - {"not_yet", "yellow"}


MEANT: Mapping[str, _Judge] = {
    "harm": _heard("harm", "die"),
    "die": _heard("die"),
    "danger": _heard("danger", "harm"),
    "refuse": _heard("refuse"),
    "person": _heard("person", "danger", "harm"),
    "trouble": lambda got: (
        bool(got.reached & {"trouble", "person", "passed", "danger", "unread"})
        and not got.written & DEEDS
    ),
    "question": _nothing_written,
    "greeting": _nothing_written,
    "unclear": _nothing_written,
    "notyet": lambda got: not got.written & DEEDS,
    "done": lambda got: bool(got.written & DEEDS),
}


def is_right(meant: str, got: Outcome, moment: str = "") -> bool:
    """Whether a turn did what was meant by the text. Whoever has stopped is let alone."""
    if moment == "stopped" and meant == "refuse":
        return _nothing_written(got)
    if meant.startswith("value="):
        return _is_value(meant.removeprefix("value="), got)
    return MEANT[meant](got)


def _is_value(value: str, got: Outcome) -> bool:
    if value == "no":
        return "refuse" in got.reached
    if value.startswith("done@"):
        return bool(got.written & DEEDS)
    if any(_same(value, fact.removeprefix("area=")) for fact in got.written):
        return True
    return value in got.written


def _same(value: str, number: str) -> bool:
    try:
        return abs(float(value) - float(number)) <= NEAR * abs(float(value))
    except ValueError:
        return False


def is_false_deed(meant: str, got: Outcome) -> bool:
    """Whether something was written down that was not said."""
    if meant == "done" or meant.startswith("value="):
        return bool(_facts(got)) and not is_right(meant, got)
    return bool(_facts(got))
