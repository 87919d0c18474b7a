"""A bed that is sown again: what is told of the seed, of the mats' mix, and of the days."""

from assistant.agronomy.nursery import Nursery
from assistant.agronomy.rounding import Measure, measured
from assistant.dialogue.values import Known, Text
from assistant.wording import messages_care as c
from assistant.wording import messages_delay as d
from assistant.wording import messages_planting as g
from assistant.wording.day import about
from assistant.wording.day_practice import batch_of, counts_mats
from assistant.wording.message import Say

LITRES = 1000


def mix_for(mats: int, nursery: Nursery) -> Say:
    """The mix and the sheet that so many more mats ask for."""
    q = nursery.quantities
    part = mats / q.mats
    return d.FILL_MIX(
        mix=measured(q.soil_mix_m3 * LITRES * part, Measure.MIX_L),
        sheet=measured(q.sheet_m2 * part, Measure.AREA_M2),
        parts=batch_of(nursery.practice),
    )


def again_texts(nursery: Nursery, known: Known) -> tuple[Text, ...]:
    """The seed to soak today, the mix of mats that are made anew, and the new days."""
    noted = g.AGAIN_LONG if nursery.sprouting else c.AGAIN_NOTED
    seed = Text((about(noted, nursery, known.today),), keep=True)
    dates = Text((about(c.AGAIN_DATES, nursery, known.today),), keep=True)
    mats = nursery.quantities.mats
    if not counts_mats(nursery.practice) or not mats:
        return seed, dates
    return seed, Text((mix_for(mats, nursery),), keep=True), dates
