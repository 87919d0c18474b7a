"""A reply as it is read for a day, and one thing that it says about it."""

from dataclasses import dataclass
from datetime import date

from dateutil.relativedelta import relativedelta

from assistant.reading.outcomes import Reason
from assistant.reading.pieces import Row
from assistant.reading.text.lexicon import Sort

# A number before these is no day.
ABOUT_ELSE = (Sort.OTHER_UNIT, Sort.UNIT, Sort.PERCENT, Sort.CLOCK)
WEEK = "7"


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
    near_longer: bool = False  # "ares demain": one letter more makes it another day

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


def real(year: int, month: int, day: int) -> tuple[date, ...]:
    """That day, or none."""
    try:
        return (date(year, month, day),)
    except ValueError:
        return ()


def day_start(row: Row, at: int) -> int:
    """Past the words before a day number: tarehe, ika-, a-."""
    spot = row.after(at, Sort.DATE_WORD, Sort.DAYS) if row.sort(at) is Sort.DATE_WORD else at
    return spot + (spot > at and row.mark(spot, "-:"))
