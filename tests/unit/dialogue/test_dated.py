"""A day named in a sentence is heard, and read back before it changes anything."""

from collections import Counter
from dataclasses import replace
from datetime import timedelta

import pytest

from assistant.agronomy.tasks import TaskCode
from assistant.dialogue import values as v
from assistant.wording import messages_answers as a
from assistant.wording import messages_days as d
from assistant.wording import messages_talk as m
from tests.corpus.dates import hear, is_kept_wrongly, is_right, rows
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import day, like, numbered

SOON = nursery(sow=TODAY + timedelta(days=9))
YOUNG = nursery(sow=TODAY - timedelta(days=2), sown=True)
OLDER = replace(nursery(sow=TODAY - timedelta(days=16), sown=True), uncovered=True)
RIGHT = 0.94  # of the corpus, which the rules were mended on


def test_the_corpus_is_heard_and_nothing_is_kept_that_was_not_said() -> None:
    found = [(row, hear(row)) for row in rows()]
    right = Counter(row.language for row, heard in found if is_right(row, heard))
    assert sum(right.values()) >= RIGHT * len(found), right
    assert [row.text for row, heard in found if is_kept_wrongly(row, heard)] == []


def test_another_day_of_sowing_is_read_back_and_then_kept() -> None:
    phone = Phone.enrolled(SOON)
    asked = d.SOW_THEN(label="A", date=day("12 Jun"), sow=day("10 Jun"))
    assert phone.hears("change to 12 june") == [like(asked, *numbered(m.YES(), m.NO()))]
    assert not phone.changes
    phone.says("1")
    assert phone.known.nurseries[0].sow_date == day("12 Jun")


def test_no_asks_which_day_it_is() -> None:
    phone = Phone.enrolled(SOON)
    phone.says("we sow on friday")
    assert phone.hears("2") == [like(m.ASK_NEW_SOWING(label="A", sow=day("10 Jun")))]
    phone.says("14 june")
    assert phone.known.nurseries[0].sow_date == day("14 Jun")


def test_another_day_in_place_of_yes() -> None:
    phone = Phone.enrolled(SOON)
    phone.says("we sow on friday")
    phone.says("no, 15 june")
    assert phone.known.nurseries[0].sow_date == day("15 Jun")


def test_soaking_moves_sowing_with_it() -> None:
    """The seed is sown as many days after as the plan has it."""
    phone = Phone.enrolled(SOON)
    phone.says("we will soak on 9 june")
    assert phone.known.session is not None
    assert phone.known.session.answers["sowing"] == "2026-06-11"


def test_beside_an_open_task_the_day_to_come_is_no_deed() -> None:
    """Weeks have a Friday behind them, too."""
    phone = Phone.enrolled(OLDER).asked(item(TaskCode.TRANSPLANT))
    outcome = phone.says("we plant on friday")
    answers = [each.answer for each in outcome.changes if isinstance(each, v.AnswerItem)]
    assert answers == ["not_yet"]
    assert phone.known.session is not None
    assert phone.known.session.answers["until"] == "2026-06-05"


def test_a_day_before_there_is_a_plan_begins_one() -> None:
    phone = Phone.enrolled()
    phone.says("sowing on 20 june")
    assert phone.known.session is not None
    assert phone.known.session.answers["sowing"] == "2026-06-20"


def test_the_day_is_kept_while_the_field_is_asked() -> None:
    phone = Phone.enrolled()
    phone.says("new")
    (words,) = phone.hears("we sow on 20 june")
    assert words.startswith("Noted: ")
    assert phone.known.session is not None
    assert phone.known.session.answers["sowing"] == "2026-06-20"


def test_a_bed_that_is_sown_is_not_sown_again() -> None:
    assert Phone.enrolled(YOUNG).hears("we sow on friday") == [like(a.SOWN_ON)]


def test_that_the_field_was_planted_is_asked_and_kept_on_its_day() -> None:
    phone = Phone.enrolled(OLDER)
    assert phone.hears("planted yesterday")[0].startswith("A: was the field planted on ")
    phone.says("yes")
    assert phone.known.nurseries[0].transplanted_on == TODAY - timedelta(days=1)


@pytest.mark.parametrize(
    "text",
    [
        "i go to town on friday",
        "my neighbour sows on friday",
        "i transplant my onions on friday",
        "see you on monday",
        "moved the mats yesterday",
        "not tomorrow",
        "should we sow on friday or saturday?",
    ],
)
def test_a_day_of_something_else_opens_nothing(text: str) -> None:
    phone = Phone.enrolled(SOON)
    outcome = phone.says(text)
    assert outcome.session is None or not outcome.session.conversation.endswith("_then")
    assert not any(isinstance(each, v.SaveNursery) for each in outcome.changes)
