"""A choice from a numbered list: by its digit or by name, with typing mistakes."""

from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise

from assistant.reading.numbers import NUMBER_SORTS, Amount, amounts
from assistant.reading.outcomes import Option, Reading, Reason, again, understood
from assistant.reading.text.fold import LONGEST_REPLY, Token, TokenKind, cut, fold, read_tokens
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.near import nearest
from assistant.reading.text.spot import items

_DULL = (Sort.FILLER, Sort.ARTICLE, Sort.GREETING, Sort.FARM)
_NO_NAME = (Sort.NONE, Sort.NO, Sort.NOT, Sort.YES, *NUMBER_SORTS)
_DENIALS = (Sort.NO, Sort.NOT, Sort.NOT_YET)
_MOST_OPTIONS = 4
_LEAST_BEGUN = 4  # letters; less is an article or a slip


def read_choice(text: str, names: Sequence[Sequence[str]], lexicon: Lexicon) -> Reading[int]:
    """The place (from 0) of what was chosen: by its digit (from 1), or by a name.

    `names`: for each choice its name and other spellings. Where two names are as near, they
    are the options of the reading.
    """
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    found = read_tokens(text)
    if not found:
        return again(Reason.EMPTY)
    reading = _read(text, found, names, lexicon)
    if reading.value is None or _marks_fit(found, names[reading.value], lexicon):
        return reading
    return again(Reason.NOT_READ)


def _marks_fit(found: tuple[Token, ...], own: Sequence[str], lexicon: Lexicon) -> bool:
    """Whether a name is meant with the accents that were typed: dư is surplus, đủ enough."""
    if not (lexicon.is_tonal and found[0].with_accents) or any(t.is_number for t in found[:1]):
        return True
    typed = {token.marked for token in found} | {
        token.text for token in found if not token.is_word
    }
    return any(
        all(word.marked in typed or word.marked == word.text for word in read_tokens(name))
        for name in own
    )


def _read(
    text: str, found: tuple[Token, ...], names: Sequence[Sequence[str]], lexicon: Lexicon
) -> Reading[int]:
    said = _spelling(text)
    spellings = {_spelling(name): at for at, own in enumerate(names) for name in own}
    if said in spellings:
        return _by_whole_name(found, spellings[said], names, lexicon)
    if lexicon.is_tonal and not found[0].with_accents:
        spellings = _told_apart(names)
    numbers = [token.text for token in found if token.is_number]
    if found[0].text == "-" and numbers:
        return again(Reason.NOT_READ)
    if numbers:
        chosen = _by_digit(numbers, names)
        own = _words_of(chosen.value, spellings)
        words = tuple(token for token in found if token.kind is TokenKind.WORD)
        if _beside(words, own, lexicon) and not _counts_another(found, own, lexicon):
            return chosen
        return _beside_amount(found, chosen, spellings, names, lexicon)
    if _denies(found, spellings, lexicon):
        return again(Reason.NOT_READ)
    return _by_name(said, spellings, names, lexicon)


def _told_apart(names: Sequence[Sequence[str]]) -> dict[str, int]:
    """The names that lost marks leave apart: "du" is surplus (dư) and enough (đủ)."""
    places: dict[str, set[int]] = {}
    for at, own in enumerate(names):
        for name in own:
            places.setdefault(_spelling_plain(name), set()).add(at)
    return {name: min(found) for name, found in places.items() if len(found) == 1}


def _spelling_plain(name: str) -> str:
    return " ".join(_texts(name))


def _by_whole_name(
    found: tuple[Token, ...], place: int, names: Sequence[Sequence[str]], lexicon: Lexicon
) -> Reading[int]:
    """A name said whole. Where accents tell two names apart (dư, đủ), by those that were typed;
    without any it may be either."""
    said = [token.text for token in found if token.kind is not TokenKind.MARK]
    alike = {at: [name for name in own if _texts(name) == said] for at, own in enumerate(names)}
    places = [at for at, own in alike.items() if own]
    if not lexicon.is_tonal or len(places) < 2:
        return understood(place, names[place][0])
    marked = [token.marked for token in found if token.kind is not TokenKind.MARK]
    fit = [at for at in places if any(_marks(name) == marked for name in alike[at])]
    return understood(fit[0], names[fit[0]][0]) if len(fit) == 1 else again(Reason.NOT_READ)


def _texts(name: str) -> list[str]:
    return [token.text for token in read_tokens(name) if token.kind is not TokenKind.MARK]


def _marks(name: str) -> list[str]:
    return [token.marked for token in read_tokens(name) if token.kind is not TokenKind.MARK]


def is_name(text: str, names: Iterable[str]) -> bool:
    """Whether a reply is one of these names whole, whatever its case, marks and accents."""
    return _spelling(text) in {_spelling(name) for name in names}


def _denies(found: tuple[Token, ...], spellings: Mapping[str, int], lexicon: Lexicon) -> bool:
    """Whether a name is denied: "not covered" is no "covered". "No, Kijani" corrects."""
    said = " ".join(token.text for token in found if token.kind is not TokenKind.MARK)
    named = [name for name in spellings if name and f" {name} " in f" {said} "]
    if not named:
        return False
    before, _, after = f" {said} ".partition(f" {max(named, key=len)} ")
    row = items(cut(f"{before} {after}"), lexicon, _DENIALS)
    corrects = len(found) > 1 and found[1].text == "," and not after.strip()
    return not corrects and any(item.sort is not None for item in row)


