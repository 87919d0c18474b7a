"""A STOP of a farmer whose bed stands, as a row of what waits for the officer.

Anybody can forge a number, and who is silenced hears of no day's work any more. So the officer
sees it and can ring; she is sent no text, since a STOP is everybody's right.
"""

from datetime import datetime, timedelta

from assistant.people import Farmer
from assistant.store import PastCall, Work

STOPPED = "stopped"
ONE_DAY = timedelta(days=1)  # STOP and START again and again are one row


def show_stop(work: Work, farmer: Farmer, now: datetime) -> None:
    """Puts the row up; not of who gets no texts anyway, nor where no bed stands."""
    beds = work.nurseries.of_farmer(farmer.id)
    if farmer.stopped_at is not None or farmer.consent_at is None or not beds:
        return
    last = _last(work, farmer)
    if last is None or last.at <= now - ONE_DAY:
        work.calls.add(farmer.id, beds[0].id, STOPPED, "", now)
    elif last.handled_at is not None:
        work.calls.reopen(last.id)


def hide_stop(work: Work, farmer: Farmer, now: datetime) -> None:
    """The phone wants its texts again: nobody need ring."""
    last = _last(work, farmer)
    if last is not None and last.handled_at is None:
        work.calls.handle(last.id, now)


def _last(work: Work, farmer: Farmer) -> PastCall | None:
    found = (each for each in work.story.calls_of(farmer.id) if each.about == STOPPED)
    return max(found, key=lambda each: each.at, default=None)
