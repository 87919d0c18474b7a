"""The list of farmers, the villages and their hand-over, and the trail."""

from dataclasses import replace

import pytest

from assistant.people import Farmer
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, LEAD, OFFICER, Valley

NEXT = "+447700900003"


def way(valley: Valley) -> None:
    """The lead, signed in; two villages, of which the first has an officer and a farmer."""
    kijani = valley.add_village("Kijani")
    valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, LEAD):
        give_password(valley, phone)
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    _name(valley, AMINA, "Amina Juma")


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in(LEAD)
    return found


def _name(valley: Valley, phone: str, name: str) -> None:
    with valley.house.store.work() as work:
        farmer = work.people.farmer(phone)
        assert farmer is not None
        work.people.save_farmer(replace(farmer, name=name))


@pytest.mark.parametrize(
    "search", ["", "juma", "AMINA", "0101", "07700 900 101", "+447700900101"]
)
def test_a_farmer_is_found_by_a_part_of_name_or_number(browser: Browser, search: str) -> None:
    """As people type them."""
    shown = browser.open(f"/farmers?search={search.replace('+', '%2B')}")
    assert "1 farmer" in shown and "Amina Juma" in shown
    assert "Nursery A, day 0" in shown


@pytest.mark.parametrize("search", ["zawadi", "%", "_", "9", "' or 1=1 --"])
def test_what_matches_nobody_finds_nobody(browser: Browser, search: str) -> None:
    """Signs that mean something to a database are only signs."""
    assert "No farmers found" in browser.open(f"/farmers?search={search}")


def test_farmers_are_listed_by_village(valley: Valley, browser: Browser) -> None:
    """All of them, or those of one."""
    valley.enrol(BARAKA, village=2)
    assert "2 farmers" in browser.open("/farmers")
    shown = browser.open("/farmers?village=2")
    assert "1 farmer" in shown and BARAKA in shown and AMINA not in shown


def test_a_long_list_is_cut_into_pages(valley: Valley, browser: Browser) -> None:
    """Each farmer stands on one of them."""
    with valley.house.store.work() as work:
        for number in range(60):
            phone = f"+99900{number:07}"
            work.people.save_farmer(
                Farmer(0, phone, "en", 1, None, None, name=f"Farmer {number:02}")
            )
    first, second = browser.open("/farmers"), browser.open("/farmers?page=2")
    assert "61 farmers" in first and "Page 1 of 2" in first
    named = [f"Farmer {number:02}" for number in range(60)]
    assert all((name in first) != (name in second) for name in named)
    assert browser.open("/farmers?page=99") == second


def test_a_village_is_handed_over_with_its_story(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    """The next officer sees its farmers and what to know; the one before no longer does."""
    with valley.house.store.look() as work:
        mwanga = work.people.villages()[1]
    valley.add_officer(mwanga, phone=NEXT)
    give_password(valley, NEXT)
    giver, taker = _officer_id(valley, OFFICER), _officer_id(valley, NEXT)
    browser.open("/villages/1")
    shown = browser.send(
        "/villages/1/hand-over", giver=giver, taker=taker, words="Amina needs a new sheet."
    )
    assert "Kijani is handed over to Asha" in shown
    assert any("Kijani is in your care now: 1 farmers" in text for text in valley.heard(NEXT))
    after = new_browser()
    after.sign_in(NEXT)
    assert "Amina needs a new sheet." in after.open("/villages/1")
    assert "Amina Juma" in after.open("/farmers")
    before = new_browser()
    before.sign_in(OFFICER)
    assert "Amina Juma" not in before.open("/farmers")


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"taker": "", "words": "x"}, "Choose who serves it"),
        ({"taker": "1", "words": "x"}, "serves it already"),
        ({"taker": "2", "words": ""}, "Write what the next officer"),
    ],
)
def test_a_hand_over_that_is_not_complete_changes_nothing(
    browser: Browser, fields: dict[str, str], said: str
) -> None:
    """The page says what is wanting."""
    browser.open("/villages/1")
    shown = browser.send("/villages/1/hand-over", giver="1", **fields)
    assert said in shown and "No handovers yet" in shown


def test_an_officer_hands_over_nothing(browser: Browser, new_browser: NewBrowser) -> None:
    """Only a lead does; the officer reads the story."""
    officer = new_browser()
    officer.sign_in(OFFICER)
    assert "Hand this village over" not in officer.open("/villages/1")
    officer.send("/villages/1/hand-over", giver="1", taker="2", words="x")
    assert officer.page.status_code == 404


def test_only_the_lead_reads_what_was_done(browser: Browser, new_browser: NewBrowser) -> None:
    """By all officers or by one."""
    officer = new_browser()
    officer.sign_in(OFFICER)
    officer.open("/nurseries/1")
    officer.send("/nurseries/1/visit", on="2026-06-01", words="")
    officer.open("/trail")
    assert officer.page.status_code == 404
    shown = browser.open("/trail")
    assert "recorded a visit" in shown and "Amina Juma, Nursery A" in shown
    assert "recorded a visit" not in browser.open("/trail?officer=2")


def test_the_trail_goes_back_page_by_page(valley: Valley, browser: Browser) -> None:
    """A hundred lines at a time."""
    with valley.house.store.work() as work:
        for number in range(150):
            work.audit.add("wrote", valley.now, officer_id=1, detail=f"no. {number:03}")
    assert "no. 149" in browser.open("/trail")
    assert "no. 049" not in browser.words()
    older = browser.page.text.split('rel="next" href="')[1].split('"')[0]
    assert "no. 049" in browser.open(older.replace("&amp;", "&"))


def test_the_trail_tells_all_times_in_one_zone_and_names_it(
    valley: Valley, browser: Browser
) -> None:
    """The hours of a warning too, which are kept in UTC (Nairobi is three hours ahead of it:
    IANA time zone database); a village's story tells the village's own."""
    with valley.house.store.work() as work:
        samoa = work.people.add_village("Apia", "Pacific/Apia").id  # 13 hours ahead
        hours = "2026-06-10 03:00 .. 2026-06-10 11:30 UTC"
        work.audit.add("warned", valley.now, officer_id=1, village_id=samoa, detail=hours)
    shown = browser.open("/trail")
    assert "Times are those of Africa/Nairobi." in shown
    assert "2026-06-10 06:00 .. 2026-06-10 14:30" in shown and "UTC" not in shown
    shown = browser.open(f"/villages/{samoa}")
    assert "Times are those of Pacific/Apia." in shown
    assert "2026-06-10 16:00 .. 2026-06-11 00:30" in shown


def _officer_id(valley: Valley, phone: str) -> int:
    with valley.house.store.look() as work:
        account = work.accounts.of_phone(phone)
    assert account is not None
    return account.id
