"""An officer puts a bed right: its kind, its field, how its seed sprouts, its leaves."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.life.events import By, Counted
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.items_leaves import MOST_LEAVES
from assistant.people import Farmer, Village
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.desk.visits import find_bed
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.office.cells import RefusedCell
from assistant.service.office.choices import Choices
from assistant.service.office.reader import reader_of
from assistant.service.replan import happen, save_and_plan
from assistant.service.sight import Sight
from assistant.store import Work
from assistant.wording.message import Say

LEAST_LEAVES = 0.5


class NotMended(StrEnum):
    """Why a bed was not changed."""

    SAME = "same"
    LEAVES = "leaves"
    DAYS = "days"


@dataclass(frozen=True)
class WantedBed:
    """A bed as an officer types it; empty is as it was. `kind` is the code of a practice."""

    kind: str = ""
    area: str = ""
    percent: str = ""
    leaves: str = ""


def kinds(house: House, village: Village | None, language: str) -> Mapping[str, str]:
    """The kinds of bed that a village is offered, by code."""
    offered = village.practices if village else ()
    known = house.store.practices.items()
    return {code: each.name(language) for code, each in known if code in offered}


def mend_bed(
    house: House, sight: Sight, nursery_id: int, wanted: WantedBed, now: datetime
) -> Nursery | NotMended | Say | None:
    """Changes a bed and plans its days anew; None for one not in sight, a text where a field
    cannot be read."""
    with house.store.work() as work:
        found = find_bed(work, sight, nursery_id)
        if found is None:
            return None
        farmer, bed = found
        work.lock(farmer.phone)
        leaves = _leaves(wanted.leaves)
        if isinstance(leaves, NotMended):
            return leaves
        try:
            village = sight.village(farmer.village_id)
            moved = _moved(work, house, sight, bed, wanted, village, now)
            if moved == bed and leaves is None:
                return NotMended.SAME
            return _keep(work, house, sight, farmer, bed, moved, leaves, now)
        except RefusedCell as refused:
            return refused.why
        except AgronomyError:
            return NotMended.DAYS


def _leaves(typed: str) -> float | None | NotMended:
    if not typed:
        return None
    try:
        count = float(typed.replace(",", "."))
    except ValueError:
        return NotMended.LEAVES
    return count if LEAST_LEAVES <= count <= MOST_LEAVES else NotMended.LEAVES


def _moved(
    work: Work,
    house: House,
    sight: Sight,
    bed: Nursery,
    wanted: WantedBed,
    village: Village | None,
    now: datetime,
) -> Nursery:
    """The bed with what was typed, read as a list of farmers is."""
    reader = reader_of(work, house, sight, Choices(), {}, now)
    moved, inputs = bed, bed.inputs
    if wanted.area and wanted.area != bed.area_typed:
        area_m2, words = reader.area(wanted.area, (village.units or ()) if village else ())
        inputs = replace(inputs, field_area_m2=area_m2)
        moved = replace(moved, area_typed=words)
    percent = reader.germination(wanted.percent)
    if percent is not None and percent != _percent(bed):
        inputs = replace(inputs, germination=percent / 100)
        moved = replace(moved, germination_known=True)
    practice = house.store.practices.get(wanted.kind, bed.practice)
    return replace(moved, inputs=inputs, practice=practice)


def _percent(bed: Nursery) -> float | None:
    return round(bed.inputs.germination * 100, 2) if bed.germination_known else None


def _keep(
    work: Work,
    house: House,
    sight: Sight,
    farmer: Farmer,
    bed: Nursery,
    moved: Nursery,
    leaves: float | None,
    now: datetime,
) -> Nursery:
    saved = save_and_plan(work, house, farmer, moved, now) if moved != bed else bed
    if leaves is not None:
        today = local_date(now, sight.zone(farmer.village_id, house.zone))
        event = Counted(on=today, by=By.OFFICER, leaves=leaves)
        saved = happen(work, house, farmer, saved, event, now)
    about = Subject(farmer.id, bed.id, farmer.village_id)
    note(work, sight.officer.id, TrailAct.BED_MENDED, now, about, _difference(bed, saved))
    return saved


def _difference(before: Nursery, after: Nursery) -> str:
    pairs = (
        ("practice", before.practice.code, after.practice.code),
        ("area_m2", before.inputs.field_area_m2, after.inputs.field_area_m2),
        ("germination", before.inputs.germination, after.inputs.germination),
        ("leaves", before.leaves, after.leaves),
    )
    return "; ".join(f"{name}: {old} -> {new}" for name, old, new in pairs if old != new)
