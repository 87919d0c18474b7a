"""Keeps a nursery and plans its reminders anew, without saying twice what was said."""

from collections.abc import Callable, Collection, Iterable
from dataclasses import replace
from datetime import date, datetime

from assistant.agronomy.calendar import TaskCode, day_after
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.days import is_daily, is_over
from assistant.agronomy.life.events import Done, Event
from assistant.agronomy.life.rows import TASKS, Doing
from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.reminders.plan import planned
from assistant.reminders.values import Reminder, State
from assistant.service.days import local_date, zone_of
from assistant.service.house import House
from assistant.service.recall import PROMPTS, recall_prompts
from assistant.store import Work

_OF_DRY_SEED = frozenset({TaskCode.SOAK, TaskCode.DRAIN_SEED})
_SAID_ANEW = frozenset({TaskCode.DRAIN_SEED})  # it hangs on the hour of soaking
TOLD_LASTS_D = 7  # shorter than the time between the two harrowings, which are both said


def save_and_plan(
    work: Work,
    house: House,
    farmer: Farmer,
    nursery: Nursery,
    now: datetime,
    *,
    recall: bool = True,
    asked_stays: bool = False,
) -> Nursery:
    """Keeps a nursery and plans its reminders anew; what was asked for other days goes.

    Args:
        recall: whether prompts that wait to be sent are written again, the plan having moved
        asked_stays: whether what was asked may still be answered, though its day has moved
    """
    if recall:
        recall_prompts(work, work.outbox.waiting(PROMPTS, phone=farmer.phone), now)
    saved = work.nurseries.save(replace(nursery, farmer_id=farmer.id), now)
    zone = zone_of(work, house, farmer.village_id)
    all_days = planned(saved, zone, house.hours, date.min, farmer.only_work)
    keep = {(reminder.task, reminder.day) for reminder in all_days}
    story = work.reminders.of_nursery(saved.id)
    _withdraw(work, story, keep, anew=saved.resown, asked_stays=asked_stays)
    _settle_silence(work, saved, story)
    today = local_date(now, zone)
    soaked = _soaked_on(work, saved)
    told = _told_already(story, today, saved, soaked, now)
    coming = [each for each in all_days if each.day >= today and not told(each)]
    work.reminders.plan_beside(story, coming)
    return saved


def happen(
    work: Work,
    house: House,
    farmer: Farmer,
    nursery: Nursery,
    event: Event,
    now: datetime,
    *,
    recall: bool = True,
) -> Nursery:
    """Keeps that something happened, and the nursery and its reminders as they are after it."""
    work.events.add(nursery.id, event, now)
    moved = after(nursery, event)
    if moved == nursery:
        return nursery
    return save_and_plan(work, house, farmer, moved, now, recall=recall)


def _withdraw(
    work: Work,
    story: Iterable[Reminder],
    keep: Collection[tuple[TaskCode, date]],
    *,
    anew: bool,
    asked_stays: bool,
) -> None:
    """What is planned or asked and not of these days goes; of a bed that was sown anew also
    what was never answered: its leaves are gone, and a digit would still be taken for them."""
    open_states = {State.PLANNED, *(() if asked_stays else (State.SENT,))}
    open_states |= {State.UNANSWERED} if anew else set()
    gone = [
        each.id
        for each in story
        if each.state in open_states and (each.task, each.day) not in keep
    ]
    work.reminders.set_state(gone, State.WITHDRAWN)


def _settle_silence(work: Work, nursery: Nursery, story: Iterable[Reminder]) -> None:
    """What happened since answers the earlier tasks too: seed that is sown was soaked."""
    if nursery.sow_assumed:
        return
    settled = [
        each.id
        for each in story
        if each.state is State.UNANSWERED and is_over(each.task, nursery)
    ]
    work.reminders.set_state(settled, State.DONE)


def _told_already(
    story: Collection[Reminder],
    today: date,
    nursery: Nursery,
    soaked_on: date | None,
    now: datetime,
) -> Callable[[Reminder], bool]:
    """Whether a task need not be said again when the plan moves by a few days.

    The day's text goes out once, and what is only told (collect, mix, plough) is told once;
    what must be answered is asked on its new day, but for seed that was soaked on it.
    """
    asked = [each for each in story if each.asked]
    said_today = any(each.day == today for each in asked)
    days = {(each.task, each.day) for each in asked}

    dry = _lies_drained(asked)
    soaked = not nursery.resown and any(
        each.state is State.DONE and TASKS[each.task].doing is Doing.SOAKS for each in story
    )
    soaked = soaked or soaked_on == today
    moist = _lies_moist(story, nursery, today)
    seen = any(
        each.task is TaskCode.AFTER_FLOOD
        and each.state is State.DONE
        and each.answered_at == now
        for each in story
    )

    def told(reminder: Reminder) -> bool:
        row = TASKS[reminder.task]
        if _only_opens(reminder, today, nursery) and said_today:
            return True  # the reply that moved the window has named its days
        if reminder.task is TaskCode.DRAIN_BED and reminder.day == today and dry:
            return True  # planting waits so short that its water never came back
        if moist and reminder.task in _OF_DRY_SEED:
            return True
        if row.is_asked:
            return soaked and row.doing is Doing.SOAKS and reminder.day == today
        if reminder.day == today and (said_today or seen):
            return True  # today's text, or the answer of who saw the bed, has said what to do
        lately = (abs((reminder.day - day).days) for task, day in days if task is reminder.task)
        once = not is_daily(reminder.task) and reminder.task not in _SAID_ANEW
        return once and any(days < TOLD_LASTS_D for days in lately)

    return told


def _lies_moist(story: Iterable[Reminder], nursery: Nursery, today: date) -> bool:
    """Whether the seed of a bed lies sprouted: its sowing was asked before, or a part of it is
    sown, and the rest is to be sown so soon that no other seed is soaked for it."""
    if (
        nursery.sown
        or nursery.resown
        or day_after(nursery.sow_date, -nursery.soak_before_d) > today
    ):
        return False
    asked = any(
        each.task is TaskCode.SOW and each.asked and each.day <= today for each in story
    )
    return asked or nursery.part_sown_on is not None


def _only_opens(reminder: Reminder, today: date, nursery: Nursery) -> bool:
    """Whether a reminder says that the window begins, the day of planting being to come."""
    plants = TASKS[reminder.task].doing is Doing.PLANTS and reminder.day == today
    return plants and today < nursery.anchors.transplant_date


def _soaked_on(work: Work, nursery: Nursery) -> date | None:
    """The day on which the seed went into water, as it was told last, of a bed that waits for
    it; one that is sown anew has other seed."""
    if nursery.sown or nursery.resown:
        return None
    events = work.events.of_nursery(nursery.id)
    days = [
        each.on
        for each in events
        if isinstance(each, Done) and TASKS[each.task].doing is Doing.SOAKS
    ]
    return days[-1] if days else None


def _lies_drained(asked: Iterable[Reminder]) -> bool:
    """Whether the bed was drained, and no water was asked for on it since."""
    last: dict[TaskCode, date] = {}
    for each in asked:
        put_off = each.task is TaskCode.DRAIN_BED and each.state is State.NOT_YET
        if not put_off:
            last[each.task] = max(each.day, last.get(each.task, each.day))
    drained, watered = last.get(TaskCode.DRAIN_BED), last.get(TaskCode.KEEP_WATER)
    return drained is not None and (watered is None or watered <= drained)
