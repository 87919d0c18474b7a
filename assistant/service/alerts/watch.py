"""One look at a source of official alerts: by one process at a time, and never too often."""

from dataclasses import replace
from datetime import datetime, timedelta

from assistant.alerts.sources import AlertSource, Stamp
from assistant.service.alerts.taking import take_alert
from assistant.service.house import House
from assistant.store import KeptAlert

KEPT_FOR = timedelta(days=90)  # what led to nothing; what led to something stays


def forget_old(house: House, now: datetime) -> int:
    """Forgets alerts that led to nothing and are long over; how many those were."""
    with house.store.work() as work:
        return work.alerts.prune(now - KEPT_FOR)


def look_at(
    house: House, source: AlertSource, now: datetime, every: timedelta
) -> tuple[KeptAlert, ...]:
    """Takes what is new at a source, where nobody looked within `every`; the alerts taken.

    How the look went is kept, so that officers see where alerts no longer come in.
    """
    with house.store.work() as work:
        before = work.alert_sources.take(source.name, now, every)
    if before is None:
        return ()
    look = source.look(Stamp(before.etag, before.modified))
    taken = []
    for found in look.found:
        kept = take_alert(house, found.raw, source.name, now)
        source.done(found.key)
        taken += [kept] if kept else []
    how = replace(before, trouble=look.trouble)
    if not look.trouble:
        how = replace(how, etag=look.stamp.etag, modified=look.stamp.modified, well_at=now)
    with house.store.work() as work:
        work.alert_sources.looked(how)
    return tuple(taken)
