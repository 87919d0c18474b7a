"""A variety that a farmer names: its days to harvest, its age of seedlings and its grains.

"I have Early-1 seed", "my seed takes 120 days", in a sentence of its own. Those of the
programme have all three, published ones the weight of their grains alone.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

from assistant.agronomy.calendar import day_after
from assistant.agronomy.lot.programme_variety import ProgrammeVariety
from assistant.agronomy.lot.varieties import find_variety, variety_key
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.season.sowing import RIPENS_D
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, chosen, ended, lasting, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.items import split_label
from assistant.dialogue.results import quantity_texts
from assistant.dialogue.told_of_bed import ideas_in
from assistant.dialogue.values import Known, SaveNursery, Session, Turn
from assistant.hearing import Idea
from assistant.reading import names_days, read_deeds
from assistant.wording import messages_planting as g
from assistant.wording import messages_talk as m
from assistant.wording import messages_when as when
from assistant.wording.day import about

_LONGEST = 12  # words of a sentence that names a variety; a longer one tells more
_MOST_WORDS = 3  # of a name
_SHORTEST = 3  # signs of a name, without those between
_OF_SEED = frozenset({"seed", "variety"})
_OF_ELSE = frozenset(
    {"much", "when", "what", "how", "why", "where", "which", "who", "may", "price"}
)


def variety_told(text: str, known: Known) -> Turn | None:
    """The turn for a variety that is named, or its days; which bed is asked where it may be of
    several. None where a text names neither, or asks."""
    beds = [bed for bed in split_label(text, known)[1] if bed.transplanted_on is None]
    if not beds or not _tells_of_seed(text, known):
        return None
    told = [turn for bed in beds if (turn := _told_of(bed, text, known)) is not None]
    if len(told) < 2:
        return told[0] if told else None
    asked = begin(talks.VARIETY_OF, held=lasting(known.session), words=text)
    return opened(asked, known)


def _of_bed(session: Session, known: Known) -> Turn:
    """The variety that was named before it was asked of which bed."""
    held = replace(known, session=session.held)
    turn = _told_of(chosen(session, known), str(session.answers["words"]), held)
    return turn or ended(session, known, said(m.ALL_RIGHT()))


def _told_of(bed: Nursery, text: str, known: Known) -> Turn | None:
    named = next((each for name in _names(text) if (each := _programmes(name, known))), None)
    if named is not None:
        return _kept(bed.of_variety(named), bed, named.name, named.days, known)
    days = _days(text, known)
    if days is not None:
        return _kept(replace(bed, ripens_d=days), bed, None, days, known)
    return None if bed.sown else _published(text, bed, known)


def _kept(bed: Nursery, before: Nursery, name: str | None, days: int, known: Known) -> Turn:
    """When it is ripe, and from when to when it is planted where that is its own; the seed
    anew where its grains weigh otherwise."""
    ripe = day_after(bed.sow_date, days)
    told = when.RIPE_ABOUT if name is None else when.VARIETY_KEPT
    given = {} if name is None else {"name": name}
    says = [about(told, bed, known.today, ripe=ripe, days=days, **given)]
    if bed.age_first is not None and bed.age_first != before.age_first:
        says.append(about(when.VARIETY_AGE, bed, known.today))
    texts = [said(*says)]
    if bed.inputs != before.inputs:
        texts += quantity_texts(bed, known.today, known.region)
    passing = begin(talks.MENU, held=lasting(known.session))
    return ended(passing, known, *texts, changes=(SaveNursery(bed),))


def _tells_of_seed(text: str, known: Known) -> bool:
    """Whether a text is of seed, and asks nothing; a name of the programme's is of seed."""
    if "?" in text or len(text.split()) > _LONGEST or read_deeds(text, known.lexicon):
        return False
    ideas = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    named = any(_programmes(name, known) for name in _names(text))
    return (bool(ideas & _OF_SEED) or named) and not ideas & _OF_ELSE


def _names(text: str) -> Iterator[str]:
    """What may be a name in a text: each run of a few words, the longest first."""
    words = [word.strip(".,;!") for word in text.split()]
    for size in range(_MOST_WORDS, 0, -1):
        for start in range(len(words) - size + 1):
            name = " ".join(words[start : start + size])
            if len(variety_key(name)) >= _SHORTEST:
                yield name


def _programmes(name: str, known: Known) -> ProgrammeVariety | None:
    key = variety_key(name)
    found = (v for v in known.varieties if key in (variety_key(v.name), variety_key(v.code)))
    return next(found, None)


def _days(text: str, known: Known) -> int | None:
    """The days to harvest that a text tells: one number, in days, that rice can take."""
    numbers = [int(number) for number in re.findall(r"\d+", text)]
    low, high = RIPENS_D
    fits = len(numbers) == 1 and low <= numbers[0] <= high
    counted = ideas_in(text, known) & {Idea.NEW_SEED, Idea.SPROUT}  # "other seed, test 90"
    return numbers[0] if fits and not counted and names_days(text, known.lexicon) else None


def _published(text: str, bed: Nursery, known: Known) -> Turn | None:
    """A variety of which only the weight of its grains was published."""
    coded = (name for name in _names(text) if any(sign.isdigit() for sign in name))
    found = next((each for name in coded if (each := find_variety(name))), None)
    if found is None:
        return None
    changed = replace(bed, inputs=replace(bed.inputs, grain_weight_g=found.grain_weight_g))
    low, high = found.low_g, found.high_g
    says = about(g.NOW_VARIETY, changed, known.today, name=found.name, low=low, high=high)
    texts = (said(says), *quantity_texts(changed, known.today, known.region))
    passing = begin(talks.MENU, held=lasting(known.session))
    return ended(passing, known, *texts, changes=(SaveNursery(changed),))


VARIETY_ENDINGS: Mapping[str, Ending] = {"!variety_of": _of_bed}
