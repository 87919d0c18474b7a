"""The second menu's answers: sorting and soaking seed, site, water, planting, spare mats."""

from collections.abc import Mapping

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.constants_work import SPARE_HIGH, SPARE_LOW
from assistant.agronomy.lot.brine import brine_recipe
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.rounding import Measure, measured, nearest, whole_up
from assistant.agronomy.work.labour import planting_hours
from assistant.agronomy.work.loads import wet_mat_kg
from assistant.agronomy.work.planting import hills_on_string
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, ended, holds, no_nursery, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.results import quantity_texts
from assistant.dialogue.values import Known, Session, Text, Turn
from assistant.wording import messages_care as care
from assistant.wording import messages_practice as p
from assistant.wording.amounts import seed_weight, weight
from assistant.wording.day import about, watering_water
from assistant.wording.day_practice import fitting
from assistant.wording.message import Say
from assistant.wording.messages_cautions import SALT_AWAY

STRING_M = 10
PERCENT = 100
HANDS = 4


def more(session: Session | None, known: Known) -> Turn:
    """Seed, tips, the season's result."""
    return opened(begin(talks.MORE, held=holds(session)), known)


def _salt(session: Session, known: Known) -> Turn:
    """Salt water in half of the farmer's own pail, for the seed of the first nursery."""
    if not known.nurseries:
        return no_nursery(session, known)
    nursery = known.nurseries[0]
    if nursery.held:
        return ended(session, known, *quantity_texts(nursery, known.today, known.region))
    recipe = brine_recipe(nursery.quantities.seed_kg, nursery.inputs.pail_litres)
    mix = care.SALT_MIX(
        salt=weight(measured(recipe.salt_g, Measure.UREA_G)),
        litres=recipe.water_l,
        seed=seed_weight(recipe.seed_kg_at_once),
    )
    return ended(
        session,
        known,
        Text((mix,), keep=True),
        Text((care.SALT_RINSE(), SALT_AWAY()), keep=True),
    )


def _watering(session: Session, known: Known) -> Turn:
    """By hand while a bed is covered or only watered; then the water that stands."""
    if not known.nurseries:
        return no_nursery(session, known)
    return ended(session, known, *(said(_water(each, known)) for each in known.nurseries))


def _water(nursery: Nursery, known: Known) -> Say:
    keeps = (task for task in nursery.tasks if task.code is TaskCode.KEEP_WATER)
    if any(task.date <= known.today for task in keeps):
        return about(p.KEEP_NOW, nursery, known.today)
    return about(care.WATERING, nursery, known.today, pails=watering_water(nursery))


def _spare(session: Session, known: Known) -> Turn:
    """What is kept and what is given away, in the words of each kind of bed there is."""
    says = dict.fromkeys(fitting(care.SPARE, each) for each in known.nurseries) or (care.SPARE,)
    shares = {"least": SPARE_LOW, "most": SPARE_HIGH}
    told = {name: round(share.value * PERCENT) for name, share in shares.items()}
    return ended(session, known, *(said(each(**told)) for each in says))


def _planting(session: Session, known: Known) -> Turn:
    if not known.nurseries:
        return no_nursery(session, known)
    lifts = (
        about(care.PLANT_LIFT, each, known.today, mat=nearest(wet_mat_kg(each.practice)))
        for each in known.nurseries
    )
    strings = (_string(each, known) for each in known.nurseries)
    unlike = {(say.message, str(say.slots)): say for say in lifts}
    return ended(session, known, *map(said, (*unlike.values(), *strings)))


def _string(nursery: Nursery, known: Known) -> Say:
    hours = planting_hours(nursery.inputs.field_area_m2, HANDS)
    return about(
        care.PLANT_STRING,
        nursery,
        known.today,
        string=STRING_M,
        hands=HANDS,
        hills=hills_on_string(STRING_M, nursery.inputs.spacing_hill_cm),
        low=whole_up(hours.low),
        high=whole_up(hours.high),
    )


TIPS_ENDINGS: Mapping[str, Ending] = {
    "!more": more,
    "!salt": _salt,
    "!watering": _watering,
    "!planting": _planting,
    "!spare": _spare,
}
