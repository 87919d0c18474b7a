"""One bed raised for one field: what the rest of the program passes about."""

from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w
from assistant.agronomy.calendar import (
    ORDER,
    Anchors,
    DayChoice,
    Task,
    TaskCode,
    calendar,
    day_after,
    fits,
    judge_transplant,
)
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.clock import Clock, Count, Paced
from assistant.agronomy.life.events import Why
from assistant.agronomy.life.making import making
from assistant.agronomy.life.rows import Fact
from assistant.agronomy.lot.programme_variety import ProgrammeVariety, for_ages
from assistant.agronomy.lot.soaking import COLDEST_WATER_C, Seed, Sprouting, is_cool
from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.quantities import Quantities, is_hopeless, quantities
from assistant.agronomy.season.followups import (
    NO_RESULT_AFTER_D,
    AddedSeed,
    follow_ups,
    held_asking,
    morning_after,
    part_watered,
)


@dataclass(frozen=True)
class Nursery:
    """A plan and what became of it so far; changing it is making another.

    `area_typed` is the field as the person wrote it; `germination_known` is False where the
    plan stands on an assumption; `sow_assumed` where nobody confirmed the sowing and the
    planned day was taken; `uncover_date` where the uncovering was moved; `transplant_date`
    is the chosen day, `transplanted_on` the day it happened; `test_begun` is the day a seed
    test began, `test_counted` whether its count has come; `resown` whether the bed was sown
    again, or some mats of it; `urea_on` is the day on which urea was advised, once only;
    `hill_seedlings` the seedlings a hill that a thin stand allows; `more_on` the sowing of
    mats that were added to a thin bed, and `more_mats` their number; `no_result` whether it
    was closed since nobody told how it went; `slow_seed`, `cool_water` and `water_c` [C] say
    why its seed is soaked earlier than the practice has it (see `Seed`); `delay_why` is set
    once planting was put off and the farmer asked why; `leaves` the last count of open leaves,
    on the day `leaves_on`; `lost_mats` how many are gone (of a bed without mats one, where
    nothing is left); `climate` the mean temperatures of
    the months [C] where it lies, and `felt_c` [C] what was felt there around `felt_on`;
    `flooded_on` the day of the last flood or storm that its farmer told of, until somebody
    says what stands; `part_sown_on` the day on which the first part of a bed was sown whose
    rest waits, or waited, for its day of sowing; `tin_litres` the
    farmer's own tin [L], where it was measured; `ripens_d` the days its variety takes from
    sowing to harvest, and `age_first` and `age_last` at which age it is planted, where it has
    its own.

    Raises:
        AgronomyError: dates that cannot belong together (see `Anchors`).
    """

    id: int
    farmer_id: int
    label: str
    name: str | None
    inputs: FieldInputs
    area_typed: str
    germination_known: bool
    sow_date: date
    made_on: date
    sown: bool = False
    sow_assumed: bool = False
    uncover_date: date | None = None
    uncovered: bool = False
    transplant_date: date | None = None
    transplanted_on: date | None = None
    closed: bool = False
    practice: Practice = MAT
    test_begun: date | None = None
    test_counted: bool = False
    resown: bool = False
    urea_on: date | None = None
    hill_seedlings: int | None = None
    more_on: date | None = None
    more_mats: int | None = None
    no_result: bool = False
    slow_seed: bool = False
    cool_water: bool = False
    water_c: float | None = None
    delay_why: Why | None = None
    leaves: float | None = None
    leaves_on: date | None = None
    lost_mats: int = 0
    climate: tuple[float, ...] | None = None
    felt_c: float | None = None
    felt_on: date | None = None
    flooded_on: date | None = None
    part_sown_on: date | None = None
    tin_litres: float | None = None
    ripens_d: int | None = None
    age_first: int | None = None
    age_last: int | None = None

    def __post_init__(self) -> None:
        _ = self.anchors  # wrong days are refused here, and reckoned once

    @cached_property
    def clock(self) -> Clock:
        """The warmth it lies in, as far as anybody said it."""
        return Clock(self.sow_date, self.climate, self.felt_c, self.felt_on)

    @cached_property
    def raised(self) -> Practice:
        """Its practice with the age at which its variety is planted."""
        return for_ages(self.practice, self.age_first, self.age_last)

    @property
    def ripe_on(self) -> date | None:
        """About when it is harvested; None where nobody said how long its variety takes."""
        return None if self.ripens_d is None else day_after(self.sow_date, self.ripens_d)

    @cached_property
    def paced(self) -> Practice:
        """Its practice on the days that it has here: by the warmth, and by the leaves that were
        counted."""
        count = None
        if self.leaves is not None and self.leaves_on is not None:
            count = Count(self.leaves, self.day(self.leaves_on))
        return Paced(self.raised, self.clock, count).now

    @property
    def seasonal(self) -> Practice:
        """Its practice on the days that the warmth alone gives it here."""
        return Paced(self.raised, self.clock).by_clock

    @cached_property
    def anchors(self) -> Anchors:
        """What its calendar hangs on."""
        days = (self.sow_date, self.uncover_date, self.transplant_date)
        return Anchors(*days, self.paced, self.sprouting)

    @property
    def sprouting(self) -> Sprouting | None:
        """The days its seed takes to sprout; None where those of the practice do."""
        water_c = self.water_c
        if water_c is None and self.climate is not None:
            mean_c = self.climate[self.sow_date.month - 1]
            water_c = max(mean_c, COLDEST_WATER_C) if is_cool(mean_c) else None
        return Seed(self.slow_seed, self.cool_water, water_c).sprouting

    @property
    def soak_before_d(self) -> int:
        """Days from soaking its seed to sowing it."""
        return -next(task.day for task in self.tasks if task.code is TaskCode.SOAK)

    @cached_property
    def tasks(self) -> tuple[Task, ...]:
        """Its calendar and what follows on what happened, in date order."""
        more = follow_ups(self.sow_date, self.count_on, self.transplanted_on, self.added)
        if self.flooded_on is not None:
            more += (morning_after(self.sow_date, self.flooded_on),)
        if self.part_sown_on is not None and not self.sown:
            more += part_watered(self.sow_date, self.part_sown_on)
        if self.held:
            more += (held_asking(self.sow_date),)
        made = making(self.sow_date, self.practice)
        found = (*calendar(self.anchors), *made, *more)
        return tuple(sorted(found, key=lambda task: (task.date, ORDER[task.code])))

    @cached_property
    def facts(self) -> frozenset[Fact]:
        """What has happened, as far as tasks lose their sense by it."""
        happened = {
            Fact.TEST_BEGUN: self.test_begun is not None,
            Fact.TEST_COUNTED: self.test_counted,
            Fact.TEST_RUNS: self.test_begun is not None and not self.test_counted,
            Fact.PART_SOWN: self.part_sown_on is not None,
            Fact.SOWN: self.sown,
            Fact.UNCOVERED: self.uncovered,
            Fact.PLANTED: self.transplanted_on is not None,
            Fact.SEEN: not self.in_doubt,
        }
        return frozenset(fact for fact, true in happened.items() if true)

    @property
    def count_on(self) -> date | None:
        """The day on which the seed in the wet cloth is counted; for a bed that failed, seed
        that is left is only checked, and sooner."""
        if self.test_begun is None:
            return None
        checks = self.resown and not self.sown
        days = w.SEED_CHECK_D if checks else c.SEED_TEST_COUNT_D
        return day_after(self.test_begun, days.value)

    @property
    def latest(self) -> date:
        """The last day on which its seedlings may be planted."""
        return day_after(self.sow_date, self.paced.window.latest.value)

    @property
    def grows_slowly(self) -> bool:
        """Whether at the pace of its last count it has not all leaves of its window on the last
        day of planting: such seedlings are young, whatever their age."""
        if self.leaves is None or self.leaves_on is None or self.day(self.leaves_on) <= 0:
            return False
        pace = self.leaves / self.day(self.leaves_on)
        return pace * self.day(self.latest) < self.raised.window.leaves_last.value

    @property
    def is_drained(self) -> bool:
        """Whether its kind of bed is drained before it is lifted."""
        return any(task.code is TaskCode.DRAIN_BED for task in self.tasks)

    @property
    def held(self) -> bool:
        """Whether nothing of the plan may be done: its seed is known to be too weak to be sown,
        and nobody has sown it. Another test or other seed lifts that."""
        hopeless = self.germination_known and is_hopeless(self.inputs.germination)
        return hopeless and not self.sown

    @property
    def in_doubt(self) -> bool:
        """Whether its bed may be gone: a flood or storm was told of, and nobody has said since
        what stands."""
        return self.flooded_on is not None and self.sown and self.transplanted_on is None

    @property
    def is_gone(self) -> bool:
        """Whether nothing of its bed is left; it may be sown again."""
        lies = self.sown and self.transplanted_on is None
        return lies and self.lost_mats > 0 and not self.mats_left

    @property
    def mats_left(self) -> int:
        """Its mats that stand; 0 where none are counted."""
        return max(self.mats_sown - self.lost_mats, 0)

    @property
    def added(self) -> AddedSeed | None:
        """The seed that was added to a thin bed, with its own days."""
        if self.more_on is None:
            return None
        days, window = self.practice.days, self.raised.window
        return AddedSeed(self.more_on, days.uncover.value, window.first.value)

    @cached_property
    def quantities(self) -> Quantities:
        """What it needs, exact."""
        return quantities(self.inputs, self.practice)

    @property
    def mats_sown(self) -> int:
        """All its mats that were sown, with those that were added; 0 where none are counted."""
        return self.quantities.mats + (self.more_mats or 0) if self.quantities.mats else 0

    @property
    def bed_part(self) -> float:
        """The bed that was made against the planned one, by its mats: more with those that were
        added, less where the field turned out larger."""
        mats = self.quantities.mats
        return self.mats_sown / mats if mats else 1.0

    @property
    def standing(self) -> float:
        """The part of the planned bed that stands, by mats that are gone or were added."""
        mats = self.quantities.mats
        return self.mats_left / mats if mats else 1.0

    @property
    def called(self) -> str:
        """What it is called in texts: the name its farmer gave it, else its letter."""
        return self.name or self.label

    def day(self, on: date) -> int:
        """Days from its sowing to `on`."""
        return (on - self.sow_date).days

    def youngest_day(self, on: date) -> int:
        """Days from the latest sowing to `on`: of seed added to a thin bed, where there is."""
        return self.day(on) if self.more_on is None else (on - self.more_on).days

    def is_forgotten(self, on: date) -> bool:
        """Whether nobody will tell any more how its season went."""
        return on > day_after(self.transplanted_on or self.latest, NO_RESULT_AFTER_D)

    def may_uncover_on(self, on: date) -> bool:
        """Whether the bed can be uncovered on a day: 1 to 14, and before it is drained."""
        return fits(self.sow_date, on, self.transplant_date, self.paced)

    def judge_transplanting(self, on: date) -> DayChoice:
        """What to make of a wished transplanting day, for this bed."""
        if not fits(self.sow_date, self.anchors.uncover_date, on, self.paced):
            return DayChoice.IMPOSSIBLE
        return judge_transplant(self.sow_date, on, self.paced)

    def sown_on(self, sow: date, *, sown: bool = True, assumed: bool = False) -> "Nursery":
        """The same nursery with another sowing day; moved days that no longer fit go."""
        moved = replace(
            self,
            sow_date=sow,
            sown=sown,
            sow_assumed=assumed,
            uncover_date=None,
            uncovered=False,
            transplant_date=None,
            leaves=None,
            leaves_on=None,
        )
        return moved.wishing(self.transplant_date)

    def wishing(self, transplant: date | None) -> "Nursery":
        """The same nursery with a chosen transplanting day where that can be, else without."""
        if transplant is None or not fits(
            self.sow_date, self.uncover_date, transplant, self.paced
        ):
            return replace(self, transplant_date=None)
        return replace(self, transplant_date=transplant)

    def warmed(
        self, climate: tuple[float, ...] | None, felt_c: float | None, felt_on: date | None
    ) -> "Nursery":
        """The same nursery by other means of the months, or another mean felt of late [C];
        moved days that no longer fit go."""
        bare = replace(
            self,
            climate=climate,
            felt_c=felt_c,
            felt_on=felt_on,
            transplant_date=None,
            uncover_date=self.uncover_date if self.uncovered else None,
        )
        return bare.wishing(self.transplant_date)

    def of_variety(self, variety: ProgrammeVariety) -> "Nursery":
        """The same nursery of this variety; how much seed was sown is not changed any more."""
        grams, inputs = variety.grain_weight_g, self.inputs
        if grams is not None and not self.sown:
            inputs = replace(inputs, grain_weight_g=grams)
        bare = replace(self, inputs=inputs, ripens_d=variety.days, transplant_date=None)
        if variety.age_first is not None and variety.age_last is not None:
            bare = replace(bare, age_first=variety.age_first, age_last=variety.age_last)
        return bare.wishing(self.transplant_date)

    def counted(self, leaves: float, on: date) -> "Nursery":
        """The same nursery with so many open leaves on a day, which move its window."""
        bare = replace(self, leaves=leaves, leaves_on=on, transplant_date=None)
        return bare.wishing(self.transplant_date)

    def uncovering_on(self, on: date, *, uncovered: bool) -> "Nursery":
        """The same nursery, uncovered on another day.

        Raises:
            AgronomyError: a day that `may_uncover_on` refuses.
        """
        return replace(self, uncover_date=on, uncovered=uncovered)

    def transplanting_on(self, on: date) -> "Nursery":
        """The same nursery with a chosen transplanting day.

        Raises:
            AgronomyError: a day that `judge_transplanting` calls impossible.
        """
        return replace(self, transplant_date=on)
