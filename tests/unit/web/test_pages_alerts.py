"""The page of official alerts: what came, what became of it, and the all-clear."""

import re
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from assistant.places import Geocode, Point
from assistant.service.alerts.taking import take_alert
from assistant.service.storms import drafts
from assistant.settings.reading import read_settings
from assistant.store import Became, SourceLook
from assistant.wiring.alert_keys import open_alert_keys
from assistant.wording import messages_talk as m
from tests.cap import SENDER, area, cap, code, info
from tests.seals import Pair, kept, key_of, signed
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, LEAD, OFFICER, Valley, like

OURS, OTHERS = key_of("Lindara weather service"), key_of("Somebody")
OTHER = "+447700900003"
FIRST = f"{SENDER},LWS-1,2026-06-12T06:00:00+03:00"


def way(valley: Valley) -> None:
    """The twelfth of June, two villages on the map with an officer each, and a lead; Amina of
    Kijani sowed two days ago."""
    kijani, mwanga = valley.add_village("Kijani"), valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    valley.add_officer(mwanga, phone=OTHER)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, OTHER, LEAD):
        give_password(valley, phone)
    with valley.house.store.work() as work:
        work.alerts.set_point(kijani.id, Point(-1.0, 37.0))
        work.alerts.set_point(mwanga.id, Point(-1.05, 37.05))
    valley.go("12 Jun 08:00")
    valley.enrol(AMINA)
    valley.sow(AMINA, "10 June")
    valley.heard(AMINA)


@pytest.fixture
def placed(valley: Valley) -> Valley:
    """The valley where the way ends."""
    return valley


def come(valley: Valley, *raws: bytes) -> None:
    """These messages come in from a folder."""
    for raw in raws:
        take_alert(valley.house, raw, "/var/alerts", valley.now)


@pytest.fixture
def browser(placed: Valley, new_browser: NewBrowser) -> Browser:
    """The officer of Kijani, signed in."""
    found = new_browser()
    found.come_in()
    return found


def test_what_the_service_said_is_shown_in_its_own_words(
    placed: Valley, browser: Browser
) -> None:
    """With its severity and certainty as they came, its hours here, and our villages."""
    come(placed, cap())
    shown = browser.open("/alerts")
    assert "Orange: heavy rain in the Lindara valley" in shown
    assert "Heavy rain · Severe, Expected, Likely · Actual Alert · not signed" in shown
    assert "Fri 12 Jun 14:00 – Fri 12 Jun 20:00" in shown
    assert "Kijani and 1 more Drafted for the officer." in shown
    shown = browser.open("/alerts/1")
    assert "A draft is waiting for Kijani." in shown and "Lindara valley" in shown
    assert "outlines: 1, circles: 0, codes: 0" in shown


@pytest.mark.parametrize(("deed", "said"), [("send", "Kijani: warned"), ("drop", "not warned")])
def test_the_list_says_what_an_officer_decided(
    placed: Valley, browser: Browser, deed: str, said: str
) -> None:
    """And no longer that it is drafted."""
    come(placed, cap())
    browser.open("/warnings")
    browser.send(f"/warnings/drafts/1/{deed}")
    shown = browser.open("/alerts")
    assert said in shown and "Drafted for the officer." not in shown


def test_the_block_in_the_officers_language_is_shown_first(
    placed: Valley, browser: Browser
) -> None:
    """English where there is none in it."""
    swahili = info(language="sw", event="Mvua kubwa", headline="Mvua kubwa bondeni")
    come(placed, cap(info=[swahili, info()]))
    assert "Orange: heavy rain" in browser.open("/alerts")
    with placed.house.store.work() as work:
        work.accounts.set_language(1, "sw")
    assert "Mvua kubwa bondeni" in browser.open("/alerts")


def test_a_faulty_one_says_what_is_wrong_and_can_be_downloaded(
    placed: Valley, browser: Browser
) -> None:
    """As a file, never as a page of ours."""
    bad = cap(sent="2026-06-12T06:00:00Z", note="<script>alert(1)</script>")
    come(placed, bad)
    shown = browser.open("/alerts/1")
    assert "alert/sent : not a time with its zone in digits 2026-06-12T06:00:00Z" in shown
    assert "<script>alert(1)" not in browser.page.text
    browser.open("/alerts/1/message.xml")
    assert browser.page.data == bad
    assert browser.page.headers["Content-Disposition"].startswith("attachment")
    assert browser.page.mimetype == "application/octet-stream"


