"""No text contradicts the one before it: what is promised is kept, what is over is not said."""

from datetime import timedelta
from typing import Any

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, PutOff
from assistant.dialogue.values import CallForHelp
from assistant.reminders.compose import compose
from assistant.reminders.values import Reminder
from assistant.wording import messages_answers as a
from assistant.wording import messages_care as c
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.message import Message
from assistant.wording.render import render_all
from tests.talk import TODAY, Phone, item, noon, nursery
from tests.valley import CATALOGUES, like

DAY = timedelta(days=1)


def bed(day: int, **given: Any) -> Phone:
    """A mat bed so many days after its sowing."""
    return Phone.enrolled(nursery(sow=TODAY - day * DAY, sown=True, **given))


# --- sowing ----------------------------------------------------------------------------------


@pytest.mark.parametrize("words", ["not yet", "not sown yet", "2"])
def test_what_was_only_taken_as_sown_is_not_where_the_farmer_says_so(words: str) -> None:
    """It is sown from tomorrow on, and not on a day gone by."""
    phone = bed(2, sow_assumed=True).asked(item(TaskCode.SOW, TODAY - 2 * DAY))
    assert phone.hears(words) == [like(m.SOW_LATER_NOTED)]
    (kept,) = phone.known.nurseries
    assert (kept.sow_date, kept.sown) == (TODAY + DAY, False)


def test_i_forgot_days_later_is_asked_of_which_day() -> None:
    phone = bed(2, sow_assumed=True).asked(item(TaskCode.SOW, TODAY - 2 * DAY))
    expected = like(m.SOWN_THAT_DAY(date=TODAY - 2 * DAY), t.ASK_DONE)
    assert phone.hears("i forgot") == [expected]


def test_work_that_a_new_day_leaves_behind_is_told() -> None:
    """From the 20th to the 5th of June: collecting, of which no text would speak any more."""
    phone = Phone.enrolled(nursery(sow=TODAY + 19 * DAY))
    phone.says("change date")
    phone.says("1")
    moved, missed = phone.hears("5 june")
    assert moved == like(m.SOWING_MOVED)
    assert missed == like(t.DUE_BEFORE) and "collect material" in missed


def test_a_day_sent_where_what_to_change_is_asked_is_that_day() -> None:
    phone = Phone.enrolled(nursery(sow=TODAY + 9 * DAY))
    phone.says("change date")
    (text,) = phone.hears("12 june")
    assert "12 Jun" in text and "not Wed 10 Jun" in text
    phone.says("yes")
    (kept,) = phone.known.nurseries
    assert kept.sow_date == TODAY + 11 * DAY


def test_not_yet_since_it_rains_is_both() -> None:
    """Its safety first, and it is not taken as sown next morning."""
    phone = Phone.enrolled(nursery(sow=TODAY)).asked(item(TaskCode.SOW))
    first, then = phone.hears("not yet, rain")
    assert "lightning" in first and then == like(m.SOW_LATER_NOTED)
    assert phone.known.nurseries[0].sow_date == TODAY + DAY


def test_sown_today_before_it_was_asked_is_a_deed_and_no_plan() -> None:
    phone = Phone.enrolled(nursery(sow=TODAY + 3 * DAY))
    assert "Did you sow on Mon 1 Jun" in phone.hears("already sowed today")[0]
    phone.says("yes")
    (kept,) = phone.known.nurseries
    assert (kept.sow_date, kept.sown) == (TODAY, True)


def test_seed_that_may_be_sown_again_finds_its_collecting_told() -> None:
    """It fell into the days on which the plan was held."""
    weak = nursery(sow=TODAY + 6 * DAY, inputs=FieldInputs(4000.0, 0.3))
    texts = Phone.enrolled(weak).asked(item(TaskCode.SEED_HELD)).hears("2")
    assert any("late already: collect material" in text for text in texts)


def test_sown_where_uncovering_was_asked_may_be_a_second_sowing() -> None:
    phone = bed(5).asked(item(TaskCode.UNCOVER_FLOOD))
    assert "sown again" in phone.hears("sowed")[0]


