"""Dates: today and tomorrow, weekdays, day-first dates, "in 3 days", month names.

Read by a small grammar of our own. Measured: dateutil's parser swaps day and month and fills
gaps with today's parts in silence; dateparser takes "1", "may" and "sat" for dates, knows no
Bengali "3 days later" and no French "next Monday". Babel's names of months and days, and
dateutil's relativedelta for the arithmetic, are good enough and are used.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

from dateutil.relativedelta import relativedelta

from assistant.reading.echo import date_words
from assistant.reading.fold import LONGEST_REPLY, Kind, Token, cut, fold, unslip
from assistant.reading.lexicon import Item, Lexicon, Sort, items
from assistant.reading.numbers import NUMBER_SORTS, Amount, Piece, amounts, is_broken
from assistant.reading.outcomes import Option, Reading, Reason, again, confirm, understood

FARTHEST_SURE_DAYS = 183  # half a year: a farther day is more likely a slip
FARTHEST_DAYS = 1100  # three years: no nursery is planned or told about so far off

_SORTS = (
    Sort.OTHER_CALENDAR,
    Sort.EITHER_DAY,
    Sort.DAY,
    Sort.WEEKDAY,
    Sort.MONTH,
    Sort.DAYS,
    Sort.AGO,
    Sort.LATER,
    Sort.NEXT,
    Sort.LAST,
    Sort.THIS,
    Sort.MONTH_WORD,
    Sort.DATE_WORD,
    Sort.YEAR_WORD,
    Sort.ORDINAL,
    Sort.CLOCK,
    *NUMBER_SORTS,
    Sort.NOT_KNOWN,
    Sort.SORRY,
    Sort.NOT_YET,
    Sort.NO,
    Sort.NOT,
    Sort.RANGE,
    Sort.PAST_VERB,
    Sort.COMING_VERB,
    Sort.OTHER_UNIT,
    Sort.UNIT,
    Sort.PERCENT,
    Sort.ABOUT,
    Sort.ROUGH,
    Sort.ARTICLE,
    Sort.FARM,
    Sort.FILLER,
    Sort.GREETING,
    Sort.YES,
    Sort.DONE,
)
_GLUE = frozenset({"/", "-", ".", ","})
_DULL = (Sort.FILLER, Sort.FARM, Sort.GREETING, Sort.ABOUT, Sort.ARTICLE, Sort.YES, Sort.DONE)
_OTHER_THINGS = (Sort.OTHER_UNIT, Sort.UNIT, Sort.PERCENT, Sort.CLOCK)


@dataclass(frozen=True)
class Clue:
    """One thing that a reply says about the day."""

    start: int
    end: int
    days: tuple[date, ...] = ()  # likely days, best first; none: impossible
    weekday: int | None = None
    bare_day: int | None = None
    doubt: Reason = Reason.NONE
    refusal: Reason = Reason.NONE


@dataclass(frozen=True)
class _Row:
    """The pieces of a reply and what they are read against."""

    pieces: tuple[Piece, ...]
    lexicon: Lexicon
    today: date
    past: bool

    def sort(self, at: int) -> Sort | None:
        piece = self.pieces[at] if 0 <= at < len(self.pieces) else None
        return piece.sort if isinstance(piece, Item) else None

    def key(self, at: int) -> str:
        piece = self.pieces[at]
        return piece.key if isinstance(piece, Item) else ""

    def mark(self, at: int, marks: str) -> bool:
        piece = self.pieces[at] if 0 <= at < len(self.pieces) else None
        return isinstance(piece, Item) and piece.is_mark(marks)

    def number(self, at: int, longest: int = 4) -> int | None:
        """The whole number at `at`."""
        piece = self.pieces[at] if 0 <= at < len(self.pieces) else None
        if not isinstance(piece, Amount) or piece.value.denominator != 1 or piece.is_fraction:
            return None
        value = int(piece.value)
        return value if 0 <= value < 10**longest else None

    def glued(self, at: int) -> bool:
        return 0 <= at < len(self.pieces) and self.pieces[at].glued

    def past_over(self, at: int, *sorts: Sort) -> int:
        while self.sort(at) in sorts and self.sort(at) is not None:
            at += 1
        return at


def read_date(text: str, lexicon: Lexicon, today: date, past: bool = False) -> Reading[date]:
    """The day a reply names. `past`: the question was about a day gone by."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    folded, slipped = unslip(fold(text))
    reading = read_date_tokens(cut(folded), lexicon, today, past)
    if slipped and reading.value is not None and reading.reason is Reason.NONE:
        return confirm(reading.value, reading.words, Reason.SLIP)
    return reading


