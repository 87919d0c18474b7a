"""Season results: area planted, seed against plan, establishment, dates kept, mats.

A nursery belongs to the season in which it was sown. What was told at its end stands beside
what was planned; one that nobody told of is shown as that, and counts in no share.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum
from functools import cached_property
from typing import NamedTuple

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.rounding import Measure, measured
from assistant.agronomy.season.establishment import Establishment
from assistant.agronomy.season.outcome import SeasonOutcome, own_establishment
from assistant.agronomy.seed import M2_PER_HA, seed_kg
from assistant.people import Village
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.sight import Sight
from assistant.store.values_results import NurseryEnd

ON_TIME = timedelta(days=1)  # what is told the next morning was still done on its day
MOST_SEASONS = 12
MONTHS_A_YEAR = 12
_INPUTS = FieldInputs.__dataclass_fields__


class Ended(StrEnum):
    """How a nursery's season stands."""

    UNDER_WAY = "under_way"
    TOLD = "told"
    NO_RESULT = "no_result"
    GIVEN_UP = "given_up"


class Season(NamedTuple):
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


class Kept(NamedTuple):
    """One of the dates of a nursery: planned, done, and whether it was kept; None where that is
    not known."""

    planned: date | None
    done: date | None
    kept: bool | None


@dataclass(frozen=True)
class Line:
    """One nursery of a season."""

    end: NurseryEnd
    village: Village | None
    practice: Practice

    @property
    def ended(self) -> Ended:
        """How its season stands."""
        if self.end.ended_on is not None:
            return Ended.TOLD
        if not self.end.closed:
            return Ended.UNDER_WAY
        return Ended.NO_RESULT if self.end.no_result else Ended.GIVEN_UP

    @property
    def called(self) -> str:
        """What its farmer calls it."""
        return self.end.name or self.end.label

    @cached_property
    def outcome(self) -> SeasonOutcome | None:
        """What was told of its end."""
        e = self.end
        if e.ended_on is None:
            return None
        return SeasonOutcome(
            nursery_id=e.id,
            farmer_id=e.farmer_id,
            ended_on=e.ended_on,
            field_area_m2=e.field_area_m2,
            planted_area_m2=e.planted_area_m2 or 0,
            mats=e.mats or 0,
            mats_left=e.mats_left or 0,
            resown=bool(e.result_resown),
            establishment=e.result_establishment or e.establishment,
        )

    @property
    def resown(self) -> bool:
        """Whether some of it was sown again."""
        return self.end.resown or bool(self.end.result_resown)

    @cached_property
    def seed_kg(self) -> float | None:
        """Dry seed that the plan sows [kg]; None where its inputs are no longer accepted."""
        try:
            return seed_kg(FieldInputs(**{name: getattr(self.end, name) for name in _INPUTS}))
        except AgronomyError:
            return None

    @property
    def seed_told_kg(self) -> float | None:
        """The same as its farmer was told [kg]."""
        return measured(self.seed_kg, Measure.SEED_KG) if self.seed_kg is not None else None

    @property
    def seed_used_kg(self) -> float | None:
        """The part of it on the mats that were planted [kg]; None before the result."""
        told = self.outcome
        if told is None or self.seed_kg is None:
            return None
        return self.seed_kg * told.mats_used / told.mats

    # --- dates -------------------------------------------------------------------------------

    @property
    def sowing(self) -> Kept:
        """The first day that was planned, and the day of sowing where somebody told it."""
        e = self.end
        done = e.sow_date if e.sown and not e.sow_assumed else None
        return _kept(e.first_planned, done)

    @property
    def uncovering(self) -> Kept:
        """So many days after sowing as its practice has."""
        e, days = self.end, self.practice.days.uncover.value
        planned = e.sow_date + timedelta(days=int(days)) if e.sown else None
        return _kept(planned, (e.uncover_date or planned) if e.uncovered else None)

    @property
    def transplanting(self) -> Kept:
        """The chosen day or the one assumed; kept within the window of the practice."""
        e, window = self.end, self.practice.window
        planned = e.transplant_date or e.sow_date + timedelta(days=int(window.assumed.value))
        if e.transplanted_on is None:
            return Kept(planned, None, None)
        age = (e.transplanted_on - e.sow_date).days
        in_window = window.first.value <= age <= window.last.value
        return Kept(planned, e.transplanted_on, in_window)


def _kept(planned: date | None, done: date | None) -> Kept:
    if planned is None or done is None:
        return Kept(planned, done, None)
    return Kept(planned, done, abs(done - planned) <= ON_TIME)


class Share(NamedTuple):
    """So many of those of which it is known."""

    kept: int
    known: int


