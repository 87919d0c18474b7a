"""What waits of rain warnings: drafts to decide on, one line a storm, and warnings that the
weather service no longer backs."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from functools import cache

from assistant.alert_terms import spoken
from assistant.people import Village
from assistant.service.sight import Sight
from assistant.service.storms.rain_drafts import OpenDraft, StormLine, storms, waiting
from assistant.store import Decision, KeptAlert, Work

Alerts = Callable[[int], KeptAlert | None]


@dataclass(frozen=True)
class ToDecide:
    """Drafts of one storm: the latest, how many say the same before it, and the words and
    severity of the service where it came from an alert."""

    line: OpenDraft
    others: tuple[int, ...]
    headline: str = ""
    severity: str = ""


@dataclass(frozen=True)
class Withdrawn:
    """A warning of ours stands, and the service that it came from has taken its alert back, or
    left these villages out of it."""

    alert_id: int
    draft_id: int
    villages: tuple[Village, ...]


def to_decide(work: Work, sight: Sight, now: datetime) -> tuple[ToDecide, ...]:
    """Open drafts in sight, the next storm first; those of the same danger, villages and
    hours are one."""
    by_storm: dict[object, list[OpenDraft]] = {}
    for line in waiting(work, sight, now):
        by_storm.setdefault(line.storm, []).append(line)
    return tuple(_storm(work, sight, lines) for lines in by_storm.values())


def _storm(work: Work, sight: Sight, lines: list[OpenDraft]) -> ToDecide:
    latest = max(lines, key=lambda line: line.draft.id)
    others = tuple(line.draft.id for line in lines if line is not latest)
    kept = work.alerts.get(latest.draft.alert_id) if latest.draft.alert_id else None
    if kept is None or not kept.told:
        return ToDecide(latest, others)
    told = spoken(kept.told, sight.officer.language)
    return ToDecide(latest, others, told.headline, told.severity)


def withdrawn(work: Work, sight: Sight, now: datetime) -> tuple[Withdrawn, ...]:
    """Warnings that stand in sight and that the latest message of their alert no longer
    backs."""
    found: dict[tuple[int, int], list[Village]] = {}
    alerts = cache(work.alerts.get)  # a warning is of many villages, and this is on every page
    for alert, draft_id, village_id in _standing(work, alerts, sight, now):
        latest = _latest(alerts, alert)
        village = sight.village(village_id)
        if latest.id != alert.id and village and village_id not in latest.village_ids:
            found.setdefault((latest.id, draft_id), []).append(village)
    return tuple(Withdrawn(*key, tuple(villages)) for key, villages in found.items())


def _standing(
    work: Work, alerts: Alerts, sight: Sight, now: datetime
) -> Iterator[tuple[KeptAlert, int, int]]:
    """Alert, draft and village of each warning that stands and came from an alert."""
    drafts = cache(work.drafts.get)
    for given in work.drafts.given(sight.village_ids, ends_after=now):
        draft = drafts(given.draft_id) if given.stands(now) else None
        if draft is None or draft.alert_id is None or draft.decision is not Decision.SENT:
            continue
        alert = alerts(draft.alert_id)
        if alert is not None and alert.replaced_by is not None:
            yield alert, draft.id, given.village_id


def _latest(alerts: Alerts, alert: KeptAlert) -> KeptAlert:
    seen = {alert.id}
    while alert.replaced_by is not None and alert.replaced_by not in seen:
        seen.add(alert.replaced_by)
        later = alerts(alert.replaced_by)
        if later is None:
            break
        alert = later
    return alert


def standing_here(
    work: Work, sight: Sight, villages: Iterable[Village], now: datetime
) -> tuple[StormLine, ...]:
    """Warnings that stand in some villages of an officer, one line a storm."""
    wanted = {village.id for village in villages}
    found = (line for line in storms(work, sight, now) if line.stands)
    return tuple(
        line for line in found if any(village.id in wanted for village in line.villages)
    )
