"""From a calendar to dated reminders, each with its hour and its "not after"."""

from dataclasses import fields, replace
from datetime import UTC, date, datetime, time
from typing import Any

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.events import Why
from assistant.agronomy.nursery import Nursery
from assistant.reminders.plan import Hours, likeness, local, planned
from assistant.reminders.values import State
from tests.talk import nursery

HOURS = Hours()
SOW = date(2026, 6, 10)
LONG_AGO = date.min


def days(task: TaskCode, **given: Any) -> list[str]:
    """The days on which a task of a nursery is said."""
    plan = planned(nursery(sow=SOW, **given), "UTC", HOURS, LONG_AGO)
    return [f"{each.day:%-d %b}" for each in plan if each.task is task]


def test_each_reminder_is_due_at_six_and_worthless_at_eight_in_the_evening() -> None:
    """Of the village's clock: Nairobi is UTC+3 all year (IANA tz database)."""
    plan = planned(nursery(sow=SOW), "Africa/Nairobi", HOURS, LONG_AGO)
    sow = next(each for each in plan if each.task is TaskCode.SOW)
    assert sow.due_at.astimezone(UTC) == datetime(2026, 6, 10, 3, tzinfo=UTC)
    assert sow.not_after.astimezone(UTC) == datetime(2026, 6, 10, 17, tzinfo=UTC)
    assert (sow.state, sow.asked, sow.message_id) == (State.PLANNED, 0, None)


def test_a_clock_that_is_put_forward_keeps_six_at_six() -> None:
    """Lisbon is UTC until 29 March 2026 and UTC+1 from then (IANA tz database)."""
    six = [local(date(2026, 3, d), time(6), "Europe/Lisbon").astimezone(UTC) for d in (28, 29)]
    assert [moment.hour for moment in six] == [6, 5]


def test_no_two_reminders_are_of_the_same_task_and_day() -> None:
    """So that planning twice adds nothing."""
    plan = planned(nursery(sow=SOW), "UTC", HOURS, LONG_AGO)
    keys = [(each.task, each.day) for each in plan]
    assert len(keys) == len(set(keys))
    assert plan == planned(nursery(sow=SOW), "UTC", HOURS, LONG_AGO)


# The days of a nursery sown on 10 June, counted by hand from the facts of the trade.
SAID_ON = {
    TaskCode.COLLECT: ["3 Jun"],
    TaskCode.SOAK: ["8 Jun"],
    TaskCode.SOW: ["10 Jun"],
    TaskCode.WATER: ["10 Jun", "11 Jun", "12 Jun", "13 Jun", "14 Jun"],
    TaskCode.UNCOVER_FLOOD: ["15 Jun"],
    TaskCode.COLOUR_CHECK: ["17 Jun"],
    TaskCode.LEAF_COUNT: ["22 Jun"],
    TaskCode.DRAIN_BED: ["26 Jun"],
    TaskCode.TRANSPLANT: ["25 Jun", "28 Jun", "29 Jun", "30 Jun"],
    TaskCode.OVERDUE: ["1 Jul", "4 Jul", "7 Jul", "26 Jul"],
}


@pytest.mark.parametrize(("task", "expected"), SAID_ON.items(), ids=lambda row: str(row)[:20])
def test_a_task_is_said_on_its_days(task: TaskCode, expected: list[str]) -> None:
    """The window's first day and the assumed day 18 to day 20; overdue three times, and
    on day 46 that it is too late."""
    assert days(task) == expected


def test_a_chosen_transplanting_day_is_asked_from_then() -> None:
    """Day 15 opens the window; then from the chosen day to its end."""
    chosen = days(TaskCode.TRANSPLANT, transplant_date=date(2026, 6, 27))
    assert chosen == ["25 Jun", "27 Jun", "28 Jun", "29 Jun", "30 Jun"]
    assert days(TaskCode.DRAIN_BED, transplant_date=date(2026, 6, 27)) == ["25 Jun"]


def test_a_day_chosen_after_the_window_stretches_it() -> None:
    """To day 24."""
    late = days(TaskCode.TRANSPLANT, transplant_date=date(2026, 7, 4))
    assert late[-1] == "4 Jul"


def test_days_gone_by_are_not_prompted() -> None:
    """Who joins on day 3 hears nothing of the days before."""
    today = date(2026, 6, 13)
    plan = planned(nursery(sow=SOW, sown=True), "UTC", HOURS, today)
    assert min(each.day for each in plan) == today


def test_what_happened_is_asked_no_more() -> None:
    """Sown, then uncovered, then closed."""
    assert days(TaskCode.SOW, sown=True) == days(TaskCode.SOAK, sown=True) == []
    assert days(TaskCode.UNCOVER_FLOOD, sown=True, uncovered=True) == []
    closed = replace(nursery(sow=SOW), closed=True)
    assert planned(closed, "UTC", HOURS, LONG_AGO) == ()


QUIET = {
    "19:59": False,
    "20:00": True,
    "23:59": True,
    "00:00": True,
    "05:29": True,
    "05:30": False,
    "12:00": False,
}


@pytest.mark.parametrize(("clock", "quiet"), QUIET.items(), ids=QUIET.keys())
def test_the_night_is_quiet(clock: str, quiet: bool) -> None:
    """From 20:00 until 05:30."""
    assert HOURS.quiet(time.fromisoformat(clock)) is quiet


# What else a nursery knows of itself, each with another value than the plain one's.
ELSEWISE: dict[str, Any] = {
    "id": 99,
    "farmer_id": 99,
    "label": "Z",
    "name": "River",
    "inputs": replace(nursery(sow=SOW).inputs, field_area_m2=9000.0, germination=0.6),
    "area_typed": "0.9 ha",
    "germination_known": False,
    "made_on": date(2026, 6, 3),
    "sow_assumed": True,
    "resown": True,
    "urea_on": date(2026, 6, 20),
    "hill_seedlings": 3,
    "more_mats": 12,
    "no_result": True,
    "delay_why": Why.HANDS,
    "lost_mats": 20,
    "tin_litres": 0.4,
    "ripens_d": 120,
}
HUNG_ON = {
    *("practice", "sow_date", "uncover_date", "transplant_date", "transplanted_on", "sown"),
    *("uncovered", "closed", "test_begun", "test_counted", "more_on"),
    *("leaves", "leaves_on", "climate", "felt_c", "felt_on"),  # by the days of its leaves
    *("flooded_on", "part_sown_on"),
    *("age_first", "age_last"),  # by the window of its variety
    *("slow_seed", "cool_water", "water_c"),  # by the sprouting that follows from them
}


def test_nurseries_that_are_alike_have_the_same_days() -> None:
    """Every field of a nursery either counts for the likeness, or changes no reminder."""
    assert HUNG_ON | set(ELSEWISE) == {each.name for each in fields(Nursery)}
    assert HUNG_ON.isdisjoint(ELSEWISE)
    plain = nursery(sow=SOW)
    days_of_plain = planned(plain, "UTC", HOURS, LONG_AGO)
    for name, value in ELSEWISE.items():
        other = replace(plain, **{name: value})
        assert likeness(other) == likeness(plain), name
        again = planned(other, "UTC", HOURS, LONG_AGO)
        assert [replace(each, nursery_id=plain.id) for each in again] == list(days_of_plain)
    for change in ({"sow_date": date(2026, 6, 11)}, {"slow_seed": True}, {"sown": True}):
        assert likeness(replace(plain, **change)) != likeness(plain)
