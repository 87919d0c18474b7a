"""The season picture: villages, nurseries on their time lines, what is due, and filters."""

import re
from dataclasses import replace

import pytest

from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, LEAD, OFFICER, ZAWADI, Valley


def way(valley: Valley) -> None:
    """The lead, signed in on the ninth of June; an officer for the first of two villages.

    Amina sowed on the first of June, Baraka sows on the twelfth, Zawadi sowed on the eighth.
    """
    kijani = valley.add_village("Kijani")
    valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, LEAD):
        give_password(valley, phone)
    for phone, village, name in (
        (AMINA, 1, "Amina"),
        (BARAKA, 1, "Baraka"),
        (ZAWADI, 2, "Zawadi"),
    ):
        valley.enrol(phone, village=village)
        with valley.house.store.work() as work:
            farmer = work.people.farmer(phone)
            assert farmer is not None
            work.people.save_farmer(replace(farmer, name=name))
    valley.sow(AMINA, "1 June")
    valley.plan(BARAKA, "12 June")
    valley.plan(ZAWADI, "8 June")
    valley.go("9 Jun 09:00")


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in(LEAD)
    return found


def test_the_district_is_counted_by_village_and_stage(browser: Browser) -> None:
    """Amina is on day 8, Baraka before sowing, Zawadi on day 1."""
    shown = browser.open("/season")
    rows = _rows(browser)
    assert any(
        row.startswith("Kijani 1 : Kijani, not sown yet 1 : Kijani, uncovered") for row in rows
    )
    assert any(row.startswith("Mto Mwanga 1 : Mto Mwanga, covered") for row in rows)
    assert "In all 1 : All villages, not sown yet 1 : All villages, covered" in shown


def test_a_village_is_shown_bar_by_bar(browser: Browser) -> None:
    """Each with its stage in words, its day, and what comes next: ploughed 21 days before 19
    June, harrowed a second time 14 days later (PhilRice, Field Operations Manual, 2007)."""
    browser.open("/season?village=1")
    rows = _rows(browser)
    amina = next(row for row in rows if row.startswith("Amina, A"))
    assert "3 uncovered, growing day 8" in amina
    assert amina.endswith("puddle the field Fri 12 Jun")
    assert not any("Zawadi" in row for row in rows)
    assert browser.page.text.count('<svg class="bar"') == 2


def test_the_week_is_counted_by_task_and_day(browser: Browser) -> None:
    """Baraka soaks on the tenth, two days before sowing; a number leads to the nurseries."""
    browser.open("/season")
    row = next(row for row in _rows(browser) if row.startswith("soak the seed"))
    assert row == "soak the seed 1 : soak the seed, Wed 10 Jun"
    link = re.search(r'href="([^"]+task=soak[^"]+)"', browser.page.text)
    assert link
    shown = browser.open(link[1].replace("&amp;", "&").partition("#")[0])
    assert "1 nursery: soak the seed, Wed 10 Jun" in shown
    assert "Baraka, A" in shown and "Amina" not in shown


@pytest.mark.parametrize(
    ("query", "names"),
    [
        ("stage=covered", {"Zawadi"}),
        ("stage=planned&village=1", {"Baraka"}),
        ("village=1&practice=mat", {"Amina", "Baraka"}),
        ("village=1&practice=wet_bed", set()),
        ("stage=old", set()),
        ("village=99&stage=growing", {"Amina"}),
        ("stage=nonsense&village=2&page=77", {"Zawadi"}),
        ("task=soak&on=2026-02-31&village=2", {"Zawadi"}),
    ],
)
def test_the_picture_is_held_to_what_was_chosen(
    browser: Browser, query: str, names: set[str]
) -> None:
    """By village, stage and practice; what is no choice is none."""
    shown = browser.open(f"/season?{query}")
    assert browser.page.status_code == 200
    assert {name for name in ("Amina", "Baraka", "Zawadi") if f"{name}, A" in shown} == names
    assert ("No nurseries match" in shown) == (not names)


def test_an_officer_of_one_village_sees_it_at_once_and_no_other(
    browser: Browser, new_browser: NewBrowser
) -> None:
    """There is nothing to count by village."""
    officer = new_browser()
    officer.sign_in(OFFICER)
    shown = officer.open("/season")
    assert "Season picture, Kijani" in shown and "Amina, A" in shown
    assert "Zawadi" not in officer.open("/season?village=2")
    assert "Zawadi" not in officer.open("/season?stage=covered")


def test_a_planted_nursery_stays_in_the_picture_and_a_lost_one_goes(
    valley: Valley, browser: Browser
) -> None:
    """The season ends for both, but only one of them has a field."""
    valley.go("19 Jun 08:00")
    browser.sign_in(LEAD)
    browser.open("/nurseries/1")
    browser.send(
        "/nurseries/1/dates", sow="2026-06-01", sown="on", transplanted_on="2026-06-18"
    )
    browser.send("/nurseries/1/close", why="over")
    browser.open("/nurseries/2")
    browser.send("/nurseries/2/close", why="washed away")
    shown = browser.open("/season?village=1")
    assert "7 transplanted day 18" in shown and "Baraka" not in shown


def test_a_long_season_is_cut_into_pages(valley: Valley, browser: Browser) -> None:
    """Fifty bars at a time; the filter goes along."""
    with valley.house.store.work() as work:
        nursery = work.nurseries.get(1)
        assert nursery is not None
        for number in range(60):
            work.nurseries.save(replace(nursery, id=0, label=f"N{number}"), valley.now)
    assert "62 nurseries" in browser.open("/season?village=1")
    assert browser.page.text.count('<svg class="bar"') == 50
    link = re.search(r'rel="next" href="([^"]+)"', browser.page.text)
    assert link
    browser.open(link[1].replace("&amp;", "&"))
    assert browser.page.text.count('<svg class="bar"') == 12


def test_a_farmer_of_no_village_is_the_leads(valley: Valley, browser: Browser) -> None:
    """Counted on a line of its own."""
    with valley.house.store.work() as work:
        farmer = work.people.farmer(ZAWADI)
        assert farmer is not None
        work.people.save_farmer(replace(farmer, village_id=None))
    browser.open("/season")
    assert any(row.startswith("no village 1") for row in _rows(browser))
    assert "Zawadi, A" in browser.open("/season?stage=covered")


def _rows(browser: Browser) -> list[str]:
    """The rows of all tables, as they are read."""
    found = re.findall(r"<tr[^>]*>(.*?)</tr>", browser.page.text, re.S)
    plain = [re.sub(r"<svg.*?</svg>", "", row, flags=re.S) for row in found]
    return [" ".join(re.sub(r"<[^>]+>", " ", row).split()) for row in plain]


@pytest.mark.parametrize("day", ["9999-12-31", "0001-01-01", "2026-13-45"])
def test_a_date_of_no_season_is_none(browser: Browser, day: str) -> None:
    """Beyond the last year there is no next day to count to."""
    for page in ("/season", "/villages/1/calendar", "/nurseries/1/calendar"):
        browser.open(f"{page}?from={day}")
        assert browser.page.status_code == 200, page
    browser.open("/nurseries/1")
    assert f"{day} is no date here" in browser.send("/nurseries/1/dates", sow=day)
    assert browser.page.status_code == 422
