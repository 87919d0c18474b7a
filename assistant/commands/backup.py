"""`nursery backup` and `nursery restore`: a copy of the database, and putting one back."""

from contextlib import closing
from pathlib import Path

import click

from assistant.commands.deployment import opened, settings_now
from assistant.service.pulse import SILENT_AFTER, pulse
from assistant.service.restored import begin_again
from assistant.settings import Settings
from assistant.store import StoreError
from assistant.store.backup import put_back
from assistant.wiring.house import bare_store
from assistant.wiring.journal import journal_path, read_journal
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
    path = journal_path(settings)
    said = read_journal(path) if path else {}
    stopped = [(phone, each.at) for phone, each in said.items() if each.stopped]
    with opened(settings, migrate=True) as house:
        count = begin_again(house, stopped, wall_clock())
    click.echo(f"The database is as it was in {file}. {count} phones were stopped again.")
    click.echo("No text leaves before you say: nursery texts go")


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
