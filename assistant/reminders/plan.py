"""Turns a nursery's calendar into dated reminders, each with a due time and a "not after"."""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from assistant.agronomy.life.days import days_of, first_of, wanted
from assistant.agronomy.nursery import Nursery
from assistant.reminders.values import Reminder

ONE_DAY = timedelta(days=1)


@dataclass(frozen=True)
class Hours:
    """The local hours of a day's texts.

    Prompts leave at `prompt`; the second asking at `second`; nothing that is not urgent leaves
    from `quiet_from` until `quiet_until`.
    """

    prompt: time = time(6, 0)
    second: time = time(16, 0)
    quiet_from: time = time(20, 0)
    quiet_until: time = time(5, 30)

    def quiet(self, at: time) -> bool:
        """Whether a local time is in the quiet hours."""
        return at >= self.quiet_from or at < self.quiet_until


def local(day: date, at: time, zone: str) -> datetime:
    """A local time of a village's day, aware."""
    return datetime.combine(day, at, ZoneInfo(zone))


def likeness(nursery: Nursery) -> tuple[object, ...]:
    """What its reminders hang on: nurseries with the same have the same, but for their ids."""
    return (
        nursery.practice.code,
        nursery.sow_date,
        nursery.uncover_date,
        nursery.transplant_date,
        nursery.transplanted_on,
        nursery.sown,
        nursery.uncovered,
        nursery.closed,
        nursery.test_begun,
        nursery.test_counted,
        nursery.more_on,
        nursery.sprouting,
        nursery.held,
        nursery.climate,
        nursery.felt_c,
        nursery.felt_on,
        nursery.leaves,
        nursery.leaves_on,
        nursery.flooded_on,
        nursery.is_gone,
        nursery.part_sown_on,
        nursery.age_first,
        nursery.age_last,
    )


def planned(
    nursery: Nursery, zone: str, hours: Hours, today: date, only_work: bool = False
) -> tuple[Reminder, ...]:
    """The reminders of a nursery from `today` on; days gone by are not prompted. `only_work`:
    what is done every day is said on its first day and not again, unless it asks."""
    if nursery.closed:
        return ()
    return tuple(
        Reminder(
            nursery_id=nursery.id,
            task=task.code,
            day=day,
            due_at=local(day, hours.prompt, zone),
            not_after=local(day, hours.quiet_from, zone),
        )
        for task in nursery.tasks
        if wanted(task.code, nursery)
        for day in (first_of(task, nursery) if only_work else days_of(task, nursery))
        if day >= today
    )
