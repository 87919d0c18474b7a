"""Dates told by numbers: 10/6, 10 June, tarehe 10 mwezi wa sita, the 10th."""

from dataclasses import replace
from datetime import date
from fractions import Fraction

from assistant.reading.days.told import ABOUT_ELSE, Clue, Told, day_start, real
from assistant.reading.outcomes import Reason
from assistant.reading.pieces import Row
from assistant.reading.text.lexicon import Sort
from assistant.reading.text.spot import Item

_FAR_DAYS, _NEAR_DAYS = 90, 45  # a day-first date this far, where month-first is this near
_SURE_YEAR_DAYS = 152  # farther off, the same day of another year is nearly as near


def iso_at(told: Told, at: int) -> Clue | None:
    """2026-06-10 and 2026/6/10."""
    year, month, day = told.number(at), told.number(at + 2), told.number(at + 4)
    if year is None or month is None or day is None or year < 1000:
        return None
    if not (told.row.mark(at + 1, "-/.") and told.row.mark(at + 3, "-/.")):
        return None
    return Clue(at, at + 5, real(year, month, day))


def numeric_at(told: Told, at: int) -> Clue | None:
    """10/6, 10-6-26, 10.6.2026: the day first."""
    row, day, month = told.row, told.number(at), told.number(at + 2)
    if day is None or month is None or not _joins(row, at + 1):
        return _spaced(told, at)
    year = told.number(at + 4) if _joins(row, at + 3) else None
    if year is not None and (year < 100 or 1900 <= year <= 2199):
        return _day_first(
            told, (at, at + 5), day, month, year % 100 + 2000 if year < 100 else year
        )
    if row.sort(at + 3) in (Sort.MONTH, Sort.MONTH_WORD, Sort.DAYS):
        return Clue(at, at + 4, refusal=Reason.TWO_VALUES)
    clue = _day_first(told, (at, at + 3), day, month, None)
    may_be_range = row.mark(at + 1, "-") and day < month
    return Clue(at, at + 3, clue.days, doubt=Reason.AMBIGUOUS) if may_be_range else clue


def _spaced(told: Told, at: int) -> Clue | None:
    """15 6 2026."""
    day, month, year = told.number(at, 2), told.number(at + 1, 2), told.number(at + 2)
    if day is None or month is None or year is None or not 1900 <= year <= 2199:
        return None
    return _day_first(told, (at, at + 3), day, month, year)


def _joins(row: Row, at: int) -> bool:
    """A mark between the numbers of a date; a slash may stand apart."""
    return row.mark(at, "/") or (row.mark(at, "-.") and row.glued(at) and row.glued(at + 1))


def _day_first(
    told: Told, place: tuple[int, int], day: int, month: int, year: int | None
) -> Clue:
    days = nearest_day(told, day, month) if year is None else real(year, month, day)
    doubt = _year_doubt(told, days) if year is None else Reason.NONE
    turned = nearest_day(told, month, day) if year is None else real(year, day, month)
    if not days and month > 12:
        return Clue(*place, turned[:1], doubt=Reason.AMBIGUOUS)
    if days and turned and days != turned and _other_is_likelier(told, days[0], turned[0]):
        return Clue(*place, (*days[:1], *turned[:1]), doubt=Reason.AMBIGUOUS)
    return Clue(*place, days if doubt else days[:1], doubt=doubt)


def _other_is_likelier(told: Told, day_first: date, month_first: date) -> bool:
    """Whether the month-first date is so much nearer that the day-first one needs a yes."""
    far, near = abs((day_first - told.today).days), abs((month_first - told.today).days)
    if told.row.lexicon.month_first:
        return near < far
    return far > _FAR_DAYS and near <= _NEAR_DAYS


def nearest_day(told: Told, day: int, month: int) -> tuple[date, ...]:
    """The two nearest such days, where no year was said; 29 February waits for its year."""
    reach = 8 if (day, month) == (29, 2) else 1
    years = range(told.today.year - reach, told.today.year + reach + 1)
    days = [found for year in years for found in real(year, month, day)]
    return tuple(sorted(days, key=lambda d: (abs(d - told.today), d))[:2])


def _year_doubt(told: Told, days: tuple[date, ...]) -> Reason:
    """Whether last year's day and the coming one are about as near."""
    far = bool(days) and abs((days[0] - told.today).days) > _SURE_YEAR_DAYS
    return Reason.FAR_OFF if far else Reason.NONE


