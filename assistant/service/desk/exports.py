"""Farmers, and messages with their costs, as rows for a file."""

from collections.abc import Iterator
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from assistant.service.audit import TrailAct, note
from assistant.service.desk.messages import messages_by_month
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.sight import Sight
from assistant.store.queries.ledger import TimeSpan
from assistant.wording import messages_web as web
from assistant.wording import messages_web_books as b
from assistant.wording import messages_web_office as web_office
from assistant.wording.message import Message

Value = str | int | float | date | None
PEOPLE_HEAD: tuple[Message, ...] = (
    web.VILLAGE,
    web.FARMER,
    web.PHONE,
    web_office.LANGUAGE,
    web_office.AGREED_ON,
    web_office.STOPPED_ON,
    web_office.OPEN_BEDS,
)
COSTS_HEAD: tuple[Message, ...] = (
    b.MONTH,
    web.VILLAGE,
    b.TEXTS,
    b.ON_PHONE,
    b.FAILED,
    b.SEGMENTS,
    b.COST,
    b.FROM_PHONES,
)
MESSAGES_HEAD: tuple[Message, ...] = (
    web.WHEN,
    web.VILLAGE,
    web.PHONE,
    web.STATE,
    b.SEGMENTS,
    b.ON_PHONE,
    web_office.OPERATOR_SAID,
)
TEXTS_AT_ONCE = 2000
A_MONTH = timedelta(days=31)
AT_ONCE = 500  # farmers of one question


def people(house: House, sight: Sight, now: datetime) -> Iterator[tuple[Value, ...]]:
    """One row a farmer in sight; that they were taken stands in the trail."""
    with house.store.work() as work:
        note(work, sight.officer.id, TrailAct.PEOPLE_TAKEN, now)
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


def messages(house: House, sight: Sight, now: datetime) -> Iterator[tuple[Value, ...]]:
    """One row a text that was to leave in the last month, the latest first: to whom, and what
    became of it, to hold against the operator's bill. Not its words, which are people's own."""
    with house.store.work() as work:
        note(work, sight.officer.id, TrailAct.MESSAGES_TAKEN, now)
    zone, before = ZoneInfo(house.zone), None
    names = {village.id: village.name for village in sight.villages}
    span = TimeSpan(
        now - A_MONTH, now + timedelta(seconds=1), sight.village_ids, sight.officer.is_lead
    )
    with house.store.look() as work:
        while found := work.ledger.latest_sent(span, TEXTS_AT_ONCE, before=before):
            before = (found[-1].due_at, found[-1].id)
            for each in found:
                yield (
                    f"{each.due_at.astimezone(zone):%Y-%m-%d %H:%M}",
                    names.get(each.village_id or 0),
                    each.phone,
                    str(each.state),
                    each.segments,
                    f"{each.delivered_at.astimezone(zone):%Y-%m-%d %H:%M}"
                    if each.delivered_at
                    else None,
                    each.detail,
                )


def costs(house: House, sight: Sight, now: datetime) -> Iterator[tuple[Value, ...]]:
    """One row a month and village of the last year."""
    with house.store.work() as work:
        note(work, sight.officer.id, TrailAct.COSTS_TAKEN, now)
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
