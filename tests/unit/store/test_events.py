"""The story of a nursery comes back as it was told."""

from dataclasses import replace
from datetime import date, datetime

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.events import (
    Assumed,
    By,
    Counted,
    Done,
    Event,
    Looked,
    PutOff,
    SeedTestBegun,
    SeedTested,
    Why,
)
from assistant.agronomy.nursery import Nursery
from assistant.store import Store
from assistant.store.tables_events import EventRow

DAY = date(2026, 6, 10)
STORY: tuple[Event, ...] = (
    SeedTestBegun(on=DAY, by=By.FARMER),
    SeedTested(on=DAY, by=By.OFFICER, sprouted=83, seeds=100),
    PutOff(
        on=DAY,
        by=By.CLOCK,
        task=TaskCode.SOW,
        was=DAY,
        until=date(2026, 6, 11),
        why=Why.RAIN,
    ),
    Assumed(on=DAY, by=By.CLOCK),
    Done(on=DAY, by=By.FARMER, task=TaskCode.UNCOVER_FLOOD),
    Counted(on=DAY, by=By.FARMER, leaves=2.5),
    Looked(on=DAY, by=By.FARMER, colour="green"),
)


def test_a_story_comes_back_in_its_order(store: Store, unsaved: Nursery, now: datetime) -> None:
    with store.work() as work:
        bed, other = (work.nurseries.save(unsaved, now) for _ in range(2))
        for event in STORY:
            work.events.add(bed.id, event, now)
    with store.look() as work:
        assert work.events.of_nursery(bed.id) == STORY
        assert work.events.of_nursery(other.id) == ()


def test_an_event_of_another_release_is_left_out(
    store: Store, unsaved: Nursery, now: datetime
) -> None:
    with store.work() as work:
        bed = work.nurseries.save(replace(unsaved), now)
        for kind, about in (("danced", {}), ("counted", {"toes": 5}), ("done", {"task": "x"})):
            work._session.add(
                EventRow(
                    nursery_id=bed.id, kind=kind, day=DAY, by=By.FARMER, about=about, at=now
                )
            )
        assert work.events.of_nursery(bed.id) == ()
