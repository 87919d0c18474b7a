"""The `scenarios` command: plays seasons of several phones on a virtual clock.

Ends with 0 where every season went as its file says, 1 where one did not, 2 where a file
cannot be read.
"""

import sys
from pathlib import Path

import click

from scenarios.errors import Difference, SeasonError
from scenarios.play import play as play_season
from scenarios.printing import on_terminal, say_nothing
from scenarios.reading import read_season
from scenarios.season import Season


@click.group()
def main() -> None:
    """Plays seasons written as plain text, and says where they go otherwise."""


@main.command()
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--quiet", is_flag=True, help="Print only how each season ended.")
def play(files: tuple[Path, ...], quiet: bool) -> None:
    """Plays each FILE on a fresh database and prints it as a conversation."""
    try:
        seasons = [read_season(path) for path in files]
    except SeasonError as fault:
        click.echo(str(fault), err=True)
        sys.exit(2)
    ended = [_played(season, quiet) for season in seasons]
    if not all(ended):
        click.echo(f"{ended.count(False)} of {len(ended)} seasons went otherwise.")
        sys.exit(1)


def _played(season: Season, quiet: bool) -> bool:
    """Plays one season; whether it went as its file says."""
    try:
        play_season(season, say_nothing if quiet else click.echo, colour=on_terminal())
    except Difference as otherwise:
        click.echo(f"OTHERWISE {otherwise}")
        return False
    click.echo(f"As written: {season.title} ({season.path})")
    return True


if __name__ == "__main__":
    main(prog_name="python -m scenarios")
