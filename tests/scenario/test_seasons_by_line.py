"""Seasons over the other lines, to the same end: as written, and while the line has a bad day.

What a line cannot do its seasons do not ask of it: SMPP tells of no missed calls, a modem
serves no menus. All of them: `python -m tests.scenario.over_lines`.
"""

from dataclasses import replace

import pytest

from scenarios.play import Replay, play
from scenarios.printing import say_nothing
from scenarios.reading import read_season
from tests.scenario.over_lines import BAD, days
from tests.scenario.test_seasons import SEASONS, AsWritten, as_written

__all__ = ["as_written"]

# Each fault of the connection, and not one upon the other: after a crash the line is waited for
# in real time, and so is who falls silent.
EACH_ONCE = {
    "smpp": ("", "throttle", "", "full", "drop", "", "crash", "half"),
    "modem": ("", "busy", "", "taken", "", "half"),
    "hill": ("", "busy", "", "lost", "", "half"),
}
PLAYED = {
    "smpp, bad day": ("two-nurseries", Replay(line="smpp")),
    "smpp, menus": ("ussd", Replay(line="smpp")),
    "modem, bad day": ("late-planting", Replay(line="modem")),
    "modem, missed call": ("no-credit", Replay(line="modem")),
    "hill, bad day": ("look-alike", Replay(line="hill")),
}


def as_it_goes(case: str, replay: Replay) -> Replay:
    """The day of a case: a bad one is that of the line with each of its faults once."""
    if not case.endswith(BAD):
        return replay
    return replace(days(replay.line)[BAD], breaks=EACH_ONCE[replay.line])


@pytest.mark.parametrize("case", PLAYED)
def test_a_season_ends_alike_over_every_line(
    case: str,
    as_written: AsWritten,  # noqa: F811  # the fixture
) -> None:
    """All that the file expects is heard, and what is kept in the end is the same."""
    name, replay = PLAYED[case]
    replay = as_it_goes(case, replay)
    assert play(read_season(SEASONS[name]), say_nothing, replay=replay) == as_written(name)