def read_date_tokens(
    found: Sequence[Token], lexicon: Lexicon, today: date, past: bool
) -> Reading[date]:
    """As `read_date`, from tokens."""
    if not found:
        return again(Reason.EMPTY)
    row = _row(found, lexicon, today, past)
    if row is None:
        return again(Reason.NOT_READ)
    return _judge(row, _clues(row))


def date_spans(found: Sequence[Token], lexicon: Lexicon, today: date) -> frozenset[int]:
    """The places of the tokens that surely speak of a day."""
    row = _row(found, lexicon, today, False)
    if row is None:
        return frozenset()
    places: set[int] = set()
    for clue in _clues(row):
        if clue.bare_day is None:
            for piece in row.pieces[clue.start : clue.end]:
                own = piece.items if isinstance(piece, Amount) else (piece,)
                places.update(token.at for item in own for token in item.tokens)
    return frozenset(places)


def _row(found: Sequence[Token], lexicon: Lexicon, today: date, past: bool) -> _Row | None:
    parts = _split_dotted(found)
    row = items(parts, lexicon, _SORTS, (Sort.MONTH, Sort.WEEKDAY, Sort.DAY, Sort.NUMBER))
    if is_broken(row, _GLUE | {"d", "th"}):
        return None
    pieces = amounts(row, lexicon, slash=False)
    kept = tuple(p for p in pieces if not (isinstance(p, Item) and p.sort in _DULL))
    return _Row(kept, lexicon, today, past)


def _split_dotted(found: Sequence[Token]) -> tuple[Token, ...]:
    """10.6.2026 and 10.6 as numbers with marks between: here a dot is no decimal mark."""
    parts: list[Token] = []
    for token in found:
        if token.kind is not Kind.NUMBER or token.text.isdigit():
            parts.append(token)
            continue
        piece, glued = "", token.glued
        for ch in token.text:
            if ch in ".,":
                if piece:
                    parts.append(Token(piece, Kind.NUMBER, glued, token.at))
                parts.append(Token(ch, Kind.MARK, True, token.at))
                piece, glued = "", True
            else:
                piece += ch
        parts.append(Token(piece, Kind.NUMBER, glued, token.at))
    return tuple(parts)


def _clues(row: _Row) -> list[Clue]:
    clues: list[Clue] = []
    at = 0
    readers = (_iso_at, _numeric_at, _named_at, _span_at, _day_word_at, _weekday_at, _bare_at)
    while at < len(row.pieces):
        clue = next((c for read in readers if (c := read(row, at))), None)
        if clue is None:
            at += 1
            continue
        clues.append(clue)
        at = clue.end
    return clues


def _iso_at(row: _Row, at: int) -> Clue | None:
    """2026-06-10 and 2026/6/10."""
    year, month, day = row.number(at), row.number(at + 2), row.number(at + 4)
    if year is None or month is None or day is None or year < 1000:
        return None
    if not (row.mark(at + 1, "-/.") and row.mark(at + 3, "-/.")):
        return None
    return Clue(at, at + 5, days=_real(year, month, day))


def _numeric_at(row: _Row, at: int) -> Clue | None:
    """10/6, 10-6-26, 10.6.2026, 10/6/26: the day first."""
    day, month = row.number(at), row.number(at + 2)
    if day is None or month is None or not _is_date_mark(row, at + 1):
        return None
    year = row.number(at + 4) if _is_date_mark(row, at + 3) else None
    if year is not None and (year < 100 or 1900 <= year <= 2199):
        full = _full_year(year)
        return _day_first(row, at, at + 5, day, month, full)
    clue = _day_first(row, at, at + 3, day, month, None)
    if row.mark(at + 1, "-,") and day < month:
        return Clue(at, at + 3, days=clue.days, doubt=Reason.AMBIGUOUS)
    return clue


