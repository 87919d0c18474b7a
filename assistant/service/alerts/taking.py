"""Official alerts: one message is read, kept, and followed to a draft or a warning.

What was taken once is never taken again: neither the same bytes nor the same sender,
identifier and time, from whatever source.
"""

from collections.abc import Collection
from dataclasses import replace
from datetime import datetime
from hashlib import blake2b

from assistant.alerts import (
    Alert,
    AlertOutcome,
    Faulty,
    Info,
    JudgedAlert,
    Threat,
    judge,
    read_alert,
)
from assistant.dialogue.rain_hours import longest
from assistant.service.alerts.chain import acts, follow, replaces
from assistant.service.alerts.mapping import danger_of
from assistant.service.alerts.notice import tell_of_draft, tell_of_end
from assistant.service.audit import TrailAct, note
from assistant.service.house import House
from assistant.service.storms import drafts
from assistant.service.storms.given import Given, settle_between, still_warned
from assistant.service.storms.warnings import give_all_clear
from assistant.store import (
    AlertCertainty,
    AlertWords,
    Became,
    Draft,
    DraftSource,
    KeptAlert,
    Work,
)

ONE_AT_A_TIME = "official alerts"  # what transactions lock that take one


def take_alert(house: House, raw: bytes, source: str, now: datetime) -> KeptAlert | None:
    """Takes one message; None for one that was taken before.

    Args:
        source: where it was read from, as it is shown.
    """
    digest = blake2b(raw, digest_size=16).hexdigest()
    with house.store.look() as work:
        if work.alerts.has_digest(digest):
            return None
    found = read_alert(raw)
    with house.store.work() as work:
        work.lock(ONE_AT_A_TIME)
        if work.alerts.has_digest(digest):
            return None
        if isinstance(found, Faulty):
            return work.alerts.add(_faulty(found, source, now), raw, digest)
        if work.alerts.of(found.key):
            return None
        return _take(work, house, found, raw, digest, source, now)


def dry(house: House, found: Alert, now: datetime) -> JudgedAlert:
    """What a message would come to, by itself: nothing is kept."""
    with house.store.look() as work:
        return judge(found, house.alert_rules, work.alerts.places(), now)


def _take(
    work: Work, house: House, alert: Alert, raw: bytes, digest: str, source: str, now: datetime
) -> KeptAlert:
    judged = judge(alert, house.alert_rules, work.alerts.places(), now)
    kept = _sealed(house, _kept(alert, judged, source, now), raw, now)
    newer = work.alerts.replacing(alert.key) if acts(alert) else None
    if newer is not None:
        kept = replace(kept, became=Became.REPLACED, replaced_by=newer)
    replaced = () if kept.is_forged else replaces(alert)
    kept = work.alerts.add(kept, raw, digest, replaced)
    follow(work, kept, replaced, now)
    warned = still_warned(work, kept.id, now)
    if newer is None:
        inside = lead_on(work, house, kept, judged, warned, now)
    else:
        inside = settle_between(work, kept, now)
    over = {key: warned[key] for key in warned if key not in inside}
    _end(work, house, over, now, cleared=by_itself(house, kept))
    found = work.alerts.get(kept.id) or kept
    if found.became in (Became.DRAFTED, Became.SENT, Became.CANCELS):
        note(work, None, TrailAct.ALERT_TAKEN, now, detail=f"{kept.identifier}: {found.became}")
    return found


def by_itself(house: House, kept: KeptAlert) -> bool:
    """Whether something follows without an officer: where keys are set, only what one of them
    has signed."""
    return house.alerts_go_out and (house.check_alert is None or bool(kept.sealed_by))


def _sealed(house: House, kept: KeptAlert, raw: bytes, now: datetime) -> KeptAlert:
    """With whose key it is signed, where keys are set."""
    if house.check_alert is None or not kept.signed:
        return kept
    return replace(kept, sealed_by=house.check_alert(raw, now) or "")


