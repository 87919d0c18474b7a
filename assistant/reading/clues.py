"""What a reply says about a day, clue by clue: numbers, month names, weekdays, "in 3 days"."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction

from dateutil.relativedelta import relativedelta

from assistant.reading.fold import Kind, Token
from assistant.reading.lexicon import Sort
from assistant.reading.outcomes import Reason
from assistant.reading.pieces import Row
from assistant.reading.spot import Item

_FAR_DAYS, _NEAR_DAYS = 90, 45  # a day-first date this far, where month-first is this near
_ABOUT_ELSE = (Sort.OTHER_UNIT, Sort.UNIT, Sort.PERCENT, Sort.CLOCK)
_SURE_YEAR_DAYS = 152  # farther off, the same day of another year is nearly as near
_WEEK = "7"


@dataclass(frozen=True)
class Clue:
    """One thing that a reply says about the day."""

    start: int
    end: int
    days: tuple[date, ...] = ()  # likely days, best first; none: there is no such day
    weekday: int | None = None
    is_bare: bool = False  # a day number without its month
    number_at: int = 0  # the place of that number
    is_week: bool = False  # a week without its day
    month: tuple[int, int] | None = None  # a year and month without the day: next month
    doubt: Reason = Reason.NONE
    refusal: Reason = Reason.NONE

    @property
    def is_strong(self) -> bool:
        """Whether it names a day by itself."""
        named = self.weekday is None and self.month is None
        return named and not self.is_bare and not self.is_week


@dataclass(frozen=True)
class Told:
    """A reply's row of pieces, and what it is read against."""

    row: Row
    today: date
    past: bool

    def shifted(self, days: int, months: int = 0) -> tuple[date, ...]:
        """The day so far from today, or none beyond the calendar's ends."""
        try:
            return (self.today + relativedelta(days=days, months=months),)
        except (OverflowError, ValueError):
            return ()

    def number(self, at: int, longest: int = 4) -> int | None:
        """The whole number at a place."""
        amount = self.row.amount(at)
        if amount is None or amount.is_fraction or amount.value.denominator != 1:
            return None
        return int(amount.value) if 0 <= amount.value < 10**longest else None


def split_dots(found: Sequence[Token]) -> tuple[Token, ...]:
    """10.6.2026 as numbers with marks between: here a dot is no decimal mark."""
    parts: list[Token] = []
    for token in found:
        if not token.is_number or token.text.isdigit():
            parts.append(token)
            continue
        marks = token.text.replace(",", ".").partition(".")
        glued = token.glued
        while marks[1]:
            parts += [
                Token(marks[0], Kind.NUMBER, glued, token.at),
                Token(".", Kind.MARK, True, token.at),
            ]
            marks, glued = marks[2].partition("."), True
        parts.append(Token(marks[0], Kind.NUMBER, glued, token.at))
    return tuple(part for part in parts if part.text)


def find_clues(told: Told) -> list[Clue]:
    """All clues, in order."""
    clues: list[Clue] = []
    at = 0
    while at < len(told.row.pieces):
        clue = _clue_at(told, at)
        if clue is None:
            at += 1
            continue
        clues.append(_spelt(told.row, clue))
        at = max(clue.end, at + 1)
    return clues


def _clue_at(told: Told, at: int) -> Clue | None:
    """The clue that starts here; a word such as "tarehe" may stand before digits."""
    start = _day_start(told.row, at)
    if start > at:
        word = told.row.item(at, Sort.DATE_WORD)
        loose = word is not None and told.row.lexicon.has(Sort.ARTICLE, word.phrase)
        readers = (_iso_at, _numeric_at, _span_at) if loose else (_iso_at, _numeric_at)
        after = (read(told, start) for read in readers)
        if (clue := next(filter(None, after), None)) is not None:
            return replace(clue, start=at)
    return next((clue for read in _READERS if (clue := read(told, at))), None)


def _spelt(row: Row, clue: Clue) -> Clue:
    """The clue, read back where one of its words may be another one misspelt."""
    pieces = row.pieces[clue.start : clue.end]
    found = [piece for piece in pieces if isinstance(piece, Item)]
    unclear = any(item.has_rivals or _may_be_later(row, item) for item in found)
    return replace(clue, doubt=clue.doubt or Reason.MISSPELT) if unclear else clue


def _may_be_later(row: Row, item: Item) -> bool:
    """Vietnamese without tone marks: thang sau is June, and next month."""
    plain = not any(token.with_accents for token in item.tokens)
    return plain and item.sort is Sort.MONTH and row.lexicon.has(Sort.LATER, item.phrase)


def real(year: int, month: int, day: int) -> tuple[date, ...]:
    """That day, or none."""
    try:
        return (date(year, month, day),)
    except ValueError:
        return ()


