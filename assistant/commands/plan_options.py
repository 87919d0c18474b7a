"""What `nursery plan` can be asked: its options, and their values as one value."""

import datetime as dt
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import click

from assistant.agronomy.field import LIMITS, MOST_GAP_FILLING, FieldInputs
from assistant.agronomy.measures import TINS_IN_PAIL
from assistant.agronomy.season.sowing import RIPENS_D
from assistant.commands import numbers
from assistant.people import LANGUAGES

COLDEST_WATER_C = 6  # in colder water seed is harmed
PERCENT = 100.0
MOST_HANDS = 500
_FOLDER = click.Path(exists=True, file_okay=False, path_type=Path)
_FILE = click.Path(exists=True, dir_okay=False, path_type=Path)

_OPTIONS = (
    click.option("--area", required=True, help='The field to plant, such as "0.4 ha".'),
    click.option(
        "--germination",
        required=True,
        type=numbers.percent(*(end * PERCENT for end in LIMITS["germination"])),
        help="Seeds of 100 that sprout, such as 85 or 85%.",
    ),
    click.option("--sow", type=numbers.iso_date, help="Day of sowing, such as 2026-06-10."),
    click.option(
        "--transplant", type=numbers.iso_date, help="Wished day of transplanting, instead."
    ),
    click.option(
        "--spacing",
        type=numbers.spacing(*LIMITS["spacing_row_cm"]),
        help='Row x hill in cm, such as "20x15"; 20x20 on a mat or bed, 30x14 from trays.',
    ),
    click.option(
        "--seedlings-per-hill",
        type=numbers.whole(*LIMITS["seedlings_per_hill"], "seedlings", "2"),
        help="1 to 3, more when late; 2 on a mat or bed, 4 from trays.",
    ),
    click.option(
        "--grain-weight",
        type=numbers.number(*LIMITS["grain_weight_g"], "grams", "25"),
        help="Weight of 1000 grains in g; 25 if not given.",
    ),
    click.option(
        "--variety",
        help="A variety of your file, by its code, or one with a published grain weight.",
    ),
    click.option("--varieties", type=_FILE, help="TOML file of your programme's varieties."),
    click.option(
        "--days",
        type=numbers.whole(*RIPENS_D, "days", "115"),
        help="Days from sowing to maturity, where the variety does not say.",
    ),
    click.option("--water-from", type=numbers.iso_date, help="Day on which water comes."),
    click.option("--harvest-before", type=numbers.iso_date, help="Ripe by this day."),
    click.option("--flower-from", type=numbers.iso_date, help="Safe time to flower: from."),
    click.option("--flower-before", type=numbers.iso_date, help="Safe time to flower: until."),
    click.option(
        "--pail-litres",
        type=numbers.number(*LIMITS["pail_litres"], "litres", "10"),
        default=FieldInputs.pail_litres,
        show_default=True,
        help="Size of the pail at hand.",
    ),
    click.option("--practice", help="mat, wet_bed, dry_bed, tray, or one of your folder."),
    click.option(
        "--smaller-bed", is_flag=True, help="A smaller bed where little seed is sown."
    ),
    click.option("--practices-folder", type=_FOLDER, help="TOML files of more practices."),
    click.option(
        "--establishment",
        type=numbers.percent(*(end * PERCENT for end in LIMITS["establishment"])),
        help="Of 100 germinated seeds, those that become planted seedlings, such as 60.",
    ),
    click.option(
        "--gap-filling",
        type=numbers.number(0, MOST_GAP_FILLING * PERCENT, "percent", "5"),
        default=0.0,
        help="Seedlings over and above for gaps, in percent, such as 5.",
    ),
    click.option(
        "--day-begins",
        type=numbers.clock,
        help="When the sowing day begins, such as 06:30, for its hours; needs --hands.",
    ),
    click.option(
        "--tin-litres",
        type=numbers.number(0.05, 25, "litres", "0.4"),
        help="Size of your tin, for seed and urea in level measures.",
    ),
    click.option(
        "--tins-in-pail",
        type=numbers.number(*TINS_IN_PAIL, "tins", "25"),
        help="How many of your tin fill the pail, instead.",
    ),
    click.option("--prices", type=_FILE, help="TOML price list, for the cost."),
    click.option(
        "--hands",
        type=numbers.whole(1, MOST_HANDS, "people", "6"),
        help="People who plant, for hours and loads.",
    ),
    click.option(
        "--water-c",
        type=numbers.number(COLDEST_WATER_C, 40, "degrees C", "17"),
        help="Mean temperature; below 20 C seed is soaked earlier.",
    ),
    click.option("--slow-seed", is_flag=True, help="A variety that is slow to sprout."),
    click.option(
        "--region",
        type=numbers.region,
        help="Where land units and good seed are meant, such as IN-WB.",
    ),
    click.option(
        "--lang", type=click.Choice(tuple(LANGUAGES)), default="en", show_default=True
    ),
    click.option("--json", "as_json", is_flag=True, help="The same as data, not rounded."),
)


def with_options(function: Callable[..., None]) -> Callable[..., None]:
    """Gives a command all of these options."""
    for option in reversed(_OPTIONS):
        function = option(function)
    return function


@dataclass(frozen=True)
class GivenOptions:
    """The options as they were typed and read; None where one was not given."""

    area: str
    germination: float
    sow: dt.date | None
    transplant: dt.date | None
    spacing: numbers.Spacing | None
    seedlings_per_hill: int | None
    grain_weight: float | None
    variety: str | None
    varieties: Path | None
    days: int | None
    water_from: dt.date | None
    harvest_before: dt.date | None
    flower_from: dt.date | None
    flower_before: dt.date | None
    day_begins: dt.time | None
    tin_litres: float | None
    tins_in_pail: float | None
    pail_litres: float
    practice: str | None
    practices_folder: Path | None
    smaller_bed: bool
    establishment: float | None
    gap_filling: float
    prices: Path | None
    hands: int | None
    water_c: float | None
    slow_seed: bool
    region: str | None
    lang: str
