"""`nursery officer`: who answers the farmers and warns them."""

import click

from assistant.commands.deployment import opened, settings_now
from assistant.people import read_phone
from assistant.service.codes import new_text_code
from assistant.service.desk.accounts import ONE_TIME_LASTS, give_one_time_password
from assistant.service.desk.second_factor import take_away
from assistant.service.enrol import add_officer
from assistant.settings import Settings
from assistant.wiring.house import hash_code
from assistant.worker import wall_clock


@click.group()
def command() -> None:
    """The extension officers."""


@command.command("add")
@click.option("--phone", required=True, help="The officer's number, with country code.")
@click.option("--name", required=True, help="The officer's name.")
@click.option("--village", "villages", multiple=True, help="A village served; may be repeated.")
@click.option("--lead", is_flag=True, help="Serves every village.")
@click.option("--lang", "language", default=None, help="Language of the officer's texts.")
def add(
    phone: str, name: str, villages: tuple[str, ...], lead: bool, language: str | None
) -> None:
    """Add an officer, or give one a new code. The code is shown this once."""
    settings = settings_now()
    number = _number(phone, settings)
    if not villages and not lead:
        raise click.UsageError("Name a village with --village, or use --lead for all of them.")
    if language is not None and language not in settings.languages:
        raise click.BadParameter(f"--lang is one of {', '.join(settings.languages)}")
    code = new_text_code()
    with opened(settings) as house:
        officer = add_officer(
            house,
            phone=number,
            name=name,
            villages=villages,
            language=language or settings.languages[0],
            is_lead=lead,
            code=code,
            hash_code=hash_code,
            now=wall_clock(),
        )
    click.echo(f"{officer.name} ({officer.phone}) is an officer now.")
    click.echo(f"Code, shown only this once: {code}")
    click.echo(f"To warn by SMS: RAIN {code} VILLAGE 14-20   (HELP explains)")
    click.echo(f"For the page in a browser: nursery officer password --phone {officer.phone}")


@command.command("password")
@click.option("--phone", required=True, help="The officer's number, with country code.")
def password(phone: str) -> None:
    """Give an officer a password for one sign-in on the page. It is shown this once."""
    settings = settings_now()
    number = _number(phone, settings)
    with opened(settings) as house:
        name, fresh = give_one_time_password(house, number, wall_clock())
    click.echo(f"One-time password for {name} ({number}), shown only this once: {fresh}")
    click.echo(
        f"It opens the page within {ONE_TIME_LASTS.days} days and must be changed there."
    )


@command.command("second-factor-off")
@click.option("--phone", required=True, help="The officer's number, with country code.")
def second_factor_off(phone: str) -> None:
    """Take the second factor away of an officer who lost the phone with the app."""
    settings = settings_now()
    number = _number(phone, settings)
    with opened(settings) as house:
        name = take_away(house, number, None, wall_clock())
    if name is None:
        raise click.ClickException(f"{number} is no officer's number; see nursery officer add")
    click.echo(f"{name} signs in by password alone now, and should add a factor at once.")


def _number(phone: str, settings: Settings) -> str:
    number = read_phone(phone, settings.region[:2] or None)
    if number is None:
        raise click.BadParameter(f"{phone!r} is no phone number; write it as +447700900001")
    return number
