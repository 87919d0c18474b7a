"""The plan as JSON: numbers exact, dates ISO, warnings with their words.

The first keys are always there and the same for every practice; the others only when asked for.
"""

import json
from dataclasses import asdict
from typing import Any

from assistant.agronomy.lot.varieties import Variety
from assistant.agronomy.tasks import Task
from assistant.agronomy.told import mix_told
from assistant.agronomy.work.labour import NurseryWork
from assistant.agronomy.work.loads import WeightRange
from assistant.commands.plan_sowing_data import sowing_data
from assistant.wording.plan_costs import Money
from assistant.wording.plan_page import Plan, warning_say
from assistant.wording.render import Catalogue, render

PERCENT = 100.0
# What the page tells and the data does not: it follows from the other numbers.
NOT_IN_DATA = {"mix_measure_litres", "establishment", "warnings"}
# Enough to be exact for any use, too few to show float noise.
DIGITS = 12


def as_data(plan: Plan, catalogue: Catalogue, practice_asked: str | None = None) -> str:
    """The plan as JSON. `practice_asked` is the practice that was named, if any was."""
    amounts = asdict(plan.quantities).items()
    data: dict[str, Any] = {name: amount for name, amount in amounts if name not in NOT_IN_DATA}
    data["warnings"] = [
        {"code": code, "text": render(warning_say(code, plan), catalogue)}
        for code in plan.warnings
    ]
    data["calendar"] = [_task(task) for task in plan.tasks]
    data["mix_told_l"] = mix_told(plan.quantities, plan.practice).litres
    data |= _asked_for(plan, practice_asked)
    return json.dumps(_exact(data), ensure_ascii=False, indent=2)


def _task(task: Task) -> dict[str, Any]:
    every = {"every_days": task.every_d} if task.every_d > 1 else {}
    return {
        "task": task.code,
        "day": task.day,
        "date": task.date.isoformat(),
        "until": task.until.isoformat() if task.until else None,
        **every,
    }


def _asked_for(plan: Plan, practice_asked: str | None) -> dict[str, Any]:
    found: dict[str, Any] = {}
    if practice_asked:
        found["practice"] = plan.practice.code
    if plan.variety:
        found["variety"] = _variety(plan.variety)
    if plan.work:
        found["labour"] = _labour(plan.work)
    if plan.money:
        found["cost"] = _cost(plan.money)
    return found | _figures(plan) | sowing_data(plan)


def _figures(plan: Plan) -> dict[str, Any]:
    """Figures that the officer gave beside the usual ones."""
    found = {}
    if plan.tells_establishment:
        found["establishment_percent"] = plan.inputs.establishment * PERCENT
    if plan.inputs.gap_filling:
        found["gap_filling_percent"] = plan.inputs.gap_filling * PERCENT
    if plan.usual_bed_m2 is not None:
        found["usual_nursery_area_m2"] = plan.usual_bed_m2
    return found


def _variety(variety: Variety) -> dict[str, Any]:
    return {
        "name": variety.name,
        "grain_weight_g": variety.grain_weight_g,
        "published_g": [variety.low_g, variety.high_g],
        "sources": [str(source) for source in variety.sources],
    }


def _labour(work: NurseryWork) -> dict[str, Any]:
    return {
        "hands": work.hands,
        "raise_person_hours": _ends(work.raise_h),
        "lift_person_hours": _ends(work.lift_h),
        "plant_person_hours": _ends(work.plant_h),
        "plant_hours": _ends(work.plant_hours),
        "half_pails": work.pail_walks,
        "mats": work.mats,
        "mat_walks": work.mat_walks,
        "mats_an_hour": _ends(work.mats_an_hour) if work.mats_an_hour else None,
    }


def _cost(money: Money) -> dict[str, Any]:
    beside = money.beside
    data: dict[str, Any] = {
        "currency": money.currency,
        **asdict(money.cost),
        "total": money.cost.total,
    }
    if beside:
        data["against_wet_bed"] = {
            "total": beside.cost.total,
            "saved": beside.saved,
            "seed_kg": beside.quantities.seed_kg,
            "seed_saved_kg": beside.seed_saved_kg,
            "nursery_area_m2": beside.quantities.nursery_area_m2,
            "bed_saved_m2": beside.bed_saved_m2,
            "labour_days": beside.cost.labour_days,
            "labour_saved_days": beside.labour_saved_days,
        }
    return data


def _ends(span: WeightRange) -> list[float]:
    return [span.low, span.high]


def _exact(value: Any) -> Any:
    """The same without float noise."""
    if isinstance(value, float):
        return round(value, DIGITS)
    if isinstance(value, dict):
        return {key: _exact(each) for key, each in value.items()}
    if isinstance(value, list):
        return [_exact(each) for each in value]
    return value
