"""A deed that is told in one part of a sentence, beside parts whose words are not all known.

Words say that it was done; the weight of the whole text can only hold it back, where what
stands beside may be a cry, a question, or a deed that is not done. Nothing is written down by
weight, but that a task is not done (`tells_not_done`).
"""

from collections.abc import Mapping
from datetime import timedelta
from types import MappingProxyType

from assistant.acts import Act
from assistant.agronomy.life.rows import TASKS, Doing
from assistant.dialogue.told_of_bed import ideas_in
from assistant.dialogue.values import Item, Known
from assistant.hearing import Idea, understand
from assistant.hearing.dating import Idea as DayIdea
from assistant.hearing.dating import around_day
from assistant.reading import read_deeds, read_told, told_in_part, told_in_story

LEAST_DONE = 0.35
MOST: Mapping[Act, float] = MappingProxyType(
    {
        Act.DIE: 0.15,
        Act.HARM: 0.2,
        Act.DANGER: 0.25,
        Act.REFUSE: 0.2,
        Act.PERSON: 0.2,
        Act.TROUBLE: 0.2,
        Act.QUESTION: 0.45,
        Act.NOTDONE: 0.2,
        Act.TALK: 0.35,
    }
)
"""From which weight on of another act a deed told in a part is asked about."""


def part_that_tells(text: str, item: Item, known: Known) -> str | None:
    """The part of a text that tells the deed of an open task, where the rest may stand by."""
    return _part(text, TASKS[item.task].deeds, known)


def part_that_covers(text: str, known: Known) -> str | None:
    """The part that tells of covering, which a warning asks for."""
    return _part(text, frozenset({"cover"}), known)


LEAST_NOT_DONE = 0.6


def tells_not_done(text: str, item: Item, known: Known) -> bool:
    """Whether a text names the work of an open task and weighs as not done: "we could not soak,
    funeral". The one thing that a weight may write: it only puts the work off, and the new day
    is said back."""
    if "?" in text or item.day < known.today - _LATELY:
        return False
    heard = understand(text, known.ears, known.catalogue.language)
    told = read_told(text, known.lexicon, digits=False).value == "done"
    if told or heard.said or heard.weights[Act.NOTDONE] < LEAST_NOT_DONE:
        return False
    around = around_day(text, known.ears.days, (known.catalogue.language, "en"))
    work = _WORKS.get(TASKS[item.task].doing)
    named = around is not None and work in around.works
    return named or bool(TASKS[item.task].deeds & read_deeds(text, known.lexicon))


_LATELY = timedelta(days=1)
_WORKS: Mapping[Doing, DayIdea] = MappingProxyType(
    {
        Doing.SOAKS: DayIdea.SOAK,
        Doing.SOWS: DayIdea.SOW,
        Doing.PLANTS: DayIdea.PLANT,
        Doing.UNCOVERS: DayIdea.UNCOVER,
    }
)
LEAST_OF_STORY = 0.45
MOST_OF_STORY: Mapping[Act, float] = MappingProxyType(
    {
        Act.DIE: 0.05,
        Act.HARM: 0.12,
        Act.DANGER: 0.2,
        Act.REFUSE: 0.15,
        Act.PERSON: 0.15,
        Act.TROUBLE: 0.15,
        Act.QUESTION: 0.3,
        Act.NOTDONE: 0.12,
        Act.TALK: 0.35,
    }
)
_BED = frozenset({Idea.BED, Idea.MAT, Idea.SEEDLING})
_THINGS: Mapping[str, frozenset[Idea]] = MappingProxyType(
    {
        "soak": frozenset({Idea.GRAIN}),
        "sow": frozenset({Idea.GRAIN, *_BED}),
        "cover": _BED | {Idea.COVER},
        "uncover": _BED | {Idea.COVER},
        "flood": _BED,
        "drain": _BED | {Idea.OUTLET},
        "transplant": frozenset({Idea.SEEDLING, Idea.PLOT, Idea.MAT}),
        "fill": frozenset({Idea.GAP, Idea.SEEDLING}),
    }
)
"""What a story names beside the deed, so that it is not of a goat house or of maize."""

_BY_BEASTS = frozenset({"sow", "uncover", "transplant", "fill"})
_TAKEN_BACK = frozenset({Idea.HALF, Idea.REST, Idea.UNDER_WAY, Idea.NO_SEED})


def story_tells(text: str, deeds: frozenset[str], known: Known) -> bool:
    """Whether a story tells a deed: its words stand there, nothing that is known takes it back,
    and the whole weighs as work done and as hardly anything else."""
    around = around_day(text, known.ears.days, (known.catalogue.language, "en"))
    by_beasts = around is not None and around.beasts and bool(deeds & _BY_BEASTS)
    if "?" in text or by_beasts or (around is not None and (around.other or around.elsewhere)):
        return False
    ideas = ideas_in(text, known, of_work=True)
    things = {thing for deed in deeds for thing in _THINGS.get(deed, ())}
    if not ideas & things or ideas & _TAKEN_BACK:
        return False
    if not told_in_story(text, known.lexicon, deeds):
        return False
    heard = understand(text, known.ears, known.catalogue.language)
    calm = all(heard.weights[act] <= most for act, most in MOST_OF_STORY.items())
    return calm and not heard.said and heard.weights[Act.DONE] >= LEAST_OF_STORY


_FEWEST_WORDS, _RATHER_DONE, _HARDLY_NOT = 5, 0.5, 0.2


def weighs_rather_done(text: str, known: Known) -> bool:
    """Whether a sentence with a "not" in it tells of work that was done: "my wife was not home,
    so I put it in water". Nothing is written down by it."""
    if len(text.split()) < _FEWEST_WORDS:
        return False
    weights = understand(text, known.ears, known.catalogue.language).weights
    return weights[Act.DONE] >= _RATHER_DONE and weights[Act.NOTDONE] <= _HARDLY_NOT


_LEANS = 0.3


def leans_to_done(text: str, known: Known) -> bool:
    """Whether a text that names what planting may wait for (hands, water, rain, the field)
    weighs as work done and less as not done: "tarp on, let it rain". Nothing is written down
    by it."""
    weights = understand(text, known.ears, known.catalogue.language).weights
    return weights[Act.DONE] >= max(_LEANS, weights[Act.NOTDONE])


def _part(text: str, deeds: frozenset[str], known: Known) -> str | None:
    part = told_in_part(text, known.lexicon, deeds)
    if part is None:
        return None
    weights = understand(text, known.ears, known.catalogue.language).weights
    calm = all(weights[act] <= most for act, most in MOST.items())
    return part if calm and weights[Act.DONE] >= LEAST_DONE else None
