"""Calendars: the sheet for a wall, and the file for a phone's own calendar.

The files are read again by vobject, which shares no code with what wrote them. The rules are
those of RFC 5545 and its errata: UID 3.8.4.7, SEQUENCE 3.8.7.4, LAST-MODIFIED 3.8.7.3, DTSTAMP
3.8.7.2, dates 3.3.4, escaped text 3.3.11, lines of 75 octets 3.1.
"""

import re
from dataclasses import replace
from datetime import UTC, date
from typing import Any

import pytest
import vobject

from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, LEAD, OFFICER, ZAWADI, Valley

HARD = 'Āmina; "the tall", wa\\Juma \N{EARTH GLOBE EUROPE-AFRICA} Mto Mwanga Bonde la Juu'


def way(valley: Valley) -> None:
    """The officer of two villages of three, signed in on the first of June at noon."""
    places = [valley.add_village(name) for name in ("Kijani", "Mto Mwanga", "Zizi")]
    valley.add_officer(*places[:2])
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, LEAD):
        give_password(valley, phone)
    for place, (phone, name) in enumerate(
        ((AMINA, "Amina Juma"), (BARAKA, None), (ZAWADI, "Zawadi Mosi")), start=1
    ):
        valley.enrol(phone, village=place)
        _change(valley, phone, name=name)
        valley.plan(phone, "10 June")
    valley.go("1 Jun 12:00")


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in()
    return found


def _change(valley: Valley, phone: str, **given: object) -> None:
    with valley.house.store.work() as work:
        farmer = work.people.farmer(phone)
        assert farmer is not None
        work.people.save_farmer(replace(farmer, **given))  # type: ignore[arg-type]


# --- on a wall -------------------------------------------------------------------------------


def test_a_village_has_a_sheet_by_day_with_tasks_and_names(browser: Browser) -> None:
    """Sown on the tenth: soaked two days before, uncovered on day 5, without phone numbers."""
    shown = browser.open("/villages/1/calendar")
    assert "Nursery calendar, Kijani as of Mon 1 Jun" in shown
    assert "Mon 8 Jun soak the seed : Amina Juma" in shown
    assert "Wed 10 Jun sow : Amina Juma" in shown
    assert "Mon 15 Jun uncover and flood : Amina Juma" in shown
    assert AMINA not in browser.page.text and "water twice" not in shown


def test_the_same_as_weeks_and_in_another_language(browser: Browser) -> None:
    """Five rows of seven days from this Monday on; the page itself stays in the officer's."""
    shown = browser.open("/villages/1/calendar?form=weeks&language=sw")
    assert browser.page.text.count('class="date"') == 35
    assert '<article class="sheet weeks" lang="sw"' in browser.page.text
    assert '<html lang="en">' in browser.page.text
    assert "sw:Nursery calendar, Kijani" in shown and "Jumatatu" in shown  # CLDR: Monday
    assert "sw:soak the seed" in shown and "Language of the sheet" in shown


def test_a_farmer_without_a_name_is_known_by_four_digits(browser: Browser) -> None:
    """Neighbours know each other's numbers; strangers learn none."""
    shown = browser.open("/villages/2/calendar")
    assert f"sow : …{BARAKA[-4:]}" in shown and BARAKA not in browser.page.text


@pytest.mark.parametrize("without", ["consent_at", "stopped_at"])
def test_who_has_not_agreed_or_has_stopped_hangs_on_no_wall(
    valley: Valley, browser: Browser, without: str
) -> None:
    """The officer is told how many are missing."""
    _change(valley, AMINA, **{without: valley.now if without == "stopped_at" else None})
    shown = browser.open("/villages/1/calendar")
    assert "1 farmer is left out" in shown and "Amina" not in shown
    assert "Nothing to do in these weeks" in shown


def test_a_nursery_has_a_sheet_of_its_own_with_the_work_of_every_day(browser: Browser) -> None:
    """From the week of the first task to that of the last: 1 June until 28 June."""
    shown = browser.open("/nurseries/1/calendar")
    assert "Nursery calendar, Amina Juma, A" in shown
    assert shown.count("water twice") == 5 and shown.count("keep 1 cm of water") == 10
    assert browser.page.text.count('class="date"') == 28


