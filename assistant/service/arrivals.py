"""What a line brings, whatever the line: texts, missed calls, steps of USSD, receipts."""

from datetime import datetime

from assistant.channel import Channel, Incoming, News, Receipt, Screen
from assistant.service.dispatch import take_receipt
from assistant.service.house import House
from assistant.service.receive import receive
from assistant.service.ring import take_ring


def take(house: House, news: News, now: datetime) -> Screen | None:
    """Keeps one piece of news; the screen that answers it, where one is due.

    Raises:
        DatabaseAwayError: nothing is kept; the operator should bring the same again.
    """
    if isinstance(news, Receipt):
        take_receipt(house, news, now)
        return None
    return _heard(house, news, now)


def _heard(house: House, incoming: Incoming, now: datetime) -> Screen | None:
    if incoming.line and house.several_lines and incoming.channel is Channel.SMS:
        with house.store.work() as work:
            work.lines.heard(incoming.phone, incoming.line, now)
    if incoming.channel is Channel.RING:
        take_ring(house, incoming, now)
        return None
    return receive(house, incoming, now)
