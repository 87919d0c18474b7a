"""Seasons whose result never comes: the farmer stopped texts, the phone is gone, nobody told of
the planting. Such a nursery is closed as "no result", or it would stay open for ever."""

from dataclasses import replace
from datetime import date, datetime, timedelta

from assistant.agronomy.season.followups import NO_RESULT_AFTER_D
from assistant.service.house import House
from assistant.service.known import local_date, zone_of
from assistant.service.replan import save_and_plan
from assistant.store import Work

LOOKED = "forgotten"
EVERY = timedelta(hours=1)


def forgotten_nurseries(work: Work, house: House, now: datetime) -> tuple[int, ...]:
    """The ids of open nurseries that are over, by the programme's date. Looked for once an
    hour: nobody waits for it."""
    before = work.running.pulse(LOOKED)
    if before is not None and timedelta(0) <= now - before < EVERY:
        return ()
    work.running.beat(LOOKED, now)
    today = local_date(now, house.zone)
    found = work.nurseries.open_since(_earliest(house, today))
    return tuple(sorted(nursery.id for nursery in found if nursery.is_forgotten(today)))


def _earliest(house: House, today: date) -> date:
    """No nursery sown later can be forgotten: planted on its first day that is thinkable."""
    practices = house.store.practices.values()
    first = min(practice.window.earliest.value for practice in practices)
    return today - timedelta(days=int(first) + NO_RESULT_AFTER_D)


def close_forgotten(work: Work, house: House, nursery_id: int, now: datetime) -> None:
    """Closes one of them, unless its farmer moved it meanwhile. Nothing is sent."""
    nursery = work.nurseries.get(nursery_id)
    farmer = work.people.farmer_by_id(nursery.farmer_id) if nursery else None
    if nursery is None or farmer is None:
        return
    work.lock(farmer.phone)
    fresh = work.nurseries.fresh(nursery_id)
    today = local_date(now, zone_of(work, house, farmer.village_id))
    if fresh is not None and not fresh.closed and fresh.is_forgotten(today):
        closed = replace(fresh, closed=True, no_result=True)
        save_and_plan(work, house, farmer, closed, now, recall=False)
