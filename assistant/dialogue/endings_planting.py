"""Where a change of spacing or seed ends: the plan is reckoned anew and shown."""

from collections.abc import Mapping
from dataclasses import replace

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.lot.varieties import find_variety
from assistant.agronomy.lot.weighing import grains_to_count
from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, chosen, ended, holds, no_nursery, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.readers_planting import weighing_of
from assistant.dialogue.results import quantity_texts
from assistant.dialogue.values import Kept, Known, SaveNursery, Session, Turn
from assistant.wording import messages_planting as g
from assistant.wording import messages_talk as m
from assistant.wording.day import about
from assistant.wording.message import Say

PERCENT = 100


def planting(session: Session | None, known: Known) -> Turn:
    """Spacing, seedlings a hill, the seed's weight, more for gaps."""
    if not known.nurseries:
        return no_nursery(session, known)
    return opened(begin(talks.PLANTING, held=holds(session)), known)


def _of_chosen(session: Session, known: Known) -> Turn:
    """The same from the list of what can be changed, where the nursery is chosen already."""
    nursery = chosen(session, known)
    return opened(begin(talks.PLANTING, held=session.held, nursery=nursery.id), known)


def recount(session: Session | None, known: Known) -> Turn:
    """Leaves counted again, without being asked."""
    if not known.nurseries:
        return no_nursery(session, known)
    return opened(begin(talks.RECOUNT, held=holds(session)), known)


def _planted_so(session: Session, known: Known) -> Turn:
    nursery = chosen(session, known)
    changed = replace(nursery, inputs=_changed(nursery.inputs, session.answers))
    now = _shown_back(changed, session, known)
    texts = (said(m.AMENDED(), *now), *quantity_texts(changed, known.today, known.region))
    return ended(session, known, *texts, changes=(SaveNursery(changed),))


def _shown_back(nursery: Nursery, session: Session, known: Known) -> tuple[Say, ...]:
    """What was given and does not stand in the quantities."""
    answers = session.answers
    if "gaps" in answers:
        return (about(g.NOW_GAPS, nursery, known.today),)
    if "grains" not in answers:
        return ()
    variety = find_variety(str(answers["grains_words"]))
    if variety is None:
        return (_weighed(nursery, str(answers["grains_words"]), known),)
    low, high = variety.low_g, variety.high_g
    says = about(g.NOW_VARIETY, nursery, known.today, name=variety.name, low=low, high=high)
    return (says,)


def _weighed(nursery: Nursery, words: str, known: Known) -> Say:
    """The weight, and how far it may be off where the scale is too coarse for so few grains."""
    weighing = weighing_of(words)
    if weighing is None or weighing.is_near_enough:
        return about(g.NOW_GRAINS, nursery, known.today)
    low, high = (round(end, 1) for end in weighing.likely)
    count = grains_to_count(weighing.scale_step_g)
    return about(g.NOW_ROUGH, nursery, known.today, low=low, high=high, count=count)


def _changed(inputs: FieldInputs, answers: Mapping[str, Kept]) -> FieldInputs:
    if "spacing" in answers:
        row, hill = (float(cm) for cm in str(answers["spacing"]).split("x"))
        return replace(inputs, spacing_row_cm=row, spacing_hill_cm=hill)
    if "hill" in answers:
        return replace(inputs, seedlings_per_hill=int(str(answers["hill"])))
    if "gaps" in answers:
        return replace(inputs, gap_filling=float(str(answers["gaps"])) / PERCENT)
    return replace(inputs, grain_weight_g=float(str(answers["grains"])))


PLANTING_ENDINGS: Mapping[str, Ending] = {
    "!planting_of": _of_chosen,
    "!planted_so": _planted_so,
    "!recount": recount,
}
