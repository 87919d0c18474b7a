"""What the page of official alerts shows, and the all-clear that can be given there.

Alerts are public: every officer sees all of them. Of their villages each sees those they serve.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime

from assistant.alert_terms import CATEGORIES, CERTAINTIES, SEVERITIES, URGENCIES, Rules, spoken
from assistant.alerts import Alert, AlertFault, Faulty, read_alert
from assistant.alerts.places import held, turn
from assistant.people import Village
from assistant.places import VillagePlace
from assistant.service.alerts.area_map import Drawing, draw
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.storms.given import still_warned
from assistant.service.storms.warnings import give_all_clear
from assistant.store import AlertWords, Became, Decision, Draft, KeptAlert, SourceLook, Work

PAGE_LINES = 30
# What concerns our villages, or may.
OURS = frozenset(
    {
        Became.FAULTY,
        Became.ONLY_WORDS,
        Became.CANCELS,
        Became.REPLACED,
        Became.UNCHANGED,
        Became.DRAFTED,
        Became.SENT,
    }
)


@dataclass(frozen=True)
class AlertLine:
    """One alert in the list: what it said in the officer's language, and their villages in it.

    more: how many villages of others are in it
    decision, decided_at: what an officer did with its last draft of these villages
    """

    kept: KeptAlert
    told: AlertWords | None
    villages: tuple[str, ...]
    more: int
    decision: Decision | None = None
    decided_at: datetime | None = None


@dataclass(frozen=True)
class Thresholds:
    """The standard's words that lead to a warning, in the order of the standard."""

    categories: tuple[str, ...]
    severities: tuple[str, ...]
    urgencies: tuple[str, ...]
    certainties: tuple[str, ...]


def thresholds_of(rules: Rules) -> Thresholds:
    """Those of a programme."""
    return Thresholds(
        tuple(each for each in CATEGORIES if each in rules.categories),
        tuple(each for each in SEVERITIES if each in rules.severities),
        tuple(each for each in URGENCIES if each in rules.urgencies),
        tuple(each for each in CERTAINTIES if each in rules.certainties),
    )


@dataclass(frozen=True)
class AlertsPage:
    """The list, the latest first; `older` is where the next page begins.

    unplaced: the officer's villages that no alert can find
    """

    lines: tuple[AlertLine, ...]
    sources: tuple[SourceLook, ...]
    rules: Rules
    thresholds: Thresholds
    goes_out: bool
    unplaced: tuple[Village, ...]
    only_ours: bool
    older: int | None


@dataclass(frozen=True)
class DraftLine:
    """What one draft of an alert came to, for the officer's villages in it."""

    draft: Draft
    villages: tuple[str, ...]


@dataclass(frozen=True)
class AlertPage:
    """One alert, read again from its message.

    still: the officer's villages where a warning stands that the service no longer backs
    swapped: villages that would be in its area if latitude and longitude changed places
    """

    line: AlertLine
    alert: Alert | None
    faults: tuple[AlertFault, ...]
    drafts: tuple[DraftLine, ...]
    still: tuple[str, ...]
    later: KeptAlert | None
    earlier: tuple[KeptAlert, ...]
    drawing: Drawing | None
    swapped: tuple[str, ...] = ()


def alerts_page(
    house: House, sight: Sight, *, before: int | None = None, only_ours: bool = False
) -> AlertsPage:
    """The alerts that came, where they are read, and what is made of them."""
    with house.store.look() as work:
        found = work.alerts.latest(
            PAGE_LINES + 1, before_id=before, became=OURS if only_ours else None
        )
        sources = work.alert_sources.all()
        places = work.alerts.places()
        shown = found[:PAGE_LINES]
        decided = work.drafts.decided([each.id for each in shown], sight.village_ids)
        lines = tuple(
            replace(_line(work, each, sight), decision=decision, decided_at=at)
            for each in shown
            for decision, at in (decided.get(each.id, (None, None)),)
        )
    return AlertsPage(
        lines=lines,
        sources=sources,
        rules=house.alert_rules,
        thresholds=thresholds_of(house.alert_rules),
        goes_out=house.alerts_go_out,
        unplaced=tuple(
            village for village in sight.villages if not places[village.id].findable
        ),
        only_ours=only_ours,
        older=found[PAGE_LINES - 1].id if len(found) > PAGE_LINES else None,
    )