@dataclass(frozen=True)
class Summed:
    """The nurseries of one village, or of all; no village: farmers of none, or the sum.

    Areas are in m2, seed in kg. `told_field_m2`, `seed_told_kg` are of the nurseries whose
    result was told, which is what planted areas and seed used are held against.
    """

    village: Village | None
    nurseries: int
    ended: dict[Ended, int]
    field_m2: float
    told_field_m2: float
    planted_m2: float
    open_field_m2: float
    seed_plan_kg: float
    seed_told_kg: float
    seed_used_kg: float
    mats_left: float
    short: int
    resown: int
    sowing: Share
    uncovering: Share
    transplanting: Share
    establishment: float | None

    @property
    def planned_rate(self) -> float | None:
        """Seed by the plan, of nurseries with a result [kg/ha of the field]."""
        return _rate(self.seed_told_kg, self.told_field_m2)

    @property
    def used_rate(self) -> float | None:
        """Seed sown there for what was planted [kg/ha planted]."""
        return _rate(self.seed_told_kg, self.planted_m2)


def _rate(kg: float, m2: float) -> float | None:
    return kg / m2 * M2_PER_HA if m2 else None


@dataclass(frozen=True)
class Results:
    """The page: by village, or nursery by nursery for one village.

    `learned` is what all seasons of the chosen village have taught of its establishment.
    """

    villages: tuple[Village, ...]
    chosen: Village | None
    seasons: tuple[Season, ...]
    season: Season
    by_village: tuple[Summed, ...]
    in_all: Summed
    lines: tuple[Line, ...]
    learned: Establishment | None
    learned_from: int

    @property
    def widest(self) -> float:
        """The largest field area of a village: what bars are measured by [m2]."""
        return max((each.field_m2 for each in self.by_village), default=0.0) or 1.0


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
        Line(end, villages.get(end.village_id or 0), practices.get(end.practice, MAT))
        for end in ends
    )
    return Results(
        villages=sight.villages,
        chosen=chosen,
        seasons=seasons,
        season=shown,
        by_village=_by_village(lines),
        in_all=summed(None, lines),
        lines=lines,
        learned=own_establishment(told),
        learned_from=len(told),
    )


def _seasons(first: date, today: date, months: Sequence[int]) -> tuple[Season, ...]:
    """The seasons since the first sowing, the latest first."""
    found = [_season_of(today, months)]
    while found[-1].start > first and len(found) < MOST_SEASONS:
        found.append(_season_of(found[-1].start - timedelta(days=1), months))
    return tuple(found)


def _season_of(day: date, months: Sequence[int]) -> Season:
    """The season that a day of sowing is in."""
    starts = [
        date(year, month, 1) for year in range(day.year - 1, day.year + 2) for month in months
    ]
    place = sum(start <= day for start in starts)
    return Season(starts[place - 1], starts[place])


def _by_village(lines: Sequence[Line]) -> tuple[Summed, ...]:
    by_id: dict[int | None, list[Line]] = {}
    for line in lines:
        by_id.setdefault(line.village.id if line.village else None, []).append(line)
    return tuple(summed(some[0].village, some) for some in by_id.values())


def summed(village: Village | None, lines: Sequence[Line]) -> Summed:
    """The sums of some nurseries."""
    told = [line for line in lines if line.outcome is not None]
    outcomes = [line.outcome for line in told if line.outcome is not None]
    running = [line for line in lines if line.ended is Ended.UNDER_WAY]
    return Summed(
        village=village,
        nurseries=len(lines),
        ended={each: sum(line.ended is each for line in lines) for each in Ended},
        field_m2=_sum(lines, lambda line: line.end.field_area_m2),
        told_field_m2=_sum(told, lambda line: line.end.field_area_m2),
        planted_m2=sum(each.planted_area_m2 for each in outcomes),
        open_field_m2=_sum(running, lambda line: line.end.field_area_m2),
        seed_plan_kg=_sum(lines, lambda line: line.seed_kg),
        seed_told_kg=_sum(told, lambda line: line.seed_kg),
        seed_used_kg=_sum(told, lambda line: line.seed_used_kg),
        mats_left=sum(each.mats_left for each in outcomes),
        short=sum(each.is_short for each in outcomes),
        resown=sum(line.resown for line in lines),
        sowing=_share(line.sowing for line in lines),
        uncovering=_share(line.uncovering for line in lines),
        transplanting=_share(line.transplanting for line in lines),
        establishment=_seen(outcomes),
    )


def _sum(lines: Iterable[Line], value: Callable[[Line], float | None]) -> float:
    return sum(value(line) or 0.0 for line in lines)


def _share(dates: Iterable[Kept]) -> Share:
    known = [each.kept for each in dates if each.kept is not None]
    return Share(sum(known), len(known))


def _seen(outcomes: Sequence[SeasonOutcome]) -> float | None:
    """What these nurseries showed of establishment, each by the mats that were used."""
    mats = sum(each.mats_used for each in outcomes)
    if not mats:
        return None
    return sum(each.observed_establishment * each.mats_used for each in outcomes) / mats
