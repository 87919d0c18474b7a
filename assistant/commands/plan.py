"""`nursery plan`: the shopping list and calendar of one nursery, for an officer at a desk."""

import datetime as dt
import json
from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

import click

from assistant.agronomy.calendar import Anchors, calendar, sow_for_transplant
from assistant.agronomy.field import LIMITS, FieldInputs
from assistant.agronomy.quantities import quantities
from assistant.commands import numbers
from assistant.commands.one_line import OneLineCommand, shown
from assistant.people import LANGUAGES
from assistant.reading import Outcome, Reading, Reason, read_area
from assistant.wiring.catalogues import SOURCE, open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording.plan_page import Plan, plan_page, warning_say
from assistant.wording.render import Catalogue, render

PERCENT = 100.0
# What the page tells and the data does not: it follows from the other numbers.
NOT_IN_DATA = {"mix_measure_litres", "warnings"}
# Enough to be exact for any use, too few to show float noise.
DIGITS = 12


@click.command("plan", cls=OneLineCommand)
@click.option("--area", required=True, help='The field to plant, such as "0.4 ha".')
@click.option(
    "--germination",
    required=True,
    type=numbers.percent(*(end * PERCENT for end in LIMITS["germination"])),
    help="Seeds of 100 that sprout, such as 85 or 85%.",
)
@click.option("--sow", type=numbers.iso_date, help="Day of sowing, such as 2026-06-10.")
@click.option(
    "--transplant", type=numbers.iso_date, help="Wished day of transplanting, instead."
)
@click.option(
    "--spacing",
    type=numbers.spacing(*LIMITS["spacing_row_cm"]),
    default="20x20",
    show_default=True,
    help="Row x hill in cm.",
)
@click.option(
    "--seedlings-per-hill",
    type=numbers.whole(*LIMITS["seedlings_per_hill"], "seedlings", "2"),
    default=FieldInputs.seedlings_per_hill,
    show_default=True,
)
@click.option(
    "--grain-weight",
    type=numbers.number(*LIMITS["grain_weight_g"], "grams", "25"),
    default=FieldInputs.grain_weight_g,
    show_default=True,
    help="Weight of 1000 grains in g.",
)
@click.option(
    "--pail-litres",
    type=numbers.number(*LIMITS["pail_litres"], "litres", "10"),
    default=FieldInputs.pail_litres,
    show_default=True,
    help="Size of the pail at hand.",
)
@click.option("--region", help="Where land units are meant, such as IN-WB.")
@click.option("--lang", type=click.Choice(list(LANGUAGES)), default="en", show_default=True)
@click.option("--json", "as_json", is_flag=True, help="The same as data, not rounded.")
def command(
    area: str,
    germination: float,
    sow: dt.date | None,
    transplant: dt.date | None,
    spacing: numbers.Spacing,
    seedlings_per_hill: int,
    grain_weight: float,
    pail_litres: float,
    region: str | None,
    lang: str,
    as_json: bool,
) -> None:
    """Print the quantities and the calendar of one nursery."""
    inputs = FieldInputs(
        field_area_m2=_area_m2(area, lang, region),
        germination=germination / PERCENT,
        spacing_row_cm=spacing.row_cm,
        spacing_hill_cm=spacing.hill_cm,
        seedlings_per_hill=seedlings_per_hill,
        grain_weight_g=grain_weight,
        pail_litres=pail_litres,
    )
    sow_date = _sow_date(sow, transplant)
    today = dt.datetime.now().astimezone().date()
    tasks = calendar(Anchors(sow_date))
    plan = Plan(area.strip(), inputs, quantities(inputs), tasks, sow_date, today)
    catalogue = open_catalogue(lang)
    click.echo(as_data(plan, catalogue) if as_json else as_page(plan, catalogue))


def as_page(plan: Plan, catalogue: Catalogue) -> str:
    """The plan in words, rounded as people measure."""
    parts = []
    for section in plan_page(plan):
        lines = [f"- {render(line, catalogue)}" for line in section.lines]
        parts.append("\n".join([render(section.heading, catalogue), *lines]))
    return "\n\n".join(parts)


def as_data(plan: Plan, catalogue: Catalogue) -> str:
    """The plan as JSON: numbers exact, dates ISO, warnings with their words."""
    amounts = asdict(plan.quantities).items()
    data: dict[str, Any] = {
        name: round(amount, DIGITS) if isinstance(amount, float) else amount
        for name, amount in amounts
        if name not in NOT_IN_DATA
    }
    data["warnings"] = [
        {"code": code, "text": render(warning_say(code, plan), catalogue)}
        for code in plan.warnings
    ]
    data["calendar"] = [
        {
            "task": task.code,
            "day": task.day,
            "date": task.date.isoformat(),
            "until": task.until.isoformat() if task.until else None,
        }
        for task in plan.tasks
    ]
    return json.dumps(data, ensure_ascii=False, indent=2)


def _area_m2(typed: str, lang: str, region: str | None) -> float:
    """The field [m2]. What must be read back to a farmer is refused here, but for its size."""
    lexicons = open_lexicons((lang, SOURCE))
    readings = [read_area(typed, lexicons[code], region) for code in (lang, SOURCE)]
    sizes = [reading.value for reading in readings if _is_sure(reading)]
    area = next((size for size in sizes if size is not None), None)
    if area is not None and _plannable(area):
        return area
    raise click.UsageError(
        f"cannot take the area {shown(typed)}{_doubt(readings)}; write a number and its unit, "
        'such as "0.4 ha", "1 acre" or "4000 m2", from 1 m2 to 1000 ha'
    )


def _doubt(readings: Sequence[Reading[float]]) -> str:
    """What was not sure about it, where that helps to write it better."""
    if any(reading.reason is Reason.REGION_UNIT for reading in readings):
        return " (that unit has another size elsewhere; --region settles it)"
    meant = [reading.words for reading in readings if reading.words and not _is_sure(reading)]
    return f" (perhaps {meant[0]})" if meant else ""


def _is_sure(reading: Reading[float]) -> bool:
    """Whether it was read without a doubt; a size unusual for a farmer is none at a desk."""
    unusual_size = reading.reason in (Reason.TOO_BIG, Reason.TOO_SMALL)
    return reading.outcome is Outcome.UNDERSTOOD or unusual_size


def _plannable(area_m2: float) -> bool:
    limits = LIMITS["field_area_m2"]
    return limits.low <= area_m2 <= limits.high


def _sow_date(sow: dt.date | None, transplant: dt.date | None) -> dt.date:
    if sow is not None and transplant is None:
        return sow
    if transplant is not None and sow is None:
        return sow_for_transplant(transplant)
    raise click.UsageError("write one of --sow and --transplant, such as --sow 2026-06-10")
