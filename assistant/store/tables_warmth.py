"""The table of mean temperatures: what an officer enters for a village, one a day."""

from datetime import date, datetime

from sqlalchemy import ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class WarmthRow(Base):
    """One mean temperature [C] of day and night; entered anew for a day it is replaced."""

    __tablename__ = "village_warmth"
    __table_args__ = (UniqueConstraint("village_id", "day"),)

    id: Mapped[Key]
    village_id: Mapped[int] = mapped_column(ForeignKey("village.id"))
    day: Mapped[date]
    mean_c: Mapped[float]
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"))
    at: Mapped[datetime]
