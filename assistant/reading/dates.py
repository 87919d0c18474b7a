"""Dates: today and tomorrow, weekdays, day-first dates, "in 3 days", month names.

Read by a small grammar of our own. Measured: dateutil's parser swaps day and month and fills
gaps with today's parts in silence; dateparser takes "1", "may" and "sat" for dates, knows no
Bengali "3 days later" and no French "next Monday". Babel's names of months and days, and
dateutil's relativedelta for the arithmetic, are good enough and are used.

Read back: a bare day number, a day and weekday that disagree, more than 183 days off, today's
own weekday, "next Friday" where it is not clear which. Asked again: no such day, a day of
another calendar, a word that is both yesterday and tomorrow.
"""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from fractions import Fraction

from assistant.reading.days.clues import find_clues, split_dots
from assistant.reading.days.told import Clue, Told, real
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
from assistant.reading.text.echo import date_words
from assistant.reading.text.fold import LONGEST_REPLY, Token
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.spot import Item

FARTHEST_SURE_DAYS = 183  # half a year: a farther day is likelier a slip
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
    *NUMBER_SORTS,
    Sort.ORDINAL,
    Sort.CLOCK,
    Sort.NOT_KNOWN,
    Sort.SORRY,
    Sort.NO,
    Sort.NOT,
    Sort.NOT_YET,
    Sort.RANGE,
    Sort.PAST_VERB,
    Sort.COMING_VERB,
    Sort.OTHER_UNIT,
    Sort.UNIT,
    Sort.PERCENT,
    Sort.ROUGH,
    Sort.ABOUT,
    Sort.ARTICLE,
    Sort.FARM,
    Sort.FILLER,
    Sort.GREETING,
    Sort.YES,
    Sort.DONE,
)
_DULL = (
    Sort.FILLER,
    Sort.FARM,
    Sort.GREETING,
    Sort.ABOUT,
    Sort.ARTICLE,
    Sort.YES,
    Sort.JOIN,
)
_MARKS = "/-.,:+()"


def read_date(text: str, lexicon: Lexicon, today: date, past: bool = False) -> Reading[date]:
    """The day a reply names. `past`: the question was about a day gone by."""
    if len(text) > LONGEST_REPLY:
        return again(Reason.TOO_LONG)
    found, has_slip = lexicon.mend(text)
    return slipped(read_date_tokens(found, lexicon, today, past), has_slip)


def read_date_tokens(
    found: Sequence[Token], lexicon: Lexicon, today: date, past: bool
) -> Reading[date]:
    """As `read_date`, from tokens."""
    if not found:
        return again(Reason.EMPTY)
    told = _told(found, lexicon, today, past)
    return _Judge(told).of_clues(find_clues(told)) if told else again(Reason.NOT_READ)


def date_spans(found: Sequence[Token], lexicon: Lexicon, today: date) -> frozenset[int]:
    """The places of the tokens that surely speak of a day."""
    told = _told(found, lexicon, today, False)
    clues = [clue for clue in find_clues(told) if not clue.is_bare] if told else []
    pieces = [piece for c in clues if told for piece in told.row.pieces[c.start : c.end]]
    return frozenset(token.at for piece in pieces for token in tokens_of(piece))


def _told(found: Sequence[Token], lexicon: Lexicon, today: date, past: bool) -> Told | None:
    forgiving = (Sort.MONTH, Sort.WEEKDAY, Sort.DAY)
    row = number_items(split_dots(found), lexicon, _SORTS, forgiving)
    if is_broken(row, _MARKS):
        return None
    kept: list[Piece] = []
    for piece in _counted(amounts(row, lexicon, slash=False)):
        if isinstance(piece, Item) and piece.sort is Sort.DONE:
            kept.append(replace(piece, sort=Sort.PAST_VERB))  # kal ho gaya: it was yesterday
        elif not (isinstance(piece, Item) and piece.sort in _DULL):
            kept.append(piece)
    return Told(Row(_settled(kept, lexicon), lexicon), today, past)


