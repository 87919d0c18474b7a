"""What the phones show, held against what the service kept and what people wanted."""

from collections import Counter
from collections.abc import Iterator
from datetime import date, timedelta
from zoneinfo import ZoneInfo

from assistant.dialogue.values import Kind
from assistant.store import TextState, Work
from assistant.store.engine import open_engine
from tests.benchmarks.crowd import ZONE
from tests.soak.service import Soak

# Written before STOP was taken, and with the operator then.
ON_ITS_WAY = timedelta(minutes=31)
_OPEN = (TextState.WAITING, TextState.CLAIMED)


def wrong(soak: Soak) -> Iterator[str]:
    """All that is not as it should be, once a quiet day is over."""
    with soak.house.store.look() as work:
        if work.mornings.is_due(soak.now):
            yield "a morning is due and was not written"
        for number in soak.people.phones:
            yield from _of_phone(soak, work, number)
            yield from _plan(work, number)
    yield from _not_taken(soak)


def _of_phone(soak: Soak, work: Work, number: str) -> Iterator[str]:
    kept = {text.message_id: text for text in work.outbox.of_phone(number)}
    zone = ZoneInfo(ZONE)
    days: Counter[tuple[Kind, date]] = Counter()
    for message_id in soak.line.shown.get(number, ()):
        text = kept.get(message_id)
        if text is None:
            yield f"{number} shows {message_id}, of which nothing is known"
            continue
        if text.kind in (Kind.PROMPT, Kind.SECOND):
            days[text.kind, text.created_at.astimezone(zone).date()] += 1
        if text.state in (*_OPEN, TextState.WITHDRAWN, TextState.EXPIRED):
            yield f"{number} shows {text.kind} {text.message_id}, which is {text.state}"
    yield from (f"{number}: {n} of {what[0]} on {what[1]}" for what, n in days.items() if n > 1)
    late = [t for t in kept.values() if t.state in _OPEN and t.due_at < soak.now - ON_ITS_WAY]
    yield from (f"{number}: {t.kind} {t.message_id} is {t.state}: {t.detail}" for t in late)
    stopped = soak.people.stopped.get(number)
    for text in kept.values():
        daily = text.kind in (Kind.PROMPT, Kind.SECOND)
        if stopped and daily and text.created_at > stopped + ON_ITS_WAY:
            yield f"{number} stopped at {stopped:%d %H:%M} and had {text.message_id}"


def _plan(work: Work, number: str) -> Iterator[str]:
    farmer = work.people.farmer(number)
    if farmer is None:
        yield f"{number}: no farmer"
        return
    for bed in work.nurseries.of_farmer(farmer.id, open_only=False):
        story = work.reminders.of_nursery(bed.id)
        keys = Counter((each.task, each.day) for each in story)
        yield from (f"{number}: {key} twice" for key, n in keys.items() if n > 1)
        if not story:
            yield f"{number}: a bed without a plan"


def _not_taken(soak: Soak) -> Iterator[str]:
    engine = open_engine(str(soak.house.store._engine.url))
    with engine.connect() as connection:
        rows = connection.exec_driver_sql("SELECT gateway_id, taken_at, failed FROM incoming")
        found = {row.gateway_id: row for row in rows}
    engine.dispose()
    for gateway_id in soak.people.wrote:
        row = found.get(gateway_id)
        if row is None or row.taken_at is None or row.failed:
            yield f"text {gateway_id} was not taken"
