"""The days of nurseries for the calendar of a phone or a computer, as iCalendar (RFC 5545).

One event for each task that is asked of the farmer. What was handed out is remembered, so that
the next file moves what has moved (SEQUENCE, 3.8.7.4), leaves the rest as it was, and cancels
what is no longer to be done. There is no address to subscribe to: such an address needs no
sign-in, and calendar services would keep farmers' names on machines of others.
"""

import secrets
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime
from uuid import UUID, uuid5

from assistant.agronomy.calendar import Task, TaskCode
from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer, Village
from assistant.reminders.compose import ASKED_TASKS
from assistant.reminders.diary import diary
from assistant.service.audit import Act, Subject, note
from assistant.service.calendar_writing import Event, Named, written
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.season_counts import season_from
from assistant.service.sight import Sight
from assistant.store import CalendarDay, Work
from assistant.wording import messages_web_season as s
from assistant.wording.plan_practice import task_name
from assistant.wording.render import Catalogue, render

Key = tuple[TaskCode, int]
Address = Callable[[int], str]
"""The address of a nursery's page."""


@dataclass(frozen=True)
class CalendarFile:
    """One file; `name` is what it is about."""

    name: str
    content: bytes


def of_village(
    house: House, sight: Sight, village_id: int, now: datetime, address: Address
) -> CalendarFile | None:
    """The file of a village; None for one that is not in sight."""
    village = sight.village(village_id)
    return None if village is None else _file(house, sight, (village,), now, address)


def of_mine(house: House, sight: Sight, now: datetime, address: Address) -> CalendarFile | None:
    """The file of all villages that an officer serves; None where there is none, as for a lead
    who serves none: a whole country is nobody's calendar."""
    villages = served(sight)
    return _file(house, sight, villages, now, address) if villages else None


def served(sight: Sight) -> tuple[Village, ...]:
    """The villages that an officer serves."""
    return tuple(each for each in sight.villages if each.id in sight.officer.village_ids)


def _file(
    house: House,
    sight: Sight,
    villages: tuple[Village, ...],
    now: datetime,
    address: Address,
) -> CalendarFile:
    by_id = {village.id: village for village in villages}
    catalogue = house.catalogue(sight.officer.language)
    with house.store.work() as work:
        made = work.accounts.secret("calendar ids", secrets.token_hex(16), now)
        since = season_from(local_date(now, house.zone))
        found = work.picture.of_season(tuple(by_id), since, lost_too=True)
        days = _stand(work, house, by_id, found, now)
        place = Subject(village_id=villages[0].id) if len(villages) == 1 else Subject()
        note(work, sight.officer.id, Act.CALENDAR_TAKEN, now, place)
    whose = villages[0].name if len(villages) == 1 else sight.officer.name
    wording = _Wording(catalogue, UUID(made), address)
    events = (
        event
        for farmer, nursery in found
        if nursery.id in days
        for event in wording.events(
            days[nursery.id], farmer, nursery, by_id[farmer.village_id or 0]
        )
    )
    name = render(s.CALENDAR_OF(place=whose), catalogue)
    return CalendarFile(whose, written(Named(name, catalogue.language), events))


# --- what has changed since the last file ----------------------------------------------------


def _stand(
    work: Work,
    house: House,
    villages: Mapping[int, Village],
    found: Iterable[tuple[Farmer, Nursery]],
    now: datetime,
) -> dict[int, tuple[CalendarDay, ...]]:
    """The days of each nursery as they stand now, kept for the next file."""
    nurseries = {nursery.id: (farmer, nursery) for farmer, nursery in found}
    before: dict[int, list[CalendarDay]] = {}
    for day in work.calendar_days.of(list(nurseries)):
        before.setdefault(day.nursery_id, []).append(day)
    stand: dict[int, tuple[CalendarDay, ...]] = {}
    for nursery_id, (farmer, nursery) in nurseries.items():
        told = before.get(nursery_id, [])
        if nursery.closed and not told:
            continue  # over before anybody put it into a calendar
        today = local_date(now, villages[farmer.village_id or 0].zone)
        stand[nursery_id] = reckoned(nursery, told, today, now)
    old = {day for days in before.values() for day in days}
    work.calendar_days.keep(day for days in stand.values() for day in days if day not in old)
    return stand


def reckoned(
    nursery: Nursery, before: Iterable[CalendarDay], today: date, now: datetime
) -> tuple[CalendarDay, ...]:
    """The days of a nursery as they stand now, beside what the last file said.

    A day that is as it was keeps its sequence and the time of its change.
    """
    wanted = {
        (entry.task.code, entry.place): entry.day
        for entry in diary(nursery, today)
        if entry.task.code in ASKED_TASKS
    }
    told = {(day.task, day.place): day for day in before}
    return tuple(_moved(told, wanted, nursery, now))


def _moved(
    told: Mapping[Key, CalendarDay],
    wanted: Mapping[Key, date],
    nursery: Nursery,
    now: datetime,
) -> Iterator[CalendarDay]:
    for (task, place), on in wanted.items():
        day = told.get((task, place))
        if day is None:
            yield CalendarDay(nursery.id, task, place, on, now)
        elif (day.day, day.gone) == (on, False):
            yield day
        else:
            yield replace(day, day=on, gone=False, sequence=day.sequence + 1, changed_at=now)
    for key, day in told.items():
        if key in wanted:
            continue
        if day.gone:
            yield day
        else:
            yield replace(day, gone=True, sequence=day.sequence + 1, changed_at=now)


# --- in words --------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Wording:
    """Puts days into words; `made` is the name that ids of events are made from."""

    catalogue: Catalogue
    made: UUID
    address: Address

    def events(
        self,
        days: Iterable[CalendarDay],
        farmer: Farmer,
        nursery: Nursery,
        village: Village,
    ) -> Iterator[Event]:
        """The days of one nursery; also those of tasks that have left its calendar."""
        tasks = {task.code: task for task in nursery.tasks}
        address = self.address(nursery.id)
        who = farmer.name or f"…{farmer.phone[-4:]}"
        for day in days:
            task = tasks.get(day.task, Task(day.task, 0, day.day))
            what = task_name(task, nursery.practice)
            summary = s.EVENT(what=what, farmer=who, label=nursery.called)
            more = s.EVENT_MORE(village=village.name, day=nursery.day(day.day))
            yield Event(
                uid=str(uuid5(self.made, f"{nursery.id} {day.task} {day.place}")),
                on=day.day,
                summary=_capital(render(summary, self.catalogue)),
                description=render(more, self.catalogue),
                sequence=day.sequence,
                changed_at=day.changed_at,
                cancelled=day.gone,
                address=address,
            )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
