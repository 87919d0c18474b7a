"""Who enrolled whom and what they answered, numbers that changed hands, lists of an office."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "v0013"
down_revision = "v0012"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "enrolment",
        sa.Column("farmer_id", _number(), sa.ForeignKey("farmer.id"), primary_key=True),
        _of("officer", null=True),
        _words("way"),
        _moment("at"),
        sa.Column("asked", sa.Integer(), nullable=False),
        _moment("asked_at"),
        _words("answer", null=True),
        _moment("answered_at", null=True),
        sa.Column("wishes", sa.JSON(), nullable=False),
    )
    op.create_index(op.f("ix_enrolment_answer_asked_at"), "enrolment", ["answer", "asked_at"])
    op.create_table(
        "past_phone",
        sa.Column("id", _number(), primary_key=True),
        _of("farmer"),
        _words("phone", index=True),
        _moment("until"),
    )
    op.create_table(
        "office_list",
        sa.Column("id", _number(), primary_key=True),
        _of("officer"),
        _words("name"),
        sa.Column("content", sa.LargeBinary(), nullable=True),
        sa.Column("choices", sa.JSON(), nullable=False),
        _words("state"),
        sa.Column("counts", sa.JSON(), nullable=False),
        sa.Column("rejects", sa.LargeBinary(), nullable=True),
        _moment("made_at"),
        _moment("changed_at"),
    )


def downgrade() -> None:
    raise NotImplementedError("what farmers agreed to is not taken away: restore a backup")


def _number() -> sa.types.TypeEngine[int]:
    return sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def _of(table: str, *, null: bool = False) -> sa.Column[int]:
    place = sa.ForeignKey(f"{table}.id")
    return sa.Column(f"{table}_id", _number(), place, nullable=null, index=True)


def _words(name: str, *, null: bool = False, **more: Any) -> sa.Column[str]:
    return sa.Column(name, sa.String(), nullable=null, **more)


def _moment(name: str, *, null: bool = False) -> sa.Column[Any]:
    return sa.Column(name, sa.DateTime(timezone=True), nullable=null)
