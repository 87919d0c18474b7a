"""All messages taken together: how many, what became of them, what they cost, the latest."""

from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from enum import StrEnum
from functools import partial
from typing import TypeVar
from zoneinfo import ZoneInfo

from assistant.people import Village
from assistant.service.day_counts import live
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.sight import Sight
from assistant.store import TextState, Work
from assistant.store.queries.ledger import Place, TimeSpan
from assistant.store.values_books import (
    HeardCounts,
    HeardLine,
    LostTexts,
    MonthCounts,
    SentLine,
    TextCounts,
)

PAGE_LINES = 50
MOST_MONTHS = 24
MONTHS_A_YEAR = 12
LONGEST_KEY = 200
ONE_DAY = timedelta(days=1)


class Which(StrEnum):
    """What the list of single messages is held to."""

    ALL = ""
    WAITING = "waiting"
    ACCEPTED = "accepted"
    DELIVERED = "delivered"
    FAILED = "failed"
    EXPIRED = "expired"
    WITHDRAWN = "withdrawn"
    HEARD = "heard"


class LossCause(StrEnum):
    """Why a text did not arrive."""

    REFUSED = "refused"  # the operator never took it
    GIVEN_UP = "given_up"  # it took it and could not deliver it
    OFF = "off"  # the phone was not reached before the text was worthless
    LINE = "line"  # it never left us


@dataclass(frozen=True)
class CountLine:
    """The messages of one village in one month; no village: officers and unknown phones.

    `segments` are those that the operator is paid for; `cost` is None where no price is set.
    """

    village: Village | None
    month: date
    sent: TextCounts
    heard: HeardCounts
    segments: int
    cost: Decimal | None

    @property
    def texts(self) -> int:
        """Texts that went out or were meant to."""
        each = self.sent
        return each.waiting + each.accepted + each.delivered + each.failed + each.expired

    @property
    def parts(self) -> tuple[tuple[str, int], ...]:
        """What became of them, for a bar."""
        names = ("delivered", "accepted", "waiting", "failed", "expired")
        return tuple((name, getattr(self.sent, name)) for name in names)


@dataclass(frozen=True)
class LossReason:
    """Texts that were lost for one reason, in the operator's own words if it gave any."""

    why: LossCause
    words: str
    texts: int


@dataclass(frozen=True)
class OneSent:
    """One outgoing text; times are local, `farmer_id` is None where nobody may be looked at."""

    line: SentLine
    village: Village | None
    farmer_id: int | None


@dataclass(frozen=True)
class OneHeard:
    """One incoming message, in the same way."""

    line: HeardLine
    village: Village | None
    farmer_id: int | None


@dataclass(frozen=True)
class Messages:
    """The page. The counts are by village for one month, or by month for one village."""

    villages: tuple[Village, ...]
    chosen: Village | None
    months: tuple[date, ...]
    month: date
    which: Which
    counts: tuple[CountLine, ...]
    in_all: CountLine
    reasons: tuple[LossReason, ...]
    sent: tuple[OneSent, ...]
    heard: tuple[OneHeard, ...]
    older: str | None
    price: Decimal | None
    currency: str

    @property
    def longest(self) -> int:
        """The most texts of a line: what the bars are measured by."""
        return max((line.texts for line in self.counts), default=0) or 1


@dataclass(frozen=True)
class MessageFilter:
    """What somebody wants to see; what cannot be is left out."""

    village_id: int | None = None
    month: str = ""
    which: str = ""
    before: str = ""


def messages(house: House, sight: Sight, wanted: MessageFilter, now: datetime) -> Messages:
    """The messages of an officer's villages, or of one of them."""
    chosen = sight.village(wanted.village_id)
    with house.store.look() as work:
        book = _Book(work, house, sight, chosen, now)
        months = _months(house, work.ledger.since(), now)
        month = next((each for each in months if f"{each:%Y-%m}" == wanted.month), months[0])
        counts = book.by_month(months) if chosen else book.by_village(month)
        lost = book.lost(month)
        which = Which(wanted.which) if wanted.which in list(Which) else Which.ALL
        sent, heard, older = book.latest(month, which, read_place(wanted.before))
    return Messages(
        villages=sight.villages,
        chosen=chosen,
        months=months,
        month=month,
        which=which,
        counts=counts,
        in_all=_in_all(counts, month),
        reasons=_reasons(lost),
        sent=sent,
        heard=heard,
        older=older,
        price=house.tariff.per_segment if house.tariff else None,
        currency=house.tariff.currency if house.tariff else "",
    )


