"""Officers and their accounts, as a lead gives and ends them."""

import re
from datetime import timedelta

import pytest

from tests.unit.web.conftest import PASSWORD, Browser, NewBrowser, give_password
from tests.valley import AMINA, LEAD, OFFICER, Valley

NEW = "+447700900009"
_SECRETS = re.compile(r"<code>([^<]+)</code>")


def way(valley: Valley) -> None:
    """Asha of Kijani is officer 1, the lead is officer 2; two villages."""
    kijani = valley.add_village("Kijani")
    valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, LEAD):
        give_password(valley, phone)


@pytest.fixture
def lead(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in(LEAD)
    found.open("/officers")
    return found


def _secrets(browser: Browser) -> list[str]:
    return _SECRETS.findall(browser.page.text)


def test_a_one_time_password_is_shown_once_and_opens_the_page(
    valley: Valley, lead: Browser, new_browser: NewBrowser
) -> None:
    """It stands on no other page, in no cookie and in no log line; the old one ends."""
    asha = new_browser()
    asha.sign_in(OFFICER)
    lead.send("/officers/1/password")
    (once,) = _secrets(lead)
    assert re.fullmatch(r"[a-z2-9]{4}(-[a-z2-9]{4}){2}", once)
    assert "Set-Cookie" not in lead.page.headers or once not in lead.page.headers["Set-Cookie"]
    assert lead.page.headers["Cache-Control"] == "no-store"
    for path in ("/officers", "/officers/1", "/trail"):
        assert once not in lead.open(path)
    assert "gave a one-time password Asha, " + OFFICER in lead.open("/trail")
    assert "Sign in" in asha.open("/morning")
    assert "or the password is wrong" in asha.sign_in(OFFICER, PASSWORD)
    assert "Choose your own password" in asha.sign_in(OFFICER, once)


def test_an_officer_is_added_with_a_code_and_a_password(
    valley: Valley, lead: Browser, new_browser: NewBrowser
) -> None:
    """Both work: the page with one, a text with the other."""
    lead.send("/officers", phone=NEW, name="  Halima  Said ", village="2", language="en")
    password, code = _secrets(lead)
    assert re.fullmatch(r"\d{6}", code)
    halima = new_browser()
    assert "Choose your own password" in halima.sign_in(NEW, password)
    (answer,) = valley.text(NEW, f"WHO {code}")
    assert "code" not in answer.lower()
    shown = lead.open("/officers")
    assert "Halima Said" in shown and "one-time password, until Mon 8 Jun" in shown


UNFIT = {
    "no name": ({"name": " ", "phone": NEW, "village": "1"}, "Enter a name"),
    "no number": ({"name": "x", "phone": "12", "village": "1"}, "not a phone number"),
    "known": ({"name": "x", "phone": OFFICER, "village": "1"}, "already belongs to an officer"),
    "no village": ({"name": "x", "phone": NEW}, "Tick a village"),
    "a village that is none": ({"name": "x", "phone": NEW, "village": "99"}, "Tick a village"),
}


@pytest.mark.parametrize(("fields", "said"), UNFIT.values(), ids=UNFIT.keys())
def test_an_officer_who_is_not_whole_is_not_added(
    valley: Valley, lead: Browser, fields: dict[str, str], said: str
) -> None:
    """The page says what is wanting, and nobody's code is changed."""
    assert said in lead.send("/officers", **fields)
    with valley.house.store.look() as work:
        assert len(work.people.officers()) == 2


def test_a_new_code_ends_the_old(valley: Valley, lead: Browser) -> None:
    """By text."""
    lead.send("/officers/1/code")
    (code,) = _secrets(lead)
    assert any("code" in text for text in valley.text(OFFICER, "WHO 246810"))
    assert valley.text(OFFICER, f"WHO {code}")


def test_villages_are_given_and_taken(
    valley: Valley, lead: Browser, new_browser: NewBrowser
) -> None:
    """The officer sees the new ones at once."""
    assert "Asha&#39;s villages are changed" in lead.send("/officers/1/villages", village="2")
    asha = new_browser()
    asha.sign_in(OFFICER)
    shown = asha.open("/villages")
    assert "Mto Mwanga" in shown and "Kijani" not in shown


def test_a_closed_account_has_no_way_in(
    valley: Valley, lead: Browser, new_browser: NewBrowser
) -> None:
    """Not by the page, not by an open session, not by text; it can be added again."""
    asha = new_browser()
    asha.sign_in(OFFICER)
    assert "Tick the box first" in lead.send("/officers/1/close")
    assert "The account of Asha is closed" in lead.send("/officers/1/close", sure="on")
    assert "Sign in" in asha.open("/morning")
    assert "or the password is wrong" in asha.sign_in(OFFICER)
    assert "RAIN" not in str(valley.text(OFFICER, "WHO 246810"))
    assert "closed an officer" in lead.open("/trail")
    lead.open("/officers/1")
    assert lead.page.status_code == 404
    lead.send("/officers", phone=OFFICER, name="Asha", village="1")
    assert len(_secrets(lead)) == 2


def test_a_lead_does_not_lock_themselves_out(valley: Valley, lead: Browser) -> None:
    """Neither by a new password nor by closing their own account."""
    for deed in ("password", "close"):
        assert "That is your own account" in lead.send(f"/officers/2/{deed}", sure="on")
    assert lead.open("/morning") and lead.path == "/morning"


@pytest.mark.parametrize("deed", ["password", "code", "villages", "close"])
def test_an_officer_gives_nothing(lead: Browser, new_browser: NewBrowser, deed: str) -> None:
    """To the officer these pages are not there; nor is who is not there to the lead."""
    asha = new_browser()
    asha.sign_in(OFFICER)
    for path in ("/officers", "/officers/2"):
        asha.open(path)
        assert asha.page.status_code == 404
    asha.send(f"/officers/2/{deed}", sure="on", village="1")
    assert asha.page.status_code == 404
    asha.send("/officers", phone=NEW, name="x", village="1", lead="on")
    assert asha.page.status_code == 404
    lead.send(f"/officers/77/{deed}", sure="on")
    assert lead.page.status_code == 404


def test_a_lead_sees_how_calls_are_answered(valley: Valley, lead: Browser) -> None:
    """How many are open since when, how many were answered, how long half of them waited."""
    valley.enrol(AMINA)
    with valley.house.store.work() as work:
        farmer = work.people.farmer(AMINA)
        assert farmer is not None
        for waited in (10, 30, 300):
            came = valley.now - timedelta(days=2)
            call = work.calls.add(farmer.id, None, "officer", "", came)
            work.calls.handle(call, came + timedelta(minutes=waited), 1)
        work.calls.add(farmer.id, None, "officer", "", valley.now - timedelta(hours=3))
        long_ago = valley.now - timedelta(days=40)
        work.calls.handle(
            work.calls.add(farmer.id, None, "officer", "", long_ago), valley.now, 1
        )
    row = lead.open("/officers").partition("Asha")[2].partition("Asha")[2]
    assert "Kijani English 1 since Mon 1 Jun 05:00 3 30 minutes" in row
