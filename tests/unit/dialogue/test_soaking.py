"""Soaking that moves: cool water and slow varieties are soaked earlier, and shown back."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.growth.warmth import Warmth
from assistant.agronomy.nursery import Nursery
from assistant.wiring.practices import open_practices
from assistant.wording import messages_planting as g
from assistant.wording import messages_talk as m
from tests.talk import TODAY, Phone, nursery
from tests.valley import like

SOW = date(2026, 6, 20)


def asked(kept: Nursery, **known: object) -> Phone:
    """A phone that was asked whether water is cool or seed is slow."""
    phone = Phone.enrolled(kept)
    phone.known = replace(phone.known, **known)  # type: ignore[arg-type]
    for reply in ("MENU", "9", "3"):
        phone.says(reply)
    return phone


def days(phone: Phone) -> tuple[int, int]:
    """The days of soaking and draining, from sowing."""
    tasks = {task.code: task.day for task in phone.known.nurseries[0].tasks}
    return tasks[TaskCode.SOAK], tasks[TaskCode.DRAIN_SEED]


@pytest.mark.parametrize(
    ("reply", "soak", "drain"),
    [("1", -4, -2), ("cool water", -4, -2), ("2", -4, -2), ("3", -5, -3), ("4", -2, -1)],
)
def test_soaking_moves_earlier_as_the_farmer_says(reply: str, soak: int, drain: int) -> None:
    """48 h in water and 48 h moist (Department of Agriculture, Sri Lanka: soak 48 h for dapog,
    incubate 48 h for wet beds); cool season 60-72 h moist (Bogura district)."""
    phone = asked(nursery(sow=SOW))
    told = phone.hears(reply)
    assert days(phone) == (soak, drain)
    soaked, drained = (SOW + timedelta(days=each) for each in (soak, drain))
    assert told == [like(g.SOAK_SET(label="A", soak=soaked, drained=drained, sow=SOW))]


def test_by_the_officers_temperature_the_days_follow_the_summed_warmth() -> None:
    """100 degree-days (Rural Development Administration, Korea): at 15 C 6.7, so 7 days."""
    phone = asked(nursery(sow=SOW), warmth=Warmth(TODAY, 15.0))
    phone.says("1")
    assert days(phone) == (-9, -2)


def test_where_there_is_no_time_sowing_moves_too_and_says_so() -> None:
    """Seed that needs four days cannot be sown the day after tomorrow."""
    phone = asked(nursery(sow=TODAY + timedelta(days=2)))
    told = phone.hears("2")
    assert phone.known.nurseries[0].sow_date == TODAY + timedelta(days=4)
    assert told == [like(g.SOAK_SET), like(m.SOWING_MOVED)]


def test_the_days_of_soaking_are_said_on_their_days() -> None:
    """Until which day in water; and then moist until sowing."""
    phone = asked(nursery(sow=SOW))
    phone.says("2")
    told = phone.on(SOW - timedelta(days=4)).hears("TODAY")[0]
    assert "in clean water until Thu 18 Jun" in told and "small children can drown" in told
    assert "until you sow on Sat 20 Jun" in phone.on(SOW - timedelta(days=2)).hears("TODAY")[0]


def plan_dates(phone: Phone) -> str:
    """The plan's days, which are its third page."""
    phone.says("1")
    return [phone.hears("NEXT")[-1] for _ in range(3)][-1]


def test_a_new_plan_and_a_new_day_count_with_the_officers_temperature() -> None:
    """At 17 C: 100 / 17 = 5.9, six days in water and two moist."""
    phone = Phone.enrolled()
    phone.known = replace(phone.known, warmth=Warmth(TODAY, 17.0))
    for reply in ("NEW", "0.4 ha", "85", "1", "20 June"):
        phone.says(reply)
    assert "soak Fri 12 Jun, drain seed Thu 18 Jun, sow Sat 20 Jun" in plan_dates(phone)
    phone.says("CHANGE DATE")
    phone.says("1")
    assert phone.hears("25 June")[-1].startswith("A: seed goes in water Wed 17 Jun")
    phone.known = replace(phone.known, warmth=Warmth(TODAY, 24.0))
    phone.says("CHANGE DATE")
    phone.says("1")
    phone.says("26 June")
    assert days(phone) == (-2, -1)


def test_of_two_nurseries_the_one_that_is_meant_is_asked() -> None:
    """The other keeps its days."""
    second = nursery(label="B", sow=SOW + timedelta(days=5))
    phone = Phone.enrolled(nursery(sow=SOW), second)
    for reply in ("MENU", "9", "3", "2", "2"):
        phone.says(reply)
    lead = [each.soak_before_d for each in phone.known.nurseries]
    assert lead == [2, 4]


def test_a_wet_bed_is_soaked_longer_than_it_is_anyway() -> None:
    """24 h and 48 h moist are its usual (Department of Agriculture, Sri Lanka)."""
    phone = asked(nursery(sow=SOW, practice=open_practices()["wet_bed"]))
    assert phone.known.nurseries[0].soak_before_d == 3
    phone.says("2")
    assert phone.known.nurseries[0].soak_before_d == 4


def test_seed_that_is_soaked_longer_is_sown_again_as_late() -> None:
    """A failed bed of slow seed: soaked today, sown in four days."""
    bed = nursery(sow=TODAY - timedelta(days=10), sown=True, slow_seed=True)
    phone = Phone.enrolled(bed)
    for reply in ("PROBLEM", "2", "0"):
        phone.says(reply)
    for reply in ("sow all again", "5", "1"):  # eaten; the same seed
        phone.says(reply)
    assert phone.known.nurseries[0].sow_date == TODAY + timedelta(days=4)