def named_at(told: Told, at: int) -> Clue | None:
    """10 June, 10th of June 2026, June 10, tarehe 10 mwezi wa sita, ika-18 ng Hunyo."""
    row, start = told.row, at
    at = day_start(row, at)
    nth = row.item(at, Sort.NTH)
    if nth is not None:
        month, end = _month_at(told, row.after(at + 1, Sort.DATE_WORD, Sort.ARTICLE, Sort.DAYS))
        return _with_year(told, (start, end), int(nth.key), month) if month else None
    day = told.number(at, 2)
    if day is not None:
        after = row.after(at + 1, Sort.ORDINAL, Sort.DATE_WORD, Sort.THIS)
        month, end = _month_at(told, after + row.mark(after, "-.,/"))
        return _with_year(told, (start, end), day, month) if month else None
    month, end = _month_at(told, at)
    if month is None:
        return None
    end += row.key(end) == "month"
    spot = row.after(end, Sort.DATE_WORD, Sort.MONTH_WORD)
    spot = day_start(row, spot + row.mark(spot, "-.,/"))
    day = told.number(spot, 2)
    if day is None or row.sort(spot + 1) in (*ABOUT_ELSE, Sort.DAYS):
        return Clue(start, end, refusal=Reason.BARE_DAY)
    return _with_year(told, (start, row.after(spot + 1, Sort.ORDINAL)), day, month)


def _month_at(told: Told, at: int) -> tuple[int | None, int]:
    """The month at a place, by name or as "month 6", and where it ends."""
    row = told.row
    if row.sort(at) is Sort.MONTH:
        return int(row.key(at)), at + 1
    if row.sort(at) is Sort.MONTH_WORD or row.key(at) == "month":
        spot = row.after(at + 1, Sort.MONTH_WORD)
        if row.sort(spot) is Sort.MONTH:
            return int(row.key(spot)), spot + 1
        month = told.number(spot, 2)
        if month and row.sort(spot + 1) not in (Sort.AGO, Sort.LATER, Sort.NEXT):
            return month, row.after(spot + 1, Sort.ORDINAL)
    return None, at


def _with_year(told: Told, place: tuple[int, int], day: int, month: int) -> Clue:
    row, (start, end) = told.row, place
    spot = row.after(end, Sort.YEAR_WORD, Sort.DATE_WORD)
    spot = row.after(spot + row.mark(spot, ",-/'."), Sort.YEAR_WORD)
    year = told.number(spot)
    if year is not None and 1900 <= year <= 2199:
        return Clue(start, spot + 1, real(year, month, day))
    this = told.today.year
    likely = year is not None and this - 1 <= 2000 + year <= this + 2
    if year is not None and likely and row.sort(spot + 1) not in (*ABOUT_ELSE, Sort.DAYS):
        return Clue(start, spot + 1, real(2000 + year, month, day))
    days = nearest_day(told, day, month)
    doubt = _year_doubt(told, days)
    return Clue(start, end, days if doubt else days[:1], doubt=doubt)


def bare_at(told: Told, at: int) -> Clue | None:
    """10, or the 10th: the coming one, or with `past` the last one; read back."""
    row, start = told.row, at
    at = day_start(row, at)
    if row.unread_digits(at):
        return Clue(start, at + 1, refusal=Reason.NOT_READ)
    amount = row.amount(at)
    if amount is None or _is_about_else(row, at):
        return None
    number, end = told.number(at, 8), row.after(at + 1, Sort.ORDINAL, Sort.DATE_WORD)
    if number is None or amount.value != Fraction(number):
        return Clue(start, end, refusal=Reason.NOT_READ)
    if number > 9999:
        return _compact(start, end, amount.items[0].key)
    beside = row.sorts(end, end + 1)  # tanggal 15 kemarin: the one gone by
    gone = Sort.AGO in beside or (told.past and Sort.LATER not in beside)
    days = _same_number(replace(told, past=gone), number)
    return Clue(start, end, days, is_bare=True, number_at=at, doubt=Reason.BARE_DAY)


def _is_about_else(row: Row, at: int) -> bool:
    if row.sort(at - 1) is Sort.CLOCK or row.mark(at - 1, ":") or row.mark(at + 1, "%:"):
        return True
    after = row.get(row.after(at + 1, Sort.ARTICLE))
    if not isinstance(after, Item):
        return False
    return after.sort in ABOUT_ELSE or row.lexicon.has(Sort.UNIT, after.phrase)  # pt: 2 ha


def _compact(start: int, end: int, raw: str) -> Clue:
    """10062026, 100626 and 20260610, read back."""
    days: tuple[date, ...] = ()
    if len(raw) == 8:
        days = real(int(raw[:4]), int(raw[4:6]), int(raw[6:])) if raw.startswith("20") else ()
        days = days or real(int(raw[4:]), int(raw[2:4]), int(raw[:2])) if int(raw[4:]) else days
    elif len(raw) == 6:
        days = real(2000 + int(raw[4:]), int(raw[2:4]), int(raw[:2]))
    return Clue(start, end, days, doubt=Reason.UNUSUAL)


def _same_number(told: Told, day: int) -> tuple[date, ...]:
    """The next day of this number in a month, or with `past` the last one."""
    step = -1 if told.past else 1
    for months in range(12):
        first = told.shifted(0, step * months)
        for found in real(first[0].year, first[0].month, day) if first else ():
            if (found <= told.today) if told.past else (found >= told.today):
                return (found,)
    return ()
