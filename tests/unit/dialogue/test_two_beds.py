"""Two beds at once: each by its letter; a day is of the bed that waits for it, or is asked."""

from dataclasses import replace
from datetime import timedelta

from assistant.agronomy.tasks import TaskCode
from assistant.wording import messages_talk as m
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like

DAY = timedelta(days=1)


def two(first: int, second: int, *tasks: TaskCode) -> Phone:
    """Beds A and B, so many days old, and what each was asked this morning."""
    beds = (
        nursery("A", sow=TODAY - first * DAY, sown=first > 0),
        nursery("B", sow=TODAY - second * DAY, sown=second > 0),
    )
    items = (item(task, TODAY, place) for place, task in enumerate(tasks, start=1))
    return Phone.enrolled(*beds).asked(*items)


def test_each_is_answered_by_its_letter() -> None:
    for text in ("A green, B done", "A 1 B 1"):
        phone = two(8, 5, TaskCode.COLOUR_CHECK, TaskCode.UNCOVER_FLOOD)
        assert phone.hears(text) == [like(m.GREEN_NOTED), like(m.DONE_NOTED)]
        assert all(bed.uncovered for bed in phone.known.nurseries)


def test_what_asks_back_stands_last() -> None:
    phone = two(8, 5, TaskCode.COLOUR_CHECK, TaskCode.UNCOVER_FLOOD)
    done, asked = phone.hears("A yellow B done")
    assert done == like(m.DONE_NOTED) and "do you also see" in asked


def test_a_day_to_come_is_no_deed_of_the_day_before() -> None:
    """A is to be planted, B to be sown today: "we sow on friday" is of B, and to come."""
    phone = two(18, 0, TaskCode.TRANSPLANT, TaskCode.SOW)
    phone.says("we sow on friday")
    bed = phone.known.nurseries[1]
    assert not bed.sown and bed.sow_date > TODAY and bed.sow_date.weekday() == 4


def test_which_bed_is_asked_where_it_may_be_either() -> None:
    phone = two(-9, -5)
    assert phone.hears("sow on friday") == [like(m.ASK_NURSERY, ...)]


def test_leaves_of_two_beds_ask_which() -> None:
    phone = two(18, 12)
    phone.known = replace(
        phone.known,
        nurseries=tuple(replace(bed, uncovered=True) for bed in phone.known.nurseries),
    )
    assert phone.hears("leaves 3") == [like(m.ASK_NURSERY, ...)]
