"""The variety, the days to sow, the sowing day and own measures as JSON, when asked for."""

import datetime as dt
from typing import Any

from assistant.agronomy.constants import UREA_PERCENT
from assistant.agronomy.lot.programme_variety import ProgrammeVariety
from assistant.agronomy.mat import dissolved_g
from assistant.agronomy.measures import Level, mats_for_a_tin, seed_measure, urea_measure
from assistant.agronomy.season.sowing import Sowings
from assistant.agronomy.told import heap_told_g
from assistant.agronomy.work.sowing_day import SowingDay
from assistant.wording.plan_page import Plan


def sowing_data(plan: Plan) -> dict[str, Any]:
    """All that was asked about the sowing."""
    found: dict[str, Any] = {}
    if plan.grown:
        found["variety"] = _grown(plan.grown)
    if plan.sowings:
        found |= _sowings(plan.sowings)
    if plan.sowing_day:
        found["sowing_day"] = _sowing_day(plan.sowing_day)
    if plan.tells_measures:
        found["measures"] = _measures(plan)
    return found


def _grown(variety: ProgrammeVariety) -> dict[str, Any]:
    ages = [variety.age_first, variety.age_last]
    return {
        "code": variety.code,
        "name": variety.name,
        "days": variety.days,
        "kind": variety.kind,
        "grain_weight_g": variety.grain_weight_g,
        "age_days": None if None in ages else ages,
    }


def _sowings(found: Sowings) -> dict[str, Any]:
    """The days to sow and the span they lie in; the days that are missing where none fits."""
    return {
        "sow_from": _iso(found.first),
        "sow_until": _iso(found.last),
        "sowing_days_missing": found.short_d,
        "sowing_days": [
            {
                "sow": _iso(day.sow),
                "transplant_from": _iso(day.plant_from),
                "transplant_until": _iso(day.plant_until),
                "flowers": _iso(day.flowers),
                "ripe": _iso(day.ripe),
                "reason": day.reason,
            }
            for day in found.days
        ],
    }


def _iso(day: dt.date | None) -> str | None:
    return day.isoformat() if day else None


def _sowing_day(day: SowingDay) -> dict[str, Any]:
    return {
        "hands": day.hands,
        "begins": day.begins.strftime("%H:%M"),
        "hours": list(day.hours),
        "mats_an_hour": list(day.pieces_an_hour) if day.pieces_an_hour else None,
        "ends": [end.strftime("%H:%M") for end in day.ends],
        "days": day.days,
        "hands_for_a_day": day.hands_for_a_day,
    }


def _measures(plan: Plan) -> dict[str, Any]:
    """The tin, and what it and a spoon or cap hold of seed and urea."""
    q, tin = plan.quantities, plan.tin_l
    grams = heap_told_g(q) if q.mats else None
    seed = seed_measure(grams, tin) if grams else None
    return {
        "tin_l": tin,
        "mats_for_a_tin": mats_for_a_tin(grams, tin) if grams and tin else None,
        "seed_for_a_mat": _level(seed),
        "urea_for_10_l": _level(urea_measure(dissolved_g(10.0, UREA_PERCENT.value))),
    }


def _level(level: Level | None) -> dict[str, Any] | None:
    return {"measure": level.measure, "count": level.amount} if level else None
