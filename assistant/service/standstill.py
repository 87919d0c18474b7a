"""Tells people when no text leaves: the page says so too, but nobody may look at it for hours.

The leads hear, once in each standstill, by a text that goes before all others: at once where
there is another line, else the moment that anything leaves again. Where the process that sends
is gone, whoever notices offers that text itself.
"""

import logging
from datetime import datetime, timedelta

from assistant.channel import Gateway
from assistant.dialogue.values import Kind
from assistant.service.dispatch import dispatch
from assistant.service.house import House
from assistant.service.pulse import Pulse, ServiceFault, pulse
from assistant.service.texts import Letter, post
from assistant.store import Lane, Work
from assistant.wording import messages_alarms as alarms
from assistant.wording.message import Say

log = logging.getLogger(__name__)

TOLD = "standstill"  # the pulse that holds when people were told
AFTER = timedelta(minutes=10)
AGAIN = timedelta(hours=6)  # of a standstill that goes on; common practice, no source
LASTS = timedelta(hours=2)
LEASE = timedelta(seconds=30)


def tell_people(house: House, now: datetime, gateway: Gateway | None = None) -> int:
    """Tells the leads if nothing leaves, once; how many were told now.

    Args:
        gateway: by which the text is offered at once, where nobody else sends
    """
    found = pulse(house, now)
    faults = standing(found)
    with house.store.work() as work:
        work.lock(TOLD)
        told_at = work.running.pulse(TOLD)
        if not faults:
            if told_at is not None:
                work.running.still(TOLD)
            return 0
        if told_at is not None and now - told_at < AGAIN:
            return 0
        count = _post(work, house, _says(faults[0], found), now)
        work.running.beat(TOLD, now)
    log.error("texts stand still (%s): %d people are told", ", ".join(faults), count)
    if gateway is not None and count and ServiceFault.SENDING in faults:
        dispatch(house, gateway, now, limit=count, lease=LEASE)
    return count


def standing(found: Pulse) -> tuple[ServiceFault, ...]:
    """What stands still for ten minutes, the gravest first. What a person holds back does not
    count, nor a service that has never run, nor a line that is slow and goes on: a modem needs
    an hour for a morning of a thousand texts."""
    if found.line.held_at is not None:
        return ()
    lasts = {
        ServiceFault.SENDING: found.sending is not None and found.now - found.sending > AFTER,
        ServiceFault.WAITING: _nothing_leaves(found) > AFTER,
        ServiceFault.TICKING: found.ticking is not None and found.now - found.ticking > AFTER,
    }
    return tuple(fault for fault, true in lasts.items() if true)


def _nothing_leaves(found: Pulse) -> timedelta:
    """For how long texts wait and none leaves."""
    took_at = found.line.took_at
    return found.waits if took_at is None else min(found.waits, found.now - took_at)


def _says(fault: ServiceFault, found: Pulse) -> Say:
    if fault is ServiceFault.TICKING:
        return alarms.NO_DAILY_TEXTS()
    minutes = int(_nothing_leaves(found).total_seconds() // 60)
    return alarms.NOTHING_LEAVES(n=max(minutes, 1))


def _post(work: Work, house: House, says: Say, now: datetime) -> int:
    officers = work.people.officers()
    leads = [each for each in officers if each.is_lead] or officers
    for lead in leads:
        letter = Letter(
            phone=lead.phone,
            language=lead.language,
            says=(says,),
            kind=Kind.NOTICE,
            not_after=now + LASTS,
            urgent=True,
            lane=Lane.DANGER,
        )
        post(work, house, letter, now)
    return len(leads)
