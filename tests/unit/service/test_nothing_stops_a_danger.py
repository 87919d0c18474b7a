"""No limit, quiet hour, setting, stop button or hold keeps a first danger from being answered
or its words from reaching a person, nor a STOP's confirmation, a warning, an all-clear.

All limits stand in one table, and a setting that is in neither table fails a test: whoever adds
one decides here which it is.
"""

from collections.abc import Callable, Iterable
from dataclasses import fields, replace
from datetime import time, timedelta
from decimal import Decimal
from functools import cache

import pytest

from assistant.channel import Channel, Outgoing, Tariff
from assistant.dialogue.values import CallForHelp
from assistant.reminders.plan import Hours
from assistant.service.brakes import ALL, KIND, KINDS, VILLAGE, put_on
from assistant.service.effects import Scene, carry_out
from assistant.service.floods import MOST_A_DAY, MOST_AN_HOUR, SAME_TIMES
from assistant.service.pulse import hold_texts
from assistant.service.sight import sight_of
from assistant.settings import Settings
from assistant.wording import messages_aid as aid
from assistant.wording import messages_talk as m
from tests.unit.service.conftest import lead_on
from tests.valley import (
    AMINA,
    CODE,
    LEAD,
    MWANGA,
    OFFICER,
    ZAWADI,
    Staged,
    Valley,
    Way,
    like,
    settle,
)

Limit = Callable[[Valley], object]
SNAKE, FLOOD = "a snake has bitten my son", "the water is over the mats, help"
STRANGER = "+447700900188"


# --- what limits, holds and stops ------------------------------------------------------------


def _put(what: str, which: str = "", village: int | None = None) -> Limit:
    def stop(valley: Valley) -> None:
        with valley.house.store.look() as work:
            lead = work.people.officer(LEAD)
            assert lead is not None
            sight = sight_of(work, lead)
        assert put_on(valley.house, sight, what, which, village, "a test", valley.now)

    return stop


def _with(spend: bool = False, **given: object) -> Limit:
    """A house with these limits, which are reached where `spend` says so."""

    def stop(valley: Valley) -> None:
        tariff = Tariff(Decimal("0.80"), "KES")
        valley.house = replace(valley.house, tariff=tariff, **given)  # type: ignore[arg-type]
        if spend:
            valley.text(AMINA, "MENU")
            valley.send()

    return stop


def _hold(valley: Valley) -> None:
    hold_texts(valley.house, "a test", valley.now)


def _an_hour(valley: Valley) -> None:
    """She has had all the answers of an hour, the last of them the same again and again."""
    _talk(valley, MOST_AN_HOUR, timedelta(seconds=20))
    for _ in range(SAME_TIMES + 2):
        valley.post(AMINA, "HELP")


def _a_day(valley: Valley) -> None:
    """She has had all the answers of a day, and none of the last hour's."""
    _talk(valley, MOST_A_DAY, timedelta(minutes=2))
    valley.now += timedelta(hours=1)
    assert not valley.text(AMINA, "MENU")


def _talk(valley: Valley, times: int, between: timedelta) -> None:
    for number in range(times + 1):  # the last one is told that no more are answered
        valley.now += between
        valley.post(AMINA, ("MENU", "HELP")[number % 2])
    valley.send()
    valley.heard(AMINA)
    assert not valley.text(AMINA, "MENU")


def _calls(valley: Valley) -> None:
    """She has called more often than officers are texted of."""
    for kind in ("officer", "yellow", "seed", "animals", "water", "spare", "leaves") * 2:
        with valley.house.store.work() as work:
            scene = Scene(work, valley.house, AMINA, Channel.SMS, valley.now)
            carry_out((CallForHelp(kind, "", None),), scene)
    valley.send()


def _strangers(valley: Valley) -> None:
    """Unknown numbers have had all the answers of an hour."""
    valley.house = replace(valley.house, strangers_hour_answers=1)
    for number in range(3):
        valley.text(f"+4477009005{number:02}", "hello")


def _few(valley: Valley) -> None:
    valley.text(AMINA, "WORK DAYS")


