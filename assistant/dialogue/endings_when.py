"""Where a farmer who does not know the day of sowing is told days; and the own tin is kept."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from assistant.agronomy.measures import shared_by_tin, tin_litres
from assistant.agronomy.season.sowing import SowingNeeds, Sowings, sowings
from assistant.agronomy.told import heap_told_g
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import (
    Ending,
    chosen,
    ended,
    holds,
    no_nursery,
    opened,
    said,
)
from assistant.dialogue.engine import ask, begin
from assistant.dialogue.values import Kept, Known, SaveNursery, Session, Turn
from assistant.wording import messages_when as when
from assistant.wording.plan_sowing import sowing_lines
from assistant.wording.render import slot_text

NONE = "none"
_DIGITS = 2  # of a tin in litres


def _ask_when(session: Session, known: Known) -> Turn:
    """What the days hang on is asked; the plan stands meanwhile."""
    return opened(begin(talks.WHEN_SOW, held=session), known)


def _when_to_sow(session: Session, known: Known) -> Turn:
    """Two or three days with their reasons, one of which is chosen by its digit."""
    plan = session.held
    practice = known.practice(plan.answers.get("practice") if plan else None)
    found = sowings(_wanted(session), known.today, practice)
    texts = tuple(said(line) for line in sowing_lines(found))
    if plan is None or plan.conversation != talks.PLAN.name:
        return ended(session, known, *texts)
    kept = {**plan.answers, **_of_variety(session)}
    waiting = _offered(found, known) if found.days else None
    chooses = replace(plan, waiting=waiting, answers=kept)
    return Turn(chooses, (*texts, ask(chooses, known, talks.TABLES)))


def _of_variety(session: Session) -> dict[str, Kept]:
    """What the plan keeps of the variety, by whose days its sowing is chosen."""
    answers = session.answers
    if not isinstance(answers.get("ripens"), int):
        return {}
    return {"ripens": answers["ripens"], "variety": str(answers.get("ripens_words", ""))}


def _wanted(session: Session) -> SowingNeeds:
    days, by = session.answers.get("ripens"), session.answers.get("by", NONE)
    return SowingNeeds(
        days=days if isinstance(days, int) else None,
        water_from=date.fromisoformat(str(session.answers["water"])),
        harvest_before=None if by == NONE else date.fromisoformat(str(by)),
    )


def _offered(found: Sowings, known: Known) -> dict[str, Kept]:
    waiting: dict[str, Kept] = {"n": len(found.days)}
    for place, day in enumerate(found.days, start=1):
        waiting[f"value{place}"] = day.sow.isoformat()
        waiting[f"words{place}"] = slot_text(day.sow, known.catalogue)
    return waiting


def measure_tin(session: Session | None, known: Known) -> Turn:
    """How many of a farmer's tin fill the pail."""
    if not known.nurseries:
        return no_nursery(session, known)
    return opened(begin(talks.TIN, held=holds(session)), known)


def _tin_kept(session: Session, known: Known) -> Turn:
    """For all the farmer's plans of now: it is one tin."""
    nursery = chosen(session, known)
    tin_l = tin_litres(nursery.inputs.pail_litres, float(str(session.answers["tins"])))
    measured = (replace(bed, tin_litres=tin_l) for bed in known.nurseries)
    changes = tuple(SaveNursery(bed) for bed in measured)
    q = nursery.quantities
    fits = not q.mats or shared_by_tin(heap_told_g(q), tin_l) is not None
    text = (when.TIN_KEPT if fits else when.TIN_TOO_COARSE)(tin=round(tin_l, _DIGITS))
    return ended(session, known, said(text), changes=changes)


WHEN_ENDINGS: Mapping[str, Ending] = {
    "!ask_when": _ask_when,
    "!when_to_sow": _when_to_sow,
    "!tin_kept": _tin_kept,
}
