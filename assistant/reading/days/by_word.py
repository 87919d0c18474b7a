"""Days told by words: tomorrow, in 3 days, next week, Friday."""

from datetime import date

from assistant.reading.days.told import WEEK, Clue, Told
from assistant.reading.outcomes import Reason
from assistant.reading.pieces import Row
from assistant.reading.text.lexicon import Sort


def signed_at(told: Told, at: int) -> Clue | None:
    """+3 is in three days; -3 is likelier "three days ago" than a day, and is read back."""
    row, count = told.row, told.number(at + 1, 3)
    if not row.mark(at, "+-") or row.glued(at) or not row.glued(at + 1) or count is None:
        return None
    end = at + 2 + (row.sort(at + 2) is Sort.DAYS)
    if row.mark(at, "+"):
        return Clue(at, end, told.shifted(count))
    return Clue(at, end, told.shifted(-count), doubt=Reason.UNUSUAL)


def span_at(told: Told, at: int) -> Clue | None:
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


def this_month_at(told: Told, at: int) -> Clue | None:
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
    is_week = count is None and unit == WEEK
    return Clue(*place, told.shifted(days, months), is_week=is_week, doubt=doubt)


def day_word_at(told: Told, at: int) -> Clue | None:
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


def weekday_at(told: Told, at: int) -> Clue | None:
    """Friday: the coming one, or with `past` the last one; next Friday, last Friday."""
    row = told.row
    around = (Sort.NEXT, Sort.LAST, Sort.THIS, Sort.LATER, Sort.AGO)
    spot = row.after(at, *around)
    item = row.item(spot, Sort.WEEKDAY)
    if item is None:
        return None
    end = row.after(spot + 1, *around)
    if row.key(end) == WEEK and row.sort(end + 1) is Sort.THIS:
        end += 2
    elif row.key(end) == WEEK and end > spot + 1:
        end = spot + 1  # "Monday next week": the week is a clue of its own
    words = row.sorts(at, end) - {Sort.DAYS}
    days, doubt = _weekday(told, int(item.key), words)
    if row.key(end) == WEEK and not row.sorts(end + 1, end + 2) & set(around):
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
