"""Under a rain warning nobody is told to uncover or to sow, by any way."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.people import Village
from assistant.reminders.values import State
from assistant.service.storms.danger import in_danger
from assistant.wording import messages_cautions as h
from assistant.wording import messages_officer as o
from assistant.wording import messages_rain as r
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.valley import AMINA, CODE, KIJANI, OFFICER, Staged, Valley, at, day, like, settle


def to_amina(valley: Valley) -> None:
    """Amina sowed on 30 May and uncovers on 4 June; it is the evening before."""
    settle(valley)
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    valley.sow(AMINA, "30 May")
    valley.go("3 Jun 19:00")
    valley.heard(AMINA)


@pytest.fixture
def amina(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_amina)


def warn(valley: Valley, hours: str = "tomorrow 5-18") -> None:
    """The officer warns Kijani, and Amina answers that she has covered."""
    valley.text(OFFICER, f"RAIN {CODE} Kijani {hours}")
    assert valley.text(OFFICER, "1") == [like(o.WARNED)]
    assert valley.heard(AMINA) == [like(m.WARNING, r.COVERED_OR_HELP)]
    valley.text(AMINA, "1")


def states(valley: Valley, task: TaskCode = TaskCode.UNCOVER_FLOOD) -> dict[str, State]:
    """Where the task stands, by day."""
    with valley.house.store.work() as work:
        found = work.reminders.of_nursery(1)
    return {f"{each.day:%-d %b}": each.state for each in found if each.task is task}


DAY_5_RAIN = like(t.HEAD(label="A", day=5), t.P_UNCOVER_RAIN)
DAY_6 = like(t.HEAD(label="A", day=6), t.P_UNCOVER, h.SNAKES_AND_WATER, t.ASK_UP)


def test_the_text_of_day_5_says_to_keep_covered_and_the_next_day_asks(amina: Valley) -> None:
    """One merged text instead, in which nothing is asked."""
    warn(amina)
    amina.go("4 Jun 19:00")
    assert amina.heard(AMINA) == [DAY_5_RAIN]
    amina.go("5 Jun 06:00")
    assert amina.heard(AMINA) == [DAY_6]


def test_a_second_morning_of_rain_puts_it_off_again(amina: Valley) -> None:
    """Until the all-clear."""
    warn(amina, "tomorrow 5-6:30")
    amina.text(OFFICER, f"RAIN {CODE} Kijani 5 June 5-12")
    amina.text(OFFICER, "1")
    amina.heard(AMINA)
    amina.go("5 Jun 06:00")
    kept = like(t.HEAD(label="A", day=6), t.P_UNCOVER_RAIN)
    assert amina.heard(AMINA) == [DAY_5_RAIN, kept]
    amina.text(OFFICER, f"CLEAR {CODE} Kijani")
    amina.heard(AMINA)
    amina.go("6 Jun 06:00")
    assert amina.heard(AMINA)[-1] == like(t.HEAD, ..., t.P_UNCOVER, ...)


def test_a_warning_after_the_mornings_text_stops_the_second_asking(amina: Valley) -> None:
    """It was said at six; at noon rain is warned of."""
    amina.go("4 Jun 12:00")
    assert amina.heard(AMINA) == [like(t.HEAD, t.P_UNCOVER, h.SNAKES_AND_WATER, t.ASK_UP)]
    warn(amina, "13-19")
    amina.go("4 Jun 18:59")
    assert amina.heard(AMINA) == []
    assert states(amina)["4 Jun"] is State.SENT


def test_a_prompt_that_waits_is_written_again_when_rain_is_warned_of(amina: Valley) -> None:
    """The operator was down at six; the warning goes first, and no "uncover" after it."""
    amina.operator.down = True
    amina.go("4 Jun 06:01")
    amina.post(OFFICER, f"RAIN {CODE} Kijani 7-18")
    amina.post(OFFICER, "1")
    amina.operator.down = False
    amina.go("4 Jun 06:30")
    assert amina.heard(AMINA) == [like(m.WARNING, r.COVERED_OR_HELP), DAY_5_RAIN]


def test_what_was_missed_yesterday_is_not_caught_up_into_the_rain(amina: Valley) -> None:
    """The text of day 5 never arrived, and on day 6 rain is warned of."""
    amina.operator.down = True
    amina.go("4 Jun 21:00")
    amina.operator.down = False
    amina.text(OFFICER, f"RAIN {CODE} Kijani tomorrow 5-18")
    amina.text(OFFICER, "1")
    amina.heard(AMINA)
    amina.go("5 Jun 19:00")
    (text,) = amina.heard(AMINA)
    assert text == like(t.HEAD(label="A", day=6), t.P_UNCOVER_RAIN, ...)
    assert t.ASK_UP.text not in text
    amina.go("6 Jun 06:00")
    assert t.P_UNCOVER.text[:20] in amina.heard(AMINA)[0]


def test_seed_is_not_sown_into_the_rain(valley: Valley, kijani: Village) -> None:
    """Sowing moves to tomorrow, and the season with it."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")
    valley.go("9 Jun 19:00")
    valley.heard(AMINA)
    valley.text(OFFICER, f"RAIN {CODE} Kijani tomorrow 5-18")
    valley.text(OFFICER, "1")
    assert valley.heard(AMINA) == [like(m.WARNING_WAIT, r.UNDERSTOOD_OR_HELP)]
    valley.go("10 Jun 19:00")
    assert valley.heard(AMINA) == [like(t.HEAD, t.P_SOW_RAIN)]
    valley.go("11 Jun 06:00")
    assert valley.heard(AMINA) == [like(t.HEAD(label="A", day=0), t.P_SOW, t.ASK_DONE)]


