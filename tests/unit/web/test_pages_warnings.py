"""The Warnings page: few steps to a warning, its reach shown, answers while it stands."""

from dataclasses import replace
from decimal import Decimal

import pytest

from assistant.channel import Tariff
from assistant.service.audit import LOOKS
from assistant.service.storms import drafts
from assistant.store import Became, Draft, DraftSource, KeptAlert
from assistant.web.app import create_app
from assistant.wording import messages_rain as r
from assistant.wording import messages_talk as m
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, BARAKA, KIJANI, MWANGA, OFFICER, ZAWADI, Valley, at, like

OTHER_OFFICER = "+447700900003"
RAIN = {"from_day": "2026-06-01", "from_time": "14:00", "to_time": "20:00", "sure": "likely"}


def way(valley: Valley) -> None:
    """Amina (day 2) and Baraka (sows tomorrow, Swahili) live in Kijani, Zawadi (day 2) in Mto
    Mwanga, which another officer serves."""
    kijani, mwanga = valley.add_village("Kijani"), valley.add_village("Mto Mwanga")
    valley.add_village("Bonde")
    valley.add_officer(kijani)
    valley.add_officer(mwanga, phone=OTHER_OFFICER)
    give_password(valley)
    give_password(valley, OTHER_OFFICER)
    valley.enrol(AMINA, village=2)
    valley.sow(AMINA, "30 May")
    valley.enrol(BARAKA, village=2, language=2)
    valley.plan(BARAKA, "2 June")
    valley.enrol(ZAWADI, village=3)
    valley.sow(ZAWADI, "30 May")
    for phone in (AMINA, BARAKA, ZAWADI):
        valley.heard(phone)


@pytest.fixture
def browser(new_browser: NewBrowser) -> Browser:
    """Signed in, where the way ends."""
    found = new_browser()
    found.come_in()
    found.open("/warnings")
    return found


def test_a_warning_is_two_forms_away(valley: Valley, browser: Browser) -> None:
    """Villages and hours; then its reach with the texts as they arrive; then it goes."""
    shown = browser.send("/warnings", village="1", **RAIN)
    assert browser.path == "/warnings/drafts/1"
    for part in ("Phones 2", "Heavy rain 14:00 to 20:00, Mon 1 Jun", "price not set"):
        assert part in shown
    assert "RAIN WARNING Kijani: heavy rain 2 pm to 8 pm on Mon 1 Jun." in shown
    assert "The rain is likely." in shown
    assert "Kiswahili" in shown and "sw:RAIN WARNING Kijani" in shown
    assert valley.heard(AMINA) == []
    assert "The warning is going out." in browser.send("/warnings/drafts/1/send")
    assert valley.heard(AMINA) == [like(m.WARNING, r.SURE_LIKELY, r.COVERED_OR_HELP)]
    waits = [like(m.WARNING_WAIT, r.SURE_LIKELY, r.UNDERSTOOD_OR_HELP, language="sw")]
    assert valley.heard(BARAKA) == waits
    assert valley.heard(ZAWADI) == []


def test_what_it_costs_is_shown_before_it_goes(valley: Valley, browser: Browser) -> None:
    """Two texts of two segments at 0.80."""
    valley.house = replace(valley.house, tariff=Tariff(Decimal("0.80"), "KES"))
    app = create_app(valley.house, secret="w", wake=valley.send, clock=lambda: valley.now)
    app.testing = True
    officer = Browser(app.test_client())
    officer.sign_in()
    officer.open("/warnings")
    shown = officer.send("/warnings", village="1", **RAIN)
    assert "Segments 4" in shown and "3.20" in shown


def test_pressed_twice_it_is_sent_once(valley: Valley, browser: Browser) -> None:
    """The page says both times that it goes out."""
    browser.send("/warnings", village="1", **RAIN)
    for _ in range(2):
        assert "The warning is going out." in browser.send("/warnings/drafts/1/send")
    assert len(valley.heard(AMINA)) == 1
    browser.open("/warnings/drafts/1")
    assert browser.path == "/warnings/1"


def test_another_officers_villages_are_not_warned(valley: Valley, browser: Browser) -> None:
    """Neither by a forged box nor by "all of them"."""
    shown = browser.send("/warnings", village="2", **RAIN)
    assert "Tick a village" in shown
    browser.send("/warnings", all="on", **RAIN)
    browser.send("/warnings/drafts/1/send")
    assert valley.heard(ZAWADI) == []


