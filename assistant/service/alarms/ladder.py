"""Who is told of an alarm and in which order, and the next one where nobody has answered.

First the officers of the village in the order in which they joined, then the leads. Where the
village is not known or nobody serves it, the leads; where there are none, any officer. Quiet
hours hold none of it back, nor does a setting.
"""

from datetime import datetime, timedelta

from assistant.dialogue.values import Kind
from assistant.people import Officer
from assistant.service.alarm_kinds import CLIMBS
from assistant.service.alarms.notice import notice
from assistant.service.house import House
from assistant.service.texts import REPLY_LASTS, Letter, post
from assistant.store import PRIVATE, Alarm, Work

STANDS_FOR = timedelta(days=1)  # how long somebody is looked for where nobody can be told


def rungs(work: Work, village_id: int | None, about: str, phone: str) -> tuple[Officer, ...]:
    """Those who are told, the first one first; not the writer, who may be an officer too. What
    is private goes to one person and the leads."""
    officers = [each for each in work.people.officers() if each.phone != phone]
    near = [each for each in officers if _near(each, village_id)]
    ordered = sorted(near or officers, key=lambda each: _rank(each, village_id))
    if about != PRIVATE:
        return tuple(ordered)
    return (*ordered[:1], *(each for each in ordered[1:] if each.is_lead))


def _near(officer: Officer, village_id: int | None) -> bool:
    return officer.is_lead or village_id in officer.village_ids


def _rank(officer: Officer, village_id: int | None) -> tuple[bool, bool, int]:
    return village_id not in officer.village_ids, officer.is_lead, officer.id


def tell(work: Work, house: House, alarm: Alarm, now: datetime) -> None:
    """Tells the next person, or all at once of a bed; where there is nobody, it is tried again
    for a day."""
    about, phone = alarm.call.about, alarm.call.farmer.phone
    everybody = rungs(work, alarm.village_id, about, phone)
    told = {
        each.officer_id for each in work.alarms.told([alarm.call.id]) if each.turn == alarm.turn
    }
    rest = [each for each in everybody if each.id not in told]
    now_told = rest[:1] if about in CLIMBS else rest
    waits = rest[1:] if about in CLIMBS else []
    for officer in now_told:
        _send(work, house, alarm, officer, bool(waits), now)
    looked_for = not everybody and now < alarm.call.at + STANDS_FOR
    again = now + house.alarm_next if waits or looked_for else None
    work.alarms.change(alarm.call.id, next_at=again)


def _send(
    work: Work, house: House, alarm: Alarm, officer: Officer, goes_on: bool, now: datetime
) -> None:
    letter = Letter(
        phone=officer.phone,
        language=officer.language,
        says=notice(work, house, alarm, officer, goes_on=goes_on),
        kind=Kind.NOTICE,
        not_after=now + REPLY_LASTS,
        urgent=True,
        private=alarm.call.about == PRIVATE,
    )
    text = post(work, house, letter, now)
    work.alarms.add_told(alarm.call.id, officer.id, alarm.turn, text.message_id, now)


def carry_on(work: Work, house: House, due: tuple[int, str], now: datetime) -> None:
    """The next step of an alarm that is due, by its call and the phone it came from. Another
    worker may have been faster."""
    call_id, phone = due
    work.lock(phone)
    alarm = work.alarms.get(call_id)
    if alarm is not None and alarm.next_at is not None and alarm.next_at <= now:
        tell(work, house, alarm, now)


def not_reached(work: Work, house: House, message_id: str, now: datetime) -> None:
    """A notice was lost: the next person hears at once; after the last one, all hear again."""
    alarm = work.alarms.told_by(message_id)
    if alarm is None or now >= alarm.call.at + STANDS_FOR:
        return
    if alarm.next_at is not None:
        work.alarms.change(alarm.call.id, next_at=now)
    elif alarm.call.about in CLIMBS:
        again = now + house.alarm_next
        work.alarms.change(alarm.call.id, next_at=again, turn=alarm.turn + 1)


def seen_to(
    work: Work, call_id: int, now: datetime, officer_id: int | None = None, done: str = ""
) -> None:
    """Somebody has seen to a call: notices that wait are taken back; `done` says what was
    done."""
    work.calls.handle(call_id, now, officer_id)
    told = work.alarms.told([call_id])
    if told:
        work.outbox.take_back([each.message_id for each in told], now)
    if done:
        work.alarms.change(call_id, note=done)
