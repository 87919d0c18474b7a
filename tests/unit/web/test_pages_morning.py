"""Waiting for me: who must be seen and why, the calls for help, and what is done from the
list."""

import json
import re
from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.dialogue.values import RaiseAlarm, SettleAlarm
from assistant.gateways import signed_headers
from assistant.people import Village
from assistant.service.alarms.raising import raise_alarm, settle_alarm
from assistant.service.audit import LOOKS
from assistant.web.app import create_app
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, CODE, LEAD, OFFICER, ZAWADI, Valley

OTHER_OFFICER = "+447700900003"


def way(valley: Valley) -> None:
    """The officer of the first village, signed in; the second is another's."""
    kijani, mwanga = valley.add_village("Kijani"), valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    valley.add_officer(mwanga, phone=OTHER_OFFICER)
    for phone in (OFFICER, OTHER_OFFICER):
        give_password(valley, phone)


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in()
    return found


def _answer(browser: Browser, call: int, words: str, **more: str) -> str:
    """What the page says after a call was answered."""
    return browser.send("/deeds/do", deed="text", line=f"call-{call}", words=words, **more)


def _seen(browser: Browser, call: int) -> str:
    """What the page says after a call was marked as seen."""
    return browser.send("/deeds/do", deed="seen", line=f"call-{call}")


MINUTE = timedelta(minutes=1)


def _call(valley: Valley, phone: str, words: str) -> None:
    """A farmer asks for the officer in a few words."""
    valley.text(phone, "OFFICER")
    valley.text(phone, words)
    if valley.heard(phone):
        return


def test_a_quiet_morning_says_so(browser: Browser) -> None:
    """Nobody has called and everybody has answered."""
    assert "Nothing is waiting for you" in browser.open("/morning")


def test_a_call_for_help_shows_the_farmers_own_words(valley: Valley, browser: Browser) -> None:
    """With the number to call back, and the village."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    _call(valley, AMINA, "<b>come</b> see my seed & straw")
    shown = browser.open("/morning")
    assert "Calls for help" in shown and "1 (1 waiting)" in shown
    assert "&lt;b&gt;come&lt;/b&gt; see my seed &amp; straw" in shown
    assert AMINA in shown and "Kijani" in shown


def test_an_answer_goes_out_as_a_text_and_ends_the_call(
    valley: Valley, browser: Browser
) -> None:
    """It stays with the nursery, and the trail tells who wrote it."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    _call(valley, AMINA, "Come and see my seed")
    valley.heard(AMINA)
    browser.open("/morning")
    shown = _answer(browser, 1, words="Fence the bed, I come at ten.")
    assert "1 text goes out in a minute" in shown and "Answered, goes out 08:01" in shown
    assert valley.heard(AMINA) == []
    valley.leap(valley.now + MINUTE)
    assert "Come and see my seed" not in browser.open("/morning")
    heard = valley.heard(AMINA)
    assert len(heard) == 1
    assert heard[0].startswith("From Asha, your officer: Fence the bed, I come at ten.")
    story = browser.open("/farmers/1")
    assert "Come and see my seed" in story and "Asha wrote: Fence the bed" in story
    with valley.house.store.look() as work:
        assert work.audit.latest(1, without=LOOKS)[0].act == "call_answered"


