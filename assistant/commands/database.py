"""`nursery status`, `nursery migrate`, `nursery downgrade`: the tables and the release."""

from collections.abc import Iterator
from contextlib import closing, contextmanager

import click

from assistant.commands.deployment import settings_now
from assistant.store import Store, StoreError
from assistant.wiring.house import bare_store


@contextmanager
def _bare() -> Iterator[Store]:
    """The database as it is, with each fault told in words."""
    try:
        with closing(bare_store(settings_now())) as store:
            yield store
    except (StoreError, OSError) as fault:
        raise click.ClickException(str(fault)) from fault


@click.command()
def status() -> None:
    """Which tables the database has, and which this release works with."""
    with _bare() as store:
        found = store.tables()
    click.echo(f"tables of the database: {found.there or 'none'}")
    click.echo(f"tables of this release: {found.wanted}")
    click.echo(found.advice)


@click.command()
def migrate() -> None:
    """Bring the tables to this release. Make a copy first: nursery backup FILE."""
    with _bare() as store:
        store.migrate()
        click.echo(f"The tables are those of this release: {store.tables().wanted}.")


@click.command()
@click.argument("to")
def downgrade(to: str) -> None:
    """Take the tables back to TO, such as v0076, for an earlier release to work with.

    What only the later tables hold is lost. Stop web and worker, make a copy first.
    """
    with _bare() as store:
        store.downgrade(to)
    click.echo(f"The tables are those of {to}. Start the release that goes with them.")