@dataclass(frozen=True)
class Months:
    """Segments and cost of all villages, month by month, the latest month first; the last line
    and `in_all` are sums."""

    months: tuple[date, ...]
    lines: tuple[tuple[Village | None, tuple[CountLine, ...]], ...]
    in_all: tuple[CountLine, ...]
    price: Decimal | None
    currency: str


def messages_by_month(house: House, sight: Sight, now: datetime) -> Months:
    """What an officer's villages took in segments and money in each of the last months."""
    with house.store.look() as work:
        book = _Book(work, house, sight, None, now)
        months = _months(house, work.ledger.since(), now)[:MONTHS_A_YEAR]
        lines = book.by_village_and_month(months)
    sums = tuple(
        _in_all(tuple(own[at] for _, own in lines), month) for at, month in enumerate(months)
    )
    return Months(
        months=months,
        lines=lines,
        in_all=sums,
        price=house.tariff.per_segment if house.tariff else None,
        currency=house.tariff.currency if house.tariff else "",
    )


# --- months ----------------------------------------------------------------------------------


def _months(house: House, since: datetime | None, now: datetime) -> tuple[date, ...]:
    """The months that there were texts in, the latest first."""
    first = local_date(since or now, house.zone).replace(day=1)
    month = local_date(now, house.zone).replace(day=1)
    found: list[date] = []
    while month >= first and len(found) < MOST_MONTHS:
        found.append(month)
        month = _month_after(month, -1)
    return tuple(found) or (local_date(now, house.zone).replace(day=1),)


