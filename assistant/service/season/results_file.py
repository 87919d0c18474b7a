"""Season results as rows for a file: each nursery one, the units in the heads."""

from collections.abc import Iterator
from datetime import date, datetime

from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.season.results import Results
from assistant.service.season.results_lines import ResultLine
from assistant.service.sight import Sight
from assistant.wording import messages_web as web
from assistant.wording import messages_web_books as b
from assistant.wording.message import Message, Say

Value = Say | str | int | float | date | None

HEAD: tuple[Message, ...] = (
    web.VILLAGE,
    web.FARMER,
    web.PHONE,
    web.NURSERY,
    b.PRACTICE,
    b.ENDED_AS,
    b.FIELD_HA,
    b.PLANTED_HA,
    b.SEED_KG,
    b.SEED_USED_KG,
    b.SEED_RATE,
    b.SEED_RATE_PLANTED,
    b.ESTABLISHED_PLANNED,
    b.ESTABLISHED,
    b.MATS,
    b.MATS_LEFT,
    b.SHORT,
    b.RESOWN,
    b.YIELD_KG,
    b.YIELD_KG_HA,
    b.DAY_PLANNED_SOW,
    b.DAY_SOWN,
    b.DAY_PLANNED_UNCOVER,
    b.DAY_UNCOVERED,
    b.DAY_PLANNED_PLANT,
    b.DAY_PLANTED,
    b.AGE_PLANTED,
)
M2_PER_HA = 10_000
WHOLE = 100


def rows(model: Results, language: str) -> Iterator[tuple[Value, ...]]:
    """One row a nursery, as `HEAD` names it; empty where it is not known."""
    for line in model.lines:
        yield (*_who(line, language), *_quantities(line), *_dates(line))


def _who(line: ResultLine, language: str) -> tuple[Value, ...]:
    return (
        line.village.name if line.village else None,
        line.end.farmer,
        line.end.phone,
        line.called,
        line.practice.name(language),
        b.ENDED[line.ended](),
    )


def _quantities(line: ResultLine) -> tuple[Value, ...]:
    told, end = line.outcome, line.end
    field_ha = end.field_area_m2 / M2_PER_HA
    planted_ha = told.planted_area_m2 / M2_PER_HA if told else None
    seed = line.seed_kg
    return (
        _round(field_ha, 4),
        _round(planted_ha, 4),
        _round(seed),
        _round(line.seed_used_kg),
        _round(seed / field_ha),
        _round((line.seed_sown_kg or 0) / planted_ha if planted_ha else None),
        _round(end.establishment * WHOLE, 1),
        _round(told.observed_establishment * WHOLE, 1) if told else None,
        told.mats if told else None,
        _round(told.mats_left) if told else None,
        _yes(told.is_short) if told else None,
        _yes(line.resown),
        _round(told.yield_kg) if told else None,
        _round(told.yield_kg_per_ha, 0) if told else None,
    )


def _dates(line: ResultLine) -> tuple[Value, ...]:
    planted = line.transplanting.done
    return (
        line.sowing.planned,
        line.sowing.done,
        line.uncovering.planned,
        line.uncovering.done,
        line.transplanting.planned,
        planted,
        (planted - line.end.sow_date).days if planted else None,
    )


def _round(value: float | None, digits: int = 2) -> float | None:
    return round(value, digits) if value is not None else None


def _yes(true: bool) -> Say:
    return b.YES() if true else b.NO()


def note_taken(house: House, sight: Sight, model: Results, now: datetime) -> None:
    """A line of the trail: names and numbers of people left the page."""
    about = Subject(village_id=model.chosen.id if model.chosen else None)
    detail = f"{model.season.key}: {len(model.lines)}"
    with house.store.work() as work:
        note(work, sight.officer.id, TrailAct.RESULTS_TAKEN, now, about, detail)
