"""The cover of a bed that wind took, while no storm is near: put back, and a person knows.

Of a storm it is part of the cry, which the ear has; alone it is a small thing with an answer.
"""

from assistant.acts import Act
from assistant.dialogue import conversations as talks
from assistant.dialogue.accounted import takes_words
from assistant.dialogue.endings import call, ended, lasting, said
from assistant.dialogue.engine import begin
from assistant.dialogue.told_of_bed import ideas_in
from assistant.dialogue.values import Known, Turn
from assistant.hearing import Idea, Kind, understand
from assistant.wording import messages_answers_more as more

_COVERS = frozenset({"sheet", "straw", "cover"})
_BESIDE = frozenset({"banana", "remove", "open", "uncover"})
_MORE = frozenset({Idea.RAIN, Idea.ROOF, Idea.MAT, Idea.SEEDLING, Idea.EATEN})
_NOBODY_HURT = 0.1
_LONGEST = 8  # words; a longer story has more in it than a cover


def cover_gone(text: str, known: Known) -> Turn | None:
    """The turn for a cover that is gone, and nothing else; None where rain is near, or more
    than that is told."""
    if not _is_calm(known) or len(text.split()) > _LONGEST or "?" in text:
        return None
    heard = understand(text, known.ears, known.catalogue.language)
    others = (Act.DIE, Act.HARM, Act.REFUSE)
    if heard.kind(Act.DANGER) is not Kind.DANGER or any(map(heard.certainty, others)):
        return None
    if heard.weights[Act.HARM] + heard.weights[Act.DIE] > _NOBODY_HURT:
        return None
    named = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    if not named & _COVERS or named - _COVERS - _BESIDE or ideas_in(text, known) & _MORE:
        return None
    passing = begin(talks.MENU, held=lasting(known.session))
    change = call("question", text, passing, known)
    return ended(passing, known, said(more.STRAW_GONE()), changes=(change,))


def _is_calm(known: Known) -> bool:
    farmer = known.farmer
    agreed = farmer is not None and farmer.consent_at is not None and farmer.stopped_at is None
    stands = any(bed.sown and bed.transplanted_on is None for bed in known.nurseries)
    no_rain = known.warning is None and not known.in_storm
    return agreed and stands and no_rain and not takes_words(known)
