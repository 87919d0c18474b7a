"""When to sow: the days that fit the water, the variety and the harvest, with their reasons.

A field can be planted once it is flooded, ploughed, harrowed and levelled; the seed is sown so
that its seedlings are then of a good age. The crop is ripe so many days after sowing as its
variety takes, and flowers `ripening_d` earlier. What cannot be met is said with the days that
are missing, and no day is made up.
"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from assistant.agronomy import constants as c
from assistant.agronomy.practices import MAT, Practice

RIPENS_D = (60, 260)  # from sowing to harvest, of any rice


class DayReason(StrEnum):
    """Why a day is among those that are told."""

    FIELD_READY = "field_ready"  # planted as soon as the field can be
    SOONEST = "soonest"  # as soon as seed can be soaked and sown
    FLOWERS_SAFE = "flowers_safe"  # the first that flowers late enough
    IN_HAND = "in_hand"  # planted, and days in hand on both sides
    LAST = "last"  # the last that is ripe, or flowers, in time


@dataclass(frozen=True)
class SowingNeeds:
    """What a sowing must fit; what is None is not asked for.

    Args:
        days: from sowing to maturity [days], None where not known
        water_from: water comes to the field
        harvest_before: the crop is to be ripe by then
        flower_from, flower_before: the safe time to flower
    """

    days: int | None = None
    water_from: dt.date | None = None
    harvest_before: dt.date | None = None
    flower_from: dt.date | None = None
    flower_before: dt.date | None = None

    @property
    def needs_days(self) -> bool:
        """Whether the variety's days must be known."""
        ends = (self.harvest_before, self.flower_from, self.flower_before)
        return any(end is not None for end in ends)


@dataclass(frozen=True)
class DayToSow:
    """One day to sow, and what follows; flowering and harvest need the variety's days."""

    sow: dt.date
    plant_from: dt.date
    plant_until: dt.date
    flowers: dt.date | None
    ripe: dt.date | None
    reason: DayReason


@dataclass(frozen=True)
class Sowings:
    """The days to sow, earliest first; where there is none, by how many days it fails."""

    first: dt.date | None
    last: dt.date | None
    days: tuple[DayToSow, ...]
    short_d: int = 0


def field_ready(water_from: dt.date) -> dt.date:
    """The first day on which a field can be planted after its water came."""
    work = c.FLOOD_BEFORE_PLOUGH_D.value + c.PLOUGH_BEFORE_D.value
    return water_from + dt.timedelta(days=int(work))


def _why_first(wanted: SowingNeeds, first: dt.date, practice: Practice) -> DayReason:
    """What makes a day the earliest."""
    if wanted.water_from is not None and first == _by_water(wanted.water_from, practice):
        return DayReason.FIELD_READY
    if wanted.flower_from is not None and wanted.days is not None:
        safe = wanted.flower_from - dt.timedelta(days=_to_flower(wanted.days))
        return DayReason.FLOWERS_SAFE if first == safe else DayReason.SOONEST
    return DayReason.SOONEST


def _by_water(water_from: dt.date, practice: Practice) -> dt.date:
    """The day to sow for a field that is planted as soon as its water lets it."""
    age = dt.timedelta(days=int(practice.window.assumed.value))
    return field_ready(water_from) - age


def sowings(wanted: SowingNeeds, today: dt.date, practice: Practice = MAT) -> Sowings:
    """Two or three days to sow: as early as can be, between, and as late as can be.

    With an end on one side only, the days lie a week apart from there. No day lies before
    today, since there must be time to soak.
    """
    first, last = _earliest(wanted, today, practice), _latest(wanted)
    if first is not None and last is not None and first > last:
        return Sowings(first, last, (), (first - last).days)
    why = DayReason.SOONEST if first is None else _why_first(wanted, first, practice)
    days = tuple(_day(on, each, wanted, practice) for on, each in _chosen(first, last, why))
    return Sowings(first, last, days)


def _earliest(wanted: SowingNeeds, today: dt.date, practice: Practice) -> dt.date | None:
    lead = today + dt.timedelta(days=int(-c.SOAK_DAY.value))
    ends = [lead] if wanted.needs_days or wanted.water_from else []
    if wanted.water_from is not None:
        ends.append(_by_water(wanted.water_from, practice))
    if wanted.flower_from is not None and wanted.days is not None:
        ends.append(wanted.flower_from - dt.timedelta(days=_to_flower(wanted.days)))
    return max(ends, default=None)


def _latest(wanted: SowingNeeds) -> dt.date | None:
    if wanted.days is None:
        return None
    ends = []
    if wanted.harvest_before is not None:
        ends.append(wanted.harvest_before - dt.timedelta(days=wanted.days))
    if wanted.flower_before is not None:
        ends.append(wanted.flower_before - dt.timedelta(days=_to_flower(wanted.days)))
    return min(ends, default=None)


def _to_flower(days: int) -> int:
    """Days from sowing to flowering of a variety."""
    return days - int(c.RIPENING_D.value)


def _chosen(
    first: dt.date | None, last: dt.date | None, why: DayReason
) -> tuple[tuple[dt.date, DayReason], ...]:
    week = dt.timedelta(days=7)
    if first is not None and last is not None:
        middle = first + (last - first) / 2
        found = ((first, why), (middle, DayReason.IN_HAND), (last, DayReason.LAST))
        return found if (last - first).days > 1 else found[:: len(found) - 1]
    if first is not None:
        ahead = ((first + n * week, DayReason.IN_HAND) for n in (1, 2))
        return ((first, why), *ahead)
    return ()


def _day(on: dt.date, reason: DayReason, wanted: SowingNeeds, practice: Practice) -> DayToSow:
    window, days = practice.window, wanted.days
    ripe = None if days is None else on + dt.timedelta(days=days)
    return DayToSow(
        sow=on,
        plant_from=on + dt.timedelta(days=int(window.first.value)),
        plant_until=on + dt.timedelta(days=int(window.last.value)),
        flowers=None if days is None else on + dt.timedelta(days=_to_flower(days)),
        ripe=ripe,
        reason=reason,
    )
