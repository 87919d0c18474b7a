"""A warning as an officer asks for it on the page: of what, where, when, how sure."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from enum import StrEnum
from typing import Any
from zoneinfo import ZoneInfo

from assistant.agronomy.dangers.rows import RAIN
from assistant.dialogue.rain_hours import HoursFault, hours_fault
from assistant.people import Village
from assistant.places import Point
from assistant.service.house import House
from assistant.service.places import point_of, within
from assistant.service.sight import Sight
from assistant.service.storms import drafts
from assistant.store import AlertCertainty as AlertCertainty  # for the page too
from assistant.store import Draft

LONGEST_ADDED = 100  # characters of an officer's own words in a warning
MOST_KM = 500.0
ONE_DAY = timedelta(days=1)
SOON = timedelta(hours=1)  # hours are typed roughly: rain "already" as the next full hour


class Fault(StrEnum):
    """Why no draft was made."""

    NO_VILLAGE = "no_village"
    NONE_NEAR = "none_near"
    NO_CENTRE = "no_centre"
    NO_DISTANCE = "no_distance"
    NO_HOURS = "no_hours"
    LONG_WORDS = "long_words"
    BEGINS_LATER = "begins_later"


@dataclass(frozen=True)
class Wanted:
    """What was filled in; None where a field was empty or not to be read.

    `everywhere`: all villages in sight. `km` is the distance from `centre`, or from the village
    `centre_id`; `ranged`: a distance was asked for. `instead_of` is a draft that this one takes
    the place of.
    """

    village_ids: Collection[int]
    starts_on: date | None
    starts: time | None
    ends_on: date | None
    ends: time | None
    certainty: AlertCertainty = AlertCertainty.LIKELY
    words: str = ""
    danger: str = RAIN
    everywhere: bool = False
    ranged: bool = False
    km: float | None = None
    centre: Point | None = None
    centre_id: int | None = None
    instead_of: int | None = None


@dataclass(frozen=True)
class Made:
    """A draft was made; `unplaced` villages were not looked at, since nobody has said where
    they lie."""

    draft_id: int
    unplaced: tuple[Village, ...] = field(default=())


def make(
    house: House, sight: Sight, wanted: Wanted, now: datetime
) -> Made | tuple[Fault | HoursFault, ...]:
    """Makes a draft of what was filled in, or says all that is wrong with it."""
    faults: list[Fault | HoursFault] = []
    centre = _centre(sight, wanted)
    if wanted.ranged:
        if centre is None:
            faults.append(Fault.NO_CENTRE)
        if wanted.km is None or not 0 < wanted.km <= MOST_KM:
            faults.append(Fault.NO_DISTANCE)
    villages = _villages(sight, wanted, centre)
    if not villages and not faults:
        faults.append(Fault.NONE_NEAR if wanted.ranged else Fault.NO_VILLAGE)
    span = _span(wanted, _zone(house, villages))
    fault = _hours_fault(span, wanted, now)
    if fault is not None:
        faults.append(fault)
    if len(wanted.words) > LONGEST_ADDED:
        faults.append(Fault.LONG_WORDS)
    if faults or span is None:
        return tuple(faults)
    made = _draft(house, sight, wanted, villages, span, now)
    unplaced = tuple(each for each in sight.villages if point_of(each) is None)
    missed = tuple(each for each in unplaced if each not in villages) if wanted.ranged else ()
    return Made(made.id, missed)


def _hours_fault(
    span: tuple[datetime, datetime] | None, wanted: Wanted, now: datetime
) -> Fault | HoursFault | None:
    """What is wrong with the hours, or with them and how sure it is."""
    if span is None:
        return Fault.NO_HOURS
    later = wanted.certainty is AlertCertainty.OBSERVED and span[0] > now + SOON
    return hours_fault(*span, now, wanted.danger) or (Fault.BEGINS_LATER if later else None)


def _draft(
    house: House,
    sight: Sight,
    wanted: Wanted,
    villages: Iterable[Village],
    span: tuple[datetime, datetime],
    now: datetime,
) -> Draft:
    with house.store.work() as work:
        old = work.drafts.get(wanted.instead_of) if wanted.instead_of is not None else None
        if old is not None and may_change(sight, old):
            drafts.drop(work, old.id, now, sight.officer, sight.village_ids)
        else:
            old = None
        return drafts.draft(
            work,
            Draft(
                village_ids=tuple(village.id for village in villages),
                starts_at=span[0],
                ends_at=span[1],
                created_at=now,
                certainty=wanted.certainty,
                danger=wanted.danger,
                words=" ".join(wanted.words.split()),
                made_by=sight.officer.id,
                **_of_alert(old),
            ),
        )


def may_change(sight: Sight, draft: Draft) -> bool:
    """An officer's own draft, or that of an official alert for villages in sight, as long as
    nobody has decided on it."""
    own = draft.made_by == sight.officer.id or draft.alert_id is not None
    here = any(each in sight.village_ids for each in draft.village_ids)
    return own and here and draft.decided_at is None


def _of_alert(old: Draft | None) -> dict[str, Any]:
    """A changed draft of an alert stays one: it goes when the service takes its alert back."""
    if old is None or old.alert_id is None:
        return {}
    return {"alert_id": old.alert_id, "hazard": old.hazard, "source": old.source}


def _centre(sight: Sight, wanted: Wanted) -> Point | None:
    if wanted.centre is not None:
        return wanted.centre
    village = sight.village(wanted.centre_id)
    return point_of(village) if village else None


def _villages(sight: Sight, wanted: Wanted, centre: Point | None) -> tuple[Village, ...]:
    """Those that were ticked, and those within the distance."""
    near: tuple[Village, ...] = ()
    if wanted.ranged and centre is not None and wanted.km is not None:
        near = within(sight.villages, centre, wanted.km)
    return tuple(
        each
        for each in sight.villages
        if wanted.everywhere or each.id in wanted.village_ids or each in near
    )


def _zone(house: House, villages: Collection[Village]) -> ZoneInfo:
    """The zone in which hours are read: the villages' own where they share one."""
    zones = {village.zone for village in villages}
    return ZoneInfo(zones.pop() if len(zones) == 1 else house.zone)


def _span(wanted: Wanted, zone: ZoneInfo) -> tuple[datetime, datetime] | None:
    """The hours; an end on the same day that is not after the start is on the next."""
    if wanted.starts_on is None or wanted.starts is None or wanted.ends is None:
        return None
    starts_at = datetime.combine(wanted.starts_on, wanted.starts, zone)
    ends_on = wanted.ends_on or wanted.starts_on
    ends_at = datetime.combine(ends_on, wanted.ends, zone)
    if ends_at <= starts_at and ends_on == wanted.starts_on:
        ends_at += ONE_DAY
    return starts_at, ends_at