def _iso_at(told: Told, at: int) -> Clue | None:
    """2026-06-10 and 2026/6/10."""
    year, month, day = told.number(at), told.number(at + 2), told.number(at + 4)
    if year is None or month is None or day is None or year < 1000:
        return None
    if not (told.row.mark(at + 1, "-/.") and told.row.mark(at + 3, "-/.")):
        return None
    return Clue(at, at + 5, real(year, month, day))


def _numeric_at(told: Told, at: int) -> Clue | None:
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


def _named_at(told: Told, at: int) -> Clue | None:
    """10 June, 10th of June 2026, June 10, tarehe 10 mwezi wa sita, ika-18 ng Hunyo."""
    row, start = told.row, at
    at = _day_start(row, at)
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
    spot = _day_start(row, spot + row.mark(spot, "-.,/"))
    day = told.number(spot, 2)
    if day is None or row.sort(spot + 1) in (*_ABOUT_ELSE, Sort.DAYS):
        return Clue(start, end, refusal=Reason.BARE_DAY)
    return _with_year(told, (start, row.after(spot + 1, Sort.ORDINAL)), day, month)


def _day_start(row: Row, at: int) -> int:
    """Past the words before a day number: tarehe, ika-, a-."""
    spot = row.after(at, Sort.DATE_WORD, Sort.DAYS) if row.sort(at) is Sort.DATE_WORD else at
    return spot + (spot > at and row.mark(spot, "-:"))


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
    if year is not None and likely and row.sort(spot + 1) not in (*_ABOUT_ELSE, Sort.DAYS):
        return Clue(start, spot + 1, real(2000 + year, month, day))
    days = nearest_day(told, day, month)
    doubt = _year_doubt(told, days)
    return Clue(start, end, days if doubt else days[:1], doubt=doubt)


def _signed_at(told: Told, at: int) -> Clue | None:
    """+3 is in three days; -3 is likelier "three days ago" than a day, and is read back."""
    row, count = told.row, told.number(at + 1, 3)
    if not row.mark(at, "+-") or row.glued(at) or not row.glued(at + 1) or count is None:
        return None
    end = at + 2 + (row.sort(at + 2) is Sort.DAYS)
    if row.mark(at, "+"):
        return Clue(at, end, told.shifted(count))
    return Clue(at, end, told.shifted(-count), doubt=Reason.UNUSUAL)


def _span_at(told: Told, at: int) -> Clue | None:
    """In 3 days, 3 days ago, siku tatu zijazo, next week."""
    row = told.row
    spot, later, ago = _direction(row, at)
    count = told.number(spot, 3)
    unit = spot + (count is not None)
    if row.sort(unit) is not Sort.DAYS:
        return None
    end = unit + 1
    if count is None and row.lexicon.unit_first and told.number(end, 3) is not None:
        count, end = told.number(end, 3), end + 1
    end, later_after, ago_after = _direction(row, end)
    sign = _sign(told, later or later_after, ago or ago_after)
    if sign is None or (count is None and not (later or ago or later_after or ago_after)):
        return None
    is_sure = count is not None and (later or ago or later_after or ago_after)
    return _span(told, (at, end), row.key(unit), count, sign, bool(is_sure))


def _this_month_at(told: Told, at: int) -> Clue | None:
    """This month, mwezi huu, next month: with a day number beside it that is a date."""
    row, around = told.row, (Sort.THIS, Sort.NEXT, Sort.LAST, Sort.AGO, Sort.LATER)
    spot = row.after(at, *around)
    if row.key(spot) != "month" and row.sort(spot) is not Sort.MONTH_WORD:
        return None
    end = row.after(spot + 1, *around)
    words = row.sorts(at, spot) | row.sorts(spot + 1, end)
    counted = row.lexicon.unit_first and told.number(end, 3) is not None
    if not words or (counted and Sort.THIS not in words):
        return None
    gone, coming = words & {Sort.LAST, Sort.AGO}, words & {Sort.NEXT, Sort.LATER}
    days = told.shifted(0, 1 if coming else -1 if gone else 0)
    if not days or (gone and coming):
        return None
    month = (days[0].year, days[0].month)
    return Clue(at, end, days, month=month, doubt=Reason.UNUSUAL)


def _direction(row: Row, at: int) -> tuple[int, bool, bool]:
    """Words of coming or gone time: where they end, and which they are."""
    end = row.after(at, Sort.LATER, Sort.AGO, Sort.NEXT, Sort.LAST)
    sorts = row.sorts(at, end)
    return end, bool(sorts & {Sort.LATER, Sort.NEXT}), bool(sorts & {Sort.AGO, Sort.LAST})


def _sign(told: Told, later: bool, ago: bool) -> int | None:
    if later and ago:
        return None
    return -1 if ago or (told.past and not later) else 1


