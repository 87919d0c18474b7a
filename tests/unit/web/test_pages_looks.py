"""Who looks at people stands in the trail; whole numbers are for who rings them."""

from dataclasses import replace
from datetime import timedelta

from assistant.web.app import create_app
from assistant.web.looks import THROUGH
from assistant.wording import messages_web_brakes as bk
from assistant.wording import messages_web_privacy as v
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import (
    AMINA,
    BARAKA,
    KIJANI,
    LEAD,
    MWANGA,
    OFFICER,
    ZAWADI,
    Valley,
    settle,
)

NAME = "Amina Juma"
END = f"…{AMINA[-4:]}"
# Pages of one person keep whom they show; files that are taken keep that they were.
OF_ONE = {"nursery.farmer", "nursery.nursery", "mending.pair"}
TAKEN = {
    "calendar_files.mine",
    "calendar_files.village",
    "programme.file",
    "results.as_csv",
    "results.as_xlsx",
}
OF_NOBODY = {  # no farmer stands there by name, number or words
    "account.account",
    "account.factor",
    "account.password",
    "alerts.alert",
    "alerts.alerts",
    "alerts.raw",
    "brakes.brakes",
    "broadcasts.broadcast",
    "broadcasts.broadcasts",
    "door.further",
    "door.sign_in",
    "farmers.enrol",
    "health",
    "lines.shown",
    "lists.columns",  # the officer's own file, before it is taken in
    "lists.example",
    "lists.lists",
    "messages.months",
    "morning.counted",
    "morning.start",  # sends on to the morning
    "officers.officers",
    "officers.one",
    "programme.shown",
    "questions.form",
    "questions.shown",
    "ready",
    "rounds.worker",
    "settings.shown",
    "static",
    "trail.trail",
    "villages.village",
    "villages.villages",
    "warnings.warnings",
}


def way(valley: Valley) -> None:
    """An officer serves Kijani, a lead all; Baraka is in a village that nobody else serves,
    Zawadi has no name."""
    settle(valley)
    valley.add_officer(KIJANI)
    valley.add_officer(phone=LEAD, lead=True)
    for phone, village in ((AMINA, KIJANI), (ZAWADI, KIJANI), (BARAKA, MWANGA)):
        valley.enrol(phone, village=village.id)
    valley.sow(AMINA, "31 May")
    with valley.house.store.work() as work:
        farmer = work.people.farmer(AMINA)
        assert farmer is not None
        work.people.save_farmer(replace(farmer, name=NAME))


def _signed_in(valley: Valley, new_browser: NewBrowser, phone: str) -> Browser:
    valley.house = replace(valley.house, second_factor=False)
    give_password(valley, phone)
    browser = new_browser()
    browser.sign_in(phone)
    return browser


def _id(valley: Valley, phone: str = AMINA) -> int:
    with valley.house.store.look() as work:
        farmer = work.people.farmer(phone)
    assert farmer is not None
    return farmer.id


def _looks(valley: Valley) -> list[tuple[str, str | None, str]]:
    acts = ("looked", "looked_through", "number_shown")
    with valley.house.store.look() as work:
        done = work.audit.latest(100, acts=acts)
    return [(each.act, each.farmer, each.detail) for each in reversed(done)]


# --- the trail -------------------------------------------------------------------------------


def test_each_page_shows_nobody_or_keeps_who_looks(valley: Valley) -> None:
    """A page that is added must be put where it belongs."""
    app = create_app(valley.house, secret="wire", wake=valley.send, clock=lambda: valley.now)
    pages = {
        rule.endpoint for rule in app.url_map.iter_rules() if "GET" in (rule.methods or ())
    }
    assert pages == THROUGH | OF_ONE | TAKEN | OF_NOBODY


