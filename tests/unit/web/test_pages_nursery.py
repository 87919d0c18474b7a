"""The page of a nursery: what it shows, and what an officer can do there."""

from dataclasses import replace

import pytest

from assistant.agronomy.work.costs import PriceList
from assistant.web.app import create_app
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, Valley


def way(valley: Valley) -> None:
    """The officer of the village, signed in; one bed was sown on the first of June."""
    valley.add_officer(valley.add_village("Kijani"))
    give_password(valley)
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    valley.round()
    valley.text(AMINA, "done")


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in()
    return found


def test_a_nursery_shows_its_plan_its_tasks_and_its_messages(
    valley: Valley, browser: Browser
) -> None:
    """Both ways, with what became of each text."""
    valley.go("6 Jun 07:00")
    valley.text(AMINA, "1")
    shown = browser.open("/nurseries/1")
    assert "Nursery A, day 5" in shown and "Field 0.4 ha" in shown
    assert "uncover and flood" in shown
    assert "on the phone at 06:00" in shown
    assert "from the farmer" in shown
    assert "kg" in shown[shown.index("Plan and quantities") :]


def test_a_nursery_shows_its_cost_where_prices_are_known(
    valley: Valley, new_browser: NewBrowser, browser: Browser
) -> None:
    """9.05 kg of seed for 0.4 ha at 85 % (see `tests.reference`), at 60 a kg: 543."""
    assert "Cost by this price list" not in browser.open("/nurseries/1")
    prices = PriceList("KES", 60.0, 1.0, 2.0, 1.0, 20.0, 50.0, 400.0)
    valley.house = replace(valley.house, prices=prices)
    app = create_app(valley.house, secret="w", wake=valley.send, clock=lambda: valley.now)
    found = Browser(app.test_client())
    found.sign_in()
    shown = found.open("/nurseries/1")
    assert "Cost by this price list, in KES" in shown and "Seed: 543" in shown
    assert "person-hours" in shown


def test_a_nursery_shows_its_story_whoever_told_it(valley: Valley, browser: Browser) -> None:
    """The farmer's word, the officer's page and the clock, the latest first."""
    valley.go("6 Jun 07:00")
    valley.text(AMINA, "1")
    browser.send(
        "/nurseries/1/dates", sow="2026-06-01", sown="on", transplanted_on="2026-06-06"
    )
    shown = browser.open("/nurseries/1")
    story = shown[shown.index("What happened") :]
    told = (
        "Sat 6 Jun: transplant: done (officer)",
        "Sat 6 Jun: uncover and flood: done (farmer)",
        "Mon 1 Jun: sow: done (farmer)",
    )
    places = [story.index(line) for line in told]
    assert places == sorted(places)


def test_a_visit_is_noted_with_what_was_seen(valley: Valley, browser: Browser) -> None:
    """It stays with the nursery under the officer's name."""
    browser.open("/nurseries/1")
    shown = browser.send("/nurseries/1/visit", on="2026-06-01", words="Cover is\nthin.")
    assert "The visit is recorded" in shown
    assert "Mon 1 Jun, Asha Cover is thin." in shown
    with valley.house.store.look() as work:
        done = work.audit.latest(1)[0]
    assert (done.officer, done.act, done.label) == ("Asha", "visited", "A")


def test_what_the_officer_saw_done_need_not_be_answered(
    valley: Valley, browser: Browser
) -> None:
    """The bed was uncovered on day 5, so it is neither asked again nor on the list."""
    valley.go("7 Jun 07:00")
    assert "Tick what you saw has been done: uncover and flood" in browser.open("/nurseries/1")
    browser.send("/nurseries/1/visit", on="2026-06-07", words="", done="uncover_flood")
    shown = browser.open("/nurseries/1")
    assert "Tick what you saw has been done" not in shown
    assert "uncovered, growing" in shown
    with valley.house.store.look() as work:
        nursery = work.nurseries.get(1)
    assert nursery is not None and nursery.uncovered


@pytest.mark.parametrize(
    ("on", "said"),
    [
        ("", "Enter the day"),
        ("2026-06-31", "2026-06-31 is no date here"),
        ("2026-06-02", "in the future"),
        ("2026-05-01", "before the plan"),
    ],
)
def test_a_visit_on_an_impossible_day_is_refused(browser: Browser, on: str, said: str) -> None:
    """Nothing is noted, and the page says why."""
    browser.open("/nurseries/1")
    shown = browser.send("/nurseries/1/visit", on=on, words="hello")
    assert said in shown and "No visits recorded yet" in shown


