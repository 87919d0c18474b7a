"""The tables of the officers' desk: what they looked at, and what they did and can undo."""

from datetime import datetime
from typing import Any

from sqlalchemy import ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class MarkRow(Base):
    """Somebody has looked at a thing of which no other row says so: words that nobody could
    read, a number that texts do not reach. What came later is to be looked at again."""

    __tablename__ = "desk_mark"
    __table_args__ = (Index(None, "kind", "farmer_id"),)

    id: Mapped[Key]
    kind: Mapped[str]
    farmer_id: Mapped[int] = mapped_column(ForeignKey("farmer.id"), index=True)
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"))
    at: Mapped[datetime]


class DeedRow(Base):
    """What an officer did from the list, for one or for many; `before` is what undoes it, and
    is forgotten with the next deed."""

    __tablename__ = "desk_deed"
    __table_args__ = (Index(None, "officer_id", "at"),)

    id: Mapped[Key]
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"))
    at: Mapped[datetime]
    kind: Mapped[str]
    count: Mapped[int]
    before: Mapped[dict[str, Any]]
    undone_at: Mapped[datetime | None]


class NoteRow(Base):
    """A note that an officer's phone has sent, by the name that the phone gave it: one that
    comes again is not taken twice."""

    __tablename__ = "desk_note"

    key: Mapped[str] = mapped_column(primary_key=True)
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"), primary_key=True)
    at: Mapped[datetime]


class HandedCallRow(Base):
    """A call for help that one officer gave to another; the last one counts."""

    __tablename__ = "call_handed"

    id: Mapped[Key]
    call_id: Mapped[int] = mapped_column(ForeignKey("call_for_help.id"), index=True)
    from_id: Mapped[int] = mapped_column(ForeignKey("officer.id"))
    to_id: Mapped[int] = mapped_column(ForeignKey("officer.id"), index=True)
    at: Mapped[datetime]


class OwnGroupRow(Base):
    """Farmers whom an officer keeps under a name, to write to."""

    __tablename__ = "own_group"

    id: Mapped[Key]
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"), index=True)
    name: Mapped[str]
    made_at: Mapped[datetime]


class GroupMemberRow(Base):
    """One farmer of a group."""

    __tablename__ = "own_group_member"

    group_id: Mapped[int] = mapped_column(ForeignKey("own_group.id"), primary_key=True)
    farmer_id: Mapped[int] = mapped_column(
        ForeignKey("farmer.id"), primary_key=True, index=True
    )
