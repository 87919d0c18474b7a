"""Field areas: number and unit in any order and spelling, dimensions, several parts.

Outcomes: understood in square metres; read back where it is unusual (under 20 m2, from 40 ha)
or a unit's size is disputed; asked again where the unit is missing or two values stand there.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from assistant.agronomy.units import FAMILIES, LandUnit, Sure, land_unit, likely_units
from assistant.reading.echo import number_words, unit_words
from assistant.reading.fold import LONGEST_REPLY, Token, cut, fold, unslip
from assistant.reading.lexicon import Item, Lexicon, Sort, items
from assistant.reading.numbers import NUMBER_SORTS, Amount, Piece, amounts, is_broken
from assistant.reading.outcomes import Option, Reading, Reason, again, confirm, understood

SMALLEST_M2, SMALLEST_SURE_M2 = 1, 20
BIGGEST_SURE_M2, BIGGEST_M2 = 400_000, 100_000_000  # under 40 ha is sure; over 10,000 ha absurd
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
_FORGIVING = (Sort.UNIT, Sort.NUMBER)
_GLUE = frozenset({"x", "mx", "m", "by", "-", "/", "*", "ha", "m2", "%"})
_OTHER_THINGS = (Sort.PERCENT, Sort.OTHER_UNIT, Sort.MONTH, Sort.DAYS)


@dataclass(frozen=True)
class Found:
    """One area of a reply: its parts as typed, its size, and what is not sure about it."""

    parts: tuple[tuple[Fraction, str], ...]  # number, unit key
    m2: Fraction
    start: int  # places among the pieces
    end: int
    other_m2: Fraction | None = None
    other_number: Fraction | None = None
    doubt: Reason = Reason.NONE
    refusal: Reason = Reason.NONE
    options: tuple[tuple[Fraction, str], ...] = ()
    shows_m2: bool = False


@dataclass(frozen=True)
class _Row:
    """The pieces of a reply, and where in it we are."""

    pieces: tuple[Piece, ...]
    lexicon: Lexicon
    region: str | None

    def sort(self, at: int) -> Sort | None:
        piece = self.get(at)
        return piece.sort if isinstance(piece, Item) else None

    def get(self, at: int) -> Piece | None:
        return self.pieces[at] if 0 <= at < len(self.pieces) else None

    def amount(self, at: int) -> Amount | None:
        piece = self.get(at)
        return piece if isinstance(piece, Amount) else None

    def item(self, at: int, sort: Sort) -> Item | None:
        piece = self.get(at)
        return piece if isinstance(piece, Item) and piece.sort is sort else None

    def past(self, at: int, *sorts: Sort) -> int:
        """The first place from `at` on that is none of these sorts."""
        while self.sort(at) in sorts and self.sort(at) is not None:
            at += 1
        return at


def read_area(text: str, lexicon: Lexicon, region: str | None = None) -> Reading[float]:
    """A field's area [m2]. `region`: ISO 3166 code that settles the size of local units."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    folded, slipped = unslip(fold(text))
    reading = read_area_tokens(cut(folded), lexicon, region)
    if slipped and reading.value is not None and reading.reason is Reason.NONE:
        return confirm(reading.value, reading.words, Reason.SLIP)
    return reading


def read_area_tokens(
    found: Sequence[Token], lexicon: Lexicon, region: str | None
) -> Reading[float]:
    """As `read_area`, from tokens."""
    if not found:
        return again(Reason.EMPTY)
    row = items(tuple(found), lexicon, _SORTS, _FORGIVING)
    if is_broken(row, _GLUE | {item.text for item in row if item.sort is Sort.UNIT}):
        return again(Reason.NOT_READ)
    pieces = _tidy(amounts(row, lexicon, spaced=True))
    return _judge(_Row(pieces, lexicon, region))


def area_spans(found: Sequence[Token], lexicon: Lexicon, region: str | None) -> frozenset[int]:
    """The places of the tokens that surely speak of an area, since they name its unit."""
    row = items(tuple(found), lexicon, _SORTS, _FORGIVING)
    pieces = _tidy(amounts(row, lexicon, spaced=True))
    areas = _find(_Row(pieces, lexicon, region))
    return frozenset(
        token.at
        for area in areas
        for piece in pieces[area.start : area.end]
        for item in (piece.items if isinstance(piece, Amount) else (piece,))
        for token in item.tokens
    )