def _is_date_mark(row: _Row, at: int) -> bool:
    return row.mark(at, "/-.,") and (row.mark(at, "/") or row.glued(at))


def _full_year(year: int) -> int:
    return year if year >= 100 else 2000 + year


def _day_first(row: _Row, start: int, end: int, day: int, month: int, year: int | None) -> Clue:
    days = _near(row, day, month) if year is None else _real(year, month, day)
    turned = _near(row, month, day) if year is None else _real(year, day, month)
    if month > 12 and day <= 12 and turned:
        return Clue(start, end, days=turned, doubt=Reason.AMBIGUOUS)
    if days and turned and days != turned and _other_way_is_likely(row, days[0], turned[0]):
        return Clue(start, end, days=(*days, *turned), doubt=Reason.AMBIGUOUS)
    return Clue(start, end, days=days)


def _other_way_is_likely(row: _Row, day_first: date, month_first: date) -> bool:
    """Whether the month-first date is so much nearer that the day-first one needs a yes."""
    far, near = abs((day_first - row.today).days), abs((month_first - row.today).days)
    return far > near if row.lexicon.month_first else far > 90 and near <= 45


def _real(year: int, month: int, day: int) -> tuple[date, ...]:
    try:
        return (date(year, month, day),)
    except ValueError:
        return ()


def _near(row: _Row, day: int, month: int) -> tuple[date, ...]:
    """The nearest such day: the year was not said. With `past`, the last one gone by."""
    years = (row.today.year + shift for shift in (-1, 0, 1))
    days = [d for year in years for d in _real(year, month, day)]
    if not days and (day, month) == (29, 2):
        days = [d for n in range(-4, 5) for d in _real(row.today.year + n, 2, 29)]
    return tuple(sorted(days, key=lambda d: (abs(d - row.today), d))[:1])


def _named_at(row: _Row, at: int) -> Clue | None:
    """10 June, 10th of June 2026, June 10, 10 tháng 6, tarehe 10 mwezi wa sita."""
    start = at
    at = row.past_over(at, Sort.DATE_WORD)
    day = row.number(at, 2)
    if day is not None:
        after = row.past_over(at + 1, Sort.ORDINAL, Sort.DATE_WORD)
        after += 1 if row.mark(after, "-.,/") else 0
        month, end = _month_at(row, after)
        if month is not None and not _takes_next_day(row, end):
            return _with_year(row, start, end, day, month)
    month, end = _month_at(row, at)
    if month is None or day is not None:
        return None
    end = row.past_over(end, Sort.DATE_WORD)
    end += 1 if row.mark(end, "-.,/") else 0
    day = row.number(end, 2)
    if day is None:
        return Clue(start, end, refusal=Reason.BARE_DAY)
    return _with_year(row, start, row.past_over(end + 1, Sort.ORDINAL), day, month)


def _takes_next_day(row: _Row, at: int) -> bool:
    return False


def _month_at(row: _Row, at: int) -> tuple[int | None, int]:
    """The month at `at`, by name or as "month 6", and where it ends."""
    if row.sort(at) is Sort.MONTH:
        return int(row.key(at)), at + 1
    if row.sort(at) is Sort.MONTH_WORD:
        spot = row.past_over(at, Sort.MONTH_WORD)
        if row.sort(spot) is Sort.MONTH:
            return int(row.key(spot)), spot + 1
        month = row.number(spot, 2)
        if month is not None and row.sort(spot + 1) not in (Sort.AGO, Sort.LATER):
            return month, row.past_over(spot + 1, Sort.ORDINAL)
    return None, at


