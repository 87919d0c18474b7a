"""Counts the messages of each day once nothing of it changes any more.

A season is hundreds of thousands of texts; a page that counted them all each time would take
longer than an officer waits. So the worker counts each day when it is settled, and pages add
those up and count only the last few days themselves.
"""

from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from assistant.service.days import local_date
from assistant.service.house import House
from assistant.store import Work
from assistant.store.queries.ledger import TimeSpan
from assistant.store.values_books import HeardCounts, MonthCounts, TextCounts

ONE_DAY = timedelta(days=1)
SETTLED_D = 8  # a warning may be sent three days ahead and last three; receipts come late
AT_ONCE = 10  # days in one transaction, where the worker has been away


def count_days(house: House, now: datetime) -> int:
    """Counts the days that are settled and not counted yet, the oldest first; how many.

    A count is of what is kept then; what a late receipt says after it shows in the list only.
    """
    until = local_date(now, house.zone) - timedelta(days=SETTLED_D)
    with house.store.look() as work:
        first = _first(work, house)
    if first is None or first > until:
        return 0
    days = [first + n * ONE_DAY for n in range(min((until - first).days + 1, AT_ONCE))]
    with house.store.work() as work:
        for day in days:
            if not work.ledger.days.keep(day, _counted(work, day, span_of(house, day))):
                return 0  # another worker is at it
    return len(days)


def _first(work: Work, house: House) -> date | None:
    """The first day that is not counted; None before anything was sent."""
    last = work.ledger.days.last()
    if last is not None:
        return last + ONE_DAY
    since = work.ledger.since()
    return local_date(since, house.zone) if since else None


def span_of(house: House, first: date, last: date | None = None) -> TimeSpan:
    """Days of the programme's time in all villages and none."""
    zone, after = ZoneInfo(house.zone), (last or first) + ONE_DAY
    start, end = (datetime.combine(each, time(), zone) for each in (first, after))
    return TimeSpan(start, end, (), everybody=True)


def _counted(work: Work, day: date, span: TimeSpan) -> Iterator[MonthCounts]:
    villages = tuple(village.id for village in work.people.villages())
    return live(work, day, TimeSpan(span.start, span.end, villages, everybody=True))


def live(work: Work, month: date, span: TimeSpan) -> Iterator[MonthCounts]:
    """The messages of a span by village, counted now; `month` is what they are counted for."""
    sent = {each.village_id: each for each in work.ledger.sent(span)}
    heard = {each.village_id: each for each in work.ledger.heard(span)}
    lost = (
        _lost(work, span) if any(each.failed or each.expired for each in sent.values()) else {}
    )
    for village_id in {*sent, *heard, *lost}:
        texts = sent.get(village_id) or TextCounts.none(village_id)
        texts = texts.billed_too(lost.get(village_id, 0))
        yield MonthCounts(month, texts, heard.get(village_id) or HeardCounts.none(village_id))


def _lost(work: Work, span: TimeSpan) -> dict[int | None, int]:
    """Segments of texts that were taken and never arrived, by village."""
    lost: dict[int | None, int] = {}
    for each in work.ledger.lost(span):
        if each.taken:
            lost[each.village_id] = lost.get(each.village_id, 0) + each.segments
    return lost
