"""A call for a colleague, words for later and own groups, at a laptop and on a phone."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import PHONES, Office, audit, fits, picture, sign_in, window_of
from tests.unit.web.conftest import give_password

COLLEAGUE = "+447700900003"
SIZES = {"laptop": (1366, 768), "phone": (390, 844)}


@pytest.fixture(params=SIZES)
def page(request: pytest.FixtureRequest, chromium: Browser) -> Iterator[Page]:
    """A laptop's window, and a phone's."""
    context = window_of(chromium, *SIZES[request.param])
    found = context.new_page()
    found.name = request.param  # type: ignore[attr-defined]
    yield found
    context.close()


def test_a_call_is_given_to_a_colleague(page: Page, storm: Office) -> None:
    """Both see it, and a minute's undo brings it back."""
    storm.valley.add_officer(phone=COLLEAGUE)
    give_password(storm.valley, COLLEAGUE)
    sign_in(page, storm)
    call = page.get_by_role("article", name="Tatu Neema")
    call.get_by_role("link", name="Give to a colleague").click()
    page.get_by_label("Give this to").select_option(index=1)
    picture(page, "hand-on")
    audit(page)
    fits(page)
    page.get_by_role("button", name="Give 1 call").click()
    expect(page.get_by_role("status")).to_contain_text("1 call is with your colleague")
    expect(page.get_by_role("article", name="Tatu Neema")).to_contain_text("gave this to")
    picture(page, "handed-on")
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_text("gave this to")).to_have_count(0)


def test_words_go_out_at_a_chosen_hour_and_are_taken_back(page: Page, storm: Office) -> None:
    """They stand on the page of what was sent until then."""
    sign_in(page, storm)
    page.goto(f"{storm.url}/deeds?deed=text&line=bed-1")
    page.get_by_label("Or your own words").fill("I come by on Friday.")
    page.get_by_label("When it goes out").select_option("2026-06-12")
    page.get_by_label("Hour", exact=True).select_option("14")
    picture(page, "later")
    audit(page)
    fits(page)
    page.get_by_role("button", name="Send to 1").click()
    expect(page.get_by_role("status")).to_contain_text("at the hour you chose")
    page.goto(f"{storm.url}/sent")
    sent = page.get_by_role("article").filter(has_text="I come by on Friday.")
    expect(sent).to_contain_text("waits until Fri 12 Jun, 14:00")
    picture(page, "sent-later")
    audit(page)
    sent.get_by_role("button", name="Take it back").click()
    expect(sent).not_to_contain_text("waits until")


def test_ticked_farmers_are_kept_and_written_to(page: Page, storm: Office) -> None:
    """From the list of farmers to the text, all by labels."""
    sign_in(page, storm)
    storm.valley.heard(PHONES[0])
    page.goto(f"{storm.url}/farmers")
    page.get_by_label("Tick Amina Juma").check()
    page.get_by_label("Tick Baraka Mosi").check()
    page.get_by_label("Name of the group").fill("Seed growers")
    picture(page, "farmers-ticked")
    audit(page)
    fits(page)
    page.get_by_role("button", name="Save those ticked as a group").click()
    expect(page.get_by_role("status")).to_contain_text(
        "2 farmers are in the group Seed growers"
    )
    picture(page, "groups")
    audit(page)
    fits(page)
    page.get_by_role("link", name="Write to them").click()
    page.get_by_label("Your words").fill("Seed comes on Monday.")
    page.get_by_role("button", name="Show whom it reaches").click()
    expect(page.get_by_text("To the group Seed growers")).to_be_visible()
    picture(page, "group-reach")
    audit(page)
    page.get_by_role("button", name="Send to 2 phones").click()
    expect(page.get_by_role("status")).to_be_visible()
