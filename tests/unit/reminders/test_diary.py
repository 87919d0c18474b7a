"""What stands in a diary for a nursery: each task once, on its day."""

from datetime import date, timedelta
from typing import Any

from assistant.agronomy.calendar import TaskCode
from assistant.reminders.diary import diary, entries, still_to_do
from tests.talk import nursery

SOW = date(2026, 6, 10)
PLANNED = date(2026, 5, 20)

# Counted by hand on a calendar from the days of the trade (see test_plan.py): field tasks back
# from transplanting as PhilRice's Field Operations Manual of 2007 counts them.
BY_HAND = {
    "seed_test": ["26 May"],
    "collect": ["3 Jun"],
    "field_flood": ["5 Jun"],
    "field_plough": ["7 Jun"],
    "mix": ["7 Jun"],
    "soak": ["8 Jun"],
    "drain_seed": ["9 Jun"],
    "make_bed": ["9 Jun"],
    "sow": ["10 Jun"],
    "rain_watch": ["10 Jun-15 Jun"],
    "water": ["10 Jun-14 Jun"],
    "field_puddle": ["14 Jun", "21 Jun"],
    "uncover_flood": ["15 Jun"],
    "keep_water": ["16 Jun-25 Jun"],
    "colour_check": ["17 Jun"],
    "leaf_count": ["22 Jun"],
    "choose_day": ["22 Jun"],
    "field_level": ["26 Jun"],
    "drain_bed": ["26 Jun"],
    "transplant": ["28 Jun"],
}


def shown(*, today: date = PLANNED, **given: Any) -> dict[str, list[str]]:
    """Days by task."""
    found: dict[str, list[str]] = {}
    for each in diary(nursery(sow=SOW, made_on=PLANNED, **given), today):
        day = f"{each.day:%-d %b}"
        text = f"{day}-{each.until:%-d %b}" if each.until else day
        found.setdefault(each.task.code.value, []).append(text)
    return found


def test_a_season_stands_in_it_once() -> None:
    """Prompts repeat; a calendar on the wall does not."""
    found = shown()
    choose = found.pop("choose_day")
    assert choose and found == {k: v for k, v in BY_HAND.items() if k != "choose_day"}


def test_a_chosen_day_moves_the_bed_and_the_field() -> None:
    """Chosen for day 20, two days later; nobody is asked to choose again."""
    found = shown(transplant_date=SOW + timedelta(days=20))
    assert found["transplant"] == ["30 Jun"] and found["drain_bed"] == ["28 Jun"]
    assert found["field_plough"] == ["9 Jun"]
    assert "choose_day" not in found


def test_what_is_done_stays_where_it_was_and_what_lost_its_sense_goes() -> None:
    """Planted on day 17: the past is kept, the bed's days to come are gone, gaps are looked for
    four days later and the result is told after a week."""
    on = SOW + timedelta(days=17)
    found = shown(today=on, sown=True, uncovered=True, transplanted_on=on)
    assert found["sow"] == ["10 Jun"] and found["uncover_flood"] == ["15 Jun"]
    assert found["transplant"] == ["27 Jun"]
    assert found["fill_gaps"] == ["1 Jul"] and found["season_result"][0] == "5 Jul"


def test_who_joins_late_has_no_past() -> None:
    """Days before the plan was made were never anybody's to keep."""
    joined = nursery(sow=SOW, made_on=SOW + timedelta(days=2), sown=True)
    assert (
        min(each.until or each.day for each in diary(joined, joined.made_on)) >= joined.made_on
    )


def test_a_closed_nursery_has_nothing_to_do() -> None:
    """What was to come is gone."""
    lost = nursery(sow=SOW, closed=True)
    assert not any(still_to_do(each, lost) for each in entries(lost))
    assert all(each.day <= SOW for each in diary(lost, SOW))


def test_a_seed_test_stands_on_the_day_it_began() -> None:
    """And its count seven days later."""
    began = date(2026, 5, 27)
    found = shown(today=began, test_begun=began)
    assert found[TaskCode.SEED_TEST] == ["27 May"]
    assert found[TaskCode.SEED_COUNT] == ["3 Jun"]
