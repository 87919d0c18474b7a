"""An officer's own groups: farmers kept under a name, to write to them together."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from assistant.people import Farmer, Village
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import OwnGroup, Work

LONGEST_NAME = 40


@dataclass(frozen=True)
class GroupPage:
    """A group with those of its farmers who are in sight, and their villages."""

    group: OwnGroup
    members: tuple[tuple[Farmer, Village | None], ...]


def my_groups(house: House, sight: Sight) -> tuple[GroupPage, ...]:
    """All groups of an officer, by name."""
    with house.store.look() as work:
        groups = work.groups.of(sight.officer.id)
        return tuple(GroupPage(each, _members(work, sight, each.id)) for each in groups)


def _members(
    work: Work, sight: Sight, group_id: int
) -> tuple[tuple[Farmer, Village | None], ...]:
    found = (each for each in work.groups.members(group_id) if sight.sees(each.village_id))
    return tuple((each, sight.village(each.village_id)) for each in found)


def keep_group(
    house: House, sight: Sight, name: str, farmer_ids: Iterable[int], now: datetime
) -> OwnGroup | None:
    """Puts farmers into the group of that name, which is made where there is none; None where
    none of them is in sight."""
    name = " ".join(name.split())[:LONGEST_NAME]
    with house.store.work() as work:
        found = (work.people.farmer_by_id(each) for each in sorted(set(farmer_ids)))
        ids = [each.id for each in found if each and sight.sees(each.village_id)]
        if not ids or not name:
            return None
        mine = {each.name.casefold(): each.id for each in work.groups.of(sight.officer.id)}
        group_id = mine.get(name.casefold()) or work.groups.add(sight.officer.id, name, now)
        work.groups.put(group_id, ids)
        return work.groups.get(group_id)


def take_out(
    house: House, sight: Sight, group_id: int, farmer_ids: Iterable[int]
) -> int | None:
    """Takes farmers out of a group; how many. None for a group that is another's."""
    with house.store.work() as work:
        if _mine(work, sight, group_id) is None:
            return None
        return work.groups.take_out(group_id, set(farmer_ids))


def drop_group(house: House, sight: Sight, group_id: int) -> str | None:
    """Deletes a group; its name. None as above."""
    with house.store.work() as work:
        mine = _mine(work, sight, group_id)
        if mine is None:
            return None
        work.groups.drop(group_id)
        return mine.name


def _mine(work: Work, sight: Sight, group_id: int) -> OwnGroup | None:
    found = work.groups.get(group_id)
    return found if found and found.officer_id == sight.officer.id else None


def group_names(house: House, sight: Sight) -> tuple[OwnGroup, ...]:
    """The groups of an officer without their farmers, by name."""
    with house.store.look() as work:
        return work.groups.of(sight.officer.id)
