"""Yes, no, done, not yet; counts, litres, and a choice from a list."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from assistant.reading.echo import number_words
from assistant.reading.fold import LONGEST_REPLY, Kind, Token, cut, fold
from assistant.reading.lexicon import Item, Lexicon, Sort, items
from assistant.reading.near import nearest
from assistant.reading.numbers import NUMBER_SORTS, Amount, amounts, is_broken
from assistant.reading.outcomes import Option, Reading, Reason, again, confirm, understood

YES, NO, DONE, NOT_YET = "yes", "no", "done", "not_yet"
BIGGEST_COUNT = 10_000_000
SMALLEST_PAIL_L, BIGGEST_PAIL_L = 1, 60  # nobody lifts more; a smaller one is a cup

_CONFIRM_SORTS = (
    Sort.NOT_YET,
    Sort.DONE,
    Sort.YES,
    Sort.NO,
    Sort.NOT,
    Sort.NOT_KNOWN,
    Sort.RANGE,
    Sort.COMING_VERB,
    Sort.DAY,
    Sort.SORRY,
    Sort.ARTICLE,
    Sort.FARM,
    Sort.FILLER,
    Sort.GREETING,
    Sort.JOIN,
)
_SAYS = {Sort.YES: YES, Sort.NO: NO, Sort.NOT: NO, Sort.DONE: DONE, Sort.NOT_YET: NOT_YET}


def read_confirm(text: str, lexicon: Lexicon, digits: bool = True) -> Reading[str]:
    """ "yes", "no", "done" or "not_yet"; with `digits` 1 is yes and 2 is no."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    found = cut(fold(text))
    if not found:
        return again(Reason.EMPTY)
    row = items(found, lexicon, _CONFIRM_SORTS, (Sort.YES, Sort.NO, Sort.DONE, Sort.NOT_YET))
    numbers = [item.key for item in row if item.is_digits]
    said = [item for item in row if item.sort in _SAYS]
    if numbers:
        return _with_digit(numbers, said, row, lexicon) if digits else again(Reason.NOT_READ)
    if any(item.is_mark("?") for item in row):
        return again(Reason.NOT_READ)
    return _said(row, said, lexicon)


def _with_digit(
    numbers: list[str], said: list[Item], row: tuple[Item, ...], lexicon: Lexicon
) -> Reading[str]:
    strange = [item for item in row if item.is_strange]
    meaning = {"1": YES, "2": NO}.get(numbers[0])
    if len(numbers) > 1 or meaning is None or strange:
        return again(Reason.NOT_READ)
    if any(_SAYS[item.sort] != meaning for item in said if item.sort):
        return again(Reason.TWO_VALUES)
    return understood(meaning, lexicon.answers[meaning])


def _said(row: tuple[Item, ...], said: list[Item], lexicon: Lexicon) -> Reading[str]:
    if not said:
        known = any(item.sort is Sort.NOT_KNOWN for item in row)
        return again(Reason.NOT_KNOWN if known else Reason.NOT_READ)
    meaning = _meaning({_SAYS[item.sort] for item in said if item.sort})
    unsure = any(i.sort in (Sort.NOT_KNOWN, Sort.RANGE) for i in row)
    if meaning is None or unsure:
        return again(Reason.NOT_KNOWN if unsure else Reason.TWO_VALUES)
    words = lexicon.answers[meaning]
    if any(item.others for item in said if item.misspelt):
        return confirm(meaning, words, Reason.MISSPELT)
    strange = sum(item.is_strange for item in row)
    opens = row[0].sort in _SAYS or not strange
    if strange == 0 or (opens and meaning != NO):
        return understood(meaning, words)
    if opens or (strange <= 3 and meaning in (YES, DONE)):
        return confirm(meaning, words, Reason.NOT_READ)
    return again(Reason.NOT_READ)


