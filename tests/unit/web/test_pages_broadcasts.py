"""Writing to many farmers: whom it reaches, what it costs, and that it is sent once."""

from dataclasses import replace
from decimal import Decimal

import pytest

from assistant.channel import Tariff
from assistant.web.app import create_app
from assistant.wording import messages_officer as o
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, OFFICER, ZAWADI, Valley, like

OTHER_OFFICER = "+447700900003"
TATU = "+447700900104"
WORDS = "Seed arrives on Friday at ten, at the mill."


def way(valley: Valley) -> None:
    """In Kijani Amina is on day 2, Baraka (Swahili) sows in a week, Tatu has no nursery; in Mto
    Mwanga, which another officer serves, Zawadi is on day 2."""
    kijani, mwanga = valley.add_village("Kijani"), valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    valley.add_officer(mwanga, phone=OTHER_OFFICER)
    give_password(valley)
    give_password(valley, OTHER_OFFICER)
    valley.enrol(AMINA)
    valley.sow(AMINA, "30 May")
    valley.enrol(BARAKA, language=2)
    valley.plan(BARAKA, "8 June")
    valley.enrol(TATU)
    valley.enrol(ZAWADI, village=2)
    valley.sow(ZAWADI, "30 May")
    for phone in (AMINA, BARAKA, TATU, ZAWADI):
        valley.heard(phone)


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in()
    found.open("/broadcasts")
    return found


REACHED = {
    "all": {AMINA, BARAKA, TATU},
    "before": {BARAKA},
    "young": {AMINA},
    "growing": set(),
    "ready": set(),
}


@pytest.mark.parametrize(("stage", "reached"), REACHED.items(), ids=REACHED.keys())
def test_it_goes_to_the_beds_of_a_stage(
    valley: Valley, browser: Browser, stage: str, reached: set[str]
) -> None:
    """Each phone once; nobody of another officer's village."""
    shown = browser.send("/broadcasts", all="on", stage=stage, words=WORDS)
    assert f"Phones {len(reached)}" in shown
    assert ("Nobody would get it." in shown) is not bool(reached)
    browser.send("/broadcasts/1/send")
    heard = {
        phone
        for phone in (AMINA, BARAKA, TATU, ZAWADI)
        if any(WORDS in text for text in valley.heard(phone))
    }
    assert heard == reached


AGES = {"1 Jun": "young", "5 Jun": "growing", "17 Jun": "ready"}


@pytest.mark.parametrize(("day", "stage"), AGES.items(), ids=AGES.keys())
def test_a_bed_moves_from_stage_to_stage(
    valley: Valley, browser: Browser, day: str, stage: str
) -> None:
    """Amina sowed on 30 May: day 2, day 6, and day 18, within the 15 to 20 of a mat nursery."""
    valley.leap(f"{day} 09:00")
    shown = browser.send("/broadcasts", all="on", stage=stage, words=WORDS)
    assert "Phones 0" not in shown


def test_the_text_is_shown_as_it_arrives_with_its_cost(
    valley: Valley, browser: Browser
) -> None:
    """In each language; at 0.80 for a segment, three phones of one each."""
    valley.house = replace(valley.house, tariff=Tariff(Decimal("0.80"), "KES"))
    app = create_app(valley.house, secret="w", wake=valley.send, clock=lambda: valley.now)
    app.testing = True
    officer = Browser(app.test_client())
    officer.sign_in()
    officer.open("/broadcasts")
    shown = officer.send("/broadcasts", village="1", words=WORDS)
    assert f"From Asha, your officer: {WORDS} To answer, send OFFICER." in shown
    assert "sw:From Asha" in shown
    assert "Segments 3" in shown and "2.40" in shown
    shown = officer.send("/broadcasts/1/send")
    assert "On the phone: 3" in shown and "Phones 3" in shown
    assert "Segments 3" in shown and "2.40" in shown


def test_what_was_taken_back_costs_nothing(valley: Valley, browser: Browser) -> None:
    """Nor what never left; what waits will cost."""
    browser.send("/broadcasts", village="1", words=WORDS)
    valley.operator.down = True
    assert "Segments 3" in browser.send("/broadcasts/1/send")
    assert "Segments 0" in browser.send("/broadcasts/1/take-back")


