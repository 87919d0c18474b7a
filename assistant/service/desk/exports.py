"""Farmers, and messages with their costs, as rows for a file."""

from collections.abc import Iterator
from datetime import date, datetime

from assistant.service.audit import Act, note
from assistant.service.desk.messages import messages_by_month
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.sight import Sight
from assistant.wording import messages_web as w
from assistant.wording import messages_web_books as b
from assistant.wording import messages_web_office as o
from assistant.wording.message import Message

Value = str | int | float | date | None
PEOPLE_HEAD: tuple[Message, ...] = (
    w.VILLAGE,
    w.FARMER,
    w.PHONE,
    o.LANGUAGE,
    o.AGREED_ON,
    o.STOPPED_ON,
    o.OPEN_BEDS,
)
COSTS_HEAD: tuple[Message, ...] = (
    b.MONTH,
    w.VILLAGE,
    b.TEXTS,
    b.ON_PHONE,
    b.FAILED,
    b.SEGMENTS,
    b.COST,
    b.FROM_PHONES,
)
AT_ONCE = 500  # farmers of one question


def people(house: House, sight: Sight, now: datetime) -> Iterator[tuple[Value, ...]]:
    """One row a farmer in sight; that they were taken stands in the trail."""
    with house.store.work() as work:
        note(work, sight.officer.id, Act.PEOPLE_TAKEN, now)
    with house.store.look() as work:
        scope, skip = sight.scope(), 0
        while found := work.roll.farmers(scope, "", AT_ONCE, skip):
            skip += len(found)
            beds = [bed.farmer_id for bed in work.roll.beds([each.id for each in found])]
            for each in found:
                village = sight.village(each.village_id)
                zone = village.zone if village else house.zone
                yield (
                    village.name if village else None,
                    each.name,
                    each.phone,
                    each.language,
                    local_date(each.consent_at, zone) if each.consent_at else None,
                    local_date(each.stopped_at, zone) if each.stopped_at else None,
                    beds.count(each.id),
                )


def costs(house: House, sight: Sight, now: datetime) -> Iterator[tuple[Value, ...]]:
    """One row a month and village of the last year."""
    with house.store.work() as work:
        note(work, sight.officer.id, Act.COSTS_TAKEN, now)
    model = messages_by_month(house, sight, now)
    for village, lines in model.lines:
        for line in lines:
            yield (
                line.month,
                village.name if village else None,
                line.texts,
                line.sent.delivered,
                line.sent.failed,
                line.segments,
                float(line.cost) if line.cost is not None else None,
                line.heard.texts,
            )
