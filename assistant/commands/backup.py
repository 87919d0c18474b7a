"""`nursery backup` and `nursery restore`: a copy of the database, and putting one back."""

from contextlib import closing
from datetime import datetime
from pathlib import Path

import click

from assistant.commands.deployment import opened, settings_now
from assistant.service.house import House
from assistant.service.pulse import SILENT_AFTER, pulse
from assistant.service.restored import WHY, begin_again, phones_on_roll
from assistant.settings import Settings, SettingsError
from assistant.store import StoreError
from assistant.store.backup import put_back
from assistant.wiring.house import bare_store
from assistant.wiring.journal import journal_path, stopped_of
from assistant.worker import wall_clock

A_FILE = click.Path(path_type=Path)


@click.command()
@click.argument("file", type=A_FILE)
def command(file: Path) -> None:
    """Copy the database into FILE, which only its owner may read. Nothing is changed."""
    try:
        with closing(bare_store(settings_now())) as store:
            store.backup(file)
    except (StoreError, OSError) as fault:
        raise click.ClickException(str(fault)) from fault
    click.echo(f"The database is in {file}.")


@click.command()
@click.argument("file", type=A_FILE)
@click.option("--hold", is_flag=True, required=True, help="No text leaves until you say so.")
def restore(file: Path, hold: bool) -> None:
    """Put the copy FILE in the place of the database. Stop web and worker first.

    Who said STOP since the copy was made stays stopped, by the journal beside the database.
    """
    settings = settings_now()
    _refuse_if_alive(settings)
    try:
        put_back(settings.database_url, file)
    except (StoreError, OSError) as fault:
        raise click.ClickException(str(fault)) from fault
    with opened(settings, migrate=True) as house:
        count = begin_again(house, _stopped(house, settings), wall_clock())
    click.echo(f"The database is as it was in {file}. {count} phones were stopped again.")
    click.echo("No text leaves before you say: nursery texts go")


def _stopped(house: House, settings: Settings) -> list[tuple[str, datetime]]:
    """Who of the copy said STOP last, by the journal."""
    path = journal_path(settings)
    if path is None or not path.exists():
        return []
    try:
        return stopped_of(path, phones_on_roll(house), settings)
    except SettingsError as fault:
        with house.store.work() as work:
            work.running.hold(WHY, wall_clock())
        raise click.ClickException(f"{fault}; all texts are held meanwhile") from fault


def _refuse_if_alive(settings: Settings) -> None:
    """A process that runs would go on writing into the database that was taken away."""
    try:
        with opened(settings) as house:
            now = wall_clock()
            found = pulse(house, now)
    except click.ClickException:
        return  # a database that cannot be opened is why a copy is put back
    alive = [at for at in (found.ticking, found.sending) if at and now - at < SILENT_AFTER]
    if alive:
        raise click.ClickException(
            "The worker runs, or did so two minutes ago. Stop web and worker, wait for two "
            "minutes, then try again."
        )
