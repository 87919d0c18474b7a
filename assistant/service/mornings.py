"""The morning in batches: what is due is claimed some hundreds of phones at a time, worded, and
written in one transaction.

Any number of workers share a morning. What is not plain (rain, a sowing that nobody confirmed)
and whoever's text cannot be made is handed out, to be served alone.
"""

import logging
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime

from assistant.dialogue.values import Focus, Item, Kind
from assistant.reminders.compose import Composed
from assistant.reminders.morning import (
    Sorted,
    compose_plain,
    first_of,
    only_told,
    sorted_out,
    unconfirmed,
)
from assistant.reminders.plan import local
from assistant.reminders.values import Reminder, State
from assistant.service.days import local_date
from assistant.service.house import House
from assistant.service.set_aside import keep_aside
from assistant.service.texts import Letter, written
from assistant.store import DatabaseAwayError, DuePhone, Lane, Mark, Moved, OutboxText, Work

log = logging.getLogger(__name__)

AT_ONCE = 600  # tasks of one batch: two or three hundred phones, a tenth of a second
# Where one writes at a time: an answer waits no longer than such a batch takes.
ONE_WRITER_AT_ONCE = 150


@dataclass
class Batch:
    """What a transaction writes: texts with the village each is counted for, what became of
    the tasks, and the phones that are to be served alone."""

    texts: list[tuple[OutboxText, int | None]] = field(default_factory=list)
    moved: list[Moved] = field(default_factory=list)
    caught_up: dict[int, tuple[datetime, datetime]] = field(default_factory=dict)
    too_late: list[int] = field(default_factory=list)
    alone: list[str] = field(default_factory=list)

    def write(self, work: Work) -> None:
        """Keeps all of it."""
        work.mornings.write(self.texts)
        work.mornings.too_late(self.too_late)
        work.mornings.caught_up(self.caught_up)
        work.mornings.said(self.moved)


def batches(house: House, now: datetime, at_once: int = AT_ONCE) -> Iterator[Batch]:
    """Serves all phones for which something is due; each batch when it is written.

    Args:
        at_once: tasks of one batch
    """
    mark: Mark | None = None
    most = min(at_once, ONE_WRITER_AT_ONCE) if house.store.has_one_writer else at_once
    while True:
        mark, batch = _serve(house, now, mark, most)
        if batch is not None:
            yield batch
        if mark is None:
            return
        house.store.give_way()


def _serve(
    house: House, now: datetime, after: Mark | None, at_once: int
) -> tuple[Mark | None, Batch | None]:
    """One transaction. Where it fails as a whole its phones are served alone."""
    phones: Sequence[str] = ()
    mark = None
    try:
        with house.store.work() as work:
            claim = work.mornings.claim(now, after, at_once)
            if claim is None:
                return None, None
            phones, mark = claim.phones, claim.mark
            batch = _worded(house, work.mornings.read(phones, now), now)
            batch.write(work)
            keep_aside(work, now)
        return mark, batch
    except DatabaseAwayError:
        raise
    except Exception:
        log.exception("a batch of %d phones failed; they are served alone", len(phones))
        return mark, Batch(alone=list(phones))


def _worded(house: House, phones: Sequence[DuePhone], now: datetime) -> Batch:
    """What is to be written for some phones. One that fails is left for being served alone,
    where its failure is told."""
    batch = Batch()
    for phone in phones:
        zone = phone.zone or house.zone
        today = local_date(now, zone)
        if not _is_plain(phone, today):
            batch.alone.append(phone.farmer.phone)
            continue
        try:
            _add(batch, house, phone, now, zone)
        except Exception:
            batch.alone.append(phone.farmer.phone)
    return batch


def _is_plain(phone: DuePhone, today: date) -> bool:
    return not phone.waits and not unconfirmed(phone.nurseries, phone.due, today)


def _add(batch: Batch, house: House, phone: DuePhone, now: datetime, zone: str) -> None:
    today = local_date(now, zone)
    opens = local(today, house.hours.prompt, zone)
    closes = local(today, house.hours.quiet_from, zone)
    if not opens <= now < closes:
        return
    found = sorted_out(phone.due, today)
    if found.said:
        composed = compose_plain(phone.nurseries, found.said, today, phone.cautioned)
        letter = prompt(phone.farmer.phone, phone.farmer.language, composed, found, closes)
        text = written(house, letter, now)
        batch.texts.append((text, phone.farmer.village_id))
        batch.moved += moved(found.said, composed, text.message_id)
    batch.too_late += [each.id for each in found.too_late]
    batch.caught_up |= {each.id: (opens, closes) for each in found.late}


def prompt(
    phone: str, language: str | None, composed: Composed, found: Sorted, closes: datetime
) -> Letter:
    """The day's text to one phone."""
    return Letter(
        phone=phone,
        language=language,
        says=composed.says,
        kind=Kind.PROMPT,
        not_after=closes,
        focus=Focus(items=tuple(map(item_of, composed.asked))) if composed.asked else None,
        nursery_id=first_of(found.said),
        lane=Lane.TASK if composed.asked else Lane.DAY,
    )


def item_of(reminder: Reminder) -> Item:
    """What a digit under a text stands for."""
    return Item(reminder.nursery_id, reminder.task, reminder.day)


def moved(said: Sequence[Reminder], composed: Composed, message_id: str) -> Iterator[Moved]:
    """What becomes of the tasks that a text says: no answer can be about what is only told."""
    told = frozenset(only_told(said, composed))
    for each in said:
        yield Moved(each.id, message_id, State.NOT_YET if each.id in told else State.SENT)


def caught_up(found: Sorted, opens: datetime, closes: datetime) -> list[Reminder]:
    """What was missed counts as asked today: there is until tonight to answer it."""
    return [replace(each, due_at=opens, not_after=closes) for each in found.late]
