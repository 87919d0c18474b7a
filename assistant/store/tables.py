"""The tables. They are made and changed by `migrations`; a test holds the two together."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import JSON, Double, ForeignKey, Index, MetaData, UniqueConstraint, false, text
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.dangers.rows import RAIN
from assistant.agronomy.life.events import By, Why
from assistant.channel import Channel, Step
from assistant.dialogue.values import Kind
from assistant.reminders.values import State
from assistant.store.columns import Key, UtcMoment, Words, named
from assistant.store.values import TextState

# Named constraints, so that a later migration can find them on either database.
_NAMES = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}


class Base(DeclarativeBase):
    """What every table has in common."""

    metadata = MetaData(naming_convention=_NAMES)
    type_annotation_map = {
        datetime: UtcMoment(),
        str: Words(),
        float: Double(),
        dict[str, Any]: JSON(none_as_null=True),
        list[str]: JSON(),
        list[Any]: JSON(none_as_null=True),
        Kind: named(Kind),
        State: named(State),
        TextState: named(TextState),
        TaskCode: named(TaskCode),
        By: named(By),
        Why: named(Why),
        list[float]: JSON(none_as_null=True),
        Channel: named(Channel),
        Step: named(Step),
    }


class VillageRow(Base):
    __tablename__ = "village"

    id: Mapped[Key]
    name: Mapped[str] = mapped_column(unique=True)
    zone: Mapped[str]
    practices: Mapped[list[str]] = mapped_column(default=lambda: ["mat"])
    latitude: Mapped[float | None]  # degrees north, WGS 84
    longitude: Mapped[float | None]  # degrees east
    climate: Mapped[list[float] | None]  # mean of each month [C], January first
    emergency: Mapped[str | None]  # these go before those of the programme
    health_post: Mapped[str | None]
    vet: Mapped[str | None]
    retired_at: Mapped[datetime | None]  # nobody lives there for us; it is listed nowhere
    units: Mapped[list[Any] | None]  # of land: [[names], m2]


class FarmerRow(Base):
    __tablename__ = "farmer"

    id: Mapped[Key]
    phone: Mapped[str] = mapped_column(unique=True)
    language: Mapped[str | None]
    village_id: Mapped[int | None] = mapped_column(ForeignKey("village.id"), index=True)
    consent_at: Mapped[datetime | None]
    stopped_at: Mapped[datetime | None]
    name: Mapped[str | None]
    paused_at: Mapped[datetime | None]  # the daily texts rest, warnings go on
    only_work: Mapped[bool] = mapped_column(default=False, server_default=false())


class OfficerRow(Base):
    __tablename__ = "officer"

    id: Mapped[Key]
    phone: Mapped[str] = mapped_column(unique=True)
    name: Mapped[str]
    code_hash: Mapped[str]
    language: Mapped[str]
    is_lead: Mapped[bool]
    password_hash: Mapped[str | None]
    one_time_until: Mapped[datetime | None]  # set while the password is for one sign-in only
    totp_salt: Mapped[str | None]  # of the second factor; without the deployment's key nothing
    totp_last: Mapped[int | None]  # the step of the last code that was taken, never again
    next_code_hash: Mapped[str | None]  # the code that was sent; good beside the old one
    code_uses: Mapped[int] = mapped_column(default=0)
    closed_at: Mapped[datetime | None]  # no way in any more, by page or text


class OfficerVillageRow(Base):
    __tablename__ = "officer_village"

    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"), primary_key=True)
    village_id: Mapped[int] = mapped_column(
        ForeignKey("village.id"), primary_key=True, index=True
    )


class NurseryRow(Base):
    """A nursery with its inputs; the columns bear the names of the values' fields."""

    __tablename__ = "nursery"
    __table_args__ = (
        Index(
            "ix_nursery_open",  # the few that are open of all there ever were
            "sow_date",
            sqlite_where=text("closed IS 0"),
            postgresql_where=text("closed IS false"),
        ),
        Index(
            "ix_nursery_urea",  # the few for which urea was advised
            "urea_on",
            sqlite_where=text("urea_on IS NOT NULL"),
            postgresql_where=text("urea_on IS NOT NULL"),
        ),
    )
    id: Mapped[Key]
    farmer_id: Mapped[int] = mapped_column(ForeignKey("farmer.id"), index=True)
    label: Mapped[str]
    name: Mapped[str | None]
    field_area_m2: Mapped[float]
    germination: Mapped[float]
    spacing_row_cm: Mapped[float]
    spacing_hill_cm: Mapped[float]
    seedlings_per_hill: Mapped[int]
    grain_weight_g: Mapped[float]
    pail_litres: Mapped[float]
    establishment: Mapped[float]
    gap_filling: Mapped[float] = mapped_column(default=0.0)
    practice: Mapped[str] = mapped_column(default="mat")
    area_typed: Mapped[str]
    germination_known: Mapped[bool]
    sow_date: Mapped[date] = mapped_column(index=True)
    made_on: Mapped[date]
    sown: Mapped[bool]
    sow_assumed: Mapped[bool]
    uncover_date: Mapped[date | None]
    uncovered: Mapped[bool]
    transplant_date: Mapped[date | None]
    transplanted_on: Mapped[date | None]
    closed: Mapped[bool]
    test_begun: Mapped[date | None]
    test_counted: Mapped[bool] = mapped_column(default=False)
    resown: Mapped[bool] = mapped_column(default=False)
    urea_on: Mapped[date | None]
    hill_seedlings: Mapped[int | None]
    more_on: Mapped[date | None]
    more_mats: Mapped[int | None]
    no_result: Mapped[bool] = mapped_column(default=False)
    slow_seed: Mapped[bool] = mapped_column(default=False)
    cool_water: Mapped[bool] = mapped_column(default=False)
    water_c: Mapped[float | None]
    delay_why: Mapped[Why | None]
    leaves: Mapped[float | None]
    leaves_on: Mapped[date | None]
    lost_mats: Mapped[int] = mapped_column(default=0)
    climate: Mapped[list[float] | None]
    felt_c: Mapped[float | None]
    felt_on: Mapped[date | None]
    flooded_on: Mapped[date | None]
    part_sown_on: Mapped[date | None]
    tin_litres: Mapped[float | None]
    ripens_d: Mapped[int | None]
    age_first: Mapped[int | None]
    age_last: Mapped[int | None]
    changed_at: Mapped[datetime]


