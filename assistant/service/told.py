"""What a call for help tells: the trouble, an answer of the talk about it, the own words."""

from dataclasses import dataclass

from assistant.service.effects import ABOUT
from assistant.wording import messages_officer as o
from assistant.wording import messages_web as w
from assistant.wording.message import Say

# Here the words that are kept are answers to the questions of a talk, not the farmer's own.
_ANSWERED = frozenset({"yellow", "seed", "not_up"})


@dataclass(frozen=True)
class Told:
    """One call in parts; `words` is empty where the farmer wrote none."""

    about: Say
    answer: Say | None
    words: str


def told(about: str, words: str) -> Told:
    """The parts of a call as it is kept: a short code, and words or an answer."""
    trouble = ABOUT.get(about, o.ABOUT_OTHER)()
    if about in _ANSWERED and words:
        return Told(trouble, w.ANSWERED(words=words), "")
    if about == "leaves" and words:
        return Told(trouble, w.COUNTED_LEAVES(count=words), "")
    return Told(trouble, None, words)
