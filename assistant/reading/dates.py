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
from functools import lru_cache

from assistant.reading.days.clues import find_clues
from assistant.reading.days.telling import tell
from assistant.reading.days.told import Clue, Told, real
from assistant.reading.numbers import (
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
from assistant.reading.text.echo import date_words
from assistant.reading.text.fold import LONGEST_REPLY, TEXTS_IN_HAND, Token, read_tokens
from assistant.reading.text.lexicon import Lexicon, Sort
from assistant.reading.text.spot import Item, items

FARTHEST_SURE_DAYS = 183  # half a year: a farther day is likelier a slip
FARTHEST_DAYS = 1100  # three years: no nursery is planned or told about so far off


@lru_cache(maxsize=TEXTS_IN_HAND)
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
    told = tell(found, lexicon, today, past)
    return _Judge(told).of_clues(find_clues(told)) if told else again(Reason.NOT_READ)


@lru_cache(maxsize=TEXTS_IN_HAND)
def names_day(text: str, lexicon: Lexicon, today: date) -> bool:
    """Whether a text surely speaks of a day: a bare number does not."""
    if len(text) > LONGEST_REPLY:
        return False
    found, _ = lexicon.mend(text)
    return bool(found) and bool(date_spans(found, lexicon, today))


def names_days(text: str, lexicon: Lexicon) -> bool:
    """Whether a text has the word for days, as in "120 days"; weeks and months are longer."""
    row = items(read_tokens(text[:LONGEST_REPLY]), lexicon, (Sort.DAYS,))
    return any(item.sort is Sort.DAYS and item.key == "1" for item in row)


def without_day(text: str, lexicon: Lexicon, today: date) -> str:
    """The words of a text that do not speak of a day."""
    found, _ = lexicon.mend(text[:LONGEST_REPLY])
    spans = date_spans(found, lexicon, today)
    return " ".join(token.text for token in found if token.at not in spans)


def denies(text: str, lexicon: Lexicon) -> bool:
    """Whether a text holds a no or a not: "not tomorrow"."""
    found = read_tokens(text[:LONGEST_REPLY])
    row = items(found, lexicon, (Sort.NO, Sort.NOT, Sort.NOT_YET))
    return any(item.sort is not None for item in row)


def date_spans(found: Sequence[Token], lexicon: Lexicon, today: date) -> frozenset[int]:
    """The places of the tokens that surely speak of a day."""
    told = tell(found, lexicon, today, False)
    clues = [clue for clue in find_clues(told) if not clue.is_bare] if told else []
    pieces = [piece for c in clues if told for piece in told.row.pieces[c.start : c.end]]
    return frozenset(token.at for piece in pieces for token in tokens_of(piece))


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
        """Before 15 June; after Monday; every Friday; somvar ke baad."""
        places = [clue.start - 1]
        if clue.weekday is not None:  # its own words may be "after", too
            places.append(clue.end - 1 if self.row.lexicon.edge_after else clue.start)
        if self.row.lexicon.edge_after:
            places.append(clue.end)
        items = (self.row.get(at) for at in places)
        edges = (Sort.EDGE, Sort.AGO, Sort.LATER)
        found = [i for i in items if isinstance(i, Item) and i.sort in edges]
        is_edge = any(self.row.lexicon.has(Sort.EDGE, item.phrase) for item in found)
        return Reason.ROUGH if is_edge else Reason.NONE

    def _mood(self, off: int) -> Reason:
        """What the words around the day leave in doubt."""
        if self.told.past and off > 0:
            return Reason.WRONG_WAY
        vague = {Sort.NOT, Sort.NOT_YET, Sort.RANGE, Sort.ROUGH, Sort.NOT_KNOWN}
        asks = any(self.row.mark(at, "?") for at in range(len(self.row.pieces)))
        if self.row.opens_with_not():
            return Reason.CORRECTED
        if self.told.near_longer:
            return Reason.MISSPELT
        return Reason.ROUGH if asks or self.sorts & vague else Reason.NONE
