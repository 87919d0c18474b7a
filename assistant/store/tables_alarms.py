"""The tables of alarms: calls for help that go from person to person until one saw to it."""

from datetime import datetime

from sqlalchemy import ForeignKey, Index
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class AlarmRow(Base):
    """How far a cry for help has come, beside its call.

    `village_id` is the writer's at that time; `sure` is false while they are asked whether
    somebody is hurt, `said` what they answered ("hurt", "nobody"); `next_at` is when the next
    person is told, none where nobody is to be; `turn` counts the ways through all persons;
    `note` says what was done in the end.
    """

    __tablename__ = "alarm"

    call_id: Mapped[int] = mapped_column(ForeignKey("call_for_help.id"), primary_key=True)
    village_id: Mapped[int | None] = mapped_column(ForeignKey("village.id"))
    sure: Mapped[bool]
    said: Mapped[str | None]
    next_at: Mapped[datetime | None] = mapped_column(index=True)
    turn: Mapped[int]
    note: Mapped[str]


class AlarmToldRow(Base):
    """An officer who was told of an alarm, and by which text."""

    __tablename__ = "alarm_told"
    __table_args__ = (Index(None, "call_id", "officer_id"),)

    id: Mapped[Key]
    call_id: Mapped[int] = mapped_column(ForeignKey("alarm.call_id"))
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"), index=True)
    turn: Mapped[int]
    message_id: Mapped[str] = mapped_column(index=True)
    at: Mapped[datetime]
