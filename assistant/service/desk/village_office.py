"""A lead keeps the villages of a programme: added, named, joined, retired, and whom to turn to
from each."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from assistant.people import Village, village_name
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.replan import save_and_plan
from assistant.service.sight import Sight
from assistant.store import Work

LONGEST_NUMBER = 24  # characters of the number to ring; the texts that say it have this room
LONGEST_HELPER = 40  # characters of a health post or a vet, name and number
LEAST_DIGITS = 2


class NotKept(StrEnum):
    """Why nothing was changed."""

    NAME = "name"
    TAKEN = "taken"
    HELPERS = "helpers"
    WARNED = "warned"
    LIVED_IN = "lived_in"
    SAME = "same"


@dataclass(frozen=True)
class Helpers:
    """Whom to turn to from a village; empty is as the programme has it."""

    emergency: str = ""
    health_post: str = ""
    vet: str = ""

    @property
    def fit(self) -> bool:
        """Whether the texts have room for them, and what must hold a number holds one."""
        lengths = (
            (self.emergency, LONGEST_NUMBER),
            (self.health_post, LONGEST_HELPER),
            (self.vet, LONGEST_HELPER),
        )
        numbers = all(_digits(said) >= LEAST_DIGITS for said in (self.emergency, self.vet))
        return numbers and all(len(said) <= most for said, most in lengths)


def _digits(said: str) -> int:
    return sum(ch.isdecimal() for ch in said) if said else LEAST_DIGITS


def add_village(
    house: House, sight: Sight, typed: str, now: datetime
) -> Village | NotKept | None:
    """A new village in the programme's time; None for anybody but a lead. One that was retired
    is open again."""
    name = village_name(typed)
    if not sight.officer.is_lead:
        return None
    if name is None:
        return NotKept.NAME
    with house.store.work() as work:
        kept = work.people.village_named(name)
        if kept is not None and kept.retired_at is None:
            return NotKept.TAKEN
        made = (
            work.people.mend_village(kept.id, retired_at=None)
            if kept
            else work.people.add_village(name, house.zone)
        )
        note(
            work,
            sight.officer.id,
            TrailAct.VILLAGE_ADDED,
            now,
            Subject(village_id=made.id),
            name,
        )
        return made


def mend_village(
    house: House, sight: Sight, village_id: int, typed: str, helpers: Helpers, now: datetime
) -> Village | NotKept | None:
    """Another name, and whom to turn to there; None for a village not in sight, and for
    anybody but a lead."""
    village, name = sight.village(village_id), village_name(typed)
    if village is None or not sight.officer.is_lead:
        return None
    if name is None:
        return NotKept.NAME
    if not helpers.fit:
        return NotKept.HELPERS
    with house.store.work() as work:
        same = work.people.village_named(name)
        if same is not None and same.id != village.id:
            return NotKept.TAKEN
        columns = {key: said or None for key, said in vars(helpers).items()}
        kept = work.people.mend_village(village.id, name=name, **columns)
        pairs = ("name", "emergency", "health_post", "vet")
        old_new = ((each, getattr(village, each), getattr(kept, each)) for each in pairs)
        detail = "; ".join(
            f"{each}: {old} -> {new}" for each, old, new in old_new if old != new
        )
        about = Subject(village_id=village.id)
        note(work, sight.officer.id, TrailAct.VILLAGE_MENDED, now, about, detail)
        return kept


def join_villages(
    house: House, sight: Sight, gone_id: int, into_id: int | None, now: datetime
) -> int | NotKept | None:
    """All farmers of one village live in another from now on, and it is retired; how many those
    are. Not while a rain warning stands in either: they would miss the all-clear."""
    gone, into = sight.village(gone_id), sight.village(into_id)
    if gone is None or into is None or not sight.officer.is_lead:
        return None
    if gone == into:
        return NotKept.SAME
    with house.store.work() as work:
        if any(work.warnings.standing(each.id, now) for each in (gone, into)):
            return NotKept.WARNED
        work.enrolments.hold_roll()
        farmers = work.people.farmers(gone.id)
        work.enrolments.mend_farmers({each.id: {"village_id": into.id} for each in farmers})
        for farmer in farmers:
            moved = work.people.farmer_by_id(farmer.id)
            for bed in work.nurseries.of_farmer(farmer.id) if moved else ():
                save_and_plan(work, house, moved or farmer, bed, now)
        work.people.serve_too(into.id, gone.id)
        work.questions.move(gone.id, into.id)
        _retire(work, gone, now)
        detail = f"{gone.name} -> {into.name}: {len(farmers)}"
        about = Subject(village_id=into.id)
        note(work, sight.officer.id, TrailAct.VILLAGE_JOINED, now, about, detail)
        return len(farmers)


def retire_village(
    house: House, sight: Sight, village_id: int, now: datetime
) -> Village | NotKept | None:
    """A village in which no farmer lives is listed nowhere any more; its story is kept."""
    village = sight.village(village_id)
    if village is None or not sight.officer.is_lead:
        return None
    with house.store.work() as work:
        if work.people.farmers(village.id):
            return NotKept.LIVED_IN
        work.people.serve_no_more(village.id)
        _retire(work, village, now)
        about = Subject(village_id=village.id)
        note(work, sight.officer.id, TrailAct.VILLAGE_RETIRED, now, about, village.name)
        return village


def _retire(work: Work, village: Village, now: datetime) -> None:
    work.people.mend_village(village.id, retired_at=now)
