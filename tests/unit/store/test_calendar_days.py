"""Days that were handed out in calendar files."""

from dataclasses import replace
from datetime import date, datetime, timedelta

import pytest

from assistant.agronomy.tasks import TaskCode
from assistant.store import CalendarDay, Store

SOWING = date(2026, 6, 10)


@pytest.fixture
def sowing(store: Store, now: datetime) -> CalendarDay:
    """The sowing day of a village, as a first file has it."""
    with store.work() as work:
        village = work.people.add_village("Zizi", "Africa/Nairobi")
    return CalendarDay(village.id, TaskCode.SOW, SOWING, "names", now)


def test_a_handed_out_day_comes_back_as_it_was_last_kept(
    store: Store, sowing: CalendarDay, now: datetime
) -> None:
    """A new one gets an id; a changed one is the same row. Days that are past are left out."""
    with store.work() as work:
        work.calendar_days.keep([sowing])
        kept = work.calendar_days.of(sowing.village_id, SOWING)
    assert kept == (replace(sowing, id=kept[0].id),)
    changed = replace(kept[0], sequence=1, names="", changed_at=now + timedelta(hours=1))
    with store.work() as work:
        work.calendar_days.keep([changed])
    with store.look() as work:
        assert work.calendar_days.of(sowing.village_id, SOWING) == (changed,)
        assert work.calendar_days.of(sowing.village_id, SOWING + timedelta(days=1)) == ()
        assert work.calendar_days.of(sowing.village_id + 1, SOWING) == ()


def test_two_downloads_at_once_keep_one_row(store: Store, sowing: CalendarDay) -> None:
    """The second finds the day taken and leaves it."""
    with store.work() as work:
        work.calendar_days.keep([sowing])
        work.calendar_days.keep([sowing])
        assert len(work.calendar_days.of(sowing.village_id, SOWING)) == 1
