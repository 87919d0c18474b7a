"""What is done from the list, for one and for those ticked, and the way back."""

from datetime import timedelta

import pytest

from assistant.channel import Fate, Handover
from assistant.service.waiting.page import spread
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, CODE, OFFICER, ZAWADI, Valley

MINUTE = timedelta(minutes=1)
BEDS = ["bed-1", "bed-2", "bed-3"]


def way(valley: Valley) -> None:
    """Three farmers whose beds nobody has answered for since day 5."""
    valley.add_officer(valley.add_village("Kijani"))
    give_password(valley)
    for phone in (AMINA, BARAKA, ZAWADI):
        valley.enrol(phone)
        valley.sow(phone, "1 June")
        valley.heard(phone)
    valley.go("7 Jun 06:30")


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in()
    return found


def _silent(shown: str) -> bool:
    return "No answer: uncover and flood" in shown


def _uncovered(valley: Valley) -> list[bool]:
    with valley.house.store.look() as work:
        beds = [work.nurseries.get(number) for number in (1, 2, 3)]
        return [bed.uncovered for bed in beds if bed]


def test_those_ticked_are_visited_with_one_form(valley: Valley, browser: Browser) -> None:
    """And come back within a minute, with all that the form changed."""
    assert _silent(browser.open("/morning"))
    with valley.house.store.look() as work:
        before = [work.events.of_nursery(number) for number in (1, 2, 3)]
    assert "Record 3 visits" in browser.send("/deeds", deed="visited", line=BEDS)
    shown = browser.send("/deeds/do", deed="visited", line=BEDS, on="2026-06-07", done="on")
    assert "3 visits are recorded." in shown and not _silent(shown)
    assert _uncovered(valley) == [True, True, True]
    assert "Undone." in browser.send("/deeds/1/undo")
    assert _silent(browser.open("/morning"))
    assert _uncovered(valley) == [False, False, False]
    with valley.house.store.look() as work:
        assert [work.events.of_nursery(number) for number in (1, 2, 3)] == before
        assert work.audit.latest(1)[0].act == "undid"


def test_after_a_minute_it_stands(valley: Valley, browser: Browser) -> None:
    """The button is gone, and whoever still sends it is told."""
    browser.open("/morning")
    shown = browser.send("/deeds/do", deed="visited", line=BEDS, on="2026-06-07")
    assert "Undo" in shown
    valley.leap(valley.now + MINUTE)
    assert "Undo" not in browser.open("/morning")
    assert "too late to undo" in browser.send("/deeds/1/undo")
    assert not _silent(browser.open("/morning"))


