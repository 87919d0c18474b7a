"""The officers' page: passwords, tries, the trail, visits, own words, hand-overs; and farmers'
names, and what was answered to a task."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "v0002"
down_revision = "v0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _officers()
    _answers()
    _calls()
    _tries()
    _audit()
    _visits()
    _texts()
    _handovers()


def downgrade() -> None:
    raise NotImplementedError("what officers did is not taken away: restore a backup instead")


def _number() -> sa.types.TypeEngine[int]:
    return sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def _key() -> sa.Column[int]:
    return sa.Column("id", _number(), primary_key=True)


def _of(table: str, *, name: str = "", null: bool = False, **more: Any) -> sa.Column[int]:
    """The column that names a row of another table."""
    place = sa.ForeignKey(f"{table}.id")
    return sa.Column(name or f"{table}_id", _number(), place, nullable=null, **more)


def _words(name: str, *, null: bool = False, **more: Any) -> sa.Column[str]:
    return sa.Column(name, sa.String(), nullable=null, **more)


def _moment(name: str = "at", *, null: bool = False, **more: Any) -> sa.Column[Any]:
    return sa.Column(name, sa.DateTime(timezone=True), nullable=null, **more)


def _officers() -> None:
    with op.batch_alter_table("officer") as table:
        table.add_column(_words("password_hash", null=True))
        table.add_column(_moment("one_time_until", null=True))
        epoch = sa.Column("session_epoch", sa.Integer(), nullable=False, server_default="0")
        table.add_column(epoch)
    with op.batch_alter_table("farmer") as table:
        table.add_column(_words("name", null=True))


def _answers() -> None:
    with op.batch_alter_table("reminder") as table:
        table.add_column(_words("answer", null=True))
        table.add_column(_moment("answered_at", null=True))
    with op.batch_alter_table("nursery") as table:
        table.create_index("ix_nursery_closed_sow_date", ["closed", "sow_date"])


def _calls() -> None:
    with op.batch_alter_table("call_for_help", recreate="auto") as table:
        table.add_column(sa.Column("handled_by", _number(), nullable=True))
        table.create_foreign_key(
            "fk_call_for_help_handled_by_officer", "officer", ["handled_by"], ["id"]
        )


def _tries() -> None:
    op.create_table(
        "sign_in_try",
        _key(),
        _words("door"),
        _words("who"),
        _moment(),
        sa.Index(None, "door", "who", "at"),
    )
    op.create_table(
        "kept_secret", _words("name", primary_key=True), _words("value"), _moment("made_at")
    )


def _audit() -> None:
    op.create_table(
        "audit",
        _key(),
        _moment(index=True),
        _of("officer", null=True, index=True),
        _words("act"),
        _of("farmer", null=True),
        _of("nursery", null=True, index=True),
        _of("village", null=True, index=True),
        _words("detail"),
    )


def _visits() -> None:
    op.create_table(
        "visit",
        _key(),
        _of("nursery"),
        _of("officer"),
        sa.Column("visited_on", sa.Date(), nullable=False),
        _words("note"),
        _moment(),
        sa.Index(None, "nursery_id", "visited_on"),
    )


def _texts() -> None:
    op.create_table(
        "officer_text",
        _key(),
        _of("officer"),
        _of("farmer", index=True),
        _of("nursery", null=True),
        _of("call_for_help", name="call_id", null=True, index=True),
        _words("message_id", unique=True),
        _words("words"),
        _moment(),
    )


def _handovers() -> None:
    op.create_table(
        "village_handover",
        _key(),
        _of("village", index=True),
        _of("officer", name="from_officer_id", null=True),
        _of("officer", name="to_officer_id"),
        _of("officer", name="by_officer_id"),
        _words("note"),
        _moment(),
    )
