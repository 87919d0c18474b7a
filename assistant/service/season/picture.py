"""The season picture: where every nursery stands, by village, and what is due this week.

All nurseries are counted from few columns; only those that are drawn are read whole. Nurseries
with the same days since sowing share one reckoning, so that five thousand cost little more than
fifty.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from itertools import groupby

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.stages import Stage
from assistant.people import Village
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.season.bars import Axis, Bar, axis_of, bar_of
from assistant.service.season.counts import (
    CountedAlike,
    CountedNursery,
    SharedStages,
    counted_alike,
    strokes_of,
)
from assistant.service.sight import Sight
from assistant.store import Stroke, Work
from assistant.wording.day import TASK_TEXTS
from assistant.wording.message import Say

WEEK_D = 7
ON_A_PAGE = 50


@dataclass(frozen=True)
class Chosen:
    """What the picture is held to; `task` and `on` show who has that task on that day."""

    village_id: int | None = None
    stage: Stage | None = None
    practice: str | None = None
    task: TaskCode | None = None
    on: date | None = None
    page: int = 1

    @property
    def one_by_one(self) -> bool:
        """Whether nurseries are shown, and not only counted by village."""
        return bool(self.village_id or self.stage or self.task)


@dataclass(frozen=True)
class VillageStages:
    """One village: how many of its nurseries stand at each stage."""

    village: Village | None
    counts: Mapping[Stage, int]
    in_all: int


@dataclass(frozen=True)
class DueRow:
    """One task: how many nurseries have it on each day of the week."""

    task: TaskCode
    name: Say
    counts: tuple[int, ...]


@dataclass(frozen=True)
class PracticeName:
    """A practice in a list of choices."""

    code: str
    name: str


@dataclass(frozen=True)
class SeasonPicture:
    """The page. Either `rows` (by village) or `bars` (by nursery) are filled."""

    today: date
    chosen: Chosen
    villages: tuple[Village, ...]
    practices: tuple[PracticeName, ...]
    week: tuple[date, ...]
    due: tuple[DueRow, ...]
    rows: tuple[VillageStages, ...]
    total: VillageStages
    axis: Axis | None
    bars: tuple[Bar, ...]
    pages: int

    @property
    def village(self) -> Village | None:
        """The village that was chosen."""
        ours = (each for each in self.villages if each.id == self.chosen.village_id)
        return next(ours, None)


def season_picture(
    house: House, sight: Sight, now: datetime, chosen: Chosen | None = None
) -> SeasonPicture:
    """The season in the villages of an officer, or in one of them.

    An officer of one village is shown its nurseries at once.
    """
    asked = _in_sight(sight, chosen or Chosen())
    village = sight.village(asked.village_id)
    today = local_date(now, village.zone if village else house.zone)
    week = tuple(today + timedelta(days=ahead) for ahead in range(WEEK_D))
    with house.store.look() as work:
        all_of_it = counted_alike(work, house, sight, now, asked.village_id, asked.practice)
        picked = [each for each in all_of_it if _is_asked_for(each.one, asked)]
        shown, page, pages = _page(work, house, sight, now, picked, asked)
        bars = _bars(work, house, sight, now, shown)
    return SeasonPicture(
        today=today,
        chosen=replace(asked, page=page),
        villages=sight.villages,
        practices=_practices(house, sight),
        week=week,
        due=_due(all_of_it, week),
        rows=() if asked.one_by_one else tuple(_rows(picked, sight)),
        total=_row(None, picked),
        axis=axis_of(bars, today) if bars else None,
        bars=bars,
        pages=pages,
    )


def _is_asked_for(each: CountedNursery, chosen: Chosen) -> bool:
    """Whether a nursery is of the stage, and has the task, that were chosen."""
    at_stage = chosen.stage in (None, each.stage)
    return at_stage and (chosen.on is None or each.has(chosen.task, chosen.on))


def _in_sight(sight: Sight, chosen: Chosen) -> Chosen:
    """What was asked for, without what is not there; the only village of an officer."""
    village = sight.village(chosen.village_id)
    if village is None and len(sight.villages) == 1 and not sight.officer.is_lead:
        village = sight.villages[0]
    both = chosen.task is not None and chosen.on is not None
    return Chosen(
        village_id=village.id if village else None,
        stage=chosen.stage,
        practice=chosen.practice,
        task=chosen.task if both else None,
        on=chosen.on if both else None,
        page=chosen.page,
    )


def _practices(house: House, sight: Sight) -> tuple[PracticeName, ...]:
    """Those that are offered in these villages, for a choice between them."""
    offered = {code for village in sight.villages for code in village.practices}
    language = sight.officer.language
    return tuple(
        PracticeName(code, practice.name(language))
        for code, practice in house.store.practices.items()
        if code in offered
    )


# --- by village ------------------------------------------------------------------------------


def _rows(picked: Iterable[CountedAlike], sight: Sight) -> Iterator[VillageStages]:
    """Every village of the officer, also an empty one, and farmers of none."""
    by_village: dict[int | None, list[CountedAlike]] = {each.id: [] for each in sight.villages}
    for each in picked:
        by_village.setdefault(each.one.stroke.village_id, []).append(each)
    for village_id, nurseries in by_village.items():
        yield _row(sight.village(village_id), nurseries)


def _row(village: Village | None, nurseries: Iterable[CountedAlike]) -> VillageStages:
    counts: Counter[Stage] = Counter()
    for each in nurseries:
        counts[each.one.stage] += each.number
    return VillageStages(village, counts, counts.total())


def _due(nurseries: Iterable[CountedAlike], week: tuple[date, ...]) -> tuple[DueRow, ...]:
    """The week's tasks of nurseries at all stages, in the order of the season."""
    alike: Counter[tuple[SharedStages, date]] = Counter()
    for each in nurseries:
        alike[each.one.kind, each.one.stroke.sow_date] += each.number
    counts: Counter[tuple[TaskCode, date]] = Counter()
    for (kind, sow_date), how_many in alike.items():
        for task, day in kind.due:
            counts[task, sow_date + timedelta(days=day)] += how_many
    by_day = {task: tuple(counts[task, on] for on in week) for task in TaskCode}
    return tuple(
        DueRow(task, TASK_TEXTS[task].what(), found)
        for task, found in by_day.items()
        if any(found)
    )


