"""Field areas [m2]: understood, read back where unusual, asked again where not sure.

Read back: under 20 m2, from 40 ha, a unit whose size is disputed, a correction, a slip of the
finger. Asked again: no unit, a unit without a measure, two values, a minus, a "not".
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from functools import lru_cache

from assistant.agronomy.units import Land
from assistant.reading.area_parts import (
    ABOUT_ELSE,
    SMALLEST_SURE_M2,
    Choice,
    FoundArea,
    find_areas,
    fits,
    sides,
)
from assistant.reading.numbers import (
    NUMBER_SORTS,
    Amount,
    Piece,
    amounts,
    is_broken,
    number_items,
    tokens_of,
)
from assistant.reading.outcomes import (
    Option,
    Reading,
    Reason,
    again,
    confirm,
    slipped,
    understood,
)
from assistant.reading.pieces import Row
from assistant.reading.text.echo import unit_words
from assistant.reading.text.fold import LONGEST_REPLY, TEXTS_IN_HAND, Token
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.spot import Item

SMALLEST_M2 = 1
BIGGEST_M2 = 100_000_000  # 10,000 ha: no farmer's field
_SAME = Fraction(3, 100)  # two areas this near are one, told twice

_SORTS = (
    Sort.OTHER_UNIT,
    Sort.UNIT,
    Sort.LENGTH,
    Sort.BY,
    Sort.PERCENT,
    *NUMBER_SORTS,
    Sort.UNMEASURED,
    Sort.NOT_KNOWN,
    Sort.SORRY,
    Sort.NO,
    Sort.NOT,
    Sort.ROUGH,
    Sort.RANGE,
    Sort.ABOUT,
    Sort.MONTH,
    Sort.DAYS,
    Sort.ARTICLE,
    Sort.FARM,
    Sort.FILLER,
    Sort.GREETING,
)
_DULL = (Sort.FILLER, Sort.FARM, Sort.GREETING, Sort.ABOUT)
_THINGS = (Sort.FARM, Sort.UNMEASURED)
_MARKS = "-/*(),:;+&~=%x."


@lru_cache(maxsize=TEXTS_IN_HAND)
def read_area(text: str, lexicon: Lexicon, region: str | None = None) -> Reading[float]:
    """A field's area [m2]. `region`: ISO 3166 code that settles the size of local units."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    found, has_slip = lexicon.mend(text)
    return slipped(read_area_tokens(found, lexicon, region), has_slip)


def read_area_tokens(
    found: Sequence[Token], lexicon: Lexicon, region: str | None
) -> Reading[float]:
    """As `read_area`, from tokens."""
    if not found:
        return again(Reason.EMPTY)
    row = _row(found, lexicon)
    if row is None:
        return again(Reason.NOT_READ)
    if row.has_sign():
        return again(Reason.IMPOSSIBLE)
    land = Land(region, lexicon.own_units)
    areas = find_areas(row, land)
    reader = _Judge(row, land)
    return reader.of_areas(areas) if areas else reader.of_numbers(row.numbers())


def area_spans(found: Sequence[Token], lexicon: Lexicon, region: str | None) -> frozenset[int]:
    """The places of the tokens that surely speak of an area, since they name its unit."""
    row = _row(found, lexicon)
    areas = find_areas(row, Land(region, lexicon.own_units)) if row else []
    pieces = [piece for a in areas if row for piece in row.pieces[a.start : a.end]]
    return frozenset(token.at for piece in pieces for token in tokens_of(piece))


def _row(found: Sequence[Token], lexicon: Lexicon) -> Row | None:
    """The reply's pieces without the words that say nothing; None where a number is broken."""
    row = number_items(found, lexicon, _SORTS, (Sort.UNIT,))
    if is_broken(row, _MARKS):
        return None
    kept: list[Piece] = []
    pieces = amounts(row, lexicon, spaced=True)
    for at, piece in enumerate(pieces):
        is_dull = isinstance(piece, Item) and (
            piece.sort in _DULL or _is_verb(piece, kept, lexicon)
        )
        if not is_dull and not _is_article(pieces, at, lexicon):
            kept.append(_not_paces(piece, kept, lexicon))
    return Row(tuple(kept), lexicon)


def _is_verb(piece: Item, before: Sequence[Piece], lexicon: Lexicon) -> bool:
    """Whether what could be a unit is a word of a sentence: "it has 3 goats"."""
    behind_number = bool(before) and isinstance(before[-1], Amount)
    may_be = piece.sort is Sort.UNIT and lexicon.has(Sort.UNIT_OR_VERB, piece.phrase)
    return may_be and not behind_number


