"""A text by one line, to see whether it works: offered at once, followed to its receipt."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from assistant.alphabet import cost
from assistant.channel import Fate, Gateway, Outgoing
from assistant.dialogue.values import Kind
from assistant.service.connections import note_line
from assistant.service.dispatch import take_receipt
from assistant.service.house import House
from assistant.store import OutboxText, TextState

LASTS = timedelta(minutes=30)


@dataclass(frozen=True)
class Offered:
    """What the operator said: of the text, and why where it did not take it."""

    message_id: str
    fate: Fate
    detail: str


def offer_test(
    house: House, name: str, gateway: Gateway, phone: str, words: str, now: datetime
) -> Offered:
    """Offers a text by a line. One that was taken is kept like any other, so that its receipt
    finds it; one that was not is kept nowhere, and not tried again."""
    message_id = house.new_id()
    outgoing = Outgoing(message_id, phone, words, now + LASTS, Kind.LETTER.value)
    handover = gateway.send(outgoing, now)
    if name:
        note_line(house, name, handover, now)
    if handover.fate is Fate.ACCEPTED:
        size = cost(words)
        text = OutboxText(
            message_id=message_id,
            phone=phone,
            text=words,
            kind=Kind.LETTER,
            due_at=now,
            not_after=now + LASTS,
            created_at=now,
            state=TextState.ACCEPTED,
            accepted_at=now,
            encoding=size.encoding.value,
            segments=size.segments,
        )
        with house.store.work() as work:
            work.outbox.add(text)
            if name:
                work.lines.took([message_id], name)
            settled = work.lines.keep_parts(name, handover.parts, message_id, now)
        if settled is not None:
            take_receipt(house, settled.receipt, now)
    return Offered(message_id, handover.fate, handover.detail)


def became(house: House, message_id: str) -> OutboxText | None:
    """How a text stands now."""
    with house.store.look() as work:
        return work.outbox.get(message_id)
