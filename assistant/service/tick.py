"""What the clock brings: tasks due are asked in one text a phone, silence is followed up.

Running it twice for the same moment changes nothing the second time.
"""

import logging
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from functools import cache
from typing import Any
from zoneinfo import ZoneInfo

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.dangers.rows import DANGERS, RAIN
from assistant.agronomy.life.days import is_last_asking
from assistant.agronomy.life.events import Assumed, By, PutOff, Why
from assistant.agronomy.life.rows import TASKS, asked_tasks
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.values import Focus, Kind
from assistant.people import Farmer
from assistant.reminders.compose import compose, second_asking
from assistant.reminders.morning import (
    by_nursery,
    only_told,
    sorted_out,
    taken_as_sown,
    unconfirmed,
)
from assistant.reminders.plan import ONE_DAY, local
from assistant.reminders.values import Reminder, State
from assistant.service import consent
from assistant.service.alarms.ladder import carry_on, not_reached
from assistant.service.forgotten import close_forgotten, forgotten_nurseries
from assistant.service.harvests import ask, to_ask
from assistant.service.house import House
from assistant.service.known import local_date, zone_of
from assistant.service.mornings import AT_ONCE, batches, caught_up, item_of, prompt
from assistant.service.replan import happen, save_and_plan
from assistant.service.set_aside import keep_aside
from assistant.service.storms.warnings import warned_of
from assistant.service.texts import Letter, post
from assistant.service.unfinished import left_open, nudge
from assistant.store import DatabaseAwayError, OutboxText, Work

log = logging.getLogger(__name__)

MIDNIGHT = time(0, 0)


@dataclass(frozen=True)
class PhoneDay:
    """A farmer's phone with its local day."""

    farmer: Farmer
    zone: str
    today: date
    now: datetime
    raining: bool
    held: bool  # by a warning of another danger

    @property
    def waits(self) -> bool:
        """Whether sowing and uncovering wait."""
        return self.raining or self.held


def tick(house: House, now: datetime) -> None:
    """Follows up silence and lateness, then sends what is due; a transaction a phone."""
    for _ in ticking(house, now):
        pass


def ticking(house: House, now: datetime, at_once: int = AT_ONCE) -> Iterator[int]:
    """A tick that pauses when some phones were served, so that others can have their turn
    meanwhile; how many phones those were.

    What is looked for is done before the next is looked for, and each of what is found by
    itself: what fails stops neither the others nor the sending.

    Args:
        at_once: tasks of one batch of the morning
    """
    for follow, found in _found(house, now):
        if follow is _prompt:
            yield from _morning(house, now, at_once)
            continue
        for whom in found:
            _alone(house, follow, whom, now)
            yield 1


def _found(house: House, now: datetime) -> Iterator[tuple["Follow", Sequence[object]]]:
    """What the looks find, each with what is to be done about it; it is done by the time that
    the next is made."""
    rest: list[tuple[Look, Follow | None]] = [(_expired, None), *FOLLOW_UPS]
    together = True
    while rest:
        looks = [look for look, _ in rest]
        seen = _until_found(house, looks, now) if together else None
        together = seen is not None
        done, found = seen or (1, _apart(house, looks[0], now))
        follow = rest[done - 1][1]
        rest = rest[done:]
        if found and follow:
            yield follow, found


def _morning(house: House, now: datetime, at_once: int) -> Iterator[int]:
    """The day's texts in batches; who falls out of them is served alone."""
    try:
        for batch in batches(house, now, at_once):
            if batch.texts:
                yield len(batch.texts)
            for phone in batch.alone:
                _alone(house, _prompt, phone, now)
                yield 1
    except DatabaseAwayError as fault:
        log.error("the morning was interrupted; it is gone on with: %s", fault)


Look = Callable[[Work, House, datetime], Sequence[object]]
Follow = Callable[[Work, House, Any, datetime], None]


def _expired(work: Work, house: House, now: datetime) -> Sequence[object]:
    """Texts whose time ran out, and what follows from that."""
    lost = work.outbox.expire(now)
    for text in lost:
        was_lost(work, house, text, now)
    if lost:
        log.warning("%d texts were given up: their time ran out before they left", len(lost))
    return ()


def _alarms(work: Work, house: House, now: datetime) -> Sequence[object]:
    return work.alarms.due(now)


def _silent_beds(work: Work, house: House, now: datetime) -> Sequence[object]:
    return sorted({reminder.nursery_id for reminder in _silent(work, house, now)})


def _due(work: Work, house: House, now: datetime) -> Sequence[object]:
    """Whether it is a morning; whose it is the batches find."""
    return (now,) if work.mornings.is_due(now) and _awake(work, house, now) else ()


def _unsaid(work: Work, house: House, now: datetime) -> Sequence[object]:
    unsaid = consent.to_ask_again(work, now)
    return unsaid if unsaid and _awake(work, house, now) else ()


