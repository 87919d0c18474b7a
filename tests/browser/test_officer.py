"""An officer's morning in a browser, done by labels and buttons as a person would."""

from playwright.sync_api import Page, expect

from tests.browser.conftest import PHONES, Office, audit, fits, picture, sign_in


def test_an_officer_sees_who_must_be_seen_in_a_storm(page: Page, storm: Office) -> None:
    """Warnings, calls and nurseries stand on one page, the most urgent first."""
    page.goto(storm.url)
    picture(page, "sign-in")
    audit(page)
    sign_in(page, storm)
    expect(page.get_by_role("heading", level=1)).to_have_text("Waiting for me, Wed 10 Jun")
    cries = page.get_by_role("region", name="Cries for help")
    expect(cries.get_by_role("article").nth(0)).to_contain_text("Water runs over the bed")
    rain = page.get_by_role("region", name="Help in rain and other dangers")
    expect(rain.locator(".item").nth(0)).to_contain_text("help in the rain")
    listed = page.get_by_role("region", name="Nurseries to see today")
    listed.get_by_text("Kijani").click()
    expect(listed.get_by_text("Rain warning, not known to be covered").nth(0)).to_be_visible()
    picture(page, "morning")
    page.emulate_media(color_scheme="dark")
    picture(page, "morning-before-dawn")
    audit(page)
    fits(page)


def test_a_call_is_answered_from_the_list(page: Page, storm: Office) -> None:
    """The words go to the farmer's phone a minute later, and the call leaves the list."""
    sign_in(page, storm)
    storm.valley.heard(PHONES[3])
    call = page.get_by_role("article", name="Tatu Neema")
    call.get_by_role("link", name="Answer by text").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Answer Tatu Neema")
    expect(page.get_by_role("region", name="Last messages")).to_contain_text("Water runs over")
    words = page.get_by_label("Your answer, sent as a text")
    words.fill(
        "Keep people in. When it is over open the drain, leave the cover on. I come at ten."
    )
    expect(page.locator("#cost")).to_contain_text("1 segment")
    page.get_by_label("Send at once").check()
    picture(page, "answer")
    audit(page)
    page.get_by_role("button", name="Send the answer").click()
    expect(page.get_by_role("status")).to_contain_text("1 text is on its way")
    expect(page.get_by_role("article", name="Tatu Neema")).to_have_count(0)
    heard = storm.valley.heard(PHONES[3])
    assert len(heard) == 1 and heard[0].startswith("From Asha, your officer: Keep people in.")
    picture(page, "answered")


def test_those_ticked_are_visited_with_one_form_and_it_is_undone(
    page: Page, storm: Office
) -> None:
    """Ticking brings up what can be done; a minute's undo brings all of them back."""
    sign_in(page, storm)
    listed = page.get_by_role("region", name="Nurseries to see today")
    listed.get_by_text("Kijani").click()
    listed.get_by_role("button", name="Tick all of these").nth(0).click()
    bar = page.get_by_role("group", name="With those ticked")
    expect(bar).to_be_visible()
    picture(page, "ticked")
    audit(page)
    bar.get_by_role("button", name="Visited").click()
    page.get_by_label("What you saw and did").fill("Covered them with her.")
    picture(page, "visited")
    audit(page)
    fits(page)
    page.get_by_role("button", name="Record").click()
    expect(page.get_by_role("status").last).to_contain_text("recorded")
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_role("status")).to_contain_text("Undone")
    expect(listed).to_contain_text("Kijani")


def test_a_visit_is_noted_at_the_nursery(page: Page, storm: Office) -> None:
    """What was seen done is ticked, and the nursery leaves the list."""
    sign_in(page, storm)
    page.goto(f"{storm.url}/nurseries/4")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Tatu Neema")
    picture(page, "nursery-visit")
    page.evaluate("scrollTo(0, 0)")
    picture(page, "nursery")
    audit(page)
    fits(page)
    visit = page.get_by_role("region", name="Record a visit")
    visit.get_by_label("uncover and flood").check()
    visit.get_by_label("What you saw and did").fill("Uncovered with her. All up, even stand.")
    visit.get_by_role("button", name="Record a visit").click()
    expect(page.get_by_role("status")).to_contain_text("The visit is recorded")
    expect(page.get_by_role("region", name="Visits")).to_contain_text("All up, even stand.")
    page.get_by_role("link", name="Waiting for me").first.click()
    expect(page.get_by_text("No answer: uncover and flood")).to_have_count(0)


def test_dates_are_changed_at_the_nursery(page: Page, storm: Office) -> None:
    """The farmer is told of the new days."""
    sign_in(page, storm)
    page.goto(f"{storm.url}/farmers")
    page.get_by_role("link", name="Juma Elia").click()
    picture(page, "farmer")
    audit(page)
    page.get_by_role("link", name="Nursery A").click()
    page.get_by_text("Change the dates").first.click()
    page.get_by_label("Sowing day").fill("2026-06-14")
    expect(page.locator("#sow + .day-said")).to_have_text("Sun, June 14, 2026")
    audit(page)
    page.get_by_role("button", name="Show what changes").click()
    picture(page, "dates")
    audit(page)
    page.get_by_role("button", name="Change the dates").click()
    expect(page.get_by_role("status")).to_contain_text("the farmer is told")
    storm.valley.go("10 Jun 06:00")
    assert any("Sun 14 Jun" in text for text in storm.valley.heard(PHONES[5]))


def test_a_farmer_is_found_by_name_without_a_mouse(page: Page, storm: Office) -> None:
    """By keyboard alone, from the top of the page."""
    sign_in(page, storm)
    page.goto(f"{storm.url}/farmers")
    page.get_by_label("Name or number").focus()
    page.keyboard.type("zawadi")
    page.keyboard.press("Enter")
    expect(page.get_by_text("1 farmer", exact=True)).to_be_visible()
    expect(page.get_by_role("link", name="Zawadi Asha")).to_be_visible()
    picture(page, "farmers")
    audit(page)
    fits(page)


def test_the_first_tab_leads_past_the_list_of_pages(page: Page, storm: Office) -> None:
    """So that a keyboard reaches the work at once."""
    sign_in(page, storm)
    page.keyboard.press("Tab")
    expect(page.get_by_role("link", name="Skip to the page")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("main")).to_be_focused()


def test_the_villages_and_the_account_can_be_read_by_everybody(
    page: Page, storm: Office
) -> None:
    """The rest of the pages keep the same rules."""
    sign_in(page, storm)
    for path in ("villages", "villages/1", "account", "password", "nowhere"):
        page.goto(f"{storm.url}/{path}")
        picture(page, path.replace("/", "-"))
        audit(page)
        fits(page)
