"""Alerts that are still new are judged again when villages or thresholds have changed.

A village that was placed after a storm was announced is warned of it too.
"""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from assistant.alerts import Alert, AlertOutcome, JudgedAlert, Threat, judge, read_alert
from assistant.service.alerts.taking import ONE_AT_A_TIME, lead_on
from assistant.service.house import House
from assistant.store import Became, KeptAlert, Work

NEW_FOR = timedelta(days=3)
# What might come to something else for other villages or thresholds.
OPEN = frozenset(
    {
        Became.ELSEWHERE,
        Became.BELOW,
        Became.OTHER_HAZARD,
        Became.UNCHANGED,
        Became.DRAFTED,
        Became.SENT,
    }
)


def judge_again(house: House, now: datetime) -> tuple[KeptAlert, ...]:
    """Leads on what new villages are in danger of; the alerts that this was so for."""
    with house.store.look() as work:
        found = list(_wider(work, house, now))
    done = []
    for kept, threats in found:
        with house.store.work() as work:
            work.lock(ONE_AT_A_TIME)
            if work.alerts.get(kept.id) != kept:
                continue  # another process, or a later message, was quicker
            lead_on(work, house, kept, JudgedAlert(AlertOutcome.MATTERS, threats), {}, now)
            done += [_widened(work, kept, threats)]
    return tuple(done)


def _wider(
    work: Work, house: House, now: datetime
) -> Iterator[tuple[KeptAlert, tuple[Threat, ...]]]:
    """Alerts with villages in danger that they were not known to hold."""
    places = work.alerts.places()
    for kept in work.alerts.since(now - NEW_FOR, OPEN):
        alert = read_alert(work.alerts.raw(kept.id) or b"")
        if not isinstance(alert, Alert):
            continue  # kept by an earlier release that took more
        threats = (
            replace(threat, place_ids=_new(threat, kept))
            for threat in judge(alert, house.alert_rules, places, now).threats
        )
        wider = tuple(threat for threat in threats if threat.place_ids)
        if wider:
            yield kept, wider


def _new(threat: Threat, kept: KeptAlert) -> tuple[int, ...]:
    return tuple(each for each in threat.place_ids if each not in kept.village_ids)


def _widened(work: Work, kept: KeptAlert, threats: tuple[Threat, ...]) -> KeptAlert:
    starts = [threat.starts_at for threat in threats] + [kept.starts_at or threats[0].starts_at]
    ends = [threat.ends_at for threat in threats] + [kept.ends_at or threats[0].ends_at]
    new = {place for threat in threats for place in threat.place_ids}
    return work.alerts.widen(kept.id, sorted(new), min(starts), max(ends))
