"""Whether an alert matters here, and for which places: thresholds, time, and area.

The thresholds are the programme's. They choose among the national service's own words; none of
those words is changed.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum

from assistant.alert_terms import MessageType, Rules, Scope, Status, spoken
from assistant.alerts.places import held
from assistant.alerts.values import Alert, Area, Info
from assistant.places import VillagePlace


class AlertOutcome(StrEnum):
    """What an alert says to us, before anything is done with it."""

    NOT_ACTUAL = "not_actual"  # an exercise, a test, a draft: shown, never sent
    NOT_PUBLIC = "not_public"
    NO_WARNING = "no_warning"  # an Ack, an Error, or nothing said
    CANCELS = "cancels"
    EXPIRED = "expired"
    ALL_CLEAR = "all_clear"  # the service says that the danger is over
    OTHER_HAZARD = "other_hazard"
    BELOW = "below"  # under the thresholds
    ONLY_WORDS = "only_words"  # an area that no program can find on a map
    ELSEWHERE = "elsewhere"
    MATTERS = "matters"


@dataclass(frozen=True)
class Threat:
    """One danger, told in one or more languages, and the places in it.

    holds_until: when what is told expires; a service may mean to tell more before it begins
    """

    infos: tuple[Info, ...]
    starts_at: datetime
    ends_at: datetime
    holds_until: datetime
    place_ids: tuple[int, ...] = ()

    @property
    def certainty(self) -> str:
        """In the standard's word."""
        return self.infos[0].certainty

    def told(self, language: str) -> Info:
        """What is said in a language; else in English; else what was said first."""
        return spoken(self.infos, language)


@dataclass(frozen=True)
class JudgedAlert:
    """What an alert comes to; threats only where it matters."""

    outcome: AlertOutcome
    threats: tuple[Threat, ...] = ()


def judge(
    alert: Alert, rules: Rules, places: Mapping[int, VillagePlace], now: datetime
) -> JudgedAlert:
    """What an alert comes to at `now`, for places by their ids."""
    by_itself = _by_itself(alert)
    if by_itself is not None:
        return JudgedAlert(by_itself)
    left = _threats(alert, rules)
    for outcome, holds in (
        (AlertOutcome.EXPIRED, lambda threat: threat.holds_until > now),
        (AlertOutcome.ALL_CLEAR, lambda threat: not _over(threat)),
        (AlertOutcome.OTHER_HAZARD, lambda threat: _of_hazard(threat, rules)),
        (AlertOutcome.BELOW, lambda threat: _strong(threat, rules)),
        (AlertOutcome.ONLY_WORDS, lambda threat: any(area.drawn for area in _areas(threat))),
    ):
        left = [threat for threat in left if holds(threat)]
        if not left:
            return JudgedAlert(outcome)
    placed = [_placed(threat, places) for threat in left]
    found = tuple(threat for threat in placed if threat.place_ids)
    return (
        JudgedAlert(AlertOutcome.MATTERS, found)
        if found
        else JudgedAlert(AlertOutcome.ELSEWHERE)
    )


def _by_itself(alert: Alert) -> AlertOutcome | None:
    """What its head alone comes to, whatever the danger."""
    if alert.status is not Status.ACTUAL:
        return AlertOutcome.NOT_ACTUAL
    if alert.scope is not Scope.PUBLIC:
        return AlertOutcome.NOT_PUBLIC
    if alert.kind in (MessageType.ACK, MessageType.ERROR):
        return AlertOutcome.NO_WARNING
    if alert.kind is MessageType.CANCEL:
        return AlertOutcome.CANCELS
    return None if alert.infos else AlertOutcome.NO_WARNING


def _threats(alert: Alert, rules: Rules) -> list[Threat]:
    """The dangers of an alert: blocks that say the same in several languages are one."""
    same: dict[object, list[Info]] = {}
    for info in alert.infos:
        same.setdefault(_sense(info), []).append(info)
    return [_threat(tuple(infos), alert.key.sent, rules) for infos in same.values()]


def _sense(info: Info) -> object:
    shapes = tuple((area.polygons, area.circles, area.geocodes) for area in info.areas)
    times = (info.effective, info.onset, info.expires)
    return (info.categories, info.urgency, info.severity, info.certainty, times, shapes)


def _threat(infos: tuple[Info, ...], sent: datetime, rules: Rules) -> Threat:
    first = infos[0]
    starts_at = first.onset or first.effective or sent
    later = max(starts_at, sent) + rules.lasts
    ends_at = first.expires if first.expires and first.expires > starts_at else later
    return Threat(infos, starts_at, ends_at, first.expires or later)


def _over(threat: Threat) -> bool:
    return any("AllClear" in info.responses for info in threat.infos)


def _of_hazard(threat: Threat, rules: Rules) -> bool:
    return any(
        not rules.categories.isdisjoint(info.categories) and _named(info, rules.events)
        for info in threat.infos
    )


def _named(info: Info, events: tuple[str, ...]) -> bool:
    said = f"{info.event}\n{info.headline}".casefold()
    codes = {f"{code.name}={code.value}".casefold() for code in info.event_codes}
    return not events or any(
        event.casefold() in codes or event.casefold() in said for event in events
    )


def _strong(threat: Threat, rules: Rules) -> bool:
    info = threat.infos[0]
    return (
        info.severity in rules.severities
        and info.urgency in rules.urgencies
        and info.certainty in rules.certainties
    )


def _areas(threat: Threat) -> Iterable[Area]:
    return threat.infos[0].areas


def _placed(threat: Threat, places: Mapping[int, VillagePlace]) -> Threat:
    inside = {key for area in _areas(threat) for key in held(area, places)}
    return replace(threat, place_ids=tuple(sorted(inside)))
