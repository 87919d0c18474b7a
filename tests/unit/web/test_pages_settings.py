"""What the head of a programme sets on a page, and what follows at once."""

from dataclasses import replace
from datetime import UTC, time

import pytest

from assistant.service.house import House
from assistant.service.in_force import InForce
from assistant.settings import Settings
from assistant.wiring.refit import refit_of
from tests.unit.web.conftest import Browser, NewBrowser, give_password
from tests.valley import AMINA, LEAD, NAIROBI, OFFICER, Valley


def way(valley: Valley) -> None:
    """A lead, an officer, and Amina, whose plan is made."""
    kijani = valley.add_village("Kijani")
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, LEAD):
        give_password(valley, phone)
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    valley.heard(AMINA)


@pytest.fixture
def set_up(valley: Valley) -> Valley:
    """The valley, as a machine's settings have made it."""
    refit = refit_of(Settings(zone=NAIROBI), valley.house)
    valley.house = replace(valley.house, refit=refit)
    return valley


@pytest.fixture
def lead(set_up: Valley, new_browser: NewBrowser) -> Browser:
    """The lead, at the settings."""
    found = new_browser()
    found.come_in(LEAD)
    found.open("/programme/settings")
    return found


def house(valley: Valley) -> House:
    """The house as another process has it."""
    return InForce(valley.house).house


HOURS = {"second_at": "16:00", "quiet_from": "20:00", "quiet_until": "05:30"}


def test_the_hour_of_the_prompt_moves_with_what_is_planned(
    valley: Valley, lead: Browser
) -> None:
    """Tomorrow's text leaves at the new hour; today's keeps its own; the trail tells both."""
    shown = lead.send("/programme/settings/hours", prompt_at="7:15", **HOURS)
    assert "It applies from now on" in shown and "set here. Otherwise: 06:00" in shown
    assert house(valley).hours.prompt == time(7, 15)
    with valley.house.store.look() as work:
        due = [each.due_at for each in work.reminders.of_nursery(1)]
        done = work.audit.latest(1)[0]
    later = {each.astimezone(UTC).time() for each in due if each > valley.now}
    assert later == {time(4, 15)}  # 07:15 in Nairobi
    assert (done.act, done.detail) == ("setting_changed", "prompt_at: 06:00 -> 07:15")


def test_hours_out_of_order_change_nothing(valley: Valley, lead: Browser) -> None:
    """Prompts outside of them would never leave."""
    shown = lead.send("/programme/settings/hours", prompt_at="21:00", **HOURS)
    assert "Nothing was changed. Write hours" in shown
    assert house(valley).hours == valley.house.hours


def test_a_language_that_somebody_is_written_to_in_stays(valley: Valley, lead: Browser) -> None:
    """Another one is spoken at once."""
    assert "still written to" in lead.send("/programme/settings/languages", languages=["sw"])
    assert "Choose a language" in lead.send("/programme/settings/languages")
    assert "It applies from now on" in lead.send(
        "/programme/settings/languages", languages=["en", "bn"]
    )
    now = house(valley)
    assert now.languages == ("en", "bn") and now.catalogue("bn").language == "bn"


def test_a_price_needs_a_currency_and_money_a_price(valley: Valley, lead: Browser) -> None:
    """Emptied fields give back what the machine says."""
    lead.send("/programme/settings/limits", day_segments="0", month_money="500")
    assert "needs a price" in lead.words()
    lead.send("/programme/settings/price", price_per_segment="0.80", currency="")
    assert "Write a price" in lead.words()
    lead.send("/programme/settings/price", price_per_segment="0.80", currency="kes")
    tariff = house(valley).tariff
    assert tariff is not None and (str(tariff.per_segment), tariff.currency) == ("0.80", "KES")
    lead.send("/programme/settings/price", back="1")
    assert house(valley).tariff is None


def test_numbers_of_the_programme_are_those_of_villages_without_any(
    valley: Valley, lead: Browser
) -> None:
    """They are looked at before they are kept."""
    form = {"programme": "Kijani rice", "emergency": "nobody"}
    assert "need a phone number" in lead.send("/programme/settings/name", **form)
    form["emergency"] = "07700 900911"
    assert "Kijani rice" in lead.send("/programme/settings/name", **form)
    with valley.house.store.look() as work:
        near = house(valley).phonebook.of(work.people.village(1))
    assert near.emergency == "07700 900911"


