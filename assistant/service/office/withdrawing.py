"""A list that was a mistake is taken back: whom it added and who has not answered goes."""

from dataclasses import dataclass
from datetime import datetime

from assistant.service.audit import TrailAct, note
from assistant.service.house import House
from assistant.service.office.taking import LIST
from assistant.service.sight import Sight
from assistant.store import DONE

BACK = "withdrawn"  # among the counts of a list


@dataclass(frozen=True)
class WithdrawnFarmers:
    """How many farmers are off the roll again, and how many texts did not leave."""

    farmers: int
    texts: int


def withdraw_list(
    house: House, sight: Sight, list_id: int, now: datetime
) -> WithdrawnFarmers | None:
    """Takes a list of this officer back, once; None where there is none to take back. The
    number of whom it asked stays as a bare row: a yes that is on its way finds it."""
    with house.store.work() as work:
        kept = work.lists.get(list_id)
        mine = kept is not None and kept.officer_id == sight.officer.id
        if kept is None or not mine or kept.state != DONE or BACK in kept.counts:
            return None
        work.enrolments.hold_roll()
        texts = 0
        asked = work.enrolments.unanswered(sight.officer.id, LIST, kept.changed_at)
        for farmer in asked:
            work.lock(farmer.phone)
            texts += work.outbox.withdraw(now, phone=farmer.phone)
            work.enrolments.end_talks(farmer.phone)
            work.enrolments.forget_person(farmer.id)
            work.enrolments.drop(farmer.id)
        counts = {**kept.counts, BACK: len(asked)}
        work.lists.finish(list_id, kept.changed_at, counts, kept.rejects)
        detail = f"{kept.name}: -{len(asked)}"
        note(work, sight.officer.id, TrailAct.LIST_WITHDRAWN, now, detail=detail)
        return WithdrawnFarmers(len(asked), texts)
