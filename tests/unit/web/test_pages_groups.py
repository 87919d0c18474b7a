"""A call given to a colleague, words that go out later, and an officer's own groups."""

import re

import pytest

from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, LEAD, OFFICER, ZAWADI, Valley

COLLEAGUE = "+447700900003"
SECOND = "2"  # the colleague's id


def way(valley: Valley) -> None:
    """Two villages with an officer each; Amina of the first one asks for help."""
    kijani, mto = valley.add_village("Kijani"), valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    valley.add_officer(mto, phone=COLLEAGUE)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, COLLEAGUE, LEAD):
        give_password(valley, phone)
    for phone, village in ((AMINA, 1), (BARAKA, 1), (ZAWADI, 2)):
        valley.enrol(phone, village=village)
    valley.text(AMINA, "OFFICER")
    valley.text(AMINA, "the mats are turning white")
    valley.go("7 Jun 09:00")
    valley.heard(AMINA)


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Asha, signed in where the way ends."""
    found = new_browser()
    found.come_in()
    return found


@pytest.fixture
def other(new_browser: NewBrowser) -> Browser:
    """Her colleague."""
    found = new_browser()
    found.come_in(COLLEAGUE)
    return found


WORDS = "the mats are turning white"


# --- a call for a colleague ------------------------------------------------------------------


def test_a_call_is_given_to_a_colleague_and_both_see_it(
    browser: Browser, other: Browser
) -> None:
    assert WORDS not in other.open("/morning")
    assert "Give this to" in browser.open("/deeds?deed=hand&line=call-1")
    shown = browser.send("/deeds/do", deed="hand", line="call-1", to=SECOND)
    assert "1 call is with your colleague." in shown and WORDS in shown
    for each in (browser, other):
        shown = each.open("/morning")
        assert WORDS in shown and "gave this to" in shown


def test_within_a_minute_it_comes_back(browser: Browser, other: Browser) -> None:
    browser.open("/morning")
    browser.send("/deeds/do", deed="hand", line="call-1", to=SECOND)
    assert "Undone." in browser.send("/deeds/1/undo")
    assert "gave this to" not in browser.open("/morning")
    assert WORDS not in other.open("/morning")


def test_a_colleague_answers_it_and_it_is_closed_for_both(
    valley: Valley, browser: Browser, other: Browser
) -> None:
    browser.open("/morning")
    browser.send("/deeds/do", deed="hand", line="call-1", to=SECOND)
    other.open("/morning")
    other.send("/deeds/do", deed="text", line="call-1", words="Keep the water on the bed")
    valley.go("7 Jun 09:05")
    assert any("Keep the water on the bed" in text for text in valley.heard(AMINA))
    for each in (browser, other):
        assert WORDS not in each.open("/morning")


def test_the_board_of_calls_counts_it_with_the_colleague(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    from assistant.service.desk.answering import answering

    def opened() -> list[int]:
        with valley.house.store.look() as work:
            officers = work.people.officers()
            found = answering(work, officers, valley.now)
            return [found[number].open for number in (1, 2)]

    assert opened() == [1, 0]
    browser.open("/morning")
    browser.send("/deeds/do", deed="hand", line="call-1", to=SECOND)
    assert opened() == [0, 1]


@pytest.mark.parametrize("to", ["", "1", "99", "x"])
def test_a_call_is_given_to_nobody_but_another_officer(browser: Browser, to: str) -> None:
    """Not to oneself, nor to who is not there."""
    browser.open("/morning")
    browser.send("/deeds/do", deed="hand", line="call-1", to=to)
    assert "gave this to" not in browser.open("/morning")


def test_a_nursery_is_given_to_nobody(valley: Valley, browser: Browser) -> None:
    valley.sow(BARAKA, "1 June")
    browser.open("/morning")
    assert "not a call for help" in browser.send("/deeds", deed="hand", line="bed-1")


# --- later -----------------------------------------------------------------------------------


def test_words_go_out_on_the_day_and_at_the_hour_that_were_chosen(
    valley: Valley, browser: Browser
) -> None:
    browser.open("/morning")
    shown = browser.send(
        "/deeds/do",
        deed="text",
        line="call-1",
        words="I come by today",
        later_day="2026-06-09",
        later_hour="14",
    )
    assert "1 text goes out at the hour you chose." in shown
    assert "waits until Tue 9 Jun, 14:00" in browser.open("/sent")
    valley.go("9 Jun 13:59")
    assert not any("I come by today" in text for text in valley.heard(AMINA))
    valley.go("9 Jun 14:01")
    assert any("I come by today" in text for text in valley.heard(AMINA))


def test_until_then_they_can_be_taken_back(valley: Valley, browser: Browser) -> None:
    browser.open("/morning")
    words = {"deed": "text", "line": "call-1", "words": "I come by today"}
    browser.send("/deeds/do", **words, later_day="2026-06-09", later_hour="14")
    shown = browser.open("/sent")
    message = re.search(r"/sent/([\w-]+)", browser.page.text)
    assert message is not None and "Take it back" in shown
    browser.send(f"/sent/{message[1]}")
    valley.go("9 Jun 15:00")
    assert not any("I come by today" in text for text in valley.heard(AMINA))


@pytest.mark.parametrize(("day", "hour"), [("2026-06-07", "8"), ("2026-07-07", "8")])
def test_an_hour_that_cannot_be_is_told(browser: Browser, day: str, hour: str) -> None:
    browser.open("/morning")
    words = {"deed": "text", "line": "call-1", "words": "I come by today"}
    shown = browser.send("/deeds/do", **words, later_day=day, later_hour=hour)
    assert "That hour has passed, or is more than two weeks away" in shown


def test_a_cry_for_help_is_answered_at_once(valley: Valley, browser: Browser) -> None:
    """It is closed by the answer, so no answer of it waits for another day."""
    valley.text(BARAKA, "my son was bitten by a snake")
    valley.heard(BARAKA)
    shown = browser.open("/deeds?deed=text&line=call-2")
    assert "Answer" in shown and "When it goes out" not in shown
    browser.open("/morning")
    words = {"deed": "text", "line": "call-2", "words": "I come now"}
    browser.send("/deeds/do", **words, later_day="2026-06-09", later_hour="14")
    valley.go("7 Jun 09:02")
    assert any("I come now" in text for text in valley.heard(BARAKA))


# --- own groups ------------------------------------------------------------------------------


def test_farmers_are_kept_under_a_name_and_written_to(valley: Valley, browser: Browser) -> None:
    browser.open("/farmers")
    shown = browser.send("/groups", name="Seed growers", farmer=["1"], back="/farmers")
    assert "1 farmer is in the group Seed growers now." in shown
    shown = browser.send("/groups", name="seed GROWERS", farmer=["1", "2"], back="/farmers")
    assert "2 farmers are in the group Seed growers now." in shown
    browser.send("/groups/1/out", farmer=["2"])
    assert "Seed growers, 1 farmer" in browser.open("/broadcasts?group=1")
    shown = browser.send("/broadcasts", words="Seed comes on Monday", group="1")
    assert "To the group Seed growers" in shown and "Send to 1 phone" in shown
    browser.send("/broadcasts/1/send")
    valley.send()
    assert any("Seed comes on Monday" in text for text in valley.heard(AMINA))
    assert not any("Seed comes" in text for text in valley.heard(BARAKA))


def test_many_are_written_to_at_an_hour_that_was_chosen(
    valley: Valley, browser: Browser
) -> None:
    browser.open("/broadcasts")
    later = {"later_day": "2026-06-09", "later_hour": "14"}
    shown = browser.send("/broadcasts", words="Seed comes on Monday", village="1", **later)
    assert "It goes out on Tue 9 Jun at 14:00." in shown
    browser.send("/broadcasts/1/send")
    valley.go("9 Jun 13:59")
    assert not any("Seed comes" in text for text in valley.heard(BARAKA))
    valley.go("9 Jun 14:01")
    assert any("Seed comes" in text for text in valley.heard(BARAKA))


def test_a_group_that_is_gone_reaches_nobody(browser: Browser) -> None:
    browser.open("/farmers")
    browser.send("/groups", name="Seed growers", farmer=["1"], back="/farmers")
    browser.send("/broadcasts", words="Seed comes on Monday", group="1")
    assert "The group Seed growers is deleted." in browser.send("/groups/1/drop")
    shown = browser.open("/broadcasts/1")
    assert "The group is deleted." in shown and "Nobody would get it" in shown


def test_a_group_is_its_officers_alone(browser: Browser, other: Browser) -> None:
    browser.open("/farmers")
    browser.send("/groups", name="Seed growers", farmer=["1"], back="/farmers")
    assert "Seed growers" not in other.open("/groups")
    for path in ("/groups/1/drop", "/groups/1/out"):
        other.send(path, farmer="1")
        assert other.page.status_code == 404
    assert "Seed growers" in browser.open("/groups")


def test_a_farmer_out_of_sight_is_in_no_group(browser: Browser) -> None:
    browser.open("/farmers")
    shown = browser.send("/groups", name="Seed growers", farmer=["3"], back="/farmers")
    assert "is in the group" not in shown


def test_a_group_needs_a_name_and_somebody(browser: Browser) -> None:
    browser.open("/farmers")
    assert "Give the group a name." in browser.send(
        "/groups", name=" ", farmer=["1"], back="/farmers"
    )
    assert "Tick somebody first." in browser.send("/groups", name="Seed", back="/farmers")
