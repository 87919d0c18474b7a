"""Two entries that are one person become one: nurseries, calls and words go to the one that
stays, the number of the other is kept as one that they had."""

from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer, Village, read_phone
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.office.beds import free_label
from assistant.service.replan import save_and_plan
from assistant.service.sight import Sight
from assistant.store import Work


class NotJoined(StrEnum):
    """Why two entries are not joined."""

    NOBODY = "nobody"
    SAME = "same"
    AGREED = "agreed"
    STOPPED = "stopped"


@dataclass(frozen=True)
class JoinSide:
    """What is kept of one of them."""

    farmer: Farmer
    village: Village | None
    beds: tuple[Nursery, ...]
    calls: int


@dataclass(frozen=True)
class Pair:
    """The entry that stays, and the one that is added to it."""

    stays: JoinSide
    goes: JoinSide


def look_at_pair(
    house: House, sight: Sight, farmer_id: int, typed: str
) -> Pair | NotJoined | None:
    """Both entries, before anything is done; None for a farmer not in sight."""
    with house.store.look() as work:
        return _pair(work, house, sight, farmer_id, typed)


def join(
    house: House, sight: Sight, farmer_id: int, typed: str, now: datetime
) -> Farmer | NotJoined | None:
    """Joins them; as above. The one that goes is an empty entry without a number then, so that
    the trail of what was done stays as it was."""
    with house.store.work() as work:
        pair = _pair(work, house, sight, farmer_id, typed)
        if not isinstance(pair, Pair):
            return pair
        stays, goes = pair.stays.farmer, pair.goes.farmer
        for phone in sorted({stays.phone, goes.phone}):
            work.lock(phone)
        work.outbox.withdraw(now, phone=goes.phone)
        work.enrolments.end_talks(goes.phone)
        work.phones.add_past(stays.id, goes.phone, now)
        _beds(work, house, pair, now)
        work.phones.move_story(goes.id, stays.id)
        work.people.save_farmer(Farmer(goes.id, "", None, None, None, None))
        named = replace(stays, name=stays.name or goes.name)
        kept = work.people.save_farmer(named)
        about = Subject(stays.id, village_id=stays.village_id)
        detail = f"{goes.name or '-'} {goes.phone} -> {stays.phone}"
        note(work, sight.officer.id, TrailAct.JOINED, now, about, detail)
        return kept


def _pair(
    work: Work, house: House, sight: Sight, farmer_id: int, typed: str
) -> Pair | NotJoined | None:
    stays = work.people.farmer_by_id(farmer_id)
    if stays is None or not sight.sees(stays.village_id):
        return None
    phone = read_phone(typed, house.region[:2] if house.region else None)
    goes = work.people.farmer(phone) if phone else None
    if goes is None or not sight.sees(goes.village_id):
        return NotJoined.NOBODY
    fault = _fault(stays, goes)
    return fault or Pair(_entry(work, sight, stays), _entry(work, sight, goes))


def _fault(stays: Farmer, goes: Farmer) -> NotJoined | None:
    """Agreeing and stopping are one number's: neither is carried to another."""
    if stays.id == goes.id:
        return NotJoined.SAME
    if stays.stopped_at or goes.stopped_at:
        return NotJoined.STOPPED
    return NotJoined.AGREED if goes.consent_at and not stays.consent_at else None


def _entry(work: Work, sight: Sight, farmer: Farmer) -> JoinSide:
    beds = work.nurseries.of_farmer(farmer.id, open_only=False)
    calls = len(work.story.calls_of(farmer.id, sight.officer))
    return JoinSide(farmer, sight.village(farmer.village_id), beds, calls)


def _beds(work: Work, house: House, pair: Pair, now: datetime) -> None:
    """The nurseries of both; two of one letter would be one in texts, so one gets another."""
    taken = {bed.label for bed in pair.stays.beds}
    for bed in pair.goes.beds:
        label = bed.label if bed.label not in taken else free_label(taken)
        taken.add(label)
        moved = replace(bed, label=label, farmer_id=pair.stays.farmer.id)
        if bed.closed:
            work.nurseries.save(moved, now)
        else:
            save_and_plan(work, house, pair.stays.farmer, moved, now)
