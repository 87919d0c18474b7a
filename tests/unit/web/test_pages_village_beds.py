"""An officer sets what kinds of bed a village is offered, and its mean temperature."""

from collections.abc import Iterator

import pytest

from assistant.store import Store
from assistant.web.app import create_app
from assistant.wiring.practices import open_practices
from tests.unit.web.conftest import Browser, give_password, with_page
from tests.valley import Valley, at, house_of

ADDRESS = "/villages/1"


@pytest.fixture
def browser(_copied_sqlite: str) -> Iterator[Browser]:
    """The officer of Kijani, signed in, in a house that knows all kinds of bed."""
    store = Store(_copied_sqlite, open_practices())
    valley = with_page(Valley(house_of(store), at("10 Jun 08:00")))
    kijani = valley.add_village("Kijani")
    valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    give_password(valley)
    app = create_app(valley.house, secret="w", wake=valley.send, clock=lambda: valley.now)
    app.testing = True
    found = Browser(app.test_client())
    found.come_in()
    yield found
    store.close()


def test_the_kinds_of_bed_are_offered_from_now_on(browser: Browser) -> None:
    """The mat always; a code that nobody knows is passed over."""
    browser.open(ADDRESS)
    said = browser.send(f"{ADDRESS}/practices", practice=["wet_bed", "floating"])
    assert "Offered from now on: mat, wet bed." in said
    assert browser.page.text.count('name="practice"') == 4
    assert 'value="wet_bed" checked' in browser.page.text
    assert "mat." in browser.send(f"{ADDRESS}/practices")
    assert 'value="wet_bed" checked' not in browser.page.text


def test_the_temperature_is_kept_and_shown(browser: Browser) -> None:
    """With a point or a comma."""
    browser.open(ADDRESS)
    said = browser.send(f"{ADDRESS}/warmth", degrees="22,5", on="2026-06-09")
    assert "mean of 22.5 C saved for Tue 9 Jun" in said
    assert "22.5 C for Tue 9 Jun." in browser.open(ADDRESS)
    assert "Temperature entered" in browser.words()


@pytest.mark.parametrize("degrees", ["", "warm", "-3", "10.9", "41", "1e1", "nan", "2 4"])
def test_no_temperature_is_kept_that_cannot_be(browser: Browser, degrees: str) -> None:
    """11 to 40 C, as a number."""
    browser.open(ADDRESS)
    said = browser.send(f"{ADDRESS}/warmth", degrees=degrees, on="2026-06-09")
    assert "11 to 40 C" in said and "None recently" in said


@pytest.mark.parametrize("on", ["", "2026-06-11", "2026-05-01"])
def test_no_temperature_of_another_time(browser: Browser, on: str) -> None:
    """Of today or of a few days before."""
    browser.open(ADDRESS)
    assert "today or earlier" in browser.send(f"{ADDRESS}/warmth", degrees="24", on=on)
    assert 'value="24"' in browser.page.text


def test_a_day_that_is_none_is_told_as_it_was_typed(browser: Browser) -> None:
    """And the temperature stands there still."""
    browser.open(ADDRESS)
    said = browser.send(f"{ADDRESS}/warmth", degrees="24", on="soon")
    assert "Day: soon is no date here" in said and 'value="24"' in browser.page.text
    assert browser.page.status_code == 422


def test_another_village_is_not_there(browser: Browser) -> None:
    """For an officer who does not serve it."""
    browser.open(ADDRESS)
    browser.send("/villages/2/warmth", degrees="24", on="2026-06-09")
    assert browser.page.status_code == 404
    browser.open(ADDRESS)
    browser.send("/villages/2/practices", practice="wet_bed")
    assert browser.page.status_code == 404


def test_temperatures_of_the_months_are_kept_shown_and_taken_away(browser: Browser) -> None:
    """Twelve, with a point or a comma; fewer, or words, are asked back and change nothing."""
    browser.open(ADDRESS)
    twelve = "18 21 25 28 29 29 29 29 28 27 23 19,5"
    assert "follow these temperatures" in browser.send(f"{ADDRESS}/climate", months=twelve)
    assert 'value="18.0 21.0 25.0' in browser.page.text and "19.5" in browser.page.text
    for wrong in ("18 21", "warm", twelve.replace("18", "99")):
        assert "Write twelve temperatures" in browser.send(f"{ADDRESS}/climate", months=wrong)
        assert f'value="{wrong}"' in browser.page.text
    browser.open(ADDRESS)
    assert 'value="18.0 21.0 25.0' in browser.page.text
    assert "the temperatures of the months are removed" in browser.send(
        f"{ADDRESS}/climate", months=""
    )
