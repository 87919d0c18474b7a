"""`nursery backup`: a copy of the SQLite database while it is in use."""

from pathlib import Path

import click

from assistant.commands.deployment import settings_now
from assistant.store import StoreError
from assistant.wiring.house import open_store


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
def command(file: Path) -> None:
    """Copy the database into FILE. For PostgreSQL use pg_dump."""
    try:
        store = open_store(settings_now())
        store.backup(file)
        store.close()
    except (StoreError, OSError) as fault:
        raise click.ClickException(str(fault)) from fault
    click.echo(f"The database is in {file}.")
