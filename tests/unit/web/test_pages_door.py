"""Who is let in to the page, and what keeps the others out."""

import re
from collections.abc import Callable
from datetime import timedelta

import pytest

from assistant.service.audit import LOOKS
from assistant.service.desk.accounts import give_one_time_password
from assistant.web.app import create_app
from tests.unit.web.conftest import PASSWORD, Browser, NewBrowser, give_password
from tests.valley import AMINA, LEAD, OFFICER, Valley, at

WRONG = "not the password"


COMES_BACK = False  # whoever is out stays out here


def way(valley: Valley) -> None:
    """A browser, and an officer who could sign in with it."""
    valley.add_officer(valley.add_village("Kijani"))
    give_password(valley)


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Not signed in yet."""
    return new_browser()


def test_nothing_is_shown_before_sign_in(browser: Browser) -> None:
    """Every page sends a stranger to the door, and on again afterwards."""
    browser.open("/account")
    assert browser.path == "/sign-in"
    browser.send("/sign-in?next=/account", phone=OFFICER, password=PASSWORD)
    assert browser.path == "/account"


@pytest.mark.parametrize(
    "onward", ["//evil.example/", "https://evil.example/", "/\\evil.example"]
)
def test_the_door_leads_nowhere_else(browser: Browser, onward: str) -> None:
    """An address in the link cannot send an officer to another site."""
    browser.open("/sign-in")
    browser.send(f"/sign-in?next={onward}", phone=OFFICER, password=PASSWORD)
    assert browser.path == "/morning"


def test_an_officer_signs_in_by_number_and_password(browser: Browser) -> None:
    """The first page of the day follows."""
    assert "Waiting for me" in browser.sign_in()
    assert browser.path == "/morning"


@pytest.mark.parametrize(
    ("phone", "password"), [(OFFICER, WRONG), (AMINA, PASSWORD), ("Asha", PASSWORD), ("", "")]
)
def test_what_does_not_fit_is_refused_alike(
    browser: Browser, phone: str, password: str
) -> None:
    """A wrong number and a wrong password give the same answer."""
    shown = browser.sign_in(phone, password)
    assert browser.page.status_code == 401
    assert "or the password is wrong" in shown


def test_five_wrong_passwords_close_the_door_for_a_quarter_of_an_hour(
    valley: Valley, browser: Browser
) -> None:
    """Then even the right one is not looked at, until the time has passed."""
    for _ in range(5):
        browser.sign_in(password=WRONG)
    assert "Wait 15 minutes" in browser.sign_in()
    assert browser.page.status_code == 429
    valley.go("1 Jun 08:16")
    browser.sign_in()
    assert browser.path == "/morning"


def test_a_right_password_forgets_the_wrong_ones_before(browser: Browser) -> None:
    """Slips of the finger do not add up over a day."""
    for _ in range(3):
        for _ in range(4):
            browser.sign_in(password=WRONG)
        browser.sign_in()
        browser.send("/sign-out")


def test_one_address_cannot_try_every_phone(browser: Browser) -> None:
    """Twenty wrong tries close the door for an address, whatever numbers they were for."""
    for number in range(20):
        browser.sign_in(f"+4477009002{number:02}", WRONG)
    browser.sign_in()
    assert browser.page.status_code == 429


def test_another_address_is_not_held_up(browser: Browser, new_browser: NewBrowser) -> None:
    """Who guesses elsewhere does not lock out the other officers of a district."""
    for number in range(20):
        browser.sign_in(f"+4477009002{number:02}", WRONG)
    other = new_browser("10.0.0.7")
    other.sign_in()
    assert other.path == "/morning"


def test_a_one_time_password_must_be_changed_first(valley: Valley, browser: Browser) -> None:
    """No page is shown before; afterwards the new one opens them and the old one nothing."""
    _, password = give_one_time_password(valley.house, OFFICER, valley.now)
    browser.sign_in(password=password)
    assert browser.path == "/password"
    browser.open("/morning")
    assert browser.path == "/password"
    assert 'name="old"' not in browser.page.text  # it was typed a moment ago
    shown = browser.send("/password", new=password, again=password)
    assert "is your current password" in shown
    browser.send("/password", new="rain on the roof", again="rain on the roof")
    assert browser.path == "/morning"
    browser.send("/sign-out")
    assert "or the password is wrong" in browser.sign_in(password=password)


@pytest.mark.parametrize("heard", [str.upper, lambda given: given.replace("-", " ").upper()])
def test_a_one_time_password_that_was_read_out_opens_the_page(
    valley: Valley, browser: Browser, heard: Callable[[str], str]
) -> None:
    """In capitals, with blanks for its marks; a password of one's own is as it was chosen."""
    _, password = give_one_time_password(valley.house, OFFICER, valley.now)
    browser.sign_in(password=heard(password))
    assert browser.path == "/password"
    browser.send("/password", new="rain on the roof", again="rain on the roof")
    browser.send("/sign-out")
    assert "is wrong" in browser.sign_in(password="RAIN ON THE ROOF")  # noqa: S106


