"""An officer at a nursery: a visit is noted, tasks are seen to be done, dates are changed.

Dates change as they do when the farmer changes them: reminders are planned anew, and the farmer
is told by text unless the officer says not to.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime
from enum import StrEnum

from assistant.agronomy.calendar import DayChoice, TaskCode
from assistant.agronomy.life.events import By, Done
from assistant.agronomy.life.rows import TASKS, Doing
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.results import skipped
from assistant.people import Farmer
from assistant.reminders.values import Reminder, State
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.letters import PLAIN, Manner, Pen, why_not
from assistant.service.replan import happen, save_and_plan
from assistant.service.sight import Sight
from assistant.service.texts import Priced, priced
from assistant.store import Work
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from assistant.wording.day import about
from assistant.wording.message import Say

OPEN = (State.SENT, State.UNANSWERED)


class Wrong(StrEnum):
    """Why a visit or a date was not kept."""

    NO_DAY = "no_day"
    FUTURE = "future"
    BEFORE_PLAN = "before_plan"
    SOWN_FUTURE = "sown_future"
    UNCOVER = "uncover"
    TRANSPLANT = "transplant"
    PLANTED = "planted"
    NOTHING = "nothing"


@dataclass(frozen=True)
class Kept:
    """The nursery as it is now; `told` whether the farmer gets a text of it."""

    nursery: Nursery
    told: bool = False
    message_id: str = ""


# --- a visit ---------------------------------------------------------------------------------


@dataclass(frozen=True)
class Visit:
    """What an officer noted: the day, words, and open tasks that were seen to be done."""

    on: date | None
    words: str
    done: Collection[TaskCode] = ()


def note_visit(
    house: House, sight: Sight, nursery_id: int, visit: Visit, now: datetime
) -> Kept | Wrong | None:
    """Keeps a visit; None for a nursery that is not in sight."""
    with house.store.work() as work:
        found = find_bed(work, sight, nursery_id)
        if found is None:
            return None
        farmer, nursery = found
        work.lock(farmer.phone)
        today = _today(house, sight, farmer, now)
        if visit.on is None:
            return Wrong.NO_DAY
        if visit.on > today:
            return Wrong.FUTURE
        if visit.on < min(nursery.made_on, nursery.sow_date):
            return Wrong.BEFORE_PLAN
        work.story.add_visit(nursery.id, sight.officer.id, visit.on, visit.words, now)
        moved = _seen_done(work, house, farmer, nursery, visit, now)
        detail = " ".join((visit.on.isoformat(), *visit.done))
        note(work, sight.officer.id, TrailAct.VISITED, now, _subject(farmer, nursery), detail)
        return Kept(moved)


def _seen_done(
    work: Work, house: House, farmer: Farmer, nursery: Nursery, visit: Visit, now: datetime
) -> Nursery:
    """Answers the open tasks that the officer saw done, and moves the plan by them."""
    wanted = [each for each in open_tasks(work, nursery) if each.task in visit.done]
    return settle_tasks(work, house, farmer, nursery, wanted, visit.on or now.date(), now)


def settle_tasks(
    work: Work,
    house: House,
    farmer: Farmer,
    nursery: Nursery,
    tasks: Collection[Reminder],
    on: date,
    now: datetime,
) -> Nursery:
    """These tasks are done, an officer says; the plan moves by them."""
    moved = nursery
    for reminder in tasks:
        which = nursery.id, reminder.task, reminder.day
        work.reminders.settle(which, State.DONE, "done", now)
        moved = happen(work, house, farmer, moved, _seen(reminder, on), now)
    return moved


def _seen(reminder: Reminder, on: date) -> Done:
    """What was seen was done on the day it was asked for; a field may be planted later."""
    planted = TASKS[reminder.task].doing is Doing.PLANTS
    day = on if planted else min(reminder.day, on)
    return Done(on=day, by=By.OFFICER, task=reminder.task)


def open_tasks(work: Work, nursery: Nursery) -> tuple[Reminder, ...]:
    """What was asked of the farmer and is not answered, the latest day of each task."""
    latest = {
        each.task: each
        for each in work.reminders.of_nursery(nursery.id)
        if TASKS[each.task].is_asked and each.state in OPEN
    }
    return tuple(latest.values())


# --- dates -----------------------------------------------------------------------------------


@dataclass(frozen=True)
class Dates:
    """The days of a nursery as an officer gives them; None leaves a day as it is.

    `uncovered_on` is when it was uncovered and flooded, `transplant` the wished day,
    `transplanted_on` the day it happened.
    """

    sow: date | None = None
    sown: bool = False
    uncovered_on: date | None = None
    transplant: date | None = None
    transplanted_on: date | None = None


def change_dates(
    house: House, sight: Sight, nursery_id: int, dates: Dates, now: datetime, *, tell: bool
) -> Kept | Wrong | None:
    """Moves a plan to the days that an officer gives; None for a nursery not in sight.

    Args:
        tell: the farmer gets a text with the new days, if texts may be sent there.
    """
    with house.store.work() as work:
        found = find_bed(work, sight, nursery_id)
        if found is None:
            return None
        work.lock(found[0].phone)
        return move(Pen(work, house, sight, now), *found, dates, tell=tell)


def move(
    pen: Pen,
    farmer: Farmer,
    nursery: Nursery,
    dates: Dates,
    *,
    tell: bool,
    how: Manner = PLAIN,
) -> Kept | Wrong:
    """Moves one plan, in a transaction that is open and holds the phone."""
    work, now = pen.work, pen.now
    today = _today(pen.house, pen.sight, farmer, now)
    moved = _moved(nursery, dates, today)
    if isinstance(moved, Wrong):
        return moved
    saved = save_and_plan(work, pen.house, farmer, moved, now)
    for event in _happened(nursery, saved):
        work.events.add(nursery.id, event, now)
    detail = _difference(nursery, saved)
    act = TrailAct.DATES_CHANGED
    note(work, pen.sight.officer.id, act, now, _subject(farmer, nursery), detail)
    if not tell or why_not(farmer) is not None:
        return Kept(saved)
    says = _news(nursery, saved, today, pen.sight.officer.name)
    _, posted = pen.send(farmer, says, saved.id, how)
    return Kept(saved, told=True, message_id=posted.message_id)


@dataclass(frozen=True)
class Change:
    """What a change of dates would do: each date that moves (the name of its field, before,
    after), and the text that the farmer would get, None where none goes there."""

    dates: tuple[tuple[str, date | None, date | None], ...]
    text: Priced | None


def foresee(pen: Pen, farmer: Farmer, nursery: Nursery, dates: Dates) -> Change | Wrong:
    """What `move` would do; nothing is changed."""
    today = _today(pen.house, pen.sight, farmer, pen.now)
    moved = _moved(nursery, dates, today)
    if isinstance(moved, Wrong):
        return moved
    pairs = ((name, getattr(nursery, name), getattr(moved, name)) for name in _DAYS)
    changed = tuple(pair for pair in pairs if pair[1] != pair[2])
    if why_not(farmer) is not None:
        return Change(changed, None)
    says = _news(nursery, moved, today, pen.sight.officer.name)
    return Change(changed, priced(pen.house, says, farmer.language))


def _moved(nursery: Nursery, dates: Dates, today: date) -> Nursery | Wrong:
    """The nursery with the new days, or the first that cannot be."""
    moved = nursery
    for step in (_move_sowing, _move_uncovering, _move_transplanting, _plant_out):
        outcome = step(moved, dates, today)
        if isinstance(outcome, Wrong):
            return outcome
        moved = outcome
    # Whoever gives the days of a bed has seen that it is there.
    return Wrong.NOTHING if moved == nursery else replace(moved, flooded_on=None)


def _move_sowing(nursery: Nursery, dates: Dates, today: date) -> Nursery | Wrong:
    sow = dates.sow or nursery.sow_date
    if dates.sown and sow > today:
        return Wrong.SOWN_FUTURE
    if sow == nursery.sow_date and dates.sown == nursery.sown:
        return nursery
    if sow == nursery.sow_date:
        return replace(nursery, sown=dates.sown, sow_assumed=False)
    return nursery.sown_on(sow, sown=dates.sown)


def _move_uncovering(nursery: Nursery, dates: Dates, today: date) -> Nursery | Wrong:
    day = dates.uncovered_on
    if day is None or (nursery.uncovered and day == nursery.uncover_date):
        return nursery
    if day > today or not nursery.may_uncover_on(day):
        return Wrong.UNCOVER
    return nursery.uncovering_on(day, uncovered=True)


def _move_transplanting(nursery: Nursery, dates: Dates, today: date) -> Nursery | Wrong:
    day = dates.transplant
    if day is None or day == nursery.transplant_date:
        return nursery
    if nursery.judge_transplanting(day) is DayChoice.IMPOSSIBLE:
        return Wrong.TRANSPLANT
    return nursery.transplanting_on(day)


def _plant_out(nursery: Nursery, dates: Dates, today: date) -> Nursery | Wrong:
    day = dates.transplanted_on
    if day is None or day == nursery.transplanted_on:
        return nursery
    if not nursery.sow_date < day <= today:
        return Wrong.PLANTED
    return replace(nursery, transplanted_on=day)


def _happened(before: Nursery, after: Nursery) -> Iterator[Done]:
    """What the officer's days say was done."""
    planted = after.transplanted_on
    told = (
        (TaskCode.SOW, after.sow_date if after.sown else None, before.sown, before.sow_date),
        (TaskCode.UNCOVER_FLOOD, after.uncover_date, before.uncovered, before.uncover_date),
        (TaskCode.TRANSPLANT, planted, True, before.transplanted_on),
    )
    for task, on, was_done, was_on in told:
        is_told = after.uncovered if task is TaskCode.UNCOVER_FLOOD else on is not None
        if on is not None and is_told and not (was_done and on == was_on):
            yield Done(on=on, by=By.OFFICER, task=task)


