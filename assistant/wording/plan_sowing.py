"""When to sow, the day of sowing and own measures on the plan page, where asked for."""

from collections.abc import Iterable, Mapping

from assistant.agronomy.constants import UREA_PERCENT
from assistant.agronomy.lot.programme_variety import Breeding, ProgrammeVariety
from assistant.agronomy.mat import dissolved_g
from assistant.agronomy.measures import (
    Level,
    LevelMeasure,
    mats_for_a_tin,
    seed_measure,
    urea_measure,
)
from assistant.agronomy.quantities import Quantities
from assistant.agronomy.rounding import nearest
from assistant.agronomy.season.sowing import DayReason, DayToSow, Sowings
from assistant.agronomy.told import heap_told_g
from assistant.agronomy.work import sowing_day as work_day
from assistant.wording import messages_sowing as sowing
from assistant.wording.message import Message, Say

CANS_L = (10.0, 16.0)  # watering can and knapsack sprayer, as they are sold
_HALVES = 2
_WHY: Mapping[DayReason, Message] = {
    DayReason.FIELD_READY: sowing.WHY_FIELD,
    DayReason.SOONEST: sowing.WHY_SOONEST,
    DayReason.FLOWERS_SAFE: sowing.WHY_FLOWERS,
    DayReason.IN_HAND: sowing.WHY_IN_HAND,
    DayReason.LAST: sowing.WHY_LAST,
}
_LEVELS: Mapping[LevelMeasure, Message] = {
    LevelMeasure.TIN: sowing.TINS,
    LevelMeasure.SPOON: sowing.SPOONS,
    LevelMeasure.CAP: sowing.CAPS,
}


def variety_lines(variety: ProgrammeVariety) -> Iterable[Say]:
    """What a variety of the programme is."""
    yield sowing.VARIETY_DAYS(name=variety.name, days=variety.days)
    if variety.kind is Breeding.TRADITIONAL:
        yield sowing.VARIETY_TRADITIONAL()


def sowing_lines(found: Sowings) -> tuple[Say, ...]:
    """The days to sow with their reasons, or that none fits."""
    if not found.days:
        return (sowing.NO_DAY(n=max(found.short_d, 1)),)
    return (*_span(found), *map(_day, found.days))


def _span(found: Sowings) -> Iterable[Say]:
    if found.first and found.last:
        yield sowing.BETWEEN(first=found.first, last=found.last)
    elif found.first:
        yield sowing.NOT_BEFORE(first=found.first)


def _day(day: DayToSow) -> Say:
    why = _WHY[day.reason]()
    planting = {"sow": day.sow, "first": day.plant_from, "last": day.plant_until}
    if day.flowers is None or day.ripe is None:
        return sowing.DAY(**planting, why=why)
    return sowing.DAY_RIPE(**planting, flowers=day.flowers, ripe=day.ripe, why=why)


def day_lines(day: work_day.SowingDay) -> Iterable[Say]:
    """How the day of sowing goes with the hands that are there."""
    if day.pieces_an_hour:
        low, high = (max(nearest(end), 1) for end in day.pieces_an_hour)
        yield sowing.PIECES_AN_HOUR(hands=day.hands, low=low, high=high)
    if day.days > 1:
        yield sowing.DAY_TOO_LONG(days=day.days, need=day.hands_for_a_day)
    else:
        soon, late = day.ends
        yield sowing.DAY_ENDS(begins=day.begins, soon=soon, late=late)
    yield sowing.DAY_WATER()


def measure_lines(q: Quantities, tin_l: float | None) -> Iterable[Say]:
    """Seed of a mat and urea of a can in level measures."""
    if q.mats:
        yield from _seed(q, tin_l)
    for can in CANS_L:
        level = urea_measure(dissolved_g(can, UREA_PERCENT.value), tin_l)
        if level:
            yield sowing.UREA_CAN(amount=_amount(level), litres=can)
    yield sowing.CHECK_CAP()


def _seed(q: Quantities, tin_l: float | None) -> Iterable[Say]:
    if tin_l is not None and (count := mats_for_a_tin(heap_told_g(q), tin_l)) >= 1:
        yield sowing.SEED_TIN(litres=tin_l, count=nearest(count * _HALVES) / _HALVES)
    level = seed_measure(heap_told_g(q))
    if level:
        yield sowing.SEED_EACH(amount=_amount(level))


def _amount(level: Level) -> Say:
    return _LEVELS[level.measure](count=level.amount)
