"""The tables of enrolment: who put a farmer on the roll and what they answered, numbers that
changed hands, and lists that an office sent in."""

from datetime import datetime
from typing import Any

from sqlalchemy import ForeignKey, Index, LargeBinary
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class EnrolmentRow(Base):
    """A farmer whom somebody else put on the roll, and how they were asked whether they agree.

    `way` is "list", "page" or "text"; `answer` "yes", "no", "stop" or none yet; `wishes` what
    the office knew of nurseries that cannot be planned yet.
    """

    __tablename__ = "enrolment"
    __table_args__ = (Index(None, "answer", "asked_at"),)

    farmer_id: Mapped[int] = mapped_column(ForeignKey("farmer.id"), primary_key=True)
    officer_id: Mapped[int | None] = mapped_column(ForeignKey("officer.id"), index=True)
    way: Mapped[str]
    at: Mapped[datetime]
    asked: Mapped[int]
    asked_at: Mapped[datetime]
    answer: Mapped[str | None]
    answered_at: Mapped[datetime | None]
    wishes: Mapped[dict[str, Any]]


class PastPhoneRow(Base):
    """A number that a farmer had until a time; what passed over it before stays theirs."""

    __tablename__ = "past_phone"

    id: Mapped[Key]
    farmer_id: Mapped[int] = mapped_column(ForeignKey("farmer.id"), index=True)
    phone: Mapped[str] = mapped_column(index=True)
    until: Mapped[datetime]


class OfficeListRow(Base):
    """A file of farmers as it was sent in, and how far its import has come.

    `state` is "open", "working" or "done"; `choices` what the officer approved and decided;
    `counts` what came of it; `content` and `rejects` go when they are no longer needed.
    """

    __tablename__ = "office_list"

    id: Mapped[Key]
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"), index=True)
    name: Mapped[str]
    content: Mapped[bytes | None] = mapped_column(LargeBinary)
    choices: Mapped[dict[str, Any]]
    state: Mapped[str]
    counts: Mapped[dict[str, Any]]
    rejects: Mapped[bytes | None] = mapped_column(LargeBinary)
    made_at: Mapped[datetime]
    changed_at: Mapped[datetime]