def test_a_draft_of_others_is_not_there(valley: Valley, browser: Browser) -> None:
    """Nor is what became of it."""
    with valley.house.store.work() as work:
        made = drafts.draft(work, Draft((2,), at("1 Jun 9:00"), at("1 Jun 15:00"), valley.now))
    path = f"/warnings/drafts/{made.id}"
    for forbidden in (path, f"/warnings/{made.id}"):
        browser.open(forbidden)
        assert browser.page.status_code == 404
    browser.open("/warnings")
    for deed in (f"{path}/send", f"{path}/drop", f"/warnings/{made.id}/clear"):
        browser.send(deed)
        assert browser.page.status_code == 404
    assert valley.heard(ZAWADI) == []


def _from_alert(valley: Valley, alert_id: int) -> int:
    """A draft as an official alert makes it, for both officers' villages."""
    wanted = Draft(
        (1, 2), at("1 Jun 14:00"), at("1 Jun 20:00"), valley.now, source=DraftSource.ALERT
    )
    with valley.house.store.work() as work:
        kept = drafts.draft(work, replace(wanted, hazard="Heavy rain", alert_id=alert_id))
    return kept.id


def test_a_draft_of_an_alert_is_changed_for_ones_own_villages(
    valley: Valley, browser: Browser
) -> None:
    """It stays one of the alert; the other officer's village keeps its draft."""
    alert = alert_of(valley)
    number = _from_alert(valley, alert_id=alert)
    assert "Change" in browser.open(f"/warnings/drafts/{number}")
    browser.open(f"/warnings?draft={number}")
    assert 'value="14:00"' in browser.page.text
    shown = browser.send(
        "/warnings",
        draft=str(number),
        village="1",
        **{**RAIN, "from_time": "16:00"},
        words="Go in",
    )
    assert "16:00 to 20:00" in shown and "Go in" in shown
    with valley.house.store.look() as work:
        left = [(each.village_ids, each.alert_id) for each in work.drafts.open(valley.now)]
    assert sorted(left) == [((1,), alert), ((2,), alert)]


def test_alerts_of_one_storm_are_one_thing(valley: Valley, browser: Browser) -> None:
    """One card, and one decision for all that say the same."""
    first, latest = (_from_alert(valley, alert_id=alert_of(valley, n)) for n in (1, 2))
    shown = browser.open("/warnings")
    assert "1 earlier one says the same" in shown
    browser.send(f"/warnings/drafts/{latest}/drop")
    assert "says the same" not in browser.open("/warnings")
    with valley.house.store.look() as work:
        assert [each.village_ids for each in work.drafts.open(valley.now)] == [(2,), (2,)]
    assert first < latest


def alert_of(valley: Valley, number: int = 1) -> int:
    """A row of an official alert, bare."""
    with valley.house.store.work() as work:
        kept = KeptAlert(source="a file", received_at=valley.now, became=Became.DRAFTED)
        return work.alerts.add(kept, b"<alert/>", f"digest {number}").id


def test_the_all_clear_is_for_the_villages_that_are_ticked(
    valley: Valley, browser: Browser
) -> None:
    """The others stay warned; with no box ticked nothing happens."""
    valley.add_officer(KIJANI, MWANGA)
    browser.open("/warnings")
    browser.send("/warnings", all="on", **RAIN)
    browser.send("/warnings/drafts/1/send")
    assert "For which villages" in browser.words()
    assert "Tick a village" in browser.send("/warnings/1/clear", some="yes")
    browser.send("/warnings/1/clear", some="yes", village="2")
    with valley.house.store.look() as work:
        assert work.warnings.standing(1, valley.now) and not work.warnings.standing(
            2, valley.now
        )


def test_who_was_phoned_is_ticked_off_and_can_be_undone(
    valley: Valley, browser: Browser
) -> None:
    """The silent stand by village; a tick is their answer."""
    browser.send("/warnings", village="1", **RAIN)
    browser.send("/warnings/drafts/1/send")
    assert "Tick somebody first" in browser.send("/warnings/1/rang")
    shown = browser.send("/warnings/1/rang", farmer="1")
    assert "1 phone call is recorded" in shown
    with valley.house.store.look() as work:
        assert work.warnings.tally(1).covered == 1
    browser.send("/deeds/1/undo")
    with valley.house.store.look() as work:
        assert work.warnings.tally(1).covered == 0
    browser.send("/warnings/99/rang", farmer="1")
    assert browser.page.status_code == 404


