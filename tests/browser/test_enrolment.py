"""Enrolling a valley in a browser: a list of an office, one farmer, a number that passed on."""

from pathlib import Path

import openpyxl
import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import PHONES, Office, audit, fits, picture, sign_in
from tests.browser.test_plain import plain_page

__all__ = ["plain_page"]
NEW, SECOND, FAMILY = "+447700900181", "+447700900182", "+447700900183"


@pytest.fixture
def workbook(tmp_path: Path) -> Path:
    """A workbook as an office keeps one: a title above, numbers that lost their plus."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.append(["Farmers of the valley, 2026"])
    sheet.append(["No", "Mobile", "Farmer", "Vilage", "Area (ha)", "Planned sowing"])
    sheet.append([1, 447700900181, "Pendo Salehe", "Kijani", 0.4, "20 June"])
    sheet.append([2, SECOND, "Musa Athumani", "Mto Mwnga", None, None])
    sheet.append([3, 4.47701e11, "Cut Short", "Kijani", None, None])
    sheet.append([4, FAMILY, "Mama Zuhura", "Kijani", 0.3, "18 June"])
    sheet.append([5, FAMILY, "Baba Hamisi", "Kijani", 0.2, "19 June"])
    sheet.append([6, PHONES[0], "Rehema Ngowi", "Kijani", None, None])
    path = tmp_path / "valley.xlsx"
    book.save(path)
    return path


def _send_in(page: Page, storm: Office, workbook: Path) -> None:
    """From the list of farmers to what would happen, the columns approved."""
    storm.valley.go("10 Jun 09:00")
    sign_in(page, storm)
    page.get_by_role("link", name="Farmers").first.click()
    page.get_by_role("link", name="Import a list").click()
    audit(page)
    page.get_by_label("File").set_input_files(workbook)
    page.get_by_role("button", name="Read the file").click()
    expect(page.get_by_label("Mobile")).to_have_value("phone")
    expect(page.get_by_label("Mto Mwnga")).to_contain_text("Mto Mwanga")
    picture(page, "list-columns")
    audit(page)
    fits(page)
    page.get_by_role("button", name="See what would happen").click()
    expect(page.get_by_role("heading", name="2. What would happen")).to_be_visible()
    expect(page.get_by_text("2 new farmers")).to_be_visible()
    picture(page, "list-outlook")
    audit(page)
    fits(page)


def test_a_workbook_is_taken_in_with_its_questions_answered(
    page: Page, storm: Office, workbook: Path
) -> None:
    """Approve the columns, look, decide, take in; the rows left out come as a file."""
    _send_in(page, storm, workbook)
    left_out = page.get_by_label("rows with open questions above")
    page.get_by_role("button", name="Import the list").click()
    assert left_out.evaluate("box => box.validity.valueMissing")
    expect(page.get_by_role("heading", name="2. What would happen")).to_be_visible()
    family = page.get_by_role("group").filter(has_text=FAMILY)
    family.get_by_label("one family phone").check()
    passed_on = page.get_by_role("group").filter(has_text=PHONES[0])
    passed_on.get_by_label("a new person, who continues").check()
    page.get_by_role("button", name="Show it again").click()
    expect(page.get_by_text("4 new farmers")).to_be_visible()
    page.get_by_role("button", name="Import the list").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("The list is imported")
    picture(page, "list-done")
    audit(page)
    with page.expect_download() as fetched:
        page.get_by_role("link", name="All rows left out").click()
    assert "Cut Short" in Path(fetched.value.path()).read_text(encoding="utf-8-sig")
    assert any("Asha put you on my list" in text for text in storm.valley.heard(NEW))


def test_one_farmer_is_enrolled_from_the_list_of_farmers(page: Page, storm: Office) -> None:
    """The form opens in the page; how they stand is shown from then on."""
    storm.valley.go("10 Jun 09:00")
    sign_in(page, storm)
    page.get_by_role("link", name="Farmers").first.click()
    page.get_by_text("Enrol a farmer").first.click()
    picture(page, "enrol")
    audit(page)
    fits(page)
    page.get_by_label("Phone number").fill(NEW)
    page.get_by_label("Name", exact=True).fill("Pendo Salehe")
    page.locator("#enrol-village").select_option("Kijani")
    page.get_by_role("button", name="Enrol a farmer").click()
    expect(page.get_by_role("status")).to_contain_text("Pendo Salehe is enrolled")
    expect(page.get_by_text("no answer yet").first).to_be_visible()
    picture(page, "enrolled")
    audit(page)
    page.get_by_role("link", name="Farmers").first.click()
    page.get_by_label("Texts", exact=True).select_option("asked, no answer yet")
    expect(page.get_by_text("1 farmer", exact=True)).to_be_visible()
    picture(page, "farmers-asked")


def test_a_list_is_taken_in_without_javascript(plain_page: Page, storm: Office) -> None:
    """Every step is a plain form."""
    storm.valley.go("10 Jun 09:00")
    sign_in(plain_page, storm)
    plain_page.goto(f"{storm.url}/lists")
    content = f"Phone;Name;Village\n{NEW};Pendo;Kijani\n".encode("cp1252")
    plain_page.get_by_label("File").set_input_files(
        {"name": "list.csv", "mimeType": "text/csv", "buffer": content}
    )
    plain_page.get_by_role("button", name="Read the file").click()
    plain_page.get_by_role("button", name="See what would happen").click()
    plain_page.get_by_role("button", name="Import the list").click()
    expect(plain_page.get_by_role("heading", level=1)).to_have_text("The list is imported")
