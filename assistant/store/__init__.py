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
from assistant.store.values_officers import (
    Bed,
    CalendarDay,
    Handover,
    Heard,
    OwnWords,
    PastCall,
    Sent,
    UnderWarning,
    VisitMade,
)
from assistant.store.work import Store, Work

__all__ = [
    "Account",
    "AlreadyThereError",
    "BadRowError",
    "Bed",
    "CalendarDay",
    "Call",
    "Counts",
    "DatabaseFailedError",
    "DatabaseUrlError",
    "Done",
    "Handover",
    "Heard",
    "NaiveTimeError",
    "NotThereError",
    "OutboxText",
    "OwnWords",
    "PastCall",
    "Seen",
    "Sent",
    "Store",
    "StoreError",
    "TextState",
    "UnderWarning",
    "Unread",
    "UssdTalk",
    "VisitMade",
    "Work",
]
