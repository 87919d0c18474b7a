"""What was done and when, in one reply: the day may stand before, after or amid the words."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.dialogue.values import Focus, Item, RaiseAlarm
from assistant.reading import Outcome, read_told
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_aid as aid
from assistant.wording import messages_answers as a
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.message import Message
from assistant.wording.render import render
from tests.talk import Phone, noon, nursery
from tests.valley import day, like

SOW = Item(1, TaskCode.SOW, day("10 Jun"))
LEXICONS = open_lexicons()


def asked_to_sow(language: str = "en", today: date = SOW.day, label: str = "A") -> Phone:
    """A phone whose last text asked whether the seed is sown."""
    phone = Phone.enrolled(nursery(label, sow=SOW.day), today=today)
    lexicons = {**phone.known.lexicons, language: LEXICONS[language]}
    catalogue = replace(phone.known.catalogue, language=language)
    phone.known = replace(
        phone.known,
        now=noon(today),
        lexicons=lexicons,
        catalogue=catalogue,
        items=(SOW,),
        focuses=(Focus(items=(SOW,)),),
    )
    return phone


@pytest.mark.parametrize(
    ("language", "words", "days_ago"),
    [
        ("en", "i have sown today", 0),
        ("en", "yesterday I sowed", 1),
        ("en", "we have sown it all 2 days ago", 2),
        ("en", "Done, on Monday", 4),
        ("en", "i done yesterday", 1),
        ("sw", "jana nimesia", 1),
        ("fr", "j'ai semé hier", 1),
        ("fr", "c'est fait hier", 1),
        ("pt", "eu semeei hoje", 0),
        ("id", "saya sudah menabur kemarin", 1),
        ("fil", "naghasik na ako kahapon", 1),
        ("vi", "hôm qua tôi đã gieo", 1),
        ("hi", "कल बो दिया", 1),
        ("hi", "maine aaj bo diya", 0),
        ("bn", "গতকাল বুনেছি", 1),
        ("bn", "hoye geche kal", 1),
    ],
)
def test_the_day_is_kept(language: str, words: str, days_ago: int) -> None:
    today = date(2026, 6, 12)
    phone = asked_to_sow(language, today)
    phone.says(words)
    kept = phone.known.nurseries[0]
    assert (kept.sown, kept.sow_date) == (True, today - timedelta(days=days_ago))


def test_not_yet_with_a_day_is_not_done() -> None:
    phone = asked_to_sow()
    phone.hears("have not sown today")
    assert not phone.known.nurseries[0].sown


def test_what_was_not_read_shows_todays_task_again() -> None:
    phone = asked_to_sow()
    assert phone.hears("a kite over the tower") == [
        like(m.DID_NOT_UNDERSTAND, t.SECOND_ASKING, t.ASK_DONE)
    ]
    phone.hears("1")
    assert phone.known.nurseries[0].sown


def test_a_task_of_another_day_is_not_pressed() -> None:
    phone = asked_to_sow(today=SOW.day + timedelta(days=2))
    assert phone.hears("a kite over the tower") == [like(m.DID_NOT_UNDERSTAND)]


def test_when_is_answered_with_the_days() -> None:
    phone = asked_to_sow()
    assert phone.hears("when do I transplant?") == [like(a.PLANT_ON)]


def test_thanks_are_met() -> None:
    phone = asked_to_sow()
    assert phone.hears("ok thank you") == [like(m.ALL_RIGHT)]
    assert not phone.known.nurseries[0].sown


def test_an_ok_agrees_to_what_was_taken_as_sown() -> None:
    phone = asked_to_sow(today=SOW.day + timedelta(days=1))
    assert phone.hears("ok") == [like(m.SOWN_NOTED)]
    assert phone.known.nurseries[0].sown


def test_an_ok_may_name_its_nursery() -> None:
    phone = asked_to_sow(today=SOW.day + timedelta(days=1), label="B")
    assert phone.hears("ok B") == [like(m.SOWN_NOTED)]


def test_an_ok_where_nothing_was_asked_is_met() -> None:
    phone = Phone.enrolled(nursery(sow=day("20 Jun")), today=day("10 Jun"))
    assert phone.hears("ok") == [like(m.ALL_RIGHT)]


def test_a_wish_in_the_first_plan_loses_nothing() -> None:
    phone = Phone.enrolled()
    phone.says("NEW")
    phone.says("1 acre")
    assert phone.hears("I want to change the date") == [like(m.KEPT_SO_FAR, m.ASK_GERMINATION)]
    phone.says("85")
    assert phone.hears("10 litres") == [like(m.ASK_SOWING)]


@pytest.mark.parametrize("asks", [t.ASK_DONE, t.ASK_UP])
@pytest.mark.parametrize("language", sorted(LEXICONS))
def test_the_words_beside_the_digits_answer_too(language: str, asks: Message) -> None:
    done, not_yet = render(asks(), open_catalogue(language)).removeprefix("1 ").split(" 2 ")
    said = [read_told(words, LEXICONS[language]) for words in (done, not_yet)]
    assert [(each.outcome, each.value) for each in said] == [
        (Outcome.UNDERSTOOD, "done"),
        (Outcome.UNDERSTOOD, "not_yet"),
    ]


def test_a_flood_in_plain_words_reaches_a_person_at_once() -> None:
    """The farmer hears of life first, and of the bed afterwards."""
    phone = Phone.enrolled(nursery(sow=day("8 Jun")), today=day("10 Jun"))
    words = "water is standing over the bed"
    person = aid.YOUR_OFFICER()
    assert phone.hears(words) == [like(aid.DANGER_TOLD(person=person))]
    assert phone.changes == [RaiseAlarm("danger", words, 1)]
