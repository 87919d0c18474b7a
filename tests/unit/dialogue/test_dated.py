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


def test_a_day_beside_planting_says_until_when_and_the_bed_is_not_drained_after_it() -> None:
    """A bed of day 18 that lies drained, on Wednesday: on Friday it is kept wet by hand."""
    sow = TODAY - timedelta(days=18)
    drained = replace(nursery(sow=sow, sown=True), uncovered=True)
    friday = TODAY + timedelta(days=(4 - TODAY.weekday()) % 7 or 7)
    phone = Phone.enrolled(drained).on(friday - timedelta(days=2))
    phone.known = replace(
        phone.known,
        nurseries=(replace(drained, id=1, sow_date=phone.known.today - timedelta(days=18)),),
    )
    phone.asked(item(TaskCode.TRANSPLANT, phone.known.today))
    (heard,) = phone.hears("we plant on friday")
    assert "sprinkle it" in heard and "Drain again" not in heard
    assert phone.known.nurseries[0].transplant_date == friday
    later = phone.hears("1")
    assert not any("Drain again" in text for text in later)


def test_a_day_alone_answers_what_waits_for_a_day() -> None:
    sow = TODAY - timedelta(days=18)
    phone = Phone.enrolled(replace(nursery(sow=sow, sown=True), uncovered=True))
    phone.asked(item(TaskCode.TRANSPLANT))
    (heard,) = phone.hears(f"{(TODAY + timedelta(days=10)):%-d %B}")
    assert "Noted" in heard
    assert phone.known.nurseries[0].transplant_date == TODAY + timedelta(days=10)


def test_a_day_past_the_last_is_refused_and_another_asked() -> None:
    """Sown 18 days ago, mats can be planted until day 45."""
    sow = TODAY - timedelta(days=18)
    phone = Phone.enrolled(replace(nursery(sow=sow, sown=True), uncovered=True))
    phone.asked(item(TaskCode.TRANSPLANT))
    (heard,) = phone.hears(f"{(TODAY + timedelta(days=40)):%-d %B}")
    assert "too late" in heard
    assert phone.known.nurseries[0].transplant_date is None


def test_the_day_that_it_was_not_is_let_pass() -> None:
    phone = Phone.enrolled(YOUNG)
    told = YOUNG.sow_date + timedelta(days=1)
    phone.says(f"we sowed on {told.day} {told:%B} not {YOUNG.sow_date.day}")
    assert phone.known.session is not None
    assert phone.known.session.answers["sowing"] == told.isoformat()


def test_a_sowing_that_was_only_assumed_can_still_be_moved() -> None:
    phone = Phone.enrolled(replace(YOUNG, sow_assumed=True))
    phone.says("move sowing to 5 june")
    phone.says("1")
    bed = phone.known.nurseries[0]
    assert (bed.sow_date, bed.sown) == (day("5 Jun"), False)
    phone = Phone.enrolled(replace(YOUNG, sow_assumed=True))
    phone.says("we did not sow")
    assert not phone.known.nurseries[0].sown


def test_uncovered_before_it_was_sown_is_no_uncovering() -> None:
    phone = Phone.enrolled(YOUNG).asked(item(TaskCode.UNCOVER_FLOOD))
    before = YOUNG.sow_date - timedelta(days=3)
    (heard,) = phone.hears(f"uncovered on {before.day} {before:%B}")
    assert heard == like(a.SOWN_ON, ...) and not phone.known.nurseries[0].uncovered


def test_the_day_for_uncovering_may_be_put_off_by_word() -> None:
    sow = TODAY - timedelta(days=6)
    phone = Phone.enrolled(nursery(sow=sow, sown=True)).asked(item(TaskCode.UNCOVER_FLOOD))
    until = TODAY + timedelta(days=3)
    (heard,) = phone.hears(f"we will uncover on {until.day} {until:%B}")
    assert heard == like(a.UNCOVER_ON, ...)
    assert phone.known.nurseries[0].uncover_date == until


def test_sprouted_seed_is_not_kept_for_a_sowing_that_is_far_off() -> None:
    """Two days are borne; for twelve days on other seed is soaked, two days before."""
    for days, soaks in ((2, False), (12, True)):
        phone = Phone.enrolled(nursery(sow=TODAY)).asked(item(TaskCode.SOW))
        until = TODAY + timedelta(days=days)
        (heard,) = phone.hears(f"i will sow on {until.day} {until:%B}")
        assert ("Keep the seed moist" in heard, "soak the seed" in heard) == (not soaks, soaks)