def test_words_of_the_service_are_never_markup(placed: Valley, browser: Browser) -> None:
    """Nor can they lead a click elsewhere."""
    nasty = "<img src=x onerror=alert(1)>"
    come(placed, cap(info=info(headline=nasty, event=nasty, web="javascript:alert(1)")))
    for path in ("/alerts", "/alerts/1"):
        browser.open(path)
        assert "<img" not in browser.page.text
        assert 'href="javascript' not in browser.page.text


def test_a_signature_is_told_and_not_vouched_for(placed: Valley, browser: Browser) -> None:
    """We do not check it, and say so."""
    signature = b'<Signature xmlns="http://www.w3.org/2000/09/xmldsig#"/></alert>'
    come(placed, cap().replace(b"</alert>", signature))
    assert "signed, not checked" in browser.open("/alerts")


def test_only_ours_leaves_out_what_is_elsewhere(placed: Valley, browser: Browser) -> None:
    """Faulty ones stay: nobody knows where they are."""
    far = info(headline="Far away", area=area(polygon=None, circle="50,10 5"))
    come(placed, cap(identifier="far", info=far), cap(), b"no alert")
    assert "Far away" in browser.open("/alerts")
    shown = browser.open("/alerts?ours=1")
    assert (
        "Far away" not in shown
        and "Orange" in shown
        and "It does not follow the standard" in shown
    )


def test_a_long_list_goes_on_from_page_to_page(placed: Valley, browser: Browser) -> None:
    """Thirty a page, the latest first."""
    come(placed, *(cap(identifier=f"n{n}", info=info(headline=f"No {n}.")) for n in range(31)))
    assert "No 30." in browser.open("/alerts") and "No 0." not in browser.words()
    onward = re.search(r'rel="next" href="([^"]+)"', browser.page.text)
    assert onward and "No 0." in browser.open(onward[1].replace("&amp;", "&"))


def test_after_a_cancel_the_officer_gives_the_all_clear(
    placed: Valley, browser: Browser
) -> None:
    """For the villages they serve; the farmer is told, and a second press does nothing."""
    come(placed, cap())
    with placed.house.store.work() as work:
        (draft,) = work.drafts.of_alert(1)
        lead = work.people.officer(LEAD)
        drafts.send(work, placed.house, draft.id, placed.now, lead)
    placed.send()
    assert like(m.WARNING, ...) in placed.heard(AMINA)
    come(placed, cap(identifier="LWS-2", sent="2026-06-12T07:00:00+03:00", msgType="Cancel",
                     references=FIRST, info=None))  # fmt: skip
    shown = browser.open("/alerts/2")
    assert "your warning still stands: Kijani." in shown and "It replaced: LWS-1" in shown
    assert "Replaced by a later message: LWS-2" in browser.open("/alerts/1")
    assert "The all-clear goes out: Kijani." in browser.send("/alerts/2/all-clear")
    assert placed.heard(AMINA) == [like(m.ALL_CLEAR, ...)]
    assert "No warning of this alert stands" in browser.send("/alerts/2/all-clear")
    with placed.house.store.look() as work:
        assert work.audit.latest(1)[0].act == "warning_cleared"
        assert work.warnings.standing(2, placed.now)


def test_a_village_that_no_alert_can_find_is_named(placed: Valley, browser: Browser) -> None:
    """Until it has a place or a code."""
    with placed.house.store.work() as work:
        work.alerts.set_point(1, None)
    assert "Alerts cannot find these villages: Kijani." in browser.open("/alerts")
    with placed.house.store.work() as work:
        work.alerts.set_geocodes(1, [Geocode("WARD", "3")])
    assert "No alert can find" not in browser.open("/alerts")


