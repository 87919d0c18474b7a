"""What is kept of a farmer, a call or a nursery is put right by an officer."""

from dataclasses import dataclass, replace
from datetime import datetime

from assistant.people import Farmer, person_name
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.consent import note_answer
from assistant.service.desk.visits import find_bed
from assistant.service.house import House
from assistant.service.replan import save_and_plan
from assistant.service.sight import Sight
from assistant.store import Work


@dataclass(frozen=True)
class Mended:
    """A farmer as an officer says: an empty name is none."""

    name: str
    village_id: int | None
    language: str | None


def mend_farmer(
    house: House, sight: Sight, farmer_id: int, wanted: Mended, now: datetime
) -> Farmer | None:
    """Changes name, village and language; None for who is not in sight, or a village or a
    language that is not there. A new village plans the reminders anew: it may have other
    hours."""
    with house.store.work() as work:
        farmer = _locked(work, sight, farmer_id)
        name = person_name(wanted.name) if wanted.name.strip() else None
        known = wanted.language in house.languages and sight.village(wanted.village_id)
        if farmer is None or not known or (wanted.name.strip() and name is None):
            return None
        mended = replace(
            farmer, name=name, village_id=wanted.village_id, language=wanted.language
        )
        if mended == farmer:
            return farmer
        work.people.save_farmer(mended)
        if mended.village_id != farmer.village_id:
            for bed in work.nurseries.of_farmer(farmer.id):
                save_and_plan(work, house, mended, bed, now)
        detail = _difference(farmer, mended)
        about = Subject(farmer.id, village_id=mended.village_id)
        note(work, sight.officer.id, TrailAct.FARMER_MENDED, now, about, detail)
        return mended


def _difference(before: Farmer, after: Farmer) -> str:
    names = ("name", "village_id", "language")
    pairs = ((name, getattr(before, name), getattr(after, name)) for name in names)
    return "; ".join(f"{name}: {old} -> {new}" for name, old, new in pairs if old != new)


def stop_texts(house: House, sight: Sight, farmer_id: int, now: datetime) -> bool:
    """A farmer said to an officer that they want no more texts: as if they had sent STOP, but
    that nothing is sent back. False for who is not in sight."""
    with house.store.work() as work:
        farmer = _locked(work, sight, farmer_id)
        if farmer is None:
            return False
        if farmer.stopped_at is None:
            house.journal(farmer.phone, True, now)
            work.outbox.withdraw(now, phone=farmer.phone)
            work.people.save_farmer(replace(farmer, stopped_at=now, paused_at=None))
            if farmer.consent_at is None:
                note_answer(work, farmer, "stop", now)
            about = Subject(farmer.id, village_id=farmer.village_id)
            note(work, sight.officer.id, TrailAct.TEXTS_STOPPED, now, about)
        return True


def reopen_call(house: House, sight: Sight, call_id: int, now: datetime) -> int | None:
    """A call waits for somebody again; the id of its farmer, None for one not in sight."""
    with house.store.work() as work:
        call = work.story.call(call_id, sight.scope(), sight.officer)
        if call is None:
            return None
        work.calls.reopen(call.id)
        note(work, sight.officer.id, TrailAct.CALL_REOPENED, now, Subject(call.farmer.id))
        return call.farmer.id


def reopen_bed(house: House, sight: Sight, nursery_id: int, now: datetime) -> bool:
    """A nursery that was closed goes on; False for one not in sight."""
    with house.store.work() as work:
        found = find_bed(work, sight, nursery_id)
        if found is None:
            return False
        farmer, nursery = found
        work.lock(farmer.phone)
        opened = replace(nursery, closed=False, no_result=False)
        save_and_plan(work, house, farmer, opened, now)
        about = Subject(farmer.id, nursery.id, farmer.village_id)
        note(work, sight.officer.id, TrailAct.NURSERY_REOPENED, now, about)
        return True


def _locked(work: Work, sight: Sight, farmer_id: int) -> Farmer | None:
    farmer = work.people.farmer_by_id(farmer_id)
    if farmer is None or not sight.sees(farmer.village_id):
        return None
    work.lock(farmer.phone)
    return farmer
