"""Who looked at whom: a line of the trail, once a day for each officer and person or page."""

from collections.abc import Hashable
from dataclasses import dataclass, field
from datetime import date, datetime
from threading import Lock

from assistant.service.audit import NOBODY, Subject, TrailAct, note
from assistant.service.days import local_date
from assistant.service.house import House
from assistant.service.sight import Sight


@dataclass
class Looks:
    """Keeps that somebody looked, before they see it. What this process has kept today is kept
    no second time; another process, or a new start, may do so once more."""

    _kept: set[Hashable] = field(default_factory=set)
    _day: date | None = None
    _lock: Lock = field(default_factory=Lock)

    def at(self, house: House, sight: Sight, farmer_id: int, now: datetime) -> None:
        """An officer looks at what is kept of a farmer."""
        self._keep(house, sight, TrailAct.LOOKED, Subject(farmer_id=farmer_id), "", now)

    def through(self, house: House, sight: Sight, page: str, now: datetime) -> None:
        """An officer looks through a page of people; of its search no word is kept."""
        self._keep(house, sight, TrailAct.LOOKED_THROUGH, NOBODY, page, now)

    def _keep(
        self,
        house: House,
        sight: Sight,
        act: TrailAct,
        about: Subject,
        page: str,
        now: datetime,
    ) -> None:
        key = (sight.officer.id, act, about.farmer_id, page)
        with self._lock:
            today = local_date(now, house.zone)
            if self._day != today:
                self._kept.clear()
                self._day = today
            if key in self._kept:
                return
        with house.store.work() as work:
            note(work, sight.officer.id, act, now, about, page)
        with self._lock:
            self._kept.add(key)


def show_number(house: House, sight: Sight, farmer_id: int, now: datetime) -> bool:
    """Keeps that an officer had the whole number of a farmer shown; False for one who is not in
    sight."""
    with house.store.work() as work:
        farmer = work.people.farmer_by_id(farmer_id)
        if farmer is None or not sight.sees(farmer.village_id):
            return False
        note(work, sight.officer.id, TrailAct.NUMBER_SHOWN, now, Subject(farmer_id=farmer.id))
    return True
