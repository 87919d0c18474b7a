"""What stops texts, and what nothing stops."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest

from assistant.channel import Tariff
from assistant.service.brakes import ALL, KIND, VILLAGE, brakes_page, let_go, put_on
from assistant.service.pulse import hold_texts, let_texts_go
from assistant.service.sight import Sight, sight_of
from assistant.wording import messages_aid as aid
from assistant.wording import messages_talk as m
from assistant.wording import messages_web_brakes as b
from tests.valley import AMINA, BARAKA, CODE, LEAD, OFFICER, Valley, like

Stop = Callable[[Valley], object]


def lead(valley: Valley) -> Sight:
    """What the lead sees."""
    with valley.house.store.look() as work:
        officer = work.people.officer(LEAD)
        assert officer is not None
        return sight_of(work, officer)


def _put(what: str, which: str = "", village: int | None = None) -> Stop:
    return lambda valley: put_on(
        valley.house, lead(valley), what, which, village, "a test", valley.now
    )


def _spent(valley: Valley) -> None:
    """The limit of the day is reached before anything leaves."""
    valley.house = replace(valley.house, day_segments=1)
    valley.text(BARAKA, "hello")
    valley.send()


def _held(valley: Valley) -> None:
    hold_texts(valley.house, "a test", valley.now)


def _poor(valley: Valley) -> None:
    """That of the month."""
    tariff = Tariff(Decimal("0.80"), "KES")
    valley.house = replace(valley.house, tariff=tariff, month_money=Decimal("0.80"))
    valley.text(BARAKA, "hello")
    valley.send()


STOPS: dict[str, Stop] = {
    "all": _put(ALL),
    "answers": _put(KIND, "reply"),
    "notices": _put(KIND, "notice"),
    "the village": _put(VILLAGE, village=1),
    "the day's limit": _spent,
    "the month's limit": _poor,
    "held": _held,
}


@pytest.mark.parametrize("stop", STOPS.values(), ids=STOPS.keys())
@pytest.mark.parametrize("hour", ["1 Jun 10:00", "1 Jun 23:30"])
def test_nothing_keeps_a_cry_from_being_answered_and_told(
    led: Valley, stop: Stop, hour: str
) -> None:
    """By day and in the quiet hours: the farmer has the text, the officer the notice."""
    led.go(hour)
    stop(led)
    for phone in (AMINA, OFFICER):
        led.heard(phone)
    assert led.text(AMINA, "a snake has bitten my son")[0] == like(aid.HURT_HERE, ...)
    assert any("snake" in text for text in led.heard(OFFICER))


@pytest.mark.parametrize("stop", STOPS.values(), ids=STOPS.keys())
def test_nothing_keeps_a_stop_from_being_confirmed(led: Valley, stop: Stop) -> None:
    """Who says STOP hears that it was heard."""
    stop(led)
    assert led.text(AMINA, "STOP") == [like(m.STOPPED)]


@pytest.mark.parametrize("stop", STOPS.values(), ids=STOPS.keys())
def test_nothing_keeps_a_warning_or_its_all_clear(led: Valley, stop: Stop) -> None:
    """The officer is answered, the farmer warned, and told when it is over."""
    stop(led)
    led.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    led.text(OFFICER, "1")
    assert any("rain" in text.lower() for text in led.heard(AMINA))
    led.text(OFFICER, f"CLEAR {CODE} Kijani")
    assert len(led.heard(AMINA)) == 1


@pytest.mark.parametrize("name", [name for name in STOPS if name not in ("notices",)])
def test_all_else_waits_and_leaves_when_it_is_let_go(led: Valley, name: str) -> None:
    """An ordinary answer."""
    STOPS[name](led)
    assert led.text(AMINA, "HELP") == []
    with led.house.store.look() as work:
        standing = work.brakes.standing(led.now)
    for each in standing:
        assert let_go(led.house, lead(led), each.id, led.now)
    let_texts_go(led.house)
    led.send()
    assert len(led.heard(AMINA)) == 1


def test_a_limit_tells_the_leads_once_and_ends_with_its_day(led: Valley) -> None:
    """It is not put on again once a lead let go."""
    _spent(led)
    assert led.heard(LEAD) == [like(b.LIMIT_TEXT)]
    led.text(AMINA, "HELP")
    led.send()
    assert led.heard(LEAD) == []
    page = brakes_page(led.house, lead(led), led.now)
    assert page is not None and [each.what for each in page.standing] == ["day"]
    assert page.left == 0
    led.go(led.now + timedelta(hours=17))
    page = brakes_page(led.house, lead(led), led.now)
    assert page is not None  # the next day has a limit of its own, and reaches it
    assert "2026-06-01" not in [each.which for each in page.standing]


def test_only_a_lead_stops_texts(led: Valley) -> None:
    """And only what there is."""
    with led.house.store.look() as work:
        officer = work.people.officer(OFFICER)
        assert officer is not None
        other = sight_of(work, officer)
    assert not put_on(led.house, other, ALL, "", None, "", led.now)
    assert not put_on(led.house, lead(led), KIND, "warning", None, "", led.now)
    assert not put_on(led.house, lead(led), VILLAGE, "", 99, "", led.now)
    assert brakes_page(led.house, other, led.now) is None
