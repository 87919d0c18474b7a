"""The programme without a command line: first day, villages, officers, line, files."""

from datetime import timedelta
from pathlib import Path

import pytest

from assistant.people import Village
from assistant.service.copies import copy_of_today
from assistant.service.desk.village_map import village_map
from assistant.service.desk.villages import VillageLine
from assistant.wording.messages_web_books import UNFIT_KNOWN
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, LEAD, NAIROBI, OFFICER, Valley


def way(valley: Valley) -> None:
    """A lead and an officer; Amina lives in Kijani, nobody in Mto Mwanga."""
    kijani = valley.add_village("Kijani")
    valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, LEAD):
        give_password(valley, phone)
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    valley.heard(AMINA)


@pytest.fixture
def lead(new_browser: NewBrowser) -> Browser:
    """The lead, signed in."""
    found = new_browser()
    found.come_in(LEAD)
    found.open("/programme")
    return found


def test_what_a_first_day_needs_is_one_list(valley: Valley, lead: Browser) -> None:
    """Each step leads to its page; what is set leads to the settings."""
    shown = lead.words()
    assert "An officer for each village 1 of 2" in shown
    assert "Where each village is 0 of 2" in shown and "The first farmers done" in shown
    assert "Change settings" in shown and "20:00 to 05:30" in shown
    lead.send("/villages/1/place", place="-0.68, 37.35")
    assert "Where each village is 1 of 2" in lead.open("/programme")


def test_nobody_but_a_lead_is_let_in(new_browser: NewBrowser) -> None:
    """Neither to the page nor to its files and forms."""
    officer = new_browser()
    officer.sign_in()
    for path in (
        "/programme",
        "/programme/people.csv",
        "/programme/messages.csv",
        "/programme/costs.xlsx",
    ):
        officer.open(path)
        assert officer.page.status_code == 404, path
    officer.open("/morning")
    for path in ("/villages", "/villages/1/mend", "/villages/1/retire"):
        officer.send(path, name="Bonde")
        assert officer.page.status_code == 404, path


def test_farmers_and_costs_come_as_files(valley: Valley, lead: Browser) -> None:
    """The trail tells that they were taken."""
    lead.open("/programme/people.csv")
    rows = lead.page.data.decode("utf-8-sig").splitlines()
    assert rows[0].startswith("Village,Farmer,Phone number,Language")
    assert rows[1].startswith(f"Kijani,,'{AMINA},en,2026-06-01,")
    lead.open("/programme/costs.csv")
    assert b"2026-06-01,Kijani," in lead.page.data
    lead.open("/programme/people.xlsx")
    assert lead.page.data[:2] == b"PK"
    with valley.house.store.look() as work:
        acts = [line.act for line in work.audit.latest(3)]
    assert acts == ["people_taken", "costs_taken", "people_taken"]


def test_a_village_is_added_named_and_told_whom_to_ring(valley: Valley, lead: Browser) -> None:
    """Its own numbers go before the programme's, at once."""
    lead.open("/villages")
    assert "Bonde is added" in lead.send("/villages", name="Bonde")
    assert "already a village" in lead.send("/villages", name="kijani")
    assert "at most 20 letters" in lead.send("/villages", name="12")
    lead.open("/villages/1")
    form = {"name": "Kijani Juu", "emergency": "07700 900911", "health_post": "Kijani post"}
    assert "Saved." in lead.send("/villages/1/mend", **form)
    with valley.house.store.look() as work:
        village = work.people.village(1)
    near = valley.house.phonebook.of(village)
    assert (near.emergency, near.health_post, near.vet) == ("07700 900911", "Kijani post", "")
    assert "need a phone number" in lead.send(
        "/villages/1/mend", name="Kijani", emergency="ring us"
    )


def test_villages_are_joined_and_retired(valley: Valley, lead: Browser) -> None:
    """Farmers and officers go along; not while a warning stands, nor where farmers live."""
    lead.open("/villages/1")
    assert "Farmers live there" in lead.send("/villages/1/retire")
    assert "Tick the box first" in lead.send("/villages/1/join", into="2")
    assert "Choose the other" in lead.send("/villages/1/join", into="1", sure="on")
    assert "1 farmer now lives in Mto Mwanga" in lead.send(
        "/villages/1/join", into="2", sure="on"
    )
    with valley.house.store.look() as work:
        assert [each.name for each in work.people.villages()] == ["Mto Mwanga"]
        officer = work.people.officer(OFFICER)
        farmer = work.people.farmer(AMINA)
    assert officer is not None and officer.village_ids == (2,)
    assert farmer is not None and farmer.village_id == 2
    assert "Kijani is added" in lead.send("/villages", name="Kijani")
    lead.open("/villages/1")
    assert "no longer listed" in lead.send("/villages/1/retire")


