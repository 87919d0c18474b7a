"""Prompts that do not reach the phone in time, and silence."""

from datetime import timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.channel import Fate, Handover
from assistant.reminders.values import State
from assistant.wording import messages_cautions as h
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.valley import AMINA, Staged, Valley, at, day, like, settle

REFUSED = Handover(Fate.FAILED, "unknown subscriber")


def to_amina(valley: Valley) -> None:
    """Amina sows on 10 June; it is the evening before, and she has read all so far."""
    settle(valley)
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")
    valley.go("9 Jun 20:30")
    valley.heard(AMINA)


@pytest.fixture
def amina(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_amina)


def state(valley: Valley, task: TaskCode, when: str) -> tuple[State, int]:
    """Where a task of the first nursery stands, and how often it was asked."""
    with valley.house.store.work() as work:
        reminder = work.reminders.by_item(1, task, day(when))
    assert reminder is not None
    return reminder.state, reminder.asked


def test_what_expired_yesterday_is_caught_up_in_one_text_of_the_morning(amina: Valley) -> None:
    """The operator was down all of the day of sowing."""
    amina.operator.down = True
    amina.go("10 Jun 21:00")
    assert state(amina, TaskCode.SOW, "10 Jun") == (State.PLANNED, 1)
    amina.operator.down = False
    amina.go("11 Jun 06:00")
    caught_up = t.CATCH_UP(date=day("10 Jun"), what=t.N_SOW())
    assert amina.heard(AMINA) == [like(t.HEAD, caught_up, t.P_SOW, t.ASK_DONE)]


def test_a_task_caught_up_can_be_answered_all_day(amina: Valley) -> None:
    """Sowing is not taken as done a moment after it was asked for."""
    amina.operator.down = True
    amina.go("10 Jun 21:00")
    amina.operator.down = False
    amina.go("11 Jun 19:00")
    assert state(amina, TaskCode.SOW, "10 Jun") == (State.SENT, 1)
    amina.heard(AMINA)
    assert amina.text(AMINA, "1") == [like(m.SOWN_NOTED)]
    assert state(amina, TaskCode.SOW, "10 Jun") == (State.DONE, 1)


def test_a_task_caught_up_and_not_answered_is_given_up_at_midnight(amina: Valley) -> None:
    """Then it is the officer's to see."""
    amina.operator.down = True
    amina.go("10 Jun 21:00")
    amina.operator.down = False
    amina.go("12 Jun 00:01")
    assert state(amina, TaskCode.SOW, "10 Jun") == (State.UNANSWERED, 1)


def test_a_worker_that_slept_for_a_day_catches_up_and_waits_for_the_answer(
    amina: Valley,
) -> None:
    """Nothing was sent on the 10th, since nobody looked at the clock."""
    amina.leap("11 Jun 06:05")
    caught_up = t.CATCH_UP(date=day("10 Jun"), what=t.N_SOW())
    assert amina.heard(AMINA) == [like(t.HEAD, caught_up, t.P_SOW, t.ASK_DONE)]
    amina.go("11 Jun 15:00")
    assert state(amina, TaskCode.SOW, "10 Jun") == (State.SENT, 1)
    assert amina.heard(AMINA) == []


def test_a_phone_that_is_refused_gets_one_try_a_day(amina: Valley) -> None:
    """A number that was given back must not be tried each second of the day."""
    before = len(amina.operator.offered)
    amina.operator.answers = [REFUSED] * 50
    for minute in range(30):
        amina.leap(at("10 Jun 06:00") + timedelta(minutes=minute))
    assert len(amina.operator.offered) - before == 1
    amina.leap("11 Jun 06:00")
    assert len(amina.operator.offered) - before == 2


def test_a_sowing_that_could_not_be_asked_for_days_is_assumed_and_said(amina: Valley) -> None:
    """The phone was off for four days. The season goes on, the officer sees it, and the farmer
    is told with the next text that arrives, once."""
    amina.operator.down = True
    amina.go("13 Jun 21:00")
    amina.operator.down = False
    amina.go("14 Jun 06:00")
    told = like(
        t.HEAD(label="A", day=4), t.P_WATER, t.P_FIELD_PUDDLE, h.MACHINES, t.SOW_ASSUMED
    )
    assert amina.heard(AMINA) == [told]
    assert state(amina, TaskCode.SOW, "10 Jun")[0] is State.UNANSWERED
    amina.text(AMINA, "done")
    amina.go("15 Jun 06:00")
    assert amina.heard(AMINA) == [like(t.HEAD, t.P_UNCOVER, h.SNAKES_AND_WATER, t.ASK_UP)]


def test_after_three_days_a_missed_task_is_no_longer_said(amina: Valley) -> None:
    """The leaves were to be looked at on day 7; on day 11 that is over."""
    amina.go("16 Jun 21:00")
    amina.operator.down = True
    amina.go("20 Jun 21:00")
    amina.heard(AMINA)
    amina.operator.down = False
    amina.go("21 Jun 06:00")
    assert amina.heard(AMINA) == [like(t.HEAD, t.P_FIELD_PUDDLE, t.P_KEEP_WATER, h.MACHINES)]
    assert state(amina, TaskCode.COLOUR_CHECK, "17 Jun")[0] is State.TOO_LATE