def test_a_deed_is_undone_once_and_by_who_did_it(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    """Another officer cannot."""
    other = "+447700900003"
    with valley.house.store.look() as work:
        village = work.people.villages()[0]
    valley.add_officer(village, phone=other)
    give_password(valley, other)
    browser.open("/morning")
    browser.send("/deeds/do", deed="visited", line=BEDS, on="2026-06-07")
    colleague = new_browser()
    colleague.sign_in(other)
    colleague.open("/morning")
    assert "too late" in colleague.send("/deeds/1/undo")
    assert "Undone." in browser.send("/deeds/1/undo")
    assert "too late" in browser.send("/deeds/1/undo")


@pytest.mark.parametrize(
    ("on", "said"),
    [("", "Enter the day"), ("2026-06-08", "in the future"), ("2026-01-01", "before")],
)
def test_a_day_that_cannot_be_changes_nothing(browser: Browser, on: str, said: str) -> None:
    """The form comes again with the same people ticked."""
    browser.open("/morning")
    shown = browser.send("/deeds/do", deed="visited", line=BEDS, on=on)
    assert said in shown and "Record 3 visits" in shown
    assert _silent(browser.open("/morning"))


def test_a_ring_answers_a_warning(valley: Valley, browser: Browser) -> None:
    """Who said on the phone that the bed is covered is counted so, until it Undone."""
    valley.text(BARAKA, "1")  # uncovered; a new bed of hers is young
    valley.plan(BARAKA, "7 June")
    valley.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    valley.text(OFFICER, "1")
    line = "bed-4"
    assert "not known to be covered" in browser.open("/morning")
    browser.send("/deeds/do", deed="rang", line=line, covered="on", note="Both covers are on")
    with valley.house.store.look() as work:
        assert work.warnings.tally(1).covered == 1
    assert "not known to be covered" not in browser.open("/morning")
    browser.send("/deeds/1/undo")
    with valley.house.store.look() as work:
        assert work.warnings.tally(1).covered == 0
    assert "not known to be covered" in browser.open("/morning")


def test_a_set_text_goes_in_the_farmers_language_and_can_be_taken_back(
    valley: Valley, browser: Browser
) -> None:
    """It waits a minute; what it takes stands beside it."""
    shown = browser.open("/deeds?deed=text&line=bed-1&line=bed-2")
    assert "I will come to you today." in shown and "2 phones: 2 segments" in shown
    shown = browser.send("/deeds/do", deed="text", line=BEDS, phrase="today")
    assert "3 texts go out in a minute" in shown
    assert valley.heard(AMINA)[-1:] != ["I will come"]
    assert "Undone." in browser.send("/deeds/1/undo")
    valley.leap(valley.now + MINUTE)
    assert not any("I will come" in text for text in valley.heard(AMINA))
    browser.open("/morning")
    browser.send("/deeds/do", deed="text", line=BEDS, phrase="today")
    valley.leap(valley.now + MINUTE)
    (text,) = [each for each in valley.heard(AMINA) if "I will come to you today." in each]
    assert text.startswith("From Asha, your officer: I will come to you today.")


def test_own_words_are_shown_with_their_cost_before_they_leave(browser: Browser) -> None:
    """Nothing leaves by looking."""
    browser.open("/morning")
    words = "Come to the meeting under the mango tree at nine. " * 3
    shown = browser.send("/deeds/do", deed="text", line=BEDS, words=words, look="yes")
    assert "3 phones: 6 segments" in shown and "mango" in shown
    assert "3 phones: 6 segments" in browser.send("/deeds/cost", line=BEDS, words=words)
    assert "texts leave" not in browser.open("/morning")
    assert "Choose a text" in browser.send("/deeds/do", deed="text", line=BEDS, words=" ")


def test_a_day_is_moved_for_those_ticked_after_it_was_shown(
    valley: Valley, browser: Browser
) -> None:
    """Before and after of each, with the text; undone, the old days stand again."""
    browser.open("/morning")
    beds = ["bed-1", "bed-2"]
    shown = browser.send("/deeds/do", deed="move", line=beds, day="2026-06-18", look="yes")
    assert "Transplanting:" in shown and "now Thu 18 Jun" in shown
    assert "Asha, your officer, changed your plan" in shown
    with valley.house.store.look() as work:
        before = work.nurseries.get(1)
    shown = browser.send("/deeds/do", deed="move", line=beds, day="2026-06-18", tell="on")
    assert "2 days are changed." in shown
    assert "Undone." in browser.send("/deeds/1/undo")
    valley.leap(valley.now + MINUTE)
    assert not any("changed your plan" in text for text in valley.heard(AMINA))
    with valley.house.store.look() as work:
        assert work.nurseries.get(1) == before


def test_a_day_that_cannot_be_is_said_for_that_bed(browser: Browser) -> None:
    """Far too late for these seedlings."""
    browser.open("/morning")
    shown = browser.send("/deeds/do", deed="move", line="bed-1", day="2026-09-18", look="yes")
    assert "far too early or too late" in shown
    shown = browser.send("/deeds/do", deed="move", line="bed-1", day="2026-09-18")
    assert "far too early or too late" in shown


def test_words_nobody_could_read_are_answered_from_the_list(
    valley: Valley, browser: Browser
) -> None:
    """One line a farmer; single words are not, nobody could answer them."""
    valley.text(AMINA, "xyzzy plugh frotz")
    valley.text(BARAKA, "xyzzy")
    shown = browser.open("/morning")
    words = shown.split("Texts that could not be understood")[-1]
    assert "xyzzy plugh frotz" in words and BARAKA not in words.split("Nurseries to see")[0]
    assert "Last messages" in browser.open("/deeds?deed=text&line=words-1")
    shown = browser.send("/deeds/do", deed="text", line="words-1", phrase="again")
    assert "Texts that could not be understood" not in shown
    assert "Undone." in browser.send("/deeds/1/undo")
    assert "Texts that could not be understood" in browser.open("/morning")


def test_a_number_that_texts_do_not_reach_is_on_the_list(
    valley: Valley, browser: Browser
) -> None:
    """After two refusals in a row, until somebody has seen it or one arrives."""
    valley.operator.answers = [Handover(Fate.FAILED, "not in use")] * 2
    for _ in range(2):
        valley.text(AMINA, "MENU")
    shown = browser.open("/morning")
    assert (
        "Numbers that texts do not reach" in shown and "2 texts in a row not delivered" in shown
    )
    shown = browser.send("/deeds/do", deed="seen", line="dead-1")
    assert "Numbers that texts do not reach" not in shown


def test_nothing_ticked_is_said(browser: Browser) -> None:
    """And what a deed is not for is named with why."""
    browser.open("/morning")
    assert "Tick somebody first" in browser.send("/deeds", deed="visited")
    shown = browser.send("/deeds", deed="seen", line="bed-1")
    assert "Cannot be done for these" in shown and "only after a visit or a phone call" in shown
    browser.open("/deeds?deed=text&line=bed-99")
    assert browser.page.status_code == 404
    browser.open("/deeds?deed=erase&line=bed-1")
    assert browser.page.status_code == 404


def test_the_list_can_be_ordered_by_reason_and_renewed_alone(browser: Browser) -> None:
    """The part that the script asks for is no whole page."""
    assert "Kijani" in browser.open("/morning?by=reason")
    part = browser.open("/morning?part=yes")
    assert "<html" not in browser.page.text and "Nurseries to see today" in part


def test_how_much_waits_stands_on_every_page(valley: Valley, browser: Browser) -> None:
    """For the menu, and for a page that stays open."""
    valley.text(AMINA, "OFFICER")
    valley.text(AMINA, "Come and see my seed")
    assert "Waiting for me 1 (1 waiting)" in browser.open("/villages")
    browser.open("/morning/counts")
    assert browser.page.get_json() == {"morning": 1, "warnings": 0}


def test_lines_are_shared_by_rank() -> None:
    """One for each kind, the rest to what can wait least."""
    assert spread({"a": 5, "b": 0, "c": 3, "d": 9}, 6) == {"a": 4, "b": 0, "c": 1, "d": 1}
    assert spread({"a": 1, "b": 2}, 9) == {"a": 1, "b": 2}
    assert spread({"a": 3, "b": 3, "c": 3}, 2) == {"a": 1, "b": 1, "c": 1}
