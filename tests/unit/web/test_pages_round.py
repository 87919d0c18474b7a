"""My round: villages, whom to see there and why, and notes that may come twice."""

import re

import pytest

from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, Valley


def way(valley: Valley) -> None:
    """Two villages with a silent bed each."""
    kijani, mwanga = valley.add_village("Kijani"), valley.add_village("Mto Mwanga")
    valley.add_officer(kijani, mwanga)
    give_password(valley)
    for number, phone in enumerate((AMINA, BARAKA), start=1):
        valley.enrol(phone, village=number)
        valley.sow(phone, "1 June")
    valley.text(AMINA, "what is this thing you said")
    valley.go("7 Jun 06:30")


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in()
    return found


def test_the_villages_of_the_round_are_chosen(browser: Browser) -> None:
    """All that somebody waits in, unless some are ticked; with the last words of each."""
    shown = browser.open("/round")
    assert AMINA in shown and BARAKA in shown
    assert "Last text: what is this thing you said" in shown
    only = browser.open("/round?village=2")
    assert BARAKA in only and AMINA not in only
    assert "No answer: uncover and flood" in only


def test_a_note_that_comes_twice_is_taken_once(valley: Valley, browser: Browser) -> None:
    """The answer to the first may have been lost on the way to the phone."""
    browser.open("/round")
    key = re.search(r'name="key" value="(\w+)"', browser.page.text)
    assert key is not None
    note = {"line": "bed-1", "key": key[1], "on": "2026-06-07", "note": "Up and green"}
    for _ in range(2):
        assert "The note is saved." in browser.send("/round/notes", **note)
    with valley.house.store.look() as work:
        assert len(work.story.visits([1])) == 1


def test_a_note_that_was_wrong_may_come_again_mended(valley: Valley, browser: Browser) -> None:
    """Its name is not used up."""
    browser.open("/round")
    note = {"line": "bed-1", "key": "a", "note": "Up"}
    assert "in the future" in browser.send("/round/notes", on="2026-07-07", **note)
    assert "The note is saved." in browser.send("/round/notes", on="2026-06-07", **note)
    with valley.house.store.look() as work:
        assert len(work.story.visits([1])) == 1


def test_a_call_is_closed_by_a_note(valley: Valley, browser: Browser) -> None:
    """What was done stays in the farmer's story."""
    valley.text(AMINA, "OFFICER")
    valley.text(AMINA, "Come and see my seed")
    assert "Come and see my seed" in browser.open("/round")
    browser.send("/round/notes", line="call-1", key="b", note="Went there")
    browser.open("/round")
    assert 'value="call-1"' not in browser.page.text
    browser.send("/round/notes", line="bed-99", key="c", on="2026-06-07")
    assert "could not be saved" in browser.words()
