"""The pause of a line that is away or busy, and how it is tried again.

What such a line did not take is no fault of the texts: they keep their tries and their places,
and the line alone has a pause. After it a few texts are offered, one, then as many again as
went, so that an operator who is starting is not met by a whole morning. A text that brings down
whoever it is offered to must not keep the line shut for all others: where the first is not
taken, another is tried beside it, and if that one goes the first was to blame.
"""

import logging
from collections.abc import Sequence
from datetime import datetime, timedelta

from assistant.channel import Fate, Handover
from assistant.service.handing import halts
from assistant.service.house import House
from assistant.store import OutboxText, Work

log = logging.getLogger(__name__)

SILENT_REST = timedelta(seconds=2)  # an operator that did not answer may be starting
LONGEST_REST = timedelta(minutes=10)  # whatever it asks for: a warning may be waiting
TRIED_WITH = 64  # texts at most of a look that tries the line
# How long a text has waited before it is thought to be what the operator stumbles over.
SUSPECT_AFTER = timedelta(minutes=2)


def note_line(work: Work, handover: Handover, now: datetime, *, took: bool) -> None:
    """Keeps how the operator answered; one that asked for a pause, or was silent, gets one."""
    before = work.running.line()
    if handover.answered:
        work.running.answered(now, took=took)
    rest = handover.rest if handover.answered else SILENT_REST
    if took and before.took_nothing:
        log.warning("the line takes texts again")
    if rest is not None:
        if took or not before.took_nothing:  # one line a standstill, not one a try
            log.warning("the line takes no texts now: %s", handover.detail or "no answer")
        work.running.rest(now, now + min(rest, LONGEST_REST), handover.detail)


def let_leave(house: House, now: datetime) -> int:
    """Lets texts leave whose next try is further off than any is, as a clock that was wrong for
    a while had it; how many those were."""
    with house.store.look() as look:
        if not look.lines.waits_too_long(now):
            return 0
    with house.store.work() as work:
        return work.lines.let_leave(now)


def another(claimed: Sequence[OutboxText], first: Handover, now: datetime) -> OutboxText | None:
    """Which text is tried beside the first, which was not taken; None for none. A pause that
    the operator asked for is kept, unless the first may be why it asks each time."""
    tried = claimed[0]
    suspect = tried.attempts > 0 or now - tried.due_at > SUSPECT_AFTER
    if first.answered and not suspect:
        return None
    seen, others = {tried.phone}, []
    for text in claimed[1:]:
        if text.phone not in seen:  # a phone's texts leave in their order
            seen.add(text.phone)
            others.append(text)
    # Not always the same one: that may be another which nobody can take.
    return others[int(now.timestamp()) % len(others)] if others else None


def is_up(said: Sequence[Handover]) -> bool:
    """Whether a line answered about these texts, and not about itself."""
    return (
        bool(said)
        and not any(halts(each) for each in said)
        and (said[0].fate is not Fate.TRY_LATER)
    )
