"""The table of days handed out in calendar files, so that a changed one can say so."""

from datetime import date, datetime

from sqlalchemy import ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from assistant.agronomy.tasks import TaskCode
from assistant.store.columns import Key
from assistant.store.tables import Base


class CalendarDayRow(Base):
    """One task of one village on one day as it stood in the last file."""

    __tablename__ = "calendar_day"
    __table_args__ = (UniqueConstraint("village_id", "day", "task"),)

    id: Mapped[Key]
    village_id: Mapped[int] = mapped_column(ForeignKey("village.id"))
    task: Mapped[TaskCode]
    day: Mapped[date]
    names: Mapped[str]  # a hash of them; empty where nobody is left
    sequence: Mapped[int]  # how often the names changed
    changed_at: Mapped[datetime]