def _meaning(said: set[str]) -> str | None:
    """What several answer words say together: "yes done" is done, "no not yet" is not yet."""
    if len(said) == 1:
        return next(iter(said))
    table: Mapping[frozenset[str], str] = {
        frozenset({YES, DONE}): DONE,
        frozenset({NO, NOT_YET}): NOT_YET,
        frozenset({NO, DONE}): NOT_YET,
        frozenset({NOT_YET, DONE}): NOT_YET,
        frozenset({NO, NOT_YET, DONE}): NOT_YET,
    }
    return table.get(frozenset(said))


_COUNT_SORTS = (
    *NUMBER_SORTS,
    Sort.NONE,
    Sort.NOT_KNOWN,
    Sort.SORRY,
    Sort.NO,
    Sort.NOT,
    Sort.RANGE,
    Sort.OF,
    Sort.ROUGH,
    Sort.ABOUT,
    Sort.ARTICLE,
    Sort.FARM,
    Sort.FILLER,
    Sort.GREETING,
)
_LITRE_SORTS = (Sort.LITRE, *_COUNT_SORTS)


def read_count(text: str, lexicon: Lexicon) -> Reading[float]:
    """How many: one number, not below nothing."""
    return _one_number(text, lexicon, _COUNT_SORTS)[0]


def read_litres(text: str, lexicon: Lexicon) -> Reading[float]:
    """The size of a pail [L]; a measure that is not litres is read back in litres."""
    reading, items_found = _one_number(text, lexicon, _LITRE_SORTS)
    if reading.value is None:
        return reading
    units = {item.key for item in items_found if item.sort is Sort.LITRE}
    if len(units) > 1:
        return again(Reason.TWO_VALUES)
    litres = reading.value * float(units.pop() if units else 1)
    litres = round(litres, 1)
    if not 0 < litres <= 1000:
        return again(Reason.IMPOSSIBLE)
    words = number_words(Fraction(str(litres)), lexicon) + " L"
    if litres != reading.value:
        return confirm(litres, words, Reason.UNUSUAL)
    if not SMALLEST_PAIL_L <= litres <= BIGGEST_PAIL_L:
        big = litres > BIGGEST_PAIL_L
        return confirm(litres, words, Reason.TOO_BIG if big else Reason.TOO_SMALL)
    if reading.reason is not Reason.NONE:
        return confirm(litres, words, reading.reason)
    return understood(litres, words)


def _one_number(
    text: str, lexicon: Lexicon, sorts: tuple[Sort, ...]
) -> tuple[Reading[float], tuple[Item, ...]]:
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG), ()
    row = items(cut(fold(text)), lexicon, sorts, (Sort.NUMBER,))
    if not row:
        return again(Reason.EMPTY), ()
    if is_broken(row, frozenset()):
        return again(Reason.NOT_READ), row
    pieces = amounts(row, lexicon, spaced=True)
    numbers = [p for p in pieces if isinstance(p, Amount)]
    broken = any(isinstance(p, Item) and p.is_digits for p in pieces)
    if len(numbers) == 1 and not broken:
        return _count(numbers[0], row, lexicon), row
    return _no_number(row, len(numbers), broken, lexicon), row


def _no_number(
    row: tuple[Item, ...], count: int, broken: bool, lexicon: Lexicon
) -> Reading[float]:
    if count > 1:
        return again(Reason.TWO_VALUES)
    if broken:
        return again(Reason.IMPOSSIBLE)
    if any(item.sort is Sort.NOT_KNOWN for item in row):
        return again(Reason.NOT_KNOWN)
    if any(item.sort is Sort.NONE for item in row):
        return understood(0.0, number_words(Fraction(0), lexicon))
    return again(Reason.NOT_READ)


