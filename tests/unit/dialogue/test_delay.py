"""Planting that slips: water goes back, why is asked once, the new day moves the rest."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.days import due
from assistant.agronomy.life.events import Why
from assistant.wiring.practices import open_practices
from assistant.wording import messages_care as c
from assistant.wording import messages_delay as d
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like, numbered

DAY = timedelta(days=1)
CHOICES = numbered(d.HANDS, d.WATER, d.RAIN, d.FIELD, d.OTHER)


def on_the_day(day: int = 18, task: TaskCode = TaskCode.TRANSPLANT) -> Phone:
    """A mat bed that was drained two days ago, to be planted today."""
    return Phone.enrolled(nursery(sow=TODAY - day * DAY, sown=True)).asked(item(task))


def test_drained_mats_get_their_water_back_the_same_day() -> None:
    """And are drained again two days before the next day for planting."""
    phone = on_the_day()
    water = d.WATER_BACK(label="A", depth=1.0, drain=TODAY + 2 * DAY)
    assert phone.hears("not yet") == [like(water, d.ASK_WHY, *CHOICES)]
    (kept,) = phone.known.nurseries
    assert kept.anchors.transplant_date == TODAY + 4 * DAY
    assert TaskCode.TRANSPLANT not in due(kept, TODAY) or kept.anchors.drain_date > TODAY


def test_the_farmer_says_why_and_until_when() -> None:
    """Ten days for want of hands: from day 18 to day 28."""
    phone = on_the_day()
    phone.says("2")
    assert phone.hears("no hands") == [like(d.ASK_UNTIL)]
    day = TODAY + 10 * DAY
    new, tip, cost = phone.hears(f"{day.day} {day:%B}")
    latest = TODAY + 27 * DAY  # day 45
    assert new == like(
        d.SET(label="A", date=day, day=28, latest=latest),
        d.WATER_BACK(label="A", depth=1.0, drain=day - 2 * DAY),
    )
    assert tip == like(d.FOR_HANDS)
    # Two weeks late begun: two more a hill, from mats raised for two: half the field.
    assert cost == like(c.LATE_LOSS(n=4, share=50, percent=22), d.WAYS)
    (kept,) = phone.known.nurseries
    assert (kept.anchors.transplant_date, kept.delay_why) == (day, Why.HANDS)
    assert TaskCode.KEEP_WATER in due(kept, TODAY + DAY)
    assert TaskCode.KEEP_WATER in due(kept, day - 3 * DAY)
    assert TaskCode.DRAIN_BED in due(kept, day - 2 * DAY)


def test_why_is_asked_once() -> None:
    phone = on_the_day()
    phone.says("2")
    phone.says("1")
    phone.says("in 3 days")
    phone.on(TODAY + 3 * DAY).asked(item(TaskCode.TRANSPLANT, TODAY + 3 * DAY))
    (text,) = phone.hears("not yet")
    assert "Why" not in text and "Let water in" in text


def test_a_day_or_two_needs_no_water_but_a_wet_bed() -> None:
    phone = on_the_day()
    phone.says("2")
    phone.says("3")
    first, tip = phone.hears("tomorrow")
    assert first == like(d.SET, d.KEEP_WET(label="A"))
    assert tip == like(d.FOR_RAIN)


def test_a_day_past_the_last_is_asked_again() -> None:
    phone = on_the_day()
    phone.says("2")
    phone.says("1")
    late = TODAY + 40 * DAY
    assert phone.hears(f"{late.day} {late:%B}") == [like(d.TOO_LATE, d.ASK_UNTIL)]


@pytest.mark.parametrize("day", [45, 61])
def test_past_the_last_day_it_is_never_called_soon(day: int) -> None:
    """Seedlings of 61 days are not planted: other seedlings, or another sowing."""
    phone = on_the_day(day, TaskCode.OVERDUE)
    choices = numbered(d.SOW_ANEW, d.GIVE_UP)
    assert phone.hears("not yet") == [like(d.TOO_OLD, d.ASK_OLD, *choices)]
    if day > 45:
        text, *_ = phone.hears("today")
        assert "do not plant them" in text and "soon" not in text


def test_a_bed_that_is_not_drained_just_waits() -> None:
    dry = open_practices()["dry_bed"]
    wet = replace(nursery(sow=TODAY - 22 * DAY, sown=True), practice=dry)
    phone = Phone.enrolled(wet).asked(item(TaskCode.TRANSPLANT))
    (text,) = phone.hears("not yet")
    assert text == like(d.WAITS, d.ASK_WHY, *CHOICES)


def test_planting_that_is_told_while_something_before_it_was_asked_counts() -> None:
    """Hands were found after all: the field is planted, whatever the bed was asked for."""
    phone = on_the_day(16, TaskCode.DRAIN_BED)
    phone.says("we planted everything")
    assert phone.known.nurseries[0].transplanted_on == TODAY


def test_planting_that_cannot_be_true_is_asked_about() -> None:
    """On day 6 there is nothing to plant: another word was meant."""
    phone = on_the_day(6, TaskCode.UNCOVER_FLOOD)
    phone.says("we planted everything")
    assert phone.known.nurseries[0].transplanted_on is None


@pytest.mark.parametrize(("days", "sown"), [(1, True), (2, True), (6, False)])
def test_sowing_that_was_put_off_and_is_done_sooner_counts(days: int, sown: bool) -> None:
    """Nobody answered the soaking; a sowing far from its day is asked about."""
    phone = Phone.enrolled(nursery(sow=TODAY + days * DAY)).asked(item(TaskCode.SOAK))
    phone.says("yes we sowed everything this morning")
    (bed,) = phone.known.nurseries
    assert bed.sown is sown
    assert not sown or bed.sow_date == TODAY
