"""What is seen on the bed, a day that was missed, and what is no question of a nursery."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.agronomy.nursery import Nursery
from assistant.dialogue import values as v
from assistant.dialogue.answers import ANSWERS
from assistant.hearing.topics import Topic
from assistant.wording import messages_answers as a
from assistant.wording import messages_answers_more as more
from assistant.wording import messages_practice as p
from assistant.wording.message import Message
from tests.talk import TODAY, Phone, nursery
from tests.valley import like


def aged(days: int, **more: object) -> Nursery:
    """A bed that was sown so many days ago."""
    sown = nursery(
        sow=TODAY - timedelta(days=days), made_on=TODAY - timedelta(days=days + 5), sown=True
    )
    return replace(sown, **more)  # type: ignore[arg-type]


COVERED, OPEN = aged(2), aged(9, uncovered=True)
PLANTED = aged(20, uncovered=True, transplanted_on=TODAY - timedelta(days=2))


@pytest.mark.parametrize(
    ("topic", "bed", "said"),
    [
        (Topic.DAY_LATER, nursery(), more.LATER_SOW),
        (Topic.DAY_LATER, COVERED, more.LATER_UNCOVER),
        (Topic.DAY_LATER, OPEN, a.PLANT_ON),
        (Topic.DAY_LATER, PLANTED, more.GAPS),
        (Topic.WATER_MISSED, COVERED, more.MISSED_WATER),
        (Topic.WATER_MISSED, OPEN, p.KEEP_NOW),
        (Topic.NOT_UP, nursery(), more.SLOW_SPROUT),
        (Topic.NOT_UP, COVERED, more.NOT_UP),
        (Topic.NOT_UP, OPEN, more.BARE),
        (Topic.FLOOD_WHEN, COVERED, more.FLOOD_ON),
        (Topic.NO_WATER, PLANTED, a.DRY_FIELD),
        (Topic.MATS_MANY, COVERED, a.MATS_MANY),
    ],
)
def test_an_answer_is_of_the_bed_as_it_stands(
    topic: Topic, bed: Nursery, said: Message
) -> None:
    """The same question another week is another one."""
    says = ANSWERS[topic]("", Phone.enrolled(bed).known)
    assert says is not None and [each.message for each in says] == [said]


@pytest.mark.parametrize("text", ["can i get a loan for seed", "is there a subsidy?"])
def test_money_reaches_a_person(text: str) -> None:
    """Nobody can answer it here, and it may matter."""
    phone = Phone.enrolled(COVERED)
    assert phone.hears(text) == [like(more.MONEY_HELP)]
    assert [type(change) for change in phone.changes] == [v.CallForHelp]


def test_mere_talk_is_told_what_this_is_and_calls_nobody() -> None:
    """An officer of six hundred need not hear who won."""
    phone = Phone.enrolled(COVERED)
    assert phone.hears("good morning how are you") == [like(more.CHAT)]
    assert not phone.changes


def test_a_question_that_was_not_read_is_told_how_to_ask() -> None:
    """ "I did not understand" tells nobody what to write."""
    phone = Phone.enrolled(COVERED)
    phone.known = replace(phone.known, ears=replace(phone.known.ears, match=None))
    assert phone.hears("xoro zuru bibo?") == [like(more.ASK_SHORT)]
    assert [type(change) for change in phone.changes] == [v.NoteUnread]


@pytest.mark.parametrize("topic", [Topic.SCAM, Topic.LOW_HEART])
def test_a_cheat_and_a_low_heart_name_a_person(topic: Topic) -> None:
    """Whoever is named is told, see `_TOLD_TOO`."""
    says = ANSWERS[topic]("", Phone.enrolled(COVERED).known)
    assert says is not None and "person" in says[0].slots


@pytest.mark.parametrize(
    "text", ["can i soak in a bucket that had diesel", "soak the seed in a kerosene can?"]
)
def test_nobody_is_told_how_long_to_soak_in_fuel(text: str) -> None:
    """Whatever the table is surer of."""
    assert Phone.enrolled(nursery()).hears(text) == [like(more.DIRTY_PAIL)]


def test_one_mat_plants_its_share_of_the_field() -> None:
    """4000 m2 and 267 mats: about 15 m2 each."""
    says = ANSWERS[Topic.MATS_MANY]("", Phone.enrolled(COVERED).known)
    assert says is not None and says[0].slots["plants"] == 15


def test_before_any_plan_sowing_is_counted_back() -> None:
    """From the day on which the field is ready."""
    says = ANSWERS[Topic.SOW_WHEN]("", Phone.enrolled().known)
    assert says is not None and [each.message for each in says] == [a.SOW_FIRST]