def test_a_one_time_password_is_asked_for_again_later(valley: Valley, browser: Browser) -> None:
    """An open page left alone is no way in."""
    _, password = give_one_time_password(valley.house, OFFICER, valley.now)
    browser.sign_in(password=password)
    valley.leap(valley.now + timedelta(minutes=11))
    assert 'name="old"' in browser.open("/password") + browser.page.text
    shown = browser.send("/password", new="rain on the roof", again="rain on the roof")
    assert "current password is wrong" in shown


def test_a_one_time_password_that_nobody_used_ends(valley: Valley, browser: Browser) -> None:
    """Found on paper a week later, it opens nothing."""
    _, password = give_one_time_password(valley.house, OFFICER, valley.now)
    valley.go("8 Jun 08:01")
    assert "or the password is wrong" in browser.sign_in(password=password)


@pytest.mark.parametrize(
    ("new", "again", "said"),
    [
        ("short", "short", "too short"),
        ("rain on the roof", "rain on the rood", "do not match"),
        (PASSWORD, PASSWORD, "is your current password"),
        ("asha+447700900001", "asha+447700900001", "too easy"),
        ("aaaaaaaaaaaa", "aaaaaaaaaaaa", "too easy"),
    ],
)
def test_a_poor_password_is_not_taken(
    browser: Browser, new: str, again: str, said: str
) -> None:
    """The page says why, and the old password stays."""
    browser.sign_in()
    browser.open("/password")
    assert said in browser.send("/password", old=PASSWORD, new=new, again=again)
    browser.send("/sign-out")
    browser.sign_in()
    assert browser.path == "/morning"


def test_another_password_ends_all_other_sessions(
    browser: Browser, new_browser: NewBrowser
) -> None:
    """A browser left open elsewhere is signed out; this one stays."""
    elsewhere = new_browser()
    elsewhere.sign_in()
    browser.sign_in()
    browser.open("/password")
    browser.send("/password", old=PASSWORD, new="rain on the roof", again="rain on the roof")
    assert browser.path == "/morning"
    elsewhere.open("/morning")
    assert elsewhere.path == "/sign-in"


def test_a_session_ends_after_twelve_hours(valley: Valley, browser: Browser) -> None:
    """However often it was used (OWASP ASVS 4.0.3, 3.3.2)."""
    browser.sign_in()
    valley.go("1 Jun 19:59")
    browser.open("/morning")
    assert browser.path == "/morning"
    valley.go("1 Jun 20:01")
    browser.open("/morning")
    assert browser.path == "/sign-in"


def _taken(browser: Browser) -> str:
    """What somebody would carry away who looks into the browser's cookies."""
    cookie = browser._client.get_cookie("nursery")
    assert cookie is not None
    return cookie.value