def _with_year(row: _Row, start: int, end: int, day: int, month: int) -> Clue:
    spot = row.past_over(end, Sort.YEAR_WORD, Sort.DATE_WORD)
    spot += 1 if row.mark(spot, ",-/'.") else 0
    spot = row.past_over(spot, Sort.YEAR_WORD)
    year = row.number(spot)
    if year is not None and 1900 <= year <= 2199:
        return Clue(start, spot + 1, days=_real(year, month, day))
    near = row.today.year % 100
    two_digits = year is not None and near - 1 <= year <= near + 2
    if two_digits and row.sort(spot + 1) not in (*_OTHER_THINGS, Sort.DAYS):
        return Clue(start, spot + 1, days=_real(2000 + (year or 0), month, day))
    return Clue(start, end, days=_near(row, day, month))


def _span_at(row: _Row, at: int) -> Clue | None:
    """In 3 days, 3 days ago, a week from now, +3."""
    if row.mark(at, "+-") and row.glued(at + 1) and not row.glued(at):
        return _signed(row, at)
    spot, later, ago = _direction(row, at)
    count = row.number(spot, 3)
    unit = spot + (count is not None)
    if row.sort(unit) is not Sort.DAYS:
        unit_first = row.sort(spot) is Sort.DAYS and row.number(spot + 1, 3) is not None
        if not unit_first:
            return None
    if count is None and row.number(unit + 1, 3) is not None and row.lexicon.unit_first:
        count, end = row.number(unit + 1, 3), unit + 2
    else:
        end = unit + 1
    end, after_later, after_ago = _direction(row, end)
    return _span(row, (at, end), row.key(unit), count, later or after_later, ago or after_ago)


def _direction(row: _Row, at: int) -> tuple[int, bool, bool]:
    """Words of coming or gone time at `at`: where they end, and which they are."""
    later = ago = False
    while row.sort(at) in (Sort.LATER, Sort.AGO, Sort.NEXT, Sort.LAST):
        later = later or row.sort(at) in (Sort.LATER, Sort.NEXT)
        ago = ago or row.sort(at) in (Sort.AGO, Sort.LAST)
        at += 1
    return at, later, ago


def _signed(row: _Row, at: int) -> Clue | None:
    count = row.number(at + 1, 3)
    if count is None or row.mark(at + 2, "/-."):
        return None
    sign = 1 if row.mark(at, "+") else -1
    end = at + 2 + (row.sort(at + 2) is Sort.DAYS)
    doubt = Reason.NONE if sign > 0 else Reason.UNUSUAL
    return Clue(at, end, days=(row.today + timedelta(days=sign * count),), doubt=doubt)


def _span(
    row: _Row, place: tuple[int, int], unit: str, count: int | None, later: bool, ago: bool
) -> Clue | None:
    if later and ago:
        return Clue(*place, refusal=Reason.AMBIGUOUS)
    if count is None and not (later or ago):
        return None
    sign = -1 if ago or (row.past and not later) else 1
    number = 1 if count is None else count
    step = (
        relativedelta(months=number)
        if unit == "month"
        else relativedelta(days=number * int(unit))
    )
    vague = count is None or unit == "month" or not (later or ago)
    return Clue(
        *place,
        days=(row.today + step * sign,),
        doubt=Reason.UNUSUAL if vague else Reason.NONE,
    )


def _day_word_at(row: _Row, at: int) -> Clue | None:
    """Today, tomorrow; kal, which is both tomorrow and yesterday."""
    if row.sort(at) is Sort.OTHER_CALENDAR:
        return Clue(at, at + 1, refusal=Reason.OTHER_CALENDAR)
    if row.sort(at) is Sort.DAY:
        day = row.today + timedelta(days=int(row.key(at)))
        piece = row.pieces[at]
        unsure = isinstance(piece, Item) and bool(piece.others)
        return Clue(at, at + 1, days=(day,), doubt=Reason.MISSPELT if unsure else Reason.NONE)
    if row.sort(at) is not Sort.EITHER_DAY:
        return None
    return _either(row, at)


def _either(row: _Row, at: int) -> Clue:
    shift = timedelta(days=int(row.key(at)))
    sorts = {row.sort(i) for i in range(len(row.pieces))}
    gone = Sort.PAST_VERB in sorts or row.sort(at - 1) is Sort.LAST
    coming = Sort.COMING_VERB in sorts or row.sort(at - 1) in (Sort.NEXT, Sort.LATER)
    if gone == coming:
        return Clue(
            at, at + 1, days=(row.today - shift, row.today + shift), refusal=Reason.AMBIGUOUS
        )
    return Clue(at, at + 1, days=(row.today - shift if gone else row.today + shift,))