def _calls_in_the_night(valley: Valley) -> None:
    """Two of Amina's calls, the second of them urgent, looked at an hour before midnight."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "12 June")
    _call(valley, AMINA, "Which seed is best?")
    _call(valley, AMINA, "Water comes over the bed")
    valley.leap("1 Jun 23:00")
    valley.heard(AMINA)


def test_an_answer_at_night_waits_unless_it_is_urgent(valley: Valley, browser: Browser) -> None:
    """Nobody is woken for what can wait; the form says so before, with the box for what
    cannot, which is ticked where the trouble is urgent."""
    _calls_in_the_night(valley)
    shown = browser.open("/morning")
    assert shown.index("flood or storm") < shown.index("Which seed is best?")
    boxes = []
    for call in (1, 2):
        shown = browser.open(f"/deeds?deed=text&line=call-{call}")
        assert "Quiet hours: texts to farmers wait until 05:30." in shown
        boxes += re.findall(r'name="urgent"[^>]*>', browser.page.text)
    assert ["checked" in each for each in boxes] == [False, True]
    assert "waits for the end of the quiet hours" in _answer(browser, 1, words="The new one.")
    valley.round()
    assert valley.heard(AMINA) == []
    shown = _answer(browser, 2, words="Stay in, I come.", urgent="on")
    assert "1 text is on its way" in shown
    assert "Stay in, I come." in valley.heard(AMINA)[0]


def test_an_answer_that_waits_stays_in_sight_until_it_leaves(
    valley: Valley, browser: Browser
) -> None:
    """The farmer has heard nothing yet; by then the call is off the list."""
    _calls_in_the_night(valley)
    browser.open("/morning")
    shown = _answer(browser, 1, words="The new one.")
    assert "Cries for help" in shown
    assert "Asha wrote: The new one. Answered, goes out 05:30 Send it at once" in shown
    valley.leap("2 Jun 05:31")
    browser.sign_in()
    assert "Which seed is best?" not in browser.open("/morning")
    assert "The new one." in valley.heard(AMINA)[-1]


def test_an_answer_that_waits_can_be_sent_at_once(valley: Valley, browser: Browser) -> None:
    """The officer thinks better of it; the trail tells."""
    _calls_in_the_night(valley)
    browser.open("/morning")
    _answer(browser, 1, words="The new one.")
    assert "Your text is on its way" in browser.send("/calls/1/at-once")
    assert "The new one." in valley.heard(AMINA)[0]
    assert "Which seed is best?" not in browser.open("/morning")
    assert "had already gone out" in browser.send("/calls/1/at-once")
    with valley.house.store.look() as work:
        assert work.audit.latest(1, without=LOOKS)[0].act == "answer_hastened"


def test_where_a_setting_keeps_the_quiet_hours_for_all_no_box_is_shown(
    valley: Valley, new_browser: NewBrowser, browser: Browser
) -> None:
    """Only that the text waits, and until when; a box that was sent all the same is nothing."""
    _calls_in_the_night(valley)
    valley.house = replace(valley.house, urgent_breaks_quiet=False)
    app = create_app(valley.house, secret="w", wake=valley.send, clock=lambda: valley.now)
    strict = Browser(app.test_client())
    strict.sign_in()
    shown = strict.open("/deeds?deed=text&line=call-2")
    assert "wait until 05:30" in shown and "Send at once" not in shown
    shown = _answer(strict, 2, words="Stay in, I come.", urgent="on")
    assert "waits for the end of the quiet hours" in shown and "Send it at once" not in shown
    assert "had already gone out" in strict.send("/calls/2/at-once")
    assert valley.heard(AMINA) == []


def test_by_day_nothing_is_said_of_quiet_hours(valley: Valley, browser: Browser) -> None:
    """There is nothing to choose."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    _call(valley, AMINA, "Come and see my seed")
    shown = browser.open("/deeds?deed=text&line=call-1")
    assert "Quiet hours" not in shown and "Send at once" not in shown


def test_an_answer_that_was_lost_brings_its_call_back(valley: Valley, browser: Browser) -> None:
    """Until somebody sees to it, or a second answer is on its way."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    _call(valley, AMINA, "Come and see my seed")
    valley.leap(valley.now + timedelta(hours=2))  # sooner it is one call
    _call(valley, AMINA, "Goats, too")
    valley.heard(AMINA)
    valley.operator.down = True
    browser.open("/morning")
    for call in (1, 2):
        _answer(browser, call, words="Fence the bed.")
    assert "Answered, goes out" in browser.open("/morning")
    with valley.house.store.work() as work:
        work.outbox.expire(valley.now + timedelta(days=2, minutes=5))
    valley.leap(valley.now + timedelta(days=2, hours=1))
    valley.operator.down = False
    browser.sign_in()
    shown = browser.open("/morning")
    assert "Calls for help 2" in shown
    assert shown.count("Your answer did not reach the phone") == 2
    _seen(browser, 1)
    _answer(browser, 2, words="Fence it well.")
    valley.leap(valley.now + MINUTE)
    shown = browser.open("/morning")
    assert "Come and see my seed" not in shown and "Goats, too" not in shown
    assert any("Fence it well." in text for text in valley.heard(AMINA))


def test_who_has_not_agreed_yet_is_counted_with_a_way_to_the_list(
    valley: Valley, browser: Browser
) -> None:
    """They hear no prompt and no warning, so somebody must go and ask."""
    for phone, name in ((AMINA, "Amina"), (BARAKA, "Baraka")):
        valley.text(OFFICER, f"ADD {CODE} {phone} Kijani {name}")
        valley.text(OFFICER, "1")
    assert "2 farmers have not agreed to texts yet" in browser.open("/morning")
    assert 'href="/farmers?standing=asked"' in browser.page.text
    valley.text(AMINA, "1")
    assert "1 farmer has not agreed to texts yet" in browser.open("/morning")


def test_a_farmer_who_stopped_is_not_written_to(valley: Valley, browser: Browser) -> None:
    """The page says to call or visit, and sends nothing even when it is asked to."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    _call(valley, AMINA, "Come and see my seed")
    valley.text(AMINA, "STOP")
    assert "has stopped all texts" in browser.open("/morning")
    assert "has stopped all texts" in _answer(browser, 1, words="Fence it.")
    assert valley.heard(AMINA) == []