# By the setting that makes it, or by what a person does; all of them are tried.
BY_SETTING: dict[str, Limit] = {
    "day_segments": _with(spend=True, day_segments=1),
    "month_money": _with(spend=True, month_money=Decimal("0.80")),
    "village_segments": _with(spend=True, village_segments=1),
    "village_month_money": _with(spend=True, village_month_money=Decimal("0.80")),
    "officer_day_texts": _with(officer_day_texts=1),
    "officer_month_texts": _with(officer_month_texts=1),
    "strangers_hour_answers": _strangers,
    "four_eyes": _with(four_eyes=1),
    "urgent_breaks_quiet": _with(urgent_breaks_quiet=False),
    "quiet_from": lambda valley: _hours(valley),
    "quiet_until": lambda valley: _hours(valley),
    "alarm_next_minutes": _with(alarm_next=timedelta(days=365)),
    "replies_free": _with(replies_free=False),
}
BY_PERSON: dict[str, Limit] = {
    "all is stopped": _put(ALL),
    **{f"{kind.value} is stopped": _put(KIND, kind.value) for kind in KINDS},
    "the village is stopped": _put(VILLAGE, village=1),
    "held": _hold,
    "answers of an hour": _an_hour,
    "calls of a day": _calls,
    "texts on work days only": _few,
}


def _hours(valley: Valley) -> None:
    """Quiet all day."""
    valley.house = replace(valley.house, hours=Hours(quiet_from=time(0), quiet_until=time(0)))


def _everything(valley: Valley) -> None:
    for limit in (*BY_PERSON.values(), *BY_SETTING.values()):
        limit(valley)


LIMITS: dict[str, Limit] = {
    **BY_SETTING,
    **BY_PERSON,
    "answers of a day": _a_day,  # alone: it takes five hours, in which others begin anew
    "all of them": _everything,
}

# What limits nothing that leaves: where things are, what they are called, how they look.
NO_LIMITS = frozenset(
    "parts database_url key_file journal_file programme programme_file zone region languages "
    "prompt_at second_at price_per_segment currency season_months practices_folder prices_file "
    "varieties_file alerts_from alerts_then alerts_keys alerts_every_s gateway_url "
    "gateway_secret gateway_secret_before gateway_timeout_s lines_file sender ussd_code "
    "screen_septets screen_ucs2 host port calls_port log_lines metrics_port web_secret "
    "second_factor code_uses web_https web_hosts web_proxy copies_folder copies_kept "
    "worker_pause_s lease_s send_batch send_hands".split()
)


def test_each_setting_is_tried_as_a_limit_or_is_none() -> None:
    """One that is new must be put where it belongs."""
    assert {each.name for each in fields(Settings)} == NO_LIMITS | set(BY_SETTING)
    assert not NO_LIMITS & set(BY_SETTING)


# --- what nothing stops ----------------------------------------------------------------------

LIMITED = pytest.mark.parametrize("limit", LIMITS.values(), ids=LIMITS.keys())
HOURS = pytest.mark.parametrize("hour", ["1 Jun 10:00", "1 Jun 23:30"])


@pytest.fixture
def limited(staged: Staged, limit: Limit, hour: str) -> Valley:
    """Amina, her officer and a lead at this hour, the limit reached; the way there is gone once
    for all tests."""
    return staged(_way(limit, hour))


@cache
def _way(limit: Limit, hour: str) -> Way:
    def way(valley: Valley) -> None:
        settle(valley)
        lead_on(valley)
        _at(valley, hour, limit)

    return way


def _at(valley: Valley, hour: str, limit: Limit) -> None:
    valley.go(hour)
    limit(valley)
    for phone in (AMINA, ZAWADI, OFFICER, LEAD):
        valley.heard(phone)
    valley.operator.offered.clear()


def _to(valley: Valley, phone: str) -> Iterable[Outgoing]:
    return (each for each in valley.operator.offered if each.phone == phone)


