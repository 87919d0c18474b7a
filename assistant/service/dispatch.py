"""Sends what waits in the outbox, and keeps what the operator says became of it."""

from datetime import datetime, timedelta

from assistant.channel import Fate, Gateway, Outgoing, Receipt
from assistant.reminders.retry import next_try
from assistant.service.house import House
from assistant.service.tick import plan_again
from assistant.store import OutboxText


def dispatch(
    house: House, gateway: Gateway, now: datetime, *, limit: int, lease: timedelta
) -> int:
    """Claims texts that may go now, hands them over, records the answers; how many there were.

    The hand-over is outside any transaction: a crash between it and the record leads to a
    second hand-over under the same id, which the operator drops.
    """
    with house.store.work() as work:
        claimed = work.outbox.claim(now, limit, lease)
    for text in claimed:
        _hand_over(house, gateway, text, now)
    return len(claimed)


def _hand_over(house: House, gateway: Gateway, text: OutboxText, now: datetime) -> None:
    outgoing = Outgoing(text.message_id, text.phone, text.text, text.not_after)
    handover = gateway.send(outgoing, now)
    fate, retry_at = handover.fate, None
    if fate is Fate.TRY_LATER:
        retry_at = next_try(text.attempts + 1, now, text.not_after)
        fate = Fate.TRY_LATER if retry_at else Fate.EXPIRED
    with house.store.work() as work:
        work.outbox.record(
            text.message_id, fate, now, detail=handover.detail, retry_at=retry_at
        )
        if fate in (Fate.FAILED, Fate.EXPIRED):
            plan_again(work, house, text)


def take_receipt(house: House, receipt: Receipt, now: datetime) -> bool:
    """Keeps a receipt; False for a text that is not ours. Repeats change nothing."""
    with house.store.work() as work:
        before = work.outbox.get(receipt.message_id)
        after = work.outbox.record(
            receipt.message_id, receipt.fate, receipt.at, detail=receipt.detail
        )
        if after is None or before is None:
            return False
        if after.state != before.state and after.state in ("failed", "expired"):
            plan_again(work, house, after)
        return True
