"""The officers' pages of a deployment without official alerts and office lists."""

from dataclasses import replace

import pytest

from assistant.settings import Settings
from assistant.wiring.refit import refit_of
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, LEAD, NAIROBI, Valley

PAGES = ("/morning", "/warnings", "/farmers", "/villages", "/villages/1", "/sent", "/programme")


def way(valley: Valley) -> None:
    """A lead and one farmer."""
    valley.add_village("Kijani")
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    valley.enrol(AMINA)


@pytest.fixture
def set_up(valley: Valley) -> Valley:
    """A deployment that has neither."""
    settings = Settings(zone=NAIROBI, parts=())
    bare = replace(valley.house, parts=frozenset())
    valley.house = replace(bare, refit=refit_of(settings, bare))
    return valley


@pytest.fixture
def lead(set_up: Valley, new_browser: NewBrowser) -> Browser:
    """Its lead."""
    found = new_browser()
    found.come_in(LEAD)
    return found


@pytest.mark.parametrize("path", PAGES)
def test_no_page_leads_to_what_is_left_out(lead: Browser, path: str) -> None:
    """Nor fails for want of it."""
    lead.open(path)
    html = lead.page.get_data(as_text=True)
    assert lead.page.status_code == 200
    assert "/alerts" not in html and "/lists" not in html and "/codes" not in html


@pytest.mark.parametrize(
    "path", ["/alerts", "/alerts/1", "/lists", "/lists/1", "/lists/example.csv"]
)
def test_its_addresses_are_not_there(lead: Browser, path: str) -> None:
    """As any that never were."""
    lead.open(path)
    assert lead.page.status_code == 404


def test_its_settings_are_neither_shown_nor_taken(lead: Browser) -> None:
    """The others are."""
    lead.open("/programme/settings")
    html = lead.page.get_data(as_text=True)
    assert 'name="alerts_events"' not in html and 'name="prompt_at"' in html
    lead.send("/programme/settings/alerts", alerts_events="heavy rain")
    assert lead.page.status_code == 404
    assert "It applies from now on" in lead.send(
        "/programme/settings/hours",
        prompt_at="7:15",
        second_at="16:00",
        quiet_from="20:00",
        quiet_until="05:30",
    )