def lead_on(
    work: Work,
    house: House,
    kept: KeptAlert,
    judged: JudgedAlert,
    warned: dict[int, list[Given]],
    now: datetime,
) -> set[int]:
    """A draft for each danger, sent by the setting; the villages that are warned of the same
    from an earlier message are left as they are. Gives the villages still in danger."""
    if judged.outcome is not AlertOutcome.MATTERS:
        return set()
    became, inside = Became.UNCHANGED, set[int]()
    for threat in judged.threats:
        inside.update(threat.place_ids)
        fresh = [
            each for each in threat.place_ids if not _same(threat, warned.get(each, ()), now)
        ]
        if not fresh:
            continue
        draft = drafts.draft(work, _draft(house, kept, threat, fresh, now))
        sent = by_itself(house, kept) and drafts.send(work, house, draft.id, now)
        became = Became.SENT if sent else Became.DRAFTED
        tell_of_draft(work, house, draft, threat, sent=sent, now=now)
    work.alerts.became(kept.id, became)
    return inside


def _same(threat: Threat, given: Collection[Given], now: datetime) -> bool:
    """Whether a village was warned already of these hours; what is past of them counts not."""
    danger = danger_of(threat)
    ends_at = min(threat.ends_at, threat.starts_at + longest(danger))
    hours = (max(threat.starts_at, now), ends_at)
    return any(
        (max(draft.starts_at, now), draft.ends_at) == hours
        for draft, _ in given
        if draft.danger == danger
    )


def _end(
    work: Work, house: House, over: dict[int, list[Given]], now: datetime, *, cleared: bool
) -> None:
    """Villages that are warned and in no danger now: the all-clear, or the officer's word."""
    if not over:
        return
    if cleared:
        for given in over.values():
            give_all_clear(work, house, given[0][1].id, now)
    event = next(iter(over.values()))[0][0].hazard
    tell_of_end(work, house, over, event, cleared=cleared, now=now)


# --- values ----------------------------------------------------------------------------------


def _draft(
    house: House, kept: KeptAlert, threat: Threat, village_ids: list[int], now: datetime
) -> Draft:
    return Draft(
        village_ids=tuple(village_ids),
        starts_at=threat.starts_at,
        ends_at=threat.ends_at,
        created_at=now,
        certainty=AlertCertainty(threat.certainty.lower()),
        danger=danger_of(threat),
        hazard=threat.told(house.languages[0]).event,
        source=DraftSource.ALERT,
        alert_id=kept.id,
    )


def _faulty(found: Faulty, source: str, now: datetime) -> KeptAlert:
    bare = KeptAlert(source=source, received_at=now, became=Became.FAULTY)
    if found.key is None:
        return bare
    key = found.key
    return replace(bare, sender=key.sender, identifier=key.identifier, sent=key.sent)


def _kept(alert: Alert, judged: JudgedAlert, source: str, now: datetime) -> KeptAlert:
    threats = judged.threats
    inside = {place for threat in threats for place in threat.place_ids}
    matters = judged.outcome is AlertOutcome.MATTERS
    return KeptAlert(
        source=source,
        received_at=now,
        became=Became.DRAFTED if matters else Became(judged.outcome.value),
        sender=alert.key.sender,
        identifier=alert.key.identifier,
        sent=alert.key.sent,
        status=alert.status,
        kind=alert.kind,
        scope=alert.scope,
        signed=alert.signed,
        told=tuple(map(_told, alert.infos)),
        village_ids=tuple(sorted(inside)),
        starts_at=min((threat.starts_at for threat in threats), default=None),
        ends_at=max((threat.ends_at for threat in threats), default=None),
    )


def _told(info: Info) -> AlertWords:
    return AlertWords(
        language=info.language,
        event=info.event,
        headline=info.headline,
        urgency=info.urgency,
        severity=info.severity,
        certainty=info.certainty,
        area="; ".join(area.words for area in info.areas),
        sender_name=info.sender_name,
    )
