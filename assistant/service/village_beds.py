"""What an officer sets for the beds of a village: kinds offered, and the mean temperature."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from assistant.agronomy.constants import LEAF_COLDEST_C, LEAF_HOTTEST_C, WARMTH_HOLDS_D
from assistant.agronomy.growth.warmth import Warmth, is_mean_c, told_since
from assistant.agronomy.practices import MAT
from assistant.people import Village
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.climate import follow_warmth, is_climate, set_climate
from assistant.service.days import local_date
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.soaking import move_soaking
from assistant.store import Work


@dataclass(frozen=True)
class OfferedKind:
    """One kind of bed: whether the village is offered it, and whether that can be changed."""

    code: str
    name: str
    offered: bool
    fixed: bool


@dataclass(frozen=True)
class VillageBeds:
    """The page's part: kinds of bed, the latest temperature [C], and what may be entered."""

    village: Village
    kinds: tuple[OfferedKind, ...]
    warmth: Warmth | None
    today: date
    coldest_c: float = LEAF_COLDEST_C.value
    hottest_c: float = LEAF_HOTTEST_C.value
    holds_d: int = int(WARMTH_HOLDS_D.value)


class WarmthNotKept(StrEnum):
    """Why a temperature was not kept."""

    DEGREES = "degrees"
    DAY = "day"
    CLIMATE = "climate"


def village_beds(
    house: House, sight: Sight, village_id: int, now: datetime
) -> VillageBeds | None:
    """The beds of a village; None for one that is not in sight."""
    village = sight.village(village_id)
    if village is None:
        return None
    today, language = local_date(now, village.zone), sight.officer.language
    with house.store.look() as work:
        warmth = work.warmth.latest(village.id, told_since(today))
    kinds = tuple(
        OfferedKind(code, practice.name(language), code in village.practices, code == MAT.code)
        for code, practice in house.store.practices.items()
    )
    return VillageBeds(village, kinds, warmth, today)


def set_practices(
    house: House, sight: Sight, village_id: int, codes: Collection[str], now: datetime
) -> tuple[str, ...] | None:
    """Offers these kinds of bed from now on, always with the mat; their names. Plans that
    stand are not changed. None for a village not in sight."""
    village = sight.village(village_id)
    if village is None:
        return None
    known = house.store.practices
    offered = (MAT.code, *(code for code in known if code in codes and code != MAT.code))
    with house.store.work() as work:
        work.people.offer_practices(village.id, offered)
        about = Subject(village_id=village.id)
        note(work, sight.officer.id, TrailAct.PRACTICES_SET, now, about, ", ".join(offered))
    return tuple(known[code].name(sight.officer.language) for code in offered)


def note_warmth(
    house: House,
    sight: Sight,
    village_id: int,
    *,
    mean_c: float | None,
    day: date | None,
    now: datetime,
) -> Warmth | WarmthNotKept | None:
    """Keeps a mean temperature [C] of a day; None for a village not in sight."""
    village = sight.village(village_id)
    if village is None:
        return None
    if mean_c is None or not is_mean_c(mean_c):
        return WarmthNotKept.DEGREES
    today = local_date(now, village.zone)
    if day is None or not told_since(today) <= day <= today:
        return WarmthNotKept.DAY
    warmth = Warmth(day, mean_c)
    with house.store.work() as work:
        keep_warmth(work, village.id, warmth, sight.officer.id, now)
        move_soaking(work, house, village.id, warmth, now)
        follow_warmth(work, house, village, now)
    return warmth


def note_climate(
    house: House, sight: Sight, village_id: int, months: tuple[float, ...] | None, now: datetime
) -> Village | WarmthNotKept | None:
    """Keeps the means of the months [C], or that nobody knows them; None for a village not in
    sight."""
    village = sight.village(village_id)
    if village is None:
        return None
    if months is not None and not is_climate(months):
        return WarmthNotKept.CLIMATE
    with house.store.work() as work:
        return set_climate(work, house, village, months, now, sight.officer.id)


def keep_warmth(
    work: Work, village_id: int, warmth: Warmth, officer_id: int, now: datetime
) -> None:
    """Keeps a mean temperature, and who entered it, in a transaction that is open."""
    work.warmth.save(village_id, warmth, officer_id, now)
    detail = f"{warmth.day.isoformat()}: {warmth.mean_c:g} C"
    note(work, officer_id, TrailAct.WARMTH_KEPT, now, Subject(village_id=village_id), detail)
