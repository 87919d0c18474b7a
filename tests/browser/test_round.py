"""The round of the day on a phone, with the network off."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, Locator, Page, expect

from tests.browser.conftest import Office, audit, fits, picture, sign_in, window_of


@pytest.fixture
def phone(chromium: Browser) -> Iterator[BrowserContext]:
    """A phone held upright."""
    context = window_of(chromium, 390, 844)
    yield context
    context.close()


def _kept(page: Page, office: Office) -> None:
    """Opens the round, and waits until the phone has it."""
    page.goto(f"{office.url}/round")
    expect(page.locator("#round[data-kept=yes]")).to_have_count(1)


def _note(page: Page, stop: Locator) -> None:
    """Writes a note while there is no line."""
    stop.get_by_label("Your note").fill("Uncovered with her.")
    stop.get_by_label("They have done what they were asked").check()
    stop.get_by_role("button", name="Save the note").click()
    expect(stop.get_by_text("Saved on this phone")).to_be_visible()
    expect(page.get_by_text("Notes waiting on this phone: 1")).to_be_visible()


def test_the_round_is_read_without_a_line_and_its_notes_are_sent_once_later(
    phone: BrowserContext, storm: Office
) -> None:
    """The page comes from the phone, the note waits on it, and leaves when there is a line."""
    page = phone.new_page()
    page.name = "round"  # type: ignore[attr-defined]
    sign_in(page, storm)
    _kept(page, storm)
    picture(page, "round")
    storm.line.cut()
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_contain_text("My round")
    expect(page.get_by_text("No connection")).to_be_visible()
    stop = page.locator(".stop:has(input[value=bed-4])")
    _note(page, stop)
    picture(page, "round-without-a-line")
    page.reload()  # the phone was put away and taken out again
    expect(stop.get_by_text("Saved on this phone")).to_be_visible()
    with storm.valley.house.store.look() as work:
        assert work.story.visits([4]) == ()
    storm.line.mend()
    page.evaluate("window.dispatchEvent(new Event('online'))")
    expect(page.get_by_text("Notes waiting on this phone")).to_be_hidden()
    with storm.valley.house.store.look() as work:
        (visit,) = work.story.visits([4])
        assert visit.note == "Uncovered with her."


def test_the_round_keeps_the_rules(phone: BrowserContext, storm: Office) -> None:
    """Of axe, and of a narrow screen."""
    page = phone.new_page()
    sign_in(page, storm)
    page.goto(f"{storm.url}/round")
    audit(page)
    fits(page)


def test_no_names_stay_on_the_phone_after_signing_out(
    phone: BrowserContext, storm: Office
) -> None:
    """A phone that is lent shows nobody's round."""
    page = phone.new_page()
    sign_in(page, storm)
    _kept(page, storm)
    page.get_by_text("Pages: My round").click()
    page.get_by_role("button", name="Sign out").click()
    page.wait_for_url("**/sign-in*")
    expect(page.get_by_label("Password")).to_be_visible()
    page.wait_for_function("caches.has('round').then((has) => !has)")


def test_without_a_script_a_note_is_a_form(chromium: Browser, storm: Office) -> None:
    """And the page says that it is kept."""
    context = window_of(chromium, 390, 844, scripts=False)
    page = context.new_page()
    sign_in(page, storm)
    page.goto(f"{storm.url}/round")
    stop = page.locator(".stop:has(input[value=bed-4])")
    stop.get_by_label("Your note").fill("Seen.")
    stop.get_by_role("button", name="Save the note").click()
    expect(page.get_by_text("The note is saved.")).to_be_visible()
    context.close()