def _until_found(
    house: House, looks: Sequence[Look], now: datetime
) -> tuple[int, Sequence[object]] | None:
    """Looks one after the other until one finds something, in one transaction: in most rounds
    none does, and six transactions would take five times as long.

    Returns:
        How many were made, at least one, and what the last of them found; None where one
        failed, with nothing kept of any.
    """
    try:
        with house.store.work() as work:
            done = 0
            found: Sequence[object] = ()
            while not found and done < len(looks):
                found = tuple(looks[done](work, house, now))
                done += 1
            keep_aside(work, now)
            return done, found
    except Exception:
        return None  # each is made apart, which tells the fault


def _apart(house: House, look: Look, now: datetime) -> Sequence[object]:
    """One look in a transaction of its own; nothing where it failed, which is logged."""
    try:
        with house.store.work() as work:
            found = tuple(look(work, house, now))
            keep_aside(work, now)
            return found
    except Exception:
        log.exception("%s failed; it is tried again", look.__name__.strip("_"))
        return ()


def _awake(work: Work, house: House, now: datetime) -> bool:
    """Whether it is an hour for prompts in some village."""
    zones = {house.zone, *(village.zone for village in work.people.villages())}
    clocks = (now.astimezone(ZoneInfo(zone)).time() for zone in zones)
    return any(house.hours.prompt <= clock < house.hours.quiet_from for clock in clocks)


def _alone(
    house: House,
    follow: Callable[[Work, House, Any, datetime], None],
    whom: object,
    now: datetime,
) -> None:
    """One phone's or nursery's part in a transaction; its failure holds up nobody else."""
    try:
        with house.store.work() as work:
            follow(work, house, whom, now)
            keep_aside(work, now)
    except Exception:
        log.exception("what is due for %s failed; it is tried again", whom)


def was_lost(work: Work, house: House, text: OutboxText, now: datetime) -> None:
    """What follows from a text that will never arrive."""
    if text.kind is Kind.NOTICE:
        not_reached(work, house, text.message_id, now)
    plan_again(work, house, text)


def plan_again(work: Work, house: House, text: OutboxText) -> None:
    """The tasks of a prompt that will never arrive wait for the next morning's text.

    Not sooner: a phone that refuses every text would be sent one a second.
    """
    lost = [r for r in work.reminders.of_message(text.message_id) if r.state is State.SENT]
    if not lost:
        return
    farmer = work.people.farmer(text.phone)
    zone = zone_of(work, house, farmer.village_id if farmer else None)
    morning = local(local_date(text.created_at, zone) + ONE_DAY, house.hours.prompt, zone)
    work.reminders.set_state([r.id for r in lost], State.PLANNED)
    work.reminders.plan([replace(each, due_at=morning) for each in lost])


# --- silence ---------------------------------------------------------------------------------


def _silent(work: Work, house: House, now: datetime) -> tuple[Reminder, ...]:
    """Tasks asked and not answered, whose day is over or whose second asking is due."""
    hours = house.hours
    over = work.reminders.unanswered(asked_tasks(), now - _from_until(hours.prompt, MIDNIGHT))
    again = work.reminders.to_ask_again(
        _asked_twice(),
        now,
        now - _from_until(hours.prompt, hours.second),
        _waiting_for_rain(),
    )
    return (*over, *again)


@cache
def _asked_twice() -> frozenset[TaskCode]:
    return TASKS.codes(lambda row: row.asked_twice)


@cache
def _waiting_for_rain() -> frozenset[TaskCode]:
    return TASKS.codes(lambda row: row.waits_for_rain)


def _from_until(start: time, end: time) -> timedelta:
    """Hours of one day from a time until another; midnight ends the day."""
    until = timedelta(hours=end.hour, minutes=end.minute) or ONE_DAY
    return until - timedelta(hours=start.hour, minutes=start.minute)


def _follow_up(work: Work, house: House, nursery_id: int, now: datetime) -> None:
    nursery = work.nurseries.get(nursery_id)
    farmer = work.people.farmer_by_id(nursery.farmer_id) if nursery else None
    if nursery is None or farmer is None:
        return
    work.lock(farmer.phone)
    place = _place(work, house, farmer, now)
    for reminder in work.reminders.sent_open([nursery_id]):
        if not TASKS[reminder.task].is_asked:
            continue
        if local_date(reminder.due_at, place.zone) < place.today:
            _give_up(work, house, nursery, reminder, place)
        elif _asks_again(house, reminder, place):
            _ask_again(work, house, nursery, reminder, place)


def _give_up(
    work: Work, house: House, nursery: Nursery, reminder: Reminder, place: PhoneDay
) -> None:
    """Marks it for the officer; an unconfirmed sowing is taken as done on its day, and a season
    whose result nobody tells is over."""
    work.reminders.set_state([reminder.id], State.UNANSWERED)
    if reminder.task is TaskCode.SOW and not nursery.sown:
        assumed = Assumed(on=nursery.sow_date, by=By.CLOCK)
        happen(work, house, place.farmer, nursery, assumed, place.now)
    elif reminder.task is TaskCode.SEASON_RESULT and is_last_asking(nursery, reminder.day):
        closed = replace(nursery, closed=True, no_result=True)
        save_and_plan(work, house, place.farmer, closed, place.now)


