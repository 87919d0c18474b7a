"""`nursery plan`: the shopping list and calendar of one nursery, for an officer at a desk."""

import datetime as dt
from collections.abc import Mapping, Sequence
from typing import Any

import click

from assistant.agronomy.calendar import Anchors, calendar
from assistant.agronomy.field import LIMITS, FieldInputs
from assistant.agronomy.lot.germination import good_seed
from assistant.agronomy.lot.programme_variety import for_variety
from assistant.agronomy.lot.soaking import Seed
from assistant.agronomy.mat import nursery_area_m2, smaller_bed
from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.quantities import quantities
from assistant.agronomy.work.labour import work
from assistant.commands import numbers
from assistant.commands import plan_sowing as sowing
from assistant.commands.one_line import OneLineCommand, shown
from assistant.commands.plan_data import as_data
from assistant.commands.plan_options import PERCENT, GivenOptions, with_options
from assistant.reading import Outcome, Reading, Reason, read_area
from assistant.settings import SettingsError
from assistant.wiring.catalogues import SOURCE, open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wiring.practices import open_practices
from assistant.wiring.prices import open_prices
from assistant.wording.plan_costs import Money, priced
from assistant.wording.plan_page import Plan, plan_page
from assistant.wording.render import Catalogue, render

WET_BED = "wet_bed"  # what costs are held against


@click.command("plan", cls=OneLineCommand)
@with_options
def command(as_json: bool, **options: Any) -> None:
    """Print the quantities and the calendar of one nursery."""
    given = GivenOptions(**options)
    try:
        plan = make_plan(given, dt.datetime.now().astimezone().date())
    except SettingsError as fault:
        raise click.UsageError(str(fault)) from fault
    catalogue = open_catalogue(given.lang)
    click.echo(
        as_data(plan, catalogue, given.practice) if as_json else as_page(plan, catalogue)
    )


def make_plan(given: GivenOptions, today: dt.date) -> Plan:
    """The plan that the options ask for.

    Raises:
        click.UsageError: options that cannot be taken; the text says what to write.
        SettingsError: a practice or price file with faults.
    """
    practices = open_practices(given.practices_folder)
    practice = _practice(given, practices)
    grown = sowing.variety(given)
    if grown.ours is not None:
        practice = for_variety(practice, grown.ours)
    inputs = _inputs(given, practice, grown)
    found = sowing.wanted_days(given, grown, today, practice)
    sow = sowing.sow_date(given, practice, found)
    usual_m2 = nursery_area_m2(inputs, practice) if given.smaller_bed else None
    if given.smaller_bed:
        practice = smaller_bed(inputs, practice)
    amounts = quantities(inputs, practice)
    labour = work(amounts, practice, given.hands) if given.hands else None
    tin = sowing.tin(given)
    seed = Seed(slow=given.slow_seed, water_c=given.water_c)
    return Plan(
        area_typed=given.area.strip(),
        inputs=inputs,
        quantities=amounts,
        tasks=calendar(Anchors(sow, practice=practice, sprouting=seed.sprouting)),
        sow=sow,
        today=today,
        practice=practice,
        practice_name=practice.name(given.lang),
        variety=grown.published,
        grown=grown.ours,
        sowings=found,
        usual_bed_m2=usual_m2,
        tells_establishment=given.establishment is not None,
        work=labour,
        sowing_day=sowing.day_of_sowing(given, labour),
        tells_measures=tin is not None,
        tin_l=tin,
        money=_money(given, inputs, practice, practices[WET_BED]),
        good=good_seed(given.region),
    )


def as_page(plan: Plan, catalogue: Catalogue) -> str:
    """The plan in words, rounded as people measure."""
    parts = []
    for section in plan_page(plan):
        lines = [f"- {render(line, catalogue)}" for line in section.lines]
        parts.append("\n".join([render(section.heading, catalogue), *lines]))
    return "\n\n".join(parts)


def _practice(given: GivenOptions, practices: Mapping[str, Practice]) -> Practice:
    code = MAT.code if given.practice is None else given.practice
    if code not in practices:
        known = ", ".join(practices)
        raise click.UsageError(f"there is no practice {shown(code)}; write one of {known}")
    return practices[code]


def _inputs(given: GivenOptions, practice: Practice, grown: sowing.Grown) -> FieldInputs:
    """The field and the seed lot; what was not given is as the practice usually has it."""
    planting = practice.planting
    usual = numbers.Spacing(planting.row_cm.value, planting.hill_cm.value)
    spacing = given.spacing or usual
    weight = grown.grain_weight_g or given.grain_weight
    established = given.establishment and given.establishment / PERCENT
    return FieldInputs(
        field_area_m2=_area_m2(given.area, given.lang, given.region),
        germination=given.germination / PERCENT,
        spacing_row_cm=spacing.row_cm,
        spacing_hill_cm=spacing.hill_cm,
        seedlings_per_hill=given.seedlings_per_hill or int(planting.seedlings_per_hill.value),
        grain_weight_g=weight or FieldInputs.grain_weight_g,
        pail_litres=given.pail_litres,
        establishment=established or planting.establishment.value,
        gap_filling=given.gap_filling / PERCENT,
    )


def _money(
    given: GivenOptions, inputs: FieldInputs, practice: Practice, wet_bed: Practice
) -> Money | None:
    """The cost by the price list that was given, and beside a wet bed."""
    if given.prices is None:
        return None
    return priced(inputs, practice, open_prices(given.prices), wet_bed)


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