_DAYS = ("sow_date", "uncover_date", "transplant_date", "transplanted_on")
_FIELDS = (
    "sow_date",
    "sown",
    "uncover_date",
    "uncovered",
    "transplant_date",
    "transplanted_on",
)


def _difference(before: Nursery, after: Nursery) -> str:
    """What changed, for the trail: names and values as they are kept."""
    pairs = ((name, getattr(before, name), getattr(after, name)) for name in _FIELDS)
    return "; ".join(f"{name}: {old} -> {new}" for name, old, new in pairs if old != new)


def _news(before: Nursery, after: Nursery, today: date, officer: str) -> tuple[Say, ...]:
    """What the farmer is told of the new days."""
    head = o.DATES_BY_OFFICER(officer=officer)
    if after.transplanted_on != before.transplanted_on:
        return (head, about(m.TRANSPLANTED_NOTED, after, today))
    if after.transplant_date != before.transplant_date and after.transplant_date:
        return (head, about(m.TRANSPLANT_SET, after, today))
    return (head, about(m.SOWING_MOVED, after, today), *skipped(before, after, today))


# --- the end ---------------------------------------------------------------------------------


def close_nursery(
    house: House, sight: Sight, nursery_id: int, why: str, now: datetime
) -> Kept | None:
    """Ends a nursery that was lost or given up; nothing more is sent for it."""
    with house.store.work() as work:
        found = find_bed(work, sight, nursery_id)
        if found is None:
            return None
        farmer, nursery = found
        work.lock(farmer.phone)
        saved = save_and_plan(work, house, farmer, replace(nursery, closed=True), now)
        note(
            work, sight.officer.id, TrailAct.NURSERY_CLOSED, now, _subject(farmer, nursery), why
        )
        return Kept(saved)


def find_bed(work: Work, sight: Sight, nursery_id: int) -> tuple[Farmer, Nursery] | None:
    """A nursery and its farmer; None where it is not in sight."""
    nursery = work.nurseries.get(nursery_id)
    farmer = work.people.farmer_by_id(nursery.farmer_id) if nursery else None
    if nursery is None or farmer is None or not sight.sees(farmer.village_id):
        return None
    return farmer, nursery


def _subject(farmer: Farmer, nursery: Nursery) -> Subject:
    return Subject(farmer.id, nursery.id, farmer.village_id)


def _today(house: House, sight: Sight, farmer: Farmer, now: datetime) -> date:
    return local_date(now, sight.zone(farmer.village_id, house.zone))
