"""How sure it is that a text asks a question: the learned table and the acts weighed together,
as the odds that the answer would be the right one.

The shares are rounded from a logistic fit on 9,900 ways of asking of a hand that neither table
had seen, and on 4,900 sentences of other acts (QUESTIONS.md says how it was measured). An exact
rule that hears the same, and a word of asking, said nothing more there and have no share. They
are few and stand here, so that anyone can see why a text was answered, offered or passed on.
"""

from collections.abc import Mapping, Sequence
from math import log
from types import MappingProxyType

from assistant.acts import Act, Weights
from assistant.hearing.matching import Likeness
from assistant.hearing.topics import Topic

_BASE = -0.3
_ODDS, _GAP = 0.5, 0.1
_LEAST = 1e-4  # a share below says no more
_ACTS: Mapping[Act, float] = MappingProxyType(
    {
        Act.DIE: -3.4,
        Act.HARM: -2.5,
        Act.DANGER: -2.8,
        Act.REFUSE: -1.8,
        Act.DONE: -0.4,
        Act.NOTDONE: -1.4,
    }
)


def assurance(found: Sequence[Likeness], topic: Topic, weights: Weights) -> float:
    """The log odds that a text asks for this topic; above 0 is likelier than not.

    Args:
        found: the topics as the learned table finds them, the likest first
        topic: the one that would be answered
        weights: of the acts that the text may be
    """
    asked = next(each for each in found if each.topic is topic)
    other = max(
        (each for each in found if each.topic is not topic), key=lambda each: each.share
    )
    gap = log(max(asked.share, _LEAST) / max(other.share, _LEAST))
    odds = _BASE + _ODDS * asked.odds + _GAP * gap
    return odds + sum(share * weights[act] for act, share in _ACTS.items())