def _counted(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """A week ago: the article before a span of time is a one."""
    made = list(pieces)
    for at, (piece, after) in enumerate(zip(pieces, pieces[1:], strict=False)):
        is_span = isinstance(after, Item) and after.sort is Sort.DAYS
        if is_span and isinstance(piece, Item) and piece.sort is Sort.ARTICLE and piece.key:
            made[at] = Amount(Fraction(1), (piece,), is_words=True)
    return tuple(made)


def _settled(pieces: list[Piece], lexicon: Lexicon) -> tuple[Piece, ...]:
    """Words with two meanings by what stands beside them.

    Indonesian minggu and Filipino linggo are Sunday and week; "senin kemarin" is last Monday.
    """
    settled: list[Piece] = []
    for at, piece in enumerate(pieces):
        before = pieces[at - 1] if at else None
        after = pieces[at + 1] if at + 1 < len(pieces) else None
        settled.append(_settle(piece, before, after, lexicon))
    return tuple(settled)


def _settle(piece: Piece, before: Piece | None, after: Piece | None, lexicon: Lexicon) -> Piece:
    if not isinstance(piece, Item):
        return piece
    beside = {p.sort for p in (before, after) if isinstance(p, Item)}
    counted = before is not None and not isinstance(before, Item)
    if piece.sort is Sort.WEEKDAY and lexicon.has(Sort.DAYS, piece.phrase):
        if counted or beside & {Sort.NEXT, Sort.LAST, Sort.AGO, Sort.LATER, Sort.THIS}:
            key = lexicon.phrases[Sort.DAYS][piece.phrase]
            return replace(piece, sort=Sort.DAYS, key=key)
    if piece.sort is Sort.DAY and isinstance(before, Item) and before.sort is Sort.WEEKDAY:
        for sort in (Sort.LAST, Sort.AGO, Sort.NEXT):
            if lexicon.has(sort, piece.phrase):
                return replace(piece, sort=sort)
    return piece


class _Judge:
    """The reading of all the clues of one reply."""

    def __init__(self, told: Told) -> None:
        self.told, self.row, self.sorts = told, told.row, told.row.sorts()

    def of_clues(self, clues: list[Clue]) -> Reading[date]:
        """One day from all the clues, or a question."""
        if not clues:
            known = Sort.NOT_KNOWN in self.sorts
            return again(Reason.NOT_KNOWN if known else Reason.NOT_READ)
        refused = next((clue for clue in clues if clue.refusal), None)
        if refused is not None:
            return again(refused.refusal, self._options(refused.days))
        if any(not clue.days for clue in clues):
            return again(Reason.IMPOSSIBLE)
        if self._has_range(clues):
            days = tuple(clue.days[0] for clue in clues if clue.is_strong or clue.weekday)
            return again(Reason.TWO_VALUES, self._options(days))
        return self._agreed(clues)

    def _options(self, days: Sequence[date]) -> tuple[Option[date], ...]:
        return tuple(Option(day, self._words(day)) for day in dict.fromkeys(days))

    def _words(self, day: date) -> str:
        return date_words(day, self.row.lexicon)

    def _has_range(self, clues: list[Clue]) -> bool:
        """10 or 12 June, 10-12 June, tomorrow or Friday."""
        for first, second in zip(clues, clues[1:], strict=False):
            between = range(first.end, second.start)
            if any(self.row.sort(at) is Sort.RANGE or self.row.mark(at, "-") for at in between):
                return first.weekday is None or not second.is_strong
        return False

    def _agreed(self, clues: list[Clue]) -> Reading[date]:
        strong = [clue for clue in clues if clue.is_strong]
        weekdays = [clue for clue in clues if clue.weekday is not None]
        bare = [clue for clue in clues if clue.is_bare]
        weeks = [clue for clue in clues if clue.is_week]
        months = [clue for clue in clues if clue.month]
        if len(bare) == len(months) == 1 and len(clues) == 2:
            return self._day_of_month(bare[0], months[0])
        if not strong and len(weekdays) == 1 and len(bare) + len(weeks) == 1:
            return self._weekday_and(weekdays[0], (bare + weeks)[0])
        main = strong or weekdays or weeks or months or bare
        if len({clue.days[0] for clue in main}) > 1:
            return self._two_days(main)
        if self._is_refused(main[0]):
            return again(Reason.NEGATED)
        return self._one_day(main[0], weekdays, len(clues) - len(main))

    def _weekday_and(self, weekday: Clue, other: Clue) -> Reading[date]:
        """Friday 12: the coming 12th, which must be a Friday. Monday next week."""
        day = other.days[0]
        if other.is_week and weekday.weekday is not None:
            off = (day - self.told.today).days + weekday.weekday - day.weekday()
            days = self.told.shifted(off) or other.days
            return self._answer(replace(other, days=days, doubt=Reason.NONE))
        if day.weekday() != weekday.weekday:
            return confirm(day, self._words(day), Reason.DAY_MISMATCH)
        return self._answer(replace(other, doubt=Reason.NONE))

    def _day_of_month(self, bare: Clue, month: Clue) -> Reading[date]:
        """The 15th of this month; next month, the 5th."""
        number = self.told.number(bare.number_at, 2)
        days = real(*month.month, number) if month.month and number else ()
        if not days:
            return again(Reason.IMPOSSIBLE)
        return self._answer(replace(bare, days=days, doubt=Reason.NONE))

    def _two_days(self, clues: list[Clue]) -> Reading[date]:
        """Two days: the later-said one, where the reply corrects itself."""
        days = tuple(dict.fromkeys(clue.days[0] for clue in clues))
        first, last = clues[-2], clues[-1]
        corrected = self.row.sorts(first.end, last.start) & {Sort.NO, Sort.SORRY}
        if corrected and len(days) == 2:
            return self._answer(replace(last, doubt=Reason.CORRECTED))
        return again(Reason.TWO_VALUES, self._options(days[:4]))

    def _is_refused(self, clue: Clue) -> bool:
        """Not tomorrow; kal nahi."""
        return self.row.sort(clue.start - 1) is Sort.NOT or self.row.sort(clue.end) in (
            Sort.NO,
            Sort.NOT,
        )

    def _one_day(self, clue: Clue, weekdays: list[Clue], others: int) -> Reading[date]:
        day = clue.days[0]
        if any(weekday.weekday != day.weekday() for weekday in weekdays):
            return confirm(day, self._words(day), Reason.DAY_MISMATCH)
        if others > len(weekdays) * clue.is_strong:
            return self._answer(replace(clue, doubt=clue.doubt or Reason.TWO_VALUES))
        settled = clue.is_strong and weekdays and clue.doubt is Reason.AMBIGUOUS
        return self._answer(replace(clue, doubt=Reason.NONE) if settled else clue)

    def _answer(self, clue: Clue) -> Reading[date]:
        day = clue.days[0]
        off, words = (day - self.told.today).days, self._words(day)
        if abs(off) > FARTHEST_DAYS:
            return again(Reason.FAR_OFF)
        if abs(off) > FARTHEST_SURE_DAYS:
            return confirm(day, words, Reason.FAR_OFF)
        doubt = clue.doubt or self._mood(off) or self._edge(clue)
        if not doubt:
            return understood(day, words)
        options = self._options(clue.days) if len(clue.days) > 1 else ()
        return confirm(day, words, doubt, options)

    def _edge(self, clue: Clue) -> Reason:
        """Before 15 June; after 15 June."""
        item = self.row.get(clue.start - 1)
        if not isinstance(item, Item) or item.sort not in (Sort.AGO, Sort.LATER):
            return Reason.NONE
        lexicon, plain = self.row.lexicon, (Sort.ARTICLE, Sort.DATE_WORD, Sort.FILLER)
        is_plain = any(lexicon.has(sort, item.phrase) for sort in plain)
        return Reason.NONE if is_plain else Reason.ROUGH

    def _mood(self, off: int) -> Reason:
        """What the words around the day leave in doubt."""
        if self.told.past and off > 0:
            return Reason.WRONG_WAY
        vague = {Sort.NOT, Sort.NOT_YET, Sort.RANGE, Sort.ROUGH, Sort.NOT_KNOWN}
        asks = any(self.row.mark(at, "?") for at in range(len(self.row.pieces)))
        if self.row.opens_with_not():
            return Reason.CORRECTED
        return Reason.ROUGH if asks or self.sorts & vague else Reason.NONE
