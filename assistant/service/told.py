"""What a call for help tells: the trouble, an answer of the talk about it, the own words."""

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.dialogue.conversations.trouble import SIGNS
from assistant.service.effects import ABOUT
from assistant.wording import messages_officer as o
from assistant.wording import messages_web as w
from assistant.wording.message import Message, Say

_SIGN_TEXTS: Mapping[str, Message] = {choice.code: choice.label for choice in SIGNS}


@dataclass(frozen=True)
class Told:
    """One call in parts; `words` is empty where the farmer wrote none."""

    about: Say
    answer: Say | None
    words: str


def told(about: str, words: str) -> Told:
    """The parts of a call as it is kept: a short code, and words or an answer's code."""
    trouble = ABOUT.get(about, o.ABOUT_OTHER)()
    if about == "yellow" and words in _SIGN_TEXTS:
        return Told(trouble, w.SAW_TOO(what=_SIGN_TEXTS[words]()), "")
    if about == "leaves" and words:
        return Told(trouble, w.COUNTED_LEAVES(count=words), "")
    return Told(trouble, None, words)
