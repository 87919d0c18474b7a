"""Words as they are shortened on a keypad, spelt out: "b4", "sdh", "avc"."""

import re

from assistant.reading.text.fold import fold
from assistant.reading.text.lexicon import Lexicon

SHORTEST = 2  # letters that are hardly ever a word of their own in what is told
_WORD = re.compile(r"[^\s,.;:!?()/]+")


def spelt_out(text: str, lexicon: Lexicon) -> str:
    """The text with its short words in full; where nobody typed an accent none is added, since
    one would say that the others are missing on purpose."""
    if len(text.split()) < 2:
        return text  # alone "n" is no, and not "and"
    is_bare = text.isascii()

    def full(found: re.Match[str]) -> str:
        typed = found[0].casefold()
        word = lexicon.short.get(typed)
        if word is None or (typed in lexicon.known and len(typed) > SHORTEST):
            return found[0]  # a longer word of the list stays that word
        return fold_plain(word) if is_bare else word

    return _WORD.sub(full, text)


def fold_plain(word: str) -> str:
    """A word without its accents."""
    return "".join(sign for sign in fold(word).replace("đ", "d") if sign.isascii())
