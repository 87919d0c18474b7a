"""The tables of messages counted day by day, once nothing of a day changes any more."""

from datetime import date

from sqlalchemy import ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class CountedDayRow(Base):
    """A day of the programme's zone whose messages are counted; no day before it is missing."""

    __tablename__ = "counted_day"

    day: Mapped[date] = mapped_column(primary_key=True)


class DayCountRow(Base):
    """The messages of one village on one such day; no village: officers and strangers.

    `segments` are those that the operator took, also of texts that it then lost.
    """

    __tablename__ = "day_count"
    __table_args__ = (Index(None, "day", "village_id"),)

    id: Mapped[Key]
    day: Mapped[date] = mapped_column(ForeignKey("counted_day.day"))
    village_id: Mapped[int | None] = mapped_column(ForeignKey("village.id"))
    waiting: Mapped[int]
    accepted: Mapped[int]
    delivered: Mapped[int]
    failed: Mapped[int]
    expired: Mapped[int]
    withdrawn: Mapped[int]
    segments: Mapped[int]
    texts: Mapped[int]
    sessions: Mapped[int]
    rings: Mapped[int]
