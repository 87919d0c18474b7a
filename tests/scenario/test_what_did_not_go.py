"""A SIM card without credit: a lead sees on the page of the lines that nothing goes, why."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from gateway_sim.modem import Modem
from scenarios.play import play_on
from scenarios.printing import Printer, say_nothing
from scenarios.reading import read_season
from scenarios.stage import Stage

HEAD = """\
title     A card without credit
zone      Africa/Nairobi
languages en
villages  Kijani
phone     Amani  +447700900131
lead      Neema  +447700900211 code 314159

"""
SOWN = """\
2026-06-01 09:00
  Amani texts    hi
  Amani texts    1
  Amani texts    Kijani
  Amani texts    yes
  Amani hears    field
  Amani texts    0.4 ha, 85%, sown 30 May
  Amani texts    10 L
  Amani texts    yes
  Amani texts    yes
  Amani hears    plan is ready
"""
NOT_GONE = """\
2026-06-05 09:00
  Amani hears nothing
  Neema signs in
  Neema opens    /lines
  Neema reads    It takes no texts now | see whether its credit is used up
"""


@pytest.fixture
def desk(tmp_path: Path) -> Iterator["Desk"]:
    """A lead, a farmer, and a modem between them."""
    found = Desk(tmp_path)
    with found.stage:
        found.goes(SOWN)
        yield found


class Desk:
    """A season that is played part by part."""

    def __init__(self, folder: Path) -> None:
        self._path = folder / "part.season"
        self._path.write_text(HEAD + SOWN)
        self.stage = Stage(read_season(self._path), lambda entry: None, "modem")

    def goes(self, part: str) -> None:
        """The next part of it."""
        self._path.write_text(HEAD + part)
        season = read_season(self._path)
        play_on(self.stage, season, Printer(season, say_nothing))

    @property
    def modem(self) -> Modem:
        """The modem."""
        found = self.stage.operator.network.core.assistant
        assert isinstance(found, Modem)
        return found


def test_without_credit_the_lead_sees_that_the_line_takes_nothing_and_why(desk: Desk) -> None:
    """In words to act on, while the morning's text has not come."""
    desk.modem.card.credit = False
    desk.goes(NOT_GONE)
