"""A farmer's plain question is answered at once, from this bed on this day."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.agronomy.tasks import TaskCode
from assistant.channel import Channel
from assistant.dialogue import values as v
from assistant.dialogue.answers import ANSWERS
from assistant.hearing.topics import Topic
from assistant.wording import messages_answers as a
from assistant.wording import messages_care as c
from assistant.wording import messages_practice as p
from assistant.wording import messages_seed as seed
from assistant.wording import messages_steps as s
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like

YOUNG = nursery(sow=TODAY - timedelta(days=2), made_on=TODAY - timedelta(days=12), sown=True)
OLDER = replace(
    nursery(sow=TODAY - timedelta(days=9), made_on=TODAY - timedelta(days=19), sown=True),
    uncovered=True,
)


def test_water_is_answered_by_the_day_of_the_bed() -> None:
    """By hand while it is covered, then as it stands."""
    assert Phone.enrolled(YOUNG).hears("how much water now?") == [like(c.WATERING)]
    assert Phone.enrolled(OLDER).hears("how much water now?") == [like(p.KEEP_NOW)]


def test_days_are_those_of_the_plan() -> None:
    """The dates that the reminders go by."""
    phone = Phone.enrolled(YOUNG)
    assert phone.hears("when do i uncover") == [
        like(a.UNCOVER_ON(label="A", uncover=YOUNG.anchors.uncover_date))
    ]
    assert phone.hears("when can i transplant") == [like(a.PLANT_ON)]
    assert phone.hears("when to drain the bed") == [like(a.DRAIN_ON)]


def test_another_field_is_a_sum_aside() -> None:
    """No plan is made of it."""
    phone = Phone.enrolled(YOUNG)
    assert phone.hears("how much seed for two acres?") == [like(a.SUM)]
    assert not phone.changes
    assert phone.known.nurseries == (replace(YOUNG, id=1),)


def test_what_hurts_is_answered_with_its_cautions_and_no_dose() -> None:
    """No product, no mixture, no bait."""
    phone = Phone.enrolled(YOUNG)
    assert phone.hears("can i put my maize urea") == [like(a.UREA)]
    assert phone.hears("what medicine for rats?") == [like(a.NO_DOSE)]
    assert phone.hears("how do i keep the birds away") == [like(s.GUARD)]


def test_a_bed_without_water_reaches_a_person_too() -> None:
    """The answer alone would leave the officer in the dark."""
    phone = Phone.enrolled(YOUNG)
    assert phone.hears("the canal is dry") == [like(c.DRY_EARLY)]
    assert [type(change) for change in phone.changes] == [v.CallForHelp]


def test_a_question_to_the_officer_by_name_is_answered_and_reaches_the_officer() -> None:
    """An officer of six hundred need not answer it, and may."""
    phone = Phone.enrolled(OLDER)
    answer = phone.says("officer, how much water now?")
    assert [each for each in answer.changes if isinstance(each, v.CallForHelp)]
    answer = phone.says("how much water now?")
    assert not [each for each in answer.changes if isinstance(each, v.CallForHelp)]


def test_the_task_stands_after_the_answer() -> None:
    """Its digits answer it still."""
    phone = Phone.enrolled(nursery(sow=TODAY)).asked(item(TaskCode.SOW))
    assert phone.hears("can i sow dry seed?") == [like(a.DRY_SEED)]
    assert phone.hears("1") == [like(m.SOWN_NOTED)]


def test_on_a_screen_the_task_stands_under_the_answer() -> None:
    """A screen has nothing to go back to."""
    phone = Phone.enrolled(nursery(sow=TODAY)).asked(item(TaskCode.SOW))
    phone.known = replace(phone.known, channel=Channel.USSD)
    assert phone.hears("can i sow dry seed?") == [like(a.DRY_SEED, t.ASK_DONE)]


def test_an_open_question_stands_again() -> None:
    """A talk is not lost to a question in between."""
    phone = Phone.enrolled()
    phone.says("new")
    asked = phone.known.session
    phone.hears("is it free?")
    assert phone.known.session == asked


def test_a_deed_is_a_deed() -> None:
    """However much it sounds like a question's words."""
    phone = Phone.enrolled(nursery(sow=TODAY)).asked(item(TaskCode.SOW))
    assert phone.hears("sowed it") == [like(m.SOWN_NOTED)]


@pytest.mark.parametrize("text", ["who are you", "is it free?", "what is a mat"])
def test_a_stranger_is_answered_before_the_first_question(text: str) -> None:
    """And nothing is kept of them."""
    phone = Phone.new()
    (words,) = phone.hears(text)
    assert words.endswith("1 English\n2 Kiswahili") and not words.startswith("Language")
    assert not phone.changes


def test_what_needs_a_plan_is_not_made_up_without_one() -> None:
    """A date that nobody has is no answer."""
    assert Phone.enrolled().hears("when do i uncover") != [like(a.UNCOVER_ON)]


def test_every_answer_can_be_said_at_every_stage() -> None:
    """Of any bed, and without one."""
    for topic, answer in ANSWERS.items():
        for beds in ((), (YOUNG,), (OLDER,), (nursery(),)):
            known = Phone.enrolled(*beds).known
            says = answer("", known)
            assert says or not beds, topic


def test_seed_that_must_not_be_sown_has_no_days() -> None:
    """A date would be followed."""
    held = replace(nursery(), inputs=replace(nursery().inputs, germination=0.2))
    assert held.held
    phone = Phone.enrolled(held)
    assert phone.hears("when do i sow?") == [like(seed.HELD(label="A"))]


def test_how_to_stop_stops_nothing() -> None:
    """The word that does is told."""
    phone = Phone.enrolled(YOUNG)
    assert ANSWERS[Topic.STOP_HOW]("", phone.known) == (a.STOP_HOW(),)


@pytest.mark.parametrize("text", ["change village", "i moved to another village"])
def test_a_wrong_village_reaches_a_person_who_can_change_it(text: str) -> None:
    """Rain warnings go by it; a farmer who says so is heard, and the office decides."""
    phone = Phone.enrolled(YOUNG)
    assert phone.hears(text) == [like(a.VILLAGE)]
    assert [type(change) for change in phone.changes] == [v.CallForHelp]


def test_a_greeting_in_the_middle_of_sign_up_is_no_wrong_answer() -> None:
    """Who comes back after two days is asked where they stopped, and not scolded."""
    phone = Phone.new()
    for text in ("hello", "1", "1"):
        (asked,) = phone.hears(text)
    assert phone.on(TODAY + timedelta(days=2)).hears("hello") == [asked]
