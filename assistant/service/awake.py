"""Which of the claimed texts leave now: not those held until morning, nor those taken back."""

from collections.abc import Sequence
from datetime import datetime

from assistant.service.house import House
from assistant.service.known import zone_of
from assistant.service.texts import after_quiet
from assistant.store import NEVER_AT_NIGHT, OutboxText


def leaving(house: House, texts: Sequence[OutboxText], now: datetime) -> Sequence[OutboxText]:
    """Those of claimed texts that leave now; the others are put back or let go."""
    awake = [text for text in texts if not _sleeps(house, text, now)]
    warned = [text.message_id for text in awake if text.warning_id is not None]
    if not warned:
        return awake
    with house.store.look() as look:
        still = look.sending.may_leave(warned, now)
    gone = [message_id for message_id in warned if message_id not in still]
    if gone:  # a batch of them takes a while to hand over, in which they were taken back
        with house.store.work() as work:
            work.sending.let_go(gone, now)
    return [text for text in awake if text.message_id not in gone]


def _sleeps(house: House, text: OutboxText, now: datetime) -> bool:
    """Whether a text is held until morning, which is noted."""
    morning = _held_until(house, text, now)
    if morning is None:
        return False
    with house.store.work() as work:
        work.lines.hold([text.message_id], morning)
    return True


def _held_until(house: House, text: OutboxText, now: datetime) -> datetime | None:
    """The end of the quiet hours, for a text that was held up into them and may wait."""
    if text.urgent or text.kind not in NEVER_AT_NIGHT:
        return None
    with house.store.work() as work:
        farmer, officer = work.people.farmer(text.phone), work.people.officer(text.phone)
        serves = officer.village_ids[:1] if officer else ()
        village_id = farmer.village_id if farmer else next(iter(serves), None)
        may_leave = after_quiet(house, zone_of(work, house, village_id), now)
    return may_leave if may_leave > now else None
