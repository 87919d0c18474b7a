"""What farmers told in seasons that went otherwise than planned, and what is made of it."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.dialogue import values as v
from assistant.wording import messages_again as again
from assistant.wording import messages_aid as aid
from assistant.wording import messages_answers as a
from assistant.wording import messages_delay as delay
from assistant.wording import messages_steps as s
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like


def on_day(day: int, *asked: TaskCode, **given: object) -> Phone:
    """A phone with a bed on its day, sown and uncovered as it should be by then."""
    told = {"sown": day > 0, "uncovered": day > 5, **given}
    bed = replace(nursery(sow=TODAY - timedelta(days=day)), **told)  # type: ignore[arg-type]
    return Phone.enrolled(bed).asked(*map(item, asked)) if asked else Phone.enrolled(bed)


def answers(phone: Phone) -> list[str]:
    return [each.answer for each in phone.changes if isinstance(each, v.AnswerItem)]


@pytest.mark.parametrize(
    ("task", "day", "told"),
    [
        (TaskCode.SOAK, -2, "we could not soak, funeral in the family"),
        (TaskCode.SOW, 0, "we couldnt sow today it rained"),
    ],
)
def test_work_that_could_not_be_done_is_put_off(task: TaskCode, day: int, told: str) -> None:
    phone = on_day(day, task)
    phone.says(told)
    assert answers(phone) == ["not_yet"]


def test_drained_a_day_early_is_drained() -> None:
    phone = on_day(15)
    phone.says("drained")
    assert answers(phone) == ["done"]


def test_drained_much_too_early_gets_its_water_back() -> None:
    assert on_day(10).hears("drained") == [like(delay.WATER_BACK, ...)]


def test_drained_told_where_planting_is_asked_is_said_back_and_planting_asked_again() -> None:
    phone = on_day(18, TaskCode.TRANSPLANT)
    assert phone.hears("drained") == [like(m.DONE_NOTED, ..., t.SECOND_ASKING, ...)]


@pytest.mark.parametrize("task", [TaskCode.DRAIN_BED, TaskCode.TRANSPLANT])
def test_too_small_asks_for_the_leaves_and_drains_nothing(task: TaskCode) -> None:
    phone = on_day(18, task)
    assert phone.hears("not yet, too small") == [like(m.ASK_LEAVES(label="A"))]
    phone.says("2")
    assert phone.known.nurseries[0].anchors.transplant_date > TODAY


def test_half_a_leaf_is_a_count_though_nothing_was_asked() -> None:
    assert on_day(17).hears("1.5")[0].startswith("A: open leaves 1.5")


@pytest.mark.parametrize(("day", "task"), [(5, TaskCode.UNCOVER_FLOOD), (12, None)])
def test_more_leaves_than_can_be_are_asked_back_once(day: int, task: TaskCode | None) -> None:
    phone = on_day(day, *([task] if task else []))
    odd = m.LEAVES_ODD(count=5.0, day=day)
    assert phone.hears("5 leaves") == [like(odd, m.ASK_LEAVES(label="A"))]
    assert phone.hears("5")[0].startswith("A: 5 open leaves")


def test_both_done_settles_what_the_text_asked_of_each_bed() -> None:
    other = nursery("B", sow=TODAY + timedelta(days=2))
    first = nursery(sow=TODAY - timedelta(days=5), sown=True)
    phone = Phone.enrolled(first, other)
    phone.asked(item(TaskCode.UNCOVER_FLOOD), item(TaskCode.SOAK, nursery_id=2))
    phone.says("both done")
    assert answers(phone) == ["done", "done"]


def test_one_bed_planted_and_the_other_not_of_which_nothing_was_asked() -> None:
    beds = (on_day(18).known.nurseries[0], replace(on_day(15).known.nurseries[0], label="B"))
    phone = Phone.enrolled(*beds).asked(item(TaskCode.TRANSPLANT))
    phone.says("A planted, B not yet")
    assert answers(phone) == ["done"]


def test_a_bed_named_in_the_middle_is_not_asked_for() -> None:
    beds = (on_day(16).known.nurseries[0], replace(on_day(13).known.nurseries[0], label="B"))
    phone = Phone.enrolled(*beds).asked(item(TaskCode.DRAIN_BED))
    assert phone.hears("plant A on thursday")[0].startswith("A: transplant on Thu 4 Jun")


def test_planted_as_far_as_the_seedlings_went_is_planted_and_short() -> None:
    phone = on_day(18, TaskCode.TRANSPLANT)
    assert phone.hears("transplanted half, seedlings finished")[0].startswith("Did you have to")
    assert phone.known.nurseries[0].transplanted_on == TODAY
    phone.says("2")
    kept = [each.outcome for each in phone.changes if isinstance(each, v.KeepSeason)]
    assert [each.planted_area_m2 / each.field_area_m2 for each in kept] == [0.5]


def test_the_rest_tomorrow_is_no_end() -> None:
    phone = on_day(18, TaskCode.TRANSPLANT)
    assert phone.hears("planted half today, the rest tomorrow") == [
        like(delay.REST_PLANTED, ...)
    ]


def test_a_day_after_not_yet_is_the_day_of_planting() -> None:
    phone = on_day(26, TaskCode.TRANSPLANT, delay_why="hands")
    phone.says("not yet")
    phone.says("9 june")
    day = phone.known.nurseries[0].anchors.transplant_date
    assert (day.day, day.month) == (9, 6)


def test_not_yet_after_done_is_of_no_task_of_a_planted_field() -> None:
    phone = on_day(24).asked(item(TaskCode.TRANSPLANT, TODAY - timedelta(days=1)))
    phone.asked(item(TaskCode.OVERDUE))
    phone.says("1")
    phone.says("2")
    assert not phone.changes
    assert phone.known.nurseries[0].transplanted_on == TODAY


@pytest.mark.parametrize("told", ["can i plant today", "can i transplant now?"])
def test_whether_it_may_be_planted_today_is_answered_by_the_age_of_the_bed(told: str) -> None:
    assert on_day(18, TaskCode.TRANSPLANT).hears(told) == [like(a.PLANT_ON, ...)]
    late = on_day(30, TaskCode.TRANSPLANT).hears(told)
    assert late == [like(delay.SET, ...)]
    assert on_day(46, TaskCode.OVERDUE).hears(told) == [like(delay.TOO_OLD, ...)]


def test_when_to_plant_is_no_question_of_a_planted_field() -> None:
    planted = on_day(25, transplanted_on=TODAY - timedelta(days=3))
    assert planted.hears("when do i transplant") == [like(a.AFTER_PLANT())]


@pytest.mark.parametrize("size", ["0.3 ha", "field is 0.3 ha now"])
def test_the_field_is_changed_by_its_size(size: str) -> None:
    phone = on_day(-5)
    phone.says("CHANGE DATE")
    assert phone.hears(size)[0].startswith("You mean 0.3 ha?")
    phone.says("1")
    assert phone.known.nurseries[0].inputs.field_area_m2 == 3000


@pytest.mark.parametrize(
    ("choice", "told", "kept"),
    [("3", "0.3 ha", (3000, 0.85)), ("4", "9/10", (4000, 0.9))],
)
def test_what_a_plan_stands_on_is_no_date(
    choice: str, told: str, kept: tuple[float, float]
) -> None:
    phone = on_day(-5)
    phone.says("CHANGE DATE")
    phone.says(choice)
    phone.says(told)
    inputs = phone.known.nurseries[0].inputs
    assert (inputs.field_area_m2, inputs.germination) == kept


def test_no_straw_and_no_plastic_are_no_danger() -> None:
    above, below = like(s.ABOVE()), like(a.NO_SHEET())
    assert on_day(1).hears("i have no plastic and no straw to cover") == [above]
    assert on_day(-3).hears("i have no plastic and no straw") == [below, above]
    assert on_day(3).hears("no straw, flood is coming") != [above]


def test_to_end_the_season_is_no_wish_to_die() -> None:
    phone = on_day(13)
    phone.says("i want to end this season")
    assert not [each for each in phone.changes if isinstance(each, v.RaiseAlarm)]
    phone.says("i want to end my life")
    assert [each for each in phone.changes if isinstance(each, v.RaiseAlarm)]
    phone.says("the season is over, i want to end my life")
    assert [each for each in phone.changes if isinstance(each, v.RaiseAlarm)]


def test_a_husband_in_town_is_no_alarm() -> None:
    phone = on_day(9)
    phone.says("my husband has gone to town, i am his wife")
    assert not [each for each in phone.changes if isinstance(each, v.RaiseAlarm)]


def test_sown_long_before_its_day_is_asked_back() -> None:
    assert on_day(-8).hears("sown")[0].startswith("Did you sow on Mon 1 Jun?")


def test_half_sown_is_no_share_of_seed() -> None:
    phone = Phone.enrolled()
    phone.says("NEW")
    phone.says("0.4 ha")
    assert phone.hears("we planted half")[0].startswith("You mean 50%?")


def test_litres_are_no_share_of_seed() -> None:
    phone = Phone.enrolled()
    phone.says("NEW")
    phone.says("0.4 ha")
    assert phone.hears("20 L") == [like(m.AGAIN_GERMINATION())]


def test_a_plan_that_lay_open_past_its_day_asks_whether_it_is_sown() -> None:
    phone = Phone.enrolled()
    for told in ("NEW", "0.4 ha", "85", "10 L", "10 June"):
        phone.says(told)
    phone.on(TODAY + timedelta(days=14))
    assert phone.hears("1")[0].startswith("Did you sow on Wed 10 Jun?")
    assert not phone.known.nurseries


def test_a_test_that_runs_may_be_counted_while_the_plan_is_made() -> None:
    phone = Phone.enrolled()
    for told in ("NEW", "0.4 ha", "no", "2", "1"):
        phone.says(told)
    assert "30%" in phone.hears("30 of 100")[0]


def test_animals_that_ate_of_the_bed_are_asked_how_many_mats() -> None:
    heard = on_day(3).hears("goats ate half of the bed")
    assert "How many mats" in heard[0]


def test_sown_again_is_heard_beside_what_was_eaten() -> None:
    phone = on_day(3)
    heard = phone.hears("sowed again today, first seed was eaten by birds")
    assert again.ASK_ALL.text in heard[0]
    phone.says("1")
    assert phone.known.nurseries[0].sow_date == TODAY


def test_snails_of_a_planted_field_are_picked_by_hand() -> None:
    planted = on_day(25, transplanted_on=TODAY - timedelta(days=3))
    assert "by hand" in planted.hears("snails in the field")[0]


def test_gaps_that_are_filled_early_are_not_asked_for() -> None:
    planted = on_day(22, transplanted_on=TODAY - timedelta(days=3))
    planted.says("filled the gaps")
    assert answers(planted) == ["done"]


def test_green_again_is_good() -> None:
    assert on_day(9).hears("green now") == [like(m.GREEN_NOTED, ...)]


def test_seed_without_roots_on_its_day_is_sown_a_day_later() -> None:
    phone = on_day(0, TaskCode.SOW)
    phone.says("PROBLEM")
    phone.says("3")
    assert answers(phone) == ["not_yet"]
    assert phone.known.nurseries[0].sow_date == TODAY + timedelta(days=1)


def test_a_harvest_in_bags_reaches_a_person_where_no_result_was_told() -> None:
    planted = on_day(25, transplanted_on=TODAY - timedelta(days=7))
    assert planted.hears("harvest 22 bags of 50 kg") == [like(aid.PASSED_ON, ...)]


def test_a_language_is_named_with_a_courtesy() -> None:
    phone = on_day(9)
    phone.says("kiswahili please")
    assert phone.known.farmer is not None
    assert phone.known.farmer.language == "sw"


def test_other_seed_with_its_test_is_no_variety_of_so_many_days() -> None:
    phone = on_day(-9)
    phone.says("bought other seed, 90 sprouted in 7 days")
    assert phone.known.nurseries[0].ripens_d is None


@pytest.mark.parametrize(
    "told", ["planted half, seedlings finished", "planted three quarters, seedlings finished"]
)
def test_seedlings_that_ended_are_no_lost_bed(told: str) -> None:
    phone = on_day(18, TaskCode.TRANSPLANT)
    phone.says(told)
    assert not [each for each in phone.changes if isinstance(each, v.RaiseAlarm)]
    assert phone.known.nurseries[0].transplanted_on == TODAY


def test_work_that_is_told_while_the_texts_rest_lets_them_go_on() -> None:
    phone = on_day(5, TaskCode.UNCOVER_FLOOD)
    phone.says("taken out")
    assert [each for each in phone.changes if isinstance(each, v.PauseTexts)]
    phone.says("we uncovered the bed")
    assert [each for each in phone.changes if isinstance(each, v.ResumeTexts)]
    assert answers(phone) == ["done"]


def test_no_more_while_the_texts_rest_is_no_work() -> None:
    phone = on_day(9)
    phone.says("taken out")
    phone.says("no more")
    assert not [each for each in phone.changes if isinstance(each, v.ResumeTexts)]


def test_planted_after_all_asks_no_more_why_it_was_not() -> None:
    phone = on_day(18, TaskCode.TRANSPLANT)
    phone.says("not yet")
    phone.asked(item(TaskCode.TRANSPLANT))
    assert len(phone.hears("all is planted now")) == 1
    assert phone.known.session is None


def test_a_sentence_in_a_language_chooses_it() -> None:
    phone = Phone.new()
    phone.says("hi")
    phone.says("nataka msaada wa mpunga wangu")
    assert phone.known.session is not None
    assert phone.known.session.answers["language"] == "sw"
