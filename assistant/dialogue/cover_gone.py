"""The cover of a bed that wind took, while no storm is near: put back, and a person knows; and
straw or sheet that is wanting, where other things do.

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
from assistant.wording import messages_answers as a
from assistant.wording import messages_answers_more as more
from assistant.wording import messages_steps as steps

_COVERS = frozenset({"sheet", "straw", "cover"})
_BESIDE = frozenset({"banana", "remove", "open", "uncover"})
_WITH = frozenset({"banana", "none", "bed", "seed", "leaf", "may", "need", "money"})
_MORE = frozenset({Idea.RAIN, Idea.ROOF, Idea.MAT, Idea.SEEDLING, Idea.EATEN, Idea.WASHED})
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


def cover_wanting(text: str, known: Known) -> Turn | None:
    """The turn for "I have no plastic and no straw": what does instead, below while nothing is
    sown, and above; None where rain is near, or more than that is told."""
    if not _may_want(known) or len(text.split()) > _LONGEST_WANT:
        return None
    heard = understand(text, known.ears, known.catalogue.language)
    if any(map(heard.kind, (Act.DIE, Act.HARM, Act.REFUSE))):
        return None
    if heard.weights[Act.DANGER] >= _RATHER_CRIES:
        return None
    named = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    covers = named & _COVERS
    if "none" not in named or not covers or named - _COVERS - _WITH:
        return None
    if ideas_in(text, known) & _MORE:
        return None
    below = "sheet" in covers and not any(bed.sown for bed in known.nurseries)
    above = covers != {"sheet"} or not below
    says = (*((a.NO_SHEET(),) if below else ()), *((steps.ABOVE(),) if above else ()))
    passing = begin(talks.MENU, held=lasting(known.session))
    return ended(passing, known, *map(said, says))


_LONGEST_WANT, _RATHER_CRIES = 12, 0.6


def _may_want(known: Known) -> bool:
    farmer = known.farmer
    agreed = farmer is not None and farmer.consent_at is not None and farmer.stopped_at is None
    no_rain = known.warning is None and not known.in_storm
    waits = any(bed.transplanted_on is None for bed in known.nurseries)
    return agreed and no_rain and waits and not takes_words(known)


def _is_calm(known: Known) -> bool:
    farmer = known.farmer
    agreed = farmer is not None and farmer.consent_at is not None and farmer.stopped_at is None
    stands = any(bed.sown and bed.transplanted_on is None for bed in known.nurseries)
    no_rain = known.warning is None and not known.in_storm
    return agreed and stands and no_rain and not takes_words(known)
