"""Labour and cost on the plan page: what is asked for beside the plan itself."""

from dataclasses import dataclass

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.practices import Practice
from assistant.agronomy.quantities import quantities
from assistant.agronomy.rounding import Measure, measured
from assistant.agronomy.sourced.tables import NURSERY_COSTS
from assistant.agronomy.work.costs import Against, NurseryCost, PriceList, against, cost
from assistant.agronomy.work.labour import NurseryWork
from assistant.agronomy.work.loads import WeightRange
from assistant.agronomy.work.planting import mats_in_a_load
from assistant.wording import amounts
from assistant.wording import messages_plan as plan
from assistant.wording.day_practice import fitting_practice
from assistant.wording.message import Say

PERCENT = 100
_WHOLE_FROM = 100  # money: from here on the small coins are no matter
_TRIAL = NURSERY_COSTS.sources[0]
_COSTS = {str(nursery): float(cost) for nursery, cost in NURSERY_COSTS.rows}


@dataclass(frozen=True)
class Money:
    """A nursery's cost in one money, and beside a wet bed where it is none itself."""

    currency: str
    cost: NurseryCost
    beside: Against | None = None


def priced(
    inputs: FieldInputs, practice: Practice, prices: PriceList, wet_bed: Practice | None
) -> Money:
    """The cost of a nursery by a price list, and beside a wet bed for the same field."""
    own = cost(quantities(inputs, practice), practice, prices)
    if wet_bed is None or practice.code == wet_bed.code:
        return Money(prices.currency, own)
    return Money(prices.currency, own, against(inputs, practice, wet_bed, prices))


def labour_lines(work: NurseryWork, practice: Practice) -> tuple[Say, ...]:
    """Hours of each work, and what is carried."""
    lift = fitting_practice(plan.LIFT, practice)
    lines = [plan.RAISE(time=_time(work.raise_h)), lift(time=_time(work.lift_h))]
    lines.append(plan.PLANT(time=_time(work.plant_h)))
    if work.planters > 1:
        shared = work.plant_hours
        low, high = _hours(shared.low), _hours(shared.high)
        lines.append(plan.PLANT_SHARED(hands=work.planters, low=low, high=high))
    lines.append(plan.PAIL_WALKS(count=work.pail_walks))
    if work.mats_an_hour:
        lines.append(
            plan.MAT_WALKS(
                mats=work.mats,
                most=mats_in_a_load(practice),
                count=work.mat_walks,
                low=_hours(work.mats_an_hour.low),
                high=_hours(work.mats_an_hour.high),
            )
        )
    return tuple(lines)


def cost_lines(money: Money, establishment: float, practice: Practice) -> tuple[Say, ...]:
    """The cost line by line, then beside a wet bed, with an honest word.

    `establishment` is what the plan counts on [fraction].
    """
    own, mix = money.cost, fitting_practice(plan.COST_MIX, practice)
    lines = (
        plan.COST_SEED(amount=amount(own.seed)),
        mix(amount=amount(own.soil + own.manure + own.rice_hull)),
        plan.COST_SHEET(amount=amount(own.sheet)) if own.sheet else None,
        plan.COST_LABOUR(days=round(own.labour_days, 1), amount=amount(own.labour)),
        plan.COST_TOTAL(amount=amount(own.total)),
        plan.COST_UREA(amount=amount(own.urea_if_yellow)),
        plan.COST_WITHOUT(),
    )
    beside = _beside(money.beside, establishment) if money.beside else ()
    return (*(line for line in lines if line), *beside)


def _beside(other: Against, establishment: float) -> tuple[Say, ...]:
    difference = plan.BESIDE_LESS if other.saved >= 0 else plan.BESIDE_MORE
    theirs = other.practice.planting.establishment.value
    own, usual = (round(share * PERCENT) for share in (establishment, theirs))
    return (
        plan.BESIDE(
            bed=measured(other.quantities.nursery_area_m2, Measure.AREA_M2),
            seed=amounts.seed_weight(other.quantities.seed_kg),
            days=round(other.cost.labour_days, 1),
            amount=amount(other.cost.total),
        ),
        difference(amount=amount(abs(other.saved))),
        plan.BESIDE_SEED(own=own, usual=usual),
        plan.NO_PROMISE(
            source=f"{_TRIAL.publisher}, {_TRIAL.year}",
            mats=_COSTS["plastic frame"],
            wet=_COSTS["wet bed"],
        ),
    )


def amount(money: float) -> float:
    """Money as it is said: whole from a hundred on."""
    return round(money) if money >= _WHOLE_FROM else round(money, 2)


def _hours(hours: float) -> float:
    return round(hours) if hours >= PERCENT / 10 else round(hours, 1)


def _time(span: WeightRange) -> Say:
    if span.low == span.high:
        return plan.HOURS(hours=_hours(span.low))
    return plan.HOURS_SPAN(low=_hours(span.low), high=_hours(span.high))
