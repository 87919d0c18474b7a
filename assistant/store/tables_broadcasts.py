"""The tables of an officer's words to many farmers."""

from datetime import datetime
from typing import Any

from sqlalchemy import JSON, ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import NUMBER, Key
from assistant.store.tables import Base


class BroadcastRow(Base):
    """What was written, and to whom: villages, a stage and a practice of their beds."""

    __tablename__ = "broadcast"

    id: Mapped[Key]
    made_by: Mapped[int] = mapped_column(ForeignKey("officer.id"))
    words: Mapped[str]
    village_ids: Mapped[list[Any]] = mapped_column(JSON())
    stage: Mapped[str]
    practice: Mapped[str | None]
    made_at: Mapped[datetime] = mapped_column(index=True)
    sent_at: Mapped[datetime | None]
    group_id: Mapped[int | None] = mapped_column(NUMBER)  # an own group; may be gone since
    due_at: Mapped[datetime | None]  # when it is to leave, where not at once


class BroadcastPhoneRow(Base):
    """One phone that it went to, and the outgoing text that carries it."""

    __tablename__ = "broadcast_phone"

    broadcast_id: Mapped[int] = mapped_column(ForeignKey("broadcast.id"), primary_key=True)
    phone: Mapped[str] = mapped_column(primary_key=True)
    message_id: Mapped[str] = mapped_column(unique=True)
