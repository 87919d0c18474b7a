"""Cries for help on this morning's page, in a browser, at a desk and on a phone."""

import pytest
from playwright.sync_api import Browser, Page, expect

from assistant.dialogue.values import RaiseAlarm
from assistant.service.alarms.raising import raise_alarm
from tests.browser.conftest import PHONES, Office, audit, fits, picture, sign_in, window_of

CRIES = (
    (PHONES[1], "lost", "Mbuzi wamekula miche yote, hakuna kilichobaki", True),
    (PHONES[0], "poison", "my son drank from the bottle he is vomiting pls come", True),
    (PHONES[4], "hurt", "macho yanauma", False),
    (PHONES[5], "die", "I cannot go on with these debts", True),
)


@pytest.fixture
def crying(storm: Office) -> Office:
    """Four cries in the storm: a bed, a child, somebody who was asked, one who wants to die."""
    valley = storm.valley
    for phone, kind, words, sure in CRIES:
        with valley.house.store.work() as work:
            raise_alarm(
                work, valley.house, phone, RaiseAlarm(kind, words, sure=sure), valley.now
            )
    valley.send()
    return storm


@pytest.mark.parametrize("width", [1280, 390])
def test_cries_stand_first_and_are_closed_with_what_was_done(
    chromium: Browser, crying: Office, width: int
) -> None:
    """By keyboard, with the words whole; nothing stands out at the side."""
    context = window_of(chromium, width, 900)
    page = context.new_page()
    page.name = f"{width}"  # type: ignore[attr-defined]
    sign_in(page, crying)
    cries = page.get_by_role("region", name="Cries for help")
    expect(cries.get_by_role("article")).to_have_count(5)  # with the flood of the day before
    expect(cries.get_by_role("article").first).to_contain_text("he is vomiting pls come")
    picture(page, "alarms")
    page.emulate_media(media="print")
    expect(cries).not_to_contain_text("these debts", use_inner_text=True)
    page.emulate_media(media="screen")
    audit(page)
    fits(page)
    _close(page)
    expect(page.get_by_role("region", name="Cries for help")).not_to_contain_text("vomiting")
    context.close()


def _close(page: Page) -> None:
    page.get_by_label("What was done").first.fill("Rang; they are on the way to the post")
    page.keyboard.press("Enter")
    expect(page.get_by_text("1 is closed.")).to_be_visible()
