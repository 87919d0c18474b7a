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


class SessionRow(Base):
    """A browser that is signed in. `key` is a hash of what its cookie holds, so that a copy of
    the database opens nothing."""

    __tablename__ = "web_session"

    key: Mapped[str] = mapped_column(primary_key=True)
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"), index=True)
    begun_at: Mapped[datetime]
    seen_at: Mapped[datetime]
    proved_at: Mapped[datetime]  # the password was typed, and the second factor where there is
    browser: Mapped[str]


class KnownBrowserRow(Base):
    """A browser in which an officer signed in before: tries from elsewhere do not lock it."""

    __tablename__ = "known_browser"

    key: Mapped[str] = mapped_column(primary_key=True)
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"), index=True)
    at: Mapped[datetime]


class OneTimeCodeRow(Base):
    """A code that was sent to an officer's own phone, to get past a lock that others threw."""

    __tablename__ = "one_time_code"

    phone: Mapped[str] = mapped_column(primary_key=True)
    code_hash: Mapped[str]
    sent_at: Mapped[datetime]
    tries: Mapped[int] = mapped_column(default=0)


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
    detail_digest: Mapped[str | None]  # sealed; it stays when the words are erased


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
