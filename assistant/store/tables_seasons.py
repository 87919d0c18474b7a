"""The table of seasons that are over: what a farmer told of each nursery at its end."""

from datetime import date

from sqlalchemy import ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class SeasonRow(Base):
    """One nursery's result; the columns bear the names of the value's fields."""

    __tablename__ = "season_result"
    __table_args__ = (Index(None, "ended_on"),)  # whose yield is to be asked

    id: Mapped[Key]
    nursery_id: Mapped[int] = mapped_column(ForeignKey("nursery.id"), unique=True)
    farmer_id: Mapped[int] = mapped_column(ForeignKey("farmer.id"), index=True)
    ended_on: Mapped[date]
    field_area_m2: Mapped[float]
    planted_area_m2: Mapped[float]
    mats: Mapped[int]
    mats_left: Mapped[float]
    resown: Mapped[bool]
    establishment: Mapped[float]
    seed_share: Mapped[float] = mapped_column(default=1.0)
    yield_kg: Mapped[float | None]
    yield_asked: Mapped[date | None]
