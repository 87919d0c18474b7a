"""A question is answered as one: it stops no texts and rings no alarm."""

from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.dialogue import endings as e
from assistant.dialogue.answers import ANSWERS
from assistant.dialogue.answers_plan import of_told_age
from assistant.dialogue.turns import turn
from assistant.dialogue.values import StopTexts, Turn
from assistant.hearing.topics import Topic
from assistant.wording import messages_answers as a
from assistant.wording import messages_answers_more as more
from assistant.wording import messages_care as c
from assistant.wording import messages_talk as m
from assistant.wording.message import Message
from tests.corpus.talk.judging import outcome
from tests.corpus.talk.moments import MOMENTS
from tests.talk import TODAY, Phone
from tests.unit.dialogue.test_answers_more import COVERED, OPEN, PLANTED, aged

READY = aged(18, uncovered=True)


def said(found: Turn) -> list[Message]:
    return [say.message for text in found.texts for say in text.says]


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("sw", "niache umbali gani kati ya miche"),
        ("id", "kirim jawaban kepotong pulsa berapa ya"),
        ("bn", "মেসেজ পাঠালে কত টাকা কাটে"),
        ("en", "why should I leave this, who are you?"),
    ],
)
def test_a_question_stops_no_texts(language: str, text: str) -> None:
    """A word of refusal is one of work too: beside a word of asking it is asked about."""
    found = turn(text, MOMENTS["nothing"](language))
    assert not any(isinstance(change, StopTexts) for change in found.changes)


@pytest.mark.parametrize("text", ["STOP", "stop all these messages", "leave me alone"])
def test_who_refuses_is_not_asked(text: str) -> None:
    """Without a word of asking it is a refusal."""
    found = turn(text, MOMENTS["nothing"]("en"))
    assert any(isinstance(change, StopTexts) for change in found.changes)


@pytest.mark.parametrize(
    ("bed", "message"),
    [
        (COVERED, m.RAIN_ADVICE_EARLY),
        (OPEN, m.RAIN_ADVICE_LATER),
        (READY, c.RAIN_DRAINED),
        (PLANTED, c.RAIN_FIELD),
    ],
)
def test_rain_is_answered_by_the_stage(bed: object, message: Message) -> None:
    """No water is brought back to a bed that is drained for lifting."""
    known = Phone.enrolled(bed).known  # type: ignore[arg-type]
    assert said(e.rain(None, known)) == [message]


def test_rain_after_draining_is_let_off_again() -> None:
    """Whatever the plan says: the text tells that it is drained."""
    found = turn("what do I do if it rains after I drained the bed", MOMENTS["nothing"]("en"))
    assert said(found) == [c.RAIN_DRAINED]


@pytest.mark.parametrize(
    ("bed", "topic", "message"),
    [
        (READY, Topic.WATER_NOW, a.NONE_STANDS),
        (READY, Topic.WATER_DEEP, a.NONE_STANDS),
        (PLANTED, Topic.WATER_NOW, a.FIELD_WATER),
        (PLANTED, Topic.WATER_DEEP, a.FIELD_WATER),
        (PLANTED, Topic.DRAIN_WHEN, more.HARVEST_WHEN),
        (PLANTED, Topic.PLANT_WHEN, a.AFTER_PLANT),
        (PLANTED, Topic.TOO_LATE, a.AFTER_PLANT),
    ],
)
def test_an_answer_undoes_no_work(bed: object, topic: Topic, message: Message) -> None:
    """What is drained or planted is not told of the water it had."""
    says = ANSWERS[topic]("", Phone.enrolled(bed).known)  # type: ignore[arg-type]
    assert says is not None and [each.message for each in says] == [message]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("they are 28 days old, can I still plant?", a.TOO_LATE),
        ("my seedlings have 16 days, plant now?", a.AGE),
    ],
)
def test_an_age_that_is_told_counts(text: str, message: Message) -> None:
    """The day of the plan would send them to plant weeks later."""
    says = of_told_age(text, MOMENTS["nothing"]("en"))
    assert says is not None and [each.message for each in says] == [message]


@pytest.mark.parametrize("text", ["when do I plant", "can I plant in 3 days", "plant 2 acres?"])
def test_no_age_is_made_up(text: str) -> None:
    """Days of waiting and acres are none."""
    assert of_told_age(text, MOMENTS["nothing"]("en")) is None


def test_the_age_of_the_bed_itself_is_answered_by_its_plan() -> None:
    """It has its own window."""
    known = replace(MOMENTS["nothing"]("en"), today=TODAY + timedelta(days=6))
    age = known.nurseries[0].day(known.today)
    assert of_told_age(f"they are {age} days old, plant?", known) is None


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "may I soak seed in a jerrycan that had spray?"),
        ("sw", "naweza kuloweka mbegu kwenye dumu lililokuwa na dawa?"),
        ("fr", "je peux tremper dans un bidon de pesticide ?"),
        ("pt", "posso pôr de molho num bidão de veneno?"),
        ("id", "boleh rendam benih di jerigen bekas racun?"),
    ],
)
def test_what_held_spray_is_forbidden_at_once(language: str, text: str) -> None:
    """Nobody is asked whether somebody is hurt before the answer."""
    assert said(turn(text, MOMENTS["soak"](language)))[:1] == [more.DIRTY_PAIL]


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("fil", "kelan maghuhulip"),
        ("fil", "kelan magdamo"),
        ("bn", "guchi kobe"),
        ("sw", "palizi lini"),
    ],
)
def test_when_of_other_work_is_not_the_days_of_the_plan(language: str, text: str) -> None:
    """The plan has no day for it: its days would be read as that work's."""
    assert m.RESULT_DATES_SOWN not in said(turn(text, MOMENTS["nothing"](language)))


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "can ducks go into the rice field?"),
        ("id", "burung habisi benih, gimana cara ngusirnya"),
        ("vi", "chuột phá mạ làm sao đuổi"),
        ("fil", "paano ang daga sa punlaan"),
        ("sw", "ndege wanazuiwaje"),
    ],
)
def test_how_to_keep_off_rings_no_alarm(language: str, text: str) -> None:
    """It is asked how, and answered."""
    reached = outcome(turn(text, MOMENTS["nothing"](language))).reached
    assert not reached & {"harm", "die"}
    assert "animals" not in reached
