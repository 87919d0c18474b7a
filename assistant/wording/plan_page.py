"""The plan as a page for a desk: sections of lines, still in no language."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from assistant.agronomy import constants as c
from assistant.agronomy import mat
from assistant.agronomy.calendar import ORDER, Task
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.making import making
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.lot.germination import Good
from assistant.agronomy.lot.programme_variety import ProgrammeVariety
from assistant.agronomy.lot.varieties import Variety
from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.quantities import (
    EVERYWHERE,
    Quantities,
    WarningCode,
    is_weak,
    least_seed_rate,
)
from assistant.agronomy.rounding import Measure, measured
from assistant.agronomy.season.sowing import Sowings
from assistant.agronomy.seed import seed_rate_kg_per_ha
from assistant.agronomy.told import sprouted_told_kg
from assistant.agronomy.work.labour import NurseryWork
from assistant.agronomy.work.sowing_day import SowingDay
from assistant.wording import amounts
from assistant.wording import messages_plan as plan_texts
from assistant.wording import messages_sowing as sowing
from assistant.wording.day_practice import fitting_practice
from assistant.wording.message import Country, Message, Say
from assistant.wording.messages_talk import WEAK_SEED_IN
from assistant.wording.plan_costs import Money, cost_lines, labour_lines
from assistant.wording.plan_practice import (
    bed_lines,
    frame_line,
    is_mat,
    mix_line,
    sharing_lines,
    task_name,
    water_lines,
)
from assistant.wording.plan_sowing import day_lines, measure_lines, sowing_lines, variety_lines


@dataclass(frozen=True)
class Plan:
    """All that the page tells: what was asked, and what came of it.

    `practice_name` is what the reader's language calls it. What is None was not asked for.
    """

    area_typed: str
    inputs: FieldInputs
    quantities: Quantities
    tasks: tuple[Task, ...]
    sow: date
    today: date
    practice: Practice = MAT
    practice_name: str = ""
    variety: Variety | None = None
    tells_establishment: bool = False
    work: NurseryWork | None = None
    money: Money | None = None
    good: Good = EVERYWHERE
    grown: ProgrammeVariety | None = None
    sowings: Sowings | None = None
    sowing_day: SowingDay | None = None
    tells_measures: bool = False
    tin_l: float | None = None
    usual_bed_m2: float | None = None

    @property
    def warnings(self) -> tuple[WarningCode, ...]:
        """Those of the arithmetic, whether the seed is weak, and the sowing day past."""
        weak = (WarningCode.WEAK_SEED,) if is_weak(self.inputs.germination, self.good) else ()
        past = (WarningCode.PAST_DATE,) if self.sow < self.today else ()
        return (*weak, *self.quantities.warnings, *past)


@dataclass(frozen=True)
class Section:
    """A heading and the lines under it."""

    heading: Say
    lines: tuple[Say, ...]


# What is said of each hazard that a task's row names.
CAUTIONS: Mapping[str, Message] = {
    "mix": plan_texts.C_MIX,
    "load": plan_texts.C_LOAD,
    "pail": plan_texts.C_PAIL,
    "seed": plan_texts.C_SEED,
    "rain": plan_texts.C_RAIN,
    "water": plan_texts.C_WATER,
    "urea": plan_texts.C_UREA,
    "urea_spray": plan_texts.C_UREA_SPRAY,
}
_CAUTION_SLOTS: Mapping[Message, Mapping[str, float]] = {
    plan_texts.C_RAIN: {"minutes": c.THUNDER_WAIT_MIN.value},
    plan_texts.C_UREA_SPRAY: {
        "grams": mat.dissolved_g(1.0, c.UREA_PERCENT.value),
        "minutes": c.EYE_RINSE_MIN.value,
    },
}


def plan_page(plan: Plan) -> tuple[Section, ...]:
    """The whole page, most needed first."""
    warnings = tuple(warning_say(code, plan) for code in plan.warnings)
    return (
        _head(plan),
        *([Section(plan_texts.WARNINGS(), warnings)] if warnings else []),
        *([Section(sowing.WHEN(), sowing_lines(plan.sowings))] if plan.sowings else []),
        _shopping(plan.quantities, plan.practice),
        Section(plan_texts.SHARING(), sharing_lines(plan.quantities, plan.practice)),
        *_labour_and_cost(plan),
        *_beside(plan),
        Section(plan_texts.CALENDAR(sow=plan.sow.isoformat()), tuple(_rows(plan))),
        Section(plan_texts.CAUTIONS(), tuple(_cautions(plan.tasks, plan.practice))),
    )


def _labour_and_cost(plan: Plan) -> Iterable[Section]:
    if plan.work is not None:
        yield Section(plan_texts.LABOUR(), labour_lines(plan.work, plan.practice))
    if plan.money is not None:
        heading = plan_texts.COST(currency=plan.money.currency)
        yield Section(heading, cost_lines(plan.money, plan.inputs.establishment, plan.practice))


def _beside(plan: Plan) -> Iterable[Section]:
    if plan.sowing_day is not None:
        yield Section(sowing.SOWING_DAY(), tuple(day_lines(plan.sowing_day)))
    if plan.tells_measures:
        yield Section(sowing.MEASURES(), tuple(measure_lines(plan.quantities, plan.tin_l)))


def warning_say(code: WarningCode, plan: Plan) -> Say:
    """One warning in words."""
    return _WARNINGS[code](plan)


def _percent(plan: Plan) -> float:
    return round(plan.inputs.germination * 100, 1)


_WARNINGS: Mapping[WarningCode, Callable[[Plan], Say]] = {
    WarningCode.DO_NOT_SOW: lambda p: plan_texts.W_DO_NOT_SOW(percent=_percent(p)),
    WarningCode.WEAK_SEED: lambda p: _weak(_percent(p), p.good),
    WarningCode.BED_ENLARGED: lambda p: plan_texts.W_BED_ENLARGED(
        most=p.practice.bed.max_seeds_per_cm2.value
    ),
    WarningCode.SMALL_MIX: lambda p: (
        plan_texts.W_SMALL_MIX if is_mat(p.practice) else plan_texts.W_SMALL_PARTS
    )(litres=measured(p.quantities.mix_measure_litres, Measure.MIX_L)),
    WarningCode.GRAIN_WEIGHT_UNUSUAL: lambda p: plan_texts.W_GRAIN_WEIGHT(
        grams=p.inputs.grain_weight_g,
        low=c.GRAIN_WEIGHT_G.low or 0,
        high=c.GRAIN_WEIGHT_G.high or 0,
    ),
    WarningCode.SEED_RATE_UNUSUAL: lambda p: plan_texts.W_SEED_RATE(
        rate=round(seed_rate_kg_per_ha(p.inputs), 1),
        low=least_seed_rate(p.inputs),
        high=c.SEED_RATE_HIGH_KG_PER_HA.value,
    ),
    WarningCode.PAST_DATE: lambda p: plan_texts.W_PAST_DATE(sow=p.sow.isoformat()),
}


def _weak(percent: float, good: Good) -> Say:
    least = round(good.share * 100)
    if good.country is None:
        return plan_texts.W_WEAK_SEED(percent=percent, good=least)
    return WEAK_SEED_IN(percent=percent, least=least, country=Country(good.country))


def _head(plan: Plan) -> Section:
    inputs, q = plan.inputs, plan.quantities
    computed_from = plan_texts.COMPUTED_FROM(
        percent=_percent(plan),
        row=inputs.spacing_row_cm,
        hill=inputs.spacing_hill_cm,
        seedlings=inputs.seedlings_per_hill,
        grams=inputs.grain_weight_g,
        litres=inputs.pail_litres,
    )
    counts = plan_texts.HILLS(
        hills=measured(q.hills, Measure.COUNT), seedlings=measured(q.seedlings, Measure.COUNT)
    )
    title = plan_texts.TITLE(area=round(q.field_area_m2, 1), typed=plan.area_typed)
    return Section(title, (computed_from, *_asked_for(plan), counts))


def _asked_for(plan: Plan) -> Iterable[Say]:
    """What was asked for beside the usual, so that it can be seen and corrected."""
    inputs, variety = plan.inputs, plan.variety
    if plan.practice.code != MAT.code:
        yield plan_texts.RAISED_AS(name=plan.practice_name or plan.practice.code)
    if variety is not None:
        yield plan_texts.VARIETY(name=variety.name, low=variety.low_g, high=variety.high_g)
    if plan.grown is not None:
        yield from variety_lines(plan.grown)
    if plan.usual_bed_m2 is not None:
        yield sowing.SMALLER(usual=measured(plan.usual_bed_m2, Measure.AREA_M2))
    if plan.tells_establishment:
        yield plan_texts.ESTABLISHMENT(percent=round(inputs.establishment * 100, 1))
    if inputs.gap_filling:
        yield plan_texts.GAPS(percent=round(inputs.gap_filling * 100, 1))


def _shopping(q: Quantities, practice: Practice) -> Section:
    bed = practice.bed
    lines = (
        plan_texts.SEED(
            dry=amounts.seed_weight(q.seed_kg),
            sprouted=amounts.seed_told(sprouted_told_kg(q)),
        ),
        *bed_lines(q, practice),
        plan_texts.SHEET(sheet=measured(q.sheet_m2, Measure.AREA_M2)) if q.sheet_m2 else None,
        mix_line(q, practice),
        frame_line(practice),
        plan_texts.COVER(low=c.COVER_LOW_MM.value, high=c.COVER_HIGH_MM.value)
        if bed.covers_seed
        else None,
        *water_lines(q, practice),
        plan_texts.UREA(
            urea=amounts.weight(measured(q.urea_g, Measure.UREA_G)),
            water=measured(q.spray_water_l, Measure.SPRAY_L),
        ),
    )
    return Section(plan_texts.SHOPPING(), tuple(line for line in lines if line))


def _rows(plan: Plan) -> Iterable[Say]:
    tasks = (*plan.tasks, *making(plan.sow, plan.practice))
    for task in sorted(tasks, key=lambda each: (each.date, ORDER[each.code])):
        row = _row(task, plan.practice)
        over = (task.until or task.date) < plan.today
        yield plan_texts.WAS(row=row) if over else row


def _row(task: Task, practice: Practice) -> Say:
    what = task_name(task, practice)
    if task.until is None:
        return plan_texts.ON_DAY(date=task.date, day=task.day, what=what)
    last = task.day + (task.until - task.date).days
    return plan_texts.ON_DAYS(
        date=task.date, until=task.until, day=task.day, last=last, what=what
    )


def _cautions(tasks: Iterable[Task], practice: Practice) -> Iterable[Say]:
    wanted = dict.fromkeys(code for task in tasks for code in TASKS[task.code].cautions)
    for caution in (CAUTIONS[code] for code in wanted):
        yield fitting_practice(caution, practice)(**_CAUTION_SLOTS.get(caution, {}))
