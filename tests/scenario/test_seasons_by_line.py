"""Seasons over the other lines, to the same end: as written, and while the line has a bad day.

What a line cannot do its seasons do not ask of it: SMPP tells of no missed calls, a modem
serves no menus. All of them: `python -m tests.scenario.over_lines`.
"""

import pytest

from scenarios.play import Replay, play
from scenarios.printing import say_nothing
from scenarios.reading import read_season
from tests.scenario.over_lines import BAD, days
from tests.scenario.test_seasons import SEASONS, AsWritten, as_written

__all__ = ["as_written"]

PLAYED = {
    "smpp, bad day": ("smooth", days("smpp")[BAD]),
    "smpp, menus": ("ussd", Replay(line="smpp")),
    "modem, missed call": ("no-credit", Replay(line="modem")),
    "modem, phone off": ("phone-off", Replay(line="modem")),
}


@pytest.mark.parametrize("case", PLAYED)
def test_a_season_ends_alike_over_every_line(
    case: str,
    as_written: AsWritten,  # noqa: F811  # the fixture
) -> None:
    """All that the file expects is heard, and what is kept in the end is the same."""
    name, replay = PLAYED[case]
    assert play(read_season(SEASONS[name]), say_nothing, replay=replay) == as_written(name)