def _asks_again(house: House, reminder: Reminder, place: PhoneDay) -> bool:
    """Whether it is time for the one repetition: the same afternoon, and never "uncover" under
    a warning that it waits for."""
    second_at = local(place.today, house.hours.second, place.zone)
    row = TASKS[reminder.task]
    waits = place.waits and row.waits_for_rain
    return (
        row.asked_twice
        and reminder.asked == 1
        and second_at <= place.now < reminder.not_after
        and not waits
    )


def _ask_again(
    work: Work, house: House, nursery: Nursery, reminder: Reminder, place: PhoneDay
) -> None:
    letter = Letter(
        phone=place.farmer.phone,
        language=place.farmer.language,
        says=second_asking(nursery, reminder),
        kind=Kind.SECOND,
        not_after=reminder.not_after,
        focus=Focus(items=(item_of(reminder),)),
        nursery_id=nursery.id,
    )
    text = post(work, house, letter, place.now)
    work.reminders.set_state([reminder.id], State.SENT, text.message_id, asked=2)


# --- the day's text --------------------------------------------------------------------------


def _place(work: Work, house: House, farmer: Farmer, now: datetime) -> PhoneDay:
    village = work.people.village(farmer.village_id) if farmer.village_id else None
    zone = village.zone if village else house.zone
    dangers = warned_of(work, village, now)
    held = any(DANGERS[each].waits for each in dangers - {RAIN})
    return PhoneDay(farmer, zone, local_date(now, zone), now, RAIN in dangers, held)


def _prompt(work: Work, house: House, phone: str, now: datetime) -> None:
    """One text for all that is due on a phone today, with what was missed before."""
    work.lock(phone)
    farmer = work.people.farmer(phone)
    if farmer is None:
        return
    place = _place(work, house, farmer, now)
    opens = local(place.today, house.hours.prompt, place.zone)
    closes = local(place.today, house.hours.quiet_from, place.zone)
    if not opens <= now < closes:
        return
    unsure = _assume_sown(work, house, place)
    nurseries = work.nurseries.of_farmer(farmer.id)
    found = sorted_out(_due_of(work, nurseries, now), place.today)
    work.reminders.set_state([each.id for each in found.too_late], State.TOO_LATE)
    if not found.said:
        return
    work.reminders.plan(caught_up(found, opens, closes))
    grouped = by_nursery(nurseries, found.said)
    all_beds = [nursery.id for nursery, _ in grouped]
    composed = compose(
        grouped,
        place.today,
        all_beds if place.raining else (),
        unsure + taken_as_sown(nurseries, place.today),
        all_beds if place.held else (),
        work.mornings.cautioned(found.said, now),
    )
    letter = prompt(phone, farmer.language, composed, found, closes)
    text = post(work, house, letter, now)
    said = [each.id for each in found.said]
    work.reminders.set_state(said, State.SENT, text.message_id, asked=1)
    work.reminders.set_state(only_told(found.said, composed), State.NOT_YET)
    if place.waits:
        _put_off(work, house, grouped, place)


def _due_of(work: Work, nurseries: Iterable[Nursery], now: datetime) -> list[Reminder]:
    return [each for nursery in nurseries for each in work.reminders.due(now, nursery.id)]


def _assume_sown(work: Work, house: House, place: PhoneDay) -> list[int]:
    """Takes sowings as done on their day whose text never arrived in all the days of catching
    up; the ids of the nurseries, to be told so."""
    nurseries = work.nurseries.of_farmer(place.farmer.id)
    missed = unconfirmed(nurseries, _due_of(work, nurseries, place.now), place.today)
    for nursery, reminder in missed:
        _give_up(work, house, nursery, reminder, place)
    return [nursery.id for nursery, _ in missed]


def _put_off(
    work: Work,
    house: House,
    grouped: Sequence[tuple[Nursery, Sequence[Reminder]]],
    place: PhoneDay,
) -> None:
    """Under a warning that they wait for, sowing and uncovering move to tomorrow, and are
    asked then."""
    tomorrow = place.today + ONE_DAY
    for nursery, reminders in grouped:
        due = {each.task for each in reminders if TASKS[each.task].waits_for_rain}
        for task in sorted(due):
            event = PutOff(
                on=place.today,
                by=By.CLOCK,
                task=task,
                was=place.today,
                until=tomorrow,
                why=Why.RAIN if place.raining else Why.OTHER,
            )
            # The text that says so waits to be sent and must not be taken back.
            nursery = happen(work, house, place.farmer, nursery, event, place.now, recall=False)


# What the clock brings, in the order of what cannot wait: what is looked for, what is done.
FOLLOW_UPS: tuple[tuple[Look, Follow], ...] = (
    (_alarms, carry_on),
    (_silent_beds, _follow_up),  # what silence means is in the day's text
    (forgotten_nurseries, close_forgotten),
    (_due, _prompt),
    (_unsaid, consent.ask_again),
    (to_ask, ask),
    (left_open, nudge),
)
