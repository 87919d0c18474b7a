"""Work that has begun and is not done: "we are planting now". Nothing is written of it."""

from assistant.agronomy.life.rows import TASKS, Doing
from assistant.dialogue.told_of_bed import day_to_come, ideas_in
from assistant.dialogue.values import Focus, Item, Known, Session, Text, Turn
from assistant.hearing import Idea
from assistant.hearing.dating import Idea as DayIdea
from assistant.hearing.dating import around_day
from assistant.reading import read_deeds
from assistant.wording.messages_tasks import UNDER_WAY

_MOST_OF_DAY = 3  # words: "on next Friday"
_WORK = {Doing.SOWS: DayIdea.SOW, Doing.PLANTS: DayIdea.PLANT, Doing.UNCOVERS: DayIdea.UNCOVER}


def under_way(text: str, item: Item, known: Known, held: Session | None) -> Turn | None:
    """Keeps the question open where its work goes on; None where a text says nothing of it, or
    of other work, or of another day. Seed that goes into water is soaked: that is no such work.
    """
    row = TASKS[item.task]
    if row.doing is Doing.SOAKS or "?" in text:
        return None
    if Idea.UNDER_WAY not in ideas_in(text, known, of_work=True) or _is_of_later(text, known):
        return None
    deeds = read_deeds(text, known.lexicon)
    if deeds and not deeds & row.deeds:
        return None
    around = around_day(text, known.ears.days, (known.catalogue.language, "en"))
    if around is not None and (around.other or not _fits(around.works, row.doing)):
        return None
    bed = next(each for each in known.nurseries if each.id == item.nursery_id)
    says = UNDER_WAY(label=bed.called)
    return Turn(held, (Text((says,), Focus(items=(item,))),))


def _is_of_later(text: str, known: Known) -> bool:
    """ "The rest tomorrow", "on Friday we are planting"."""
    words = text.split()
    begins = (" ".join(words[:count]) for count in range(1, _MOST_OF_DAY + 1))
    return any(day_to_come(each, known) is not None for each in (text, *begins))


def _fits(works: frozenset[DayIdea], doing: Doing | None) -> bool:
    """Whether the work named, if any, is that of the task; one word may be of two."""
    return not works or (doing in _WORK and _WORK[doing] in works)
