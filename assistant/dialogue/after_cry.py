"""A bare yes or a digit behind advice to somebody in danger: it may answer that ("call now"),
and no task that was asked before it. What was asked is put once more."""

from assistant.dialogue.aid import TOLD
from assistant.dialogue.items import once_more
from assistant.dialogue.values import Focus, Known, Text, Turn
from assistant.dialogue.warned import waits_for_answer, warning_screen
from assistant.reading import read_deeds, read_told
from assistant.reading.told import MOST_CHOICES

_MOST_WORDS = 2


def after_cry(text: str, known: Known) -> Turn | None:
    """The open question once more; None where the last text was no such advice, or the words
    say what they answer."""
    if not known.focuses or known.focuses[0] != TOLD or not _is_bare(text, known):
        return None
    if known.warning is not None and (waits_for_answer(known) or not known.items):
        return Turn(known.session, (warning_screen(known.warning),))
    if not known.items:
        return None
    last = max(known.items, key=lambda each: each.day)
    return Turn(known.session, (Text(once_more(last, known), Focus(items=(last,))),))


def _is_bare(text: str, known: Known) -> bool:
    if text.strip().isdigit():
        return int(text) <= MOST_CHOICES
    words = text.split()
    if len(words) > _MOST_WORDS or read_deeds(text, known.lexicon):
        return False
    return read_told(text, known.lexicon, digits=False).value is not None
