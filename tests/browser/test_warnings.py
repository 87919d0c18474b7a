"""An officer warns of rain on the page, in a storm, on a slow line: in a real browser."""

import re
from datetime import timedelta

from playwright.sync_api import Browser, Page, expect

from assistant.agronomy.dangers.rows import DANGERS, RAIN
from assistant.service.storms import drafts
from assistant.store import AlertCertainty, Draft
from tests.browser.conftest import (
    PHONES,
    Office,
    audit,
    crowded,
    fits,
    picture,
    sign_in,
    window_of,
)
from tests.valley import KIJANI as HERE
from tests.valley import OFFICER

KIJANI, MWANGA = PHONES[0::2], PHONES[1::2]


def _to_form(page: Page) -> None:
    page.get_by_role("link", name="Warnings", exact=True).click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Warnings")


def _fill_in(page: Page) -> None:
    form = page.get_by_role("region", name="Warn of a danger")
    form.get_by_label("Kijani").check()
    form.get_by_label("From, time").fill("16:00")
    form.get_by_label("Until, time").fill("02:00")
    form.get_by_label("Possible").check()
    picture(page, "warning-form")
    form.get_by_role("button", name="Show whom it reaches").click()


def _look(page: Page, name: str) -> None:
    picture(page, name)
    audit(page)
    fits(page)


def test_a_warning_is_sent_by_hand(page: Page, storm: Office) -> None:
    """This afternoon and past midnight; its reach and words are shown before it goes."""
    sign_in(page, storm)
    _to_form(page)
    _look(page, "warnings")
    _fill_in(page)
    expect(page.get_by_role("heading", level=1)).to_have_text("Send this warning?")
    expect(page.get_by_text("RAIN WARNING Kijani: heavy rain 4 pm to 2 am")).to_be_visible()
    _look(page, "warning-reach")
    page.get_by_role("button", name="Send to 2 phones").click()
    expect(page.get_by_role("status")).to_contain_text("The warning is going out.")
    storm.valley.send()
    assert all("RAIN WARNING" in "".join(storm.valley.heard(phone)) for phone in KIJANI[:2])


def test_the_answers_come_in_by_themselves(page: Page, storm: Office) -> None:
    """Nothing is pressed; then the silent are asked again."""
    sign_in(page, storm)
    _to_form(page)
    _fill_in(page)
    page.get_by_role("button", name="Send to 2 phones").click()
    expect(page.get_by_role("status")).to_contain_text("The warning is going out.")
    storm.valley.send()
    _look(page, "warning-followed")
    storm.valley.text(KIJANI[0], "2")
    expect(page.get_by_role("link", name="Who needs help")).to_be_visible()
    picture(page, "warning-help")
    page.get_by_role("button", name="second text").click()
    expect(page.get_by_role("status")).to_contain_text("A second text goes to 1 phone.")


def test_a_mistake_is_called_back(page: Page, storm: Office) -> None:
    """A second press is asked for; the phones that have it are corrected."""
    sign_in(page, storm)
    _to_form(page)
    page.get_by_role("link", name=re.compile("See the answers *: Kijani")).click()
    for phone in PHONES:
        storm.valley.heard(phone)
    page.get_by_text("It was a mistake").click()
    audit(page)
    picture(page, "warning-call-back")
    page.get_by_role("button", name="Call it back").click()
    expect(page.get_by_role("status")).to_contain_text("Called back:")
    picture(page, "warning-called-back")
    assert any("taken back" in text for phone in KIJANI for text in storm.valley.heard(phone))


def test_a_warning_is_sent_without_a_script_on_a_small_screen(
    chromium: Browser, storm: Office
) -> None:
    """An old phone's browser, 360 points wide."""
    context = window_of(chromium, 360, 640, scripts=False)
    page = context.new_page()
    page.name = "narrow"  # type: ignore[attr-defined]
    sign_in(page, storm)
    page.get_by_text("Pages: Waiting for me").click()  # the menu is folded
    _to_form(page)
    page.get_by_label("Mto Mwanga").check()
    page.get_by_label("From, time").fill("16:00")
    page.get_by_label("Until, time").fill("20:00")
    picture(page, "warning-form")
    page.get_by_role("button", name="Show whom it reaches").click()
    picture(page, "warning-reach")
    page.get_by_role("button", name="Send to").click()
    expect(page.get_by_text("The warning is going out.")).to_be_visible()
    expect(page.get_by_role("link", name="Do not renew it")).to_be_visible()
    picture(page, "warning-followed")
    page.get_by_text("Give the all-clear").click()
    page.get_by_role("button", name="Yes, the danger is over").click()
    expect(page.get_by_text("The all-clear goes out.")).to_be_visible()
    context.close()


