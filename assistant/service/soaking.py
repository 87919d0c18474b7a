"""Soaking that moves with an officer's temperature: earlier in cool water, back in warm."""

from dataclasses import replace
from datetime import date, datetime

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.growth.warmth import Warmth
from assistant.agronomy.lot.soaking import is_cool
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.endings_soaking import in_time, sowing_moved
from assistant.dialogue.results import skipped
from assistant.dialogue.values import Kind
from assistant.people import Farmer
from assistant.service.days import local_date, zone_of
from assistant.service.house import House
from assistant.service.replan import save_and_plan
from assistant.service.texts import REPLY_LASTS, Letter, after_quiet, post
from assistant.store import Lane, Work
from assistant.wording import messages_planting as g
from assistant.wording.day import about
from assistant.wording.message import Say


def move_soaking(
    work: Work, house: House, village_id: int, warmth: Warmth, now: datetime
) -> None:
    """Moves the soaking of a village's seed that is not soaked yet, and tells its farmers.

    Sowing stays, but where there is no time any more for as many days: then it moves too, and
    the farmer is told so and may choose another day.
    """
    zone = zone_of(work, house, village_id)
    today = local_date(now, zone)
    for farmer, listed in work.nurseries.in_village(village_id, sown_from=today):
        if not _moves(listed, warmth, today):
            continue
        work.lock(farmer.phone)
        nursery = work.nurseries.fresh(listed.id)
        if nursery is None or nursery.closed or not _moves(nursery, warmth, today):
            continue
        after = in_time(_by_warmth(nursery, warmth), nursery, today)
        save_and_plan(work, house, farmer, after, now)
        _tell(work, house, farmer, after, _news(nursery, after, warmth, today), now)


def _moves(nursery: Nursery, warmth: Warmth, today: date) -> bool:
    """Whether seed that is still to be soaked is so on another day by a temperature."""
    waits = not (nursery.sown or nursery.held) and _soak(nursery) >= today
    return waits and _soak(_by_warmth(nursery, warmth)) != _soak(nursery)


def _by_warmth(nursery: Nursery, warmth: Warmth) -> Nursery:
    return replace(nursery, water_c=warmth.mean_c if is_cool(warmth.mean_c) else None)


def _soak(nursery: Nursery) -> date:
    return next(task.date for task in nursery.tasks if task.code is TaskCode.SOAK)


def _news(before: Nursery, nursery: Nursery, warmth: Warmth, today: date) -> tuple[Say, ...]:
    days = nursery.sprouting
    if nursery.water_c is None or days is None:
        return (about(g.SOAK_SET, nursery, today),)
    degrees, begins = warmth.mean_c, _soak(nursery)
    cool = about(
        g.SOAK_COOL,
        nursery,
        today,
        degrees=degrees,
        days=days.soak_d,
        moist=days.incubate_d,
        date=begins,
    )
    return (cool, *sowing_moved(before, nursery, today), *skipped(before, nursery, today))


def _tell(
    work: Work, house: House, farmer: Farmer, bed: Nursery, says: tuple[Say, ...], now: datetime
) -> None:
    due = after_quiet(house, zone_of(work, house, farmer.village_id), now)
    letter = Letter(
        phone=farmer.phone,
        language=farmer.language,
        says=says,
        kind=Kind.LETTER,
        due_at=due,
        not_after=due + REPLY_LASTS,
        nursery_id=bed.id,
        lane=Lane.DAY,
    )
    post(work, house, letter, now)
