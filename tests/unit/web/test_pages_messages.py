"""The page of all messages, and the log of replies that could not be read."""

from dataclasses import replace
from decimal import Decimal

import pytest

from assistant.channel import Fate, Handover, Tariff
from assistant.people import Village, ending
from assistant.web.app import create_app
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, KIJANI, LEAD, OFFICER, Valley


@pytest.fixture
def kijani(valley: Valley) -> Village:
    return valley.add_village("Kijani")


@pytest.fixture
def lead(valley: Valley, kijani: Village) -> Valley:
    """A priced line, two villages, a lead and an officer of Kijani; Amina signs up there."""
    valley.house = replace(valley.house, tariff=Tariff(Decimal("0.80"), "KES"))
    valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, LEAD):
        give_password(valley, phone)
    valley.enrol(AMINA)
    return valley


@pytest.fixture
def browser(lead: Valley, new_browser: NewBrowser) -> Browser:
    found = new_browser()
    found.come_in(LEAD)
    return found


def test_the_counts_come_to_what_passed(lead: Valley, browser: Browser) -> None:
    """Four texts from the phone in signing up; a segment each way at 0.80."""
    texts = lead.operator.delivered
    shown = browser.open("/messages")
    kijani = shown.split("Kijani", 2)[2].split("Mto Mwanga")[0].split()
    assert kijani[:3] == [str(len(texts)), str(len(texts)), "0"]
    assert "4 0 0" in " ".join(kijani)
    assert f"{Decimal('0.80') * len(texts)}" in shown
    assert "A segment costs KES 0.80" in shown


def test_a_village_is_shown_month_by_month(lead: Valley, browser: Browser) -> None:
    """The month is the programme's, not that of Greenwich: 1 July 00:30 there is still June in
    UTC."""
    lead.go("1 Jul 00:30")
    lead.text(AMINA, "hello")
    browser.sign_in(LEAD)
    shown = browser.open("/messages?village=1")
    assert "Kijani, by month" in shown
    assert shown.index("July 2026") < shown.index("June 2026")
    assert "hello" in browser.open("/messages?village=1&which=heard&month=2026-07")
    assert "hello" not in browser.open("/messages?village=1&which=heard&month=2026-06")


def test_a_lead_sees_the_months_of_all_villages_in_one_table(
    lead: Valley, browser: Browser
) -> None:
    """Segments and cost; each name and month leads on to its own counts."""
    lead.go("1 Jul 08:00")
    lead.text(AMINA, "MENU")
    browser.sign_in(LEAD)
    browser.open("/messages")
    assert 'href="/messages/months"' in browser.page.text
    shown = browser.open("/messages/months")
    assert shown.index("July 2026") < shown.index("June 2026")
    kijani = shown[shown.index("Kijani") : shown.index("Mto Mwanga")].split()
    texts = len([each for each in lead.operator.delivered if each.phone == AMINA])
    assert int(kijani[1]) + int(kijani[4]) == texts  # each of one segment
    assert "0.80" in shown and 'href="/messages?month=2026-06"' in browser.page.text


LOST = {
    Handover(Fate.FAILED, "422 barred"): "does not accept texts to this number",
    Handover(Fate.TRY_LATER, "503 busy"): "could not be handed to the operator in time",
}


@pytest.mark.parametrize(("answer", "words"), LOST.items(), ids=lambda row: str(row)[:20])
def test_a_loss_is_told_in_words_with_what_to_do(
    lead: Valley, browser: Browser, answer: Handover, words: str
) -> None:
    """And the operator's own words beside them; the list can be held to it."""
    lead.operator.answers = [answer] * 300
    lead.post(AMINA, "MENU")
    lead.send()
    lead.go("3 Jun 12:00")
    shown = browser.open("/messages")
    assert words in shown
    which = "failed" if answer.fate is Fate.FAILED else "expired"
    assert "MENU" not in browser.open(f"/messages?which={which}")
    assert ending(AMINA) in browser.page.text  # another officer rings her


HELPED = ("/morning", "/warnings", "/season", "/farmers", "/messages")


@pytest.mark.parametrize("path", HELPED)
def test_a_main_page_says_what_it_is_for(lead: Valley, browser: Browser, path: str) -> None:
    """Behind a question mark that needs no script."""
    browser.sign_in(LEAD)
    assert "What is this page for?" in browser.open(path)
    assert browser.page.text.count('<details class="help screen-only">') == 1