def _tidy(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """Without the words that say nothing about the number."""
    dull = (Sort.FILLER, Sort.FARM, Sort.GREETING, Sort.ABOUT)
    return tuple(p for p in pieces if not (isinstance(p, Item) and p.sort in dull))


def _find(row: _Row) -> list[Found]:
    """Every area with a unit, in order."""
    found: list[Found] = []
    at = 0
    while at < len(row.pieces):
        hit = _first(row, at, (_sides_at, _number_unit_at, _unit_number_at, _one_unit_at))
        if hit is None:
            at += 1
            continue
        hit = _half_after(row, hit)
        found.append(hit)
        at = hit.end
    return _joined(row, found)


def _first(
    row: _Row, at: int, readers: Sequence[Callable[[_Row, int], Found | None]]
) -> Found | None:
    return next((hit for read in readers if (hit := read(row, at))), None)


def _sides_at(row: _Row, at: int) -> Found | None:
    """50 x 20 m, 50 m by 20 m, 50 by 20 (metres are likely, and read back)."""
    first = row.amount(at)
    if first is None:
        return None
    first_length = row.item(at + 1, Sort.LENGTH)
    by = at + 1 + (first_length is not None)
    second = row.amount(by + 1)
    if second is None or not _is_by(row.get(by)):
        return None
    last_length = row.item(by + 2, Sort.LENGTH)
    end = by + 2 + (last_length is not None)
    return _sides(row, at, end, (first, second), (first_length, last_length))


def _is_by(piece: Piece | None) -> bool:
    return isinstance(piece, Item) and (piece.sort is Sort.BY or piece.is_mark("*"))


def _sides(
    row: _Row,
    at: int,
    end: int,
    sides: tuple[Amount, Amount],
    lengths: tuple[Item | None, Item | None],
) -> Found:
    keys = {Fraction(item.key) for item in lengths if item is not None}
    metres = keys.pop() if keys else Fraction(1)
    m2 = sides[0].value * sides[1].value * metres * metres
    refusal, doubt = Reason.NONE, Reason.NONE
    if keys or row.sort(end) is Sort.UNMEASURED:
        refusal = Reason.UNMEASURED_UNIT
    unit = row.item(end, Sort.UNIT)
    if unit is not None and unit.key not in ("m2", "sqft"):
        refusal = Reason.AMBIGUOUS
    if _is_by(row.get(end)):
        refusal = Reason.TWO_VALUES
    if all(length is None for length in lengths):
        doubt = Reason.MISSING_UNIT
    if unit is not None and unit.key == "sqft" and not any(lengths):
        m2 *= Fraction(3048, 10000) ** 2
    if any(s.slip or s.odd or s.other is not None for s in sides):
        doubt = Reason.SLIP
    m2 = Fraction(round(m2 * 100), 100)
    return Found(((m2, "m2"),), m2, at, end + (unit is not None), doubt=doubt, refusal=refusal)


def _number_unit_at(row: _Row, at: int) -> Found | None:
    """2 acres, half of an acre, 2ha."""
    amount = row.amount(at)
    if amount is None:
        return None
    spot = row.past(at + 1, Sort.ARTICLE)
    unit = row.item(spot, Sort.UNIT)
    return _area(row, amount, unit, at, spot + 1) if unit else None


def _unit_number_at(row: _Row, at: int) -> Found | None:
    """Ekari 2, ha 0.4: the unit first, where the number has no unit of its own after it."""
    unit = row.item(at, Sort.UNIT)
    if unit is None or "after" in unit.key:
        return None
    spot = at + 1 + (1 if _is_mark(row.get(at + 1), ":=-") else 0)
    amount = row.amount(spot)
    if amount is None:
        return None
    after = row.past(spot + 1, Sort.ARTICLE)
    if row.sort(after) in (Sort.UNIT, Sort.LENGTH, *_OTHER_THINGS):
        return None
    return _area(row, amount, unit, at, spot + 1)


def _one_unit_at(row: _Row, at: int) -> Found | None:
    """An acre."""
    article = row.item(at, Sort.ARTICLE)
    if article is None or not article.key:
        return None
    unit = row.item(at + 1, Sort.UNIT)
    if unit is None or row.amount(at - 1) is not None:
        return None
    one = Amount(Fraction(1), (), article=True)
    return _area(row, one, unit, at, at + 2)


def _is_mark(piece: Piece | None, marks: str) -> bool:
    return isinstance(piece, Item) and piece.is_mark(marks)


def _area(row: _Row, amount: Amount, unit: Item, at: int, end: int) -> Found:
    """The area of a number and a unit word, which may stand for several units."""
    keys = [key for key in unit.key.split() if key != "after"]
    sized = [u for key in keys if (u := land_unit(key, row.region))]
    number = amount.value
    if not sized:
        return Found((), Fraction(0), at, end, refusal=Reason.REGION_UNIT)
    if len(sized) > 1:
        options = tuple((number, u.key) for u in sized)
        return Found((), Fraction(0), at, end, refusal=Reason.AMBIGUOUS, options=options)
    land = sized[0]
    found = Found(((number, land.key),), number * land.m2, at, end, doubt=_doubt(amount, unit))
    if amount.other is not None:
        found = _by_mark(found, amount, land)
    if land.sure in (Sure.DISPUTED, Sure.MEMORY):
        return replace(found, shows_m2=True, doubt=found.doubt or Reason.UNUSUAL)
    return replace(found, shows_m2=land.region != "")


def _doubt(amount: Amount, unit: Item) -> Reason:
    if amount.slip:
        return Reason.SLIP
    if unit.misspelt and unit.others:
        return Reason.MISSPELT
    if amount.ratio and _is_odd_ratio(amount.ratio):
        return Reason.AMBIGUOUS
    return Reason.NONE


def _is_odd_ratio(ratio: tuple[Fraction, Fraction]) -> bool:
    """2/3 may be two or three, 11/2 may be 1 1/2; 1/2, 1/4 and 3/4 are plain."""
    top, bottom = ratio
    return not (top == 1 and bottom <= 16) and ratio != (Fraction(3), Fraction(4))


def _by_mark(found: Found, amount: Amount, land: LandUnit) -> Found:
    """1.500 and 1,500: the language's own reading where only it makes a field, else a question."""
    other = amount.other or Fraction(0)
    other_m2 = other * land.m2
    options = ((amount.value, land.key), (other, land.key))
    if amount.odd:
        return replace(found, refusal=Reason.AMBIGUOUS, options=options)
    own_fits, other_fits = _fits(found.m2), _fits(other_m2)
    is_grouped = amount.value > other
    if own_fits and (not other_fits or (is_grouped and not amount.foreign_mark)):
        return found
    if is_grouped and not amount.foreign_mark:
        return replace(found, doubt=Reason.AMBIGUOUS, options=options)
    return replace(found, refusal=Reason.AMBIGUOUS, options=options)


def _fits(m2: Fraction) -> bool:
    return SMALLEST_SURE_M2 <= m2 < BIGGEST_SURE_M2


def _half_after(row: _Row, found: Found) -> Found:
    """2 acres and a half, ekari mbili na nusu, hai mau ruoi."""
    if len(found.parts) != 1 or found.refusal:
        return found
    number, key = found.parts[0]
    spot = row.past(found.end, Sort.JOIN, Sort.ARTICLE)
    amount, half = row.amount(spot), row.item(found.end, Sort.AND_HALF)
    part = Fraction(half.key) if half else Fraction(0)
    if half is None:
        if amount is None or not (amount.is_fraction and amount.is_words) or amount.value >= 1:
            return found
        if row.sort(row.past(spot + 1, Sort.ARTICLE)) is Sort.UNIT:
            return found
        part = amount.value
    if number.denominator != 1:
        return found
    size = found.m2 / number
    end = spot + 1 if half is None else found.end + 1
    return replace(found, parts=((number + part, key),), m2=size * (number + part), end=end)


def _joined(row: _Row, found: list[Found]) -> list[Found]:
    """1 bigha 5 katha as one area, where the second unit is a part of the first."""
    merged: list[Found] = []
    for area in found:
        last = merged[-1] if merged else None
        if last and row.past(last.end, Sort.JOIN) == area.start and _is_part(last, area):
            merged[-1] = replace(
                last, parts=last.parts + area.parts, m2=last.m2 + area.m2, end=area.end
            )
        else:
            merged.append(area)
    return merged


def _is_part(big: Found, small: Found) -> bool:
    if not big.parts or not small.parts or big.doubt or small.doubt:
        return False
    (number, key), (part, part_key) = big.parts[-1], small.parts[0]
    if key == part_key:
        return number.denominator == 1 and part < 1
    related = any(
        key in family and part_key in family and family.index(key) < family.index(part_key)
        for family in FAMILIES
    )
    return related and small.m2 < big.parts[-1][0] ** 0 * big.m2 / max(
        number, Fraction(1, 1000)
    )


def _judge(row: _Row) -> Reading[float]:
    """The reading of a whole reply."""
    areas = _find(row)
    inside = {at for area in areas for at in range(area.start, area.end)}
    loose = [at for at in range(len(row.pieces)) if at not in inside]
    if _is_negative(row):
        return again(Reason.IMPOSSIBLE)
    if not areas:
        return _without_unit(row)
    return _with_units(row, areas, [at for at in loose if _is_bare(row, at)])


def _is_negative(row: _Row) -> bool:
    """-2 acres: a minus glued to the number and to nothing before it."""
    for at in range(len(row.pieces)):
        amount = row.amount(at)
        if amount and amount.glued and _is_mark(row.get(at - 1), "-"):
            before = row.get(at - 2)
            if (
                before is None
                or not row.pieces[at - 1].glued
                and not isinstance(before, Amount)
            ):
                return True
    return False


def _is_bare(row: _Row, at: int) -> bool:
    """A number that is about nothing that we know."""
    piece = row.pieces[at]
    if isinstance(piece, Item):
        return piece.is_digits
    if row.sort(at + 1) in _OTHER_THINGS or row.sort(at - 1) in (Sort.MONTH, Sort.PERCENT):
        return False
    return not _is_mark(row.get(at + 1), "%")


def _with_units(row: _Row, areas: list[Found], bare: list[int]) -> Reading[float]:
    refused = next((a for a in areas if a.refusal), None)
    if refused is not None and (len(areas) == 1 or refused.refusal is not Reason.REGION_UNIT):
        return again(refused.refusal, _options(row, refused.options))
    sized = [a for a in areas if not a.refusal]
    last = sized[-1]
    if len(sized) > 1 and not _all_same(sized):
        if _is_corrected(row, sized[-2].end, last.start):
            return _answer(row, last, Reason.CORRECTED)
        return again(Reason.TWO_VALUES, _options(row, _one_part(sized)))
    return _with_loose(row, sized[0], last, bare)


def _one_part(areas: list[Found]) -> tuple[tuple[Fraction, str], ...]:
    return tuple(a.parts[0] for a in areas if len(a.parts) == 1)


def _all_same(areas: list[Found]) -> bool:
    sizes = [a.m2 for a in areas]
    return max(sizes) - min(sizes) <= _SAME * max(sizes)


def _is_corrected(row: _Row, start: int, end: int) -> bool:
    return any(row.sort(at) in (Sort.NO, Sort.SORRY) for at in range(start, end))


def _with_loose(row: _Row, area: Found, last: Found, bare: list[int]) -> Reading[float]:
    """One area, and numbers beside it that have no unit."""
    if _is_negated(row, area):
        return again(Reason.NEGATED)
    if not bare:
        return _answer(row, area, _mood(row, area))
    before = [at for at in bare if at < area.start]
    after = [at for at in bare if at >= last.end]
    if after and _is_corrected(row, last.end, after[-1]) and len(bare) == 1:
        return _corrected(row, area, after[-1])
    if before and _is_corrected(row, before[-1], area.start) and len(bare) == 1:
        return _answer(row, area, Reason.CORRECTED)
    if any(_touches(row, at, area) for at in bare):
        return again(Reason.TWO_VALUES)
    return _answer(row, area, Reason.TWO_VALUES)


def _touches(row: _Row, at: int, area: Found) -> bool:
    """Whether only a dash, a comma or an "or" stands between a number and the area."""
    low, high = (at + 1, area.start) if at < area.start else (area.end, at)
    return all(
        row.sort(i) in (Sort.RANGE, Sort.JOIN) or _is_mark(row.get(i), "-/,~.&+")
        for i in range(low, high)
    )


def _corrected(row: _Row, area: Found, at: int) -> Reading[float]:
    """2 acres, no 3: the new number with the old unit."""
    amount = row.amount(at)
    if amount is None or len(area.parts) != 1 or amount.other is not None:
        return again(Reason.TWO_VALUES)
    number, key = area.parts[0]
    mended = replace(
        area,
        parts=((amount.value, key),),
        m2=area.m2 / number * amount.value,
        doubt=Reason.NONE,
    )
    return _answer(row, mended, Reason.CORRECTED)


def _is_negated(row: _Row, area: Found) -> bool:
    """Not 2 acres; 2 acres no. A "no" that opens the reply only corrects what went before."""
    for at in range(len(row.pieces)):
        sort = row.sort(at)
        if sort is Sort.NOT:
            return True
        if sort is Sort.NO and at >= area.end:
            return True
    return False


def _mood(row: _Row, area: Found) -> Reason:
    """What the words around the area leave in doubt."""
    if any(row.sort(at) is Sort.ROUGH for at in range(len(row.pieces))):
        return Reason.ROUGH
    if any(row.sort(at) is Sort.NO for at in range(1, area.start)):
        return Reason.CORRECTED
    if any(
        _is_mark(piece, "?<>") or row.sort(at) is Sort.NOT_KNOWN
        for at, piece in enumerate(row.pieces)
    ):
        return Reason.ROUGH
    return Reason.NONE


def _answer(row: _Row, area: Found, doubt: Reason) -> Reading[float]:
    """The reading of one area, with the checks on its size."""
    if area.m2 <= 0:
        return again(Reason.IMPOSSIBLE)
    if not SMALLEST_M2 <= area.m2 <= BIGGEST_M2:
        return again(Reason.TOO_SMALL if area.m2 < SMALLEST_M2 else Reason.TOO_BIG)
    value, words = float(area.m2), area_words(area, row.lexicon)
    if area.m2 < SMALLEST_SURE_M2 or area.m2 >= BIGGEST_SURE_M2:
        size = Reason.TOO_SMALL if area.m2 < SMALLEST_SURE_M2 else Reason.TOO_BIG
        return confirm(value, words, size, _options(row, area.options))
    reason = area.doubt if area.doubt is not Reason.NONE else doubt
    if reason is not Reason.NONE:
        return confirm(value, words, reason, _options(row, area.options))
    return understood(value, words)


def area_words(area: Found, lexicon: Lexicon) -> str:
    """The area as it was typed; with square metres where a local unit was used."""
    typed = " ".join(unit_words(number, key, lexicon) for number, key in area.parts)
    if not area.shows_m2:
        return typed
    m2 = Fraction(round(area.m2)) if area.m2 >= 100 else Fraction(round(area.m2 * 10), 10)
    return f"{typed} ({unit_words(m2, 'm2', lexicon)})"


def _options(row: _Row, choices: Sequence[tuple[Fraction, str]]) -> tuple[Option[float], ...]:
    """Likely readings that make a field."""
    made = []
    for number, key in choices:
        land = land_unit(key, row.region)
        if land is not None and _fits(number * land.m2):
            made.append(Option(float(number * land.m2), unit_words(number, key, row.lexicon)))
    return tuple(made)


def _without_unit(row: _Row) -> Reading[float]:
    """No unit that we know: what to ask for next."""
    numbers = [at for at in range(len(row.pieces)) if row.amount(at) or _is_bare(row, at)]
    sorts = {row.sort(at) for at in range(len(row.pieces))}
    if Sort.NOT_KNOWN in sorts and not numbers:
        return again(Reason.NOT_KNOWN)
    if not numbers:
        has_unit = Sort.UNIT in sorts or Sort.LENGTH in sorts
        return again(Reason.MISSING_NUMBER if has_unit else Reason.NOT_READ)
    if Sort.UNMEASURED in sorts:
        return again(Reason.UNMEASURED_UNIT)
    lengths = [at for at in numbers if row.sort(at + 1) is Sort.LENGTH]
    if lengths:
        return _lengths(row, lengths, numbers)
    if all(not _is_bare(row, at) for at in numbers):
        return again(Reason.NOT_READ)
    if len(numbers) > 1:
        return again(Reason.TWO_VALUES)
    return _bare_number(row, numbers[0])


def _lengths(row: _Row, lengths: list[int], numbers: list[int]) -> Reading[float]:
    """50 m long and 20 m wide is a field; 50 m alone is none."""
    if len(lengths) == 2 and len(numbers) == 2:
        first, second = (row.amount(at) for at in lengths)
        one, two = (row.item(at + 1, Sort.LENGTH) for at in lengths)
        is_range = any(
            row.sort(at) is Sort.RANGE or _is_mark(row.get(at), "-") for at in range(*lengths)
        )
        if first and second and one and two and one.key == two.key and not is_range:
            sides = _sides(row, lengths[0], lengths[1] + 2, (first, second), (one, two))
            return _answer(row, sides, Reason.AMBIGUOUS)
    if len(numbers) == 1 and (amount := row.amount(numbers[0])):
        return again(Reason.LENGTH_ONLY, _options(row, ((amount.value, "m2"),)))
    return again(Reason.TWO_VALUES)


def _bare_number(row: _Row, at: int) -> Reading[float]:
    """2: the likely units are offered as digits."""
    amount = row.amount(at)
    if amount is None or row.pieces is None:
        return again(Reason.NOT_READ)
    if amount.value <= 0:
        return again(Reason.IMPOSSIBLE)
    after = row.get(at + 1)
    strange = isinstance(after, Item) and after.is_strange
    choices = tuple((amount.value, key) for key in likely_units(row.region))
    reason = Reason.UNKNOWN_UNIT if strange else Reason.MISSING_UNIT
    return again(reason, _options(row, choices))


__all__ = ["area_spans", "number_words", "read_area", "read_area_tokens"]
