"""The `scenarios` command: plays seasons of several phones on a virtual clock.

Ends with 0 where every season went as its file says, 1 where one did not, 2 where a file
cannot be read.
"""

import gc
import os
import signal
import sys
from collections.abc import Iterable, Iterator
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from pathlib import Path
from threading import Event, Thread
from urllib.parse import quote

import click

from gateway_sim import OperatorError
from scenarios.demo import Valley, open_valley
from scenarios.errors import Difference, SeasonError
from scenarios.lines import LINES, WIRE
from scenarios.play import Replay
from scenarios.play import play as play_season
from scenarios.printing import Say, on_terminal, say_nothing
from scenarios.reading import read_season
from scenarios.season import Season
from scenarios.stage import prepare

CANNOT_BE_READ, OTHERWISE = 2, 1
MOST_JOBS = 2  # more than that are seldom idle
PHONES, PAGES = 8471, 8470  # as of `nursery start`
SIDE_BY_SIDE = ("+447700900151", "+447700900152")  # Kiswahili and English, small and large


@click.group()
def main() -> None:
    """Plays seasons written as plain text, and says where they go otherwise."""


@main.command()
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--quiet", is_flag=True, help="Print only how each season ended.")
@click.option(
    "--jobs",
    type=click.IntRange(min=1),
    default=min(MOST_JOBS, os.cpu_count() or 1),
    show_default="the cores, up to 2",
    help="Seasons played at once, each in a process of its own.",
)
@click.option(
    "--line",
    type=click.Choice(list(LINES)),
    default=WIRE,
    show_default=True,
    help="The kind of line that they are played over.",
)
def play(files: tuple[Path, ...], quiet: bool, jobs: int, line: str) -> None:
    """Plays each FILE on a fresh database and prints it as a conversation."""
    try:
        seasons = [read_season(path) for path in files]
    except SeasonError as fault:
        click.echo(str(fault), err=True)
        sys.exit(CANNOT_BE_READ)
    ended = list(_all(seasons, quiet, jobs, line))
    if not all(ended):
        click.echo(f"{ended.count(False)} of {len(ended)} seasons went otherwise.")
        sys.exit(OTHERWISE)


def _all(seasons: list[Season], quiet: bool, jobs: int, line: str) -> Iterator[bool]:
    """Whether each season went as its file says. One is printed as it goes; of several each is
    played in a process of its own, since they have nothing in common, and printed whole."""
    if len(seasons) == 1:
        yield played(seasons[0], click.echo, quiet=quiet, colour=on_terminal(), line=line)
        return
    prepare()
    gc.freeze()  # what was loaded is never garbage; short-lived processes need no collection
    with ProcessPoolExecutor(jobs, initializer=gc.disable) as pool:
        yield from _printed(pool.map(partial(_apart, quiet, on_terminal(), line), seasons))


def _printed(parts: Iterable[tuple[bool, list[str]]]) -> Iterator[bool]:
    for well, lines in parts:
        click.echo("\n".join(lines))
        yield well


def _apart(quiet: bool, colour: bool, line: str, season: Season) -> tuple[bool, list[str]]:
    lines: list[str] = []
    return played(season, lines.append, quiet=quiet, colour=colour, line=line), lines


def played(season: Season, say: Say, *, quiet: bool, colour: bool, line: str = WIRE) -> bool:
    """Plays one season and says how it ended; whether it went as its file says."""
    try:
        replay = Replay(line=line)
        play_season(season, say_nothing if quiet else say, replay=replay, colour=colour)
    except Difference as otherwise:
        say(f"OTHERWISE {otherwise}")
        return False
    say(f"As written: {season.title} ({season.path})")
    return True


@main.command()
@click.option("--phones", envvar="OPERATOR_PORT", default=PHONES, show_default=True)
@click.option("--pages", envvar="NURSERY_PORT", default=PAGES, show_default=True)
def demo(phones: int, pages: int) -> None:
    """Shows a filled valley in mid-season, on a clock that can be pushed; PHONES and PAGES are
    the ports of the phone page and of the officers' pages. Nothing of it is kept."""
    ended = Event()
    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, lambda *_: ended.set())
    try:
        with open_valley(phones, pages) as valley:
            click.echo(_how_to_look(valley))
            Thread(target=_typed, args=(valley,), daemon=True).start()
            valley.serve(ended.is_set)
    except (OperatorError, OSError) as taken:
        click.echo(f"{taken}\nThe demo takes two ports: --phones and --pages.", err=True)
        sys.exit(CANNOT_BE_READ)
    click.echo("Ended; nothing is kept.")


def _how_to_look(valley: Valley) -> str:
    address = f"{valley.stage.operator.url}/?phone=" + "&phone=".join(
        quote(number) for number in SIDE_BY_SIDE
    )
    ways = "\n".join(f"  {key:8} {label}" for key, (label, _) in valley.ways().items())
    return (
        f"It is {valley.local()} in the valley.\n"
        f"Phones, two languages side by side: {address}\n"
        f"The officers' page, signed in (this link works once): {valley.link}\n"
        f"Push the clock there, or type a word here:\n{ways}\n"
        "Ctrl-C ends it."
    )


def _typed(valley: Valley) -> None:
    """Pushes that are typed, one a line."""
    for line in sys.stdin:
        word = line.strip().casefold()
        if word in valley.ways():
            valley.push(word)
            click.echo(f"{valley.ways()[word][0]}: look at the phones and the officers' page.")
        elif word:
            click.echo(f"It is {valley.local()}. Type one of: {', '.join(valley.ways())}")


if __name__ == "__main__":
    main(prog_name="python -m scenarios")
