"""What the seasons of a village gave: its establishment, and where seedlings fell short."""

from collections.abc import Collection
from dataclasses import dataclass

from assistant.agronomy.season.outcome import Learned, SeasonOutcome, learned_by_practice
from assistant.service.house import House
from assistant.store import Work


@dataclass(frozen=True)
class VillageSeasons:
    """The results of a village's nurseries, the oldest first, and what is learned from them.

    `learned` is by practice, empty before the first result; areas are in m2.
    """

    outcomes: tuple[SeasonOutcome, ...]
    planned_area_m2: float
    planted_area_m2: float
    short: int
    with_mats_left: int
    resown: int
    learned: tuple[Learned, ...]


def village_seasons(work: Work, house: House, village_ids: Collection[int]) -> VillageSeasons:
    """The seasons of all farmers of these villages taken together."""
    outcomes = work.seasons.in_villages(village_ids)
    return VillageSeasons(
        outcomes=outcomes,
        planned_area_m2=sum(each.field_area_m2 for each in outcomes),
        planted_area_m2=sum(each.planted_area_m2 for each in outcomes),
        short=sum(each.is_short for each in outcomes),
        with_mats_left=sum(each.mats_left > 0 for each in outcomes),
        resown=sum(each.resown for each in outcomes),
        learned=learned_by_practice(outcomes, house.store.practices.values()),
    )


def seasons_of_villages(house: House, village_ids: Collection[int]) -> VillageSeasons:
    """As `village_seasons`, in a transaction of its own, for a page."""
    with house.store.work() as work:
        return village_seasons(work, house, village_ids)
