"""An officer's morning in a browser, done by labels and buttons as a person would."""

from playwright.sync_api import Page, expect

from tests.browser.conftest import PHONES, Office, audit, fits, picture, sign_in


def test_an_officer_sees_who_must_be_seen_in_a_storm(page: Page, storm: Office) -> None:
    """Warnings, calls and nurseries stand on one page, the most urgent first."""
    page.goto(storm.url)
    picture(page, "sign-in")
    audit(page)
    sign_in(page, storm)
    expect(page.get_by_role("heading", level=1)).to_have_text("This morning, Wed 10 Jun")
    cries = page.get_by_role("region", name="Cries for help")
    expect(cries.get_by_role("article").nth(0)).to_contain_text("Water runs over the bed")
    calls = page.get_by_role("region", name="Calls for help")
    expect(calls.get_by_role("article").nth(0)).to_contain_text("help in the rain")
    listed = page.get_by_role("region", name="Nurseries to see today").get_by_role("row")
    expect(listed.nth(1)).to_contain_text("Needs help in the rain")
    expect(page.get_by_text("Yellow leaves")).to_be_visible()
    picture(page, "morning")
    page.emulate_media(color_scheme="dark")
    picture(page, "morning-before-dawn")
    audit(page)
    fits(page)


def test_a_call_is_answered_from_the_list(page: Page, storm: Office) -> None:
    """The words go to the farmer's phone, and the call leaves the list."""
    sign_in(page, storm)
    storm.valley.heard(PHONES[3])
    call = page.get_by_role("article", name="Tatu Neema")
    call.get_by_text("Answer by text").click()
    words = call.get_by_label("Your answer, sent as a text")
    words.fill(
        "Keep people in. When it is over open the drain, leave the cover on. I come at ten."
    )
    call.get_by_label("Send at once").check()
    picture(page, "answer")
    audit(page)
    call.get_by_role("button", name="Send the answer").click()
    expect(page.get_by_role("status")).to_contain_text("Your text is on its way")
    expect(page.get_by_role("article", name="Tatu Neema")).to_have_count(0)
    heard = storm.valley.heard(PHONES[3])
    assert len(heard) == 1 and heard[0].startswith("From Asha, your officer: Keep people in.")
    picture(page, "answered")


def test_a_visit_is_noted_from_the_list(page: Page, storm: Office) -> None:
    """What was seen done is ticked, and the nursery leaves the list."""
    sign_in(page, storm)
    row = page.get_by_role("row").filter(has_text="No answer: uncover and flood")
    row.get_by_role("link", name="Note a visit").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Tatu Neema")
    picture(page, "nursery-visit")
    page.evaluate("scrollTo(0, 0)")
    picture(page, "nursery")
    audit(page)
    fits(page)
    visit = page.get_by_role("region", name="Note a visit")
    visit.get_by_label("uncover and flood").check()
    visit.get_by_label("What you saw and did").fill("Uncovered with her. All up, even stand.")
    visit.get_by_role("button", name="Note a visit").click()
    expect(page.get_by_role("status")).to_contain_text("The visit is noted")
    expect(page.get_by_role("region", name="Visits")).to_contain_text("All up, even stand.")
    page.get_by_role("link", name="This morning").click()
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
