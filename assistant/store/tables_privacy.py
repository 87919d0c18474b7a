"""The tables of people's own data: who agreed to which words, who wants to be forgotten, and
the seals of the trail."""

from datetime import datetime

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class AgreementRow(Base):
    """A farmer agreed: when, by which channel, in which language, to which words (a digest of
    them as they were said)."""

    __tablename__ = "agreement"

    id: Mapped[Key]
    farmer_id: Mapped[int] = mapped_column(ForeignKey("farmer.id"), index=True)
    at: Mapped[datetime]
    channel: Mapped[str]
    language: Mapped[str]
    words: Mapped[str]


class ErasureRow(Base):
    """Somebody asked to be forgotten; it is carried out at `due_at` once it was confirmed."""

    __tablename__ = "erasure"

    phone: Mapped[str] = mapped_column(primary_key=True)
    asked_at: Mapped[datetime]
    due_at: Mapped[datetime | None] = mapped_column(index=True)
    officer_id: Mapped[int | None] = mapped_column(ForeignKey("officer.id"))


class SealRow(Base):
    """A part of the trail that was sealed: a keyed digest of it and of the seal before."""

    __tablename__ = "trail_seal"

    last_id: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    at: Mapped[datetime]
    count: Mapped[int]
    digest: Mapped[str]
