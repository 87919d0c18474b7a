"""The tables of rain warnings that an officer has yet to decide on, or did."""

from datetime import datetime

from sqlalchemy import BigInteger, ForeignKey, Integer
from sqlalchemy.orm import Mapped, mapped_column

from assistant.agronomy.dangers.rows import RAIN
from assistant.store.columns import Key, named
from assistant.store.tables import Base
from assistant.store.values_warnings import AlertCertainty, Decision, DraftSource


class WarningDraftRow(Base):
    """One storm: its hours, where the warning came from, and what was decided."""

    __tablename__ = "warning_draft"

    id: Mapped[Key]
    source: Mapped[DraftSource] = mapped_column(named(DraftSource))
    made_by: Mapped[int | None] = mapped_column(ForeignKey("officer.id"))
    alert_id: Mapped[int | None] = mapped_column(
        BigInteger().with_variant(Integer(), "sqlite"), index=True
    )
    starts_at: Mapped[datetime]
    ends_at: Mapped[datetime] = mapped_column(index=True)
    certainty: Mapped[AlertCertainty] = mapped_column(named(AlertCertainty))
    hazard: Mapped[str]
    danger: Mapped[str] = mapped_column(default=RAIN)
    words: Mapped[str]
    created_at: Mapped[datetime]
    decided_at: Mapped[datetime | None]
    decided_by: Mapped[int | None] = mapped_column(ForeignKey("officer.id"))
    decision: Mapped[Decision | None] = mapped_column(named(Decision))


class WarningDraftVillageRow(Base):
    """One village of a draft, and the warning that was given to it."""

    __tablename__ = "warning_draft_village"

    draft_id: Mapped[int] = mapped_column(ForeignKey("warning_draft.id"), primary_key=True)
    village_id: Mapped[int] = mapped_column(
        ForeignKey("village.id"), primary_key=True, index=True
    )
    warning_id: Mapped[int | None] = mapped_column(ForeignKey("warning.id"), index=True)
