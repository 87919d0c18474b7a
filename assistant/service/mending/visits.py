"""A visit that was noted wrong is put right or taken away, by who noted it or by a lead."""

from datetime import date, datetime

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.desk.visits import Wrong, find_bed
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.sight import Sight
from assistant.store import VisitMade, Work


def mend_visit(
    house: House, sight: Sight, visit_id: int, on: date | None, words: str, now: datetime
) -> int | Wrong | None:
    """Sets the day and the words of a visit; the id of its nursery. None for a visit that is
    another's or not in sight. What was seen done by it stays so."""
    with house.store.work() as work:
        found = _mine(work, sight, visit_id)
        if found is None:
            return None
        visit, farmer, nursery = found
        today = local_date(now, sight.zone(farmer.village_id, house.zone))
        if on is None:
            return Wrong.NO_DAY
        if on > today:
            return Wrong.FUTURE
        if on < min(nursery.made_on, nursery.sow_date):
            return Wrong.BEFORE_PLAN
        work.story.mend_visit(visit.id, on, words)
        detail = f"{visit.visited_on.isoformat()} -> {on.isoformat()}"
        about = Subject(farmer.id, nursery.id, farmer.village_id)
        note(work, sight.officer.id, TrailAct.VISIT_MENDED, now, about, detail)
        return nursery.id


def drop_visit(house: House, sight: Sight, visit_id: int, now: datetime) -> int | None:
    """Takes a visit away; as above."""
    with house.store.work() as work:
        found = _mine(work, sight, visit_id)
        if found is None:
            return None
        visit, farmer, nursery = found
        work.story.drop_visits([visit.id])
        about = Subject(farmer.id, nursery.id, farmer.village_id)
        detail = f"{visit.visited_on.isoformat()} {visit.note}".strip()
        note(work, sight.officer.id, TrailAct.VISIT_DROPPED, now, about, detail)
        return nursery.id


def bed_of(house: House, sight: Sight, visit_id: int) -> int | None:
    """The nursery of a visit that this officer may put right."""
    with house.store.look() as work:
        found = _mine(work, sight, visit_id)
        return found[0].nursery_id if found else None


def _mine(work: Work, sight: Sight, visit_id: int) -> tuple[VisitMade, Farmer, Nursery] | None:
    visit = work.story.visit(visit_id)
    own = visit is not None and sight.officer.id == visit.officer_id
    if visit is None or not (own or sight.officer.is_lead):
        return None
    found = find_bed(work, sight, visit.nursery_id)
    return (visit, *found) if found else None
