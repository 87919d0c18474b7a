"""What an officer may see: their own villages; a lead sees all, and farmers of no village."""

from dataclasses import dataclass
from functools import cached_property

from assistant.people import Officer, Village
from assistant.service.house import House
from assistant.store import Work


@dataclass(frozen=True)
class Sight:
    """One officer and the villages that are open to them, by name."""

    officer: Officer
    villages: tuple[Village, ...]

    @property
    def village_ids(self) -> tuple[int, ...]:
        """The ids of the villages."""
        return tuple(village.id for village in self.villages)

    @cached_property
    def _by_id(self) -> dict[int | None, Village]:
        return {village.id: village for village in self.villages}

    def sees(self, village_id: int | None) -> bool:
        """Whether a farmer of this village may be shown; of none, only to a lead."""
        if village_id is None:
            return self.officer.is_lead
        return village_id in self._by_id

    def village(self, village_id: int | None) -> Village | None:
        """The village of that id, where it is open to this officer."""
        return self._by_id.get(village_id)

    def scope(self, village_id: int | None = None) -> tuple[int, ...] | None:
        """What queries are held to: the one village that was asked for, or all that are open;
        None for a lead who asked for none, who also sees farmers of no village."""
        chosen = self.village(village_id)
        if chosen is not None:
            return (chosen.id,)
        return None if self.officer.is_lead else self.village_ids

    def zone(self, village_id: int | None, otherwise: str) -> str:
        """The time zone of a village."""
        village = self.village(village_id)
        return village.zone if village else otherwise


def served_villages(house: House) -> frozenset[int]:
    """Villages that an officer serves who is no lead."""
    with house.store.look() as work:
        return work.people.served()


def sight_of(work: Work, officer: Officer) -> Sight:
    """What this officer may see now."""
    villages = work.people.villages()
    if officer.is_lead:
        return Sight(officer, villages)
    return Sight(officer, tuple(each for each in villages if each.id in officer.village_ids))
