"""`nursery village`: the villages of the programme."""

import click

from assistant.commands.deployment import opened, settings_now
from assistant.people import LONGEST_VILLAGE, village_name
from assistant.places import Point
from assistant.service.climate import is_climate
from assistant.service.enrol import (
    add_village,
    enter_climate,
    list_villages,
    offer_practices,
    place_village,
)
from assistant.service.house import House
from assistant.service.land_units import NoUnit, name_units, units_text
from assistant.service.places import read_point, turned_round
from assistant.service.placing import NoCode, name_by_codes, read_codes
from assistant.settings.kinds import is_zone
from assistant.worker import wall_clock


@click.group()
def command() -> None:
    """The villages of the programme."""


def _zone(_: click.Context, __: click.Parameter, value: str | None) -> str | None:
    if value is None:
        return None
    if not is_zone(value):
        raise click.BadParameter("give an IANA time zone such as Africa/Nairobi")
    return value


def _point(_: click.Context, __: click.Parameter, value: str | None) -> Point | None:
    if value is None:
        return None
    point = read_point(value)
    if point is None:
        raise click.BadParameter('give degrees north, then east, such as "-0.68, 37.35"')
    return point


@command.command("add")
@click.argument("name")
@click.option("--zone", callback=_zone, help="IANA time zone; the programme's if not given.")
@click.option("--at", "point", callback=_point, help='Where it lies: "-0.68, 37.35" (N, E).')
def add(name: str, zone: str | None, point: Point | None) -> None:
    """Add a village."""
    kept = village_name(name)
    if kept is None:
        raise click.BadParameter(
            f"{name!r} is no name of a village; write a word of up to {LONGEST_VILLAGE} letters"
        )
    with opened(settings_now()) as house:
        village = add_village(house, kept, zone)
        if point is not None:
            place_village(house, village.name, point.latitude, point.longitude)
        click.echo(f"Added {village.name} ({village.zone}).")
        _say_turned(house, village.name)


def _say_turned(house: House, name: str) -> None:
    if name in turned_round(list_villages(house)):
        click.echo(
            f"LOOK: the other way round {name} would be beside the other villages. Degrees "
            'north come first, then east: nursery village place NAME --at "-0.68, 37.35"'
        )


@command.command("list")
def show() -> None:
    """List the villages with their time zones."""
    with opened(settings_now()) as house:
        for village in list_villages(house):
            click.echo(f"{village.name}\t{village.zone}")


@command.command("place")
@click.argument("name")
@click.option("--at", "point", callback=_point, help='"-0.68, 37.35" (N, E); none: not known.')
def place(name: str, point: Point | None) -> None:
    """Say where a village lies, for warnings by distance and from official alerts."""
    where = (point.latitude, point.longitude) if point else (None, None)
    with opened(settings_now()) as house:
        try:
            village = place_village(house, name.strip(), *where)
        except LookupError as fault:
            raise click.ClickException(str(fault)) from fault
        told = f"{village.latitude}, {village.longitude}" if point else "place not known"
        click.echo(f"{village.name}: {told}")
        _say_turned(house, village.name)


@command.command("climate")
@click.argument("name")
@click.argument("months", nargs=-1, type=float)
def climate(name: str, months: tuple[float, ...]) -> None:
    """Say the mean temperature of each month in a village: twelve numbers in degrees C, January
    first; none: not known. The days of its beds follow them."""
    if months and not is_climate(months):
        raise click.BadParameter(
            f"got {len(months)} numbers; write twelve means in degrees C, January first, "
            "such as 19 20 22 25 27 28 28 27 26 24 21 19"
        )
    with opened(settings_now()) as house:
        try:
            village = enter_climate(house, name.strip(), months or None, wall_clock())
        except LookupError as fault:
            raise click.ClickException(str(fault)) from fault
        told = " ".join(f"{each:g}" for each in village.climate or ()) or "not known"
        click.echo(f"{village.name}: {told}")


@command.command("practices")
@click.argument("name")
@click.argument("codes", nargs=-1)
def practices(name: str, codes: tuple[str, ...]) -> None:
    """Offer these practices in a village beside the mat, such as wet_bed; else only it."""
    with opened(settings_now()) as house:
        try:
            village = offer_practices(house, name.strip(), codes)
        except LookupError as fault:
            raise click.ClickException(str(fault)) from fault
        click.echo(f"{village.name}: {', '.join(village.practices)}")


@command.command("codes")
@click.argument("name")
@click.argument("codes", nargs=-1)
def codes(name: str, codes: tuple[str, ...]) -> None:
    """Say by which codes, as NAME=VALUE, official alerts name a village; none: by no code."""
    found = read_codes("\n".join(codes))
    if isinstance(found, NoCode):
        raise click.BadParameter(f"{found.line} is no code; write NAME=VALUE")
    with opened(settings_now()) as house:
        try:
            village = name_by_codes(house, name, found, wall_clock())
        except LookupError as fault:
            raise click.ClickException(str(fault)) from fault
        click.echo(f"{village.name}: {', '.join(codes) or 'no codes'}")


@command.command("units")
@click.argument("name")
@click.argument("units", nargs=-1)
def units(name: str, units: tuple[str, ...]) -> None:
    """Say what units of land are in a village, as "bigha=1338" or "plot, plots=0.1 acre"; none:
    not known. A bare size is in m2."""
    with opened(settings_now()) as house:
        try:
            village = name_units(house, name.strip(), "\n".join(units), wall_clock())
        except LookupError as fault:
            raise click.ClickException(str(fault)) from fault
        if isinstance(village, NoUnit):
            raise click.BadParameter(
                f"{village.line!r} is no unit; write NAME=SIZE in m2, none that is the same "
                "everywhere, such as bigha=1338"
            )
        told = units_text(village.units).replace("\n", "; ")
        click.echo(f"{village.name}: {told or 'no units'}")
