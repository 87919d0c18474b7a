"""Anybody found from every page, and what is kept of them put right."""

from dataclasses import replace

import pytest

from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, ZAWADI, Valley

NAMES = {AMINA: "Amina Nguyễn", BARAKA: "Mwende Hassan", ZAWADI: "Zawadi Asha"}


def way(valley: Valley) -> None:
    """Three named farmers; the third lives in another officer's village."""
    kijani, _ = valley.add_village("Kijani"), valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    give_password(valley)
    for phone, name in NAMES.items():
        valley.enrol(phone, village=2 if phone == ZAWADI else 1)
        with valley.house.store.work() as work:
            farmer = work.people.farmer(phone)
            assert farmer is not None
            work.people.save_farmer(replace(farmer, name=name))


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in()
    return found


@pytest.mark.parametrize(
    ("asked", "name"),
    [
        ("nguyen", "Amina Nguyễn"),
        ("hassan mwende", "Mwende Hassan"),
        ("hasan", "Mwende Hassan"),
        ("AMINA", "Amina Nguyễn"),
        ("00102", "Mwende Hassan"),
        ("0447700900101", "Amina Nguyễn"),
    ],
)
def test_a_person_is_found_as_they_are_spelt(browser: Browser, asked: str, name: str) -> None:
    """Without marks, in another order, with a letter missing, by a part of the number."""
    shown = browser.open(f"/find?q={asked}")
    others = [each for each in NAMES.values() if each != name]
    assert name in shown and not any(other in shown for other in others)


def test_a_village_is_found_and_what_is_not_in_sight_is_not(browser: Browser) -> None:
    """Neither its people nor its name."""
    assert "Kijani" in browser.open("/find?q=kija").split("Find")[-1]
    for asked in ("zawadi", "mwanga", "xyzzy"):
        assert "Nobody found" in browser.open(f"/find?q={asked}")
    assert "Nobody found" not in browser.open("/find")


def test_name_and_language_are_put_right(valley: Valley, browser: Browser) -> None:
    """What cannot be changes nothing, and the trail tells what was before."""
    browser.open("/farmers/1")
    shown = browser.send("/farmers/1/mend", name="Amina Said", village="1", language="sw")
    assert "It is corrected." in shown and "Amina Said" in shown
    with valley.house.store.look() as work:
        farmer = work.people.farmer(AMINA)
        assert farmer is not None and farmer.language == "sw"
        assert "Amina Nguyễn -> Amina Said" in work.audit.latest(1)[0].detail
    for wrong in ({"village": "2"}, {"language": "xx"}, {"name": "12"}):
        sent = {"name": "Amina", "village": "1", "language": "en", **wrong}
        assert "Nothing was changed" in browser.send("/farmers/1/mend", **sent)


def test_texts_are_stopped_by_word_of_mouth_after_a_tick(
    valley: Valley, browser: Browser
) -> None:
    """As if the farmer had sent STOP; START brings them back."""
    browser.open("/farmers/1")
    assert "Tick the box first" in browser.send("/farmers/1/stop")
    assert "Texts to this farmer are stopped" in browser.send("/farmers/1/stop", sure="on")
    with valley.house.store.look() as work:
        farmer = work.people.farmer(AMINA)
        assert farmer is not None and farmer.stopped_at is not None
    valley.text(AMINA, "START")
    with valley.house.store.look() as work:
        farmer = work.people.farmer(AMINA)
        assert farmer is not None and farmer.stopped_at is None


def test_a_call_and_a_nursery_are_opened_again(valley: Valley, browser: Browser) -> None:
    """What was closed by mistake waits again."""
    valley.plan(AMINA, "5 June")
    valley.text(AMINA, "OFFICER")
    valley.text(AMINA, "Come and see my seed")
    browser.open("/morning")
    browser.send("/deeds/do", deed="seen", line="call-1")
    assert "Reopen" in browser.open("/farmers/1")
    assert "Come and see my seed" in browser.send("/calls/1/reopen")
    browser.send("/nurseries/1/close", why="entered twice")
    assert "Reopen" in browser.words()
    assert "The nursery is open again" in browser.send("/nurseries/1/reopen")
    with valley.house.store.look() as work:
        bed = work.nurseries.get(1)
        assert bed is not None and not bed.closed


def test_nobody_elses_are_touched(browser: Browser) -> None:
    """They are not there."""
    browser.open("/morning")
    for path in ("/farmers/3/stop", "/calls/99/reopen", "/nurseries/99/reopen"):
        browser.send(path, sure="on")
        assert browser.page.status_code == 404, path