def test_words_go_to_many_farmers(page: Page, storm: Office) -> None:
    """A meeting: who, which words, what it costs; it waits for the end of the quiet hours."""
    sign_in(page, storm)
    _to_form(page)
    page.get_by_role("link", name="Write to many farmers").click()
    page.get_by_label("Kijani").check()
    page.get_by_label("To farmers whose bed is").select_option(label="on days 0 to 5")
    page.get_by_label("Your words").fill("Seed arrives on Friday at ten, at the mill.")
    _look(page, "broadcasts")
    page.get_by_role("button", name="Show whom it reaches").click()
    expect(page.get_by_text("From Asha, your officer: Seed arrives")).to_be_visible()
    _look(page, "broadcast-reach")
    page.get_by_role("button", name="Send to").click()
    expect(page.get_by_role("status")).to_contain_text("Your text goes out at 05:30")
    _look(page, "broadcast-sent")


def test_a_village_is_given_its_place(page: Page, storm: Office) -> None:
    """On its page; then a warning can be drawn by distance."""
    sign_in(page, storm)
    page.goto(f"{storm.url}/villages/1")
    page.get_by_label("Degrees north, then east").fill("-0.68, 37.35")
    page.get_by_role("region", name="Where it lies").get_by_role("button").click()
    expect(page.get_by_role("status")).to_contain_text("The place is kept.")
    _look(page, "village-placed")
    _to_form(page)
    page.get_by_text("Or by distance from a place").click()
    page.get_by_label("Within (km)").fill("10")
    page.get_by_label("of this village").select_option(label="Kijani")
    _look(page, "warning-by-distance")
    page.get_by_role("button", name="Show whom it reaches").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Send this warning?")
    expect(page.get_by_role("status")).to_contain_text("not in it: Mto Mwanga")


def test_hail_is_chosen_and_named_on_every_page(page: Page, storm: Office) -> None:
    """Nobody reads "rain" of it: not on its draft, nor its answers, nor the first page."""
    sign_in(page, storm)
    _to_form(page)
    form = page.get_by_role("region", name="Warn of a danger")
    form.get_by_label("Danger", exact=True).select_option(label="hail")
    form.get_by_label("Kijani").check()
    form.get_by_label("From, time").fill("16:00")
    form.get_by_label("Until, time").fill("20:00")
    _look(page, "hail-form")
    form.get_by_role("button", name="Show whom it reaches").click()
    expect(page.get_by_text("Warning of hail, Kijani")).to_be_visible()
    expect(page.get_by_text("then stay indoors").first).to_be_visible()
    _look(page, "hail-reach")
    page.get_by_role("button", name=re.compile("Send to")).click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Warning of hail, Kijani")
    storm.valley.send()
    storm.valley.text(KIJANI[0], "2")
    expect(page.get_by_role("link", name="Who needs help")).to_be_visible()
    _look(page, "hail-followed")
    page.goto(page.url.split("/warnings")[0] + "/morning")
    expect(page.get_by_text("hail: 16:00 to 20:00")).to_be_visible()
    _look(page, "hail-morning")


def test_other_dangers_fit_a_phone(page: Page, storm: Office) -> None:
    """Each one's draft and answers, and the list with all of them."""
    page.set_viewport_size({"width": 390, "height": 844})
    sign_in(page, storm)
    for danger in sorted(DANGERS.codes(lambda row: row.code != RAIN)):
        sent, waits = _warned(storm, danger), _drafted(storm, danger)
        for path in (f"/warnings/{sent}", f"/warnings/drafts/{waits}"):
            page.goto(storm.url + path)
            fits(page)
            assert [*crowded(page)] == [], path
    page.goto(storm.url + "/warnings")
    fits(page)
    assert [*crowded(page)] == []


def _drafted(office: Office, danger: str) -> int:
    now = office.valley.now
    begins, likely = now + timedelta(hours=2), AlertCertainty.LIKELY
    wanted = Draft((HERE.id,), begins, begins + timedelta(hours=30), now, likely, danger=danger)
    with office.valley.house.store.work() as work:
        return drafts.draft(work, wanted).id


def _warned(office: Office, danger: str) -> int:
    made = _drafted(office, danger)
    with office.valley.house.store.work() as work:
        officer = work.people.officer(OFFICER)
        drafts.send(work, office.valley.house, made, office.valley.now, officer)
    office.valley.send()
    return made
