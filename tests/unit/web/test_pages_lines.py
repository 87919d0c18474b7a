"""The page of the lines to the phones, and the text by which a lead tries one."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from decimal import Decimal

import pytest

from assistant.channel import Fate, Handover, Outgoing, Receipt
from assistant.gateways.lines import Lines, Terms
from assistant.service.arrivals import take
from assistant.service.connections import note_line, note_why
from assistant.service.dispatch import dispatch
from assistant.web.app import create_app
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, LEAD, LEASE, OFFICER, Valley

TERMS = {
    "north": Terms(a_second=20, a_day=500, price=Decimal("0.80"), kind="smpp"),
    "desk": Terms(price=Decimal("1.00"), kind="modem"),
}


@dataclass
class Told:
    """A line that says what it was told to, and keeps whom it was offered."""

    answer: Handover
    phones: list[str]

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        self.phones.append(outgoing.phone)
        return self.answer

    def time(self) -> datetime | None:
        return None


@dataclass
class Office:
    """A lead at the page of a deployment with two lines."""

    valley: Valley
    browser: Browser
    north: Told
    desk: Told

    def send(self) -> None:
        """Hands over all that waits, by the lines."""
        house, now = self.valley.house, self.valley.now

        def note(line: str, handover: Handover, at: datetime) -> None:
            note_line(house, line, handover, at)

        lines = Lines({"north": self.north, "desk": self.desk}, (), TERMS, note=note)
        while dispatch(house, lines, now, limit=9, lease=LEASE):
            pass


@pytest.fixture
def office(valley: Valley, new_browser: NewBrowser) -> Iterator[Office]:
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    valley.house = replace(valley.house, several_lines=True)
    app = create_app(
        valley.house, secret="w", wake=lambda: None, clock=lambda: valley.now, terms=TERMS
    )
    browser = Browser(app.test_client())
    browser.come_in(LEAD)
    took = Handover(Fate.ACCEPTED)
    yield Office(valley, browser, Told(took, []), Told(took, []))


def test_each_line_stands_there_with_what_is_set_of_it(office: Office) -> None:
    """Its kind, its rate and quota, what it sent and cost."""
    shown = office.browser.open("/lines")
    assert "Texts waiting to go out: 0" in shown
    north, desk = shown.split("north", 1)[1].split("desk", 1)
    assert "It has never answered." in north
    assert "SMPP 20 0 of 500" in north and "GSM no limit 0" in desk


def test_a_test_text_goes_by_its_line_alone(office: Office) -> None:
    """To the lead's own phone; the page then says that it arrived, and the trail who tried."""
    office.browser.open("/lines")
    assert "is going out on this line" in office.browser.send("/lines/try", line="desk")
    office.desk.answer = Handover(Fate.ACCEPTED, parts=("d1",))
    office.send()
    assert (office.north.phones, office.desk.phones) == ([], [LEAD])
    now = office.valley.now
    take(office.valley.house, Receipt("", Fate.DELIVERED, now, line="desk", part="d1"), now)
    shown = office.browser.open("/lines").partition("desk")[2]
    assert "It is accepting texts." in shown and "not yet" not in shown
    assert "tried a line" in office.browser.open("/trail")


def test_a_line_that_takes_nothing_says_why_and_no_other_takes_its_test(office: Office) -> None:
    """A card without credit: in its own words, while the text waits."""
    said = "the network refuses texts of this SIM card: see whether its credit is used up"
    office.desk.answer = Handover(Fate.TRY_LATER, said, rest=timedelta(minutes=10))
    office.browser.open("/lines")
    office.browser.send("/lines/try", line="desk")
    office.send()
    assert office.north.phones == []
    shown = office.browser.open("/lines")
    assert "It is not accepting texts now." in shown and said in shown
    office.valley.now += timedelta(minutes=6)
    shown = office.browser.open("/lines")  # put off until the line may be asked again
    assert "Texts waiting to go out: 1 , the oldest since" in shown
    office.valley.now += timedelta(minutes=5)
    office.send()
    office.valley.now += timedelta(minutes=2)
    assert shown.partition("Pages")[0] in office.browser.open("/lines")


def test_a_line_that_did_not_answer_is_not_said_to_take_texts(office: Office) -> None:
    """It rests for two seconds only, and nobody looks at the page in those."""
    silent = Handover(Fate.TRY_LATER, "no answer within 10 s", answered=False)
    office.north.answer = silent
    office.browser.open("/lines")
    office.browser.send("/lines/try", line="north")
    office.send()
    office.valley.now += timedelta(minutes=1)
    north = office.browser.open("/lines").split("north", 1)[1].split("desk", 1)[0]
    assert "It did not accept the last text. It says: no answer within 10 s" in north


def test_what_was_refused_is_counted_by_why(office: Office) -> None:
    """Also what the line took and then reported as lost."""
    office.browser.open("/lines")
    office.browser.send("/lines/try", line="north")
    office.north.answer = Handover(Fate.ACCEPTED, parts=("n1",))
    office.send()
    now = office.valley.now
    lost = Receipt("", Fate.FAILED, now, "UNDELIV err 5", line="north", part="n1")
    take(office.valley.house, lost, now)
    assert "1 UNDELIV err 5" in office.browser.open("/lines").partition("north")[2]


def test_a_text_that_a_line_refuses_stands_beside_that_line(office: Office) -> None:
    """And beside no other; it costs nothing and takes nothing of the day."""
    office.browser.open("/lines")
    office.browser.send("/lines/try", line="north")
    office.north.answer = Handover(Fate.FAILED, "no such number 0x0b")
    office.send()
    north, desk = office.browser.open("/lines").split("north", 1)[1].split("desk", 1)
    assert "1 no such number 0x0b" in north and "0 of 500" in north
    assert "no such number" not in desk


def test_a_line_that_is_not_up_says_why_though_nothing_is_to_be_sent(office: Office) -> None:
    """Until it is up."""
    house, now = office.valley.house, office.valley.now
    note_why(house, "desk", "the SIM card wants its PIN: set pin in the file of lines", now)
    shown = office.browser.open("/lines")
    assert "It is not accepting texts now." in shown and "wants its PIN" in shown
    note_why(house, "desk", "", now)
    shown = office.browser.open("/lines")
    assert "It is accepting texts." in shown and "wants its PIN" not in shown


def test_the_lines_are_a_leads(office: Office) -> None:
    """Nobody else sees them, tries them, or is led there; a strange name is no line."""
    valley = office.valley
    valley.add_officer(valley.add_village("Kijani"))
    give_password(valley, OFFICER)
    assert "Phone lines" in office.browser.open("/messages")
    office.browser.send("/lines/try", line="south")
    assert office.browser.page.status_code == 404
    office.browser.sign_in(OFFICER)
    assert "Phone lines" not in office.browser.open("/messages")
    office.browser.open("/lines")
    assert office.browser.page.status_code == 404
    office.browser.open("/messages")
    office.browser.send("/lines/try", line="desk")
    assert office.browser.page.status_code == 404 and AMINA not in office.desk.phones
