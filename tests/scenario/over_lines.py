"""Every season over every line whose channels it needs, as written and on a bad day, to the
same end: `python -m tests.scenario.over_lines [--line NAME] [--seed N] [SEASON ...]`, twenty
minutes a line.

The tests play a small sample (`test_seasons_by_line.py`); this is for whoever changed a line.
"""

import gc
import time
from collections.abc import Collection, Iterator, Mapping
from concurrent.futures import ProcessPoolExecutor
from functools import partial

import click

from gateway_sim import modem, provider, smpp
from gateway_sim.breaks import SHARE, bad_network, by_seed
from scenarios.errors import Difference
from scenarios.play import Replay, play
from scenarios.printing import say_nothing
from scenarios.reading import read_season
from scenarios.season import Dials, Season
from scenarios.stage import prepare
from tests.scenario.test_seasons import SEASONS

SEED = 7
WRITTEN, BAD = "as written", "bad day"
FAULTS = {
    "smpp": smpp.FAULTS,
    "modem": modem.FAULTS,
    "hill": provider.FAULTS,
    "river": provider.FAULTS,
    "mill": provider.FAULTS,
}


def days(line: str, seed: int = SEED) -> Mapping[str, Replay]:
    """How a line's days go."""
    breaks = by_seed(seed, 1_000, SHARE, FAULTS[line])
    bad = Replay(
        partial(bad_network, seed), forgiving=True, line=line, breaks=breaks, full=seed
    )
    return {WRITTEN: Replay(line=line), BAD: bad}


def asks_for(season: Season) -> frozenset[str]:
    """The channels that a season needs beside texts."""
    dialled = [
        step.act.code
        for block in season.blocks
        for step in block.steps
        if isinstance(step.act, Dials)
    ]
    return frozenset("menus" if code.startswith("*") else "rings" for code in dialled)


# Two questions with digits stand open in the same minute. Which of them was read last only
# receipts tell, and a line that is busy or tells late changes that.
BY_THE_SECOND = frozenset({"crossed", "enrolled"})
LEFT_OUT = "left out"
LACKS = {
    "smpp": {"rings"},
    "modem": {"menus"},
    "hill": set[str](),
    "river": {"rings"},
    "mill": {"rings", "menus"},
}


def ended(
    line: str, name: str, seed: int = SEED, only: Collection[str] = (WRITTEN, BAD)
) -> Iterator[tuple[str, str, float]]:
    """How one season ended on each day of a line: the day, what differs (empty: nothing), and
    how long it took [s]."""
    season = read_season(SEASONS[name])
    if lacks := asks_for(season) & LACKS[line]:
        yield LEFT_OUT, f"needs {', '.join(sorted(lacks))}", 0.0
        return
    for day, replay in days(line, seed).items():
        if day not in only or (day == BAD and name in BY_THE_SECOND):
            continue
        begun = time.monotonic()
        try:
            wanted = play(season, say_nothing)
            found = play(season, say_nothing, replay=replay)
            otherwise = "" if found == wanted else "another end"
        except Difference as difference:
            otherwise = str(difference)
        yield day, otherwise, time.monotonic() - begun


def _all_days(
    line: str, seed: int, only: Collection[str], name: str
) -> list[tuple[str, str, float]]:
    return list(ended(line, name, seed, only))


@click.command()
@click.option("--line", type=click.Choice(list(FAULTS)), multiple=True, default=list(FAULTS))
@click.option("--day", type=click.Choice([WRITTEN, BAD]), multiple=True, default=[WRITTEN, BAD])
@click.option("--seed", default=SEED, show_default=True, help="Of the bad day.")
@click.option("--jobs", default=2, show_default=True, help="Seasons played at once.")
@click.argument("seasons", nargs=-1)
def main(
    line: tuple[str, ...], day: tuple[str, ...], seed: int, jobs: int, seasons: tuple[str, ...]
) -> None:
    """Plays them and says where one ends otherwise."""
    wrong = 0
    prepare()
    gc.freeze()
    names = seasons or tuple(SEASONS)
    with ProcessPoolExecutor(jobs, initializer=gc.disable) as pool:
        for each in line:
            played = pool.map(partial(_all_days, each, seed, day), names)
            for name, found in zip(names, played, strict=True):
                for went, otherwise, seconds in found:
                    wrong += bool(otherwise) and went != LEFT_OUT
                    click.echo(
                        f"{each} {name}, {went}: {otherwise or 'the same'} {seconds:.1f} s"
                    )
    raise SystemExit(wrong > 0)


if __name__ == "__main__":
    main()
