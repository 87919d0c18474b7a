"""Every season over every line whose channels it needs, as written and on a bad day, to the
same end: `python -m tests.scenario.over_lines [--line NAME] [SEASON ...]`, half an hour.

The tests play a small sample (`test_seasons_by_line.py`); this is for whoever changed a line.
"""

import gc
import time
from collections.abc import Iterator, Mapping
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from datetime import timedelta
from functools import partial

import click

from gateway_sim import Chain, Delay, Handler, ReceiptLater, Sometimes
from gateway_sim.smpp import faults_by_seed
from scenarios.errors import Difference
from scenarios.play import Replay, play
from scenarios.printing import say_nothing
from scenarios.reading import read_season
from scenarios.season import Dials, Season
from scenarios.stage import prepare
from tests.scenario.test_seasons import SEASONS


def bad_day() -> Handler:
    """Half of what phones write late, though in order; a tenth of receipts an hour late; by
    one seed."""
    return Chain(
        Sometimes(Delay(timedelta(seconds=40), ways=("to_assistant",)), 0.5, 11),
        Sometimes(ReceiptLater(timedelta(hours=1)), 0.1, 13),
    )


SMPP_BREAKS = tuple(faults_by_seed(7, 60, 0.3, ("throttle", "full", "drop", "crash")))
# A screen that is lost with its bind is a session that ended: a phone dials again.
MENU_BREAKS = tuple(faults_by_seed(7, 60, 0.3, ("throttle", "full")))
MODEM_BREAKS = ("", "", "taken", "", "half", "", "", "taken")
DAYS: Mapping[str, Mapping[str, Replay]] = {
    line: {
        "as written": Replay(line=line),
        "bad day": Replay(bad_day, forgiving=True, line=line, breaks=breaks),
    }
    for line, breaks in (
        ("smpp", SMPP_BREAKS),
        ("modem", MODEM_BREAKS),
        ("hill", ()),
        ("river", ()),
    )
}


def asks_for(season: Season) -> frozenset[str]:
    """The channels that a season needs beside texts."""
    dialled = [
        step.act.code
        for block in season.blocks
        for step in block.steps
        if isinstance(step.act, Dials)
    ]
    return frozenset("menus" if code.startswith("*") else "rings" for code in dialled)


# Who answers what depends on which text comes first; a busy line changes that.
BY_THE_SECOND = frozenset({"crossed"})
LACKS = {"smpp": {"rings"}, "modem": {"menus"}, "river": {"rings"}, "hill": set[str]()}


def ended(line: str, name: str) -> Iterator[tuple[str, str, float]]:
    """How one season ended on each day of a line: the day, what differs (empty: nothing), and
    how long it took [s]."""
    season = read_season(SEASONS[name])
    if lacks := asks_for(season) & LACKS[line]:
        yield "left out", f"needs {', '.join(sorted(lacks))}", 0.0
        return
    wanted = play(season, say_nothing)
    for day, replay in DAYS[line].items():
        if day == "bad day" and name in BY_THE_SECOND:
            continue
        if replay.breaks is SMPP_BREAKS and "menus" in asks_for(season):
            replay = replace(replay, breaks=MENU_BREAKS)
        begun = time.monotonic()
        try:
            found = play(season, say_nothing, replay=replay)
            otherwise = "" if found == wanted else "another end"
        except Difference as difference:
            otherwise = str(difference)
        yield day, otherwise, time.monotonic() - begun


def _all_days(line: str, name: str) -> list[tuple[str, str, float]]:
    return list(ended(line, name))


@click.command()
@click.option("--line", type=click.Choice(list(DAYS)), multiple=True, default=list(DAYS))
@click.argument("seasons", nargs=-1)
def main(line: tuple[str, ...], seasons: tuple[str, ...]) -> None:
    """Plays them, two at once, and says where one ends otherwise."""
    wrong = 0
    prepare()
    gc.freeze()
    names = seasons or tuple(SEASONS)
    with ProcessPoolExecutor(2, initializer=gc.disable) as pool:
        for each in line:
            days = pool.map(partial(_all_days, each), names)
            for name, found in zip(names, days, strict=True):
                for day, otherwise, seconds in found:
                    wrong += bool(otherwise) and day != "left out"
                    click.echo(
                        f"{each} {name}, {day}: {otherwise or 'the same'} {seconds:.1f} s"
                    )
    raise SystemExit(wrong > 0)


if __name__ == "__main__":
    main()