def test_changed_dates_move_the_calendar_and_the_farmer_is_told(
    valley: Valley, browser: Browser
) -> None:
    """Day 5 is asked five days after the sowing that the officer gave."""
    browser.open("/nurseries/1")
    shown = browser.send("/nurseries/1/dates", sow="2026-05-30", sown="on", tell="on")
    assert "the farmer is told" in shown and "Nursery A, day 2" in shown
    assert valley.heard(AMINA) == []  # for a minute it can be undone
    valley.go("1 Jun 08:02")
    heard = valley.heard(AMINA)
    assert len(heard) == 1
    assert heard[0].startswith("Asha, your officer, changed your plan:")
    assert "Sat 30 May" in heard[0]
    valley.go("4 Jun 07:00")
    assert any("Uncover" in text for text in valley.heard(AMINA))


def test_the_farmer_is_not_told_where_the_officer_says_so(
    valley: Valley, browser: Browser
) -> None:
    """The dates change all the same."""
    browser.open("/nurseries/1")
    browser.send("/nurseries/1/dates", sow="2026-05-31", sown="on", transplant="2026-06-17")
    assert valley.heard(AMINA) == []
    assert 'value="2026-06-17"' in browser.page.text


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"sow": "2026-06-09", "sown": "on"}, "cannot have been sown"),
        ({"uncovered_on": "2026-06-02"}, "one to fourteen days"),
        ({"transplant": "2026-06-03"}, "far too early or too late"),
        ({"transplanted_on": "2026-06-30"}, "must be after sowing"),
        ({}, "No date was changed"),
    ],
)
def test_days_that_cannot_be_are_refused(
    browser: Browser, fields: dict[str, str], said: str
) -> None:
    """Nothing moves, and the page says what cannot be."""
    browser.open("/nurseries/1")
    given = {"sow": "2026-06-01", "sown": "on", **fields}
    shown = browser.send("/nurseries/1/dates", **given)
    assert said in shown and "Nursery A, day 0" in shown


def test_a_closed_nursery_is_prompted_no_more(valley: Valley, browser: Browser) -> None:
    """It was lost; its story stays."""
    browser.open("/nurseries/1")
    assert "The nursery is closed" in browser.send("/nurseries/1/close", why="washed away")
    valley.go("7 Jun 07:00")
    assert valley.heard(AMINA) == []
    assert "closed" in browser.open("/farmers/1")


def test_an_officer_writes_to_a_farmer(valley: Valley, browser: Browser) -> None:
    """By a text in the farmer's language that names who wrote it."""
    browser.open("/nurseries/1")
    shown = browser.send("/nurseries/1/text/1", words="Meeting at\nthe school, 3 o'clock.")
    assert "Your text is on its way" in shown
    assert valley.heard(AMINA)[0].startswith(
        "From Asha, your officer: Meeting at the school, 3 o'clock."
    )


def test_a_text_names_only_a_nursery_of_that_farmer(valley: Valley, browser: Browser) -> None:
    """A form put together by hand mixes nobody up."""
    valley.enrol(BARAKA)
    browser.open("/nurseries/1")
    browser.send("/nurseries/1/text/2", words="hello")
    assert browser.page.status_code == 404
    assert valley.heard(BARAKA) == []


def test_a_nursery_can_be_read_in_every_stage(valley: Valley, browser: Browser) -> None:
    """From before sowing until after the last day."""
    for day in ("1 Jun", "3 Jun", "8 Jun", "17 Jun", "25 Jun"):
        valley.go(f"{day} 09:00")
        browser.sign_in()
        browser.open("/nurseries/1")
        assert browser.page.status_code == 200
    assert "overdue" in browser.words()


def test_only_the_last_messages_are_shown_unless_earlier_ones_are_asked_for(
    valley: Valley, browser: Browser
) -> None:
    """A season is sixty texts; an officer on a slow line wants what was said last."""
    valley.go("9 Jun 07:00")
    for words in ("OFFICER", "Come and see my seed"):
        valley.text(AMINA, words)
    browser.sign_in()
    for path in ("/nurseries/1", "/farmers/1"):
        shown = browser.open(path)
        assert (
            browser.page.text.count('<li class="in">')
            + browser.page.text.count('<li class="out">')
            == 6
        )
        assert "Come and see my seed" in shown and "Language? Lugha?" not in shown
        assert f'href="{path}?whole=yes#messages"' in browser.page.text
        shown = browser.open(f"{path}?whole=yes")
        assert "Language? Lugha?" in shown and "Earlier messages" not in shown


def test_a_counted_leaf_stands_beside_its_task(valley: Valley, browser: Browser) -> None:
    """As a number, in the list of tasks."""
    for day in range(2, 13):
        valley.go(f"{day} Jun 07:00")
        if day == 6:
            valley.text(AMINA, "1")
    valley.go("13 Jun 07:00")
    valley.text(AMINA, "2.5")
    browser.sign_in()
    assert "Open leaves counted: 2.5" in browser.open("/nurseries/1")
