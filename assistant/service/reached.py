"""Which of the texts with digits are on the phone, as far as receipts tell."""

from collections.abc import Sequence

from assistant.dialogue.values import Kind
from assistant.store import OutboxText, TextState


def likeliest_first(texts: Sequence[OutboxText]) -> tuple[OutboxText, ...]:
    """Texts in the order in which a phone's digits may answer them.

    A text without a receipt may be lost, late, or on the phone with its receipt late. Where the
    one before it has a receipt, receipts come, and it is taken as still on its way: what is
    surely on the phone goes before it. Our answer to the person's own text is read at once.

    Args:
        texts: to one phone, the latest first, by delivery or else by hand-over.
    """
    on_the_way: list[OutboxText] = []
    receipts_come = False
    for text in reversed(texts):
        delivered = text.state is TextState.DELIVERED
        if receipts_come and not delivered and text.kind is not Kind.REPLY:
            on_the_way.insert(0, text)
        else:
            receipts_come = delivered
    here = tuple(text for text in texts if text not in on_the_way)
    return (*here, *on_the_way)