# --- by nursery ------------------------------------------------------------------------------


def _page(
    work: Work,
    house: House,
    sight: Sight,
    now: datetime,
    picked: Sequence[CountedAlike],
    chosen: Chosen,
) -> tuple[tuple[Stroke, ...], int, int]:
    """One page of nurseries by village and sowing day, its number, and how many there are. Only
    the sowing days that are on it are read."""
    if not chosen.one_by_one:
        return (), 1, 1
    in_all = sum(each.number for each in picked)
    pages = max(1, -(-in_all // ON_A_PAGE))
    page = min(max(chosen.page, 1), pages)
    rank = _rank(sight)
    groups = sorted(picked, key=lambda each: rank(each.one.stroke))
    start = (page - 1) * ON_A_PAGE
    read, skipped = _around(groups, rank, start)
    found = strokes_of(work, house, sight, now, read)
    ordered = sorted(found, key=lambda each: (*rank(each), each.id))
    return tuple(ordered[start - skipped : start - skipped + ON_A_PAGE]), page, pages


Rank = Callable[[Stroke], tuple[int, date]]


def _rank(sight: Sight) -> Rank:
    """The place of its village and its sowing day."""
    places = {village.id: place for place, village in enumerate(sight.villages)}
    return lambda each: (places.get(each.village_id or 0, len(places)), each.sow_date)


def _around(
    groups: Sequence[CountedAlike], rank: Rank, start: int
) -> tuple[list[CountedAlike], int]:
    """The groups, in their order, that a page from `start` on lies in, and how many nurseries
    are before those."""
    read: list[CountedAlike] = []
    here = skipped = 0
    for _, alike in groupby(groups, key=lambda each: rank(each.one.stroke)):
        some = list(alike)
        count = sum(each.number for each in some)
        if here + count <= start:
            skipped += count
        elif here < start + ON_A_PAGE:
            read += some
        here += count
    return read, skipped


def _bars(
    work: Work, house: House, sight: Sight, now: datetime, shown: Sequence[Stroke]
) -> tuple[Bar, ...]:
    whole = work.picture.whole([each.id for each in shown])
    return tuple(
        bar_of(
            *whole[each.id],
            sight.village(each.village_id),
            local_date(now, sight.zone(each.village_id, house.zone)),
        )
        for each in shown
        if each.id in whole
    )