def test_a_cookie_taken_away_opens_nothing_after_signing_out(
    browser: Browser, new_browser: NewBrowser
) -> None:
    """The server has ended the session, not only this browser."""
    browser.sign_in()
    thief = new_browser()
    thief._client.set_cookie("nursery", _taken(browser))
    thief.open("/farmers")
    assert thief.path == "/farmers"
    browser.open("/account")
    browser.send("/sign-out")
    thief.open("/farmers")
    assert thief.path == "/sign-in"


def test_what_the_database_holds_opens_nothing(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    """A copy of it holds no key and no token, only hashes (and who has the key as well can
    sign a cookie, but not one of a session)."""
    browser.sign_in()
    with valley.house.store.look() as work:
        (kept,) = work.accounts.sessions(1, at("1 Jun 00:00"))
    app = create_app(valley.house, secret="wire", wake=lambda: None, clock=lambda: valley.now)
    signer = app.session_interface.get_signing_serializer(app)  # type: ignore[attr-defined]
    forged = signer.dumps({"_user_id": kept.key, "_fresh": True, "_id": "x"})
    thief = new_browser()
    thief._client.set_cookie("nursery", forged)
    thief.open("/farmers")
    assert thief.path == "/sign-in"


def test_an_officer_sees_and_ends_other_sessions(
    browser: Browser, new_browser: NewBrowser
) -> None:
    """One of them, or all but this."""
    others = new_browser(), new_browser()
    for other in others:
        other.sign_in()
    browser.sign_in()
    assert "this browser" in browser.open("/account")
    assert browser.page.text.count("Sign out there") == 2
    browser.send("/account/sessions")
    for other in others:
        other.open("/morning")
        assert other.path == "/sign-in"
    browser.open("/morning")
    assert browser.path == "/morning"


@pytest.mark.parametrize(
    "password",
    [
        "password12",
        "1234567890",
        "qwertyuiop",
        "Password123",
        "letmein1234",
        "abcdeabcde",
        "rice nursery",
    ],
)
def test_a_password_that_is_known_is_not_taken(browser: Browser, password: str) -> None:
    """Those of the lists that zxcvbn brings, and the words of this trade."""
    browser.sign_in()
    browser.open("/password")
    said = browser.send("/password", old=PASSWORD, new=password, again=password)
    assert "too easy" in said


def test_strangers_do_not_lock_an_officer_out_of_the_own_browser(
    browser: Browser, new_browser: NewBrowser
) -> None:
    """Nor do twenty wrong tries from behind the same proxy."""
    browser.sign_in()
    browser.open("/account")
    browser.send("/sign-out")
    stranger = new_browser()
    for number in range(60):
        stranger.sign_in(OFFICER if number % 2 else f"+4477009002{number:02}", WRONG)
    assert stranger.page.status_code == 429
    browser.sign_in()
    assert browser.path == "/morning"


def test_who_is_locked_out_elsewhere_gets_in_by_a_code_to_the_own_phone(
    valley: Valley, browser: Browser
) -> None:
    """And only with it; the code is good once, and for who has the password too."""
    for _ in range(6):
        browser.sign_in(password=WRONG)
    assert "A code sent to your phone" in browser.words()
    browser.send("/sign-in/code", phone=OFFICER)
    (text,) = valley.heard(OFFICER)
    code = re.search(r"\d{8}", text)[0]  # type: ignore[index]
    wrong = f"{(int(code) + 1) % 10**8:08}"
    for fields in ({"code": wrong}, {"code": code, "password": WRONG}):
        browser.send("/sign-in", **{"phone": OFFICER, "password": PASSWORD, **fields})
        assert browser.path == "/sign-in"
    browser.send("/sign-in", phone=OFFICER, password=PASSWORD, code=code)
    assert browser.path == "/morning"
    with valley.house.store.look() as work:
        assert work.accounts.one_time(OFFICER) is None


def test_nobody_learns_by_asking_for_a_code_who_is_an_officer(
    valley: Valley, browser: Browser
) -> None:
    """The answer is the same, and no text goes to a stranger; asking has an end."""
    answers = []
    for phone in (OFFICER, AMINA):
        browser.open("/sign-in")
        answers.append(browser.send("/sign-in/code", phone=phone))
    assert answers[0] == answers[1]
    assert len(valley.heard(OFFICER)) == 1 and valley.heard(AMINA) == []
    for _ in range(12):
        browser.send("/sign-in/code", phone=OFFICER)
    assert "Too many codes" in browser.words()
    assert valley.heard(OFFICER) == []


def test_a_form_without_its_token_changes_nothing(
    browser: Browser, new_browser: NewBrowser
) -> None:
    """Another site cannot make an officer's browser send something."""
    browser.sign_in()
    browser._token = ""
    assert "Nothing was changed" in browser.send("/sign-out")
    assert browser.page.status_code == 400
    browser.open("/morning")
    assert browser.path == "/morning"


def test_pages_are_sent_with_their_locks(browser: Browser) -> None:
    """No script within a page, no frame around it, nothing kept by the browser."""
    browser.sign_in()
    headers = browser.page.headers
    policy = headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy and "frame-ancestors 'none'" in policy
    assert "unsafe" not in policy
    assert headers["Cache-Control"] == "no-store"
    assert headers["X-Content-Type-Options"] == "nosniff"


def test_the_cookie_is_kept_from_scripts_and_other_sites(
    valley: Valley, browser: Browser
) -> None:
    """By https it is also kept from the open line."""
    app = create_app(
        valley.house,
        secret="s",
        wake=lambda: None,
        clock=lambda: valley.now,
        https=True,
        hosts=["nursery.example"],
    )
    answer = app.test_client().get("/sign-in", base_url="https://nursery.example/")
    cookie = answer.headers["Set-Cookie"]
    assert cookie.startswith("__Host-nursery=")
    assert all(flag in cookie for flag in ("Secure", "HttpOnly", "SameSite=Lax", "Path=/"))
    assert "max-age" in answer.headers["Strict-Transport-Security"]


def test_the_page_speaks_the_officers_language(browser: Browser) -> None:
    """From the moment it is chosen."""
    browser.sign_in()
    browser.open("/account")
    browser.send("/account", language="sw")
    assert "sw:Waiting for me" in browser.open("/morning")
    browser.send("/account", language="tlh")
    assert "sw:Waiting for me" in browser.open("/morning")


def test_a_session_outlives_a_restart(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    """Its key is the deployment's, in a file."""
    browser.sign_in()
    again = create_app(
        valley.house, secret="s", wake=lambda: None, clock=lambda: valley.now
    ).test_client()
    again.set_cookie("nursery", _taken(browser))
    assert again.get("/account").status_code == 200


def test_signing_in_leaves_a_trail(valley: Valley, browser: Browser) -> None:
    """Who came in, and who tried."""
    browser.sign_in(password=WRONG)
    browser.sign_in()
    with valley.house.store.look() as work:
        acts = [(done.officer, done.act) for done in work.audit.latest(2, without=LOOKS)]
        details = [done.detail for done in work.audit.latest(2, without=LOOKS)]
    assert acts == [("Asha", "signed_in"), ("Asha", "sign_in_refused")]
    assert details == ["127.0.0.1", "127.0.0.1"]


def test_what_was_typed_as_the_phone_is_not_kept(valley: Valley, browser: Browser) -> None:
    """It may be a password in the wrong field."""
    browser.sign_in(PASSWORD, "")
    with valley.house.store.look() as work:
        assert PASSWORD not in str(work.audit.latest(5, without=LOOKS))


def test_the_gateway_needs_no_sign_in(browser: Browser) -> None:
    """It signs each of its calls instead, and is told so in plain words."""
    answer = browser._client.post("/gateway/text", data=b"{}")
    assert answer.status_code == 401
    assert answer.text.startswith("sign the request")


def test_a_lead_is_named_as_one(valley: Valley, browser: Browser) -> None:
    """So that it is seen who looks at all villages."""
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    assert "Asha (lead)" in browser.sign_in(LEAD)
