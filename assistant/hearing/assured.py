"""How sure it is that a text asks a question: the learned table, the exact rule and the acts
weighed together, as the odds that the answer would be the right one.

The shares are rounded from a logistic fit on ways of asking that the table had not seen and on
sentences of every other act (QUESTIONS.md says how it was measured). They are few and stand
here, so that anyone can see why a text was answered, offered or passed on.
"""

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from assistant.acts import Act, Weights
from assistant.hearing.matching import Likeness
from assistant.hearing.topics import Topic

_BASE = 0.0
_SCORE, _GAP, _AGREES, _ASKS = 1.6, 1.3, 0.1, 0.1
_MOST = 1.5  # a score or a gap above that says no more
_ACTS: Mapping[Act, float] = MappingProxyType(
    {
        Act.DIE: -1.0,
        Act.HARM: -1.1,
        Act.DANGER: -0.9,
        Act.REFUSE: -0.6,
        Act.DONE: -1.1,
        Act.NOTDONE: -1.0,
    }
)


def assurance(
    found: Sequence[Likeness], topic: Topic, rule: Topic | None, asks: bool, weights: Weights
) -> float:
    """The log odds that a text asks for this topic; above 0 is likelier than not.

    Args:
        found: the topics as the learned table finds them, the likest first
        topic: the one that would be answered
        rule: the topic that an exact rule hears, if any
        asks: whether there is a word of asking or a question mark
        weights: of the acts that the text may be
    """
    score = next(each.score for each in found if each.topic is topic)
    gap = score - max(each.score for each in found if each.topic is not topic)
    odds = _BASE + _SCORE * min(score, _MOST) + _GAP * min(gap, _MOST)
    odds += (_AGREES if rule is topic else 0.0) + (_ASKS if asks else 0.0)
    return odds + sum(share * weights[act] for act, share in _ACTS.items())