def test_letters_that_cost_more_are_told(browser: Browser) -> None:
    """One Hindi letter makes a text UCS-2 (3GPP TS 23.038, 6.2.3): 67 letters a segment."""
    shown = browser.send("/broadcasts", village="1", words=WORDS + " बीज")
    assert "each segment holds 67 letters" in shown
    assert "Segments 6" in shown
    assert "67 letters" not in browser.send("/broadcasts", village="1", words=WORDS)


def test_it_is_sent_once_however_often_it_is_confirmed(
    valley: Valley, browser: Browser
) -> None:
    """And it stands in the trail with its words."""
    browser.send("/broadcasts", village="1", words=WORDS)
    assert "Your text is on its way." in browser.send("/broadcasts/1/send")
    assert "This was already sent." in browser.send("/broadcasts/1/send")
    assert valley.heard(AMINA) == [like(o.FROM_OFFICER(officer="Asha", words=WORDS))]
    assert "On the phone: 3" in browser.open("/broadcasts/1")
    with valley.house.store.look() as work:
        line = work.audit.latest(1)[0]
    assert (line.act, line.village, line.detail) == ("broadcast", "Kijani", WORDS)


def test_who_stopped_or_has_not_agreed_is_left_out(valley: Valley, browser: Browser) -> None:
    """The page says how many."""
    valley.text(AMINA, "STOP")
    with valley.house.store.work() as work:
        tatu = work.people.farmer(TATU)
        assert tatu is not None
        work.people.save_farmer(replace(tatu, consent_at=None))
    valley.heard(AMINA)
    shown = browser.send("/broadcasts", village="1", words=WORDS)
    assert "Phones 1" in shown and "2 farmers are left out" in shown
    browser.send("/broadcasts/1/send")
    assert valley.heard(AMINA) == valley.heard(TATU) == []


def test_at_night_it_waits_and_can_be_taken_back(valley: Valley, browser: Browser) -> None:
    """Nobody is woken by a meeting."""
    valley.go("1 Jun 22:00")
    for phone in (AMINA, BARAKA, TATU):
        valley.heard(phone)
    assert "It goes out at 05:30" in browser.send("/broadcasts", village="1", words=WORDS)
    assert "goes out at 05:30" in browser.send("/broadcasts/1/send")
    assert "Waiting here: 3" in browser.words()
    assert valley.heard(TATU) == []
    assert "3 texts were taken back." in browser.send("/broadcasts/1/take-back")
    valley.leap("2 Jun 05:31")
    assert valley.heard(TATU) == []


def test_words_are_data_whatever_is_typed(valley: Valley, browser: Browser) -> None:
    """No slot, no markup, no format."""
    words = "100% {words} %s {0.__class__} <b>now</b>"
    browser.send("/broadcasts", village="1", words=words)
    assert "<b>now" not in browser.page.text
    browser.send("/broadcasts/1/send")
    assert words in valley.heard(TATU)[0]


WRONG = {
    "no words": ({"village": "1", "words": "  "}, "Write some words first."),
    "too long": ({"village": "1", "words": "w" * 301}, "at most 300 characters"),
    "no village": ({"words": WORDS}, "Tick a village."),
    "a village of others": ({"village": "2", "words": WORDS}, "Tick a village."),
}


@pytest.mark.parametrize(("fields", "told"), WRONG.values(), ids=WRONG.keys())
def test_a_form_that_is_wrong_says_why_and_loses_nothing(
    browser: Browser, fields: dict[str, str], told: str
) -> None:
    """The words stand there still."""
    shown = browser.send("/broadcasts", **fields)
    assert browser.page.status_code == 422 and told in shown
    assert fields["words"].strip() in browser.page.text


def test_it_can_be_changed_before_it_goes(browser: Browser) -> None:
    """The form is filled in as it was."""
    browser.send("/broadcasts", village="1", stage="before", words=WORDS)
    browser.open("/broadcasts?like=1")
    for part in ('value="1" checked', 'value="before" selected', WORDS):
        assert part in browser.page.text


def test_another_officers_broadcast_is_not_there(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    """Neither to see nor to send."""
    browser.send("/broadcasts", village="1", words=WORDS)
    other = new_browser()
    other.sign_in(OTHER_OFFICER)
    other.open("/broadcasts/1")
    assert other.page.status_code == 404
    other.open("/broadcasts")
    for deed in ("send", "take-back"):
        other.send(f"/broadcasts/1/{deed}")
        assert other.page.status_code == 404
    assert valley.heard(AMINA) == []
    assert OFFICER not in other.words()
