"""A word and the digits that follow it, sent in one text: "MENU, 9, 3", "PROBLEM 2".

Texts tell people to send them so; each digit answers what the one before it opened.
"""

import re
import unicodedata
from dataclasses import replace

from assistant.dialogue import conversations as talks
from assistant.dialogue.answering import answer_open, extra_word, sure_wish
from assistant.dialogue.engine import find
from assistant.dialogue.values import Known, Turn
from assistant.dialogue.wishes import WISHES

_BETWEEN = r"[\s,.;:/>-]"
_CHAIN = re.compile(rf"(?P<word>\D*[^\d\s,.;:/>-])(?P<digits>(?:{_BETWEEN}+\d)+)[\s.!]*")
_DIGIT = re.compile(r"\d")
_MOST_WORDS = 3  # "new nursery", "change date B"


def chained(text: str, known: Known) -> Turn | None:
    """The turn that the whole chain leads to; None where it is none, or leads nowhere."""
    found = _CHAIN.fullmatch(text)
    opened = _opened(found["word"].strip(" ,.;:\"'"), known) if found else None
    if found is None or opened is None or _stays(opened, known):
        return None
    turn = opened
    for digit in map(unicodedata.digit, _DIGIT.findall(found["digits"])):
        here = replace(known, session=turn.session)
        session = turn.session
        if session is None or find(session, talks.TABLES) is None:
            return None
        step = answer_open(str(digit), here, session)
        if step is None:
            return None
        turn = replace(step, changes=(*turn.changes, *step.changes))
    return turn


def _stays(opened: Turn, known: Known) -> bool:
    """Whether a word opened nothing and the question stands again: then the digit is no answer
    to it ("it rained 3 times", where a pail is asked)."""
    before, after = known.session, opened.session
    if before is None or after is None:
        return False
    return (before.conversation, before.step) == (after.conversation, after.step)


def _opened(word: str, known: Known) -> Turn | None:
    """What the word alone opens; a sentence that begins with it is no chain."""
    if len(word.split()) > _MOST_WORDS:
        return None
    wish = sure_wish(word, known)
    if wish is not None:
        return WISHES[wish](word, known)
    return extra_word(word, known)
