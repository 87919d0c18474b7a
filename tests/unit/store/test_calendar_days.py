"""Days that were handed out in calendar files."""

from dataclasses import replace
from datetime import datetime, timedelta

from assistant.agronomy.nursery import Nursery
from assistant.agronomy.tasks import TaskCode
from assistant.store import CalendarDay, Store


def test_a_handed_out_day_comes_back_as_it_was_last_kept(
    store: Store, nursery: Nursery, now: datetime
) -> None:
    """A new one gets an id; a moved one is the same row."""
    first = CalendarDay(nursery.id, TaskCode.SOW, 0, nursery.sow_date, now)
    with store.work() as work:
        work.calendar_days.keep([first])
        kept = work.calendar_days.of([nursery.id])
    assert kept == (replace(first, id=kept[0].id),)
    moved = replace(
        kept[0],
        day=first.day + timedelta(days=2),
        sequence=1,
        gone=True,
        changed_at=now + timedelta(hours=1),
    )
    with store.work() as work:
        work.calendar_days.keep([moved])
    with store.look() as work:
        assert work.calendar_days.of([nursery.id, 99]) == (moved,)


def test_two_downloads_at_once_keep_one_row(
    store: Store, nursery: Nursery, now: datetime
) -> None:
    """The second finds the day taken and leaves it."""
    day = CalendarDay(nursery.id, TaskCode.SOW, 0, nursery.sow_date, now)
    with store.work() as work:
        work.calendar_days.keep([day])
        work.calendar_days.keep([day])
        assert len(work.calendar_days.of([nursery.id])) == 1
