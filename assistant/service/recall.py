"""Takes back prompts that have not left yet, so that they are written again."""

from collections.abc import Iterable
from datetime import datetime

from assistant.dialogue.values import Kind
from assistant.reminders.values import State
from assistant.store import OutboxText, Work

PROMPTS = (Kind.PROMPT, Kind.SECOND)


def recall_prompts(work: Work, waiting: Iterable[OutboxText], now: datetime) -> None:
    """Takes these waiting prompts back; their tasks are put into the next text."""
    for text in waiting:
        work.outbox.withdraw(now, phone=text.phone, kinds=PROMPTS)
        unsent = [
            r for r in work.reminders.of_message(text.message_id) if r.state is State.SENT
        ]
        work.reminders.set_state([r.id for r in unsent], State.PLANNED, asked=0)
