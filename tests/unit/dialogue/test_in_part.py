"""Work of which a part is done is kept as that, and the rest is asked."""

from datetime import timedelta
from typing import Any

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.events import By, Done, Event, PartDone, PutOff
from assistant.dialogue.values import AnswerItem, Happened
from assistant.wording import messages_again as again
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like

DAY = timedelta(days=1)


def bed(day: int, code: TaskCode, **given: Any) -> Phone:
    """A mat bed on a day after its sowing, of which a task was asked this morning."""
    return Phone.enrolled(nursery(sow=TODAY - day * DAY, **given)).asked(item(code))


def told(phone: Phone) -> list[type[Event]]:
    """The kinds of events of the last turn."""
    return [type(each.event) for each in phone.changes if isinstance(each, Happened)]


@pytest.mark.parametrize(
    ("words", "sow"),
    [
        ("sowed half today, the other half tomorrow", TODAY + DAY),
        ("half sown", TODAY + DAY),
        ("sowed a part, rest on wednesday", TODAY + 2 * DAY),
    ],
)
def test_a_bed_sown_in_halves_counts_from_the_later_half(words: str, sow: object) -> None:
    phone = bed(0, TaskCode.SOW)
    assert phone.hears(words) == [like(again.HALF_SOWN)]
    (kept,) = phone.known.nurseries
    assert (kept.part_sown_on, kept.sow_date, kept.sown) == (TODAY, sow, False)
    assert told(phone) == [PartDone, PutOff]


def test_seed_for_a_rest_that_waits_for_days_is_soaked_anew() -> None:
    """Sprouted seed keeps a day or two."""
    phone = bed(0, TaskCode.SOW)
    (text,) = phone.hears("sowed half today, the other half on friday")
    assert text == like(again.HALF_SOWN_LONG) and "Wed 3 Jun" in text and "Fri 5 Jun" in text


def test_half_sown_a_day_before_it_is_asked_is_taken() -> None:
    phone = Phone.enrolled(nursery(sow=TODAY + DAY))
    assert phone.hears("sowed half today, the other half tomorrow") == [like(again.HALF_SOWN)]
    assert phone.known.nurseries[0].part_sown_on == TODAY


def test_once_all_is_sown_it_is_said_which_part_counts() -> None:
    phone = bed(0, TaskCode.SOW, part_sown_on=TODAY - DAY)
    assert phone.hears("1") == [like(again.ALL_SOWN)]
    assert told(phone) == [Done]


@pytest.mark.parametrize(
    ("code", "day", "words"),
    [
        (TaskCode.SOW, 0, "i sowed half the bed, rest after lunch"),
        (TaskCode.UNCOVER_FLOOD, 5, "uncovered half, rest this evening"),
        (TaskCode.DRAIN_BED, 16, "drained half, rest after lunch"),
    ],
)
def test_a_rest_of_the_same_day_stays_asked(code: TaskCode, day: int, words: str) -> None:
    phone = bed(day, code, sown=day > 0, uncovered=day > 5)
    assert phone.hears(words) == [like(t.UNDER_WAY)]
    assert told(phone) == [PartDone]
    assert not any(isinstance(each, AnswerItem) for each in phone.changes)


@pytest.mark.parametrize("words", ["uncovered half, the rest tomorrow", "half uncovered"])
def test_a_bed_that_is_half_uncovered_is_not_to_be_covered_again(words: str) -> None:
    phone = bed(5, TaskCode.UNCOVER_FLOOD, sown=True)
    assert phone.hears(words) == [like(m.NOT_YET_NOTED)]
    assert told(phone) == [PartDone, PutOff]


def test_shoots_that_are_half_up_are_no_part_of_a_deed() -> None:
    phone = bed(5, TaskCode.UNCOVER_FLOOD, sown=True)
    assert phone.hears("half is up") == [like(m.NOT_UP_NOTED)]


@pytest.mark.parametrize("words", ["the rain stopped", "it stopped raining"])
def test_that_rain_has_stopped_says_nothing_of_draining(words: str) -> None:
    phone = bed(16, TaskCode.DRAIN_BED, sown=True, uncovered=True)
    assert phone.hears(words) == [like(t.SECOND_ASKING, ...)]
    assert phone.changes == []


def test_half_a_deed_keeps_its_day_and_who_said_it() -> None:
    phone = bed(0, TaskCode.SOW)
    phone.says("half sown")
    events = [each.event for each in phone.changes if isinstance(each, Happened)]
    assert events[0] == PartDone(on=TODAY, by=By.FARMER, task=TaskCode.SOW)
