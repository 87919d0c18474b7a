"""Season results: area planted, seed against plan, establishment, dates kept, mats.

A nursery belongs to the season in which it was sown. What was told at its end stands beside
what was planned; one that nobody told of is shown as that, and counts in no share.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from functools import cached_property, partial
from itertools import chain
from typing import NamedTuple
from zoneinfo import ZoneInfo

from assistant.agronomy.practices import MAT
from assistant.agronomy.rounding import nearest
from assistant.agronomy.season.outcome import Learned, SeasonOutcome, learned_by_practice
from assistant.agronomy.seed import M2_PER_HA
from assistant.people import Village
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.season.results_lines import Ended, ResultLine
from assistant.service.sight import Sight
from assistant.wording import messages_web_books as b
from assistant.wording.message import Named, Say

PERCENT = 100
MOST_SEASONS = 12
MONTHS_A_YEAR = 12


class SeasonSpan(NamedTuple):
    """A season by its days of sowing; the last is not in it."""

    start: date
    end: date

    @property
    def key(self) -> str:
        """As it stands in an address."""
        return f"{self.start:%Y-%m}"

    @property
    def last(self) -> date:
        """Its last day."""
        return self.end - timedelta(days=1)


class KnownShare(NamedTuple):
    """So many of those of which it is known."""

    kept: int
    known: int


class Figures(NamedTuple):
    """What can be added up of nurseries: counts, areas [m2], seed [kg], mats.

    Those with `told` are of nurseries whose result was told, which is what planted areas and
    seed used are held against; `stood` is the establishment seen, times `mats_used`.
    """

    nurseries: float
    under_way: float
    told: float
    no_result: float
    given_up: float
    field_m2: float
    open_field_m2: float
    told_field_m2: float
    planted_m2: float
    seed_plan_kg: float
    seed_told_kg: float
    seed_sown_kg: float
    seed_used_kg: float
    mats_left: float
    mats_used: float
    stood: float
    short: float
    yield_kg: float
    yield_m2: float
    resown: float
    sown_kept: float
    sown_known: float
    uncovered_kept: float
    uncovered_known: float
    planted_kept: float
    planted_known: float


def figures(line: ResultLine) -> Figures:
    """Those of one nursery."""
    ended, field_m2, seed, told = line.ended, line.end.field_area_m2, line.seed_kg, line.outcome
    ways = (Ended.UNDER_WAY, Ended.TOLD, Ended.NO_RESULT, Ended.GIVEN_UP)
    end = line.end  # what did not happen need not be looked at: there are thousands of lines
    dates = (
        line.sowing.kept if end.sown else None,
        line.uncovering.kept if end.uncovered else None,
        line.transplanting.kept if end.transplanted_on else None,
    )
    return Figures._make(
        (
            1,
            *(ended is way for way in ways),
            field_m2,
            field_m2 if ended is Ended.UNDER_WAY else 0.0,
            field_m2 if told else 0.0,
            told.planted_area_m2 if told else 0.0,
            seed,
            *(_told(seed, told) if told else _NOT_TOLD),
            line.resown,
            *chain.from_iterable((kept is True, kept is not None) for kept in dates),
        )
    )


_NOT_TOLD = (0.0,) * 9


def _told(seed_kg: float, told: SeasonOutcome) -> tuple[float, ...]:
    """From `seed_told_kg` to `yield_m2`, the area of which the paddy was told."""
    used = told.mats_used
    return (
        seed_kg,
        seed_kg * told.seed_share,
        seed_kg * told.seed_share * used / told.mats,
        told.mats_left,
        used,
        told.observed_establishment * used,
        told.is_short,
        told.yield_kg or 0.0,
        0.0 if told.yield_kg is None else told.planted_area_m2,
    )


def added(parts: Sequence[Figures]) -> Figures:
    """The sums of some figures; all nothing where there are none."""
    return Figures(*map(sum, zip(*parts, strict=True))) if parts else Figures(*_NONE)


_NONE = (0,) * len(Figures._fields)


@dataclass(frozen=True)
class Summed:
    """The nurseries of one village, or of all; no village: farmers of none, or the sum."""

    village: Village | None
    sums: Figures

    @property
    def ended(self) -> dict[Ended, int]:
        """How many seasons ended in which way."""
        return {each: int(getattr(self.sums, each.value)) for each in Ended}

    @property
    def sowing(self) -> KnownShare:
        """Sowings on their day."""
        return KnownShare(int(self.sums.sown_kept), int(self.sums.sown_known))

    @property
    def uncovering(self) -> KnownShare:
        """Uncoverings on their day."""
        return KnownShare(int(self.sums.uncovered_kept), int(self.sums.uncovered_known))

    @property
    def transplanting(self) -> KnownShare:
        """Plantings within the window."""
        return KnownShare(int(self.sums.planted_kept), int(self.sums.planted_known))

    @property
    def establishment(self) -> float | None:
        """What these nurseries showed, each by the mats that were used [fraction 0-1]."""
        return self.sums.stood / self.sums.mats_used if self.sums.mats_used else None

    @property
    def planned_rate(self) -> float | None:
        """Seed by the plan, of nurseries with a result [kg/ha of the field]."""
        return _rate(self.sums.seed_told_kg, self.sums.told_field_m2)

    @property
    def used_rate(self) -> float | None:
        """Seed sown there for what was planted [kg/ha planted]."""
        return _rate(self.sums.seed_sown_kg, self.sums.planted_m2)

    @property
    def yield_rate(self) -> float | None:
        """Paddy of the fields whose farmers told it [kg/ha planted]."""
        return _rate(self.sums.yield_kg, self.sums.yield_m2)


def _rate(kg: float, m2: float) -> float | None:
    return kg / m2 * M2_PER_HA if m2 else None


@dataclass(frozen=True)
class Results:
    """The page: by village, or nursery by nursery for one village.

    `learned` is what all seasons of the chosen village have taught of its establishment, by
    practice. Of many nurseries only the sums are kept, `summed` without `lines`; they were
    added up at `counted_at` (local), where that was before.
    """

    villages: tuple[Village, ...]
    chosen: Village | None
    seasons: tuple[SeasonSpan, ...]
    season: SeasonSpan
    lines: tuple[ResultLine, ...]
    learned: tuple[Learned, ...]
    summed: tuple[Summed, ...] | None = None
    counted_at: datetime | None = None

    @cached_property
    def by_village(self) -> tuple[Summed, ...]:
        """The sums of each village, by name."""
        if self.summed is not None:
            return self.summed
        by_id: dict[int | None, list[ResultLine]] = {}
        for line in self.lines:
            by_id.setdefault(line.end.village_id, []).append(line)
        return tuple(
            Summed(some[0].village, added([figures(line) for line in some]))
            for some in by_id.values()
        )

    @cached_property
    def in_all(self) -> Summed:
        """The sums of all."""
        return Summed(None, added([each.sums for each in self.by_village]))

    @property
    def learned_says(self) -> tuple[Say, ...]:
        """The same in words, a line a practice."""
        name = self.chosen.name if self.chosen else ""
        return tuple(_learned(each, name) for each in self.learned)

    @property
    def widest(self) -> float:
        """The largest field area of a village: what bars are measured by [m2]."""
        return max((each.sums.field_m2 for each in self.by_village), default=0.0) or 1.0


def _learned(what: Learned, village: str) -> Say:
    own, practice = what.establishment, what.practice
    shares = {"percent": own.mean, "low": own.likely.low, "high": own.likely.high}
    told = {name: nearest(share * PERCENT) for name, share in shares.items()}
    if practice.code == MAT.code:
        return b.LEARNED(village=village, n=what.seasons, **told)
    kind = Named(practice.names, practice.code)
    return b.LEARNED_BY(village=village, n=what.seasons, practice=kind, **told)


def results(
    house: House,
    sight: Sight,
    now: datetime,
    *,
    village_id: int | None = None,
    season: str = "",
) -> Results:
    """The results of a season in an officer's villages, or in one of them; where none is asked
    for, of the latest in which somebody sowed."""
    chosen = sight.village(village_id)
    with house.store.look() as work:
        today = local_date(now, house.zone)
        sowings = work.seasons.sowings(today) or (today, today)
        seasons = _seasons(sowings[0], today, house.season_months)
        latest = _season_of(sowings[1], house.season_months)
        shown = next((each for each in seasons if each.key == season), latest)
        ends = work.seasons.ends(sight.scope(village_id), shown.start, shown.end)
        told = work.seasons.in_villages([chosen.id]) if chosen else ()
    villages = {village.id: village for village in sight.villages}
    practices = house.store.practices
    lines = tuple(
        ResultLine(end, villages.get(end.village_id or 0), practices.get(end.practice, MAT))
        for end in ends
    )
    return Results(
        villages=sight.villages,
        chosen=chosen,
        seasons=seasons,
        season=shown,
        lines=lines,
        learned=learned_by_practice(told, practices.values()),
    )


MANY = 5_000  # nurseries, of which the sums are not added up each time


def results_page(
    house: House, sight: Sight, now: datetime, village_id: int | None, season: str
) -> Results:
    """The same for the page: of all villages of a large programme the sums may be some minutes
    old."""
    if sight.village(village_id) is not None:
        return results(house, sight, now, village_id=village_id, season=season)
    today = local_date(now, house.zone)
    key = "results", sight.scope(), len(sight.villages), season, today
    find = partial(_lean, house, sight, now, season)
    at, found = house.recent.find(key, now, find, lambda each: each.summed is not None)
    if at == now:
        return found
    return replace(found, counted_at=at.astimezone(ZoneInfo(house.zone)))


def _lean(house: House, sight: Sight, now: datetime, season: str) -> Results:
    found = results(house, sight, now, season=season)
    if len(found.lines) < MANY:
        return found
    return replace(found, lines=(), summed=found.by_village)


def _seasons(first: date, today: date, months: Sequence[int]) -> tuple[SeasonSpan, ...]:
    """The seasons since the first sowing, the latest first."""
    found = [_season_of(today, months)]
    while found[-1].start > first and len(found) < MOST_SEASONS:
        found.append(_season_of(found[-1].start - timedelta(days=1), months))
    return tuple(found)


def _season_of(day: date, months: Sequence[int]) -> SeasonSpan:
    """The season that a day of sowing is in."""
    starts = [
        date(year, month, 1) for year in range(day.year - 1, day.year + 2) for month in months
    ]
    place = sum(start <= day for start in starts)
    return SeasonSpan(starts[place - 1], starts[place])