@pytest.mark.parametrize(
    ("words", "said"),
    [("  ", "Choose a text or write one"), ("w" * 301, "at most 300 characters")],
)
def test_an_answer_that_cannot_be_sent_leaves_the_call_open(
    valley: Valley, browser: Browser, words: str, said: str
) -> None:
    """The officer is told why."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    _call(valley, AMINA, "Come and see my seed")
    browser.open("/morning")
    shown = _answer(browser, 1, words=words)
    assert said in shown
    assert "Come and see my seed" in browser.open("/morning")


def test_a_call_can_be_marked_as_seen_to(valley: Valley, browser: Browser) -> None:
    """By somebody who rang back, without a text."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    _call(valley, AMINA, "Come and see my seed")
    valley.heard(AMINA)
    browser.open("/morning")
    assert "1 is marked as seen" in _seen(browser, 1)
    assert valley.heard(AMINA) == []
    assert "seen to by Asha" in browser.open("/farmers/1")


def test_an_uncovering_that_nobody_confirmed_is_on_the_list(
    valley: Valley, browser: Browser
) -> None:
    """Asked twice on day 5 and not answered, it is there the next morning, until a visit."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    valley.go("7 Jun 06:30")
    shown = browser.open("/morning")
    assert "No answer: uncover and flood" in shown
    assert "Nursery A, day 6" in shown
    browser.send("/nurseries/1/visit", on="2026-06-07", words="Up and green")
    assert "No answer: uncover and flood" not in browser.open("/morning")


def test_yellow_leaves_are_on_the_list(valley: Valley, browser: Browser) -> None:
    """As soon as the farmer has said so."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    valley.go("6 Jun 06:30")
    valley.text(AMINA, "1")
    valley.go("8 Jun 06:30")
    valley.text(AMINA, "yellow")
    assert "Yellow leaves" in browser.open("/morning")


def test_a_bed_past_its_days_is_on_the_list_until_it_is_planted(
    valley: Valley, browser: Browser
) -> None:
    """From day 21 on; a visit holds it back for three days only."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    valley.go("22 Jun 06:30")
    browser.sign_in()
    assert "Day 21, not transplanted" in browser.open("/morning")
    browser.send("/nurseries/1/visit", on="2026-06-22", words="")
    assert "not transplanted" not in browser.open("/morning")
    valley.go("25 Jun 06:30")
    assert "Day 24, not transplanted" in browser.open("/morning")
    browser.open("/nurseries/1")
    browser.send(
        "/nurseries/1/dates", sow="2026-06-01", sown="on", transplanted_on="2026-06-25"
    )
    assert "not transplanted" not in browser.open("/morning")


def test_young_beds_under_a_warning_come_first(valley: Valley, browser: Browser) -> None:
    """Who asked for help before who is silent; who has covered is not on the list."""
    for phone in (AMINA, BARAKA, ZAWADI):
        valley.enrol(phone)
        valley.sow(phone, "31 May")
    valley.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    valley.text(OFFICER, "1")
    valley.text(AMINA, "1")
    valley.text(ZAWADI, "2")
    shown = browser.open("/morning")
    assert "Heavy rain 14:00 to 20:00" in shown and "1 covered, 1 need help, 1 silent" in shown
    asked, listed = shown.split("Nurseries to see today")[-2:]
    assert ZAWADI in asked and "help in the rain" in asked
    assert BARAKA in listed and ZAWADI not in listed
    assert "Rain warning, not known to be covered" in listed
    _seen(browser, 1)  # the call; her bed still needs somebody
    asked = browser.open("/morning").split("Nurseries to see today")[-2]
    assert ZAWADI in asked and "Needs help in the rain" in asked


def test_other_officers_villages_are_not_shown(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    """Neither on the list nor by their address, to look at or to change."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    _call(valley, AMINA, "Come and see my seed")
    other = new_browser()
    other.sign_in(OTHER_OFFICER)
    assert "Nothing is waiting for you" in other.open("/morning")
    for path in ("/nurseries/1", "/farmers/1", "/villages/1"):
        other.open(path)
        assert other.page.status_code == 404, path
    for path in (
        "/calls/1/closed",
        "/deeds?deed=text&line=call-1",
        "/deeds?deed=seen&line=call-1",
        "/deeds/do?deed=seen&line=call-1",
        "/deeds/do?deed=visited&line=bed-1",
        "/calls/1/at-once",
        "/nurseries/1/visit",
        "/nurseries/1/dates",
        "/nurseries/1/close",
        "/nurseries/1/text/1",
        "/farmers/1/text",
        "/villages/1/hand-over",
    ):
        other.open("/morning")
        other.send(path, words="hello", done="x", on="2026-06-01", sow="2026-06-02", why="x")
        assert other.page.status_code == 404, path
    assert "Come and see my seed" in browser.open("/morning")


