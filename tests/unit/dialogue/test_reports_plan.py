"""What a farmer tells of the plan without being asked: a flood's morning after, planted early,
the rest tomorrow, both beds, another field."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.days import due
from assistant.agronomy.life.events import (
    By,
    Done,
    Event,
    Flooded,
    Found,
    Looked,
    PartDone,
    PutOff,
    Why,
)
from assistant.dialogue import values as v
from assistant.dialogue.turns import turn
from assistant.reminders.plan import Hours, planned
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_again as again
from assistant.wording import messages_care as care
from assistant.wording import messages_days as days
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like

DAY = timedelta(days=1)


def on_day(day: int, **given: Any) -> Phone:
    """A mat bed of 267 mats so many days after its sowing."""
    sown = {"sown": True, "uncovered": day > 5} | given
    return Phone.enrolled(nursery(sow=TODAY - day * DAY, **sown))


def told(phone: Phone) -> list[Event]:
    """The events of the last turn."""
    return [each.event for each in phone.changes if isinstance(each, v.Happened)]


# --- the morning after a flood ---------------------------------------------------------------


def test_a_flood_is_asked_about_on_the_morning_after() -> None:
    phone = on_day(8)
    phone.says("flood, the bed is under water")
    assert told(phone) == [Flooded(on=TODAY, by=By.FARMER)]
    (bed,) = phone.known.nurseries
    assert TaskCode.AFTER_FLOOD in due(bed, TODAY + DAY)
    asked = [each.day for each in planned(bed, "UTC", Hours(), TODAY) if each.task in _FLOOD]
    assert asked == [TODAY + DAY, TODAY + 2 * DAY]  # once more, then it is the officer's to see
    assert TaskCode.AFTER_FLOOD in due(bed, TODAY + 9 * DAY)  # for who asks for today's work
    assert TaskCode.KEEP_WATER not in due(bed, TODAY + DAY)


_FLOOD = {TaskCode.AFTER_FLOOD}


def test_a_planted_field_has_no_bed_to_be_asked_about() -> None:
    phone = on_day(20, transplanted_on=TODAY)
    phone.says("flood, the bed is under water")
    assert told(phone) == []


def test_the_answer_is_no_flood_anew() -> None:
    """Else it would be asked each morning for ever."""
    phone = on_day(8, flooded_on=TODAY - DAY).asked(item(TaskCode.AFTER_FLOOD))
    assert phone.hears("1") == [like(care.FLOOD_LATER)]
    assert told(phone) == [Found(on=TODAY, by=By.FARMER, state="stands")]
    assert phone.known.nurseries[0].flooded_on is None
    assert phone.known.items == ()


def test_mats_that_a_flood_took_are_counted() -> None:
    phone = on_day(8, flooded_on=TODAY - DAY).asked(item(TaskCode.AFTER_FLOOD))
    assert phone.hears("2") == [like(d.ASK_LOST)]
    assert "30 of 267 mats gone" in phone.hears("30")[0]
    assert phone.known.nurseries[0].lost_mats == 30


@pytest.mark.parametrize("words", ["3", "all gone", "All gone."])
def test_a_bed_that_is_gone_is_sown_again_its_cause_known(words: str) -> None:
    phone = on_day(8, flooded_on=TODAY - DAY).asked(item(TaskCode.AFTER_FLOOD))
    assert phone.hears(words) == [like(again.ASK_SEED, ...)]
    phone.says("2")
    (bed,) = phone.known.nurseries
    assert bed.sow_date > TODAY and not bed.sown
    assert bed.flooded_on is None


# --- planted before it was asked, in parts, both ---------------------------------------------


def test_a_field_that_was_planted_early_is_read_back() -> None:
    """It was asked for its leaves; on day 13 a mat may be planted, on day 8 it cannot be."""
    phone = on_day(13).asked(item(TaskCode.LEAF_COUNT, TODAY - DAY))
    assert phone.hears("i transplanted today") == [like(days.PLANTED_THEN, ...)]
    phone.says("yes")
    assert phone.known.nurseries[0].transplanted_on == TODAY
    young = on_day(8)
    young.says("i transplanted today")
    assert young.known.nurseries[0].transplanted_on is None


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "the rest tomorrow"),
        ("en", "we planted half, the rest tomorrow"),
        ("sw", "zilizobaki kesho"),
        ("fr", "le reste demain"),
        ("pt", "o resto amanhã"),
        ("fil", "ang natitira bukas"),
        ("hi", "बाकी कल"),
        ("id", "sisanya besok"),
        ("vi", "phần còn lại ngày mai"),
    ],
)
def test_the_rest_of_a_field_is_planted_on_another_day(language: str, text: str) -> None:
    """The bed is not planted by that, and nobody asks why."""
    phone = on_day(18).asked(item(TaskCode.TRANSPLANT))
    known = replace(phone.known, catalogue=open_catalogue(language), lexicons=open_lexicons())
    got = turn(text, known)
    assert [each.message for each in got.texts[0].says] == [d.REST_PLANTED]
    part, event = (each.event for each in got.changes if isinstance(each, v.Happened))
    assert isinstance(part, PartDone) and isinstance(event, PutOff)
    assert (event.until, event.why) == (TODAY + DAY, Why.HANDS)


def test_the_rest_of_a_field_that_is_planted_moves_nothing() -> None:
    phone = on_day(18, transplanted_on=TODAY)
    assert phone.hears("the rest tomorrow") == [like(d.REST_PLANTED)]
    assert phone.known.nurseries[0].transplanted_on == TODAY


def test_the_rest_of_the_seed_is_sown_on_another_day() -> None:
    phone = Phone.enrolled(nursery(sow=TODAY)).asked(item(TaskCode.SOW))
    assert phone.hears("the rest tomorrow") == [like(again.HALF_SOWN)]
    assert phone.known.nurseries[0].sow_date == TODAY + DAY


def test_both_beds_are_settled_where_both_are_told() -> None:
    """Of which one had not been asked yet."""
    first, second = (
        nursery(label, sow=TODAY - back * DAY, sown=True, uncovered=True)
        for label, back in (("A", 18), ("B", 15))
    )
    phone = Phone.enrolled(first, second).asked(item(TaskCode.TRANSPLANT))
    assert len(phone.hears("planted both")) == 2
    assert [type(event) for event in told(phone)] == [Done, Done]
    assert all(bed.transplanted_on == TODAY for bed in phone.known.nurseries)


# --- why and until when, pale, no day ---------------------------------------------------------


def test_why_and_until_when_in_one_answer() -> None:
    phone = on_day(18).asked(item(TaskCode.TRANSPLANT))
    phone.says("not yet")
    until = TODAY + 5 * DAY
    said = phone.hears(f"no hands, {until:%-d %B}")
    assert said[0] == like(d.SET, ...)
    (bed,) = phone.known.nurseries
    assert (bed.anchors.transplant_date, bed.delay_why) == (until, Why.HANDS)


def test_a_day_alone_is_kept_and_why_still_asked() -> None:
    phone = on_day(18).asked(item(TaskCode.TRANSPLANT))
    phone.says("not yet")
    until = TODAY + 5 * DAY
    assert phone.hears(f"{until:%-d %B}") == [like(d.ASK_WHY, ...)]
    phone.says("2")
    assert phone.known.nurseries[0].anchors.transplant_date == until


def test_pale_leaves_are_looked_at_again_and_get_nothing() -> None:
    phone = on_day(8).asked(item(TaskCode.COLOUR_CHECK))
    assert phone.hears("3") == [like(care.M_LIGHT)]
    assert told(phone) == [Looked(on=TODAY, by=By.FARMER, colour="pale")]


def test_now_is_no_day_of_planting() -> None:
    phone = on_day(2)
    assert like(days.PLANT_THEN, ...) not in phone.hears("the water has gone now")


def test_seed_that_does_not_sprout_in_its_cloth_waits_for_roots() -> None:
    phone = Phone.enrolled(nursery(sow=TODAY + DAY))
    assert phone.hears("seed did not sprout") == [like(m.SEED_ADVICE)]


# --- another field, another kind of bed ------------------------------------------------------


def test_another_size_of_the_field_is_read_back_and_planned() -> None:
    phone = Phone.enrolled(nursery(sow=TODAY + 9 * DAY))
    assert "0.8 ha" in phone.hears("my field is 0.8 ha")[0]
    phone.says("yes")
    assert phone.known.nurseries[0].inputs.field_area_m2 == 8000


def test_a_bed_that_is_sown_stays_as_large_as_it_is() -> None:
    """267 mats for 0.4 ha plant half of 0.8 ha, and no text tells of 534."""
    phone = on_day(8)
    phone.says("my field is 0.8 ha")
    assert "50 of 100 of 0.8 ha" in phone.hears("yes")[0]
    (bed,) = phone.known.nurseries
    assert bed.mats_sown == 267
    assert bed.standing == pytest.approx(0.5, abs=0.01)
