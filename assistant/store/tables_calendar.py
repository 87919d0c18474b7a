"""The table of days that were handed out in calendar files, so that a moved one can say so."""

from datetime import date, datetime

from sqlalchemy import ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from assistant.agronomy.tasks import TaskCode
from assistant.store.columns import Key
from assistant.store.tables import Base


class CalendarDayRow(Base):
    """One task of one nursery as it stood in the last file; `place` tells the first of its
    days from the second."""

    __tablename__ = "calendar_day"
    __table_args__ = (UniqueConstraint("nursery_id", "task", "place"),)

    id: Mapped[Key]
    nursery_id: Mapped[int] = mapped_column(ForeignKey("nursery.id"))
    task: Mapped[TaskCode]
    place: Mapped[int]
    day: Mapped[date]
    gone: Mapped[bool]  # handed out once, and no longer to be done
    sequence: Mapped[int]  # how often it was moved, taken away or put back
    changed_at: Mapped[datetime]