# --- when she asks herself --------------------------------------------------------------------


def by_text(valley: Valley) -> str:
    return valley.text(AMINA, "TODAY")[0]


def by_menu(valley: Valley) -> str:
    valley.text(AMINA, "MENU")
    return valley.text(AMINA, "1")[0]


def by_screen(valley: Valley) -> str:
    valley.dial(AMINA)
    valley.key(AMINA, "0")
    return valley.key(AMINA, "1").text


def by_first_screen(valley: Valley) -> str:
    return valley.dial(AMINA).text


@pytest.mark.parametrize("asks", [by_text, by_menu, by_screen, by_first_screen])
def test_todays_work_says_no_uncover_while_the_warning_stands(
    amina: Valley, asks: Callable[[Valley], str]
) -> None:
    """She was asked at six; the warning came at noon."""
    amina.go("4 Jun 12:00")
    amina.heard(AMINA)
    warn(amina, "13-19")
    text = asks(amina)
    assert text == like(t.HEAD, ..., t.P_UNCOVER_RAIN, ...)


def test_a_phone_that_was_not_asked_is_not_told_to_uncover_either(amina: Valley) -> None:
    """Her shoots are late: on day 6 her bed is still covered, but she is not among those on
    days 0 to 5 whom the warning goes to."""
    amina.go("4 Jun 07:00")
    amina.text(AMINA, "2")
    amina.go("5 Jun 05:00")
    amina.heard(AMINA)
    amina.enrol("+447700900109")
    amina.sow("+447700900109", "3 June")
    amina.text(OFFICER, f"RAIN {CODE} Kijani 5:30-19")
    amina.text(OFFICER, "1")
    assert amina.heard(AMINA) == []
    amina.go("5 Jun 12:00")
    kept = like(t.HEAD(label="A", day=6), t.P_UNCOVER_RAIN)
    assert amina.heard(AMINA) == [kept]
    assert amina.text(AMINA, "TODAY") == [like(t.HEAD, ...)]
    for asks in (by_text, by_menu, by_screen, by_first_screen):
        assert t.P_UNCOVER.text[:20] not in asks(amina)


def test_a_village_without_a_warning_goes_on(
    amina: Valley, kijani: Village, mwanga: Village
) -> None:
    """It rains in Mto Mwanga."""
    amina.add_officer(mwanga)
    amina.enrol("+447700900109", village=2)
    amina.sow("+447700900109", "2 June")
    amina.text(OFFICER, f"RAIN {CODE} Mto Mwanga tomorrow 5-18")
    amina.text(OFFICER, "1")
    amina.go("4 Jun 06:00")
    assert amina.heard(AMINA) == [
        like(t.HEAD(label="A", day=5), t.P_UNCOVER, h.SNAKES_AND_WATER, t.ASK_UP)
    ]
    assert states(amina) == {f"{day('4 Jun'):%-d %b}": State.SENT}


def test_seed_added_to_an_old_bed_is_warned_of_rain(amina: Valley) -> None:
    """The first mats are past day 5; what was sown to fill them up is not."""
    with amina.house.store.work() as work:
        (bed,) = work.nurseries.of_farmer(1)
        sown = day("1 Jun")
        added = replace(bed, sow_date=day("20 May"), sown=True, more_on=sown, more_mats=20)
        work.nurseries.save(added, amina.now)
        (kijani, *_) = work.people.villages()
    for when, young in (("31 May", False), ("1 Jun", False), ("3 Jun", True), ("7 Jun", None)):
        with amina.house.store.look() as work:
            found = [bool(e.young) for e in in_danger(work, kijani, at(f"{when} 08:00"))]
        assert found == ([] if young is None else [young])
