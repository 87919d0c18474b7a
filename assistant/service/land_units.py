"""What a bigha, a plot or a rante is in a village: read as an office writes it, and kept."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from assistant.people import Village, VillageUnit
from assistant.reading import Lexicon, Outcome, read_area
from assistant.reading.village_units import (
    BIGGEST_M2,
    MOST_NAMES,
    MOST_UNITS,
    SMALLEST_M2,
    is_same_everywhere,
    is_unit_name,
)
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import Work

_LINE = re.compile(r"\s*(?P<names>[^=:]+?)\s*[=:]\s*(?P<size>.+?)\s*")
_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")


@dataclass(frozen=True)
class NoUnit:
    """A line that says no unit, as it was written."""

    line: str


def read_units(
    text: str, lexicons: Mapping[str, Lexicon], region: str | None = None
) -> tuple[VillageUnit, ...] | NoUnit:
    """Units, one a line: names with commas between, "=" and a size, in m2 where it is a bare
    number: "bigha = 1338", "plot, plots = 0.1 acre"."""
    found: list[VillageUnit] = []
    taken: set[str] = set()
    for line in filter(None, map(str.strip, text.splitlines())):
        parts = _LINE.fullmatch(line)
        names = (
            tuple(" ".join(each.split()) for each in parts["names"].split(",")) if parts else ()
        )
        m2 = _size(parts["size"], lexicons, region) if parts else None
        folded = {each.casefold() for each in names}
        if m2 is None or not _fit(names, lexicons) or folded & taken:
            return NoUnit(line)
        taken |= folded
        found.append(VillageUnit(names, m2))
    return tuple(found) if len(found) <= MOST_UNITS else NoUnit(text.splitlines()[-1])


def _fit(names: Sequence[str], lexicons: Mapping[str, Lexicon]) -> bool:
    return 0 < len(names) <= MOST_NAMES and all(
        is_unit_name(each) and not is_same_everywhere(each, lexicons) for each in names
    )


def _size(said: str, lexicons: Mapping[str, Lexicon], region: str | None) -> float | None:
    """A size [m2]; None for none, and for one that no unit of land has."""
    if _NUMBER.fullmatch(said):
        m2: float | None = float(said.replace(",", "."))
    else:
        readings = [read_area(said, each, region) for each in lexicons.values()]
        sure = [each.value for each in readings if _is_size(each.outcome)]
        m2 = next((each for each in sure if each is not None), None)
    return m2 if m2 is not None and SMALLEST_M2 <= m2 <= BIGGEST_M2 else None


def _is_size(outcome: Outcome) -> bool:
    return outcome is not Outcome.AGAIN  # a small one would be read back to a farmer


def units_text(units: Sequence[VillageUnit] | None) -> str:
    """Units as they are written, one a line."""
    return "\n".join(f"{', '.join(each.names)} = {each.m2:.10g}" for each in units or ())


def set_units(
    house: House, sight: Sight, village_id: int, text: str, now: datetime
) -> Village | NoUnit | None:
    """What units of land are in a village from now on; beds that were planned stay as they are.
    None for a village not in sight, and for anybody but a lead."""
    village = sight.village(village_id)
    if village is None or not sight.officer.is_lead:
        return None
    found = read_units(text, house.lexicons, house.region)
    if isinstance(found, NoUnit):
        return found
    with house.store.work() as work:
        return _keep(work, village, found, sight.officer.id, now)


def name_units(house: House, name: str, text: str, now: datetime) -> Village | NoUnit:
    """The same at the command line.

    Raises:
        LookupError: no such village.
    """
    found = read_units(text, house.lexicons, house.region)
    if isinstance(found, NoUnit):
        return found
    with house.store.work() as work:
        village = work.people.village_named(name)
        if village is None:
            raise LookupError(f"no village {name}: nursery village list names them")
        return _keep(work, village, found, None, now)


def enter_units(
    house: House, units: Mapping[str, tuple[VillageUnit, ...]], now: datetime
) -> None:
    """The programme file's units of villages, where nobody has said any yet."""
    with house.store.work() as work:
        for village in work.people.villages():
            if village.units is None and village.name in units:
                _keep(work, village, units[village.name], None, now)


def _keep(
    work: Work,
    village: Village,
    units: tuple[VillageUnit, ...],
    officer_id: int | None,
    now: datetime,
) -> Village:
    kept = work.people.set_units(village.id, units)
    detail = "; ".join(units_text(each).replace("\n", ", ") for each in (village.units, units))
    note(work, officer_id, TrailAct.VILLAGE_UNITS, now, Subject(village_id=village.id), detail)
    return kept
