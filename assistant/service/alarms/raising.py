"""An alarm comes in, is joined to the one that stands, and is settled by the writer."""

from dataclasses import replace
from datetime import datetime, timedelta

from assistant.dialogue.values import RaiseAlarm, SettleAlarm
from assistant.people import Farmer
from assistant.service.alarm_kinds import BED, HURT, alike
from assistant.service.alarms.ladder import seen_to, tell
from assistant.service.house import House
from assistant.service.told import ABOUT
from assistant.store import PRIVATE, Alarm, Work

SAME_TROUBLE = timedelta(
    hours=6
)  # of a bed; told of again later it is told to the officers anew
ASKED_FOR = timedelta(days=1)  # how long an answer is an answer to "is somebody hurt?"
NOBODY, SOMEBODY = "nobody", "hurt"
_JOIN = " / "
MOST_SAID = 20  # of what a phone cries again and again: the first words, and the latest


def raise_alarm(
    work: Work, house: House, phone: str, change: RaiseAlarm, now: datetime
) -> None:
    """Keeps a cry for help, from whatever phone, and tells a person at once, or after a while
    of silence where the writer is asked first. What the phone adds to it joins it.

    Raises:
        KeyError: a kind that has no words.
    """
    who = writer(work, phone)
    standing = _standing(work, who, change, now)
    if standing is None:
        alarm = _begun(work, house, who, change, now)
        if change.sure:
            tell(work, house, alarm, now)
        return
    alarm = _joined(work, standing, change)
    if change.sure and not standing.sure:
        sure = replace(alarm, sure=True)
        work.alarms.change(alarm.call.id, sure=True)
        _tell_anew(work, house, sure, now)
    elif change.sure and _unheeded(work, house, alarm, now):
        _tell_anew(work, house, alarm, now)


def settle_alarm(
    work: Work, house: House, phone: str, change: SettleAlarm, now: datetime
) -> None:
    """The writer was asked whether somebody is hurt and has answered. What a person was told of
    already stays until they close it."""
    alarm = asked(work, phone, now)
    if alarm is None:
        return
    call_id = alarm.call.id
    if change.hurt:
        work.alarms.change(call_id, sure=True, said=SOMEBODY)
        _tell_anew(work, house, replace(alarm, sure=True), now)
        return
    work.alarms.change(call_id, said=NOBODY, next_at=None)
    if not work.alarms.told([call_id]):
        seen_to(work, call_id, now)


def asked(work: Work, phone: str, now: datetime) -> Alarm | None:
    """The alarm of a phone that was asked whether somebody is hurt and has not said."""
    farmer = work.people.farmer(phone)
    standing = work.alarms.standing(farmer.id, HURT) if farmer else ()
    for alarm in standing:
        if not alarm.sure and alarm.said is None and alarm.call.at > now - ASKED_FOR:
            return alarm
    return None


def joins_private(work: Work, phone: str, words: str) -> bool:
    """Adds words that could not be read to what somebody said who wants to die: they are of
    the same talk, and nobody else is to see them. Whether such an alarm stands."""
    farmer = work.people.farmer(phone)
    standing = work.alarms.standing(farmer.id, (PRIVATE,)) if farmer else ()
    for alarm in standing[:1]:
        _joined(work, alarm, RaiseAlarm(PRIVATE, words))
    return bool(standing)


def writer(work: Work, phone: str) -> Farmer:
    """Whoever has this phone; of a stranger nothing is kept but the number."""
    known = work.people.farmer(phone)
    return known or work.people.save_farmer(Farmer(0, phone, None, None, None, None))


def _standing(work: Work, writer: Farmer, change: RaiseAlarm, now: datetime) -> Alarm | None:
    """The alarm that this is more of."""
    kinds = alike(change.kind)
    for alarm in work.alarms.standing(writer.id, kinds):
        if kinds != BED or (_same_bed(alarm, change) and alarm.call.at > now - SAME_TROUBLE):
            return alarm
    return None


def _same_bed(alarm: Alarm, change: RaiseAlarm) -> bool:
    bed = alarm.call.nursery
    return bed is None or change.nursery_id in (None, bed.id)


def _begun(
    work: Work, house: House, writer: Farmer, change: RaiseAlarm, now: datetime
) -> Alarm:
    if change.kind not in ABOUT:
        raise KeyError(f"expected a kind of alarm that has words, got {change.kind!r}")
    words = change.words.strip()
    call_id = work.calls.add(writer.id, change.nursery_id, change.kind, words, now)
    next_at = now if change.sure else now + house.alarm_next
    work.alarms.add(call_id, writer.village_id, change.sure, next_at)
    alarm = work.alarms.get(call_id)
    if alarm is None:
        raise LookupError(f"the alarm of call {call_id} was kept and is not there")
    return alarm


def with_more(words: str, said: str) -> str:
    """The words of a call with what was said now, if that is new."""
    known = [each for each in words.split(_JOIN) if each]
    fresh = [*known, said] if said and said not in known else known
    return _JOIN.join(fresh if len(fresh) <= MOST_SAID else (fresh[0], *fresh[2:]))


def _joined(work: Work, alarm: Alarm, change: RaiseAlarm) -> Alarm:
    """With what was said now; "hurt" gives way to how."""
    call, words = alarm.call, with_more(alarm.call.words, change.words.strip())
    about = change.kind if call.about == "hurt" else call.about
    if (about, words) == (call.about, call.words):
        return alarm
    work.alarms.reword(call.id, about, words)
    return replace(alarm, call=replace(call, about=about, words=words))


def _unheeded(work: Work, house: House, alarm: Alarm, now: datetime) -> bool:
    """Whether all were told some time ago, nobody answered, and the writer cries again."""
    if alarm.next_at is not None or alarm.call.about in BED:
        return False
    told = work.alarms.told([alarm.call.id])
    return not told or told[-1].at <= now - house.alarm_next or alarm.said == NOBODY


def _tell_anew(work: Work, house: House, alarm: Alarm, now: datetime) -> None:
    """From the first person on, also where some were told before."""
    told = work.alarms.told([alarm.call.id])
    turn = alarm.turn + 1 if told else alarm.turn
    work.alarms.change(alarm.call.id, turn=turn)
    tell(work, house, replace(alarm, turn=turn), now)