def test_a_sheet_goes_on_where_the_last_one_ended(browser: Browser) -> None:
    """Weeks before and after, kept by the links."""
    browser.open("/villages/1/calendar?form=weeks")
    later = re.search(r'rel="next" href="([^"]+)"', browser.page.text)
    assert later and "from=2026-07-06" in later[1]
    assert "6 Jul" in browser.open(later[1].replace("&amp;", "&"))


@pytest.mark.parametrize("path", ["/villages/3/calendar", "/nurseries/3/calendar"])
@pytest.mark.parametrize("end", ["", "?form=x&language=tlh&from=yesterday"])
def test_what_is_not_in_sight_has_no_sheet(browser: Browser, path: str, end: str) -> None:
    """And nonsense in the address is no fault of ours."""
    browser.open(path + end)
    assert browser.page.status_code == 404
    browser.open(path.replace("3", "1") + end)
    assert browser.page.status_code == 200


def test_of_this_week_only_what_is_to_come_hangs_on_the_wall(
    valley: Valley, browser: Browser
) -> None:
    """On Thursday the eleventh the sowing of the tenth is over, as a list and as weeks; the
    sheet of the weeks before still has it."""
    valley.go("11 Jun 12:00")
    browser.sign_in()
    for form in ("list", "weeks"):
        shown = browser.open(f"/villages/1/calendar?form={form}")
        assert "uncover and flood : Amina Juma" in shown
        assert "sow : Amina Juma" not in shown
    assert "sow : Amina Juma" in browser.open("/villages/1/calendar?from=2026-05-11")


# --- in a phone ------------------------------------------------------------------------------


def events(browser: Browser, path: str = "/villages/1/calendar.ics") -> dict[str, Any]:
    """The events of a file by their summaries, as vobject reads them."""
    browser.open(path)
    assert browser.page.status_code == 200
    assert browser.page.mimetype == "text/calendar"
    calendar = vobject.readOne(browser.page.data.decode())
    assert calendar.version.value == "2.0" and calendar.validate()
    return {event.summary.value: event for event in getattr(calendar, "vevent_list", [])}


def test_a_village_is_a_file_of_days(valley: Valley, browser: Browser) -> None:
    """One all-day event for each task and day, with the names inside and a link to them on the
    season picture, each with its own UID, new at the time of the first file. The seed test was
    due on the 26th of May, before the plan was made."""
    found = events(browser)
    sow = found["Sow, Kijani: 1 nursery"]
    assert sow.dtstart.value == date(2026, 6, 10)
    assert found["Transplant, Kijani: 1 nursery"].dtstart.value == date(2026, 6, 28)
    assert len({event.uid.value for event in found.values()}) == len(found) == 7
    for event in found.values():
        assert event.sequence.value == "0" and event.status.value == "CONFIRMED"
        assert event.dtstamp.value == event.last_modified.value == valley.now.astimezone(UTC)
    assert sow.description.value == "Amina Juma, A"
    assert sow.url.value.endswith("/season?village=1&task=sow&on=2026-06-10")
    assert "Amina Juma, A" in browser.open("/season?village=1&task=sow&on=2026-06-10")


def test_nurseries_of_one_day_are_one_event(valley: Valley, browser: Browser) -> None:
    """By name; a farmer without one is known by four digits, last."""
    for phone, name in (("+447700900107", None), ("+447700900108", "Abdi")):
        valley.enrol(phone)
        _change(valley, phone, name=name)
        valley.plan(phone, "10 June")
    sow = events(browser)["Sow, Kijani: 3 nurseries"]
    assert sow.description.value == "Abdi, A\nAmina Juma, A\n…0107, A"


def test_a_file_without_changes_is_the_same_file(valley: Valley, browser: Browser) -> None:
    """Loaded again hours later, in another session."""
    first = events(browser) and browser.page.data
    valley.go("1 Jun 18:00")
    assert events(browser) and browser.page.data == first


