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
    Account,
    Call,
    Counts,
    Done,
    OutboxText,
    Seen,
    TextState,
    Unread,
    UssdTalk,
)
from assistant.store.work import Store, Work

__all__ = [
    "Account",
    "AlreadyThereError",
    "BadRowError",
    "Call",
    "Counts",
    "DatabaseFailedError",
    "DatabaseUrlError",
    "Done",
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
