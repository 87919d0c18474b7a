"""The page without JavaScript, and on paper."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.conftest import PHONES, Office, picture, sign_in, window_of


@pytest.fixture
def plain_page(chromium: Browser) -> Iterator[Page]:
    """A window that runs no script."""
    context = window_of(chromium, 1024, 640, scripts=False)
    page = context.new_page()
    page.name = "plain"  # type: ignore[attr-defined]
    yield page
    context.close()


def test_a_call_is_answered_without_javascript(plain_page: Page, storm: Office) -> None:
    """Everything works without it."""
    sign_in(plain_page, storm)
    storm.valley.heard(PHONES[3])
    plain_page.get_by_label("Village", exact=True).select_option("Mto Mwanga")
    plain_page.get_by_role("button", name="Show").click()
    call = plain_page.get_by_role("article", name="Tatu Neema")
    call.get_by_role("link", name="Answer by text").click()
    plain_page.get_by_label("Your answer").fill("I come at ten.")
    plain_page.get_by_role("button", name="Show the text and its cost").click()
    expect(plain_page.locator("#cost")).to_contain_text("1 segment")
    plain_page.get_by_label("Send at once").check()
    plain_page.get_by_role("button", name="Send the answer").click()
    expect(plain_page.get_by_role("status")).to_contain_text("on its way")
    assert "I come at ten." in storm.valley.heard(PHONES[3])[0]


def test_the_list_to_see_is_printed_whole(plain_page: Page, storm: Office) -> None:
    """On paper there are no buttons, and nobody is folded away."""
    sign_in(plain_page, storm)
    plain_page.emulate_media(media="print")
    expect(plain_page.get_by_text("Tatu Neema").last).to_be_visible()
    expect(plain_page.get_by_text("No answer: uncover and flood").first).to_be_visible()
    expect(plain_page.get_by_role("button")).to_have_count(0)
    expect(plain_page.get_by_role("navigation")).to_have_count(0)
    picture(plain_page, "morning-on-paper")
