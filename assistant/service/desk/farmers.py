"""The farmers of an officer's villages, in pages, found by name or number."""

from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.stages import Stage
from assistant.people import Farmer, Village
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.morning import SHOWN_D
from assistant.service.season.counts import CountedNursery, counted_alike, strokes_of
from assistant.service.sight import Sight
from assistant.service.standing import DEAD_FOR, RollFilter, silent_before, standing_says
from assistant.store import HeldTo, ListedBed, Work
from assistant.wording.message import Say

ON_A_PAGE = 50
LONGEST_SEARCH = 40


@dataclass(frozen=True)
class ListedFarmer:
    """One farmer in the list, with the open nurseries and the days they are at."""

    farmer: Farmer
    village: Village | None
    beds: tuple[tuple[ListedBed, int], ...]
    stands: Say | None = None


@dataclass(frozen=True)
class FarmerList:
    """One page of the list."""

    villages: tuple[Village, ...]
    chosen: int | None
    search: str
    listed: tuple[ListedFarmer, ...]
    in_all: int
    page: int
    pages: int
    standing: RollFilter | None = None
    stage: Stage | None = None


def list_farmers(
    house: House,
    sight: Sight,
    now: datetime,
    *,
    village_id: int | None = None,
    search: str = "",
    page: int = 1,
    standing: RollFilter | None = None,
    stage: Stage | None = None,
) -> FarmerList:
    """Farmers by village and name, those that match a search, stand in a way and have a nursery
    at a stage."""
    search = " ".join(search.split())[:LONGEST_SEARCH]
    chosen = sight.village(village_id)
    scope = sight.scope(village_id)
    with house.store.look() as work:
        held = _held(work, house, sight, now, village_id, standing, stage)
        in_all = work.roll.count(scope, search, held)
        pages = max(1, -(-in_all // ON_A_PAGE))
        page = min(max(page, 1), pages)
        farmers = work.roll.farmers(scope, search, ON_A_PAGE, (page - 1) * ON_A_PAGE, held)
        ids = [farmer.id for farmer in farmers]
        beds, enrolments = work.roll.beds(ids), work.enrolments.of(ids)
    by_farmer: dict[int, list[ListedBed]] = {}
    for bed in beds:
        by_farmer.setdefault(bed.farmer_id, []).append(bed)
    listed = tuple(
        replace(
            _listed(
                farmer, by_farmer.get(farmer.id, []), sight, _today(house, sight, farmer, now)
            ),
            stands=standing_says(
                farmer, enrolments.get(farmer.id), sight.zone(farmer.village_id, house.zone)
            ),
        )
        for farmer in farmers
    )
    return FarmerList(
        villages=sight.villages,
        chosen=chosen.id if chosen else None,
        search=search,
        listed=listed,
        in_all=in_all,
        page=page,
        pages=pages,
        standing=standing,
        stage=stage,
    )


def _held(
    work: Work,
    house: House,
    sight: Sight,
    now: datetime,
    village_id: int | None,
    standing: RollFilter | None,
    stage: Stage | None,
) -> HeldTo | None:
    """To whom the list is held; None: to everybody in scope."""
    if standing is None and stage is None:
        return None
    held = HeldTo(standing or "", sight.officer.id, silent_before(now))
    scope = sight.scope(village_id)
    if standing is RollFilter.DEAD:
        dead = work.desk.dead(scope, now - DEAD_FOR)
        held = replace(held, people=[each.farmer.id for each in dead])
    if standing is RollFilter.UNANSWERED:
        shown = TASKS.codes(lambda row: row.silence_shown)
        since = now.date() - timedelta(days=SHOWN_D)
        held = replace(held, beds=(work.watch.silent(scope, shown, since),))
    if stage is not None:
        season = counted_alike(work, house, sight, now, village_id)
        meant = [each for each in season if each.one.stage is stage and _open(each.one)]
        at_it = [each.id for each in strokes_of(work, house, sight, now, meant)]
        held = replace(held, beds=(*held.beds, at_it))
    return held


def _open(nursery: CountedNursery) -> bool:
    """Whether it stands in the list, which names open nurseries only."""
    return not nursery.stroke.closed


def _listed(farmer: Farmer, beds: list[ListedBed], sight: Sight, today: date) -> ListedFarmer:
    days = tuple((bed, (today - bed.sow_date).days) for bed in beds)
    return ListedFarmer(farmer, sight.village(farmer.village_id), days)


def _today(house: House, sight: Sight, farmer: Farmer, now: datetime) -> date:
    return local_date(now, sight.zone(farmer.village_id, house.zone))