def test_who_looks_at_a_farmer_stands_in_the_trail_once_a_day(
    valley: Valley, new_browser: NewBrowser
) -> None:
    """By name, with the officer; a page of many by its address, without what was searched."""
    browser = _signed_in(valley, new_browser, OFFICER)
    before = len(_looks(valley))
    for _ in range(2):
        browser.open(f"/farmers/{_id(valley)}")
        browser.open("/farmers?search=amina")
        browser.open("/find?q=amina")
    wanted = [
        ("looked", NAME, ""),
        *(("looked_through", None, at) for at in ("/farmers", "/find")),
    ]
    assert _looks(valley)[before:] == wanted
    valley.now += timedelta(days=1)
    browser.open(f"/farmers/{_id(valley)}")
    assert _looks(valley)[-1] == ("looked", NAME, "")
    assert sum(each[0] == "looked" for each in _looks(valley)) == 2


def test_who_is_not_let_in_leaves_no_look(valley: Valley, new_browser: NewBrowser) -> None:
    """Signed out, or where the farmer is not in sight."""
    browser = new_browser()
    browser.open("/farmers")
    assert _looks(valley) == []
    browser = _signed_in(valley, new_browser, OFFICER)
    browser.open(f"/farmers/{_id(valley, BARAKA)}")
    assert browser.page.status_code == 404
    assert [each for each in _looks(valley) if each[0] == "looked"] == []


def test_the_trail_shows_looks_where_they_are_asked_for(
    valley: Valley, new_browser: NewBrowser
) -> None:
    """Else what was done would drown in them."""
    browser = _signed_in(valley, new_browser, LEAD)
    browser.open(f"/farmers/{_id(valley)}")
    words = bk.ACT_LOOKED.text
    assert words not in browser.open("/trail")
    assert words in browser.open("/trail?looks=yes")


# --- numbers ---------------------------------------------------------------------------------


def test_a_lead_sees_the_end_of_a_number_that_another_officer_rings(
    valley: Valley, new_browser: NewBrowser
) -> None:
    """In lists, on the farmer's own page, in the trail and among messages."""
    browser = _signed_in(valley, new_browser, LEAD)
    pages = ("/farmers", f"/farmers/{_id(valley)}", "/find?q=amina", "/nurseries/1")
    for page in pages:
        browser.open(page)
        assert browser.page.status_code == 200
        assert AMINA not in browser.page.text and END in browser.page.text, page
    for page in ("/messages", "/messages?which=heard", "/trail?looks=yes", "/season", "/round"):
        browser.open(page)
        for phone in (AMINA, ZAWADI):
            assert phone not in browser.page.text, page


def test_the_whole_number_is_shown_on_asking_and_that_is_kept(
    valley: Valley, new_browser: NewBrowser
) -> None:
    """Once: the next page has its end again."""
    browser = _signed_in(valley, new_browser, LEAD)
    farmer = _id(valley)
    assert v.SHOW_NUMBER.text in browser.open(f"/farmers/{farmer}")
    browser.send(f"/farmers/{farmer}/shown-number")
    assert f'href="tel:{AMINA}"' in browser.page.text
    assert _looks(valley)[-1] == ("number_shown", NAME, "")
    browser.open(f"/farmers/{farmer}")
    assert AMINA not in browser.page.text


def test_who_serves_a_village_sees_numbers_to_ring(
    valley: Valley, new_browser: NewBrowser
) -> None:
    """Its officer; a lead where nobody else does, and whoever is called for help."""
    officer = _signed_in(valley, new_browser, OFFICER)
    officer.open("/farmers")
    assert f'href="tel:{AMINA}"' in officer.page.text
    lead = _signed_in(valley, new_browser, LEAD)
    lead.open("/farmers")
    assert f'href="tel:{BARAKA}"' in lead.page.text
    valley.text(AMINA, "a snake has bitten my son")
    lead.open("/morning")
    assert f'href="tel:{AMINA}"' in lead.page.text


def test_only_in_sight_is_a_number_shown(valley: Valley, new_browser: NewBrowser) -> None:
    """Nothing is kept of it either."""
    browser = _signed_in(valley, new_browser, OFFICER)
    browser.send(f"/farmers/{_id(valley, BARAKA)}/shown-number")
    assert browser.page.status_code == 404
    assert [each for each in _looks(valley) if each[0] == "number_shown"] == []
