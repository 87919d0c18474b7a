"""Opens a deployment for a command, with each fault told in words and not as a traceback."""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

import click

import assistant
from assistant.dialogue.values import Nearby
from assistant.service.house import House
from assistant.service.in_force import in_force
from assistant.settings import Settings, SettingsError
from assistant.settings.reading import from_file, read_settings
from assistant.store import StoreError
from assistant.wiring.catalogues import CatalogueError
from assistant.wiring.house import open_house, open_store
from assistant.wiring.programme import Programme, read_programme
from assistant.wiring.refit import tariff_of


def settings_now() -> Settings:
    """The settings from the environment; a fault ends the command with status 2.

    Every command sees the same programme: without a gateway the invented district stands in
    for one, and the programme's name, time zone and price of a text count where none is set.
    """
    try:
        settings = read_settings(_environment())
        demo = _demo_programme()
        has_line = settings.gateway_url or settings.lines_file
        if not has_line and not settings.programme_file and demo.is_file():
            return _stand_in(replace(settings, programme_file=str(demo)))
        return _of_programme(settings) if settings.programme_file else settings
    except SettingsError as fault:
        click.echo(str(fault), err=True)
        sys.exit(2)


def _environment() -> dict[str, str]:
    """What is set: the settings file, and the environment, which goes before it."""
    place = os.environ.get("NURSERY_SETTINGS_FILE")
    if not place:
        return dict(os.environ)
    try:
        text = Path(place).read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as fault:
        raise SettingsError(
            f"NURSERY_SETTINGS_FILE: {place} cannot be read ({fault})"
        ) from fault
    return {**from_file(text, place), **os.environ}


def _of_programme(settings: Settings) -> Settings:
    """Settings with what the programme's file says, which goes before the environment: it is
    what the office wrote, and only its pages go before it."""
    programme = programme_of(settings)
    tariff = programme.tariff or tariff_of(settings)
    return replace(
        settings,
        zone=programme.zone or settings.zone,
        programme=programme.name or settings.programme,
        price_per_segment=tariff.per_segment if tariff else settings.price_per_segment,
        currency=tariff.currency if tariff else settings.currency,
    )


def _stand_in(settings: Settings) -> Settings:
    """The invented district says only what the environment does not: nobody here wrote it."""
    told, given = _of_programme(settings), _environment()
    kept = {"ZONE", "PROGRAMME", "PRICE_PER_SEGMENT", "CURRENCY"}
    names = [name.lower() for name in kept if f"NURSERY_{name}" in given]
    return replace(told, **{name: getattr(settings, name) for name in names})


def programme_of(settings: Settings) -> Programme:
    """The programme that a deployment is for.

    Raises:
        SettingsError: its file cannot be read.
    """
    return read_programme(Path(settings.programme_file))


def _demo_programme() -> Path:
    """The invented district that comes with a checkout, for trying things out."""
    return Path(assistant.__file__).parent.parent / "scenarios" / "district" / "programme.toml"


def invented_numbers() -> frozenset[str]:
    """Whom the invented district sends people to: numbers that nobody answers."""
    demo = _demo_programme()
    book = read_programme(demo).phonebook.programme if demo.is_file() else Nearby()
    return frozenset({book.emergency, book.health_post, book.vet} - {""})


@contextmanager
def opened(settings: Settings, *, migrate: bool = False) -> Iterator[House]:
    """A deployment for as long as a command needs it; `migrate`: whether the tables of an
    earlier release are brought to this one."""
    try:
        store = open_store(settings, migrate=migrate)
    except (StoreError, OSError) as fault:
        raise click.ClickException(f"The database cannot be opened: {fault}") from fault
    try:
        yield in_force(open_house(settings, store))
    except (KeyError, IndexError):  # a fault of ours, not a name that somebody mistyped
        raise
    except (StoreError, LookupError, CatalogueError, SettingsError) as fault:
        raise click.ClickException(str(fault.args[0] if fault.args else fault)) from fault
    finally:
        store.close()