def alert_page(house: House, sight: Sight, alert_id: int, now: datetime) -> AlertPage | None:
    """One alert; None where there is no such one."""
    with house.store.look() as work:
        kept = work.alerts.get(alert_id)
        if kept is None:
            return None
        found = read_alert(work.alerts.raw(alert_id) or b"")
        places = work.alerts.places()
        alert = found if isinstance(found, Alert) else None
        return AlertPage(
            line=_line(work, kept, sight),
            alert=alert,
            faults=found.faults if isinstance(found, Faulty) else (),
            drafts=_drafts(work, kept, sight),
            still=tuple(village.name for village, _ in _still(work, kept, sight, now)),
            later=work.alerts.get(kept.replaced_by) if kept.replaced_by else None,
            earlier=work.alerts.replaced(kept.id),
            drawing=_drawing(alert, kept, sight, places) if alert else None,
            swapped=_swapped(alert, sight, places) if alert and not kept.village_ids else (),
        )


def raw_alert(house: House, alert_id: int) -> bytes | None:
    """The message as it came; None where there is no such one."""
    with house.store.look() as work:
        return work.alerts.raw(alert_id)


def clear_after_alert(
    house: House, sight: Sight, alert_id: int, now: datetime
) -> tuple[str, ...] | None:
    """Ends the warnings of the officer's villages that an update or cancel no longer backs.

    Gives the names of those villages; None where there is no such alert.
    """
    with house.store.work() as work:
        kept = work.alerts.get(alert_id)
        if kept is None:
            return None
        found = _still(work, kept, sight, now)
        for village, warning_id in found:
            give_all_clear(work, house, warning_id, now)
            subject = Subject(village_id=village.id)
            note(work, sight.officer.id, TrailAct.WARNING_CLEARED, now, subject)
        return tuple(village.name for village, _ in found)


def _line(work: Work, kept: KeptAlert, sight: Sight) -> AlertLine:
    """A cancel mostly says nothing by itself; then it is shown by what it cancels."""
    names = _names(kept.village_ids, sight)
    says = kept.told or tuple(
        told for each in work.alerts.replaced(kept.id) for told in each.told
    )
    told = spoken(says, sight.officer.language) if says else None
    return AlertLine(kept, told, names, len(kept.village_ids) - len(names))


def _names(village_ids: Iterable[int], sight: Sight) -> tuple[str, ...]:
    seen = {village.id: village.name for village in sight.villages}
    return tuple(seen[each] for each in village_ids if each in seen)


def _drafts(work: Work, kept: KeptAlert, sight: Sight) -> tuple[DraftLine, ...]:
    lines = (
        DraftLine(draft, _names(draft.village_ids, sight))
        for draft in work.drafts.of_alert(kept.id)
    )
    return tuple(line for line in lines if line.villages)


def _still(
    work: Work, kept: KeptAlert, sight: Sight, now: datetime
) -> list[tuple[Village, int]]:
    """Villages in sight that are warned by an earlier message and not in this one's area."""
    found = []
    if kept.replaced_by is None:
        for village_id, given in still_warned(work, kept.id, now).items():
            village = sight.village(village_id)
            if village and village_id not in kept.village_ids:
                found.append((village, given[0][1].id))
    return found


def swapped_villages(house: House, alert: Alert) -> tuple[str, ...]:
    """Villages, by name, that would be in its area if latitude and longitude changed places."""
    with house.store.look() as work:
        ids = _turned(alert, work.alerts.places())
        return tuple(each.name for each in work.people.villages() if each.id in ids)


def _turned(alert: Alert, places: dict[int, VillagePlace]) -> set[int]:
    areas = [turned for info in alert.infos for area in info.areas if (turned := turn(area))]
    return {key for area in areas for key in held(area, places)}


def _swapped(alert: Alert, sight: Sight, places: dict[int, VillagePlace]) -> tuple[str, ...]:
    """A service that writes longitude first warns of the other side of the earth."""
    return _names(sorted(_turned(alert, places)), sight)


def _drawing(
    alert: Alert, kept: KeptAlert, sight: Sight, places: dict[int, VillagePlace]
) -> Drawing | None:
    marked = [
        (village.name, point, village.id in kept.village_ids)
        for village in sight.villages
        if (point := places[village.id].point) is not None
    ]
    return draw((area for info in alert.infos for area in info.areas), marked)
