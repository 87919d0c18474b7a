"""Planting that slips, as people put it: reason and day in one text, and no dry mats."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.events import Why
from assistant.dialogue import values as v
from assistant.dialogue.turns import turn
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_delay as d
from assistant.wording import messages_result as r
from assistant.wording import messages_tasks as t
from assistant.wording.day import DayWork, offer, work_says
from assistant.wording.message import Message
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like, numbered

DAY = timedelta(days=1)


def on_the_day(day: int = 18, task: TaskCode = TaskCode.TRANSPLANT) -> Phone:
    """A mat bed that was drained two days ago, to be planted today."""
    return Phone.enrolled(nursery(sow=TODAY - day * DAY, sown=True)).asked(item(task))


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("not yet, no hands", Why.HANDS),
        ("not yet the pump is broken", Why.WATER),
        ("no workers this week", Why.HANDS),
        ("we have no water in the canal", Why.WATER),
        ("the field is not ploughed", Why.FIELD),
        ("too much rain", Why.RAIN),
    ],
)
def test_why_is_heard_where_it_is_said(text: str, why: Why) -> None:
    """And only the day is asked then."""
    phone = on_the_day()
    (heard,) = phone.hears(text)
    assert "Let water in" in heard and "Why" not in heard and "which day" in heard
    (kept,) = phone.known.nurseries
    assert kept.delay_why is why


@pytest.mark.parametrize(
    ("language", "text", "why"),
    [
        ("sw", "bado, hakuna vibarua", Why.HANDS),
        ("sw", "bado pampu imeharibika", Why.WATER),
        ("hi", "अभी नहीं, मजदूर नहीं मिले", Why.HANDS),
        ("bn", "এখনো না, লোক নাই", Why.HANDS),
        ("vi", "chưa, không có người cấy", Why.HANDS),
        ("id", "belum, tidak ada tenaga", Why.HANDS),
        ("fil", "hindi pa, walang tao", Why.HANDS),
        ("fr", "pas encore, pas de main d'oeuvre", Why.HANDS),
        ("pt", "ainda não, falta gente", Why.HANDS),
    ],
)
def test_why_is_heard_in_every_language(language: str, text: str, why: Why) -> None:
    phone = on_the_day()
    known = replace(phone.known, catalogue=open_catalogue(language), lexicons=open_lexicons())
    (kept,) = [
        each.nursery for each in turn(text, known).changes if isinstance(each, v.SaveNursery)
    ]
    assert kept.delay_why is why


def test_reason_and_day_in_one_text_ask_nothing_more() -> None:
    phone = on_the_day()
    first, *_ = phone.hears("no hands until 11 june")
    day = date(2026, 6, 11)
    assert "Thu 11 Jun" in first and "which day" not in first
    (kept,) = phone.known.nurseries
    assert (kept.anchors.transplant_date, kept.delay_why) == (day, Why.HANDS)


def test_a_day_that_is_too_late_is_asked_again() -> None:
    phone = on_the_day()
    (heard,) = phone.hears("no hands until 30 august")
    assert "too late" in heard and "which day" in heard


def test_mats_of_which_nobody_tells_get_their_water_back() -> None:
    """Sprinkled for the day after the planned one, then under water again, also overdue."""
    bed = nursery(sow=TODAY, sown=True, uncovered=True)
    planned = bed.anchors.transplant_date

    def said(after: int, task: TaskCode) -> list[Message]:
        work = DayWork(bed, (task,), planned + after * DAY)
        return [say.message for say in work_says(work)][1:]

    assert said(1, TaskCode.TRANSPLANT) == [t.P_TRANSPLANT_WAIT]
    assert said(2, TaskCode.TRANSPLANT) == [d.WAITS_WITHOUT_WATER]
    assert said(3, TaskCode.OVERDUE) == [t.P_OVERDUE, d.WATER_MEANWHILE]
    assert said(9, TaskCode.OVERDUE) == [t.P_OVERDUE_OLD, d.WATER_MEANWHILE]


def test_past_the_last_day_it_is_asked_whether_it_was_planted() -> None:
    """Nobody plants a bed that must not be planted: done is of a day gone by."""
    bed = nursery(sow=TODAY - 46 * DAY, sown=True)
    offered = offer([(bed, TaskCode.OVERDUE)], TODAY)
    assert [say.message for say in offered] == [d.ASK_PLANTED]
    phone = Phone.enrolled(bed).asked(item(TaskCode.OVERDUE))
    (heard,) = phone.hears("1")
    assert heard == like(r.ASK_MATS, *numbered(r.MATS_LEFT, r.JUST_ENOUGH, r.TOO_FEW))
    (kept,) = phone.known.nurseries
    assert kept.transplanted_on == bed.anchors.transplant_date


def test_too_old_seedlings_are_sown_again_or_given_up() -> None:
    phone = on_the_day(46, TaskCode.OVERDUE)
    phone.says("not yet")
    texts = phone.hears("1")
    assert "Soak" in texts[0] and "soil mix" in texts[1]
    (kept,) = phone.known.nurseries
    assert not kept.sown and kept.sow_date == TODAY + 2 * DAY
