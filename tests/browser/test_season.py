"""The season picture and its calendars in a browser, by labels and links as people use."""

import re
from collections.abc import Iterator
from datetime import timedelta

import pytest
import vobject
from playwright.sync_api import Browser, Page, expect

from assistant.people import Farmer
from tests.benchmarks.crowd import a_nursery
from tests.browser.conftest import Office, audit, fits, picture, sign_in, window_of

FARMERS = (
    "Neema Kito",
    "Elia Tembo",
    "Halima Said",
    "Musa Salama",
    "Asha Wanyonyi",
    "Daudi Nuru",
    "Amina Mwangaza",
    "Paulo Mosi",
    "Zuhura Hamisi",
    "Tatu Rehema",
)
A4_MM = (210.0, 297.0)
POINTS_PER_MM = 72 / 25.4  # PDF 32000-1: a unit of user space is 1/72 inch


def test_an_officer_goes_from_the_district_to_one_nursery(page: Page, storm: Office) -> None:
    """By village, then bar by bar, then the page of the nursery."""
    sign_in(page, storm)
    page.get_by_role("link", name="Season picture").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Season picture")
    kijani = page.get_by_role("row").filter(
        has=page.get_by_role("link", name="Kijani", exact=True)
    )
    expect(kijani).to_contain_text("3")
    picture(page, "season")
    audit(page)
    fits(page)
    page.get_by_role("link", name="Kijani", exact=True).click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Season picture, Kijani")
    amina = page.get_by_role("row").filter(has_text="Amina Juma, A")
    expect(amina).to_contain_text("covered")
    picture(page, "season-village")
    audit(page)
    fits(page)
    page.get_by_role("link", name="Amina Juma, A").click()
    expect(page.get_by_role("figure")).to_contain_text("covered from Sat 6 Jun")
    picture(page, "season-nursery")
    audit(page)
    expect(page.locator("svg.bar").first).to_be_visible()


def test_what_is_due_leads_to_the_nurseries(page: Page, storm: Office) -> None:
    """Uncovering is due on the eleventh for Amina, who sowed on the sixth."""
    sign_in(page, storm)
    page.get_by_role("link", name="Due in the next seven days").click()
    due = page.get_by_role("region", name="Due in the next seven days")
    due.get_by_role("link", name="uncover and flood, Thu 11 Jun").click()
    expect(
        page.get_by_role("heading", name="1 nursery: uncover and flood, Thu 11 Jun")
    ).to_be_visible()
    expect(page.get_by_role("link", name="Amina Juma, A")).to_be_visible()
    picture(page, "season-due")
    audit(page)
    fits(page)


def test_a_stage_is_chosen_by_keyboard(page: Page, storm: Office) -> None:
    """Arrow keys pass over choices without loading a page at each; Enter, or the button that
    then stands beside the list, shows the one that is meant."""
    sign_in(page, storm)
    page.goto(f"{storm.url}/season")
    page.get_by_label("Stage").focus()
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowDown")
    expect(page.get_by_role("button", name="Show")).to_be_visible()
    expect(page).to_have_url(f"{storm.url}/season")
    page.keyboard.press("Enter")
    page.wait_for_url("**stage=covered**")
    expect(page.get_by_role("link", name="Amina Juma, A")).to_be_visible()
    expect(page.get_by_role("link", name="Juma Elia, A")).to_have_count(0)


def test_a_village_has_a_calendar_to_print(page: Page, storm: Office) -> None:
    """As a list and as weeks; the controls stay off the paper."""
    sign_in(page, storm)
    page.goto(f"{storm.url}/season?village=1")
    page.get_by_role("link", name="Wall calendar").click()
    expect(page.get_by_role("article")).to_contain_text("uncover and flood: Amina Juma")
    picture(page, "calendar-list")
    audit(page)
    fits(page)
    page.get_by_label("Layout").select_option("By week")
    expect(page.get_by_role("columnheader", name="Monday")).to_be_visible()
    picture(page, "calendar-weeks")
    audit(page)
    fits(page)
    page.emulate_media(media="print")
    expect(page.get_by_role("button")).to_have_count(0)
    expect(page.get_by_role("cell", name="Nursery calendar, Kijani")).to_be_visible()
    picture(page, "calendar-on-paper")


def test_the_calendar_file_is_downloaded_and_can_be_read(page: Page, storm: Office) -> None:
    """By another program than the one that wrote it."""
    sign_in(page, storm)
    page.goto(f"{storm.url}/villages/1")
    with page.expect_download() as loading:
        page.get_by_role("link", name="Calendar file").click()
    assert loading.value.suggested_filename == "Kijani.ics"
    found = vobject.readOne(loading.value.path().read_text("utf-8"))
    assert any("Amina Juma" in event.description.value for event in found.vevent_list)


@pytest.fixture
def plain_page(chromium: Browser) -> Iterator[Page]:
    """A window that runs no script."""
    context = window_of(chromium, 1024, 640, scripts=False)
    page = context.new_page()
    yield page
    context.close()


def test_the_filters_work_without_javascript(plain_page: Page, storm: Office) -> None:
    """A form with a button."""
    sign_in(plain_page, storm)
    plain_page.goto(f"{storm.url}/season")
    plain_page.get_by_label("Village", exact=True).select_option("Mto Mwanga")
    plain_page.get_by_label("Stage").select_option("2 covered")
    plain_page.get_by_role("button", name="Show").click()
    expect(plain_page.get_by_role("heading", level=1)).to_have_text(
        "Season picture, Mto Mwanga"
    )
    expect(plain_page.locator("svg.bar").first).to_be_visible()


@pytest.mark.parametrize(
    ("path", "across"),
    [
        ("/villages/1/calendar", False),
        ("/villages/1/calendar?form=weeks", True),
        ("/nurseries/1/calendar", True),
        ("/season?village=1", True),
        ("/results", True),
    ],
)
def test_a_sheet_is_one_page_of_a4(
    plain_page: Page, storm: Office, path: str, across: bool
) -> None:
    """Upright or across (ISO 216: 210 mm by 297 mm), to the nearest millimetre."""
    sign_in(plain_page, storm)
    plain_page.goto(storm.url + path)
    paper = plain_page.pdf(prefer_css_page_size=True)
    boxes = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]", paper)
    sizes = [tuple(round(float(side) / POINTS_PER_MM) for side in box) for box in boxes]
    assert sizes == [A4_MM[::-1] if across else A4_MM]


def test_a_village_of_thirteen_hangs_on_two_pages(plain_page: Page, storm: Office) -> None:
    """Each with days of its own; upright as a list, across as weeks."""
    _thirteen(storm)
    sign_in(plain_page, storm)
    for form in ("list", "weeks"):
        plain_page.goto(f"{storm.url}/villages/1/calendar?form={form}")
        paper = plain_page.pdf(prefer_css_page_size=True)
        assert len(re.findall(rb"/MediaBox", paper)) <= 2, form


def _thirteen(office: Office) -> None:
    """Ten more farmers in Kijani, who sow from the fourth to the fourteenth."""
    valley = office.valley
    with valley.house.store.work() as work:
        kijani = work.people.villages()[0]
        for number in range(10):
            farmer = Farmer(
                0,
                f"+44770090080{number}",
                "en",
                kijani.id,
                valley.now,
                None,
                name=FARMERS[number],
            )
            sow = valley.now.date() + timedelta(days=number - 6)
            work.nurseries.save(a_nursery(work.people.save_farmer(farmer).id, sow), valley.now)