def test_no_village_is_joined_in_a_storm(valley: Valley, lead: Browser) -> None:
    """Its farmers would miss the all-clear."""
    with valley.house.store.work() as work:
        work.warnings.add(1, 1, valley.now, valley.now.replace(hour=20), valley.now)
    lead.open("/villages/1")
    shown = lead.send("/villages/1/join", into="2", sure="on")
    assert "would miss the all-clear" in shown


def test_an_officers_name_and_number_are_put_right(valley: Valley, lead: Browser) -> None:
    """A number that another has is refused."""
    lead.open("/officers/1")
    form = {"name": "Asha Mosi", "phone": "+447700900009", "language": "sw"}
    assert "Saved" in lead.send("/officers/1/mend", **form)
    assert "Asha Mosi" in lead.words() and "+447700900009" in lead.page.text
    shown = lead.send("/officers/1/mend", **{**form, "phone": LEAD})
    assert UNFIT_KNOWN.text in shown and lead.page.status_code == 422


def test_the_map_keeps_directions_and_distances() -> None:
    """One degree of latitude is 111.2 km (the mean of the earth's quadrant, 10,008 km / 90);
    at 60 degrees north a degree of longitude is half as long."""
    corners = ((60.0, 10.0), (60.0, 11.0), (59.0, 10.0))
    lines = [
        VillageLine(Village(at, f"V{at}", NAIROBI, latitude=n, longitude=e), (), 0, at, 0)
        for at, (n, e) in enumerate(corners)
    ]
    drawn = village_map(lines)
    assert drawn is not None
    west, east, south = drawn.marks
    assert east.x > west.x and south.y > west.y and west.y == east.y
    assert (east.x - west.x) / (south.y - west.y) == pytest.approx(0.5, abs=0.02)
    assert drawn.rule / drawn.rule_km == pytest.approx((south.y - west.y) / 111.2, rel=0.01)
    assert village_map([VillageLine(Village(1, "A", NAIROBI), (), 0, 0, 0)]) is None


def test_texts_of_a_month_come_as_a_file_without_their_words(
    valley: Valley, lead: Browser
) -> None:
    """To hold against the operator's bill: to whom, what became of it, how many segments."""
    lead.open("/programme/messages.csv")
    head, *rows = lead.page.data.decode("utf-8-sig").splitlines()
    assert head.startswith("When,Village,Phone number,Status,Segments")
    assert rows and all(f"'{AMINA}" in row or f"'{OFFICER}" in row for row in rows)
    assert "nursery" not in lead.page.data.decode().lower()
    lead.open("/programme/messages.xlsx")
    assert lead.page.data[:2] == b"PK"


def test_a_copy_is_asked_for_and_seen(valley: Valley, lead: Browser, tmp_path: Path) -> None:
    """Where copies are made at all; the worker makes it at its next look."""
    assert "No backups are made" in lead.send("/programme/copy")
    assert copy_of_today(valley.house, tmp_path, 2, valley.now) is not None
    valley.now += timedelta(minutes=5)
    assert "Last backup Mon 1 Jun" in lead.open("/programme")
    assert "within a minute" in lead.send("/programme/copy")
    valley.now += timedelta(minutes=1)
    assert copy_of_today(valley.house, tmp_path, 2, valley.now) is not None
    assert copy_of_today(valley.house, tmp_path, 2, valley.now) is None
    assert "Back up now" in lead.open("/programme")


def test_a_lead_sets_the_land_units_of_a_village(lead: Browser) -> None:
    """What is no unit changes nothing; they stand in the form again."""
    lead.open("/villages/1")
    shown = lead.send("/villages/1/units", units="bigha = 1338\nplot, plots = 400")
    assert "New plans here go by these units." in shown
    assert "bigha = 1338\nplot, plots = 400</textarea>" in lead.page.text
    assert "This is no unit" in lead.send("/villages/1/units", units="acre = 4000")
    assert "bigha = 1338" in lead.page.text
