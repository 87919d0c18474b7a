"""`nursery person`, `nursery trail`: what is kept of somebody; whether the trail is whole."""

import sys

import click

from assistant.commands.deployment import opened, settings_now
from assistant.people import read_phone
from assistant.service.privacy import KEEPING, erase_by_command, kept_of
from assistant.service.trail_seal import check as check_trail
from assistant.worker import wall_clock


@click.group()
def person() -> None:
    """What is kept of one person, and having it deleted."""


@person.command()
@click.argument("phone")
def export(phone: str) -> None:
    """Print everything that is kept of PHONE, as JSON. It leaves a line in the trail."""
    with opened(settings_now()) as house:
        found = kept_of(house, _number(phone), wall_clock())
    if found is None:
        raise click.ClickException(f"Nothing is kept of {phone}.")
    click.echo(found)


@person.command()
@click.argument("phone")
def erase(phone: str) -> None:
    """Have everything that is kept of PHONE deleted in a week. START until then keeps it."""
    with opened(settings_now()) as house:
        if not erase_by_command(house, _number(phone), wall_clock()):
            raise click.ClickException(f"Nothing is kept of {phone}, or it was asked already.")
    click.echo("The phone is told. It is done in a week, unless somebody there is in danger.")


@person.command()
def keeping() -> None:
    """What is kept, why, and how long."""
    for each in KEEPING:
        click.echo(f"{each.kind}: {each.days} days; {each.why}")


@click.group()
def trail() -> None:
    """The trail of what was done."""


@trail.command()
def check() -> None:
    """Whether no line of the trail was changed or taken away; exit 1 where one was."""
    with opened(settings_now()) as house:
        found = check_trail(house)
    if found.broken is None:
        click.echo(f"{found.lines} lines are sealed and as they were written.")
        return
    click.echo(
        f"The trail was changed: the seal of {found.broken.at:%Y-%m-%d %H:%M} UTC, up to line "
        f"{found.broken.last_id}, does not fit. Compare with a backup."
    )
    sys.exit(1)


def _number(phone: str) -> str:
    number = read_phone(phone, (settings_now().region or "")[:2] or None)
    if number is None:
        raise click.BadParameter(f"{phone!r} is no phone number; write it as +447700900001")
    return number