def test_a_lead_sees_farmers_of_no_village_too(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    """Nobody else would see them."""
    valley.enrol(AMINA, village=3)
    valley.plan(AMINA, "5 June")
    _call(valley, AMINA, "Come and see my seed")
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    lead = new_browser()
    lead.sign_in(LEAD)
    assert "Come and see my seed" in lead.open("/morning")
    assert "Come and see my seed" not in lead.open("/morning?village=1")
    assert "Come and see my seed" not in browser.open("/morning")


def test_a_missed_call_is_a_call_for_help(valley: Valley, browser: Browser) -> None:
    """The operator tells of it over the wire, and the officer sees who to ring back."""
    valley.enrol(AMINA)
    told = {"id": "r-1", "from": AMINA, "to": "+447700900000", "at": valley.now.isoformat()}
    body = json.dumps(told).encode()
    headers = signed_headers("wire", valley.now, "/gateway/ring", body)
    answer = browser._client.post("/gateway/ring", data=body, headers=headers)
    assert answer.status_code == 204
    shown = browser.open("/morning")
    assert "rang you" in shown and AMINA in shown
    assert "missed call" in browser.open("/farmers/1?whole=yes")


@pytest.mark.parametrize(
    ("about", "words", "said"),
    [
        ("yellow", "Spots or rust on leaves", "Answered when asked: Spots or rust on leaves"),
        ("leaves", "2.5", "Open leaves counted: 2.5"),
        ("other", "Goats got in", "Goats got in"),
        ("unheard of", "Goats got in", "other"),
    ],
)
def test_what_the_talk_asked_is_told_apart_from_own_words(
    valley: Valley, browser: Browser, about: str, words: str, said: str
) -> None:
    """An answer that was chosen from a list is no quotation."""
    valley.enrol(AMINA)
    with valley.house.store.work() as work:
        work.calls.add(1, None, about, words, valley.now)
    assert said in browser.open("/morning")
    assert ("<blockquote>" in browser.page.text) == (about in ("other", "unheard of"))


def test_urea_that_was_advised_is_seen_until_a_visit(valley: Valley, browser: Browser) -> None:
    """Nobody was called, but an officer may want to look at the leaves."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    valley.go("10 Jun 08:00")
    for text in ("PROBLEM", "1", "8", "1", "1", "1", "2"):
        valley.text(AMINA, text)
    browser.sign_in()
    assert "Yellow leaves, urea advised" in browser.open("/morning")
    browser.open("/nurseries/1")
    browser.send("/nurseries/1/visit", on="2026-06-10", words="Greening again.")
    assert "urea advised" not in browser.open("/morning")


# --- cries for help --------------------------------------------------------------------------


def _cry(valley: Valley, kind: str, words: str, phone: str = AMINA) -> None:
    """Somebody cries for help by text."""
    with valley.house.store.work() as work:
        raise_alarm(work, valley.house, phone, RaiseAlarm(kind, words), valley.now)
    valley.send()


def test_a_cry_for_help_stands_before_all_else(valley: Valley, browser: Browser) -> None:
    """With who was told and when; people before beds."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    _call(valley, AMINA, "Come and see my seed")
    _cry(valley, "lost", "goats ate it all")
    _cry(valley, "poison", "my son <drank> it")
    shown = browser.open("/morning")
    assert "Cries for help 2" in shown
    order = [
        shown.index(words) for words in ("my son &lt;drank&gt; it", "goats ate", "Come and see")
    ]
    assert order == sorted(order)
    assert "Asha was told at 08:00" in shown


def test_a_cry_stays_until_a_person_says_what_was_done(
    valley: Valley, browser: Browser
) -> None:
    """Saved in the farmer's story; nobody more is told."""
    valley.enrol(AMINA)
    valley.add_officer(phone=LEAD, lead=True)
    _cry(valley, "poison", "help")
    assert "The next person is told at 08:10" in browser.open("/morning")
    assert "Write in a few words what was done" in browser.send("/calls/1/closed", done="  ")
    assert "Cries for help" in browser.open("/morning")
    shown = browser.send("/calls/1/closed", done="Rang her, the boy is at the post")
    assert "1 is closed" in shown and "Cries for help" not in shown
    assert "Done: Rang her, the boy is at the post" in browser.open("/farmers/1")
    valley.leap(valley.now + timedelta(minutes=20))
    assert valley.heard(LEAD) == []


def test_a_stranger_who_cries_is_shown_to_the_lead_without_a_page(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    """By number, since nothing else is kept of them."""
    valley.add_officer(phone=LEAD, lead=True)
    give_password(valley, LEAD)
    _cry(valley, "snake", "help", phone=BARAKA)
    assert BARAKA not in browser.open("/morning")
    lead = new_browser()
    lead.sign_in(LEAD)
    assert BARAKA in lead.open("/morning") and BARAKA not in lead.open("/farmers")


def test_where_nobody_could_be_told_the_page_says_so(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    """The one officer there is cries himself."""
    valley.enrol(OFFICER)
    _cry(valley, "wound", "I cut my leg", phone=OFFICER)
    shown = browser.open("/morning")
    assert "I cut my leg" in shown and "was told at" in shown  # the officer of elsewhere


def test_who_was_asked_whether_somebody_is_hurt_is_shown_with_what_they_said(
    valley: Valley, browser: Browser
) -> None:
    """Before they answer, and after."""
    valley.enrol(AMINA)
    with valley.house.store.work() as work:
        asks = RaiseAlarm("hurt", "dawa macho", sure=False)
        raise_alarm(work, valley.house, AMINA, asks, valley.now)
    assert "Asked whether anybody is hurt, no answer yet" in browser.open("/morning")
    with valley.house.store.work() as work:
        settle_alarm(work, valley.house, AMINA, SettleAlarm(hurt=True), valley.now)
    assert "Says that somebody is hurt" in browser.open("/morning")


def test_who_wants_to_die_is_shown_to_one_officer_and_the_lead(
    valley: Valley, browser: Browser, new_browser: NewBrowser
) -> None:
    """Nowhere else: not this morning, not in the story, not among messages, by no link."""
    third = "+447700900005"
    valley.add_officer(_village(valley), phone=third)
    give_password(valley, third)
    valley.enrol(AMINA)
    _cry(valley, "die", "I cannot go on")
    shown = browser.open("/morning")
    assert "I cannot go on" in shown and "Only the person who was told first" in shown
    other = new_browser()
    other.sign_in(third)
    for page in ("/morning", "/farmers/1?whole=yes", "/messages", "/villages"):
        assert "I cannot go on" not in other.open(page) and "die" not in other.open(page)
    assert "Cries for help" not in other.open("/morning")
    _answer(browser, 1, words="I come to you now")
    for page in ("/villages/1", "/farmers/1?whole=yes", "/messages"):
        shown = other.open(page)
        assert "I come to you now" not in shown and "answered a call" not in shown
    other.send("/calls/1/closed", done="?")
    assert other.page.status_code == 404
    _answer(other, 1, words="?")
    assert other.page.status_code == 404
    assert "I come to you now" in browser.open("/farmers/1")


def _village(valley: Valley) -> Village:
    with valley.house.store.look() as work:
        return work.people.villages()[0]
