"""An officer and official alerts in a browser: what was said, where it holds, the all-clear.

The messages are those of the invented district.
"""

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

import scenarios
from assistant.places import Geocode, Point
from assistant.service.alerts.taking import take_alert
from assistant.service.storms import drafts
from tests.browser.conftest import Office, audit, fits, picture, sign_in
from tests.unit.web.conftest import give_password
from tests.valley import LEAD, OFFICER

MESSAGES = Path(scenarios.__file__).parent / "district" / "alerts"
FOLDER = "/var/lib/nursery/alerts"


@pytest.fixture
def alerted(storm: Office) -> Office:
    """Two days after the storm: an exercise, half a message and a heavy-rain alert have come;
    Kijani is in its area, Mto Mwanga beside it."""
    valley = storm.valley
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    with valley.house.store.work() as work:
        work.alerts.set_point(1, Point(-3.71, 42.55))
        work.alerts.set_point(2, Point(-3.92, 42.61))
        work.alerts.set_geocodes(1, [Geocode("LINDARA-WARD", "03")])
    valley.go("12 Jun 06:20")
    come(storm, "exercise.xml")
    take_alert(valley.house, message("1-heavy-rain.xml")[:900], FOLDER, valley.now)
    come(storm, "1-heavy-rain.xml")
    return storm


def message(name: str) -> bytes:
    return (MESSAGES / name).read_bytes()


def come(office: Office, name: str) -> None:
    """A message of the district comes in."""
    take_alert(office.valley.house, message(name), FOLDER, office.valley.now)


def test_an_officer_reads_an_alert_and_where_it_holds(page: Page, alerted: Office) -> None:
    """The service's own words, what became of it, and the villages on a drawing."""
    sign_in(page, alerted)
    page.get_by_role("link", name="Warnings").click()
    page.get_by_role("link", name="Official alerts").click()
    rows = page.get_by_role("row")
    expect(rows.nth(1)).to_contain_text("Drafted for the officer.")
    expect(rows.nth(2)).to_contain_text("It does not follow the standard")
    expect(rows.nth(3)).to_contain_text("A test, exercise or draft")
    picture(page, "alerts")
    audit(page)
    fits(page)
    page.get_by_label("Only those for our villages").check()
    expect(page.get_by_role("link", name="Exercise")).to_have_count(0)
    page.get_by_role("link", name="Orange: heavy rain in the Lindara valley").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Orange: heavy rain")
    expect(page.locator("#page")).to_contain_text("A draft is waiting for Kijani.")
    expect(page.get_by_role("img", name="On the map")).to_contain_text("Kijani")
    picture(page, "alert")
    audit(page)
    fits(page)
    with page.expect_download() as download:
        page.get_by_role("link", name="The original message").click()
    assert Path(download.value.path()).read_bytes() == message("1-heavy-rain.xml")


def test_a_faulty_message_says_what_to_mend(page: Page, alerted: Office) -> None:
    """It can be given back to the service."""
    sign_in(page, alerted)
    page.goto(f"{alerted.url}/alerts/2")
    expect(page.locator("#faults + ul")).to_contain_text("not XML, or incomplete")
    picture(page, "alert-faulty")
    audit(page)
    fits(page)


def test_after_a_cancel_one_button_gives_the_all_clear(page: Page, alerted: Office) -> None:
    """The warning stood; the farmers hear that it is over."""
    valley = alerted.valley
    with valley.house.store.work() as work:
        (draft,) = work.drafts.of_alert(3)
        drafts.send(work, valley.house, draft.id, valley.now, work.people.officer(OFFICER))
    valley.send()
    come(alerted, "2-update.xml")
    come(alerted, "3-cancel.xml")
    sign_in(page, alerted)
    page.goto(f"{alerted.url}/alerts/5")
    expect(page.locator("#page")).to_contain_text("your warning still stands: Kijani")
    picture(page, "alert-cancelled")
    audit(page)
    page.get_by_role("button", name="Give these the all-clear").click()
    expect(page.get_by_role("status")).to_contain_text("The all-clear goes out: Kijani.")
    expect(page.get_by_role("button", name="Give these the all-clear")).to_have_count(0)


def test_the_lead_says_by_which_codes_a_village_is_known(page: Page, alerted: Office) -> None:
    """On the village's page; a slip is told and changes nothing."""
    sign_in(page, alerted, LEAD)
    page.goto(f"{alerted.url}/villages/2")
    codes = page.get_by_label("Codes of the weather service")
    codes.fill("LINDARA-WARD 04")
    save = page.locator("#codes").get_by_role("button", name="Save")
    save.click()
    expect(page.locator("#codes").get_by_role("alert")).to_contain_text(
        "LINDARA-WARD 04 is not a code"
    )
    codes.fill("LINDARA-WARD=04")
    save.click()
    expect(page.get_by_role("status")).to_contain_text("The codes for Mto Mwanga are saved.")
    expect(codes).to_have_value("LINDARA-WARD=04")
    page.locator("#codes").scroll_into_view_if_needed()
    picture(page, "village-codes")
    audit(page)
    fits(page)
