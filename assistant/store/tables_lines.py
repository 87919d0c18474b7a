"""The tables of several lines: who wrote by which, which parts of a text went by one, and whose
the connections are."""

from datetime import datetime

from sqlalchemy import Index, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class HeardByRow(Base):
    """The line by which a phone last wrote."""

    __tablename__ = "heard_by"

    phone: Mapped[str] = mapped_column(primary_key=True)
    line: Mapped[str]
    at: Mapped[datetime]


class PartRow(Base):
    """A segment under the operator's own id. Its receipt may come before the hand-over is
    written down: then the text it belongs to is not known yet."""

    __tablename__ = "part"
    __table_args__ = (Index(None, "line", "part"),)

    id: Mapped[Key]
    line: Mapped[str]
    part: Mapped[str]
    message_id: Mapped[str | None] = mapped_column(index=True)
    fate: Mapped[str | None]
    at: Mapped[datetime] = mapped_column(index=True)
    detail: Mapped[str]


class PieceRow(Base):
    """A piece of a long text that a line brings one by one; `joined` once it was taken."""

    __tablename__ = "piece"
    __table_args__ = (UniqueConstraint("line", "phone", "ref", "parts", "part"),)

    id: Mapped[Key]
    line: Mapped[str]
    phone: Mapped[str]
    ref: Mapped[str]
    parts: Mapped[int]
    part: Mapped[int]
    gateway_id: Mapped[str]
    text: Mapped[str]
    at: Mapped[datetime]
    kept_at: Mapped[datetime] = mapped_column(index=True)
    joined: Mapped[bool]


class OwnerRow(Base):
    """What processes share, until when: who has the lines that keep a connection; which turns
    of a line that has a rate are taken."""

    __tablename__ = "line_owner"

    name: Mapped[str] = mapped_column(primary_key=True)
    owner: Mapped[str]
    until: Mapped[datetime]