def test_bars_are_told_apart_without_colour(lead: Valley, browser: Browser) -> None:
    """Each state has a pattern of its own, in the bars and beside their names."""
    browser.sign_in(LEAD)
    browser.open("/messages")
    page = browser.page.text
    for state in ("delivered", "accepted", "waiting", "failed", "expired"):
        assert page.count(f'<pattern id="t-{state}"') == 1
        assert f'fill="url(#t-{state})"' in page


def test_an_officer_sees_own_villages_only(lead: Valley, new_browser: NewBrowser) -> None:
    """Nothing of another village, nor of the officers; no log of replies."""
    lead.enrol(BARAKA, village=2)
    officer = new_browser()
    officer.sign_in(OFFICER)
    shown = officer.open("/messages?which=heard")
    assert AMINA in shown and BARAKA not in shown
    assert "Mto Mwanga" not in shown and "Officers and unknown" not in shown
    assert BARAKA not in officer.open("/messages?village=2&which=heard")


def test_a_text_of_who_moved_away_links_to_nobody(
    lead: Valley, new_browser: NewBrowser
) -> None:
    """It stays counted for the village, but the farmer is another officer's now."""
    with lead.house.store.work() as work:
        farmer = work.people.farmer(AMINA)
        assert farmer is not None and farmer.village_id == KIJANI.id
        work.people.save_farmer(replace(farmer, village_id=2))
    officer = new_browser()
    officer.sign_in(OFFICER)
    assert AMINA in officer.open("/messages")
    assert "/farmers/1" not in officer.page.text


def test_a_long_list_goes_on_by_its_last_line(lead: Valley, browser: Browser) -> None:
    """Every message stands on one page of it."""
    for number in range(60):
        lead.go(f"2 Jun 08:{number:02}")
        lead.text(AMINA, f"nonsense {number:02}")
    shown = browser.open("/messages?which=heard")
    assert "nonsense 59" in shown and "nonsense 05" not in shown
    older = browser.page.text.split('rel="next" href="')[1].split('"')[0].replace("&amp;", "&")
    assert "nonsense 05" in browser.open(older)


@pytest.mark.parametrize(
    "query",
    [
        "before=x",
        "before=2026-06-01T00:00:00 7",
        "before=2026-06-01T00:00:00%2B00:00 x",
        "which=nothing",
        "month=2026-99",
        "month=1999-01",
        "village=99",
        "village=x",
    ],
)
def test_an_address_that_makes_no_sense_shows_the_page_without_it(
    browser: Browser, query: str
) -> None:
    """Typed by hand, or old."""
    browser.open(f"/messages?{query}")
    assert browser.page.status_code == 200


def test_what_a_farmer_typed_is_only_shown(lead: Valley, browser: Browser) -> None:
    """Markup in a text is no markup of the page."""
    lead.text(AMINA, "<script>alert(1)</script>")
    browser.open("/messages?which=heard")
    assert "<script>alert" not in browser.page.text
    assert "&lt;script&gt;alert(1)" in browser.page.text


def test_without_a_price_no_cost_is_shown(lead: Valley) -> None:
    """The page says so."""
    lead.house = replace(lead.house, tariff=None)
    app = create_app(lead.house, secret="s", wake=lambda: None, clock=lambda: lead.now)
    browser = Browser(app.test_client())
    browser.sign_in(LEAD)
    shown = browser.open("/messages")
    assert "The price of a segment is not set" in shown and "Cost" not in shown


def test_the_log_counts_replies_by_language(lead: Valley, browser: Browser) -> None:
    """With the end of a number that somebody else rings, the way to write, what passed last."""
    lead.text(AMINA, "gobbledegook xyzzy")
    shown = browser.open("/messages/unread")
    assert "gobbledegook xyzzy" in shown and "English (" in shown
    assert AMINA not in shown and ending(AMINA) in shown and "Last messages" in shown
    assert 'href="/farmers/1#write"' in browser.page.text


def test_officers_see_the_unread_replies_of_their_villages(
    lead: Valley, new_browser: NewBrowser, browser: Browser
) -> None:
    """Those of numbers that nobody enrolled are the lead's."""
    lead.enrol(BARAKA, village=2)
    for phone, words in ((AMINA, "gobble aaa"), (BARAKA, "gobble bbb")):
        lead.text(phone, words)
    with lead.house.store.work() as work:
        work.calls.unread("en", "", "gobble ccc", lead.now, "+447700900199")
    officer = new_browser()
    officer.sign_in(OFFICER)
    shown = officer.open("/messages/unread")
    assert "gobble aaa" in shown
    assert "gobble bbb" not in shown and "gobble ccc" not in shown and BARAKA not in shown
    shown = browser.open("/messages/unread")
    assert all(f"gobble {end * 3}" in shown for end in "abc") and "+447700900199" in shown
