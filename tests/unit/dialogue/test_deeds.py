"""Farmers say what they did: "I have transplanted" is done, "I have watered" is not uncovered.

The words are how the project's drafters would type them; no native reviewer has signed them.
"""

from datetime import date

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.dialogue import values as v
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.talk import Phone, item, nursery
from tests.valley import like

SOWN = date(2026, 6, 10)
DAY_5, DAY_15 = date(2026, 6, 15), date(2026, 6, 25)


def asked_to_uncover() -> Phone:
    """Day 5 of nursery A."""
    phone = Phone.enrolled(nursery(sow=SOWN, sown=True)).on(DAY_5)
    return phone.asked(item(TaskCode.UNCOVER_FLOOD, DAY_5))


@pytest.mark.parametrize("said", ["uncovered", "I have flooded it", "removed the cover"])
def test_the_deed_itself_is_done(said: str) -> None:
    """Either half of "uncover and flood"."""
    phone = asked_to_uncover()
    assert phone.hears(said) == [like(m.DONE_NOTED)]
    assert v.AnswerItem in {type(change) for change in phone.changes}


@pytest.mark.parametrize("said", ["watered", "we have covered", "I soaked it"])
def test_another_deed_is_asked_about(said: str) -> None:
    """Nothing is kept; the digits of the repeated question answer it."""
    phone = asked_to_uncover()
    assert phone.hears(said) == [like(t.SECOND_ASKING, t.ASK_UP)]
    assert phone.changes == []
    assert phone.hears("1") == [like(m.DONE_NOTED)]


def test_a_deed_chooses_among_open_tasks() -> None:
    """Two beds: one to soak for, one to uncover."""
    beds = nursery(sow=SOWN, sown=True), nursery("B", sow=date(2026, 6, 17))
    phone = Phone.enrolled(*beds).on(DAY_5)
    soak = item(TaskCode.SOAK, DAY_5, 2)
    phone.asked(item(TaskCode.UNCOVER_FLOOD, DAY_5), soak)
    assert phone.hears("soaked") == [like(m.DONE_NOTED(label="B", what=t.N_SOAK()))]
    assert [change for change in phone.changes if isinstance(change, v.AnswerItem)] == [
        v.AnswerItem(soak, "done")
    ]
