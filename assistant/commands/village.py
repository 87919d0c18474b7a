"""`nursery village`: the villages of the programme."""

import click

from assistant.alerts import Place
from assistant.alerts.values import Point
from assistant.commands.deployment import opened, settings_now
from assistant.people import LONGEST_VILLAGE, village_name
from assistant.service.alert_codes import NoCode, place_village, read_codes
from assistant.service.enrol import add_village, list_villages, offer_practices
from assistant.settings import is_zone
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


@command.command("add")
@click.argument("name")
@click.option("--zone", callback=_zone, help="IANA time zone; the programme's if not given.")
def add(name: str, zone: str | None) -> None:
    """Add a village."""
    kept = village_name(name)
    if kept is None:
        raise click.BadParameter(
            f"{name!r} is no name of a village; write a word of up to {LONGEST_VILLAGE} letters"
        )
    with opened(settings_now()) as house:
        village = add_village(house, kept, zone)
        click.echo(f"Added {village.name} ({village.zone}).")


@command.command("list")
def show() -> None:
    """List the villages with their time zones."""
    with opened(settings_now()) as house:
        for village in list_villages(house):
            click.echo(f"{village.name}\t{village.zone}")


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


@command.command("place")
@click.argument("name")
@click.option("--latitude", type=click.FloatRange(-90, 90), help="Degrees north, as -3.71.")
@click.option("--longitude", type=click.FloatRange(-180, 180), help="Degrees east, as 42.55.")
@click.option("--code", "codes", multiple=True, help="NAME=value, by which alerts name it.")
def place(
    name: str, latitude: float | None, longitude: float | None, codes: tuple[str, ...]
) -> None:
    """Say where a village lies, for official alerts: a point, codes, or both."""
    if (latitude is None) != (longitude is None):
        raise click.UsageError("give --latitude and --longitude together")
    found = read_codes("\n".join(codes))
    if isinstance(found, NoCode):
        raise click.BadParameter(f"{found.line} is no code; write NAME=value")
    point = (
        Point(latitude, longitude) if latitude is not None and longitude is not None else None
    )
    if point is None and not found:
        raise click.UsageError("give --latitude and --longitude, or --code")
    with opened(settings_now()) as house:
        try:
            village = place_village(house, name, Place(point, frozenset(found)), wall_clock())
        except LookupError as fault:
            raise click.ClickException(str(fault)) from fault
        click.echo(f"{village.name}: placed.")
