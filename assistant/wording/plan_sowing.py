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
from assistant.wording import messages_sowing as m
from assistant.wording.message import Message, Say

CANS_L = (10.0, 16.0)  # watering can and knapsack sprayer, as they are sold
_HALVES = 2
_WHY: Mapping[DayReason, Message] = {
    DayReason.FIELD_READY: m.WHY_FIELD,
    DayReason.SOONEST: m.WHY_SOONEST,
    DayReason.FLOWERS_SAFE: m.WHY_FLOWERS,
    DayReason.IN_HAND: m.WHY_IN_HAND,
    DayReason.LAST: m.WHY_LAST,
}
_LEVELS: Mapping[LevelMeasure, Message] = {
    LevelMeasure.TIN: m.TINS,
    LevelMeasure.SPOON: m.SPOONS,
    LevelMeasure.CAP: m.CAPS,
}


def variety_lines(variety: ProgrammeVariety) -> Iterable[Say]:
    """What a variety of the programme is."""
    yield m.VARIETY_DAYS(name=variety.name, days=variety.days)
    if variety.kind is Breeding.TRADITIONAL:
        yield m.VARIETY_TRADITIONAL()


def sowing_lines(found: Sowings) -> tuple[Say, ...]:
    """The days to sow with their reasons, or that none fits."""
    if not found.days:
        return (m.NO_DAY(n=max(found.short_d, 1)),)
    return (*_span(found), *map(_day, found.days))


def _span(found: Sowings) -> Iterable[Say]:
    if found.first and found.last:
        yield m.BETWEEN(first=found.first, last=found.last)
    elif found.first:
        yield m.NOT_BEFORE(first=found.first)


def _day(day: DayToSow) -> Say:
    why = _WHY[day.reason]()
    planting = {"sow": day.sow, "first": day.plant_from, "last": day.plant_until}
    if day.flowers is None or day.ripe is None:
        return m.DAY(**planting, why=why)
    return m.DAY_RIPE(**planting, flowers=day.flowers, ripe=day.ripe, why=why)


def day_lines(day: work_day.SowingDay) -> Iterable[Say]:
    """How the day of sowing goes with the hands that are there."""
    if day.pieces_an_hour:
        low, high = (max(nearest(end), 1) for end in day.pieces_an_hour)
        yield m.PIECES_AN_HOUR(hands=day.hands, low=low, high=high)
    if day.days > 1:
        yield m.DAY_TOO_LONG(days=day.days, need=day.hands_for_a_day)
    else:
        soon, late = day.ends
        yield m.DAY_ENDS(begins=day.begins, soon=soon, late=late)
    yield m.DAY_WATER()


def measure_lines(q: Quantities, tin_l: float | None) -> Iterable[Say]:
    """Seed of a mat and urea of a can in level measures."""
    if q.mats:
        yield from _seed(q, tin_l)
    for can in CANS_L:
        level = urea_measure(dissolved_g(can, UREA_PERCENT.value), tin_l)
        if level:
            yield m.UREA_CAN(amount=_amount(level), litres=can)
    yield m.CHECK_CAP()


def _seed(q: Quantities, tin_l: float | None) -> Iterable[Say]:
    if tin_l is not None and (count := mats_for_a_tin(heap_told_g(q), tin_l)) >= 1:
        yield m.SEED_TIN(litres=tin_l, count=nearest(count * _HALVES) / _HALVES)
    level = seed_measure(heap_told_g(q))
    if level:
        yield m.SEED_EACH(amount=_amount(level))


def _amount(level: Level) -> Say:
    return _LEVELS[level.measure](count=level.amount)
