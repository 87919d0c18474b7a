"""What a line does not take: a card without credit, a number that is refused, a line that is
down beside one that is up. The officers see what did not go, why, and what to do; once it is
mended texts leave by themselves."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

import pytest

from gateway_sim.modem import Modem
from gateway_sim.smpp import SmppAccount
from scenarios.lines import WIRE, OwnWire
from scenarios.play import play_on
from scenarios.printing import Printer, say_nothing
from scenarios.reading import read_season
from scenarios.stage import Open, SeasonStage
from tests.contract.test_smpp import until
from tests.scenario.two_lines import TwoLines

HEAD = """\
title     A line that takes nothing
zone      Africa/Nairobi
languages en
villages  Kijani
phone     Amani  +447700900131
lead      Neema  +447700900211 code 314159
officer   Juma   +447700900201 code 246813 of Kijani

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
  Neema reads    It is not accepting texts now | see whether its credit is used up
  Neema looks at the page
  Neema reads    Texts waiting to go out: 1 | the oldest since Fri 5 Jun 06:00
"""
REFILLED = """\
2026-06-05 09:25
  Amani hears    day 6
  Neema waits    1 minute
  Neema opens    /lines
  Neema reads    Texts waiting to go out: 0
  Neema reads    It is accepting texts | but not credit
"""
NEVER_GONE = """\
2026-06-06 07:00
  Amani hears nothing
  Neema opens    Messages
  Neema looks at Why texts did not arrive
  Neema reads    could not be handed | down or busy | see whether its credit is used up
  Juma signs in
  Juma opens     Messages
  Juma looks at Why texts did not arrive
  Juma reads     could not be handed | down or busy | see whether its credit is used up
"""
AN_OFFICERS_LIST = """\
2026-06-05 07:00
  Amani hears nothing
  Juma signs in
  Juma opens     /
  Juma reads     Texts are not going out | reach farmers by phone
  Juma reads     not every nursery has been asked | but not every nursery has answered
  Juma opens     /messages?which=waiting
  Juma reads     One by one | +447700900131 | Still open from Thu 4 Jun: uncover
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
  Neema reads    1 | The operator does not accept | Check whether the number is right
  Juma signs in
  Juma opens     Messages
  Juma looks at Why texts did not arrive
  Juma reads     1 | The operator does not accept | Check whether the number is right
  Neema opens    /lines
  Neema reads    Lost today | It is accepting texts | 1
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

    def __init__(self, folder: Path, line: str = "", two: OwnWire | None = None) -> None:
        self._path = folder / "part.season"
        self._path.write_text(HEAD + SOWN)
        open_to = Open(line=two) if two else None
        self.stage = SeasonStage(
            read_season(self._path), lambda entry: None, line or WIRE, open_to=open_to
        )

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


def test_who_was_not_asked_stands_on_the_list_of_the_officer(desk: Desk) -> None:
    """The cover was to come off yesterday, and nobody said so to the farmer."""
    desk.modem.card.credit = False
    desk.goes(AN_OFFICERS_LIST)


@pytest.mark.parametrize("line", ["smpp", "modem", "hill"])
def test_a_refused_text_is_told_and_the_next_one_goes(tmp_path: Path, line: str) -> None:
    """The number is refused for a morning: what was lost stands there beside its line."""
    with sown(tmp_path, line) as desk:
        desk.goes(REFUSED)


# --- one line of two is down ------------------------------------------------------------------

BY_THE_OTHER = """\
2026-06-05 06:00
  Amani hears    day 6
  Neema signs in
  Neema opens    /lines
  Neema reads    Texts waiting to go out: 0
  Neema reads    desk | It is not accepting texts now | see whether its credit is used up
  Neema reads    north | It is accepting texts | Fri 5 Jun 06:00
06:10
  Amani texts    menu
  Amani hears    2 Quantities
"""
BY_THE_FIRST_AGAIN = """\
2026-06-06 06:00
  Amani hears    day 7
  Neema signs in
  Neema opens    /lines
  Neema reads    desk | It is accepting texts | Sat 6 Jun 06:00 | but not credit
06:10
  Amani texts    menu
  Amani hears    2 Quantities
  Neema opens    /lines
  Neema reads    north | It is accepting texts | Sat 6 Jun 06:10
"""
WARNED = """\
2026-06-01 10:00
  Neema texts    RAIN 314159 Kijani 14-20
  Neema hears    14:00 to 20:00
  Neema texts    1
  Amani hears    2 pm | 1 Covered
  Neema signs in
  Neema opens    /lines
  Neema reads    north | It did not accept the last text | password
"""
NONE_IS_UP = """\
2026-06-05 06:05
  Amani hears nothing
  Neema signs in
  Neema opens    /lines
  Neema reads    Texts waiting to go out: 1 | the oldest since Fri 5 Jun 06:00
  Neema reads    desk | It did not accept the last text | by a window
  Neema reads    north | It did not accept the last text | password
"""
ONE_IS_BACK = """\
2026-06-05 06:20
  Amani hears    day 6
  Neema signs in
  Neema opens    /lines
  Neema reads    Texts waiting to go out: 0
  Neema reads    desk | It is accepting texts | but not by a window
"""


@pytest.fixture
def both(tmp_path: Path) -> Iterator[tuple["Desk", TwoLines]]:
    """A lead and a farmer with a bed, a modem and an account between them."""
    lines = TwoLines()
    desk = Desk(tmp_path, two=lines)
    with desk.stage:
        desk.goes(SOWN)
        yield desk, lines


def locked_out(lines: TwoLines) -> None:
    """The operator changed the account's password."""
    lines.sides.centre.account = SmppAccount(password="another")
    lines.sides.centre.drop()
    assert until(lambda: "password" in lines.lines.why)


def test_a_card_without_credit_holds_up_no_text_where_another_line_is_up(
    both: tuple[Desk, TwoLines],
) -> None:
    """Answers go by the line that the farmer wrote by; once refilled it is the first again."""
    desk, lines = both
    lines.sides.modem.card.credit = False
    lines.sides.texted = lines.sides.centre
    desk.goes(BY_THE_OTHER)
    assert set(lines.went_by(desk.stage.operator)[-2:]) == {"north"}
    lines.sides.modem.card.credit = True
    desk.goes(BY_THE_FIRST_AGAIN)
    assert lines.went_by(desk.stage.operator)[-2:] == ["desk", "north"]


def test_a_warning_goes_by_the_modem_where_the_account_is_locked(
    both: tuple[Desk, TwoLines],
) -> None:
    """At once, though warnings have the account as their line."""
    desk, lines = both
    locked_out(lines)
    desk.goes(WARNED)


def test_where_no_line_is_up_the_lead_sees_both_and_the_first_that_is_back_sends(
    both: tuple[Desk, TwoLines],
) -> None:
    """In words to act on for each."""
    desk, lines = both
    locked_out(lines)
    lines.sides.modem.card.network = False
    assert until(lambda: "by a window" in lines.lines.why)
    desk.goes(NONE_IS_UP)
    lines.sides.modem.card.network = True
    assert until(lambda: "by a window" not in lines.lines.why)
    desk.goes(ONE_IS_BACK)
