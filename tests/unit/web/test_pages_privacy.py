"""What is kept of a person, by page; and who one is, before thousands are texted."""

import json
from datetime import timedelta

import pytest

from assistant.web import desk
from assistant.wording import messages_privacy
from assistant.wording import messages_web_broadcast as b
from assistant.wording import messages_web_door as d
from assistant.wording import messages_web_privacy as v
from tests.unit.web.conftest import PASSWORD, Browser, NewBrowser, give_password
from tests.valley import AMINA, LEAD, OFFICER, Valley, like


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """One that does not sign in anew by itself."""
    return new_browser()


@pytest.fixture
def lead(valley: Valley, browser: Browser) -> Browser:
    """A lead, who signed in an hour ago; and a farmer."""
    valley.add_village("Kijani")
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    valley.enrol(AMINA)
    browser.come_in(LEAD)
    valley.now += timedelta(hours=1)
    return browser


def farmer_id(valley: Valley) -> int:
    """Amina's."""
    with valley.house.store.look() as work:
        farmer = work.people.farmer(AMINA)
        assert farmer is not None
        return farmer.id


def test_a_lead_takes_what_is_kept_of_a_person(valley: Valley, lead: Browser) -> None:
    """As a file, after the own password; it leaves a line in the trail."""
    place = f"/farmers/{farmer_id(valley)}"
    assert v.KEPT_DATA.text in lead.open(place)
    assert AMINA not in lead.send(f"{place}/kept.json", own_password="wrong")
    lead.open(place)
    lead.send(f"{place}/kept.json", own_password=PASSWORD)
    assert lead.page.headers["Content-Disposition"].startswith("attachment")
    assert json.loads(lead.page.text)["farmer"][0]["phone"] == AMINA


def test_a_lead_has_somebody_deleted_in_a_week(valley: Valley, lead: Browser) -> None:
    """The phone is told; asked twice it is done once; START keeps it."""
    place = f"/farmers/{farmer_id(valley)}"
    lead.open(place)
    assert v.ERASE_ASKED.text in lead.send(f"{place}/erase", own_password=PASSWORD)
    assert valley.heard(AMINA)[-1] == like(messages_privacy.ERASE_DUE)
    assert v.ERASE_ASKED.text not in lead.open(place)
    assert "8 Jun" in lead.page.text
    assert v.ERASE_WAS.text in lead.send(f"{place}/erase")


def test_no_other_officer_does(valley: Valley, browser: Browser) -> None:
    """Neither sees the card nor reaches the address."""
    valley.add_officer(valley.add_village("Kijani"))
    give_password(valley, OFFICER)
    valley.enrol(AMINA)
    browser.sign_in()
    place = f"/farmers/{farmer_id(valley)}"
    assert v.KEPT_DATA.text not in browser.open(place)
    for what in ("kept.json", "erase"):
        browser.send(f"{place}/{what}", own_password=PASSWORD)
        assert browser.page.status_code == 404


def test_who_one_is_before_many_are_texted(
    valley: Valley, lead: Browser, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A browser that was left open texts nobody."""
    monkeypatch.setattr(desk, "MANY", 1)
    valley.text(AMINA, "MENU")
    lead.open("/broadcasts")
    lead.send("/broadcasts", all="on", stage="all", words="Seed has come")
    send = "/broadcasts/1/send"
    assert d.NOT_PROVED.text in lead.send(send)
    assert d.NOT_PROVED.text in lead.send(send, own_password="a wrong one")
    shown = lead.send(send, own_password=PASSWORD)
    assert d.NOT_PROVED.text not in shown and b.IS_SENT.text in shown
