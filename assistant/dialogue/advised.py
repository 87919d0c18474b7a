"""What is told as a trouble is answered, too, where the table is sure which question it is: a
person hears of it and the list of troubles stands as before, but nobody waits for either to
learn that mould wants less water.

Only of what can be followed at once and does no harm where it was something else; never while
rain is near, when there is other work.
"""

from dataclasses import replace

from assistant.dialogue import endings as e
from assistant.dialogue.answers import ANSWERS
from assistant.dialogue.matched import match
from assistant.dialogue.values import Inquiry, Known, Turn
from assistant.hearing import Topic

_SAFE = frozenset(
    {
        # seed
        Topic.INCUBATE,
        Topic.ROOT_LENGTH,
        Topic.SOAK_SMELLS,
        Topic.SPROUT_SLOW,
        # the bed
        Topic.BARE,
        Topic.DEW,
        Topic.EDGE_CRUMBLES,
        Topic.FROGS,
        Topic.LEAKS,
        Topic.MAT_FLOATS,
        Topic.MOULD,
        Topic.NOT_UP,
        Topic.PALE_STEMS,
        Topic.SLOPE,
        Topic.STONES,
        Topic.STRAW_GONE,
        Topic.THIN_TALL,
        Topic.TIPS_DRY,
        Topic.TOO_WET,
        Topic.TRODDEN,
        Topic.UREA_MUCH,
        Topic.WASHED,
        Topic.WATER_FOUL,
        Topic.WEEDS,
        # what eats it, by hand and by fence
        Topic.ANTS,
        Topic.GUARD,
        Topic.PESTS,
        Topic.RATS,
        # lifting, planting, the field
        Topic.GAPS,
        Topic.MAT_TEARS,
        Topic.ROOTED,
        Topic.SHOCK,
        Topic.WIND_HOT,
    }
)


def advised(text: str, told: Turn, known: Known) -> Turn:
    """The turn that passes a trouble on, with what can be said of it at once before it."""
    languages = (known.catalogue.language, "en")
    rule = known.ears.questions.heard(text, languages)
    question = match(text, rule, known, languages).question
    topic = question.topic if question else None
    if topic is None or topic not in _SAFE or known.in_storm or not known.nurseries:
        return told
    says = ANSWERS[topic](text, known) or ()
    before = tuple(map(e.said, says))
    return replace(told, texts=(*before, *told.texts), inquiries=(Inquiry(topic),))