def _span(
    told: Told, place: tuple[int, int], unit: str, count: int | None, sign: int, is_sure: bool
) -> Clue:
    number = 1 if count is None else count
    is_month = unit == "month"
    days = 0 if is_month else sign * number * int(unit)
    months = sign * number if is_month else 0
    doubt = Reason.NONE if is_sure and not is_month else Reason.UNUSUAL
    is_week = count is None and unit == _WEEK
    return Clue(*place, told.shifted(days, months), is_week=is_week, doubt=doubt)


def _day_word_at(told: Told, at: int) -> Clue | None:
    """Today, tomorrow; kal, which is both tomorrow and yesterday."""
    row = told.row
    if row.sort(at) is Sort.OTHER_CALENDAR:
        return Clue(at, at + 1, refusal=Reason.OTHER_CALENDAR)
    if item := row.item(at, Sort.DAY):
        return Clue(at, at + 1, told.shifted(int(item.key)))
    return _either(told, at) if row.sort(at) is Sort.EITHER_DAY else None


def _either(told: Told, at: int) -> Clue:
    """A verb or a word beside it shows the tense; else the person is asked."""
    row, shift = told.row, int(told.row.key(at))
    sorts = row.sorts()
    gone = Sort.PAST_VERB in sorts or row.sort(at - 1) in (Sort.LAST, Sort.AGO)
    coming = Sort.COMING_VERB in sorts or row.sort(at - 1) in (Sort.NEXT, Sort.LATER)
    if gone == coming:
        both = told.shifted(-shift) + told.shifted(shift)
        return Clue(at, at + 1, both if told.past else both[::-1], refusal=Reason.AMBIGUOUS)
    return Clue(at, at + 1, told.shifted(-shift if gone else shift))


def _weekday_at(told: Told, at: int) -> Clue | None:
    """Friday: the coming one, or with `past` the last one; next Friday, last Friday."""
    row = told.row
    around = (Sort.NEXT, Sort.LAST, Sort.THIS, Sort.LATER, Sort.AGO)
    spot = row.after(at, *around)
    item = row.item(spot, Sort.WEEKDAY)
    if item is None:
        return None
    end = row.after(spot + 1, *around)
    if row.key(end) == _WEEK and row.sort(end + 1) is Sort.THIS:
        end += 2
    elif row.key(end) == _WEEK and end > spot + 1:
        end = spot + 1  # "Monday next week": the week is a clue of its own
    words = row.sorts(at, end) - {Sort.DAYS}
    days, doubt = _weekday(told, int(item.key), words)
    if row.key(end) == _WEEK and not row.sorts(end + 1, end + 2) & set(around):
        # "Friday week": the one after
        doubt = Reason.AMBIGUOUS
    return Clue(at, end, days, weekday=int(item.key), doubt=doubt)


def _weekday(told: Told, weekday: int, words: set[Sort]) -> tuple[tuple[date, ...], Reason]:
    """The day, and whether another week may be meant.

    "Next Friday" said on a Monday is this week's to some and next week's to others; said of a
    day that only comes next week, or that has gone by this week, it is clear.
    """
    today = told.today
    ahead = (weekday - today.weekday()) % 7
    is_coming, is_gone = (
        bool(words & {Sort.NEXT, Sort.LATER}),
        bool(words & {Sort.LAST, Sort.AGO}),
    )
    gone = is_gone or (told.past and not is_coming)
    if ahead == 0:
        days = told.shifted(7 if is_coming else -7 if is_gone else 0)
        return days, Reason.NONE if is_coming or is_gone else Reason.AMBIGUOUS
    days = told.shifted(ahead - 7 if gone else ahead)
    if not days:
        return (), Reason.NONE
    day = days[0]
    same_week = today.isocalendar()[:2] == day.isocalendar()[:2]
    is_next = Sort.NEXT in words and not told.row.lexicon.next_is_coming
    unclear = (
        (is_next or Sort.LAST in words) and same_week or (Sort.THIS in words and not same_week)
    )
    return (day,), Reason.AMBIGUOUS if unclear else Reason.NONE


def _bare_at(told: Told, at: int) -> Clue | None:
    """10, or the 10th: the coming one, or with `past` the last one; read back."""
    row, start = told.row, at
    at = _day_start(row, at)
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
    return after.sort in _ABOUT_ELSE or row.lexicon.has(Sort.UNIT, after.phrase)  # pt: 2 ha


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


_READERS: tuple[Callable[[Told, int], Clue | None], ...] = (
    _iso_at,
    _numeric_at,
    _signed_at,
    _this_month_at,
    _span_at,
    _named_at,
    _day_word_at,
    _weekday_at,
    _bare_at,
)