def test_the_lead_gives_a_village_its_codes(placed: Valley, new_browser: NewBrowser) -> None:
    """One a line; a line that is none changes nothing, and an officer cannot."""
    lead, officer = new_browser(), new_browser()
    lead.sign_in(LEAD)
    lead.open("/villages/1")
    shown = lead.send("/villages/1/codes", codes="ward = 3\n\n SAME=006109")
    assert "The codes for Kijani are saved." in shown and "WARD=3" in shown
    assert "ward 3 is not a code" in lead.send("/villages/1/codes", codes="ward 3")
    officer.sign_in()
    officer.open("/villages/1")
    officer.send("/villages/1/codes", codes="")
    assert officer.page.status_code == 404
    with placed.house.store.look() as work:
        assert work.alerts.geocodes() == {1: (Geocode("SAME", "006109"), Geocode("WARD", "3"))}
        assert work.audit.latest(1, village_id=1)[0].detail == "ward=3, SAME=006109"
    come(placed, cap(info=info(area=area(polygon=None, geocode=code("WARD", "3")))))
    assert "A draft is waiting for Kijani." in officer.open("/alerts/1")


def test_where_alerts_are_read_and_how_it_goes(placed: Valley, browser: Browser) -> None:
    """So that silence is not taken for good weather."""
    assert "no source is set" in browser.open("/alerts")
    with placed.house.store.work() as work:
        looked = work.alert_sources.take("/var/alerts", placed.now, timedelta(minutes=5))
        assert isinstance(looked, SourceLook)
        work.alert_sources.looked(replace(looked, trouble="gone", well_at=placed.now))
    shown = browser.open("/alerts")
    assert "/var/alerts Fri 12 Jun 08:00 gone last worked Fri 12 Jun 08:00" in shown


def test_thresholds_are_shown(placed: Valley, browser: Browser) -> None:
    """In the standard's words, with what follows."""
    shown = browser.open("/alerts")
    assert "severity Extreme, Severe, Moderate" in shown and "any event" in shown
    assert "No farmer is told until an officer says so." in shown


@pytest.mark.parametrize("path", ["/alerts/9", "/alerts/9/message.xml", "/alerts/x"])
def test_what_is_not_there_is_not_there(browser: Browser, path: str) -> None:
    """A page says so."""
    browser.open(path)
    assert browser.page.status_code == 404


def test_a_drawing_holds_the_area_and_the_villages(placed: Valley, browser: Browser) -> None:
    """Two dots inside the outline for the lead, one for the officer of one village."""
    come(placed, cap(info=info(area=area(circle="-1,37 3"))))
    browser.open("/alerts/1")
    text = browser.page.text
    assert text.count('<polygon class="area"') == 1 and text.count("<ellipse") == 1
    assert text.count('<circle class="in"') == 1


@pytest.mark.parametrize(
    ("signer", "words"),
    [
        (OURS, "signed, checked with the key of Lindara weather service"),
        (OTHERS, "the signature is wrong: ask the service before you warn by it"),
    ],
)
def test_whose_key_signed_is_shown(
    placed: Valley, new_browser: NewBrowser, tmp_path: Path, signer: Pair, words: str
) -> None:
    """In the list, on its page, and a wrong one on the draft that was made from it."""
    keys = open_alert_keys(read_settings({"NURSERY_ALERTS_KEYS": kept(OURS, tmp_path)}))
    placed.house = replace(placed.house, check_alert=keys)
    come(placed, signed(cap(), signer))
    browser = new_browser()
    browser.sign_in()
    assert words in browser.open("/alerts") and words in browser.open("/alerts/1")
    assert (words in browser.open("/warnings/drafts/1")) is (signer is OTHERS)


def test_a_message_pasted_by_hand_is_a_draft_at_most(
    placed: Valley, new_browser: NewBrowser
) -> None:
    """Also where the service's own messages warn at once; an officer cannot paste one."""
    placed.house = replace(placed.house, alerts_go_out=True)
    lead, message = new_browser(), cap().decode()
    lead.sign_in(LEAD)
    lead.open("/alerts")
    shown = lead.send("/alerts", message=message)
    assert "The message is entered" in shown and lead.path == "/alerts/1"
    with placed.house.store.look() as work:
        kept = work.alerts.get(1)
        assert kept is not None and kept.became != Became.SENT
        assert work.audit.latest(1)[0].act == "alert_pasted"
    lead.open("/alerts")
    assert "entered before" in lead.send("/alerts", message=message)
    assert "It does not follow the standard" in lead.send("/alerts", message="rain, I think")
    officer = new_browser()
    officer.sign_in()
    officer.open("/alerts")
    officer.send("/alerts", message=message)
    assert officer.page.status_code == 404
