"""A sowing that is told in place of what was just said of its day: "no sorry, sowed today". It
is taken as sown today, whatever day the plan has by now and whatever was asked of the seed.
"""

from assistant.agronomy.tasks import TaskCode
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import lasting
from assistant.dialogue.items import DONE, settle
from assistant.dialogue.values import Item, Known, Turn
from assistant.reading import Outcome, days_told, read_deeds, read_told, without_apology

_NEAR_D = 14  # a sowing farther from the day of the plan is read back first
_SOWS = frozenset({"sow"})


def sown_after_all(text: str, known: Known) -> Turn | None:
    """The turn for a sowing of today behind a "no" or a "sorry"; None where none is told, or it
    may be of two beds."""
    farmer = known.farmer
    if farmer is None or farmer.consent_at is None or farmer.stopped_at is not None:
        return None
    told = without_apology(text, known.lexicon)
    beds = [bed for bed in known.nurseries if not (bed.sown or bed.held)]
    if told is None or "?" in text or len(beds) != 1 or not _tells_sown(told, known):
        return None
    if abs(beds[0].day(known.today)) > _NEAR_D:
        return None
    asked = (i for i in known.items if (i.nursery_id, i.task) == (beds[0].id, TaskCode.SOW))
    item = next(asked, Item(beds[0].id, TaskCode.SOW, known.today))
    held = lasting(known.session)
    if held is not None and held.conversation == talks.SOW_THEN.name:
        held = held.held  # which day it shall be is no question any more
    return settle(item, DONE, known.today, known, held)


def _tells_sown(text: str, known: Known) -> bool:
    reading = read_told(text, known.lexicon, digits=False)
    sure = reading.outcome is Outcome.UNDERSTOOD and reading.value == DONE
    days = (day for day, _ in days_told(text, known.lexicon, known.today))
    is_today = all(day == known.today for day in days)
    return sure and is_today and read_deeds(text, known.lexicon) == _SOWS
