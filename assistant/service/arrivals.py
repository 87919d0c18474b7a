"""What a line brings, whatever the line: texts, missed calls, steps of USSD, receipts."""

from collections.abc import Sequence
from datetime import datetime, timedelta

from assistant.channel import Channel, Incoming, News, Receipt, Screen
from assistant.service.dispatch import take_receipt, take_receipts
from assistant.service.house import House
from assistant.service.receive import receive
from assistant.service.ring import take_ring

PIECES_WAIT = timedelta(minutes=15)
PIECES_LAST = timedelta(days=1)  # a repeat of one that was taken is known for so long


def take(house: House, news: News, now: datetime) -> Screen | None:
    """Keeps one piece of news; the screen that answers it, where one is due.

    Raises:
        DatabaseAwayError: nothing is kept; the operator should bring the same again.
    """
    if isinstance(news, Receipt):
        take_receipt(house, news, now)
        return None
    return _heard(house, news, now)


def take_all(house: House, news: Sequence[News], now: datetime) -> Screen | None:
    """Keeps all that one call brought; the last screen that answers any of it. Receipts of
    whole texts are kept together.

    Raises:
        DatabaseAwayError: not all of it is kept; the operator should bring the same again.
    """
    receipts = [each for each in news if isinstance(each, Receipt) and each.message_id]
    if len(receipts) > 1:
        take_receipts(house, receipts, now)
        news = [each for each in news if each not in receipts]
    screen = None
    for each in news:
        screen = take(house, each, now) or screen
    return screen


def _heard(house: House, incoming: Incoming, now: datetime) -> Screen | None:
    if incoming.line and house.several_lines and incoming.channel is Channel.SMS:
        with house.store.work() as work:
            work.lines.heard(incoming.phone, incoming.line, now)
    if incoming.channel is Channel.RING:
        take_ring(house, incoming, now)
        return None
    if incoming.piece is None:
        return receive(house, incoming, now)
    whole = _joined(house, incoming, now)
    if whole is not None:
        receive(house, whole, now)
        with house.store.work() as work:
            work.pieces.taken(whole.gateway_id)
    return None


def _joined(house: House, incoming: Incoming, now: datetime) -> Incoming | None:
    """Keeps a piece; the whole text once all of its pieces are there."""
    with house.store.work() as work:
        work.lock(incoming.phone)
        return work.pieces.keep(incoming, now)


def take_incomplete(house: House, now: datetime) -> int:
    """Takes texts whose other pieces did not come in a quarter of an hour, with dots for what
    is missing: half a cry for help is one. How many those were."""
    with house.store.work() as work:
        found = work.pieces.incomplete(now - PIECES_WAIT)
    for text in found:
        receive(house, text, now)
        with house.store.work() as work:
            work.pieces.taken(text.gateway_id)
    with house.store.work() as work:
        work.pieces.forget(now - PIECES_LAST)
    return len(found)
