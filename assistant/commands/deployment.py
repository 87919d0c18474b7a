"""Opens a deployment for a command, with each fault told in words and not as a traceback."""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager

import click

from assistant.service.house import House
from assistant.settings import Settings, SettingsError, read_settings
from assistant.store import StoreError
from assistant.wiring.catalogues import CatalogueError
from assistant.wiring.house import open_house, open_store


def settings_now() -> Settings:
    """The settings from the environment; a fault ends the command with status 2."""
    try:
        return read_settings(os.environ)
    except SettingsError as fault:
        click.echo(str(fault), err=True)
        sys.exit(2)


@contextmanager
def opened(settings: Settings) -> Iterator[House]:
    """A deployment for as long as a command needs it."""
    try:
        store = open_store(settings)
    except (StoreError, OSError) as fault:
        raise click.ClickException(f"The database cannot be opened: {fault}") from fault
    try:
        yield open_house(settings, store)
    except (StoreError, LookupError, CatalogueError, SettingsError) as fault:
        raise click.ClickException(str(fault.args[0] if fault.args else fault)) from fault
    finally:
        store.close()
