"""The table of what happened to nurseries: their story, an event a row."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from assistant.agronomy.life.events import By
from assistant.store.columns import Key
from assistant.store.tables import Base


class EventRow(Base):
    """One event: its kind, the day it is true of, who said so, and when it was kept.

    `about` holds what else its kind has (a task, a count), as text and numbers.
    """

    __tablename__ = "nursery_event"

    id: Mapped[Key]
    nursery_id: Mapped[int] = mapped_column(ForeignKey("nursery.id"), index=True)
    kind: Mapped[str]
    day: Mapped[date]
    by: Mapped[By]
    about: Mapped[dict[str, Any]]
    at: Mapped[datetime]