def _is_article(pieces: Sequence[Piece], at: int, lexicon: Lexicon) -> bool:
    """Whether a "one" only names a thing beside the area: uma machamba de 2 ha."""
    piece = pieces[at]
    if not isinstance(piece, Amount) or piece.value != 1 or not piece.is_words:
        return False
    others = any(isinstance(other, Amount) for other in pieces if other is not piece)
    after = pieces[at + 1] if at + 1 < len(pieces) else None
    names = isinstance(after, Item) and after.sort in _THINGS
    return others and names and lexicon.has(Sort.ARTICLE, piece.items[0].phrase)


def _not_paces(piece: Piece, before: list[Piece], lexicon: Lexicon) -> Piece:
    """French pas: paces after a number, else "not"."""
    if isinstance(piece, Amount) or piece.sort is not Sort.UNMEASURED:
        return piece
    counted = bool(before) and isinstance(before[-1], Amount)
    is_not = not counted and lexicon.has(Sort.NOT, piece.phrase)
    return replace(piece, sort=Sort.NOT) if is_not else piece


class _Judge:
    """The reading of one row of pieces."""

    def __init__(self, row: Row, land: Land) -> None:
        self.row, self.land = row, land

    def of_areas(self, areas: list[FoundArea]) -> Reading[float]:
        """One area, the same twice, a correction, or a question."""
        sized = [area for area in areas if not area.refusal]
        refused = [area for area in areas if area.refusal]
        local_twice = bool(sized) and all(a.refusal is Reason.REGION_UNIT for a in refused)
        if refused and not local_twice:
            return again(refused[0].refusal, self._options(refused[0].choices))
        last = sized[-1]
        if len(sized) == 1 or _all_same(sized):
            return self._beside(sized[0], last.end, refused)
        if self._is_corrected(sized[-2].end, last.start):
            return self._answer(last, Reason.CORRECTED)
        parts = tuple(area.parts[0] for area in sized if len(area.parts) == 1)
        return again(Reason.TWO_VALUES, self._options(parts))

    def _is_corrected(self, start: int, end: int) -> bool:
        return bool(self.row.sorts(start, end) & {Sort.NO, Sort.SORRY})

    def _beside(self, area: FoundArea, end: int, refused: list[FoundArea]) -> Reading[float]:
        """One area, and the numbers beside it that have no unit."""
        bare = [at for at in self.row.numbers() if not area.start <= at < end]
        bare = [at for at in bare if self._is_bare(at)]
        if len(bare) == 1 and bare[0] >= end and self._is_corrected(end, bare[0]):
            return self._corrected(area, bare[0])
        if self._is_negated(area, end):
            return again(Reason.NEGATED)
        if not bare:
            return self._answer(area, Reason.TWO_VALUES if refused else self._mood(area))
        if len(bare) == 1 and bare[0] < area.start and self._is_corrected(bare[0], area.start):
            return self._answer(area, Reason.CORRECTED)
        if any(self._touches(at, area, end) for at in bare):
            return again(Reason.TWO_VALUES)
        return self._answer(area, Reason.TWO_VALUES)

    def _is_bare(self, at: int) -> bool:
        """Whether a number is about nothing that we know."""
        row = self.row
        if row.unread_digits(at):
            return True
        spot = row.after(at + 1, Sort.ARTICLE)
        if row.sort(spot) in ABOUT_ELSE or row.mark(at + 1, "%"):
            return False
        return row.sort(at - 1) not in (Sort.MONTH, Sort.PERCENT)

    def _touches(self, at: int, area: FoundArea, end: int) -> bool:
        """Whether only a dash, a comma or an "or" stands between a number and the area."""
        low, high = (at + 1, area.start) if at < area.start else (end, at)
        return all(
            self.row.sort(i) in (Sort.RANGE, Sort.ROUGH, Sort.JOIN)
            or self.row.mark(i, "-/,~.&+")
            for i in range(low, high)
        )

    def _corrected(self, area: FoundArea, at: int) -> Reading[float]:
        """2 acres, no 3: the new number with the old unit."""
        amount = self.row.amount(at)
        if amount is None or len(area.parts) != 1 or amount.other is not None:
            return again(Reason.TWO_VALUES)
        number, key = area.parts[0]
        m2 = area.m2 / number * amount.value if number else Fraction(0)
        mended = replace(area, parts=((amount.value, key),), m2=m2, doubt=Reason.NONE)
        return self._answer(mended, Reason.CORRECTED)

    def _is_negated(self, area: FoundArea, end: int) -> bool:
        """Not 2 acres; 2 acres no. A "no" that opens the reply corrects what went before."""
        if self.row.sort(area.start - 1) is Sort.NOT:
            return True
        return bool(self.row.sorts(end) & {Sort.NO, Sort.NOT})

    def _mood(self, area: FoundArea) -> Reason:
        """What the words around the area leave in doubt."""
        sorts = self.row.sorts()
        asks = any(self.row.mark(at, "?<>") for at in range(len(self.row.pieces)))
        if Sort.SORRY in self.row.sorts(area.end):
            return Reason.CORRECTED
        if asks or sorts & {Sort.ROUGH, Sort.NOT_KNOWN, Sort.NOT}:
            return Reason.ROUGH
        alone = len(area.parts) == 1
        if alone and self.row.has_loose_sign(area.start - 1, area.end):
            return Reason.UNUSUAL
        unclear = self.row.opens_with_not() or Sort.NO in self.row.sorts(1, area.start)
        return Reason.CORRECTED if unclear else Reason.NONE

    def _answer(self, area: FoundArea, doubt: Reason) -> Reading[float]:
        """The reading of one area, with the checks on its size."""
        if area.m2 <= 0:
            return again(Reason.IMPOSSIBLE)
        if not SMALLEST_M2 <= area.m2 <= BIGGEST_M2:
            return again(Reason.TOO_SMALL if area.m2 < SMALLEST_M2 else Reason.TOO_BIG)
        reason = area.doubt or doubt
        if not fits(area.m2):
            reason = Reason.TOO_SMALL if area.m2 < SMALLEST_SURE_M2 else Reason.TOO_BIG
        value, words = float(area.m2), _words(area, self.row.lexicon)
        if reason:
            return confirm(value, words, reason, self._options(area.choices))
        return understood(value, words)

    def _options(self, choices: Sequence[Choice]) -> tuple[Option[float], ...]:
        """Likely readings that make a field."""
        made = []
        for number, key in choices:
            unit = self.land.unit(key)
            if unit is not None and fits(number * unit.m2):
                words = unit_words(number, key, self.row.lexicon)
                made.append(Option(float(number * unit.m2), words))
        return tuple(made)

    # --- no unit that we know ----------------------------------------------------------------

    def of_numbers(self, numbers: list[int]) -> Reading[float]:
        """What to ask for, where no area has a unit."""
        sorts = self.row.sorts()
        if not numbers:
            if Sort.NOT_KNOWN in sorts:
                return again(Reason.NOT_KNOWN)
            has_unit = bool(sorts & {Sort.UNIT, Sort.LENGTH})
            return again(Reason.MISSING_NUMBER if has_unit else Reason.NOT_READ)
        if Sort.UNMEASURED in sorts:
            return again(Reason.UNMEASURED_UNIT)
        if any(self.row.sort(at + 1) is Sort.LENGTH for at in numbers):
            return self._of_lengths(numbers)
        bare = [at for at in numbers if self._is_bare(at)]
        if len(bare) != 1:
            return again(Reason.TWO_VALUES if bare else Reason.NOT_READ)
        return self._of_bare(bare[0])

    def _of_lengths(self, numbers: list[int]) -> Reading[float]:
        """50 m long and 20 m wide is a field; 50 m alone is none."""
        first, last = numbers[0], numbers[-1]
        pair = self.row.amount(first), self.row.amount(last)
        keys = [i.key for at in numbers if (i := self.row.item(at + 1, Sort.LENGTH))]
        if pair[0] and len(numbers) == 1:
            return again(Reason.LENGTH_ONLY, self._options(((pair[0].value, "m2"),)))
        is_range = Sort.RANGE in self.row.sorts(first, last) or any(
            self.row.mark(at, "-") for at in range(first, last)
        )
        if not (pair[0] and pair[1]) or len(numbers) != 2 or len(keys) != 2 or is_range:
            return again(Reason.TWO_VALUES)
        if keys[0] != keys[1]:
            return again(Reason.AMBIGUOUS)
        area = sides(self.row, first, last + 2, (pair[0], pair[1]), keys[0])
        return self._answer(area, Reason.AMBIGUOUS)

    def _of_bare(self, at: int) -> Reading[float]:
        """2: the likely units are offered as digits."""
        amount = self.row.amount(at)
        if amount is None:
            return again(Reason.NOT_READ)
        if amount.value <= 0:
            return again(Reason.IMPOSSIBLE)
        choices = tuple((amount.value, key) for key in self.land.likely)
        reason = Reason.UNKNOWN_UNIT if self.row.strange(at + 1) else Reason.MISSING_UNIT
        return again(reason, self._options(choices))


def _all_same(areas: list[FoundArea]) -> bool:
    sizes = [area.m2 for area in areas]
    return max(sizes) - min(sizes) <= _SAME * max(sizes)


def _words(area: FoundArea, lexicon: Lexicon) -> str:
    """The area as it was typed; with square metres where a local unit was used."""
    typed = " ".join(unit_words(number, key, lexicon) for number, key in area.parts)
    if not area.shows_m2:
        return typed
    m2 = Fraction(round(area.m2)) if area.m2 >= 100 else Fraction(round(area.m2 * 10), 10)
    return f"{typed} ({unit_words(m2, 'm2', lexicon)})"
