"""What a line does not take: a card without credit, a number that is refused. The officers see
what did not go, why, and what to do; once it is mended texts leave by themselves."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

import pytest

from gateway_sim.modem import Modem
from scenarios.play import play_on
from scenarios.printing import Printer, say_nothing
from scenarios.reading import read_season
from scenarios.stage import Stage

HEAD = """\
title     A line that takes nothing
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
  Neema looks at the page
  Neema reads    wait to leave: 1 | the oldest since Fri 5 Jun 06:00
"""
REFILLED = """\
2026-06-05 09:25
  Amani hears    day 6
  Neema waits    1 minute
  Neema opens    /lines
  Neema reads    wait to leave: 0
  Neema reads    It takes texts | but not credit
"""
NEVER_GONE = """\
2026-06-06 07:00
  Amani hears nothing
  Neema opens    Messages
  Neema looks at Why texts did not arrive
  Neema reads    could not be handed | down or busy | see whether its credit is used up
"""
NEXT_MORNING = """\
2026-06-07 06:00
  Amani hears    day 8
"""
REFUSED = """\
2026-06-05 05:00
  network refuses texts to Amani
06:30
  Amani hears nothing
  Neema signs in
  Neema opens    Messages
  Neema looks at Why texts did not arrive
  Neema reads    1 | The operator does not take | See whether the number is right
  Neema opens    /lines
  Neema reads    Lost today | It takes texts | 1
2026-06-05 12:00
  network is well
2026-06-06 06:00
  Amani hears    day 7
"""


@contextmanager
def sown(tmp_path: Path, line: str) -> Iterator["Desk"]:
    """A lead, a farmer with a bed, and a line between them."""
    found = Desk(tmp_path, line)
    with found.stage:
        found.goes(SOWN)
        yield found


@pytest.fixture
def desk(tmp_path: Path) -> Iterator["Desk"]:
    """The same over a modem."""
    with sown(tmp_path, "modem") as found:
        yield found


class Desk:
    """A season that is played part by part."""

    def __init__(self, folder: Path, line: str) -> None:
        self._path = folder / "part.season"
        self._path.write_text(HEAD + SOWN)
        self.stage = Stage(read_season(self._path), lambda entry: None, line)

    def goes(self, part: str) -> None:
        """The next part of it."""
        self._path.write_text(HEAD + part)
        season = read_season(self._path)
        play_on(self.stage, season, Printer(season, say_nothing))

    def refilled(self, at: str) -> None:
        """Somebody puts credit on the card then."""
        network = self.stage.operator.network.core
        network.arrive_later(datetime.fromisoformat(at), self._refill)

    def _refill(self, due: datetime) -> None:
        self.modem.card.credit = True

    @property
    def modem(self) -> Modem:
        """The modem."""
        found = self.stage.operator.network.core.assistant
        assert isinstance(found, Modem)
        return found


def test_without_credit_the_lead_sees_why_and_a_refill_sets_the_texts_free(desk: Desk) -> None:
    """In words to act on, while the morning's text waits; nobody has to start anything."""
    desk.modem.card.credit = False
    desk.refilled("2026-06-05T06:12Z")
    desk.goes(NOT_GONE + REFILLED)


def test_what_never_left_is_told_with_its_reason_and_asked_again_next_morning(
    desk: Desk,
) -> None:
    """A day without credit: the task of that day is not forgotten."""
    desk.modem.card.credit = False
    desk.refilled("2026-06-06T09:00Z")
    desk.goes(NOT_GONE + NEVER_GONE + NEXT_MORNING)


@pytest.mark.parametrize("line", ["smpp", "modem", "hill"])
def test_a_refused_text_is_told_and_the_next_one_goes(tmp_path: Path, line: str) -> None:
    """The number is refused for a morning: what was lost stands there beside its line."""
    with sown(tmp_path, line) as desk:
        desk.goes(REFUSED)
