"""The areas that a reply names: number and unit in any order, sides, parts of one area."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

from assistant.agronomy.units import FAMILIES, SQ_FOOT_M2, Land, LandUnit, Sure
from assistant.reading.numbers import Amount, may_be_number
from assistant.reading.outcomes import Reason
from assistant.reading.pieces import Row
from assistant.reading.text.lexicon import Sort
from assistant.reading.text.spot import Item

SMALLEST_SURE_M2 = 20
BIGGEST_SURE_M2 = 400_000  # from 40 ha on a field is read back
_FEWEST_ARES = 10  # where "are" is a rare word, "2 ares" is likelier 2 acres misspelt
ABOUT_ELSE = (Sort.PERCENT, Sort.OTHER_UNIT, Sort.MONTH, Sort.DAYS)

Choice = tuple[Fraction, str]  # number, unit key


@dataclass(frozen=True)
class FoundArea:
    """One area of a reply: its parts as typed, its size, and what is not sure about it."""

    start: int  # places among the pieces
    end: int
    parts: tuple[Choice, ...] = ()
    m2: Fraction = Fraction(0)
    doubt: Reason = Reason.NONE  # to be read back
    refusal: Reason = Reason.NONE  # to be asked again
    choices: tuple[Choice, ...] = ()  # likely readings
    shows_m2: bool = False


def fits(m2: Fraction) -> bool:
    """Whether a field of this size needs no question."""
    return SMALLEST_SURE_M2 <= m2 < BIGGEST_SURE_M2


def find_areas(row: Row, land: Land) -> list[FoundArea]:
    """Every area with a unit, in order."""
    found: list[FoundArea] = []
    at = 0
    while at < len(row.pieces):
        hit = next((hit for read in _READERS if (hit := read(row, at, land))), None)
        if hit is None:
            at += 1
            continue
        hit = _half_after(row, hit)
        if _may_go_on(row, hit):
            hit = replace(hit, doubt=hit.doubt or Reason.SLIP)
        found.append(hit)
        at = hit.end
    return _joined(row, found)


def _may_go_on(row: Row, hit: FoundArea) -> bool:
    """Whether a half may be meant by what follows or by the end of the unit: un hectare et dmi;
    um hectare e maio, where a word of the list stands for another."""
    last = row.get(hit.end - 1)
    if isinstance(last, Item) and len(last.tokens) > 1 and may_be_number(last, row.lexicon):
        return True
    after = row.get(row.after(hit.end, Sort.JOIN, Sort.ARTICLE))
    if not isinstance(after, Item):
        return False
    joined = row.sort(hit.end) is Sort.JOIN and after.tokens[0].is_word
    return may_be_number(replace(after, misspelt=True) if joined else after, row.lexicon)


def sides(
    row: Row, at: int, end: int, pair: tuple[Amount, Amount], length: str | None
) -> FoundArea:
    """The area of two sides; without a unit metres are likely, and read back."""
    metres = Fraction(length) if length else Fraction(1)
    m2 = pair[0].value * pair[1].value * metres**2
    unit, doubt, refusal = row.item(end, Sort.UNIT), Reason.NONE, Reason.NONE
    if unit is not None and length is None:
        m2 *= SQ_FOOT_M2 if unit.key == "sqft" else 1
        refusal = Reason.NONE if unit.key in ("m2", "sqft") else Reason.AMBIGUOUS
    if unit is None and length is None:
        doubt = Reason.MISSING_UNIT
    if any(side.is_slip or side.is_odd or side.other is not None for side in pair):
        doubt = Reason.SLIP
    if _is_by(row, end):
        refusal = Reason.TWO_VALUES
    m2 = Fraction(round(m2 * 100), 100)
    stop = end + (unit is not None)
    return FoundArea(at, stop, ((m2, "m2"),), m2, doubt=doubt, refusal=refusal)


def _is_by(row: Row, at: int) -> bool:
    return row.sort(at) is Sort.BY or row.mark(at, "*")


def _sides_at(row: Row, at: int, land: Land) -> FoundArea | None:
    """50 x 20 m, 50 m by 20 m, mita 50 kwa 20."""
    opening = row.item(at, Sort.LENGTH) or row.item(at, Sort.UNMEASURED)
    start, first = at, row.amount(at + (opening is not None))
    at += opening is not None
    first_unit = _side_unit(row, at + 1)
    by = row.after(at + 1 + (first_unit is not None), Sort.ARTICLE)
    middle = _side_unit(row, by + 1)
    place = by + 1 + (middle is not None)
    second = row.amount(place)
    if first is None or second is None or not _is_by(row, by):
        return None
    last_unit = _side_unit(row, place + 1)
    end = place + 1 + (last_unit is not None)
    units = [item for item in (opening, first_unit, middle, last_unit) if item is not None]
    if len({item.key for item in units}) > 1 or any(i.sort is Sort.UNMEASURED for i in units):
        return FoundArea(start, end, refusal=Reason.UNMEASURED_UNIT)
    return sides(row, start, end, (first, second), units[0].key if units else None)


def _side_unit(row: Row, at: int) -> Item | None:
    return row.item(at, Sort.LENGTH) or row.item(at, Sort.UNMEASURED)


def _number_unit_at(row: Row, at: int, land: Land) -> FoundArea | None:
    """2 acres, half of an acre, 2ha; with a strange word between it is read back."""
    amount = row.amount(at)
    if part := _part_of_at(row, at, land):
        return part
    spot = row.after(at + 1 + (row.mark(at + 1, "-.") and row.glued(at + 1)), Sort.ARTICLE)
    between = row.strange(spot) and row.sort(spot + 1) is Sort.UNIT
    unit = row.item(spot + between, Sort.UNIT)
    if amount is None or unit is None:
        return None
    area = _area(amount, unit, (at, spot + between + 1), land)
    return replace(area, doubt=area.doubt or Reason.ROUGH) if between else area


def _part_of_at(row: Row, at: int, land: Land) -> FoundArea | None:
    """Half of one acre, la moitié de 2 ha, nusu ya ekari moja: a part of an area."""
    part, spot = row.amount(at), row.after(at + 1, Sort.ARTICLE)
    if part is None or not (part.is_fraction and part.is_words) or spot == at + 1:
        return None
    whole = _number_unit_at(row, spot, land) or _unit_number_at(row, spot, land)
    if whole is None or len(whole.parts) != 1 or whole.refusal:
        return None
    number, key = whole.parts[0]
    doubt = whole.doubt or (Reason.NONE if number == 1 else Reason.ROUGH)
    return replace(
        whole,
        start=at,
        parts=((part.value * number, key),),
        m2=part.value * whole.m2,
        doubt=doubt,
    )


def _unit_number_at(row: Row, at: int, land: Land) -> FoundArea | None:
    """Ekari 2, ha 0.4: the unit first, where the number has no unit of its own after it."""
    unit = row.item(at, Sort.UNIT)
    if unit is None or unit.key.startswith("after "):
        return None
    spot = at + 1 + row.mark(at + 1, ":=-")
    amount = row.amount(spot)
    if amount is None:
        return None
    after = row.after(spot + 1, Sort.ARTICLE)
    is_next_number = row.lexicon.unit_first and row.amount(after + 1) is not None
    if row.sort(after) in (Sort.UNIT, Sort.LENGTH, *ABOUT_ELSE) and not is_next_number:
        return None
    if _is_by(row, after):
        return None
    return _area(amount, unit, (at, spot + 1), land)


def _one_unit_at(row: Row, at: int, land: Land) -> FoundArea | None:
    """An acre; sehektar."""
    alone, one = row.item(at, Sort.UNIT), Amount(Fraction(1), ())
    if alone is not None and alone.key.startswith("one "):
        return _area(one, alone, (at, at + 1), land)
    article, unit = row.item(at, Sort.ARTICLE), row.item(at + 1, Sort.UNIT)
    if article is None or not article.key or unit is None or row.amount(at - 1):
        return None
    if unit.key in land.own and row.numbers():
        return None  # "a plot of 50 by 100"
    return _area(one, unit, (at, at + 2), land)


_READERS: tuple[Callable[[Row, int, Land], FoundArea | None], ...] = (
    _sides_at,
    _number_unit_at,
    _unit_number_at,
    _one_unit_at,
)


def _area(amount: Amount, unit: Item, place: tuple[int, int], land: Land) -> FoundArea:
    """The area of a number and a unit word, which may stand for several units."""
    keys = [key for key in unit.key.split() if key not in ("after", "one")]
    sized = [size for key in keys if (size := land.unit(key))]
    if not sized:
        return FoundArea(*place, refusal=Reason.REGION_UNIT)
    if len(sized) > 1:
        choices = tuple((amount.value, size.key) for size in sized)
        return FoundArea(*place, refusal=Reason.AMBIGUOUS, choices=choices)
    size = sized[0]
    found = FoundArea(*place, ((amount.value, size.key),), amount.value * size.m2)
    found = replace(found, doubt=_doubt(amount, unit, size), shows_m2=size.region != "")
    return _by_mark(found, amount, size) if amount.other is not None else found


def _doubt(amount: Amount, unit: Item, land: LandUnit) -> Reason:
    if amount.is_slip:
        return Reason.SLIP
    if unit.has_rivals:
        return Reason.MISSPELT
    if amount.ratio and _is_odd_ratio(*amount.ratio):
        return Reason.AMBIGUOUS
    if unit.key.startswith("after ") and amount.value < _FEWEST_ARES:
        return Reason.UNUSUAL
    return Reason.UNUSUAL if land.sure in (Sure.DISPUTED, Sure.MEMORY) else Reason.NONE


def _is_odd_ratio(top: Fraction, bottom: Fraction) -> bool:
    """2/3 may be two or three, 11/2 may be 1 1/2; 1/2, 1/4 and 3/4 are plain."""
    return not (top == 1 and bottom <= 16) and top / bottom != Fraction(3, 4)


def _by_mark(found: FoundArea, amount: Amount, land: LandUnit) -> FoundArea:
    """1.500 and 1,500: the language's own reading where only that makes a field."""
    other = amount.other or Fraction(0)
    choices = ((amount.value, land.key), (other, land.key))
    if amount.is_odd:
        return replace(found, refusal=Reason.AMBIGUOUS, choices=choices)
    is_own_group = amount.value > other and not amount.foreign_mark
    if fits(found.m2) and (is_own_group or not fits(other * land.m2)):
        return found
    if is_own_group:
        return replace(found, doubt=Reason.AMBIGUOUS, choices=choices)
    return replace(found, refusal=Reason.AMBIGUOUS, choices=choices)


