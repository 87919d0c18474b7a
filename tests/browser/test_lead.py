"""The lead in a browser: the first sign-in, a village that changes hands, what was done."""

import pytest
from playwright.sync_api import Page, expect

from assistant.service.desk.accounts import give_one_time_password
from tests.browser.conftest import Office, audit, enter, fits, picture, sign_in
from tests.unit.web.conftest import give_password
from tests.valley import LEAD

NEXT = "+447700900003"


@pytest.fixture
def led(storm: Office) -> Office:
    """The storm, with a lead and one more officer."""
    storm.valley.add_officer(phone=LEAD, lead=True)
    with storm.valley.house.store.work() as work:
        mwanga = work.people.villages()[1]
        work.people.add_officer(NEXT, "Halima", "no code", "en", [mwanga.id])
    return storm


def test_the_first_sign_in_asks_for_a_password_of_ones_own(page: Page, led: Office) -> None:
    """Nothing else is open before; then the day begins."""
    _, once = give_one_time_password(led.valley.house, LEAD, led.valley.now)
    enter(page, led, LEAD, once)
    expect(page.get_by_role("heading", level=1)).to_have_text("Choose your own password")
    picture(page, "first-password")
    audit(page)
    for label in ("New password", "New password again"):
        page.get_by_label(label, exact=True).fill("seven herons at dawn")
    page.get_by_role("button", name="Change the password").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Waiting for me")
    expect(page.get_by_role("status")).to_contain_text("Your password is changed")


def test_a_village_is_handed_over_with_words_for_the_next(page: Page, led: Office) -> None:
    """The next officer is told by text and finds the story; the lead finds it in the trail."""
    give_password(led.valley, LEAD)
    sign_in(page, led, LEAD)
    page.get_by_role("link", name="Villages").click()
    page.get_by_role("link", name="Kijani").click()
    picture(page, "hand-over")
    audit(page)
    page.get_by_label("Officer who leaves").select_option("Asha")
    page.get_by_label("Officer who takes over").select_option(label=f"Halima, {NEXT}")
    page.get_by_label("What the next officer should know").fill("Zawadi needs a new sheet.")
    page.get_by_role("button", name="Hand this village over").click()
    expect(page.get_by_role("status")).to_contain_text("Kijani is handed over to Halima")
    led.valley.go("10 Jun 05:31")
    assert any("Kijani is in your care now" in text for text in led.valley.heard(NEXT))
    page.get_by_role("link", name="Programme").click()
    page.get_by_role("link", name="What was done").click()
    expect(page.get_by_role("row").nth(1)).to_contain_text("handed a village over")
    picture(page, "trail")
    audit(page)
    fits(page)


def test_the_programme_is_run_from_pages(page: Page, led: Office) -> None:
    """First day, villages with their map, one village's data: legible, and right by axe."""
    give_password(led.valley, LEAD)
    for village, north, east in ((1, -0.68, 37.35), (2, -0.71, 37.44)):
        with led.valley.house.store.work() as work:
            work.people.place_village(village, north, east)
    sign_in(page, led, LEAD)
    for path, name in (
        ("/programme", "programme"),
        ("/villages", "villages"),
        ("/villages/1", "village"),
        ("/sent", "sent"),
    ):
        page.goto(f"{led.url}{path}")
        picture(page, name)
        audit(page)
        fits(page)
    page.goto(f"{led.url}/villages/1")
    page.get_by_label("Emergency number").fill("07700 900911")
    page.locator("#data").locator("..").get_by_role("button", name="Save").click()
    expect(page.get_by_role("status")).to_contain_text("Saved")
