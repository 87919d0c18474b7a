"""Yes, no, done, not yet: by word, sign or the digits of a prompt."""

from collections.abc import Mapping
from functools import lru_cache

from assistant.reading.outcomes import Reading, Reason, Wish, again, confirm, understood
from assistant.reading.text.fold import LONGEST_REPLY, TEXTS_KEPT, Token, read_tokens
from assistant.reading.text.lexicon import OTHER, Lexicon, Sort
from assistant.reading.text.near import one_key_off
from assistant.reading.text.rules import Rule
from assistant.reading.text.short import spelt_out
from assistant.reading.text.spot import Item, items

YES, NO, DONE, NOT_YET = "yes", "no", "done", "not_yet"
DIGITS: Mapping[str, str] = {"1": YES, "2": NO}

_SAYS: Mapping[Sort, str] = {
    Sort.YES: YES,
    Sort.NO: NO,
    Sort.NOT: NO,
    Sort.DONE: DONE,
    Sort.DEED: DONE,
    Sort.NOT_YET: NOT_YET,
}
# A digit and the word that the prompt puts beside it: "1 done", "2 not yet".
_WITH_DIGIT: Mapping[tuple[str, str], str] = {(YES, DONE): DONE, (NO, NOT_YET): NOT_YET}
# What several answer words say together; any other mixture is asked again.
_TOGETHER: Mapping[frozenset[str], str] = {
    frozenset({YES}): YES,
    frozenset({NO}): NO,
    frozenset({DONE}): DONE,
    frozenset({NOT_YET}): NOT_YET,
    frozenset({YES, DONE}): DONE,
    frozenset({NO, NOT_YET}): NOT_YET,
    frozenset({NO, DONE}): NOT_YET,
    frozenset({NOT_YET, DONE}): NOT_YET,
    frozenset({NO, NOT_YET, DONE}): NOT_YET,
}
SORTS = (
    Sort.NOT_KNOWN,
    Sort.NOT_YET,
    Sort.DEED,
    Sort.DONE,
    Sort.YES,
    Sort.NO,
    Sort.NOT,
    Sort.ROUGH,
    Sort.RANGE,
    Sort.COMING_VERB,
    Sort.EITHER_DAY,
    Sort.DAY,
    Sort.SORRY,
    Sort.NUMBER,
    Sort.ABOUT,
    Sort.FARM,
    Sort.FILLER,
    Sort.GREETING,
    Sort.ARTICLE,
    Sort.JOIN,
)
FORGIVING = (Sort.YES, Sort.NO, Sort.DONE, Sort.NOT_YET)
_MOST_STRANGE = 3  # words that we do not know, beside a yes or done in the middle


