"""One text of all that is due for one phone on one day."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.nursery import Nursery
from assistant.reminders.compose import (
    Composed,
    compose,
    second_asking,
    worth_catching_up,
)
from assistant.reminders.values import Reminder
from assistant.wording import messages_cautions as h
from assistant.wording import messages_planting as g
from assistant.wording import messages_practice as p
from assistant.wording import messages_tasks as t
from assistant.wording.day import TASK_TEXTS, DayWork, work_says
from assistant.wording.message import Message
from assistant.wording.render import render_all
from tests.talk import nursery
from tests.valley import CATALOGUES, like

TODAY = date(2026, 6, 15)
DAY_5 = nursery("A", sow=date(2026, 6, 10), sown=True)
OTHER = nursery("B", sow=date(2026, 6, 15), id=2)


def due(task: TaskCode, of: Nursery = DAY_5, on: date = TODAY) -> Reminder:
    """A reminder of a task."""
    moment = datetime(on.year, on.month, on.day, 6, tzinfo=UTC)
    return Reminder(of.id, task, on, moment, moment + timedelta(hours=14))


def words(composed: Composed) -> str:
    """The text in English."""
    return render_all(composed.says, CATALOGUES["en"])


def test_a_day_with_one_task_offers_its_answers() -> None:
    """1 and 2."""
    uncover = due(TaskCode.UNCOVER_FLOOD)
    composed = compose([(DAY_5, [uncover])], TODAY)
    assert words(composed) == like(
        t.HEAD(label="A", day=5), t.P_UNCOVER, h.SNAKES_AND_WATER, t.ASK_UP
    )
    assert composed.asked == (uncover,)


def test_what_a_neighbour_says_is_not_said_twice() -> None:
    """Keeping water and watching for rain are in the sentence of day 5."""
    codes = (TaskCode.KEEP_WATER, TaskCode.RAIN_WATCH, TaskCode.UNCOVER_FLOOD)
    composed = compose([(DAY_5, [due(code) for code in codes])], TODAY)
    assert words(composed) == like(t.HEAD, t.P_UNCOVER, h.SNAKES_AND_WATER, t.ASK_UP)


def test_two_nurseries_are_one_text_that_says_how_to_name_them() -> None:
    """Both are asked."""
    reminders = (due(TaskCode.UNCOVER_FLOOD), due(TaskCode.SOW, OTHER))
    composed = compose([(DAY_5, [reminders[0]]), (OTHER, [reminders[1]])], TODAY)
    assert composed.asked == reminders
    assert words(composed) == like(
        t.HEAD(label="A", day=5),
        t.P_UNCOVER,
        h.SNAKES_AND_WATER,
        t.HEAD(label="B", day=0),
        t.P_SOW,
        t.ASK_SEVERAL(label="B"),
    )


def test_a_task_that_is_only_told_is_not_asked() -> None:
    """Water has no answer."""
    assert compose([(DAY_5, [due(TaskCode.WATER)])], TODAY).asked == ()


def test_work_is_said_in_the_order_of_the_day() -> None:
    """Whatever the order of the rows."""
    codes = (TaskCode.COLOUR_CHECK, TaskCode.KEEP_WATER)
    composed = compose([(DAY_5, [due(code) for code in codes])], TODAY)
    assert words(composed) == like(t.HEAD, p.P_KEEP_UNSURE, t.P_COLOUR, t.ASK_COLOUR)


def test_what_was_missed_is_said_with_its_day() -> None:
    """With how it is done, which says the watering too; and it is asked."""
    missed = due(TaskCode.SOW, OTHER, date(2026, 6, 14))
    composed = compose([(OTHER, [missed, due(TaskCode.WATER, OTHER)])], TODAY)
    caught_up = t.CATCH_UP(date=date(2026, 6, 14), what=t.N_SOW())
    assert words(composed) == like(t.HEAD, caught_up, t.P_SOW, t.ASK_DONE)
    assert composed.asked == (missed,)


def test_a_task_missed_yesterday_and_due_today_is_said_once() -> None:
    """Transplanting is asked each day; drained mats are kept wet meanwhile."""
    today = due(TaskCode.TRANSPLANT, on=TODAY)
    yesterday = due(TaskCode.TRANSPLANT, on=TODAY - timedelta(days=1))
    old = nursery("A", sow=TODAY - timedelta(days=19), sown=True)
    composed = compose([(old, [yesterday, today])], TODAY)
    assert words(composed) == like(t.HEAD, t.P_TRANSPLANT_WAIT, h.IN_WATER, t.ASK_DONE)
    assert composed.asked == (today,)


@pytest.mark.parametrize("on", [TODAY, TODAY - timedelta(days=1)], ids=["today", "missed"])
@pytest.mark.parametrize("code", sorted(TASKS.codes(lambda row: row.waits_for_rain)))
def test_what_must_wait_for_the_rain_is_said_so_and_not_asked(code: TaskCode, on: date) -> None:
    """Also where it was missed yesterday."""
    composed = compose([(DAY_5, [due(code, on=on)])], TODAY, raining=[DAY_5.id])
    in_rain = TASK_TEXTS[code].in_rain
    assert in_rain is not None and words(composed) == like(t.HEAD, in_rain)
    assert composed.asked == ()


def test_rain_on_one_nursery_leaves_the_other() -> None:
    """They may stand in two villages. Whose "done" is asked for is said."""
    both = [
        (DAY_5, [due(TaskCode.UNCOVER_FLOOD)]),
        (OTHER, [due(TaskCode.UNCOVER_FLOOD, OTHER)]),
    ]
    composed = compose(both, TODAY, raining=[OTHER.id])
    assert words(composed) == like(
        t.HEAD,
        t.P_UNCOVER,
        h.SNAKES_AND_WATER,
        t.HEAD,
        t.P_UNCOVER_RAIN,
        t.HEAD_BEFORE(label="A"),
        t.ASK_UP,
    )


def test_a_sowing_taken_for_granted_is_said() -> None:
    """With the way to put it right."""
    composed = compose([(DAY_5, [due(TaskCode.WATER)])], TODAY, assumed_sown=[DAY_5.id])
    assert words(composed) == like(t.HEAD, t.P_WATER, t.SOW_ASSUMED)


def test_the_second_asking_names_the_task_and_offers_the_same_answers() -> None:
    """In one segment."""
    text = render_all(second_asking(DAY_5, due(TaskCode.UNCOVER_FLOOD)), CATALOGUES["en"])
    assert text == like(t.SECOND_ASKING(label="A", what=t.N_UNCOVER()), t.ASK_UP)
    assert len(text) <= 160


CAUGHT_UP = {
    "today is not missed": (TaskCode.SOW, 0, False),
    "yesterday's sowing": (TaskCode.SOW, 1, True),
    "sowing of three days ago": (TaskCode.SOW, 3, True),
    "sowing of four days ago": (TaskCode.SOW, 4, False),
    "yesterday's water": (TaskCode.WATER, 1, False),
}


@pytest.mark.parametrize(("task", "days", "worth"), CAUGHT_UP.values(), ids=CAUGHT_UP.keys())
def test_what_is_worth_catching_up(task: TaskCode, days: int, worth: bool) -> None:
    """What is over with its day is not said later."""
    reminder = due(task, on=TODAY - timedelta(days=days))
    assert worth_catching_up(reminder, TODAY) is worth


def test_only_what_is_asked_is_asked_again_and_caught_up() -> None:
    """The table of tasks agrees with itself and with the texts."""
    for code, text in TASK_TEXTS.items():
        row = TASKS[code]
        assert row.is_asked or not (row.asked_twice or row.catches_up or row.again_tomorrow)
        assert row.waits_for_rain == (text.in_rain is not None)
        assert row.is_asked or not row.waits_for_rain
    assert set(TASK_TEXTS) == set(TaskCode)


@pytest.mark.parametrize(
    ("begun", "counted", "sentence"),
    [
        (date(2026, 6, 1), False, g.P_SOAK_COUNT),
        (date(2026, 6, 1), True, t.P_SOAK),
        (date(2026, 6, 3), False, t.P_SOAK),  # the count would come too late to wait for
        (None, False, t.P_SOAK),
    ],
)
def test_seed_is_soaked_after_its_count_where_that_is_due(
    begun: date | None, counted: bool, sentence: Message
) -> None:
    """A test begun on 1 June is counted on the 8th, the day of soaking for the 10th."""
    sown = replace(DAY_5, sow_date=date(2026, 6, 10), sown=False)
    tested = replace(sown, test_begun=begun, test_counted=counted)
    work = DayWork(tested, (TaskCode.SOAK,), date(2026, 6, 8))
    assert work_says(work)[1].message is sentence
