"""The second factor of leads, and what is asked before a grave deed."""

import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pyotp
import pytest

from assistant.service.desk.second_factor import step_of, take_away
from assistant.web.app import create_app
from tests.unit.web.conftest import PASSWORD, Browser, give_password
from tests.valley import LEAD, OFFICER, Valley


@pytest.fixture
def browser(valley: Valley) -> Browser:
    """A lead's, where leads need a second factor."""
    valley.house = replace(valley.house, second_factor=True)
    valley.add_officer(valley.add_village("Kijani"))
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley)
    give_password(valley, LEAD)
    return elsewhere(valley)


def elsewhere(valley: Valley) -> Browser:
    """Another browser."""
    app = create_app(valley.house, secret="w", wake=valley.send, clock=lambda: valley.now)
    app.testing = True
    return Browser(app.test_client(), comes_back=False)


def add_factor(browser: Browser, valley: Valley) -> pyotp.TOTP:
    """Adds it as an app would: by the key that the page shows."""
    browser.open("/second-factor")
    key = re.search(r"<code>([A-Z2-7 ]+)</code>", browser.page.text)
    assert key is not None
    app = pyotp.TOTP(key[1].replace(" ", ""))
    browser.send("/second-factor", code=app.at(valley.now))
    return app


# RFC 6238, appendix B: the secret "12345678901234567890", SHA-1, the last six of eight digits.
PUBLISHED = {59: "287082", 1111111109: "081804", 1234567890: "005924", 2000000000: "279037"}


@pytest.mark.parametrize(("second", "code"), PUBLISHED.items())
def test_codes_are_those_of_the_standard(
    valley: Valley, monkeypatch: pytest.MonkeyPatch, second: int, code: str
) -> None:
    """RFC 6238, appendix B."""
    secret = "GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ"
    monkeypatch.setattr(
        "assistant.service.desk.second_factor.secret_of", lambda house, salt: secret
    )
    now = datetime.fromtimestamp(second, UTC)
    assert step_of(valley.house, "", code, now) == second // 30
    assert step_of(valley.house, "", code, now + timedelta(seconds=61)) is None


def test_a_lead_sees_nothing_before_a_factor_is_added(browser: Browser, valley: Valley) -> None:
    """An officer needs none."""
    browser.sign_in(LEAD)
    assert browser.path == "/second-factor"
    browser.open("/officers")
    assert browser.path == "/second-factor"
    add_factor(browser, valley)
    browser.open("/officers")
    assert browser.path == "/officers"
    other = elsewhere(valley)
    other.sign_in(OFFICER)
    assert other.path == "/morning"


def test_the_password_alone_opens_nothing_afterwards(browser: Browser, valley: Valley) -> None:
    """The code does, each code once."""
    browser.sign_in(LEAD)
    app = add_factor(browser, valley)
    other = elsewhere(valley)
    other.sign_in(LEAD)
    assert other.path == "/sign-in/further"
    other.open("/morning")
    assert other.path == "/sign-in"
    other.sign_in(LEAD)
    other.send("/sign-in/further", code=app.at(valley.now))  # taken when it was added
    assert other.page.status_code == 401
    valley.now += timedelta(seconds=30)
    other.send("/sign-in/further", code=app.at(valley.now))
    assert other.path == "/morning"


def test_guessing_the_code_has_an_end(browser: Browser, valley: Valley) -> None:
    """Five wrong ones, whatever browser they come from; then not even the right one."""
    browser.sign_in(LEAD)
    app = add_factor(browser, valley)
    valley.now += timedelta(minutes=1)
    other = elsewhere(valley)
    other.sign_in(LEAD)
    for number in range(5):
        other.send("/sign-in/further", code=f"{number:06}")
    other.send("/sign-in/further", code=app.at(valley.now))
    assert other.path == "/sign-in/further"


def test_a_lost_phone_is_no_way_in(browser: Browser, valley: Valley) -> None:
    """Another lead, or the command line, takes the factor away; a new one must be added."""
    browser.sign_in(LEAD)
    add_factor(browser, valley)
    assert take_away(valley.house, LEAD, None, valley.now) == "Asha"
    browser.open("/officers")
    assert browser.path == "/sign-in"
    browser.sign_in(LEAD)
    assert browser.path == "/second-factor"


def test_before_a_grave_deed_the_password_is_asked_again(
    browser: Browser, valley: Valley
) -> None:
    """Ten minutes after signing in; a wrong one does nothing."""
    browser.sign_in(LEAD)
    app = add_factor(browser, valley)
    valley.now += timedelta(minutes=11)
    assert "Your own password again" in browser.open("/officers/1")
    assert "Nothing was done" in browser.send("/officers/1/password")
    right = {"own_password": PASSWORD, "own_code": app.at(valley.now)}
    browser.send("/officers/1/password", **{**right, "own_password": "another"})
    assert "shown only once" not in browser.words().lower()
    browser.send("/officers/1/password", **right)
    assert "issued" in browser.page.request.path or browser.path == "/officers/1/password"
    assert 'class="secret"' in browser.page.text
    assert "Your own password again" not in browser.open("/officers/1")
