"""The days of a village for the calendar of a phone or a computer, as iCalendar (RFC 5545).

One event for each task, village and day, with the names inside: an officer of two hundred beds
has some nine lines a day to look at and not forty. It leads to the same nurseries on the season
picture. From today on; what is past stays in the phone as it was. What was handed out is
remembered, so that the next file changes what has changed (SEQUENCE, 3.8.7.4), leaves the rest
as it was, and cancels a day that nobody is left in. There is no address to subscribe to: such
an address needs no sign-in, and calendar services would keep farmers' names on machines of
others.
"""

import secrets
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from hashlib import sha256
from uuid import UUID, uuid5

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.rows import TASKS
from assistant.people import Village
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.season.calendar_writing import CalendarEvent, CalendarName, written
from assistant.service.season.counts import counted, season_from
from assistant.service.sight import Sight
from assistant.store import CalendarDay, Work
from assistant.wording import messages_web_season as web_season
from assistant.wording.day import TASK_TEXTS
from assistant.wording.render import Catalogue, render

Key = tuple[TaskCode, date]
Names = tuple[str, ...]
Address = Callable[[int, TaskCode, date], str]
"""The address of the page with the nurseries of a village that have a task on a day."""


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
    catalogue = house.catalogue(sight.officer.language)
    with house.store.work() as work:
        made = work.accounts.secret("calendar ids", secrets.token_hex(16), now)
        wording = _Wording(catalogue, UUID(made), address)
        events: list[CalendarEvent] = []
        for village in villages:
            who = _who(work, house, sight, village, now)
            today = local_date(now, village.zone)
            before = work.calendar_days.of(village.id, today)
            days = tuple(reckoned(village.id, who, before, now))
            work.calendar_days.keep(day for day in days if day not in before)
            events += wording.events(village, days, who)
        place = Subject(village_id=villages[0].id) if len(villages) == 1 else Subject()
        note(work, sight.officer.id, TrailAct.CALENDAR_TAKEN, now, place)
    whose = villages[0].name if len(villages) == 1 else sight.officer.name
    name = render(web_season.CALENDAR_OF(place=whose), catalogue)
    return CalendarFile(whose, written(CalendarName(name, catalogue.language), events))


def _who(
    work: Work, house: House, sight: Sight, village: Village, now: datetime
) -> dict[Key, Names]:
    """Who has each task that is asked of farmers, by day from today on, in order of names."""
    found = counted(work, house, sight, now, village.id)
    names = work.picture.names((village.id,), season_from(local_date(now, house.zone)))
    who: dict[Key, list[str]] = {}
    for each in found:
        for task, ahead in each.kind.due:
            on = each.stroke.sow_date + timedelta(days=ahead)
            if TASKS[task].is_asked and on >= each.today:
                who.setdefault((task, on), []).append(names[each.stroke.id])
    return {key: tuple(sorted(found)) for key, found in who.items()}


# --- what has changed since the last file ----------------------------------------------------


def reckoned(
    village_id: int,
    who: Mapping[Key, Names],
    before: Iterable[CalendarDay],
    now: datetime,
) -> Iterator[CalendarDay]:
    """The days of a village as they stand now, beside what the last file said.

    A day with the same names keeps its sequence and the time of its change.
    """
    told = {(day.task, day.day): day for day in before}
    for task, on in sorted({*who, *told}, key=lambda key: (key[1], key[0].value)):
        print_of = _print(who.get((task, on), ()))
        day = told.get((task, on))
        if day is None:
            yield CalendarDay(village_id, task, on, print_of, now)
        elif day.names == print_of:
            yield day
        else:
            yield replace(day, names=print_of, sequence=day.sequence + 1, changed_at=now)


def _print(names: Names) -> str:
    """What tells one list of names from another; of nobody it is empty."""
    return sha256("\n".join(names).encode()).hexdigest() if names else ""


# --- in words --------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Wording:
    """Puts days into words; `made` is the name that ids of events are made from."""

    catalogue: Catalogue
    made: UUID
    address: Address

    def events(
        self, village: Village, days: Iterable[CalendarDay], who: Mapping[Key, Names]
    ) -> Iterator[CalendarEvent]:
        """The days of one village; also those that nobody is left in."""
        for day in days:
            names = who.get((day.task, day.day), ())
            what = TASK_TEXTS[day.task].what()
            summary = web_season.EVENT(what=what, place=village.name, n=len(names))
            yield CalendarEvent(
                uid=str(uuid5(self.made, f"{village.id} {day.task} {day.day}")),
                on=day.day,
                summary=_capital(render(summary, self.catalogue)),
                description="\n".join(names),
                sequence=day.sequence,
                changed_at=day.changed_at,
                cancelled=not names,
                address=self.address(village.id, day.task, day.day),
            )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
