"""The tables of what stops texts: a person, or a limit on what is spent."""

from datetime import date, datetime

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class BrakeRow(Base):
    """Texts of a kind, to a village, or all, do not leave, but for dangers.

    `what` is "all", "kind", "village", or the limit that was reached ("day", "month",
    "village_day", "village_month"), or "strangers", which holds no text that was written but
    keeps some answers from being written; `which` the kind, or the period of the limit.
    """

    __tablename__ = "brake"

    id: Mapped[Key]
    what: Mapped[str]
    which: Mapped[str]
    village_id: Mapped[int | None] = mapped_column(ForeignKey("village.id"))
    why: Mapped[str]
    officer_id: Mapped[int | None] = mapped_column(ForeignKey("officer.id"))
    at: Mapped[datetime] = mapped_column(index=True)
    until: Mapped[datetime | None]
    let_go_at: Mapped[datetime | None]


class SpentRow(Base):
    """Segments that the operator took on a day of the programme."""

    __tablename__ = "spent"

    day: Mapped[date] = mapped_column(primary_key=True)
    segments: Mapped[int]


class VillageSpentRow(Base):
    """Segments that the operator took for a village on a day of the programme; kept while
    villages have a limit."""

    __tablename__ = "village_spent"

    village_id: Mapped[int] = mapped_column(ForeignKey("village.id"), primary_key=True)
    day: Mapped[date] = mapped_column(primary_key=True)
    segments: Mapped[int]