def _words_of(place: int | None, spellings: Mapping[str, int]) -> frozenset[str]:
    """The words of one choice."""
    return frozenset(
        word for name, at in spellings.items() if at == place for word in name.split()
    )


def _beside(words: tuple[Token, ...], own: frozenset[str], lexicon: Lexicon) -> bool:
    """Whether words beside a digit leave it a choice: "2 please" does, "2 acres" does not."""
    row = items(words, lexicon, (*_DULL, Sort.ORDINAL, *NUMBER_SORTS))
    return all(item.sort is not None or item.text in own for item in row)


def _beside_amount(
    found: tuple[Token, ...],
    chosen: Reading[int],
    spellings: Mapping[str, int],
    names: Sequence[Sequence[str]],
    lexicon: Lexicon,
) -> Reading[int]:
    """A name beside a number that is no digit of the list ("short by 20"), or is of a thing
    ("3 mats left"); nothing else may be said."""
    said = " ".join(token.text for token in found if token.kind is not TokenKind.MARK)
    inside = _inside(said, spellings)
    is_digit = chosen.reason is not Reason.IMPOSSIBLE
    if len(inside) != 1 or (is_digit and not _counts_a_thing(found, lexicon)):
        return again(Reason.NOT_READ)
    place = inside.pop()
    words = tuple(token for token in found if token.kind is TokenKind.WORD)
    if _denies(found, spellings, lexicon) or not _beside(
        words, _words_of(place, spellings), lexicon
    ):
        return again(Reason.NOT_READ)
    return understood(place, names[place][0])


def _counts_another(found: tuple[Token, ...], own: frozenset[str], lexicon: Lexicon) -> bool:
    """Whether the number is of a thing that the choice does not name: "3 leaves" is no third
    choice, "1 mat" may be the first."""
    return _counts_a_thing(tuple(each for each in found if each.text not in own), lexicon)


def _counts_a_thing(found: tuple[Token, ...], lexicon: Lexicon) -> bool:
    row = items(found, lexicon, _DULL)
    return any(
        {here.sort, after.sort} == {None, Sort.FARM} and (here.is_digits or after.is_digits)
        for here, after in pairwise(row)
    )


def _spelling(name: str) -> str:
    return " ".join(token.text for token in cut(fold(name)) if token.kind is not TokenKind.MARK)


def _by_digit(numbers: list[str], names: Sequence[Sequence[str]]) -> Reading[int]:
    if len(numbers) > 1 or not numbers[0].isdigit() or len(numbers[0]) > 4:
        return again(Reason.NOT_READ)
    place = int(numbers[0]) - 1
    if not 0 <= place < len(names):
        return again(Reason.IMPOSSIBLE)
    return understood(place, names[place][0])


def _by_name(
    said: str, spellings: Mapping[str, int], names: Sequence[Sequence[str]], lexicon: Lexicon
) -> Reading[int]:
    """A name inside the reply, a misspelt name, or the number as a word."""
    inside = _inside(said, spellings)
    if len(inside) == 1:
        place = inside.pop()
        return understood(place, names[place][0])
    begun = _begun(said, spellings, lexicon)
    if begun:
        return _among(begun, names)
    row = items(cut(said), lexicon, (*NUMBER_SORTS, *_DULL))
    kept = "".join(item.text for item in row if item.sort not in _DULL).replace(" ", "")
    hit = nearest(kept, {name.replace(" ", ""): at for name, at in spellings.items()})
    if hit is not None and not _is_spelt_right(said, lexicon):
        best, rivals = hit
        return _among((best, *rivals), names)
    number = [piece for piece in amounts(row, lexicon) if isinstance(piece, Amount)]
    alone = _beside(cut(said), frozenset(), lexicon)
    if len(number) == 1 and number[0].value.denominator == 1 and alone:
        return _by_digit([str(number[0].value)], names)
    return again(Reason.NOT_READ)


def _is_spelt_right(said: str, lexicon: Lexicon) -> bool:
    """Whether every word is one of the list: "haikufanyika" (not done) is no slip of
    "haikufika" (was not enough)."""
    return all(word in lexicon.known for word in said.split())


def _inside(said: str, spellings: Mapping[str, int]) -> set[int]:
    """The choices whose names stand in what was said, but for those that are part of a longer
    name there: "light green" is no green, "not enough" is not enough."""
    names = [name for name in spellings if name and f" {name} " in f" {said} "]
    return {spellings[name] for name in names if not _is_part(name, names)}


def _is_part(name: str, names: Sequence[str]) -> bool:
    return any(name != other and f" {name} " in f" {other} " for other in names)


def _begun(said: str, spellings: Mapping[str, int], lexicon: Lexicon) -> list[int]:
    """The choices whose names begin with what was said: "none" for "None of these".

    A plain no, or a number, answers something else than the name that begins with it.
    """
    if len(said) < _LEAST_BEGUN:
        return []
    if items(cut(said), lexicon, _NO_NAME)[0].sort not in (None, Sort.NONE):
        return []
    begun = {at for name, at in spellings.items() if name.startswith(f"{said} ")}
    return sorted(begun)


def _among(places: Sequence[int], names: Sequence[Sequence[str]]) -> Reading[int]:
    """The only choice that fits, or the likeliest of several to ask about."""
    close = tuple(Option(at, names[at][0]) for at in places[:_MOST_OPTIONS])
    if len(places) == 1:
        return understood(close[0].value, close[0].words)
    return again(Reason.AMBIGUOUS, close)
