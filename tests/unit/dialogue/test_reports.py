"""What a farmer tells of the bed without being asked changes the plan, and is said back."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.days import due
from assistant.agronomy.life.events import Lost
from assistant.dialogue import values as v
from assistant.dialogue.turns import turn
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_again as a
from assistant.wording import messages_care as c
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like

DAY = timedelta(days=1)


def on_day(day: int = 10, **given: Any) -> Phone:
    """A mat bed so many days after its sowing: 267 mats."""
    sown = {"sown": True, "uncovered": day > 5} | given
    return Phone.enrolled(nursery(sow=TODAY - day * DAY, **sown))


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "chickens ate the seed in 15 mats"),
        ("en", "15 mats dried out"),
        ("en", "15 more mats are gone"),
        ("sw", "kuku wamekula mikeka 15"),
        ("hi", "मुर्गियां 15 चटाई खा गईं"),
        ("bn", "15 ম্যাট শুকিয়ে গেছে"),
        ("vi", "gà ăn mất 15 tấm thảm"),
        ("id", "ayam makan 15 tikar"),
        ("fil", "kinain ng manok ang 15 banig"),
        ("fr", "les poules ont mangé 15 tapis"),
        ("pt", "as galinhas comeram 15 tapetes"),
    ],
)
def test_mats_that_are_gone_are_counted_as_told(language: str, text: str) -> None:
    known = replace(
        on_day().known, catalogue=open_catalogue(language), lexicons=open_lexicons()
    )
    changes = turn(text, known).changes
    (event,) = [each.event for each in changes if isinstance(each, v.Happened)]
    assert isinstance(event, Lost) and event.mats == 15
    assert any(isinstance(each, v.CallForHelp | v.RaiseAlarm) for each in changes)


def test_more_mats_are_added_to_those_that_were_gone() -> None:
    phone = on_day()
    (first,) = phone.hears("chickens ate 15 mats")
    assert "15 of 267 mats gone" in first
    phone.says("no")
    (second,) = phone.hears("10 more mats are gone")
    assert "10 of 267 mats gone" in second
    assert phone.known.nurseries[0].lost_mats == 25


def test_leaves_are_heard_at_any_time_and_move_the_window() -> None:
    phone = on_day(18).asked(item(TaskCode.TRANSPLANT))
    (heard,) = phone.hears("leaves 2")
    assert "open leaves 2, too early" in heard
    (kept,) = phone.known.nurseries
    assert kept.leaves == 2 and kept.anchors.transplant_date > TODAY


def test_two_leaves_are_no_second_of_july() -> None:
    """While the day of planting is asked for."""
    phone = on_day(12).asked(item(TaskCode.LEAF_COUNT))
    phone.says("4")
    (heard,) = phone.hears("leaves 2")
    assert "open leaves 2" in heard and "July" not in heard


def test_a_bed_that_failed_is_asked_why_and_its_seed_is_checked_first() -> None:
    """Dead seed is not soaked again: three days in a cloth, then soaked two days before."""
    phone = on_day(9)
    phone.says("nothing came up")
    phone.says("8 9 7")
    assert phone.hears("1") == [like(a.ASK_CAUSE, ...)]
    phone.says("1")
    tip, check, mix, dates = phone.hears("1")
    assert tip == like(a.T_DEAD) and "soil mix" in mix
    counted = TODAY + 3 * DAY
    assert check == like(a.CHECK_FIRST(label="A", seeds=50, days=3, date=counted))
    assert dates == like(c.AGAIN_DATES)
    (kept,) = phone.known.nurseries
    assert kept.sow_date == TODAY + 5 * DAY
    assert TaskCode.SOAK not in due(kept, TODAY) and TaskCode.SEED_COUNT in due(kept, counted)
    phone.on(counted).asked(item(TaskCode.SEED_COUNT, counted))
    first, *_ = phone.hears("10 of 50")
    assert "do not sow" in first
    assert phone.known.nurseries[0].held


def test_seed_that_was_washed_away_needs_no_check() -> None:
    phone = on_day(9)
    phone.says("sow again")
    phone.says("4")
    tip, seed, mix, _dates = phone.hears("1")
    assert tip == like(a.T_WASHED) and "Soak" in seed and "soil mix" in mix
    assert phone.known.nurseries[0].sow_date == TODAY + 2 * DAY


def test_a_bed_that_was_sown_again_begins_anew() -> None:
    phone = on_day(6, uncovered=False).asked(item(TaskCode.UNCOVER_FLOOD, TODAY - DAY))
    assert phone.hears("we sowed again") == [like(a.ASK_ALL, ...)]
    phone.says("yes")
    (kept,) = phone.known.nurseries
    assert (kept.sow_date, kept.sown, kept.uncovered) == (TODAY, True, False)


def test_who_has_no_seed_is_no_longer_told_to_soak() -> None:
    phone = on_day(9)
    phone.says("sow again")
    phone.says("5")
    assert phone.hears("3") == [like(a.NO_SEED)]
    assert any(isinstance(each, v.CallForHelp) for each in phone.changes)


def test_spare_mats_are_told_to_the_officer() -> None:
    phone = on_day(14)
    assert phone.hears("i have 20 mats spare") == [like(a.SPARE_NOTED(mats=20))]
    (call,) = [each for each in phone.changes if isinstance(each, v.CallForHelp)]
    assert call.about == "spare"


def test_a_count_after_sowing_is_met_with_what_stands() -> None:
    phone = on_day(4, uncovered=False)
    (heard,) = phone.hears("i tested the seed only 50 of 100 sprouted")
    assert "85 of 100" in heard
    assert phone.known.nurseries[0].inputs.germination == 0.85


def test_sprouting_is_no_matter_of_seed_in_the_ground() -> None:
    """Choice 3 of the troubles, once it is sown: shoots are counted."""
    phone = on_day(9)
    phone.says("PROBLEM")
    assert "square" in " ".join(phone.hears("3"))


@pytest.mark.parametrize(
    "text",
    [
        "we have 3 mats",
        "i need 20 mats",
        "is it 2 leaves?",
        "the mats are 40",
        "3 leaves are yellow",
    ],
)
def test_what_reports_nothing_changes_nothing(text: str) -> None:
    phone = on_day(14)
    before = phone.known.nurseries
    phone.says(text)
    assert phone.known.nurseries == before


def test_uncovered_too_early_asks_for_the_shoots() -> None:
    phone = on_day(2, uncovered=False)
    assert phone.hears("we uncovered the bed") == [like(a.ASK_UP, ...)]
    assert phone.hears("no") == [like(a.COVER_AGAIN)]
    assert not phone.known.nurseries[0].uncovered
    phone.says("we uncovered the bed")
    phone.says("yes")
    (kept,) = phone.known.nurseries
    assert kept.uncovered and kept.uncover_date == TODAY


def test_drained_too_early_gets_its_water_back() -> None:
    phone = on_day(9)
    assert phone.hears("i drained the bed already") == [like(d.WATER_BACK)]


def test_half_a_sowing_is_water_for_one_part_and_a_day_for_the_other() -> None:
    phone = on_day(0, sown=False, uncovered=False).asked(item(TaskCode.SOW))
    assert phone.hears("i sowed half") == [like(a.HALF_SOWN(label="A", sow=TODAY + DAY))]
    (kept,) = phone.known.nurseries
    assert not kept.sown and kept.sow_date == TODAY + DAY


def test_mats_that_dry_are_told_to_be_watered() -> None:
    (heard,) = on_day(10).hears("the mats are dry")
    assert "water" in heard.lower() and "1 Yellow" not in heard


def test_seed_that_waits_to_be_added_is_sown_with_what_is_added_next() -> None:
    """A bed has one day for added seed; the one told before is not passed over in silence."""
    phone = on_day()
    phone.says("chickens ate 15 mats")
    phone.says("yes")
    phone.on(TODAY + DAY)
    phone.says("chickens ate 10 more mats")
    *_, last = phone.hears("yes")
    assert last == like(a.TOGETHER)
    (kept,) = phone.known.nurseries
    assert (kept.more_mats, kept.more_on) == (25, TODAY + 3 * DAY)


@pytest.mark.parametrize("text", ["chicken ate all the mats", "goats trampled the mats"])
def test_how_many_mats_are_gone_is_asked_where_it_is_not_told(text: str) -> None:
    phone = on_day()
    assert phone.hears(text) == [like(..., d.ASK_LOST)]
    phone.says("200")
    assert phone.known.nurseries[0].lost_mats == 200


def test_a_river_is_asked_about_in_the_morning_and_not_at_once() -> None:
    phone = on_day()
    phone.says("the river washed away the mats")
    assert phone.known.session is None
    assert phone.known.nurseries[0].flooded_on == TODAY


def test_green_leaves_of_a_bed_that_is_covered_ask_whether_it_is() -> None:
    """Else it is told to keep water today and to stay covered tomorrow."""
    phone = Phone.enrolled(nursery(sow=TODAY - 4 * DAY, sown=True))
    assert phone.hears("green") != [like(m.GREEN_NOTED)]
    phone.says("yes")
    assert phone.known.nurseries[0].uncovered
    assert on_day(8).hears("green") == [like(m.GREEN_NOTED)]
