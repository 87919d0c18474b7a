"""What is kept of everybody when a season is over, to hold one playing against another."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.service.house import House
from assistant.store import Work
from scenarios.season import Season


@dataclass(frozen=True)
class Ending:
    """One farmer and the nurseries, open and closed, as they are kept at the end."""

    language: str | None
    village: str | None
    agreed: bool
    stopped: bool
    nurseries: tuple[Nursery, ...]


def endings(season: Season, house: House) -> Mapping[str, Ending | None]:
    """By name; None for a phone that is not enrolled."""
    with house.store.work() as work:
        return {
            person.name: _ending(work, work.people.farmer(person.phone))
            for person in season.people.values()
        }


def _ending(work: Work, farmer: Farmer | None) -> Ending | None:
    if farmer is None:
        return None
    village = work.people.village(farmer.village_id) if farmer.village_id else None
    # Ids tell only who came first.
    nurseries = tuple(
        replace(each, id=0, farmer_id=0)
        for each in work.nurseries.of_farmer(farmer.id, open_only=False)
    )
    return Ending(
        language=farmer.language,
        village=village.name if village else None,
        agreed=farmer.consent_at is not None,
        stopped=farmer.stopped_at is not None,
        nurseries=nurseries,
    )