def _month_after(month: date, by: int) -> date:
    number = month.year * MONTHS_A_YEAR + month.month - 1 + by
    return date(number // MONTHS_A_YEAR, number % MONTHS_A_YEAR + 1, 1)


def read_place(key: str) -> Place | None:
    """Where a page of the list begins, from its address; None for what is no such place."""
    moment, _, number = key[:LONGEST_KEY].partition(" ")
    try:
        at = datetime.fromisoformat(moment)
    except ValueError:
        return None
    return (at, number) if at.tzinfo is not None and number else None


def _place(at: datetime, number: int | str) -> str:
    return f"{at.isoformat()} {number}"


R = TypeVar("R")
MANY = 10_000  # texts of days that are over, which are not counted each time


def _are_many(counts: tuple[MonthCounts, ...]) -> bool:
    return sum(each.sent.accepted + each.sent.delivered for each in counts) >= MANY


def _lost_many(lost: tuple[LostTexts, ...]) -> bool:
    return sum(each.texts for each in lost) >= MANY // 10


# --- counts ----------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Book:
    """One officer's look into the ledger, in one transaction."""

    work: Work
    house: House
    sight: Sight
    chosen: Village | None
    now: datetime

    def span(self, month: date) -> TimeSpan:
        """A month of the programme's time in the villages that are looked at."""
        zone = ZoneInfo(self.house.zone)
        start, end = (
            datetime.combine(day, time(), zone) for day in (month, _month_after(month, 1))
        )
        if self.chosen:
            return TimeSpan(start, end, (self.chosen.id,))
        return TimeSpan(start, end, self.sight.village_ids, self.sight.officer.is_lead)

    def counted(self, months: Sequence[date]) -> Mapping[tuple[int | None, date], MonthCounts]:
        """By village and month: days that were counted once for all, and the last few now."""
        last = self.work.ledger.days.last()
        first, end = months[-1], _month_after(months[0], 1)
        found: dict[tuple[int | None, date], MonthCounts] = {}
        if last is not None:
            for each in self.work.ledger.days.by_month(first, end, self.span(first)):
                found[each.sent.village_id, each.month] = each
        for month in months:
            for each in self._unsettled(month, last):
                key = each.sent.village_id, month
                found[key] = _plus(found.get(key), each)
        return found

    def _unsettled(self, month: date, last: date | None) -> Iterable[MonthCounts]:
        """What is not counted yet of a month."""
        span = self.span(month)
        if last is not None:
            span = replace(span, start=max(span.start, self._begin(last + ONE_DAY)))
        for part, kept in self._parts(span):
            find = partial(self._live, month, part)
            key = ("live", part, month)
            yield from self._recent(key, find, _are_many) if kept else find()

    def _live(self, month: date, span: TimeSpan) -> tuple[MonthCounts, ...]:
        return tuple(live(self.work, month, span))

    def lost(self, month: date) -> tuple[LostTexts, ...]:
        """What failed or came too late in a month."""
        found: list[LostTexts] = []
        for part, kept in self._parts(self.span(month)):
            find = partial(self.work.ledger.lost, part)
            some = self._recent(("lost", part), find, _lost_many) if kept else find()
            found += some
        return tuple(found)

    def _parts(self, span: TimeSpan) -> Iterator[tuple[TimeSpan, bool]]:
        """The days of a span that are over, and today; whether the counts of a part may be some
        minutes old."""
        today = self._begin(local_date(self.now, self.house.zone))
        if span.start < min(today, span.end):
            yield replace(span, end=min(today, span.end)), True
        if max(span.start, today) < span.end:
            yield replace(span, start=max(span.start, today)), False

    def _begin(self, day: date) -> datetime:
        return datetime.combine(day, time(), ZoneInfo(self.house.zone))

    def _recent(self, key: Hashable, find: Callable[[], R], is_large: Callable[[R], bool]) -> R:
        _, found = self.house.recent.find(key, self.now, find, is_large)
        return found

    def by_village(self, month: date) -> tuple[CountLine, ...]:
        """One line a village, by name; last what is of no village."""
        counted = self.counted((month,))
        return tuple(self._line(each, month, counted) for each in self.whose())

    def by_village_and_month(
        self, months: Sequence[date]
    ) -> tuple[tuple[Village | None, tuple[CountLine, ...]], ...]:
        """Each village with a line for each of these months."""
        counted = self.counted(months)
        return tuple(
            (each, tuple(self._line(each, month, counted) for month in months))
            for each in self.whose()
        )

    def whose(self) -> tuple[Village | None, ...]:
        """The villages that are looked at, by name; last none, where everybody is."""
        if self.chosen:
            return (self.chosen,)
        nobodys = (None,) if self.sight.officer.is_lead else ()
        return (*self.sight.villages, *nobodys)

    def by_month(self, months: Sequence[date]) -> tuple[CountLine, ...]:
        """One line a month of the chosen village, the latest first."""
        counted = self.counted(months)
        return tuple(self._line(self.chosen, month, counted) for month in months)

    def _line(
        self,
        village: Village | None,
        month: date,
        counted: Mapping[tuple[int | None, date], MonthCounts],
    ) -> CountLine:
        key = village.id if village else None
        found = counted.get((key, month)) or MonthCounts.none(key, month)
        return CountLine(
            village=village,
            month=month,
            sent=found.sent,
            heard=found.heard,
            segments=found.sent.segments,
            cost=_cost(self.house, found.sent.segments),
        )

    # --- one by one --------------------------------------------------------------------------

    def latest(
        self, month: date, which: Which, before: Place | None
    ) -> tuple[tuple[OneSent, ...], tuple[OneHeard, ...], str | None]:
        """A page of single messages, and where the next one begins."""
        if which is Which.HEARD:
            heard = self.work.ledger.latest_heard(
                self.span(month), PAGE_LINES + 1, before=before
            )
            last = heard[PAGE_LINES - 1] if len(heard) > PAGE_LINES else None
            older = _place(last.at, last.gateway_id) if last else None
            return (), tuple(map(self._heard, heard[:PAGE_LINES])), older
        sent = self.work.ledger.latest_sent(
            self.span(month), PAGE_LINES + 1, states=_STATES[which], before=_numbered(before)
        )
        end = sent[PAGE_LINES - 1] if len(sent) > PAGE_LINES else None
        older = _place(end.due_at, end.id) if end else None
        return tuple(map(self._sent, sent[:PAGE_LINES])), (), older

    def _sent(self, line: SentLine) -> OneSent:
        zone = self._zone(line.village_id)
        local = replace(
            line,
            due_at=line.due_at.astimezone(zone),
            accepted_at=line.accepted_at.astimezone(zone) if line.accepted_at else None,
            delivered_at=line.delivered_at.astimezone(zone) if line.delivered_at else None,
        )
        return OneSent(local, self.sight.village(line.village_id), self._farmer(line))

    def _heard(self, line: HeardLine) -> OneHeard:
        local = replace(line, at=line.at.astimezone(self._zone(line.village_id)))
        return OneHeard(local, self.sight.village(line.village_id), self._farmer(line))

    def _farmer(self, line: SentLine | HeardLine) -> int | None:
        """The farmer to go on to; one who has moved away may not be this officer's any more."""
        return line.farmer_id if self.sight.sees(line.lives_in) else None

    def _zone(self, village_id: int | None) -> ZoneInfo:
        return ZoneInfo(self.sight.zone(village_id, self.house.zone))


_STATES: dict[Which, tuple[TextState, ...]] = {
    Which.ALL: (),
    Which.WAITING: (TextState.WAITING, TextState.CLAIMED),
    Which.ACCEPTED: (TextState.ACCEPTED,),
    Which.DELIVERED: (TextState.DELIVERED,),
    Which.FAILED: (TextState.FAILED,),
    Which.EXPIRED: (TextState.EXPIRED,),
    Which.WITHDRAWN: (TextState.WITHDRAWN,),
}


def _numbered(before: Place | None) -> Place | None:
    """A place in the list of texts, whose ids are numbers."""
    if before is None or not str(before[1]).isdecimal():
        return None
    return before[0], int(before[1])


def _cost(house: House, segments: int) -> Decimal | None:
    return house.tariff.cost(segments) if house.tariff else None


def _plus(one: MonthCounts | None, other: MonthCounts) -> MonthCounts:
    if one is None:
        return other
    return MonthCounts(one.month, one.sent.plus(other.sent), one.heard.plus(other.heard))


def _in_all(lines: tuple[CountLine, ...], month: date) -> CountLine:
    def added(kind: str, name: str) -> int:
        return sum(getattr(getattr(line, kind), name) for line in lines)

    sent = ("waiting", "accepted", "delivered", "failed", "expired", "withdrawn", "segments")
    heard = ("texts", "sessions", "rings")
    costs = [line.cost for line in lines if line.cost is not None]
    return CountLine(
        village=None,
        month=month,
        sent=TextCounts(None, *(added("sent", name) for name in sent)),
        heard=HeardCounts(None, *(added("heard", name) for name in heard)),
        segments=sum(line.segments for line in lines),
        cost=sum(costs, Decimal(0)) if costs else None,
    )


# --- reasons ---------------------------------------------------------------------------------


def _why(lost: LostTexts) -> LossCause:
    if lost.state is TextState.FAILED:
        return LossCause.GIVEN_UP if lost.taken else LossCause.REFUSED
    return LossCause.OFF if lost.taken else LossCause.LINE


def _reasons(lost: Iterable[LostTexts]) -> tuple[LossReason, ...]:
    """The reasons of all villages together, the most frequent first."""
    counted: dict[tuple[LossCause, str], int] = {}
    for each in lost:
        key = _why(each), each.detail
        counted[key] = counted.get(key, 0) + each.texts
    found = (LossReason(why, words, texts) for (why, words), texts in counted.items())
    return tuple(sorted(found, key=lambda each: (-each.texts, each.why, each.words)))