def _weekday_at(row: _Row, at: int) -> Clue | None:
    """Friday: the coming one, or with `past` the last one; next Friday, last Friday."""
    spot = at
    words: set[Sort | None] = set()
    while row.sort(spot) in (Sort.NEXT, Sort.LAST, Sort.THIS, Sort.LATER):
        words.add(row.sort(spot))
        spot += 1
    if row.sort(spot) is not Sort.WEEKDAY:
        return None
    end = spot + 1
    while row.sort(end) in (Sort.NEXT, Sort.LAST, Sort.THIS, Sort.AGO):
        words.add(row.sort(end))
        end += 1
    return _weekday(row, at, end, int(row.key(spot)), words)


def _weekday(row: _Row, start: int, end: int, weekday: int, words: set[Sort | None]) -> Clue:
    ahead = (weekday - row.today.weekday()) % 7
    gone = bool(words & {Sort.LAST, Sort.AGO}) or (
        row.past and not words & {Sort.NEXT, Sort.LATER}
    )
    if ahead == 0 and Sort.THIS not in words:
        near = 0 if not words else -7 if gone else 7
        return Clue(
            start, end, (row.today + timedelta(days=near),), weekday, doubt=Reason.AMBIGUOUS
        )
    days = ahead - 7 if gone and ahead else ahead
    crosses = ahead + row.today.weekday() >= 7
    vague = (Sort.NEXT in words and not crosses) or (
        Sort.LAST in words and crosses is False and False
    )
    doubt = Reason.AMBIGUOUS if vague else Reason.NONE
    return Clue(start, end, (row.today + timedelta(days=days),), weekday, doubt=doubt)


def _bare_at(row: _Row, at: int) -> Clue | None:
    """10, or the 10th: the coming one, read back."""
    start = at
    at = row.past_over(at, Sort.DATE_WORD)
    piece = row.pieces[at] if at < len(row.pieces) else None
    if not isinstance(piece, Amount):
        digits = isinstance(piece, Item) and piece.is_digits
        return Clue(start, at + 1, refusal=Reason.NOT_READ) if digits else None
    if row.sort(at + 1) in _OTHER_THINGS or row.mark(at + 1, "%:") or row.mark(at - 1, ":"):
        return Clue(start, at + 1) if False else None
    number = row.number(at, 8)
    if number is None:
        return Clue(start, at + 1, refusal=Reason.NOT_READ)
    end = row.past_over(at + 1, Sort.ORDINAL)
    if number > 9999:
        return _compact(row, start, end, piece)
    return Clue(
        start, end, days=_coming_day(row, number), bare_day=number, doubt=Reason.BARE_DAY
    )


def _compact(row: _Row, start: int, end: int, amount: Amount) -> Clue:
    """10062026, 100626 and 20260610, read back."""
    raw = amount.items[0].key
    if (
        len(raw) == 8
        and raw.startswith("20")
        and _real(int(raw[:4]), int(raw[4:6]), int(raw[6:]))
    ):
        days = _real(int(raw[:4]), int(raw[4:6]), int(raw[6:]))
    elif len(raw) in (6, 8) and raw.isdigit():
        days = _real(_full_year(int(raw[4:])), int(raw[2:4]), int(raw[:2]))
    else:
        return Clue(start, end, refusal=Reason.NOT_READ)
    return Clue(start, end, days=days, doubt=Reason.UNUSUAL)


def _coming_day(row: _Row, day: int) -> tuple[date, ...]:
    """The next month's day of this number, or with `past` the last one."""
    step = -1 if row.past else 1
    for months in range(0, 12):
        first = row.today.replace(day=1) + relativedelta(months=step * months)
        for found in _real(first.year, first.month, day):
            if (found <= row.today) if row.past else (found >= row.today):
                return (found,)
    return ()