def test_a_second_text_says_what_it_takes(valley: Valley, browser: Browser) -> None:
    """As soon as it is due, without a reload: it stands in the part that renews itself."""
    browser.send("/warnings", village="1", **RAIN)
    browser.send("/warnings/drafts/1/send")
    valley.round()
    part = browser.open("/warnings/1?part=yes")
    assert "a second text" in part and "segments, price not set" in part


WRONG = {
    "no village": ({}, "Tick a village"),
    "no hours": ({"village": "1", "to_time": ""}, "Give the day and both times"),
    "hours that are none": ({"to_time": "25:99"}, "Until, time: 25:99 is no time of day"),
    "a date that is none": ({"to_day": "12 June"}, "a later one: 12 June is no date here"),
    "a danger of nobody's": ({"danger": "snow"}, "Danger: choose one from the list"),
    "a wrong month": ({"village": "1", "from_day": "2026-09-01"}, "more than 3 days ahead"),
    "yesterday": ({"village": "1", "from_day": "2026-05-30"}, "These hours are over"),
    "a week": ({"village": "1", "to_day": "2026-06-09"}, "may stand, 3 days"),
    "backward": ({"village": "1", "to_day": "2026-05-31"}, "ends before it begins"),
    "a distance from nowhere": ({"km": "10"}, "Choose the village or write the point"),
    "a distance that is none": ({"km": "far", "point": "1, 2"}, "(km): far is no number"),
    "a distance beyond the map": ({"km": "501", "point": "1, 2"}, "Give the distance in km"),
    "nobody near": ({"km": "10", "point": "1, 2"}, "No village of yours lies so near"),
    "a long word": ({"village": "1", "words": "w" * 101}, "at most 100 characters"),
}


@pytest.mark.parametrize(("fields", "told"), WRONG.values(), ids=WRONG.keys())
def test_a_form_that_is_wrong_says_why_and_loses_nothing(
    browser: Browser, fields: dict[str, str], told: str
) -> None:
    """What was filled in stands there still."""
    shown = browser.send("/warnings", **{**RAIN, "words": "Stay at home", **fields})
    assert browser.page.status_code == 422
    assert told in shown
    kept = {**RAIN, "words": "Stay at home", **fields}
    assert f'value="{kept["from_time"]}"' in browser.page.text
    assert f'value="{kept["words"]}"' in browser.page.text
    assert ('value="1" checked' in browser.page.text) is ("village" in fields)


def test_the_form_begins_with_the_coming_hour(valley: Valley, browser: Browser) -> None:
    """Never with an hour that is past; after eleven at night on the next day."""
    for now, day, hour in (
        ("1 Jun 08:44", "2026-06-01", "09:00"),
        ("1 Jun 23:10", "2026-06-02", "00:00"),
    ):
        valley.go(now)
        browser.open("/warnings")
        assert f'name="from_day" required type="date" value="{day}"' in browser.page.text
        assert f'name="from_time" required type="time" value="{hour}"' in browser.page.text


def test_rain_past_midnight_ends_on_the_next_day(browser: Browser) -> None:
    """Without a second date."""
    night = {**RAIN, "from_time": "20:00", "to_time": "02:00"}
    browser.send("/warnings", village="1", **night)
    assert "Heavy rain 20:00 to 02:00, Mon 1 Jun" in browser.words()


def test_the_reach_is_drawn_by_distance(valley: Valley, browser: Browser) -> None:
    """From a village or a point; who has no place on the map is named, not forgotten."""
    kijani = valley.house.store
    with kijani.work() as work:
        work.people.place_village(1, -0.68, 37.35)
        asha = work.people.officer(OFFICER)
        assert asha is not None
        work.people.add_officer(OFFICER, "Asha", asha.code_hash, "en", [3])
    shown = browser.send("/warnings", km="5", point="-0.70, 37.36", **RAIN)
    assert "so they are not in it: Bonde" in shown
    assert "Phones 2" in shown
    browser.open("/warnings")
    assert "Phones 2" in browser.send("/warnings", km="1", near="1", **RAIN)


