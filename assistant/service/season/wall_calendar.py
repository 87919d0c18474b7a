"""A calendar for the wall of a village, or for one nursery: who does what on which day.

It shows some weeks from a Monday on and not a calendar month: a season is about forty days, and
at the end of a month a sheet of it would hold next to nothing of what is to come. Of the week
that it is, the days that have gone by are empty: nobody hangs up what is over.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer, Village
from assistant.reminders.diary import DiaryTask, diary
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.season.counts import season_from
from assistant.service.sight import Sight
from assistant.wording.message import Say
from assistant.wording.plan_practice import task_name

WEEK = timedelta(days=7)
WEEKS = 5  # what a sheet in A4 holds
MOST_WEEKS = 8  # from the seed test to transplanting, for one nursery
_ORDER = {code: place for place, code in enumerate(TaskCode)}


@dataclass(frozen=True)
class Who:
    """One nursery under a task. Without a name, a phone's last digits tell neighbours who it
    is; `label` only where a farmer has several nurseries."""

    name: str | None
    digits: str
    label: str | None


@dataclass(frozen=True)
class WallTask:
    """One task of one day, with all who do it; `daily`: it is done every day."""

    name: Say
    who: tuple[Who, ...]
    daily: bool = False


@dataclass(frozen=True)
class WallDay:
    """One day of the sheet."""

    day: date
    jobs: tuple[WallTask, ...]


@dataclass(frozen=True)
class WallCalendar:
    """The sheet: weeks of seven days from a Monday on.

    Either `village` is set, or `nursery` and its `farmer`. `left_out` counts farmers who have
    not agreed to texts or have stopped them: their names are not hung on a wall.
    """

    today: date
    weeks: tuple[tuple[WallDay, ...], ...]
    village: Village | None
    farmer: Farmer | None = None
    nursery: Nursery | None = None
    left_out: int = 0

    @property
    def days(self) -> tuple[WallDay, ...]:
        """The days with something to do."""
        return tuple(day for week in self.weeks for day in week if day.jobs)

    @property
    def first(self) -> date:
        """The Monday on which it begins."""
        return self.weeks[0][0].day

    @property
    def before(self) -> date:
        """Where the sheet before this one begins."""
        return self.first - len(self.weeks) * WEEK

    @property
    def after(self) -> date:
        """Where the next sheet begins."""
        return self.first + len(self.weeks) * WEEK


Mark = tuple[DiaryTask, date, Farmer, Nursery]


def village_calendar(
    house: House, sight: Sight, village_id: int, now: datetime, begin: date | None = None
) -> WallCalendar | None:
    """The sheet of a village from the week of a day on; None for a village not in sight."""
    village = sight.village(village_id)
    if village is None:
        return None
    today = local_date(now, village.zone)
    first = _monday(begin or today)
    with house.store.look() as work:
        found = work.picture.of_season((village.id,), season_from(today))
    agreed = [(farmer, nursery) for farmer, nursery in found if _agreed(farmer)]
    days = [first + timedelta(days=ahead) for ahead in range(7 * WEEKS)]
    return WallCalendar(
        today=today,
        weeks=_weeks(_to_come(_marks(agreed, today), days, today), days, names=True),
        village=village,
        left_out=len({farmer.id for farmer, _ in found} - {farmer.id for farmer, _ in agreed}),
    )


def nursery_calendar(
    house: House, sight: Sight, nursery_id: int, now: datetime, begin: date | None = None
) -> WallCalendar | None:
    """The sheet of one nursery, with the work of every day; None for one not in sight."""
    with house.store.look() as work:
        nursery = work.nurseries.get(nursery_id)
        farmer = work.people.farmer_by_id(nursery.farmer_id) if nursery else None
    if nursery is None or farmer is None or not sight.sees(farmer.village_id):
        return None
    today = local_date(now, sight.zone(farmer.village_id, house.zone))
    marks = list(_marks([(farmer, nursery)], today, daily=True))
    coming = [day for _, day, _, _ in marks if day >= (begin or today)]
    first = _monday(begin or min(coming, default=today))
    last = max(coming, default=first)
    weeks = min(max((last - first) // WEEK + 1, 1), MOST_WEEKS)
    days = [first + timedelta(days=ahead) for ahead in range(7 * weeks)]
    return WallCalendar(
        today=today,
        weeks=_weeks(_to_come(marks, days, today), days, names=False),
        village=sight.village(farmer.village_id),
        farmer=farmer,
        nursery=nursery,
    )


def _agreed(farmer: Farmer) -> bool:
    return farmer.consent_at is not None and farmer.stopped_at is None


def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday())


def _marks(
    nurseries: Iterable[tuple[Farmer, Nursery]], today: date, *, daily: bool = False
) -> Iterator[Mark]:
    for farmer, nursery in nurseries:
        for entry in diary(nursery, today):
            if entry.until is None:
                yield entry, entry.day, farmer, nursery
            elif daily:
                every = entry.task.every_d
                for ahead in range(0, (entry.until - entry.day).days + 1, every):
                    yield entry, entry.day + timedelta(days=ahead), farmer, nursery


def _to_come(marks: Iterable[Mark], days: Sequence[date], today: date) -> list[Mark]:
    """Without the days that are over, unless the sheet begins with earlier weeks."""
    since = today if days[0] == _monday(today) else days[0]
    return [mark for mark in marks if mark[1] >= since]


def _weeks(
    marks: Iterable[Mark], days: Sequence[date], *, names: bool
) -> tuple[tuple[WallDay, ...], ...]:
    by_day: dict[date, list[Mark]] = {day: [] for day in days}
    several: dict[int, set[int]] = {}
    for mark in marks:
        several.setdefault(mark[2].id, set()).add(mark[3].id)
        if mark[1] in by_day:
            by_day[mark[1]].append(mark)
    many = frozenset(farmer_id for farmer_id, beds in several.items() if len(beds) > 1)
    filled = [WallDay(day, tuple(_jobs(found, many, names))) for day, found in by_day.items()]
    return tuple(tuple(filled[at : at + 7]) for at in range(0, len(filled), 7))


def _jobs(marks: list[Mark], many: frozenset[int], names: bool) -> Iterator[WallTask]:
    """The tasks of a day in the order of the season; those that are named alike are one."""
    alike: dict[tuple[object, ...], tuple[Say, list[Mark]]] = {}
    for mark in sorted(marks, key=lambda mark: _ORDER[mark[0].task.code]):
        name = task_name(mark[0].task, mark[3].practice)
        key = (name.message.text, *name.slots.values())
        alike.setdefault(key, (name, []))[1].append(mark)
    for name, found in alike.values():
        who = sorted((_who(mark, many) for mark in found), key=_by_name) if names else ()
        yield WallTask(name, tuple(who), daily=found[0][0].until is not None)


def _who(mark: Mark, many: frozenset[int]) -> Who:
    _, _, farmer, nursery = mark
    label = nursery.called if farmer.id in many else None
    return Who(farmer.name, farmer.phone[-4:], label)


def _by_name(who: Who) -> tuple[str, str, str]:
    return who.name or "\uffff", who.digits, who.label or ""
