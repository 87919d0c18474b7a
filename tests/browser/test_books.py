"""Messages, season results and officers in a browser, as a lead uses them."""

from pathlib import Path

from openpyxl import load_workbook
from playwright.sync_api import Page, expect

from tests.browser.conftest import Office, audit, enter, fits, picture, sign_in
from tests.valley import LEAD

NEW = "+447700900009"


def look(page: Page, name: str) -> None:
    """Keeps a picture and audits the page."""
    picture(page, name)
    audit(page)


def test_a_lead_reads_what_became_of_texts(page: Page, busy: Office) -> None:
    """By village, why some were lost, the failed ones alone, and one village's months."""
    sign_in(page, busy, LEAD)
    page.get_by_role("link", name="Messages").click()
    expect(page.get_by_role("heading", level=2).first).to_have_text("June 2026, by village")
    expect(page.get_by_text("does not accept texts to this number")).to_be_visible()
    look(page, "messages")
    fits(page)
    page.get_by_label("Show").select_option("Failed")
    page.wait_for_url("**which=failed**")
    latest = page.get_by_role("region", name="One by one")
    expect(latest.get_by_role("row")).to_have_count(3)
    expect(latest).to_contain_text("422 number not in use")
    page.get_by_role("link", name="Kijani", exact=True).click()
    expect(page.get_by_role("heading", name="Kijani, by month")).to_be_visible()
    look(page, "messages-village")
    page.get_by_label("Show").select_option("From phones")
    page.wait_for_url("**which=heard**")
    expect(page.get_by_text("wot do i do wiv the mats")).to_be_visible()
    look(page, "messages-from-phones")
    page.get_by_role("link", name="Replies that could not be understood").click()
    expect(page.get_by_text("xyzzy plugh").first).to_be_visible()
    page.get_by_text("Last messages").first.click()
    look(page, "unread")
    fits(page)


def test_a_lead_reads_how_a_season_went(page: Page, busy: Office, tmp_path: Path) -> None:
    """By village, then nursery by nursery; the file that is downloaded opens."""
    sign_in(page, busy, LEAD)
    page.get_by_role("link", name="Season results").click()
    expect(page.get_by_role("row", name="Planted 0.74 of 0.8 ha")).to_be_visible()
    ends = page.get_by_role("region", name="Outcome and dates kept")
    expect(ends.get_by_role("row", name="In all")).to_be_visible()
    picture(page, "results")
    audit(page)
    fits(page)
    with page.expect_download() as waiting:
        page.get_by_role("link", name="XLSX").click()
    path = tmp_path / waiting.value.suggested_filename
    waiting.value.save_as(path)
    assert path.name == "season-2026-01.xlsx"
    assert load_workbook(path).worksheets[0].max_row == 7  # six nurseries and the head
    ends.get_by_role("link", name="Mto Mwanga", exact=True).click()
    expect(page.get_by_text("Learned in Mto Mwanga from 1 season")).to_be_visible()
    expect(page.get_by_role("row", name="Tatu Neema")).to_contain_text("short")
    picture(page, "results-village")
    audit(page)
    fits(page)


def test_a_lead_adds_an_officer(page: Page, busy: Office) -> None:
    """Code and password are shown once."""
    sign_in(page, busy, LEAD)
    _add_halima(page)
    expect(page.get_by_role("status")).to_contain_text("Halima Said is now an officer")
    expect(page.locator(".secret")).to_have_count(2)
    picture(page, "officer-added")
    audit(page)
    _open_halima(page)
    picture(page, "officer")
    audit(page)
    fits(page)


def _add_halima(page: Page) -> None:
    page.get_by_role("link", name="Programme", exact=True).first.click()
    page.get_by_role("link", name="Officers", exact=True).click()
    picture(page, "officers")
    audit(page)
    fits(page)
    page.get_by_label("Name", exact=True).fill("Halima Said")
    page.get_by_label("Phone number", exact=True).fill(NEW)
    page.get_by_label("Mto Mwanga").check()
    page.get_by_role("button", name="Add an officer").click()


def _open_halima(page: Page) -> None:
    page.get_by_role("link", name="Programme", exact=True).first.click()
    page.get_by_role("link", name="Officers", exact=True).click()
    page.get_by_role("link", name="Halima Said").click()


def test_a_lead_gives_a_password_and_closes_the_account(page: Page, busy: Office) -> None:
    """The officer comes in with the one; after the other nobody does."""
    with busy.valley.house.store.work() as work:
        work.people.add_officer(NEW, "Halima Said", "no code", "en", [1])
    sign_in(page, busy, LEAD)
    _open_halima(page)
    page.get_by_role("button", name="Give a one-time password").click()
    once = page.locator(".secret").first.inner_text()
    picture(page, "password-once")
    page.get_by_role("button", name="Sign out").click()
    page.wait_for_url("**/sign-in*")
    enter(page, busy, NEW, once)
    expect(page.get_by_role("heading", level=1)).to_have_text("Choose your own password")
    page.get_by_role("button", name="Sign out").click()
    page.wait_for_url("**/sign-in*")
    sign_in(page, busy, LEAD)
    _open_halima(page)
    page.get_by_label("Yes, close it").check()
    page.get_by_role("button", name="Close this account").click()
    expect(page.get_by_role("status")).to_contain_text("The account of Halima Said is closed")
    expect(page.get_by_role("link", name="Halima Said")).to_have_count(0)