def test_a_draft_can_be_changed_and_dropped(valley: Valley, browser: Browser) -> None:
    """The one that is changed is dropped for the new one."""
    browser.send("/warnings", village="1", **RAIN)
    browser.open("/warnings?draft=1")
    assert 'name="draft" type="hidden" value="1"' in browser.page.text
    browser.send("/warnings", village="1", draft="1", **{**RAIN, "to_time": "21:00"})
    assert browser.path == "/warnings/drafts/2"
    assert "No warning is sent." in browser.send("/warnings/drafts/2/drop")
    assert "Waiting for your decision" not in browser.words()
    assert valley.heard(AMINA) == []


def test_a_draft_from_an_official_alert_waits_on_the_page(
    valley: Valley, browser: Browser
) -> None:
    """With the service's word for it, in its signs."""
    with valley.house.store.work() as work:
        wanted = Draft(
            (1, 2),
            at("1 Jun 14:00"),
            at("1 Jun 20:00"),
            valley.now,
            hazard="Heavy <rain> & wind",
            source=DraftSource.ALERT,
            alert_id=5,
        )
        drafts.draft(work, wanted)
    shown = browser.open("/warnings")
    assert "Waiting for your decision" in shown
    assert "From an official alert: Heavy &lt;rain&gt; &amp; wind" in shown
    browser.send("/warnings/drafts/1/send")
    assert len(valley.heard(AMINA)) == 1
    assert valley.heard(ZAWADI) == []  # her officer has yet to decide


def test_who_cannot_be_texted_is_named(valley: Valley, browser: Browser) -> None:
    """Somebody must go there or call."""
    valley.text(AMINA, "STOP")
    shown = browser.send("/warnings", village="1", **RAIN)
    assert "No text reaches these: call or send word" in shown and AMINA in shown
    assert "Phones 1" in shown


def test_at_night_the_page_says_what_the_quiet_hours_do(
    valley: Valley, browser: Browser
) -> None:
    """They are broken for a warning, whatever the setting says of other urgent words."""
    valley.leap("1 Jun 23:00")
    night = {**RAIN, "from_day": "2026-06-02", "from_time": "02:00", "to_time": "08:00"}
    assert "may break the quiet hours" in browser.send("/warnings", village="1", **night)
    valley.house = replace(valley.house, urgent_breaks_quiet=False)
    app = create_app(valley.house, secret="w", wake=valley.send, clock=lambda: valley.now)
    app.testing = True
    officer = Browser(app.test_client())
    officer.sign_in()
    assert "may break the quiet hours" in officer.open("/warnings/drafts/1")


# --- while it stands --------------------------------------------------------------------------


@pytest.fixture
def stormy(valley: Valley, browser: Browser) -> Browser:
    """Kijani is warned; Amina needs help, Baraka is silent."""
    browser.send("/warnings", village="1", **RAIN)
    browser.send("/warnings/drafts/1/send")
    valley.text(AMINA, "2")
    valley.heard(BARAKA)
    return browser


def test_answers_come_in_while_it_stands(valley: Valley, stormy: Browser) -> None:
    """Counted, the silent named, and who needs help stands in Waiting for me."""
    shown = stormy.open("/warnings/1")
    assert "Kijani stands 2 2 0 1 1" in shown
    assert "Waiting here: 0" in shown and "Failed: 0" in shown
    silent = shown[shown.index("No answer yet Kijani") :]
    assert BARAKA in silent and AMINA not in silent
    assert "help in the rain" in stormy.open("/morning")
    valley.text(BARAKA, "1")
    part = stormy.open("/warnings/1?part=yes")
    assert "Kijani stands 2 2 1 1 0" in part and "Everybody has answered." in part
    assert "<html" not in stormy.page.text


def test_without_a_script_the_page_comes_again_by_itself(stormy: Browser) -> None:
    """Unless one wants to read it in peace."""
    stormy.open("/warnings/1")
    assert '<noscript><meta http-equiv="refresh" content="20"></noscript>' in stormy.page.text
    stormy.open("/warnings/1?still=yes")
    assert "http-equiv" not in stormy.page.text


def test_the_silent_get_a_second_text(valley: Valley, stormy: Browser) -> None:
    """Once."""
    assert "A second text goes to 1 phone." in stormy.send("/warnings/1/again")
    assert valley.heard(BARAKA) == [like(r.WARNING_AGAIN, language="sw")]
    assert "Nobody is left to be asked again." in stormy.send("/warnings/1/again")


