"""The tables of how the service itself runs: its processes, its line, rows it cannot read."""

from datetime import datetime

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.tables import Base


class SetAsideRow(Base):
    """A nursery whose row cannot be read. It gets no texts until somebody mends it."""

    __tablename__ = "set_aside"

    nursery_id: Mapped[int] = mapped_column(ForeignKey("nursery.id"), primary_key=True)
    why: Mapped[str]
    since: Mapped[datetime]


class PulseRow(Base):
    """That something of the service was alive: a worker's ticking, its sending."""

    __tablename__ = "pulse"

    part: Mapped[str] = mapped_column(primary_key=True)
    at: Mapped[datetime]


class CounterRow(Base):
    """How often something changed that processes keep in memory, by its name."""

    __tablename__ = "counter"

    name: Mapped[str] = mapped_column(primary_key=True)
    number: Mapped[int]


class SettingRow(Base):
    """A setting that a page says, by its name, written as the environment has it."""

    __tablename__ = "setting"

    name: Mapped[str] = mapped_column(primary_key=True)
    value: Mapped[str]


class LineRow(Base):
    """The line to the operator, by name."""

    __tablename__ = "line"

    name: Mapped[str] = mapped_column(primary_key=True)
    answered_at: Mapped[datetime | None]  # anything but silence
    took_at: Mapped[datetime | None]  # a text was accepted
    rests_until: Mapped[datetime | None]  # the operator asked for a pause, or did not answer
    rests_from: Mapped[datetime | None]
    said: Mapped[str]  # the operator's words when it last took nothing
    held_at: Mapped[datetime | None]  # a person holds all texts
    held_why: Mapped[str]