def _count(amount: Amount, row: tuple[Item, ...], lexicon: Lexicon) -> Reading[float]:
    value, words = float(amount.value), number_words(amount.value, lexicon)
    if row[0].is_mark("-") and len(row) > 1 and row[1].glued:
        return again(Reason.IMPOSSIBLE)
    if value > BIGGEST_COUNT:
        return again(Reason.TOO_BIG)
    sorts = {item.sort for item in row}
    if Sort.NOT in sorts or any(item.sort is Sort.NO for item in row[1:]):
        return again(Reason.NEGATED)
    if amount.slip or amount.odd or amount.foreign_mark:
        return confirm(value, words, Reason.SLIP)
    if sorts & {Sort.ROUGH, Sort.NOT_KNOWN, Sort.OF, Sort.RANGE}:
        return confirm(value, words, Reason.ROUGH)
    if amount.other is not None and amount.other > amount.value:
        return confirm(value, words, Reason.AMBIGUOUS)
    return understood(value, words)


_DULL = (Sort.FILLER, Sort.ARTICLE, Sort.GREETING, Sort.FARM)


def read_choice(text: str, names: Sequence[Sequence[str]], lexicon: Lexicon) -> Reading[int]:
    """The place (from 0) of the name that was meant: by its digit (from 1) or by a name.

    `names`: for each choice its name and other spellings. Near names are asked back.
    """
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    found = cut(fold(text))
    if not found:
        return again(Reason.EMPTY)
    numbers = [token for token in found if token.kind is Kind.NUMBER]
    folded = [[_name(spelling) for spelling in spellings] for spellings in names]
    said = " ".join(token.text for token in found if token.kind is not Kind.MARK)
    exact = [at for at, spellings in enumerate(folded) if said in spellings]
    if len(exact) == 1:
        return understood(exact[0], names[exact[0]][0])
    if numbers:
        place = _by_digit(numbers[0].text, len(numbers), names)
        return place if _alone(found, place, folded, lexicon) else again(Reason.NOT_READ)
    return _by_name(said, folded, names, lexicon)


def _alone(
    found: tuple[Token, ...], place: Reading[int], folded: list[list[str]], lexicon: Lexicon
) -> bool:
    """Whether a digit stands for a choice: "2 acres" answers another question, "2 sure" not."""
    own = {w for at in (place.value,) if at is not None for s in folded[at] for w in s.split()}
    words = tuple(token for token in found if token.kind is Kind.WORD)
    row = items(words, lexicon, (*_DULL, Sort.ORDINAL))
    return all(item.sort is not None or item.text in own for item in row)


def _name(spelling: str) -> str:
    return " ".join(t.text for t in cut(fold(spelling)) if t.kind is not Kind.MARK)


def _by_digit(digits: str, count: int, names: Sequence[Sequence[str]]) -> Reading[int]:
    if count > 1 or not digits.isdigit() or len(digits) > 4:
        return again(Reason.NOT_READ)
    place = int(digits) - 1
    if not 0 <= place < len(names):
        return again(Reason.IMPOSSIBLE)
    return understood(place, names[place][0])


def _by_name(
    said: str, folded: list[list[str]], names: Sequence[Sequence[str]], lexicon: Lexicon
) -> Reading[int]:
    row = items(cut(said), lexicon, (*NUMBER_SORTS, *_DULL))
    kept = " ".join(item.text for item in row if item.sort not in _DULL)
    spellings = {spelling: at for at, options in enumerate(folded) for spelling in options}
    inside = {at for spelling, at in spellings.items() if f" {spelling} " in f" {said} "}
    if len(inside) == 1:
        place = inside.pop()
        return understood(place, names[place][0])
    hit = nearest(
        kept.replace(" ", ""), {s.replace(" ", ""): at for s, at in spellings.items()}
    )
    if hit is None:
        number = amounts(row, lexicon)
        if (
            len(number) == 1
            and isinstance(number[0], Amount)
            and number[0].value.denominator == 1
        ):
            return _by_digit(str(number[0].value), 1, names)
        return again(Reason.NOT_READ)
    best, others = hit
    if others:
        close = tuple(Option(at, names[at][0]) for at in (best, *others))
        return again(Reason.AMBIGUOUS, close[:4])
    return understood(best, names[best][0])
