"""The tables of the officers' side: sign-in, what was done, visits, own words, hand-overs."""

from datetime import date, datetime

from sqlalchemy import ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class SignInTryRow(Base):
    """One try at a door, counted until it was right or is long past.

    `door` is "page" or "text"; `who` the phone, or the address a page was asked from.
    """

    __tablename__ = "sign_in_try"
    __table_args__ = (Index(None, "door", "who", "at"),)

    id: Mapped[Key]
    door: Mapped[str]
    who: Mapped[str]
    at: Mapped[datetime]


class AuditRow(Base):
    """Who did what, when, and on what. Written, never changed."""

    __tablename__ = "audit"

    id: Mapped[Key]
    at: Mapped[datetime] = mapped_column(index=True)
    officer_id: Mapped[int | None] = mapped_column(ForeignKey("officer.id"), index=True)
    act: Mapped[str]
    farmer_id: Mapped[int | None] = mapped_column(ForeignKey("farmer.id"))
    nursery_id: Mapped[int | None] = mapped_column(ForeignKey("nursery.id"), index=True)
    village_id: Mapped[int | None] = mapped_column(ForeignKey("village.id"), index=True)
    detail: Mapped[str]


class VisitRow(Base):
    """An officer has seen a nursery."""

    __tablename__ = "visit"
    __table_args__ = (Index(None, "nursery_id", "visited_on"),)

    id: Mapped[Key]
    nursery_id: Mapped[int] = mapped_column(ForeignKey("nursery.id"))
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"))
    visited_on: Mapped[date]
    note: Mapped[str]
    at: Mapped[datetime]


class OfficerTextRow(Base):
    """An officer's own words to a farmer, and the outgoing text that carries them."""

    __tablename__ = "officer_text"

    id: Mapped[Key]
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"))
    farmer_id: Mapped[int] = mapped_column(ForeignKey("farmer.id"), index=True)
    nursery_id: Mapped[int | None] = mapped_column(ForeignKey("nursery.id"))
    call_id: Mapped[int | None] = mapped_column(ForeignKey("call_for_help.id"), index=True)
    message_id: Mapped[str] = mapped_column(unique=True)
    words: Mapped[str]
    at: Mapped[datetime]


class HandoverRow(Base):
    """A village passed to another officer, with what that one should know."""

    __tablename__ = "village_handover"

    id: Mapped[Key]
    village_id: Mapped[int] = mapped_column(ForeignKey("village.id"), index=True)
    from_officer_id: Mapped[int | None] = mapped_column(ForeignKey("officer.id"))
    to_officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"))
    by_officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"))
    note: Mapped[str]
    at: Mapped[datetime]


class SecretRow(Base):
    """A secret that the deployment made for itself, shared by all its processes."""

    __tablename__ = "kept_secret"

    name: Mapped[str] = mapped_column(primary_key=True)
    value: Mapped[str]
    made_at: Mapped[datetime]
