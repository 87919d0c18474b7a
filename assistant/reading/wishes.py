"""What a person wishes for at any point: a word, a sentence, a misspelt word, a greeting.

A wish that is UNDERSTOOD goes before the question that is open. One to CONFIRM or ask AGAIN
counts only where the question could not read the reply either: "hindi" is a language here and
a "no" there. Words that answer the open question (`asked`) are no wish.
"""

from collections.abc import Mapping
from functools import lru_cache

from assistant.reading.fold import LONGEST_REPLY, Kind, Token, cut, fold
from assistant.reading.languages import language_named
from assistant.reading.lexicon import Lexicon, Phrase, Sort, has, items
from assistant.reading.near import nearest
from assistant.reading.outcomes import (
    Ask,
    Option,
    Reading,
    Reason,
    Wish,
    again,
    confirm,
    understood,
)

MOST_WORDS_MISSPELT = 3  # in a longer reply a near word is too often another word

# The wish that is the safer one to offer first where two are as likely.
_ORDER = (
    Wish.PROBLEM,
    Wish.OFFICER,
    Wish.RAIN,
    Wish.CHANGE_DATE,
    Wish.QUANTITIES,
    Wish.TODAY,
    Wish.LANGUAGE,
    Wish.HELP,
    Wish.MENU,
    Wish.BACK,
    Wish.START,
    Wish.STOP,
)
_ANSWERS: Mapping[Ask, tuple[Sort, ...]] = {
    Ask.DATE: (Sort.DAY, Sort.EITHER_DAY, Sort.WEEKDAY, Sort.MONTH),
    Ask.CONFIRM: (Sort.YES, Sort.NO, Sort.DONE, Sort.NOT_YET),
}


def read_wish(
    text: str, lexicons: Mapping[str, Lexicon], language: str, asked: Ask | None = None
) -> Reading[Wish]:
    """The wish in a reply; AGAIN where there is none (a plain answer is no wish)."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    found = cut(fold(text))
    if not found:
        return again(Reason.EMPTY)
    own = lexicons[language]
    if [t.text for t in found] == ["0"]:
        return understood(Wish.BACK, own.wish_names[Wish.BACK])
    if all(t.text == "?" for t in found):
        return understood(Wish.HELP, own.wish_names[Wish.HELP])
    words = tuple(t.text for t in found if t.kind is Kind.WORD)
    has_numbers = any(t.kind is Kind.NUMBER for t in found)
    if asked is not None and _answers(words, own, asked):
        return again(Reason.NOT_READ)
    return _by_words(words, found, lexicons, own, has_numbers)


def _answers(words: Phrase, lexicon: Lexicon, asked: Ask) -> bool:
    return any(has(lexicon, sort, words) for sort in _ANSWERS.get(asked, ()))


def _by_words(
    words: Phrase,
    found: tuple[Token, ...],
    lexicons: Mapping[str, Lexicon],
    own: Lexicon,
    has_numbers: bool,
) -> Reading[Wish]:
    bare = _without(words, own, (Sort.FILLER, Sort.ARTICLE))
    if not has_numbers:
        for phrase in (words, bare, _without(bare, own, (Sort.GREETING,))):
            wish = _exact(phrase, own, lexicons)
            if wish is not None:
                return understood(wish, own.wish_names[wish])
        if words and not _without(bare, own, (Sort.GREETING,)):
            return understood(Wish.MENU, own.wish_names[Wish.MENU])
        foreign = _stop_elsewhere(words, lexicons)
        if foreign:
            return confirm(Wish.STOP, own.wish_names[Wish.STOP], Reason.AMBIGUOUS)
    return _by_sentence(words, lexicons, own) or _by_spelling(bare, own, has_numbers)


def _without(words: Phrase, lexicon: Lexicon, sorts: tuple[Sort, ...]) -> Phrase:
    tokens = tuple(Token(word, Kind.WORD, False) for word in words)
    row = items(tokens, lexicon, sorts)
    return tuple(t.text for item in row if item.sort not in sorts for t in item.tokens)


def _exact(phrase: Phrase, own: Lexicon, lexicons: Mapping[str, Lexicon]) -> Wish | None:
    """A whole reply that is one wish: in the own language, in English, STOP in any."""
    if phrase in _whole(own):
        return _whole(own)[phrase]
    if language_named(" ".join(phrase)) is not None:
        return Wish.LANGUAGE
    if any(word in own.known for word in phrase):
        return None
    english = lexicons.get("en")
    if english is not None and phrase in _whole(english):
        return _whole(english)[phrase]
    return Wish.STOP if _stop_elsewhere(phrase, lexicons) else None


def _stop_elsewhere(phrase: Phrase, lexicons: Mapping[str, Lexicon]) -> bool:
    return any(phrase in lexicon.wishes[Wish.STOP].words for lexicon in lexicons.values())


@lru_cache(maxsize=32)
def _whole(lexicon: Lexicon) -> Mapping[Phrase, Wish]:
    return {phrase: wish for wish in _ORDER for phrase in lexicon.wishes[wish].words}


def _by_sentence(
    words: Phrase, lexicons: Mapping[str, Lexicon], own: Lexicon
) -> Reading[Wish] | None:
    """The wish whose words a sentence holds; the one with the most of them."""
    scores = {w: s for w in _ORDER if (s := _score(words, own, w))}
    if Wish.STOP in scores and _not_stop(words, own):
        del scores[Wish.STOP]
    if not scores:
        return None
    best = max(scores.values())
    first, *rest = [wish for wish in _ORDER if scores.get(wish) == best]
    if not rest:
        return understood(first, own.wish_names[first])
    options = tuple(Option(wish, own.wish_names[wish]) for wish in (first, *rest))
    return confirm(first, own.wish_names[first], Reason.AMBIGUOUS, options)


def _not_stop(words: Phrase, own: Lexicon) -> bool:
    """Whether "stop" here is about rain, insects or water, or refused."""
    refused = any(_holds(words, p) for s in (Sort.NOT,) for p in own.phrases.get(s, {}))
    return refused or any(_holds(words, phrase) for phrase in own.stop_not)


def _score(words: Phrase, lexicon: Lexicon, wish: Wish) -> int:
    best = 0
    for groups in lexicon.wishes[wish].sentences:
        if len(groups) > best and all(any(_holds(words, p) for p in group) for group in groups):
            best = len(groups)
    return best


def _holds(words: Phrase, phrase: Phrase) -> bool:
    size = len(phrase)
    if size == 1:
        return phrase[0] in words
    return any(words[at : at + size] == phrase for at in range(len(words) - size + 1))


def _by_spelling(words: Phrase, own: Lexicon, has_numbers: bool) -> Reading[Wish]:
    """A short reply with a typing mistake. STOP is never done on a likeness: it is asked."""
    if has_numbers or not words or len(words) > MOST_WORDS_MISSPELT:
        return again(Reason.NOT_READ)
    if all(word in own.known for word in words):
        return again(Reason.NOT_READ)
    hit = nearest(" ".join(words), _spelt(own))
    if hit is None:
        return again(Reason.NOT_READ)
    wish, others = hit
    if not others and wish is not Wish.STOP:
        return understood(wish, own.wish_names[wish])
    options = tuple(Option(w, own.wish_names[w]) for w in (wish, *others))
    return confirm(wish, own.wish_names[wish], Reason.MISSPELT, options if others else ())


@lru_cache(maxsize=32)
def _spelt(lexicon: Lexicon) -> Mapping[str, Wish]:
    return {" ".join(phrase): wish for phrase, wish in _whole(lexicon).items()}