@pytest.mark.parametrize(
    "address",
    ["http://met.example/feed", "/etc/passwd", "https://10.0.0.1/cap", "https://localhost/"],
)
def test_a_page_reads_alerts_from_names_by_https_only(
    valley: Valley, lead: Browser, address: str
) -> None:
    """Not from files of the machine, nor from its own net."""
    form = {
        "alerts_events": "heavy rain, hujan lebat",
        "alerts_severities": ["Severe", "Extreme"],
        "alerts_urgencies": ["Expected"],
        "alerts_certainties": ["Likely"],
    }
    path = "/programme/settings/alerts"
    assert "Nothing was changed" in lead.send(path, **form, alerts_from=address)
    lead.send(path, **form, alerts_from="https://met.example/cap\nhttps://met.example/2")
    now = house(valley)
    assert now.alerts_from == ("https://met.example/cap", "https://met.example/2")
    assert now.alert_rules.events == ("heavy rain", "hujan lebat")
    assert now.alert_rules.severities == {"Severe", "Extreme"}


def test_seasons_begin_in_the_months_that_are_ticked(valley: Valley, lead: Browser) -> None:
    """At least in one."""
    assert "Choose a month" in lead.send("/programme/settings/seasons")
    lead.send("/programme/settings/seasons", season_months=["3", "10"])
    assert house(valley).season_months == (3, 10)


def test_nobody_but_a_lead_sets_anything(set_up: Valley, new_browser: NewBrowser) -> None:
    """Neither sees it; nor is there such a page where no settings were read."""
    officer = new_browser()
    officer.sign_in()
    officer.open("/programme/settings")
    assert officer.page.status_code == 404
    officer.open("/morning")
    officer.send("/programme/settings/seasons", season_months=["3"])
    assert officer.page.status_code == 404 and house(set_up).season_months == (1, 7)


def test_what_cannot_be_used_any_more_is_passed_over(set_up: Valley) -> None:
    """The environment changed, or a release reads otherwise: the service goes on."""
    with set_up.house.store.work() as work:
        work.running.set("prompt_at", "25:00")
    assert house(set_up).hours == set_up.house.hours


def test_another_process_sees_a_change_within_seconds(set_up: Valley) -> None:
    """It does not ask at each text."""
    seconds = [0.0]
    kept = InForce(set_up.house, lambda: seconds[0])
    assert list(kept.house.season_months) == [1, 7]
    with set_up.house.store.work() as work:
        work.running.set("season_months", "4")
    assert list(kept.house.season_months) == [1, 7]
    seconds[0] = 5.0
    assert list(kept.house.season_months) == [4]


def test_limits_of_villages_and_officers_are_set_beside_the_others(
    valley: Valley, lead: Browser
) -> None:
    """They hold at once, and the trail tells of each."""
    form = {"day_segments": "0", "month_money": "0", "village_month_money": "0"}
    form |= {"village_segments": "300", "officer_day_texts": "50", "officer_month_texts": "900"}
    assert "It applies from now on" in lead.send(
        "/programme/settings/limits", **form, strangers_hour_answers="70"
    )
    now = house(valley)
    assert (now.village_segments, now.officer_day_texts) == (300, 50)
    assert (now.officer_month_texts, now.strangers_hour_answers) == (900, 70)
    with valley.house.store.look() as work:
        detail = work.audit.latest(1)[0].detail
    assert "village_segments: 0 -> 300" in detail and "officer_month_texts" in detail
    form["village_month_money"] = "25"
    assert "needs a price" in lead.send("/programme/settings/limits", **form)
    assert "whole numbers" in lead.send("/programme/settings/limits", village_segments="-1")
    assert house(valley).village_segments == 300


def test_a_lead_sees_that_unknown_numbers_wait_and_lets_them_be_answered(
    valley: Valley, lead: Browser
) -> None:
    """On the page of stopped texts, by what it is."""
    valley.house = replace(valley.house, strangers_hour_answers=1)
    for last in "12":
        valley.text(f"+44770090060{last}", "hello there")
    assert "Answers to unknown numbers" in lead.open("/stop-texts")
    assert "They go out again" in lead.send("/stop-texts/1/let-go")
    assert "Answers to unknown numbers" not in lead.open("/stop-texts")
    assert valley.text("+447700900603", "hello there")
