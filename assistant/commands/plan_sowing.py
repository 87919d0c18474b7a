"""What `nursery plan` is asked about the sowing: variety, days, hands, own measures."""

import datetime as dt
from typing import NamedTuple

import click
from rapidfuzz import process

from assistant.agronomy.calendar import sow_for_transplant
from assistant.agronomy.lot.programme_variety import ProgrammeVariety
from assistant.agronomy.lot.varieties import VARIETIES, Variety, find_variety, variety_key
from assistant.agronomy.measures import tin_litres
from assistant.agronomy.practices import Practice
from assistant.agronomy.season.sowing import SowingNeeds, Sowings, sowings
from assistant.agronomy.work.labour import NurseryWork
from assistant.agronomy.work.sowing_day import SowingDay, sowing_day
from assistant.commands.one_line import shown
from assistant.commands.plan_options import GivenOptions
from assistant.wiring.varieties import open_varieties


class Grown(NamedTuple):
    """The variety that was named: one of the programme's, or one with a published weight."""

    ours: ProgrammeVariety | None = None
    published: Variety | None = None

    @property
    def grain_weight_g(self) -> float | None:
        """The weight of 1000 grains that it brings [g]."""
        if self.ours is not None:
            return self.ours.grain_weight_g
        return self.published.grain_weight_g if self.published else None


def variety(given: GivenOptions) -> Grown:
    """The variety that was named, of the programme's file before the published ones.

    Raises:
        click.UsageError: no such variety, or a weight beside one that has its own.
    """
    if given.variety is None:
        return Grown()
    listed = open_varieties(given.varieties) if given.varieties else {}
    ours = listed.get(variety_key(given.variety))
    found = Grown(ours, None if ours else find_variety(given.variety))
    if found == Grown():
        raise click.UsageError(_unknown(given.variety, [each.code for each in listed.values()]))
    if given.grain_weight is not None and found.grain_weight_g is not None:
        raise click.UsageError("write one of --grain-weight and --variety, not both")
    return found


def _unknown(name: str, codes: list[str]) -> str:
    near = process.extract(variety_key(name), list(VARIETIES), limit=3)
    names = ", ".join(VARIETIES[key].name for key, *_ in near)
    yours = f"your file has {', '.join(codes)}; " if codes else ""
    return (
        f"no weight was published for {shown(name)}; {yours}near names are {names}; or "
        "weigh 1000 grains and write --grain-weight, such as --grain-weight 25"
    )


def wanted_days(
    given: GivenOptions, grown: Grown, today: dt.date, practice: Practice
) -> Sowings | None:
    """The days to sow, where water, harvest or flowering were named.

    Raises:
        click.UsageError: the days of the variety are needed and not known.
    """
    wanted = SowingNeeds(
        days=given.days or (grown.ours.days if grown.ours else None),
        water_from=given.water_from,
        harvest_before=given.harvest_before,
        flower_from=given.flower_from,
        flower_before=given.flower_before,
    )
    if wanted.needs_days and wanted.days is None:
        raise click.UsageError(
            "how many days does the variety take? write --days, such as --days 115, or "
            "--varieties with your file and --variety with a code of it"
        )
    asked = wanted.needs_days or wanted.water_from is not None
    return sowings(wanted, today, practice) if asked else None


def sow_date(given: GivenOptions, practice: Practice, found: Sowings | None) -> dt.date:
    """The day of sowing: as it was written, or the middle one of those that fit.

    Raises:
        click.UsageError: no day, two days, or none that fits.
    """
    if given.sow is not None and given.transplant is None:
        return given.sow
    if given.transplant is not None and given.sow is None:
        return sow_for_transplant(given.transplant, practice)
    if given.sow is None and found is not None:
        return _middle(found)
    raise click.UsageError("write one of --sow and --transplant, such as --sow 2026-06-10")


def _middle(found: Sowings) -> dt.date:
    if not found.days:
        raise click.UsageError(
            f"no sowing day fits: {found.short_d} days are missing (from {found.first} on, "
            f"until {found.last}); take a variety that ripens sooner, or write another day"
        )
    return found.days[len(found.days) // 2].sow


def day_of_sowing(given: GivenOptions, work: NurseryWork | None) -> SowingDay | None:
    """How the day of sowing goes, where it is asked for.

    Raises:
        click.UsageError: no hands.
    """
    if given.day_begins is None:
        return None
    if work is None:
        raise click.UsageError("write --hands too, such as --hands 4")
    return sowing_day(work, given.day_begins)


def tin(given: GivenOptions) -> float | None:
    """The farmer's own tin [L], where it is asked for."""
    if given.tin_litres is not None and given.tins_in_pail is not None:
        raise click.UsageError("write one of --tin-litres and --tins-in-pail")
    if given.tins_in_pail is not None:
        return tin_litres(given.pail_litres, given.tins_in_pail)
    return given.tin_litres
