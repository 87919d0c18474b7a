"""Where an answer that was understood leads from its question."""

from collections.abc import Callable, Mapping
from datetime import date

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.growth.stand import stand_advice
from assistant.agronomy.lot.germination import good_seed
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.quantities import is_hopeless, is_weak
from assistant.dialogue.facts import chosen_nursery
from assistant.dialogue.lots import unkept, whole_test
from assistant.dialogue.questions import ANY, Question, Reads
from assistant.dialogue.readers import UNTESTED, WHEN
from assistant.dialogue.values import Kept, Known, Session
from assistant.wording.day_practice import Make, counts_mats, make_of


def _way_germination(value: Kept, session: Session, known: Known) -> str:
    if not isinstance(value, int | float):
        return str(value)
    if is_hopeless(value / 100):
        return "hopeless"
    return "weak" if is_weak(value / 100, good_seed(known.region)) else "good"


def _way_tested(value: Kept, session: Session, known: Known) -> str:
    words = str(value)
    test = whole_test(unkept(words)) if "/" in words else None
    if test is None:
        return words
    return "bad" if is_hopeless(test.germination) else "tested"


def _way_shoots(value: Kept, session: Session, known: Known) -> str:
    nursery = chosen_nursery(session, known)
    if nursery is None:
        raise LookupError("the nursery whose shoots were counted is closed; begin again")
    return stand_advice(float(str(value)), nursery.quantities, nursery.day(known.today))


def _way_sowing(value: Kept, session: Session, known: Known) -> str:
    if value == WHEN:
        return WHEN
    return "past" if date.fromisoformat(str(value)) < known.today else "coming"


def _way_problem(value: Kept, session: Session, known: Known) -> str:
    nursery = known.nursery(int(str(session.answers.get("nursery") or 0)))
    early = nursery is None or known.today < colour_day(nursery)
    return "yellow_early" if value == "yellow" and early else str(value)


def _way_place(value: Kept, session: Session, known: Known) -> str:
    """All signs are of want: how long the cover is off is asked where nobody said, of a bed
    that is covered."""
    nursery = chosen_nursery(session, known)
    open_bed = nursery is None or make_of(nursery.practice) is Make.WET
    covered = nursery is not None and not (open_bed or nursery.uncovered)
    return "even_covered" if value == "even" and covered else str(value)


def colour_day(nursery: Nursery) -> date:
    """From when on pale leaves may be hunger: not under straw, nor just uncovered."""
    return next(t.date for t in nursery.tasks if t.code is TaskCode.COLOUR_CHECK)


def _way_ripens(value: Kept, session: Session, known: Known) -> str:
    return "none" if value == "none" else ANY


def _way_lost(value: Kept, session: Session, known: Known) -> str:
    return "none" if value == "none" else ANY


def _way_sufficed(value: Kept, session: Session, known: Known) -> str:
    """What was left is counted in mats, or told as a part of a bed that has none."""
    nursery = chosen_nursery(session, known)
    other = nursery is not None and not counts_mats(nursery.practice)
    return "bed_left" if value == "left" and other else str(value)


_WAYS: Mapping[Reads, Callable[[Kept, Session, Known], str]] = {
    Reads.GERMINATION: _way_germination,
    Reads.TESTED: _way_tested,
    Reads.SOWING: _way_sowing,
    Reads.LOST: _way_lost,
    Reads.RIPENS: _way_ripens,
    Reads.SHOOTS: _way_shoots,
    Reads.PROBLEM: _way_problem,
    Reads.PLACE: _way_place,
    Reads.SUFFICED: _way_sufficed,
    Reads.CHOICE: lambda value, session, known: str(value),
    Reads.DEED: lambda value, session, known: str(value),
    Reads.YES_NO: lambda value, session, known: str(value),
}

# Answers that lead to another question about the same thing are not kept as its answer.
NOT_KEPT = frozenset({"hopeless", UNTESTED, WHEN})


def way_on(question: Question, value: Kept, session: Session, known: Known) -> tuple[str, bool]:
    """Where a value leads from a question, and whether the session keeps it."""
    way = _WAYS.get(question.reads)
    key = way(value, session, known) if way else ANY
    target = question.goes.get(key) or question.goes[ANY]
    return target, bool(question.keeps) and key not in NOT_KEPT