def _judge(row: _Row, clues: list[Clue]) -> Reading[date]:
    sorts = {row.sort(at) for at in range(len(row.pieces))}
    if not clues:
        known = Sort.NOT_KNOWN in sorts
        return again(Reason.NOT_KNOWN if known else Reason.NOT_READ)
    refused = next((c for c in clues if c.refusal is not Reason.NONE), None)
    if refused is not None:
        return again(refused.refusal, tuple(_option(row, d) for d in refused.days))
    if any(not clue.days for clue in clues):
        return again(Reason.IMPOSSIBLE)
    return _agree(row, clues, sorts)


def _option(row: _Row, day: date) -> Option[date]:
    return Option(day, date_words(day, row.lexicon))


def _agree(row: _Row, clues: list[Clue], sorts: set[Sort | None]) -> Reading[date]:
    """One day from all the clues, or a question."""
    strong = [c for c in clues if c.bare_day is None and c.weekday is None]
    weekdays = [c for c in clues if c.weekday is not None]
    bare = [c for c in clues if c.bare_day is not None]
    if not strong and len(weekdays) == 1 and len(bare) == 1:
        return _weekday_and_number(row, weekdays[0], bare[0])
    main = strong or weekdays or bare
    if len({c.days[0] for c in main}) > 1:
        return _two_days(row, main)
    if _is_refused(row, main[0]):
        return again(Reason.NEGATED)
    day, doubt = main[0].days[0], main[0].doubt
    if any(w.weekday != day.weekday() for w in weekdays):
        return confirm(day, date_words(day, row.lexicon), Reason.DAY_MISMATCH)
    if strong and (weekdays or len(strong) > 1) and doubt is Reason.AMBIGUOUS:
        doubt = Reason.NONE
    if bare and main is not bare:
        doubt = doubt if doubt is not Reason.NONE else Reason.TWO_VALUES
    return _answer(row, main[0], day, doubt, sorts)


def _weekday_and_number(row: _Row, weekday: Clue, bare: Clue) -> Reading[date]:
    """Friday 12: the nearest 12th that is a Friday."""
    day = next((d for d in bare.days if d.weekday() == weekday.weekday), None)
    if day is None:
        found = bare.days[0]
        return confirm(found, date_words(found, row.lexicon), Reason.DAY_MISMATCH)
    return understood(day, date_words(day, row.lexicon))


def _two_days(row: _Row, clues: list[Clue]) -> Reading[date]:
    """Two days: the later-said one, where the reply corrects itself."""
    days = tuple(dict.fromkeys(c.days[0] for c in clues))
    first, last = clues[-2], clues[-1]
    between = {row.sort(at) for at in range(first.end, last.start)}
    if between & {Sort.NO, Sort.SORRY} and len(days) == 2:
        return confirm(last.days[0], date_words(last.days[0], row.lexicon), Reason.CORRECTED)
    return again(Reason.TWO_VALUES, tuple(_option(row, d) for d in days[:4]))


def _is_refused(row: _Row, clue: Clue) -> bool:
    """Not tomorrow."""
    return row.sort(clue.start - 1) is Sort.NOT or row.sort(clue.end) is Sort.NO


def _answer(
    row: _Row, clue: Clue, day: date, doubt: Reason, sorts: set[Sort | None]
) -> Reading[date]:
    off = (day - row.today).days
    words = date_words(day, row.lexicon)
    if abs(off) > FARTHEST_DAYS:
        return again(Reason.FAR_OFF)
    if abs(off) > FARTHEST_SURE_DAYS:
        return confirm(day, words, Reason.FAR_OFF)
    if row.past and off > 0 and doubt is Reason.NONE:
        doubt = Reason.WRONG_WAY
    if doubt is Reason.NONE and sorts & {
        Sort.NOT,
        Sort.NOT_YET,
        Sort.RANGE,
        Sort.ROUGH,
        Sort.NOT_KNOWN,
    }:
        doubt = Reason.ROUGH
    if doubt is Reason.NONE:
        return understood(day, words)
    options = tuple(_option(row, d) for d in clue.days) if len(clue.days) > 1 else ()
    return confirm(day, words, doubt, options)


__all__ = ["date_spans", "pairwise", "read_date", "read_date_tokens"]