class TalkRow(Base):
    __tablename__ = "talk"

    phone: Mapped[str] = mapped_column(primary_key=True)
    session: Mapped[dict[str, Any]]
    changed_at: Mapped[datetime]


class UssdTalkRow(Base):
    __tablename__ = "ussd_talk"

    session_id: Mapped[str] = mapped_column(primary_key=True)
    phone: Mapped[str] = mapped_column(index=True)
    pages: Mapped[list[str]]
    page: Mapped[int]
    focus: Mapped[dict[str, Any] | None]
    changed_at: Mapped[datetime]


class IncomingRow(Base):
    """A message as it came, but for blanked codes, and the screen that answered it."""

    __tablename__ = "incoming"
    __table_args__ = (
        Index(None, "phone", "at"),
        Index(None, "at", "gateway_id"),  # the latest of all
        Index(
            None, "village_id", "at", "channel", "step"
        ),  # what is counted, nothing else read
    )

    gateway_id: Mapped[str] = mapped_column(primary_key=True)
    phone: Mapped[str]
    text: Mapped[str]
    channel: Mapped[Channel]
    step: Mapped[Step]
    session_id: Mapped[str | None]
    at: Mapped[datetime]
    taken_at: Mapped[datetime]
    failed: Mapped[bool]
    answer_text: Mapped[str | None]
    answer_more: Mapped[bool | None]
    village_id: Mapped[int | None] = mapped_column(ForeignKey("village.id"))  # counted for
    private: Mapped[bool] = mapped_column(default=False)  # its words are shown to nobody


class WarningRow(Base):
    __tablename__ = "warning"

    id: Mapped[Key]
    village_id: Mapped[int] = mapped_column(ForeignKey("village.id"), index=True)
    officer_id: Mapped[int] = mapped_column(ForeignKey("officer.id"))
    starts_at: Mapped[datetime]
    ends_at: Mapped[datetime]
    issued_at: Mapped[datetime]
    cleared_at: Mapped[datetime | None]
    recalled_at: Mapped[datetime | None]  # it was a mistake; then it is cleared too
    danger: Mapped[str] = mapped_column(default=RAIN)


class WarningPhoneRow(Base):
    """One phone that was asked whether its beds are covered."""

    __tablename__ = "warning_phone"

    warning_id: Mapped[int] = mapped_column(ForeignKey("warning.id"), primary_key=True)
    phone: Mapped[str] = mapped_column(primary_key=True)
    answer: Mapped[str | None]
    answered_at: Mapped[datetime | None]
    asked_again_at: Mapped[datetime | None]  # the second text, to the silent


