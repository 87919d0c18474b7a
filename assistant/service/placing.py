"""The codes by which a weather service names a village, kept by the lead or at the desk."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from assistant.people import Village
from assistant.places import Geocode, VillagePlace
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import Work

LONGEST = 60  # characters of a name or a value
SHOWN = 40


@dataclass(frozen=True)
class NoCode:
    """A line that was typed and is no code."""

    line: str


def read_codes(text: str) -> tuple[Geocode, ...] | NoCode:
    """Codes, one a line, as name=value; empty lines do not count."""
    found = []
    for line in text.splitlines():
        name, sign, value = (part.strip() for part in line.partition("="))
        if not line.strip():
            continue
        if not (sign and name and value) or max(len(name), len(value)) > LONGEST:
            return NoCode(line.strip()[:SHOWN])
        found.append(Geocode(name, value))
    return tuple(found)


def place_villages(
    house: House, places: Mapping[str, VillagePlace], now: datetime
) -> tuple[str, ...]:
    """Places villages by name where nobody has placed them yet; which ones those were. What
    was said on the page or at the desk stands."""
    with house.store.work() as work:
        known = work.alerts.places()
        placed = [
            village.name
            for village in work.people.villages()
            if village.name in places
            and _placed(work, village, known[village.id], places[village.name], now)
        ]
        return tuple(placed)


def _placed(
    work: Work, village: Village, known: VillagePlace, place: VillagePlace, now: datetime
) -> bool:
    """Adds the point or the codes that a village does not have; whether there was one."""
    point = place.point if known.point is None else None
    codes = place.geocodes if not known.geocodes else frozenset()
    if point is not None:
        work.alerts.set_point(village.id, point)
    if codes:
        keep_codes(work, village, tuple(sorted(codes)), None, now)
    return point is not None or bool(codes)


def where_villages_lie(house: House) -> dict[int, VillagePlace]:
    """All villages as alerts see them, by their ids."""
    with house.store.look() as work:
        return work.alerts.places()


def unplaced_villages(house: House) -> tuple[str, ...]:
    """The villages that no alert can find, by name."""
    with house.store.look() as work:
        places = work.alerts.places()
        villages = work.people.villages()
    return tuple(each.name for each in villages if not places[each.id].findable)


def name_by_codes(
    house: House, name: str, codes: tuple[Geocode, ...], now: datetime
) -> Village:
    """Gives a village these codes and no others, at the desk.

    Raises:
        LookupError: no such village; the text names those that are.
    """
    with house.store.work() as work:
        found = {each.name.casefold(): each for each in work.people.villages()}
        village = found.get(name.strip().casefold())
        if village is None:
            names = ", ".join(each.name for each in found.values()) or "none yet"
            raise LookupError(f"no village {name}; there are: {names}")
        keep_codes(work, village, codes, None, now)
        return village


def set_codes(
    house: House, sight: Sight, village_id: int, text: str, now: datetime
) -> Village | NoCode | None:
    """A lead gives a village these codes and no others; None for one that is not in sight."""
    village = sight.village(village_id)
    if village is None or not sight.officer.is_lead:
        return None
    found = read_codes(text)
    if isinstance(found, NoCode):
        return found
    with house.store.work() as work:
        keep_codes(work, village, found, sight.officer.id, now)
    return village


def keep_codes(
    work: Work,
    village: Village,
    codes: tuple[Geocode, ...],
    officer_id: int | None,
    now: datetime,
) -> None:
    """Keeps them, with a line in the trail."""
    work.alerts.set_geocodes(village.id, codes)
    told = ", ".join(f"{code.name}={code.value}" for code in codes)
    note(work, officer_id, TrailAct.VILLAGE_PLACED, now, Subject(village_id=village.id), told)
