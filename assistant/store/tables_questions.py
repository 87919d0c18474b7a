"""The tables of the answering desk: what an office answers, and how often questions come."""

from datetime import date, datetime

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key
from assistant.store.tables import Base


class OfficeQuestionRow(Base):
    """A question that an office added. It is used once a second person has read it, until it is
    withdrawn; without `added_by` it came from the command line."""

    __tablename__ = "office_question"

    id: Mapped[Key]
    language: Mapped[str]
    village_id: Mapped[int | None] = mapped_column(ForeignKey("village.id"))  # none: everywhere
    ways: Mapped[list[str]]
    answer: Mapped[str]
    added_by: Mapped[int | None] = mapped_column(ForeignKey("officer.id"))
    added_at: Mapped[datetime]
    read_by: Mapped[int | None] = mapped_column(ForeignKey("officer.id"))
    read_at: Mapped[datetime | None]
    withdrawn_at: Mapped[datetime | None]


class QuestionCountRow(Base):
    """How often a question was answered or offered in a village (0: in none) in a month of the
    programme; `month` is its first day, `code` a topic, or "office:" and a number."""

    __tablename__ = "question_count"

    month: Mapped[date] = mapped_column(primary_key=True)
    village_id: Mapped[Key]
    code: Mapped[str] = mapped_column(primary_key=True)
    answered: Mapped[int]
    offered: Mapped[int]
