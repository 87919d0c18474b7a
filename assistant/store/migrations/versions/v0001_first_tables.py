"""The first tables: people, nurseries, talks, texts in and out, reminders, warnings, calls."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "v0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    _people()
    _officers()
    _nurseries()
    _talks()
    _incoming()
    _warnings()
    _outbox()
    _reminders()
    _calls()


def downgrade() -> None:
    raise NotImplementedError("the first tables are not taken away: restore a backup instead")


def _key() -> sa.Column[int]:
    return sa.Column("id", _number(), primary_key=True)


def _number() -> sa.types.TypeEngine[int]:
    return sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def _of(table: str, *, null: bool = False, **more: Any) -> sa.Column[int]:
    """The column that names a row of another table."""
    place = sa.ForeignKey(f"{table}.id")
    return sa.Column(f"{table}_id", _number(), place, nullable=null, **more)


def _words(name: str, *, null: bool = False, **more: Any) -> sa.Column[str]:
    return sa.Column(name, sa.String(), nullable=null, **more)


def _name(name: str) -> sa.Column[str]:
    """One of a list of names."""
    return sa.Column(name, sa.String(32), nullable=False)


def _moment(name: str, *, null: bool = False) -> sa.Column[Any]:
    return sa.Column(name, sa.DateTime(timezone=True), nullable=null)


def _day(name: str, *, null: bool = False) -> sa.Column[Any]:
    return sa.Column(name, sa.Date(), nullable=null)


def _flag(name: str, *, null: bool = False) -> sa.Column[bool]:
    return sa.Column(name, sa.Boolean(), nullable=null)


def _count(name: str) -> sa.Column[int]:
    return sa.Column(name, sa.Integer(), nullable=False)


def _measure(name: str) -> sa.Column[float]:
    return sa.Column(name, sa.Double(), nullable=False)


def _people() -> None:
    op.create_table("village", _key(), _words("name", unique=True), _words("zone"))
    op.create_table(
        "farmer",
        _key(),
        _words("phone", unique=True),
        _words("language", null=True),
        _of("village", null=True, index=True),
        _moment("consent_at", null=True),
        _moment("stopped_at", null=True),
    )


def _officers() -> None:
    op.create_table(
        "officer",
        _key(),
        _words("phone", unique=True),
        _words("name"),
        _words("code_hash"),
        _words("language"),
        _flag("is_lead"),
    )
    op.create_table(
        "officer_village",
        _of("officer", primary_key=True),
        _of("village", primary_key=True, index=True),
    )


def _nurseries() -> None:
    op.create_table(
        "nursery",
        _key(),
        _of("farmer", index=True),
        _words("label"),
        _words("name", null=True),
        _measure("field_area_m2"),
        _measure("germination"),
        _measure("spacing_row_cm"),
        _measure("spacing_hill_cm"),
        _count("seedlings_per_hill"),
        _measure("grain_weight_g"),
        _measure("pail_litres"),
        _measure("establishment"),
        _words("area_typed"),
        _flag("germination_known"),
        _day("sow_date"),
        _day("made_on"),
        _flag("sown"),
        _flag("sow_assumed"),
        _day("uncover_date", null=True),
        _flag("uncovered"),
        _day("transplant_date", null=True),
        _day("transplanted_on", null=True),
        _flag("closed"),
        _moment("changed_at"),
    )


def _talks() -> None:
    op.create_table(
        "talk",
        _words("phone", primary_key=True),
        sa.Column("session", sa.JSON(), nullable=False),
        _moment("changed_at"),
    )
    op.create_table(
        "ussd_talk",
        _words("session_id", primary_key=True),
        _words("phone", index=True),
        sa.Column("pages", sa.JSON(), nullable=False),
        _count("page"),
        sa.Column("focus", sa.JSON(), nullable=True),
        _moment("changed_at"),
    )


def _incoming() -> None:
    op.create_table(
        "incoming",
        _words("gateway_id", primary_key=True),
        _words("phone"),
        _words("text"),
        _name("channel"),
        _name("step"),
        _words("session_id", null=True),
        _moment("at"),
        _moment("taken_at"),
        _flag("failed"),
        _words("answer_text", null=True),
        _flag("answer_more", null=True),
        sa.Index(None, "phone", "at"),
    )


def _warnings() -> None:
    op.create_table(
        "warning",
        _key(),
        _of("village", index=True),
        _of("officer"),
        _moment("starts_at"),
        _moment("ends_at"),
        _moment("issued_at"),
        _moment("cleared_at", null=True),
    )
    op.create_table(
        "warning_phone",
        _of("warning", primary_key=True),
        _words("phone", primary_key=True),
        _words("answer", null=True),
        _moment("answered_at", null=True),
    )


def _outbox() -> None:
    op.create_table(
        "outbox",
        _key(),
        _words("message_id", unique=True),
        _words("phone"),
        _words("text"),
        _name("kind"),
        sa.Column("focus", sa.JSON(), nullable=True),
        _of("nursery", null=True, index=True),
        _of("warning", null=True, index=True),
        _moment("due_at"),
        _moment("not_after"),
        _flag("urgent"),
        _name("state"),
        _count("attempts"),
        _words("encoding"),
        _count("segments"),
        _moment("lease_until", null=True),
        _moment("accepted_at", null=True),
        _moment("delivered_at", null=True),
        _moment("ended_at", null=True),
        _words("detail"),
        _moment("created_at"),
        sa.Index(None, "state", "due_at"),
        sa.Index(None, "phone", "state"),
    )


def _reminders() -> None:
    op.create_table(
        "reminder",
        _key(),
        _of("nursery"),
        _name("task"),
        _day("day"),
        _moment("due_at"),
        _moment("not_after"),
        _name("state"),
        _count("asked"),
        _words("message_id", null=True, index=True),
        sa.UniqueConstraint("nursery_id", "task", "day"),
        sa.Index(None, "state", "due_at"),
    )


def _calls() -> None:
    op.create_table(
        "call_for_help",
        _key(),
        _of("farmer", index=True),
        _of("nursery", null=True),
        _words("about"),
        _words("words"),
        _moment("at"),
        _moment("handled_at", null=True),
    )
    op.create_table(
        "unread_reply",
        _key(),
        _words("language"),
        _words("asked"),
        _words("text"),
        _moment("at"),
    )
