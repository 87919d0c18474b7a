"""Seasons over the other lines, to the same end: as written, and while the line has a bad day.

What a line cannot do its seasons do not ask of it: SMPP tells of no missed calls, a modem
serves no menus. All of them: `python -m scenarios play --line NAME scenarios/seasons/*.season`.
"""

from datetime import timedelta

import pytest

from gateway_sim import Chain, Delay, Handler, ReceiptLater, Sometimes
from gateway_sim.smpp import faults_by_seed
from scenarios.play import Replay, play
from scenarios.printing import say_nothing
from scenarios.reading import read_season
from tests.scenario.test_seasons import SEASONS, as_written


def bad_day() -> Handler:
    """A tenth of what phones write late, a tenth of receipts an hour late; by one seed. SMPP
    gives what a phone wrote no id that lasts: twice is two texts there, so nothing is."""
    return Chain(
        Sometimes(Delay(timedelta(minutes=3), ways=("to_assistant",)), 0.1, 11),
        Sometimes(ReceiptLater(timedelta(hours=1)), 0.1, 13),
    )


# A bind that breaks after a text was taken brings it twice: see DEVELOPERS.md.
SMPP = tuple(faults_by_seed(7, 60, 0.3, ("throttle", "full", "drop", "crash")))
MODEM = ("", "", "taken", "", "half", "", "", "taken")
PLAYED = {
    "smpp, bad day": ("smooth", Replay(bad_day, forgiving=True, line="smpp", breaks=SMPP)),
    "smpp, menus": ("ussd", Replay(line="smpp")),
    "modem, missed call": ("no-credit", Replay(line="modem")),
    "modem, phone off": ("phone-off", Replay(line="modem")),
}


@pytest.mark.parametrize("case", PLAYED)
def test_a_season_ends_alike_over_every_line(case: str) -> None:
    """All that the file expects is heard, and what is kept in the end is the same."""
    name, replay = PLAYED[case]
    assert play(read_season(SEASONS[name]), say_nothing, replay=replay) == as_written(name)
