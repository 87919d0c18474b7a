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
from assistant.store.values_alerts import Became, KeptAlert, Looked, Told
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
from assistant.store.values_warnings import Certainty, Decision, Draft, Source
from assistant.store.work import Store, Work

__all__ = [
    "Account",
    "AlreadyThereError",
    "BadRowError",
    "Became",
    "Bed",
    "CalendarDay",
    "Call",
    "Certainty",
    "Counts",
    "DatabaseFailedError",
    "DatabaseUrlError",
    "Decision",
    "Done",
    "Draft",
    "Handover",
    "Heard",
    "KeptAlert",
    "Looked",
    "NaiveTimeError",
    "NotThereError",
    "OutboxText",
    "OwnWords",
    "PastCall",
    "Seen",
    "Sent",
    "Source",
    "Store",
    "StoreError",
    "TextState",
    "Told",
    "UnderWarning",
    "Unread",
    "UssdTalk",
    "VisitMade",
    "Work",
]