@lru_cache(maxsize=TEXTS_KEPT)
def read_confirm(text: str, lexicon: Lexicon, digits: bool = True) -> Reading[str]:
    """ "yes", "no", "done" or "not_yet"; with `digits` 1 is yes and 2 is no."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    text = spelt_out(text, lexicon)
    row = items(read_tokens(text), lexicon, SORTS, FORGIVING)
    if not row:
        return again(Reason.EMPTY)
    said = [item for item in row if item.sort in _SAYS]
    if digits and not said and (meaning := _number_word(row)):
        others = {m for item in row for m in _near(item.text, lexicon)} - {meaning}
        words = lexicon.answers[meaning]
        return (
            confirm(meaning, words, Reason.MISSPELT) if others else understood(meaning, words)
        )
    if any(item.is_digits for item in row):
        return _of_digits(row, said, lexicon) if digits else again(Reason.NOT_READ)
    if any(item.is_mark("?") for item in row):
        return again(Reason.NOT_READ)
    return _of_words(row, said, lexicon) if said else _unsaid(row, lexicon)


@lru_cache(maxsize=TEXTS_KEPT)
def read_deeds(text: str, lexicon: Lexicon) -> frozenset[str]:
    """What a reply tells, of `TOLD`: "I have watered" says water; none for "done"."""
    found = read_tokens(spelt_out(text[:LONGEST_REPLY], lexicon))
    row = items(found, lexicon, SORTS)
    by_phrase = {deed for i in row if i.sort is Sort.DEED for deed in i.key.split()}
    by_rule = {code for code, _ in told_by_rule(found, lexicon)}
    return frozenset(by_phrase | by_rule) - {OTHER}


@lru_cache(maxsize=TEXTS_KEPT)
def told_by_rule(found: tuple[Token, ...], lexicon: Lexicon) -> tuple[tuple[str, Rule], ...]:
    """What is told in words that stand apart, of `TOLD`, with every rule that says so."""
    words = tuple(token for token in found if token.is_word or token.is_number)
    strict = lexicon.is_tonal and bool(words) and words[0].with_accents
    return lexicon.told.every(words, strict)


def _number_word(row: tuple[Item, ...]) -> str | None:
    """One and two in words, where nothing but manners stands beside them."""
    kept = [item for item in row if item.sort not in (Sort.FILLER, Sort.FARM, Sort.GREETING)]
    only = kept[0] if len(kept) == 1 and kept[0].sort is Sort.NUMBER else None
    return DIGITS.get(only.key) if only is not None else None


def _meaning(said: list[Item]) -> str | None:
    return _TOGETHER.get(frozenset(_SAYS[item.sort] for item in said if item.sort))


def _of_digits(row: tuple[Item, ...], said: list[Item], lexicon: Lexicon) -> Reading[str]:
    """1, "1 yes" or "1 done": nothing else may stand beside it."""
    numbers = [item.key for item in row if item.is_digits]
    if row[0].is_mark("-") and len(row) > 1 and row[1].glued:
        return again(Reason.NOT_READ)
    meaning = DIGITS.get(numbers[0])
    if len(numbers) > 1 or meaning is None or any(item.is_strange for item in row):
        return again(Reason.NOT_READ)
    if said and (word := _meaning(_without_manners(said, lexicon))) != meaning:
        both = _WITH_DIGIT.get((meaning, word or ""))
        return understood(both, lexicon.answers[both]) if both else again(Reason.TWO_VALUES)
    return understood(meaning, lexicon.answers[meaning])


def _of_words(row: tuple[Item, ...], said: list[Item], lexicon: Lexicon) -> Reading[str]:
    sorts = {i.sort for i in row if not lexicon.has(Sort.FILLER, i.phrase)}
    meaning = _meaning(_without_manners(said, lexicon))
    if meaning is None or sorts & {Sort.NOT_KNOWN, Sort.RANGE}:
        return again(Reason.TWO_VALUES if meaning is None else Reason.NOT_KNOWN)
    words = lexicon.answers[meaning]
    if any(item.has_rivals or _may_be_stop(item, lexicon) for item in said):
        return confirm(meaning, words, Reason.MISSPELT)
    if Sort.ROUGH in sorts or (meaning in (YES, DONE) and is_for_later(row)):
        return confirm(meaning, words, Reason.ROUGH)
    return _beside_strange(row, meaning, words, lexicon)


def _without_manners(said: list[Item], lexicon: Lexicon) -> list[Item]:
    """Ji, da, opo are a yes alone, and manners beside another answer."""
    firm = [i for i in said if i.sort is not Sort.YES or not lexicon.has(Sort.FILLER, i.phrase)]
    return firm or said


def _may_be_stop(item: Item, lexicon: Lexicon) -> bool:
    """Ston is soon or stop; Vietnamese without tone marks: dung is right, and stop."""
    stops = (p[0] for p in lexicon.wishes[Wish.STOP].words if len(p) == 1)
    if item.misspelt and any(one_key_off(item.text, word) for word in stops):
        return True
    plain = not any(token.with_accents for token in item.tokens)
    return lexicon.is_tonal and plain and item.phrase in lexicon.wishes[Wish.STOP].words


def _beside_strange(
    row: tuple[Item, ...], meaning: str, words: str, lexicon: Lexicon
) -> Reading[str]:
    """An answer word among words that we do not know: sure where it opens the reply.

    Not so "no": "no water" is no answer; nor "it is raining", "I am in town".
    """
    strange = sum(item.is_strange for item in row)
    opens = row[0].sort in _SAYS and not lexicon.has(Sort.WHOLE_YES, row[0].phrase)
    if not strange or (opens and meaning != NO):
        return understood(meaning, words)
    if opens or (strange <= _MOST_STRANGE and meaning in (YES, DONE)):
        return confirm(meaning, words, Reason.NOT_READ)
    return again(Reason.NOT_READ)


def is_for_later(row: tuple[Item, ...]) -> bool:
    """Tomorrow; "will"."""
    return any(
        item.sort is Sort.COMING_VERB or (item.sort is Sort.DAY and int(item.key) > 0)
        for item in row
    )


def _unsaid(row: tuple[Item, ...], lexicon: Lexicon) -> Reading[str]:
    """No answer word: "I will do it tomorrow" is likely not yet; iui is likely oui."""
    if any(item.sort is Sort.NOT_KNOWN for item in row):
        return again(Reason.NOT_KNOWN)
    if is_for_later(row):
        return confirm(NOT_YET, lexicon.answers[NOT_YET], Reason.ROUGH)
    meanings = _near(row[0].text, lexicon) if len(row) == 1 and row[0].is_strange else set()
    if len(meanings) != 1:
        return again(Reason.NOT_READ)
    meaning = meanings.pop()
    return confirm(meaning, lexicon.answers[meaning], Reason.MISSPELT)


def _near(word: str, lexicon: Lexicon) -> set[str]:
    """What a word of one slip may have meant: the question has only four answers."""
    return {
        _SAYS[sort]
        for sort in FORGIVING
        for phrase in lexicon.phrases[sort]
        if len(phrase) == 1 and one_key_off(word, phrase[0])
    }