def test_nothing_is_left_on_the_morning_after_a_flood_is_sown_again() -> None:
    """And the officer hears of the flood, with the words."""
    phone = bed(4, flooded_on=TODAY - DAY).asked(item(TaskCode.AFTER_FLOOD))
    assert "Which seed" in phone.hears("nothing is left")[0]
    calls = [each for each in phone.changes if isinstance(each, CallForHelp)]
    assert [(each.about, each.words) for each in calls] == [("flood", "nothing is left")]


def test_a_bed_is_not_uncovered_on_the_morning_on_which_it_may_be_gone() -> None:
    """Where it stands, that is for tomorrow."""
    flooded = nursery(sow=TODAY - 5 * DAY, sown=True, flooded_on=TODAY - DAY)
    due = [_reminder(code) for code in (TaskCode.AFTER_FLOOD, TaskCode.UNCOVER_FLOOD)]
    assert [each.task for each in compose([(flooded, due)], TODAY).asked] == [due[0].task]
    phone = Phone.enrolled(flooded).asked(item(TaskCode.AFTER_FLOOD))
    phone.says("1")
    assert phone.known.nurseries[0].anchors.uncover_date == TODAY + DAY


# --- shoots and leaves -----------------------------------------------------------------------


def test_who_is_told_that_it_is_asked_tomorrow_is_asked_tomorrow() -> None:
    phone = bed(5).asked(item(TaskCode.UNCOVER_FLOOD))
    assert phone.hears("we uncovered but not flooded") == [like(m.NOT_YET_NOTED)]
    (kept,) = phone.known.nurseries
    assert kept.anchors.uncover_date == TODAY + DAY


def test_half_came_up_is_counted_also_where_uncovering_was_asked() -> None:
    phone = bed(7).asked(item(TaskCode.UNCOVER_FLOOD, TODAY - 2 * DAY))
    assert "how many shoots" in phone.hears("half came up")[-1]


def test_leaves_before_sowing_are_no_leaves() -> None:
    phone = Phone.enrolled(nursery(sow=TODAY + 8 * DAY))
    for word in ("menu", "9", "9"):
        phone.says(word)
    assert phone.hears("4") == [like(a.SOW_ON, a.AGE)]
    assert phone.known.nurseries[0].leaves is None


def test_seedlings_with_three_leaves_are_no_third_choice() -> None:
    """ "Seed does not sprout" stands third in the list."""
    phone = bed(12, uncovered=True)
    phone.says("problem")
    phone.says("my seedlings have 3 leaves")
    assert not any(isinstance(each, CallForHelp) for each in phone.changes)


# --- planting --------------------------------------------------------------------------------


def test_a_bed_that_is_planted_today_is_not_drained_today() -> None:
    sown = nursery(sow=TODAY - 18 * DAY, sown=True)
    due = [_reminder(code) for code in (TaskCode.DRAIN_BED, TaskCode.TRANSPLANT)]
    made = compose([(sown, due)], TODAY)
    text = render_all(made.says, CATALOGUES["en"])
    assert "Drain" not in text and "Transplant" in text
    assert [each.task for each in made.asked] == [TaskCode.TRANSPLANT]


def _reminder(code: TaskCode) -> Reminder:
    at = noon(TODAY)
    return Reminder(nursery_id=1, task=code, day=TODAY, due_at=at, not_after=at)


def test_draining_put_off_on_the_last_evening_is_not_asked_on_the_day_of_planting() -> None:
    phone = bed(17, transplant_date=TODAY + DAY).asked(item(TaskCode.DRAIN_BED, TODAY - DAY))
    assert phone.hears("not yet") == [like(t.P_DRAIN_BED(date=TODAY + DAY))]


def test_what_a_put_off_planting_costs_is_of_its_new_day() -> None:
    """Day 24, until day 28: then two more a hill, and half the field; not one more."""
    phone = bed(18).asked(item(TaskCode.TRANSPLANT))
    for word in ("2", "1", "in 6 days"):
        phone.says(word)
    phone.on(TODAY + 6 * DAY).asked(item(TaskCode.TRANSPLANT, TODAY + 6 * DAY))
    cost = c.LATE_LOSS(n=4, share=50, percent=22)
    assert phone.hears("not yet") == [like(d.WATER_BACK, cost)]


def test_half_planted_keeps_its_rest_for_tomorrow() -> None:
    phone = bed(18).asked(item(TaskCode.TRANSPLANT))
    assert phone.hears("planted half today") == [
        like(d.REST_PLANTED(label="A", date=TODAY + DAY))
    ]


