"""Whether a farmer's own words tell of a flood or a storm, so that they cannot wait.

No reading that is shown back: it only decides how soon an officer hears of a call. Said once
too often it wakes an officer; so a word that is also a task of the trade ("flood the bed")
counts only where the list has it with what makes it a danger, or where it is the whole reply.
"""

from functools import lru_cache

from assistant.reading.outcomes import Wish
from assistant.reading.text.fold import Token, read_tokens
from assistant.reading.text.lexicon import Lexicon

_Run = tuple[Token, ...]


def in_danger(text: str, lexicon: Lexicon) -> bool:
    """Whether words speak of a flood or a storm in this language."""
    found = _words(text)
    if tuple(token.text for token in found) in lexicon.wishes[Wish.RAIN].words:
        return True
    return any(
        _is_at(found[at : at + len(phrase)], phrase, lexicon)
        for phrase in _phrases(lexicon)
        for at in range(len(found))
    )


@lru_cache(maxsize=32)
def _phrases(lexicon: Lexicon) -> tuple[_Run, ...]:
    return tuple(map(_words, lexicon.danger))


def _words(text: str) -> _Run:
    return tuple(token for token in read_tokens(text) if token.is_word)


def _is_at(run: _Run, phrase: _Run, lexicon: Lexicon) -> bool:
    """Word by word; in a tonal language with its accents, where any were typed."""
    if len(run) != len(phrase):
        return False
    strict = lexicon.is_tonal and run[0].with_accents
    return all(
        token.marked == word.marked if strict else token.text == word.text
        for token, word in zip(run, phrase, strict=True)
    )
