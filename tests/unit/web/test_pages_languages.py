"""Every page in every language that has a catalogue."""

import re
from dataclasses import replace

import pytest

from assistant.people import LANGUAGES
from assistant.service.alerts.taking import take_alert
from assistant.web.app import create_app
from assistant.wiring.catalogues import open_catalogue
from tests.cap import cap
from tests.unit.web.conftest import Browser, give_password
from tests.valley import AMINA, CODE, LEAD, Valley

PATHS = (
    "/morning",
    "/round",
    "/deeds?deed=text&line=bed-1",
    "/deeds?deed=visited&line=bed-1",
    "/nurseries/1",
    "/nurseries/1/calendar",
    "/season",
    "/season?village=1",
    "/season?stage=covered",
    "/villages/1/calendar",
    "/villages/1/calendar?form=weeks",
    "/warnings",
    "/broadcasts",
    "/lists",
    "/farmers/1",
    "/farmers",
    "/farmers?standing=asked",
    "/farmers/enrol",
    "/lists",
    "/villages",
    "/villages/1",
    "/messages",
    "/messages?village=1&which=heard",
    "/messages/unread",
    "/alerts",
    "/alerts?ours=1",
    "/alerts/1",
    "/alerts/2",
    "/officers",
    "/officers/1",
    "/results",
    "/results?village=1",
    "/trail",
    "/messages/months",
    "/account",
    "/password",
    "/nowhere",
)


def way(valley: Valley) -> None:
    """One of everything: a call, a warning, a silent bed, a visit's worth of texts."""
    valley.add_village("Kijani")
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    valley.go("4 Jun 08:00")
    valley.text(AMINA, "OFFICER")
    valley.text(AMINA, "Come and see my seed")
    valley.text(LEAD, f"RAIN {CODE} Kijani 14-20")
    valley.text(LEAD, "1")
    take_alert(valley.house, cap(), "a folder", valley.now)
    take_alert(valley.house, b"<html/>", "a folder", valley.now)


@pytest.fixture
def busy(valley: Valley) -> Valley:
    """The valley where the way ends."""
    return valley


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_page_can_be_read_in(busy: Valley, language: str) -> None:
    """No translation breaks a page, and the page says what language it is in."""
    catalogues = {language: open_catalogue(language)}
    house = replace(busy.house, catalogues=catalogues, languages=(language,))
    app = create_app(house, secret="s", wake=lambda: None, clock=lambda: busy.now)
    app.testing = True  # a fault in a page is a fault of the test
    browser = Browser(app.test_client())
    browser.sign_in(LEAD)
    for path in PATHS:
        browser.open(path)
        assert f'<html lang="{language}">' in browser.page.text
        assert browser.page.status_code == (404 if path == "/nowhere" else 200), path


IS_PHONE = re.compile(r"\+\d+").search
# Where our own numbers, dates and times stand; names, phones and people's words are elsewhere.
OURS = re.compile(
    r"<time\b[^>]*>([^<]*)</time>|<td[^>]*\bnum\b[^>]*>([^<]*)</td>"
    r'|<span id="left[^>]*>([^<]*)</span>|<option value="\d{4}-\d{2}"[^>]*>([^<]*)</option>'
)


def test_all_that_we_count_is_written_in_the_digits_of_the_language(busy: Valley) -> None:
    """CLDR: the default numbering system of Bengali is `beng`."""
    house = replace(busy.house, catalogues={"bn": open_catalogue("bn")}, languages=("bn",))
    app = create_app(house, secret="s", wake=lambda: None, clock=lambda: busy.now)
    browser = Browser(app.test_client())
    browser.sign_in(LEAD)
    seen = []
    for path in PATHS:
        browser.open(path)
        found = ["".join(each).strip() for each in OURS.findall(browser.page.text)]
        wrong = [each for each in found if re.search("[0-9]", each) and not IS_PHONE(each)]
        assert not wrong, path
        seen += [each for each in found if re.search("[০-৯]", each)]
    assert len(seen) > 20 and any(":" in each for each in seen)