@pytest.mark.parametrize(
    ("words", "asks"), [("no hands, wait until 10 june", False), ("we are late", True)]
)
def test_planting_that_waits_is_heard_where_draining_was_asked(words: str, asks: bool) -> None:
    phone = bed(17).asked(item(TaskCode.DRAIN_BED, TODAY - DAY))
    texts = phone.hears(f"{words}, tractor broke" if asks else words)
    assert "Let water in again today" in texts[0]
    assert ("which day" in texts[0]) is asks


def test_no_bed_is_to_be_drained_on_a_day_gone_by() -> None:
    phone = bed(15)
    phone.says("3 leaves")
    assert phone.hears("tomorrow") == [like(a.PLANT_ON, t.P_DRAIN_BED(date=TODAY + DAY))]


def test_seedlings_of_five_leaves_are_planted_too() -> None:
    (text,) = bed(18, leaves=5.0, leaves_on=TODAY - DAY).hears("today")
    assert "3 to 5 open leaves" in text


def test_who_has_stopped_is_asked_nothing_beside_the_alarm() -> None:
    phone = bed(10)
    phone.says("stop")
    (text,) = phone.hears("chickens ate 30 mats")
    assert "Sow as many" not in text


@pytest.mark.parametrize(
    ("day", "message"), [(10, a.PLANT_ON), (16, a.PLANT_ON), (25, d.SET), (50, d.TOO_OLD)]
)
def test_whether_it_can_still_be_planted_is_as_the_days_text_has_it(
    day: int, message: Message
) -> None:
    assert bed(day).hears("can i still plant") == [like(message)]


def test_a_plan_of_seedlings_that_are_too_old_says_so_first() -> None:
    phone = Phone.enrolled()
    for text in ("new", "1 acre", "85", "10 L", "2 april", "yes"):
        phone.says(text)
    (text,) = phone.hears("yes")
    assert text == like(d.TOO_OLD)


def test_few_leaves_are_never_called_old() -> None:
    """Two leaves on day 31 are not four on day 45: the officer is to be asked."""
    phone = bed(50, leaves=2.0, leaves_on=TODAY - 19 * DAY)
    assert phone.hears("today") == [like(t.HEAD, d.OLD_YET_FEW_LEAVES)]


# --- what is wrong ---------------------------------------------------------------------------


@pytest.mark.parametrize("words", ["ants", "the ants are eating the seed", "rats"])
def test_who_names_the_animals_is_not_asked_what_is_wrong(words: str) -> None:
    assert "Use no poison" in bed(3).hears(words)[0]


@pytest.mark.parametrize("words", ["no water", "i dont have water"])
def test_no_water_is_one_of_the_list_in_any_words(words: str) -> None:
    phone = bed(3)
    phone.says("problem")
    (text,) = phone.hears(words)
    assert "3 No water" in text


def test_how_much_water_is_no_question_for_the_shopping_list() -> None:
    (text,) = bed(3).hears("how much water")
    assert "Urea" not in text and "pails each time" in text


def test_who_holds_the_phone_is_met_and_no_cry() -> None:
    assert bed(3).hears("i am his wife") == [like(a.HOUSEHOLD)]


# --- seed ------------------------------------------------------------------------------------


def test_who_has_tested_meanwhile_sends_the_count_where_untested_seed_is_spoken_of() -> None:
    phone = Phone.enrolled()
    for text in ("new", "1 acre", "no"):
        phone.says(text)
    assert "Changed: 83%" in phone.hears("83")[0]


def test_new_nursery_is_a_new_one_beside_the_first() -> None:
    assert "How big is the field" in bed(3).hears("new nursery")[0]


def test_start_loses_nothing_of_a_plan_half_made() -> None:
    phone = Phone.enrolled()
    for text in ("new", "1 acre", "85"):
        phone.says(text)
    (text,) = phone.hears("start")
    assert "pail" in text


def test_a_put_off_sowing_that_was_told_stays() -> None:
    sown = nursery(sow=TODAY - DAY, sown=True)
    event = PutOff(
        on=TODAY, by=By.FARMER, task=TaskCode.SOW, was=TODAY - DAY, until=TODAY + DAY
    )
    assert after(sown, event) is sown
