"""What a call for help tells: the trouble, what was answered in the talk, the own words.

Answers of a talk are kept as codes, so that each officer reads them in their own language.
Calls of earlier releases hold them as words of the farmer's language, and are shown as such.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from assistant.dialogue.conversations.emergence import DECISIONS
from assistant.dialogue.conversations.trouble import LEAVES, PLACES, SIGNS
from assistant.service.alarm_kinds import ALARMS
from assistant.service.stopped_here import STOPPED
from assistant.store import PRIVATE
from assistant.wording import messages_officer as o
from assistant.wording import messages_web as web
from assistant.wording import messages_web_told as web_told
from assistant.wording.message import Listed, Message, Say, Slot

ABOUT: Mapping[str, Message] = {
    "officer": o.ABOUT_OFFICER,
    "yellow": o.ABOUT_YELLOW,
    "not_up": o.ABOUT_NOT_UP,
    "seed": o.ABOUT_SEED,
    "animals": o.ABOUT_ANIMALS,
    "water": o.ABOUT_WATER,
    "spare": o.ABOUT_SPARE,
    "leaves": o.ABOUT_LEAVES,
    "flood": o.ABOUT_FLOOD,
    "danger": o.ABOUT_DANGER,
    "lost": o.ABOUT_LOST,
    "rain": o.ABOUT_RAIN,
    "warned": o.ABOUT_WARNED,
    "ring": o.ABOUT_RING,
    "ring_rain": o.ABOUT_RING_RAIN,
    "question": o.ABOUT_QUESTION,
    "village": o.ABOUT_VILLAGE,
    "refused": o.ABOUT_REFUSED,
    STOPPED: o.ABOUT_STOPPED,
    "erase": o.ABOUT_ERASE,
    "poison": o.ABOUT_POISON,
    "eyes": o.ABOUT_EYES,
    "snake": o.ABOUT_SNAKE,
    "lightning": o.ABOUT_LIGHTNING,
    "drowning": o.ABOUT_DROWNING,
    "wire": o.ABOUT_WIRE,
    "wound": o.ABOUT_WOUND,
    "smoke": o.ABOUT_SMOKE,
    "animal": o.ABOUT_ANIMAL,
    "hurt": o.ABOUT_HURT,
    PRIVATE: o.ABOUT_DIE,
    "other": o.ABOUT_OTHER,
}
"""What calls are about, by the code that is kept. A call of another code is not kept at all: a
test holds those that a talk can make to these."""

URGENT = frozenset({"rain", "warned", "flood", "ring_rain"}) | ALARMS
"""Calls that officers hear of at once, also in the quiet hours: no setting holds them back."""

# Here the words that are kept are answers to the questions of a talk, not the farmer's own.
_ANSWERED = frozenset({"yellow", "seed", "not_up"})
_LABELS = {choice.code: choice.label for choice in (*SIGNS, *LEAVES, *PLACES)}
_DECIDED = {choice.code: choice.label for choice in DECISIONS}
_STAND = re.compile(r"(\d+) ?(\w*)")
_TEST = re.compile(r"(\d+)/(\d+)")


@dataclass(frozen=True)
class ToldCall:
    """One call in parts; `words` is empty where the farmer wrote none."""

    about: Say
    answer: Say | None
    words: str


def told(about: str, words: str) -> ToldCall:
    """The parts of a call as it is kept: a short code, and words or an answer. A code that only
    another release knows hides no call: it is "other"."""
    trouble = ABOUT[about if about in ABOUT else "other"]()
    if about in _ANSWERED and words:
        return ToldCall(trouble, web.ANSWERED(words=answer_of(about, words)), "")
    if about == "leaves" and words:
        return ToldCall(trouble, web.COUNTED_LEAVES(count=words), "")
    return ToldCall(trouble, None, words)


def answer_of(about: str, words: str) -> Slot:
    """What was answered, to be worded in any language; words that are no codes as they are."""
    found = _READ[about](words) if about in _READ else None
    return found if found is not None else words


def _signs(words: str) -> Slot | None:
    codes = words.split(",")
    if not all(code in _LABELS for code in codes):
        return None
    return Listed(tuple(_LABELS[code]() for code in codes))


def _stand(words: str) -> Slot | None:
    found = _STAND.fullmatch(words)
    if not found:
        return None
    shoots = int(found[1])
    if found[2] in _DECIDED:
        return web_told.STAND(shoots=shoots, answer=_DECIDED[found[2]]())
    return web_told.SHOOTS(shoots=shoots) if not found[2] else None


def _test(words: str) -> Slot | None:
    found = _TEST.fullmatch(words)
    return web_told.SPROUTED(count=int(found[1]), seeds=int(found[2])) if found else None


_READ: Mapping[str, Callable[[str], Slot | None]] = {
    "yellow": _signs,
    "not_up": _stand,
    "seed": _test,
}
