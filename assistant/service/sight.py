"""What an officer may see: their own villages; a lead sees all, and farmers of no village."""

from dataclasses import dataclass

from assistant.people import Officer, Village
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

    def sees(self, village_id: int | None) -> bool:
        """Whether a farmer of this village may be shown; of none, only to a lead."""
        if village_id is None:
            return self.officer.is_lead
        return village_id in self.village_ids

    def village(self, village_id: int | None) -> Village | None:
        """The village of that id, where it is open to this officer."""
        return next((each for each in self.villages if each.id == village_id), None)

    def narrowed(self, village_id: int | None) -> tuple[Village, ...]:
        """The one village that was asked for, or all where none was or it is not theirs."""
        chosen = self.village(village_id)
        return (chosen,) if chosen else self.villages


def sight_of(work: Work, officer: Officer) -> Sight:
    """What this officer may see now."""
    villages = work.people.villages()
    if officer.is_lead:
        return Sight(officer, villages)
    return Sight(officer, tuple(each for each in villages if each.id in officer.village_ids))
