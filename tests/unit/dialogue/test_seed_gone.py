"""Seed that is thrown away before it is sown; a cover that wind took; shoots in part."""

from datetime import timedelta
from typing import Any

import pytest

from assistant.agronomy.tasks import TaskCode
from assistant.dialogue import values as v
from assistant.wiring.practices import open_practices
from assistant.wording import messages_again as a
from assistant.wording import messages_answers_more as more
from assistant.wording import messages_talk as m
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like, numbered

DAY = timedelta(days=1)


def on_day(day: int, **given: Any) -> Phone:
    return Phone.enrolled(nursery(sow=TODAY - day * DAY, sown=day > 0, **given))


def test_seed_thrown_away_is_asked_after() -> None:
    phone = on_day(0).asked(item(TaskCode.SOW))
    assert phone.hears("i threw the seed away") == [
        like(a.ASK_SEED, *numbered(a.SAME, a.OTHER, a.NONE))
    ]


def test_with_none_the_sowing_waits_a_week() -> None:
    """And two days more, for soaking: nothing is to be sown meanwhile."""
    phone = on_day(0).asked(item(TaskCode.SOW))
    phone.says("no seed")
    assert phone.hears("3") == [like(a.NO_SEED_YET, ...)]
    bed = phone.known.nurseries[0]
    assert bed.sow_date == TODAY + 9 * DAY and not bed.sown


def test_with_other_seed_it_is_counted_as_untested_and_soaked_in_time() -> None:
    phone = on_day(0).asked(item(TaskCode.SOW))
    phone.says("i threw the seed away")
    phone.says("2")
    bed = phone.known.nurseries[0]
    assert not bed.germination_known and bed.sow_date == TODAY + 2 * DAY


def test_a_plan_far_ahead_keeps_its_day() -> None:
    phone = on_day(-10)
    phone.says("i threw the seed away")
    phone.says("1")
    assert phone.known.nurseries[0].sow_date == TODAY + 10 * DAY


@pytest.mark.parametrize("text", ["the plastic blew away", "wind took the cover"])
def test_a_cover_that_wind_took_is_no_storm(text: str) -> None:
    phone = on_day(3)
    assert phone.hears(text) == [like(more.STRAW_GONE)]
    assert not any(isinstance(each, v.RaiseAlarm) for each in phone.changes)
    assert phone.known.nurseries[0].flooded_on is None


@pytest.mark.parametrize(
    "text",
    [
        "the plastic flew in the storm",
        "the river took the cover",
        "plastic blew away with my son",
    ],
)
def test_more_than_a_cover_is_a_cry(text: str) -> None:
    phone = on_day(3)
    phone.says(text)
    assert any(isinstance(each, v.RaiseAlarm) for each in phone.changes)


def test_a_part_that_comes_up_before_its_day_is_waited_for() -> None:
    phone = on_day(3)
    (heard,) = phone.hears("half came up")
    assert heard == like(m.NOT_UP_ADVICE)


def test_one_in_a_word_is_the_digit() -> None:
    phone = on_day(0).asked(item(TaskCode.SOW))
    phone.says("one")
    assert phone.known.nurseries[0].sown


def test_goats_are_no_leaves_and_heard_as_goats() -> None:
    phone = on_day(12, uncovered=True).asked(item(TaskCode.LEAF_COUNT))
    (heard,) = phone.hears("4 goats came in the bed")
    assert "fence" in heard and phone.known.nurseries[0].leaves is None


def test_urea_waits_until_somebody_said_that_the_cover_is_off() -> None:
    """Signs of want on day 8, and nobody said that the bed was uncovered."""
    phone = on_day(8).asked(item(TaskCode.COLOUR_CHECK))
    for text in ("2", "8", "1", "1"):
        heard = phone.hears(text)
    assert "is the cover off" in heard[-1]
    (told,) = phone.hears("2")
    assert "No urea" in told and phone.known.nurseries[0].urea_on is None


def test_a_wet_bed_has_no_cover_to_be_asked_about() -> None:
    practice = open_practices()["wet_bed"]
    phone = on_day(12, practice=practice).asked(item(TaskCode.COLOUR_CHECK))
    for text in ("2", "8", "1", "1"):
        heard = phone.hears(text)
    assert "can or sprayer" in heard[-1]


def test_green_leaves_say_that_the_cover_is_off() -> None:
    phone = on_day(8).asked(item(TaskCode.COLOUR_CHECK))
    phone.says("1")
    assert phone.known.nurseries[0].uncovered