def _half_after(row: Row, found: FoundArea) -> FoundArea:
    """2 acres and a half, hai mau ruoi, un hectare et demi."""
    if len(found.parts) != 1 or found.refusal or found.parts[0][0].denominator != 1:
        return found
    (number, key), half = found.parts[0], row.item(found.end, Sort.AND_HALF)
    if half is not None:
        part, end = Fraction(half.key), found.end + 1
    else:
        spot = row.after(found.end, Sort.JOIN, Sort.ARTICLE)
        amount = row.amount(spot)
        if amount is None or not amount.is_fraction or amount.value >= 1:
            return found
        if amount.ratio and _is_odd_ratio(*amount.ratio):
            return found
        if row.sort(row.after(spot + 1, Sort.ARTICLE)) is Sort.UNIT:
            return found
        if row.sort(spot + 1) is Sort.ARTICLE or row.strange(spot + 1):
            return found  # 2 acres of rice and half of maize
        part, end = amount.value, spot + 1
    if not number:
        return found
    m2 = found.m2 / number * (number + part)
    return replace(found, parts=((number + part, key),), m2=m2, end=end)


def _joined(row: Row, found: list[FoundArea]) -> list[FoundArea]:
    """1 bigha 5 katha as one area, where the second unit is a part of the first."""
    merged: list[FoundArea] = []
    for area in found:
        last = merged[-1] if merged else None
        if last is not None and _touch(row, last, area) and _is_part(last, area):
            parts = _added(last.parts, area.parts)
            merged[-1] = replace(last, end=area.end, parts=parts, m2=last.m2 + area.m2)
        else:
            merged.append(area)
    return merged


def _added(first: tuple[Choice, ...], second: tuple[Choice, ...]) -> tuple[Choice, ...]:
    """The parts one after the other; two acres and half an acre are 2.5 acres."""
    (number, key), (more, same) = first[-1], second[0]
    if key != same:
        return first + second
    return (*first[:-1], (number + more, key), *second[1:])


def _touch(row: Row, first: FoundArea, second: FoundArea) -> bool:
    end = row.after(first.end, Sort.JOIN)
    return end + row.mark(end, ",+&") == second.start


def _is_part(big: FoundArea, small: FoundArea) -> bool:
    """Whether the second is fewer than one of the first's last unit, in a unit below it."""
    if not (big.parts and small.parts) or big.doubt or small.doubt or big.refusal:
        return False
    (number, key), (part, part_key) = big.parts[-1], small.parts[0]
    if key == part_key:
        return number.denominator == 1 and part < 1
    one_m2 = big.m2 / number if len(big.parts) == 1 and number else big.m2
    below = (f.index(key) < f.index(part_key) for f in FAMILIES if key in f and part_key in f)
    return small.m2 < one_m2 and any(below)
