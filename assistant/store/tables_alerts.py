"""The tables of official alerts, and of the codes by which they name villages."""

from datetime import datetime
from typing import Any

from sqlalchemy import JSON, ForeignKey, Index, LargeBinary
from sqlalchemy.orm import Mapped, mapped_column

from assistant.store.columns import Key, named
from assistant.store.tables import Base
from assistant.store.values_alerts import Became


class AlertRow(Base):
    """One message as it came; the columns bear the names of the value's fields."""

    __tablename__ = "alert"
    __table_args__ = (
        Index(None, "sender", "identifier", "sent"),
        Index(None, "became", "received_at"),  # ours, among all that came
    )

    id: Mapped[Key]
    source: Mapped[str]
    digest: Mapped[str] = mapped_column(unique=True)
    raw: Mapped[bytes] = mapped_column(LargeBinary, deferred=True)
    received_at: Mapped[datetime]
    became: Mapped[Became] = mapped_column(named(Became))
    sender: Mapped[str | None]
    identifier: Mapped[str | None]
    sent: Mapped[datetime | None]
    status: Mapped[str | None]
    kind: Mapped[str | None]
    scope: Mapped[str | None]
    signed: Mapped[bool]
    sealed_by: Mapped[str | None]  # the key's name; empty where the signature was wrong
    told: Mapped[list[dict[str, Any]]] = mapped_column(JSON)
    starts_at: Mapped[datetime | None]
    ends_at: Mapped[datetime | None]
    replaced_by: Mapped[int | None] = mapped_column(ForeignKey("alert.id"), index=True)


class AlertReferenceRow(Base):
    """An earlier message whose place this one takes, whether it came to us or not."""

    __tablename__ = "alert_reference"
    __table_args__ = (Index(None, "sender", "identifier", "sent"),)

    id: Mapped[Key]
    alert_id: Mapped[int] = mapped_column(ForeignKey("alert.id"), index=True)
    sender: Mapped[str]
    identifier: Mapped[str]
    sent: Mapped[datetime]


class AlertVillageRow(Base):
    """A village in the area of an alert that matters."""

    __tablename__ = "alert_village"

    alert_id: Mapped[int] = mapped_column(ForeignKey("alert.id"), primary_key=True)
    village_id: Mapped[int] = mapped_column(
        ForeignKey("village.id"), primary_key=True, index=True
    )


class VillageGeocodeRow(Base):
    """A code that alerts name a village by, in a system such as a country's own."""

    __tablename__ = "village_geocode"

    village_id: Mapped[int] = mapped_column(ForeignKey("village.id"), primary_key=True)
    name: Mapped[str] = mapped_column(primary_key=True)
    value: Mapped[str] = mapped_column(primary_key=True)


class AlertSourceRow(Base):
    """One place where alerts are read, shared by all processes."""

    __tablename__ = "alert_source"

    name: Mapped[str] = mapped_column(primary_key=True)
    looked_at: Mapped[datetime | None]
    etag: Mapped[str]
    modified: Mapped[str]
    trouble: Mapped[str]
    well_at: Mapped[datetime | None]