class OutboxRow(Base):
    __tablename__ = "outbox"
    __table_args__ = (
        Index(None, "state", "due_at"),
        Index(None, "state", "lane", "due_at", "id"),  # which leaves first
        Index(None, "phone", "state"),
        Index(None, "due_at", "id"),  # the latest of all
        Index(None, "village_id", "due_at", "state", "segments"),  # what is counted
        Index(None, "accepted_at", "segments"),  # what lines took of a day
    )

    id: Mapped[Key]
    message_id: Mapped[str] = mapped_column(unique=True)
    phone: Mapped[str]
    text: Mapped[str]
    kind: Mapped[Kind]
    focus: Mapped[dict[str, Any] | None]
    nursery_id: Mapped[int | None] = mapped_column(ForeignKey("nursery.id"), index=True)
    warning_id: Mapped[int | None] = mapped_column(ForeignKey("warning.id"), index=True)
    due_at: Mapped[datetime]
    not_after: Mapped[datetime]
    urgent: Mapped[bool]
    state: Mapped[TextState]
    attempts: Mapped[int]
    encoding: Mapped[str]
    segments: Mapped[int]
    lease_until: Mapped[datetime | None]
    accepted_at: Mapped[datetime | None]
    delivered_at: Mapped[datetime | None]
    ended_at: Mapped[datetime | None]
    detail: Mapped[str]
    created_at: Mapped[datetime]
    village_id: Mapped[int | None] = mapped_column(ForeignKey("village.id"))  # counted for
    private: Mapped[bool] = mapped_column(default=False)  # its words are shown to nobody
    lane: Mapped[int] = mapped_column(default=2)  # see Lane
    line: Mapped[str | None]  # that took or refused it, where there are several
    waits_since: Mapped[datetime | None]  # since when it could have left, where it was put off
    doubted_at: Mapped[datetime | None]  # when it may have left, where the answer was lost


class ReminderRow(Base):
    __tablename__ = "reminder"
    __table_args__ = (
        UniqueConstraint("nursery_id", "task", "day"),
        Index(None, "state", "due_at"),
        Index(
            "ix_reminder_asked",  # what is silent, among all that was ever sent
            "task",
            "due_at",
            sqlite_where=text("state = 'sent' AND rests IS 0"),
            postgresql_where=text("state = 'sent' AND rests IS false"),
        ),
        Index(None, "nursery_id", "state", "due_at"),
        Index(
            "ix_reminder_to_come",  # what is due, the first of it first
            "due_at",
            "nursery_id",
            sqlite_where=text("state = 'planned' AND rests IS 0"),
            postgresql_where=text("state = 'planned' AND rests IS false"),
        ),
        Index(None, "answer", "day"),  # yellow, not up: what an officer must look at
    )

    id: Mapped[Key]
    nursery_id: Mapped[int] = mapped_column(ForeignKey("nursery.id"))
    task: Mapped[TaskCode]
    day: Mapped[date]
    due_at: Mapped[datetime]
    not_after: Mapped[datetime]
    state: Mapped[State]
    asked: Mapped[int]
    message_id: Mapped[str | None] = mapped_column(index=True)
    answer: Mapped[str | None]
    answered_at: Mapped[datetime | None]
    # The clock found that its farmer wants no texts; it looks again when they do.
    rests: Mapped[bool] = mapped_column(default=False)


class CallRow(Base):
    __tablename__ = "call_for_help"

    id: Mapped[Key]
    farmer_id: Mapped[int] = mapped_column(ForeignKey("farmer.id"), index=True)
    nursery_id: Mapped[int | None] = mapped_column(ForeignKey("nursery.id"))
    about: Mapped[str]
    words: Mapped[str]
    at: Mapped[datetime]
    handled_at: Mapped[datetime | None]
    handled_by: Mapped[int | None] = mapped_column(ForeignKey("officer.id"))


class UnreadRow(Base):
    __tablename__ = "unread_reply"

    id: Mapped[Key]
    language: Mapped[str]
    asked: Mapped[str]
    text: Mapped[str]
    at: Mapped[datetime]
    phone: Mapped[str | None] = mapped_column(index=True)  # none: of who wants nothing kept
    farmer_id: Mapped[int | None] = mapped_column(ForeignKey("farmer.id"), index=True)
    lately: Mapped[bool] = mapped_column(default=False)  # nothing of the phone was read since
