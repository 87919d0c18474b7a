"""A day that is named in a sentence, at moments of a season: what it is heard as.

`worked.tsv`: language, moment, text, what is meant, tab-separated. All texts are our own hand,
in all languages; no native reviewer has signed any of them, and the rules were mended on them.

Meant: `sow=`, `plant=` another day of the plan (month and day of 2026), `done=` a deed of that
day, `ask` or `ask=` any question about that day, `two` one of two days. A day is right where it
is read back, or kept by who was asked for it; `kept` says that something was kept at once.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from assistant.dialogue import values as v
from assistant.dialogue.turns import turn
from tests.corpus.talk import moments as m

_FOLDER = Path(__file__).parent

MOMENTS: Mapping[str, Callable[[str], v.Known]] = {
    "S": lambda code: m.known_of(code, m.bed_of(-5)),  # nothing open, sowing in five days
    "Y": lambda code: m.known_of(code, m.bed_of(3)),  # sown three days ago
    "M": lambda code: m.known_of(code, m.bed_of(10, uncovered=True)),
    "N": lambda code: m.known_of(code, None),  # no plan yet
    "A": m.MOMENTS["signup"],  # the field is asked for
    "O": m.MOMENTS["sow"],
    "U": m.MOMENTS["uncover"],
    "P": m.MOMENTS["transplant"],
}


@dataclass(frozen=True)
class Row:
    """One text, where it comes in, and what it means."""

    language: str
    moment: str
    text: str
    meant: str


@dataclass(frozen=True)
class Heard:
    """What was made of it: days asked about, days kept at once."""

    talk: str
    asked: frozenset[str]
    kept: frozenset[str]


def rows() -> Iterator[Row]:
    """The corpus."""
    for line in (_FOLDER / "worked.tsv").read_text("utf-8").splitlines():
        yield Row(*line.split("\t"))


def hear(row: Row) -> Heard:
    """Plays one row."""
    known = MOMENTS[row.moment](row.language)
    outcome = turn(row.text, known)
    session = outcome.session
    answers = session.answers if session else {}
    asked = {
        f"{name}={str(answers[key])[5:]}" for key, name in _ASKED.items() if key in answers
    }
    waiting = session.waiting if session and session.waiting else {}
    asked |= {f"either={str(each)[5:]}" for key, each in waiting.items() if "value" in key}
    talk = session.conversation if session else ""
    return Heard(talk, frozenset(asked), frozenset(_kept(outcome, known)))


_ASKED = {"sowing": "sow", "transplanting": "plant", "until": "plant", "day": "done"}


def _kept(outcome: v.Turn, known: v.Known) -> Iterator[str]:
    for change in outcome.changes:
        match change:
            case v.SaveNursery(nursery=bed):
                old = known.nursery(bed.id)
                if old is None or old.sow_date != bed.sow_date:
                    yield f"sow={bed.sow_date:%m-%d}"
                if old is not None and old.transplanted_on != bed.transplanted_on:
                    yield f"done={bed.transplanted_on:%m-%d}"
            case v.Happened(event=event) if type(event).__name__ == "Done":
                yield f"done={event.on:%m-%d}"


def is_right(row: Row, heard: Heard) -> bool:
    """Whether the day was heard as it was meant."""
    kind, _, day = row.meant.partition("=")
    if kind == "ask":
        about = heard.talk.endswith("_then") and not heard.kept
        return about and (not day or any(each.endswith(day) for each in heard.asked))
    if kind == "two":
        return not heard.kept and len([x for x in heard.asked if "either" in x]) == 2
    return row.meant in heard.asked | heard.kept


def is_kept_wrongly(row: Row, heard: Heard) -> bool:
    """Whether a day was kept, unasked, that was not said."""
    kind, _, day = row.meant.partition("=")
    allowed = {row.meant, f"sow={day}"} if kind in ("sow", "done") else set()
    return bool(heard.kept - allowed)