def test_the_all_clear_ends_it(valley: Valley, stormy: Browser) -> None:
    """It stands no more, and the list says so."""
    assert "The all-clear goes out." in stormy.send("/warnings/1/clear")
    assert valley.heard(BARAKA) == [like(m.ALL_CLEAR, r.STAY_SAFE, language="sw")]
    assert "all-clear given" in stormy.words()
    assert "does not stand any more" in stormy.send("/warnings/1/clear")
    assert "No warning stands." in stormy.open("/warnings")
    assert "Over in the last 7 days" in stormy.words()


def test_it_is_called_back_while_it_goes_out(valley: Valley, browser: Browser) -> None:
    """The operator is down: no text has left, so nobody is to be corrected."""
    valley.operator.down = True
    browser.send("/warnings", village="1", **RAIN)
    browser.send("/warnings/drafts/1/send")
    shown = browser.send("/warnings/1/recall")
    assert "Called back: 2 texts stayed here, 0 phones get a correction." in shown
    assert "taken back" in shown
    valley.operator.down = False
    valley.go("1 Jun 21:00")
    assert not any("RAIN" in text or "mistake" in text for text in valley.heard(AMINA))


def test_all_that_was_done_stands_in_the_trail(valley: Valley, stormy: Browser) -> None:
    """Warning, second text, all-clear, each with its village and officer."""
    stormy.send("/warnings/1/again")
    stormy.send("/warnings/1/clear")
    with valley.house.store.look() as work:
        acts = [
            (each.act, each.officer, each.village)
            for each in work.audit.latest(3, without=LOOKS)
        ]
    assert acts == [
        (act, "Asha", "Kijani") for act in ("warning_cleared", "asked_again", "warned")
    ]


# --- where a village lies ---------------------------------------------------------------------


def test_a_village_is_placed_on_its_page(valley: Valley, browser: Browser) -> None:
    """What is no place is told, and what was kept stays."""
    browser.open("/villages/1")
    assert "The place is kept." in browser.send("/villages/1/place", place="-0.68, 37.35")
    assert 'value="-0.68, 37.35"' in browser.page.text
    assert "That is no place." in browser.send("/villages/1/place", place="near the mill")
    assert 'value="near the mill"' in browser.page.text
    browser.open("/villages/1")
    assert 'value="-0.68, 37.35"' in browser.page.text
    browser.send("/villages/2/place", place="1, 1")
    assert browser.page.status_code == 404
    browser.open("/villages/1")
    browser.send("/villages/1/place", place="")
    with valley.house.store.look() as work:
        assert [village.latitude for village in work.people.villages()] == [None, None, None]


def test_the_way_shows_where_a_page_under_it_is(browser: Browser) -> None:
    """On the list it is the page itself, on a draft the place that it belongs to."""
    browser.open("/warnings")
    assert '<a href="/warnings" aria-current="page">' in browser.page.text
    browser.send("/warnings", village="1", **RAIN)
    assert '<a href="/warnings" aria-current="true">' in browser.page.text


def test_rain_already_with_a_later_hour_is_asked_back(browser: Browser) -> None:
    """It is eight in the morning; one of the two is a slip. The form stays as it was."""
    shown = browser.send("/warnings", village="1", **RAIN | {"sure": "observed"})
    assert browser.page.status_code == 422
    assert "but the hours begin later. Change one of them." in shown
    assert 'value="14:00"' in browser.page.text
    browser.send("/warnings", village="1", **RAIN | {"sure": "observed", "from_time": "09:00"})
    assert browser.path == "/warnings/drafts/1"


def test_a_warning_says_what_it_is_and_leads_back_to_the_list(browser: Browser) -> None:
    """As a draft and after it was sent."""
    browser.send("/warnings", village="1", **RAIN)
    assert "Rain warning, Kijani" in browser.words()
    shown = browser.send("/warnings/drafts/1/send")
    assert "<h1>Rain warning, Kijani</h1>" in browser.page.text
    assert "Heavy rain 14:00 to 20:00, Mon 1 Jun" in shown
    assert '<p class="up screen-only"><a href="/warnings">' in browser.page.text
    assert "Warnings that stand" in browser.open("/warnings")