def by_day(browser: Browser, task: str) -> dict[date, tuple[str, str, str]]:
    """Status, sequence and names of a task in the file of Kijani."""
    browser.open("/villages/1/calendar.ics")
    calendar = vobject.readOne(browser.page.data.decode())
    return {
        event.dtstart.value: (
            event.status.value,
            event.sequence.value,
            event.description.value if hasattr(event, "description") else "",
        )
        for event in calendar.vevent_list
        if event.summary.value.startswith(task)
    }


def test_a_moved_nursery_leaves_one_day_and_enters_another(
    valley: Valley, browser: Browser
) -> None:
    """Transplanting is chosen for day 16, two days earlier, and later put back; sowing
    stands."""
    before = events(browser)["Sow, Kijani: 1 nursery"]
    early, late = date(2026, 6, 26), date(2026, 6, 28)
    valley.go("2 Jun 12:00")
    browser.open("/nurseries/1")
    browser.send("/nurseries/1/dates", sow="2026-06-10", transplant="2026-06-26")
    assert by_day(browser, "Transplant") == {
        early: ("CONFIRMED", "0", "Amina Juma, A"),
        late: ("CANCELLED", "1", ""),
    }
    assert events(browser)["Sow, Kijani: 1 nursery"].serialize() == before.serialize()
    browser.send("/nurseries/1/dates", sow="2026-06-10", transplant="2026-06-28")
    assert by_day(browser, "Transplant") == {
        early: ("CANCELLED", "1", ""),
        late: ("CONFIRMED", "2", "Amina Juma, A"),
    }


def test_a_closed_nursery_takes_its_days_to_come_away(valley: Valley, browser: Browser) -> None:
    """Cancelled, so that they leave the phone; what is past is left alone there."""
    assert date(2026, 6, 8) in by_day(browser, "Soak")
    valley.go("9 Jun 12:00")
    browser.sign_in()
    browser.open("/nurseries/1")
    browser.send("/nurseries/1/close", why="sold the field")
    assert by_day(browser, "Soak") == {}
    assert by_day(browser, "Sow") == {date(2026, 6, 10): ("CANCELLED", "1", "")}
    assert by_day(browser, "Sow") == {date(2026, 6, 10): ("CANCELLED", "1", "")}


def test_a_nursery_that_was_over_before_is_never_told(valley: Valley, browser: Browser) -> None:
    """There is nothing to take away."""
    browser.open("/nurseries/1")
    browser.send("/nurseries/1/close", why="entered twice")
    assert events(browser) == {}


def test_texts_are_escaped_and_lines_folded(valley: Valley, browser: Browser) -> None:
    """A name with all the signs that mean something in the format comes back as it was."""
    _change(valley, AMINA, name=HARD)
    found = events(browser)
    assert found["Sow, Kijani: 1 nursery"].description.value == f"{HARD}, A"
    raw = browser.page.data
    lines = raw.split(b"\r\n")
    assert all(len(line) <= 75 for line in lines) and b"\n" not in b"".join(lines)
    assert rb"\;" in raw and rb"\," in raw and rb"\\Juma" in raw


def test_an_officer_has_one_file_of_all_villages_served(
    browser: Browser, new_browser: NewBrowser
) -> None:
    """And no other; a lead who serves none takes them village by village."""
    found = events(browser, "/calendar.ics")
    names = {event.description.value for event in found.values()}
    assert "Sow, Kijani: 1 nursery" in found and "Sow, Mto Mwanga: 1 nursery" in found
    assert names == {"Amina Juma, A", f"…{BARAKA[-4:]}, A"}
    browser.open("/villages/3/calendar.ics")
    assert browser.page.status_code == 404
    lead = new_browser()
    lead.sign_in(LEAD)
    assert "downloaded a calendar" in lead.open("/trail")
    lead.open("/calendar.ics")
    assert lead.page.status_code == 404
    assert "Sow, Zizi: 1 nursery" in events(lead, "/villages/3/calendar.ics")


def test_a_file_is_for_those_who_are_signed_in(new_browser: NewBrowser) -> None:
    """There is no address to subscribe to."""
    stranger = new_browser()
    assert "Sign in" in stranger.open("/villages/1/calendar.ics")
    assert stranger.path == "/sign-in"