@LIMITED
@HOURS
def test_a_cry_is_answered_and_its_words_reach_a_person(limited: Valley) -> None:
    """Both texts are marked so that no quota of a line holds them."""
    assert limited.text(AMINA, SNAKE)[0] == like(aid.HURT_HERE, ...)
    assert any(SNAKE in text for text in limited.heard(OFFICER))
    assert all(each.urgent for each in _to(limited, AMINA))
    assert any(each.urgent and SNAKE in each.text for each in _to(limited, OFFICER))


@LIMITED
@HOURS
def test_a_bed_in_danger_is_answered_and_its_words_reach_a_person(limited: Valley) -> None:
    """In own words."""
    assert limited.text(AMINA, FLOOD)
    assert any(FLOOD in text for text in limited.heard(OFFICER))


@LIMITED
@HOURS
def test_a_danger_chosen_from_a_list_reaches_a_person(limited: Valley) -> None:
    """On a screen, which answers by itself."""
    with limited.house.store.work() as work:
        scene = Scene(work, limited.house, AMINA, Channel.USSD, limited.now)
        carry_out((CallForHelp("flood", "", None),), scene)
    limited.send()
    assert any("flood" in text for text in limited.heard(OFFICER))


@LIMITED
@HOURS
def test_a_stop_is_confirmed(limited: Valley) -> None:
    """Who says it hears that it was heard."""
    assert limited.text(AMINA, "STOP") == [like(m.STOPPED)]
    assert all(each.urgent for each in _to(limited, AMINA))


@LIMITED
@HOURS
def test_a_warning_and_its_all_clear_leave(limited: Valley) -> None:
    """The officer is answered, the farmer warned, and told when it is over."""
    limited.text(OFFICER, f"RAIN {CODE} Kijani tomorrow 1-8")
    limited.text(OFFICER, "1")
    assert any("rain" in text.lower() for text in limited.heard(AMINA))
    assert limited.text(OFFICER, f"CLEAR {CODE} Kijani")
    assert limited.heard(AMINA) == [like(m.ALL_CLEAR, ...)]
    assert all(each.urgent for each in _to(limited, AMINA))


def _stopped(valley: Valley) -> str:
    valley.text(AMINA, "STOP")
    return AMINA


def _resting(valley: Valley) -> str:
    valley.text(AMINA, "maybe I want no more of these texts")
    return AMINA


def _not_agreed(valley: Valley) -> str:
    for words in ("START", "1", "1"):
        valley.text(ZAWADI, words)
    return ZAWADI


def _answered_out(valley: Valley) -> str:
    for number in range(30):
        valley.text(STRANGER, f"x{number} y")
    return STRANGER


def _never_seen(valley: Valley) -> str:
    return STRANGER


def _unserved(valley: Valley) -> str:
    valley.enrol(ZAWADI, village=MWANGA.id)
    return ZAWADI


@pytest.mark.parametrize(
    "who", [_stopped, _resting, _not_agreed, _answered_out, _never_seen, _unserved]
)
@HOURS
def test_whoever_cries_is_heard_while_everything_stands(
    led: Valley, who: Callable[[Valley], str], hour: str
) -> None:
    """Stopped, resting, before a yes, a stranger who had their answers, nobody's village."""
    phone = who(led)
    _at(led, hour, _everything)
    led.heard(phone)
    assert led.text(phone, SNAKE)
    heard = [*led.heard(OFFICER), *led.heard(LEAD)]
    assert any(SNAKE in text for text in heard)


@HOURS
def test_a_strangers_stop_is_confirmed(led: Valley, hour: str) -> None:
    """However many unknown numbers wrote, and whatever else stands."""
    _at(led, hour, _everything)
    assert led.text(STRANGER, "STOP") == [like(m.STOPPED)]


@HOURS
def test_an_invited_farmers_answer_is_taken(led: Valley, hour: str) -> None:
    """Who was asked by an officer is no stranger."""
    led.text(OFFICER, f"ADD {CODE} {ZAWADI} Zawadi Kijani")
    led.text(OFFICER, "1")
    _at(led, hour, _strangers)
    assert led.text(ZAWADI, "1")
