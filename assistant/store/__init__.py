"""What is kept: tables, queries, the outbox claim and the migrations. Hands out values only."""

from assistant.store.errors import (
    AlreadyThereError,
    BadRowError,
    DatabaseFailedError,
    DatabaseUrlError,
    NaiveTimeError,
    NotThereError,
    StoreError,
)
from assistant.store.values import (
    Call,
    Counts,
    OutboxText,
    Seen,
    TextState,
    Unread,
    UssdTalk,
)
from assistant.store.work import Store, Work

__all__ = [
    "AlreadyThereError",
    "BadRowError",
    "Call",
    "Counts",
    "DatabaseFailedError",
    "DatabaseUrlError",
    "NaiveTimeError",
    "NotThereError",
    "OutboxText",
    "Seen",
    "Store",
    "StoreError",
    "TextState",
    "Unread",
    "UssdTalk",
    "Work",
]
